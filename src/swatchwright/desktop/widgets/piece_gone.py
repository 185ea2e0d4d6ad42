"""Mixes that are kept for zones which the piece does not have, and a button to take each off."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.words import brief
from swatchwright.desktop.words import piece as words

__all__ = ["GoneZones"]


class GoneZones(QWidget):
    """A row for each; not in view while there is none.

    Signals
    -------
    taken_off(str)
        The colour and the mixes for a zone are to be taken off the job.
    """

    taken_off = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons: dict[str, QPushButton] = {}
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(4)
        self.hide()

    def show_zones(self, zones: Sequence[str]) -> None:
        """Tell of the mixes that are kept for these zones."""
        if tuple(self.buttons) == tuple(zones):
            return
        while self._rows.count():
            item = self._rows.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.buttons = {zone: QPushButton(brief.TAKE_OFF) for zone in zones}
        for zone, button in self.buttons.items():
            self._rows.addWidget(self._row(zone, button))
        self.setVisible(bool(zones))

    def _row(self, zone: str, button: QPushButton) -> QWidget:
        button.setObjectName("little")
        button.setToolTip(f"<p>{brief.TAKE_OFF_TIP}</p>")
        button.setAccessibleName(brief.take_off_name(zone))
        button.clicked.connect(lambda: self.taken_off.emit(zone))
        holder = QWidget()
        row = QHBoxLayout(holder)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(label(words.no_such_zone(zone), "warn"), 1)
        row.addWidget(button, 0, Qt.AlignmentFlag.AlignTop)
        return holder
