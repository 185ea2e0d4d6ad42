"""The cards to brush out as a numbered picture: what is on each, and what was read off it."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.acts.sitting import Card, Sitting
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import sitting as words

__all__ = ["BrushCards"]

_WIDTH, _HEIGHT, _GAP, _PAD = 206, 96, 10, 10
_BAR = 9


class BrushCards(QWidget):
    """Cards in rows, each with its number, its mix as words and as a bar of parts."""

    def __init__(self) -> None:
        super().__init__()
        self._sitting = Sitting()
        self._names: Mapping[str, str] = {}
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(words.CARDS_PICTURE)

    def show_cards(self, sitting: Sitting, names: Mapping[str, str]) -> None:
        """Show the cards of a sitting."""
        self._sitting, self._names = sitting, names
        self.setAccessibleDescription(words.cards_text(sitting, names))
        self._fit_height()
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(3 * (_WIDTH + _GAP), self._rows() * (_HEIGHT + _GAP))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Take more rows where it is narrow."""
        super().resizeEvent(event)
        self._fit_height()

    def _fit_height(self) -> None:
        self.setFixedHeight(max(1, self._rows()) * (_HEIGHT + _GAP))

    def _columns(self) -> int:
        return max(1, (self.width() + _GAP) // (_WIDTH + _GAP))

    def _rows(self) -> int:
        return -(-len(self._sitting.cards) // self._columns())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the cards."""
        del event
        painter = QPainter(self)
        columns = self._columns()
        width = (self.width() + _GAP) // columns - _GAP
        for n, card in enumerate(self._sitting.cards):
            left, top = (n % columns) * (width + _GAP), (n // columns) * (_HEIGHT + _GAP)
            self._card(painter, QRect(left, top, width, _HEIGHT), n + 1, card)
        painter.end()

    def _card(self, painter: QPainter, area: QRect, number: int, card: Card) -> None:
        colours = self.palette()
        ground, ink = colours.base().color(), colours.text().color()
        read = card.colour
        if read is not None:
            ground = screen_colour(read)
            ink = ink_on(ground)
        painter.fillRect(area, ground)
        painter.setPen(colours.placeholderText().color())
        painter.drawRect(area.adjusted(0, 0, -1, -1))
        inner = area.adjusted(_PAD, _PAD - 2, -_PAD, -_PAD - _BAR - 4)
        font = painter.font()
        bold = painter.font()
        bold.setBold(True)
        painter.setFont(bold)
        top = int(Qt.AlignmentFlag.AlignTop) | int(Qt.AlignmentFlag.AlignLeft)
        write_on(painter, inner, top, str(number), ground)
        painter.setFont(font)
        flags = int(Qt.AlignmentFlag.AlignTop) | int(Qt.TextFlag.TextWordWrap)
        told = words.card_words(card, self._names)
        write_on(painter, inner.adjusted(30, 0, 0, 0), flags, told, ground)
        painter.setPen(ink)
        self._bar(painter, area, card)

    def _bar(self, painter: QPainter, area: QRect, card: Card) -> None:
        """Draw the parts of a mix as a bar: the paint filled, the white open."""
        total = sum(part for _, part in card.mix)
        if len(card.mix) < 2 or not total:
            return
        bar = QRect(area.left() + _PAD, area.bottom() - _PAD - _BAR, area.width() - 2 * _PAD, _BAR)
        filled = QRect(bar)
        filled.setWidth(max(2, round(bar.width() * card.mix[0][1] / total)))
        painter.fillRect(filled, painter.pen().color())
        painter.drawRect(bar)
