"""How far mixes with a paint are off, before a fit and after it, as bars on one scale."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.acts.fit import PaintFit
from swatchwright.acts.known import GOOD
from swatchwright.acts.sitting_fit import Doubt
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.words import sitting as words
from swatchwright.desktop.words.shelf import DOUBT_TIP, is_guess

__all__ = ["DoubtBar", "DoubtScale"]

_FAR, _MOST = 10.0, 14.0
_WIDTH, _ROW, _SCALE_ROW = 380, 52, 26
_GAP = 8


class _Scaled(QWidget):
    """Something drawn on the scale: room for words at the left and at the right of it."""

    def __init__(self, height: int) -> None:
        super().__init__()
        self._height = height
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        follow_letters(self, self._grow)

    def _grow(self) -> None:
        self.setMinimumSize(grown(_WIDTH), grown(self._height))
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(grown(_WIDTH), grown(self._height))

    def left(self) -> float:
        """Give where the scale begins: after the longer of the words before the bars."""
        wide = self.fontMetrics().horizontalAdvance
        return max(wide(words.BEFORE), wide(words.AFTER)) + _GAP

    def at(self, off: float) -> float:
        """Give where a difference lies on the scale; what is beyond its end lies there."""
        return self.left() + (self.end() - self.left()) * min(off, _MOST) / _MOST

    def end(self) -> float:
        """Give where the scale ends: before the longest of the words after the bars."""
        wide = self.fontMetrics().horizontalAdvance
        return self.width() - max(map(wide, words.ends_of_bars())) - 2 * _GAP


class DoubtScale(_Scaled):
    """The scale above the bars: how far is good, and where another colour begins."""

    def __init__(self) -> None:
        super().__init__(_SCALE_ROW)
        self.setAccessibleName(words.SCALE_TOLD)
        self.setToolTip(DOUBT_TIP)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the words: what is good ends at its mark, what is far begins there."""
        del event
        painter = QPainter(self)
        painter.setPen(self.palette().text().color())
        foot, middle = self.height() - 5, Qt.AlignmentFlag.AlignVCenter
        for off in (GOOD, _FAR):
            painter.drawLine(round(self.at(off)), 2, round(self.at(off)), self.height())
        good = QRectF(0, 0, self.at(GOOD) - _GAP, foot)
        painter.drawText(good, int(middle | Qt.AlignmentFlag.AlignRight), words.SCALE_GOOD)
        far = QRectF(self.at(_FAR) + _GAP, 0, self.width(), foot)
        painter.drawText(far, int(middle | Qt.AlignmentFlag.AlignLeft), words.SCALE_FAR)
        painter.end()


class DoubtBar(_Scaled):
    """Two bars on the same scale: open for what was, filled for what is, with a line at good."""

    def __init__(self, fit: PaintFit, doubt: Doubt) -> None:
        super().__init__(_ROW)
        self.setAccessibleName(words.doubt_told(fit, doubt.before, doubt.after))
        self.setToolTip(DOUBT_TIP)
        self._guessed = (False, is_guess(fit.paint))
        self._bars = (
            (words.BEFORE, doubt.before, words.before_word(fit)),
            (words.AFTER, doubt.after, words.NOT_KNOWN),
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the bars; where nothing could be said, a word stands in place of one."""
        del event
        painter = QPainter(self)
        half = self.height() / 2
        for n, (word, off, untold) in enumerate(self._bars):
            room = QRectF(0, n * half, self.width(), half)
            ink = self.palette().text().color()
            painter.setPen(ink)
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, word)
            if off is not None:
                bar = QRectF(self.left(), n * half + 6, self.at(off) - self.left(), half - 12)
                if n:
                    painter.fillRect(bar, ink)
                else:
                    painter.drawRect(bar)
            told = untold if off is None else words.off_word(off, guessed=self._guessed[n])
            after = room.adjusted(self.end() + _GAP, 0, 0, 0)
            painter.drawText(after, Qt.AlignmentFlag.AlignVCenter, told)
        self._line(painter)
        painter.end()

    def _line(self, painter: QPainter) -> None:
        """Draw where good ends: through all rows, and seen on a filled bar too."""
        x = round(self.at(GOOD))
        painter.setPen(self.palette().text().color())
        painter.drawLine(x, 0, x, self.height())
        painter.setPen(self.palette().base().color())
        painter.drawLine(x + 1, 0, x + 1, self.height())
