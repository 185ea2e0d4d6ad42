"""The colour zones of a piece: number, word, area, and the colour that each gets."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from html import escape

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from swatchwright.desktop.look import write_on
from swatchwright.desktop.words import piece as words
from swatchwright.piece.areas import ZoneArea
from swatchwright.values import Lab

__all__ = ["ZoneField", "ZoneStrip"]

_ACROSS, _BESIDE = 4, 16


class ZoneField(QWidget):
    """One zone in its colour, with its number, word and area."""

    def __init__(self) -> None:
        super().__init__()
        self.lines = ("", "", "")
        self.rows = 3
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
        """Ask for room for its lines."""
        return QSize(110, self.rows * self.fontMetrics().lineSpacing() + 12)

    def breaks(self, width: int) -> bool:
        """Tell whether its colour in words takes two lines in this width."""
        # A field that has just been made has not its letters yet.
        self.ensurePolished()
        return self.fontMetrics().horizontalAdvance(self.lines[-1]) > width - _BESIDE

    def set_rows(self, rows: int) -> None:
        """Have room for so many lines."""
        if rows != self.rows:
            self.rows = rows
            self.updateGeometry()

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
            room = high if place < len(self.lines) - 1 else (self.rows - place) * high
            row = QRect(10, 6 + place * high, self.width() - _BESIDE, room)
            where = int(Qt.AlignmentFlag.AlignLeft) | int(Qt.TextFlag.TextWordWrap)
            if room > high:
                write_on(painter, row, where, line, self.colour)
                continue
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
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """See whether the words still fit."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Have room for a fourth line in all fields where the words of one need it."""
        across = max(1, min(_ACROSS, len(self.fields)))
        breaks = any(field.breaks(self.width() // across) for field in self.fields)
        for field in self.fields:
            field.set_rows(4 if breaks else 3)
