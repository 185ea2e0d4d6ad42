"""The piece as it is seen: drawn to scale in its colours, with its zones below it."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.piece import SizedPiece
from swatchwright.acts.piece_job import ZoneMix
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.piece_drawing import PieceDrawing
from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.widgets.piece_zones import ZoneStrip
from swatchwright.desktop.words import piece as words
from swatchwright.piece.drawing import Drawing, View

__all__ = ["PieceBench"]

Drawings = Mapping[View, Drawing]


class PieceBench(QWidget):
    """The drawing, from one of two sides, and the zones."""

    def __init__(self, menu: QMenu, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._found: SizedPiece | None = None
        self._drawings: Drawings = {}
        self._mixes: Mapping[str, ZoneMix] = {}
        self.drawing = PieceDrawing()
        self.zones = ZoneStrip()
        self.total = label("", "heading", wraps=False)
        self.views = {
            View.PICTURE: QPushButton(words.VIEW_PICTURE),
            View.FRONT: QPushButton(words.VIEW_FRONT),
        }
        self._group = QButtonGroup(self)
        top = QHBoxLayout()
        top.addWidget(self.total)
        top.addStretch(1)
        for button in self.views.values():
            button.setObjectName("little")
            button.setCheckable(True)
            self._group.addButton(button)
            button.clicked.connect(self._show)
            top.addWidget(button)
        self.views[View.PICTURE].setChecked(True)
        self.more = QPushButton(words.MORE)
        self.more.setObjectName("little")
        self.more.setMenu(menu)
        top.addWidget(self.more)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(top)
        column.addWidget(self.drawing, 1)
        column.addWidget(self.zones)
        column.addStretch(0)

    def show_piece(
        self, found: SizedPiece, drawings: Drawings, mixes: Mapping[str, ZoneMix]
    ) -> None:
        """Show a piece that was measured and drawn, with the mixes of its zones."""
        self._found, self._drawings, self._mixes = found, drawings, mixes
        self.total.setText(words.total_line(found.areas.total))
        self._show()

    def show_mixes(self, mixes: Mapping[str, ZoneMix]) -> None:
        """Fill the zones with the colours of their mixes."""
        self._mixes = mixes
        self._show()

    def colours(self) -> dict[str, str]:
        """Give the colours of the zones that have a mix, as ``#rrggbb``."""
        return {zone: screen_colour(mix.dry).name() for zone, mix in self._mixes.items()}

    def _show(self) -> None:
        found = self._found
        if found is None:
            return
        view = View.FRONT if self.views[View.FRONT].isChecked() else View.PICTURE
        front = self._drawings[View.FRONT]
        sizes = words.millimetres(front.width), words.millimetres(front.height)
        zones = [zone.zone for zone in found.areas.zones]
        self.drawing.show_drawing(
            self._drawings[view], zones, sizes if view is View.FRONT else ("", "")
        )
        mixed = {zone: screen_colour(mix.dry) for zone, mix in self._mixes.items()}
        self.drawing.show_colours(mixed)
        filled = {zone: colour for zone in zones if (colour := self.drawing.fill(zone))}
        labs = {zone: mix.dry for zone, mix in self._mixes.items()}
        self.zones.show_zones(found.areas.zones, filled, labs, self.drawing.numbered())
        told = [field.accessibleName() for field in self.zones.fields]
        name = words.drawing_told(found.piece.name, (front.width, front.height), told)
        self.drawing.setAccessibleName(name)
