"""The colour zones of a piece: number, word, area, and the colour that each gets."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from html import escape

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from swatchwright.desktop.look import write_on
from swatchwright.desktop.words import piece as words
from swatchwright.piece.areas import ZoneArea
from swatchwright.values import Lab

__all__ = ["ZoneField", "ZoneStrip"]

_ACROSS = 4


class ZoneField(QWidget):
    """One zone in its colour, with its number, word and area."""

    def __init__(self) -> None:
        super().__init__()
        self.lines = ("", "", "")
        self.colour = QColor()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_zone(
        self, number: int, zone: ZoneArea, colour: QColor, dry: Lab | None, *, seen: bool
    ) -> None:
        """Show a zone, and say where the drawing does not show it."""
        size = words.area(zone.area) if seen else words.area_unseen(zone.area)
        self.lines = (words.zone_head(number, zone.zone), size, words.zone_colour(dry))
        self.colour = colour
        told = words.zone_line(number, zone.zone, zone.area, dry)
        self.setAccessibleName(told)
        self.setToolTip(f"<p>{escape(told)}</p>")
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for room for three lines."""
        return QSize(110, 3 * self.fontMetrics().lineSpacing() + 12)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the colour and write on it."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.colour)
        high = self.fontMetrics().lineSpacing()
        for place, line in enumerate(self.lines):
            font = painter.font()
            font.setBold(place == 0)
            painter.setFont(font)
            row = QRect(10, 6 + place * high, self.width() - 16, high)
            shown = painter.fontMetrics().elidedText(line, Qt.TextElideMode.ElideRight, row.width())
            write_on(painter, row, int(Qt.AlignmentFlag.AlignLeft), shown, self.colour)
        painter.end()


class ZoneStrip(QWidget):
    """All zones edge to edge, four in a row."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(words.ZONES)
        self.fields: list[ZoneField] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(0)

    def show_zones(
        self,
        zones: Sequence[ZoneArea],
        colours: Mapping[str, QColor],
        labs: Mapping[str, Lab],
        seen: Collection[str],
    ) -> None:
        """Show zones in the order of their numbers."""
        while len(self.fields) > len(zones):
            field = self.fields.pop()
            field.hide()
            field.deleteLater()
        while len(self.fields) < len(zones):
            field = ZoneField()
            place = len(self.fields)
            self.fields.append(field)
            self._grid.addWidget(field, place // _ACROSS, place % _ACROSS)
        for number, (field, zone) in enumerate(zip(self.fields, zones, strict=True), 1):
            name = zone.zone
            field.show_zone(number, zone, colours[name], labs.get(name), seen=name in seen)
