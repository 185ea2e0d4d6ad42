"""A paint shown large: dry and wet, let down with white, and coat after coat over a card.

All fields touch, with nothing between them.
"""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.acts.known import Hiding
from swatchwright.acts.shelf_view import WholeLook
from swatchwright.colour.convert import in_srgb
from swatchwright.desktop import words as all_words
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import shelf as words
from swatchwright.values import Lab

__all__ = ["PaintPicture"]

_CARD_BLACK, _CARD_WHITE = QColor("#000000"), QColor("#e6e6e6")
_HEIGHT = 186


class PaintPicture(QWidget):
    """Masstone above, let-downs in the middle, the card of black and white below."""

    def __init__(self) -> None:
        super().__init__()
        self._whole: WholeLook | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(380, _HEIGHT)

    def show_paint(self, whole: WholeLook) -> None:
        """Show a paint."""
        self._whole = whole
        self.setAccessibleName(words.look_told(whole))
        labs = [whole.look.dry, whole.look.wet, *(down.dry for down in whole.look.let_downs)]
        self.setToolTip("" if all(map(in_srgb, labs)) else all_words.NOT_ON_SCREEN)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the fields; the word of each in its corner."""
        del event
        whole = self._whole
        if whole is None:
            return
        painter = QPainter(self)
        downs = whole.look.let_downs
        top = self.height() * (5 if downs else 7) // 12
        middle = self.height() * 3 // 4 if downs else top
        self._row(
            painter,
            QRect(0, 0, self.width(), top),
            [(whole.look.dry, words.DRY, 3), (whole.look.wet, words.WET, 2)],
        )
        self._row(
            painter,
            QRect(0, top, self.width(), middle - top),
            [(down.dry, words.let_down_word(down.parts), 1) for down in downs],
        )
        self._card(painter, QRect(0, middle, self.width(), self.height() - middle), whole)
        painter.end()

    def _row(self, painter: QPainter, area: QRect, fields: list[tuple[Lab, str, int]]) -> None:
        total, left = sum(weight for _, _, weight in fields), 0
        where = Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignLeft
        for lab, word, weight in fields:
            right = left + weight
            field = QRect(
                area.left() + area.width() * left // total,
                area.top(),
                area.width() * right // total - area.width() * left // total,
                area.height(),
            )
            painter.fillRect(field, screen_colour(lab))
            shown = word if in_srgb(lab) else all_words.about(word)
            room = field.adjusted(9, 4, -4, -5)
            write_on(painter, room, int(where), shown, screen_colour(lab))
            left = right

    def _card(self, painter: QPainter, area: QRect, whole: WholeLook) -> None:
        """Paint the card: bare at the left, then one coat more in each column."""
        count = len(whole.card) + 1
        half = area.height() // 2
        for n in range(count):
            left = area.left() + area.width() * n // count
            width = area.left() + area.width() * (n + 1) // count - left
            if n:
                card = whole.card[n - 1]
                upper, lower = screen_colour(card.over_black), screen_colour(card.over_white)
            else:
                upper, lower = _CARD_BLACK, _CARD_WHITE
            painter.fillRect(QRect(left, area.top(), width, half), upper)
            painter.fillRect(QRect(left, area.top() + half, width, area.height() - half), lower)
            if not n and whole.known.hiding is Hiding.GUESSED:
                centre = int(Qt.AlignmentFlag.AlignCenter)
                write_on(
                    painter, QRect(left, area.top(), width, half), centre, words.GUESSED, upper
                )
            if n:
                where = Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignLeft
                cell = QRect(left, area.top(), width, area.height()).adjusted(6, 0, -2, -3)
                coats = whole.card[n - 1].coats
                told = (words.coats_word(coats), words.coats_short(coats))
                room, wide = cell.width(), painter.fontMetrics().horizontalAdvance
                fits = next((word for word in told if wide(word) <= room), str(coats))
                write_on(painter, cell, int(where), fits, lower)
