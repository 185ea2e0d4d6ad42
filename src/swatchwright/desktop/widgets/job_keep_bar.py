"""Which zone of the piece a mix is kept for, and which mix is kept for it."""

from __future__ import annotations

from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QSizePolicy, QWidget

from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.words import keeping as words

__all__ = ["KeepBar"]


class KeepBar(QWidget):
    """Says what is kept; where the piece has several zones, they can be chosen from."""

    def __init__(self, keeping: Keeping, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keeping = keeping
        self.zone = ChoiceField()
        self.zone.setAccessibleName(words.KEEP_FOR)
        self.zone.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.zone.activated.connect(lambda place: keeping.set_zone(self.zone.itemData(place)))
        self._for = QLabel(words.KEEP_FOR)
        self._for.setBuddy(self.zone)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self._for)
        row.addWidget(self.zone)
        row.addWidget(self.told, 1)
        # Until there are mixes there is nothing to keep.
        self.hide()

    def show_kept(self, *, there: bool) -> None:
        """Show the zones and what is kept for the one that is chosen, if mixes are there."""
        keeping = self._keeping
        zones = keeping.zones()
        if [self.zone.itemData(i) for i in range(self.zone.count())] != list(zones):
            self.zone.clear()
            for zone in zones:
                self.zone.addItem(words.zone_item(zone), zone)
        self.zone.setCurrentIndex(max(0, self.zone.findData(keeping.zone)))
        for widget in (self._for, self.zone):
            widget.setVisible(len(zones) > 1)
        otherwise = keeping.kept_otherwise()
        told = words.kept_line(keeping.kept_number(), keeping.zone, otherwise=otherwise)
        self.told.setText(told)
        self.setVisible(there and (bool(told) or len(zones) > 1))
