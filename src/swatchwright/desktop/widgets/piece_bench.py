"""The piece as it is seen: drawn to scale in its colours, its parts to be pressed."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtWidgets import (
    QButtonGroup,
    QMenu,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish_zones import SeenZones
from swatchwright.acts.piece import SizedPiece
from swatchwright.acts.piece_job import ZoneMix
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.piece_fields import label
from swatchwright.desktop.widgets.piece_gone import GoneZones
from swatchwright.desktop.widgets.piece_press import NONE, PressedDrawing
from swatchwright.desktop.widgets.piece_seen import PieceSeen
from swatchwright.desktop.widgets.piece_zones import ZoneStrip
from swatchwright.desktop.words import piece as words
from swatchwright.piece.areas import part_areas
from swatchwright.piece.drawing import Drawing, View
from swatchwright.values import Lab

__all__ = ["PieceBench"]

Drawings = Mapping[View, Drawing]
_BESIDE = 6
"""Pixels between buttons."""
_TOLD = 36
"""Pixels of two lines."""


class PieceBench(QWidget):
    """The drawing, from one of two sides, with its finish or bare, and its colours.

    What is outlined on it is told below it, with a button that goes to its row of the table.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._found: SizedPiece | None = None
        self._drawings: Drawings = {}
        self._mixes: Mapping[str, ZoneMix] = {}
        self._seen = SeenZones()
        self.seen = PieceSeen()
        self.seen.changed.connect(self._show)
        self.gone = GoneZones()
        self.drawing = PressedDrawing(lambda outline: outline.row)
        self.told = label(words.PRESS_PART)
        self.to_row = QPushButton(words.TO_ROW)
        self.zones = ZoneStrip()
        self.total = label("", "heading", wraps=False)
        self.views = {
            View.PICTURE: QPushButton(words.VIEW_PICTURE),
            View.FRONT: QPushButton(words.VIEW_FRONT),
        }
        self._group = QButtonGroup(self)
        for button in self.views.values():
            button.setObjectName("little")
            button.setCheckable(True)
            self._group.addButton(button)
            button.clicked.connect(self._show)
        self.views[View.PICTURE].setChecked(True)
        self.more = QPushButton(words.MORE)
        for button in (self.more, self.to_row):
            button.setObjectName("little")
        self.to_row.setToolTip(f"<p>{words.TO_ROW_TIP}</p>")
        self.menu = QMenu(self.more)
        self.more.setMenu(self.menu)
        top = BreakingRow(_BESIDE)
        top.put(self.total)
        top.put(*self.views.values(), self.more, pushed=True)
        # What is below stays where it is, however long the words of a part are.
        follow_letters(self.told, lambda: self.told.setMinimumHeight(grown(_TOLD)))
        below = BreakingRow(_BESIDE)
        below.put(self.told, stretches=True)
        below.put(self.to_row, pushed=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addWidget(top)
        column.addWidget(self.seen)
        column.addWidget(self.gone)
        column.addWidget(self.drawing, 1)
        column.addWidget(below)
        column.addWidget(self.zones)
        column.addStretch(0)
        self.drawing.outlined.connect(self._tell)
        self._tell()

    def show_piece(
        self, found: SizedPiece, drawings: Drawings, mixes: Mapping[str, ZoneMix]
    ) -> None:
        """Show a piece that was measured and drawn, with the mixes of its zones."""
        self._found, self._drawings, self._mixes = found, drawings, mixes
        self.total.setText(words.total_line(found.areas.total))
        self.drawing.setEnabled(True)
        self._show()

    def hold(self) -> None:
        """Let nothing be pressed: what is drawn is no longer what the table has."""
        self.drawing.choose(NONE)
        self.drawing.setEnabled(False)

    def show_mixes(self, mixes: Mapping[str, ZoneMix]) -> None:
        """Fill the zones with the colours of their mixes."""
        self._mixes = mixes
        self._show()

    def show_seen(self, seen: SeenZones) -> None:
        """Take how the zones look with their finish, and bare in every light."""
        self._seen = seen
        self.seen.show_seen(seen)
        self._show()

    def labs(self) -> dict[str, Lab]:
        """Give the colours of the zones that have a mix, as they are seen."""
        light, finished = self.seen.light(), self.seen.is_finished()
        found = {}
        for zone, mix in self._mixes.items():
            look = self._seen.looks.get(zone)
            known = look is not None and look.parts == mix.parts
            found[zone] = look.seen(light, finished=finished) if look and known else mix.dry
        return found

    def colours(self) -> dict[str, str]:
        """Give the same as ``#rrggbb``."""
        return {zone: screen_colour(lab).name() for zone, lab in self.labs().items()}

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
        labs = self.labs()
        self.drawing.show_colours({zone: screen_colour(lab) for zone, lab in labs.items()})
        filled = {zone: colour for zone in zones if (colour := self.drawing.fill(zone))}
        self.zones.show_zones(found.areas.zones, filled, labs, self.drawing.numbered())
        told = [field.accessibleName() for field in self.zones.fields]
        over = self._seen.over if self.seen.is_finished() else ()
        seen = words.seen_told(over, self.seen.light())
        name = words.drawing_told(found.piece.name, (front.width, front.height), told, seen)
        parts = found.piece.parts
        self.drawing.tell(
            name, lambda row: words.part_told(parts[row], part_areas(parts[row]), labs)
        )
        self._tell()

    def _tell(self) -> None:
        """Tell below the drawing what is outlined on it, or what can be done."""
        told = self.drawing.told_of(self.drawing.here())
        self.told.setText(told or words.PRESS_PART)
        self.to_row.setEnabled(bool(told))
