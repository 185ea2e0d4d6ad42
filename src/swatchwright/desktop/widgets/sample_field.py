"""Colours edge to edge: the cloth, the sample, and what may be expected after adding."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.colour.convert import in_srgb
from swatchwright.desktop import words
from swatchwright.desktop.look import write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words.seen import fields_told
from swatchwright.values import Lab

__all__ = ["SampleField"]


class SampleField(QWidget):
    """Fields side by side with nothing between them, each with its word."""

    def __init__(self, height: int = 104) -> None:
        super().__init__()
        self._height = height
        self._fields: tuple[tuple[str, Lab], ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_colours(self, fields: Sequence[tuple[str, Lab]], told: str) -> None:
        """Show colours with their words; `told` is for a screen reader."""
        self._fields = tuple(fields)
        self.setAccessibleName(told)
        self.setAccessibleDescription(fields_told(self._fields))
        self.update()

    def colours(self) -> tuple[Lab, ...]:
        """Give what is shown."""
        return tuple(lab for _, lab in self._fields)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(240, self._height)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the fields."""
        del event
        if not self._fields:
            return
        painter = QPainter(self)
        edges = [round(self.width() * i / len(self._fields)) for i in range(len(self._fields) + 1)]
        corner = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft
        for (word, lab), left, right in zip(self._fields, edges, edges[1:], strict=False):
            colour, area = screen_colour(lab), QRect(left, 0, right - left, self.height())
            painter.fillRect(area, colour)
            told = word if in_srgb(lab) else words.about(word)
            write_on(painter, area.adjusted(9, 6, -9, -6), int(corner), told, colour)
        painter.end()
