"""How the samples came home: the distance of each from the cloth, and the list of them."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.acts.sample_rounds import SampleLoop
from swatchwright.colour.difference import ACCEPTED, JUST_SEEN
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import sample as words

__all__ = ["SampleHome"]

_LEFT, _TOP, _RIGHT, _BOTTOM = 12, 22, 108, 26
_LEAST = 4.0
_DOT = 9.0
_BESIDE = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class SampleHome(QWidget):
    """A dot of its own colour for each sample, as high as it was far from the cloth."""

    def __init__(self) -> None:
        super().__init__()
        self._loop: SampleLoop | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(words.HOME_NAME)

    def show_loop(self, loop: SampleLoop) -> None:
        """Show the samples of a loop."""
        self._loop = loop
        self.setAccessibleName(words.home_name(loop))
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(240, 160)

    def _area(self) -> QRectF:
        return QRectF(_LEFT, _TOP, self.width() - _LEFT - _RIGHT, self.height() - _TOP - _BOTTOM)

    def _top(self) -> float:
        """Give the distance at the upper edge."""
        far = [] if self._loop is None else [r.delta_e + r.give_or_take for r in self._loop.rounds]
        return max(_LEAST, *far) if far else _LEAST

    def place(self, number: int, distance: float) -> QPointF:
        """Give where a sample, the first being 0, stands with a distance."""
        area = self._area()
        count = 1 if self._loop is None else max(1, len(self._loop.rounds))
        x = area.left() + area.width() * (number + 0.5) / count
        return QPointF(x, area.bottom() - area.height() * min(1.0, distance / self._top()))

    def line_labels(self) -> list[tuple[float, str, QRectF]]:
        """Give each line's distance, its word and where that stands: one never over another."""
        left, high = self._area().right() + 6, self.fontMetrics().height()
        found: list[tuple[float, str, QRectF]] = []
        above = self._area().bottom() + _BOTTOM
        for level, word in ((JUST_SEEN, words.LINE_SEEN), (ACCEPTED, words.LINE_ACCEPTED)):
            top = min(self.place(0, level).y() - high / 2, above - high)
            found.append((level, word, QRectF(left, top, _RIGHT - 6, high)))
            above = top
        return found

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the lines, the dots and their doubts."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        area, ink = self._area(), self.palette().text().color()
        painter.setPen(QPen(ink, 1.5))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        for level, word, told in self.line_labels():
            y = self.place(0, level).y()
            painter.setPen(QPen(ink, 1, Qt.PenStyle.DashLine))
            painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
            painter.drawText(told, int(_BESIDE), word)
        if self._loop is not None:
            self._paint_rounds(painter, self._loop)
        painter.end()

    def _paint_rounds(self, painter: QPainter, loop: SampleLoop) -> None:
        ink = self.palette().text().color()
        dots = [self.place(i, r.delta_e) for i, r in enumerate(loop.rounds)]
        painter.setPen(QPen(ink, 1.5))
        for start, end in pairwise(dots):
            painter.drawLine(start, end)
        for number, (one, dot) in enumerate(zip(loop.rounds, dots, strict=True)):
            high = self.place(number, one.delta_e + one.give_or_take)
            low = self.place(number, max(0.0, one.delta_e - one.give_or_take))
            painter.setPen(QPen(ink, 1.5))
            painter.drawLine(low, high)
            painter.setBrush(screen_colour(one.sample))
            painter.drawEllipse(dot, _DOT, _DOT)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            below = QRectF(dot.x() - 20, self._area().bottom() + 3, 40, 20)
            painter.drawText(below, Qt.AlignmentFlag.AlignCenter, f"{number + 1}")
