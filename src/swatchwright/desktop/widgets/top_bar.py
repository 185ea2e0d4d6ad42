"""The bar above the bench: in one row, or in two where one would be wider than the window."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QWidget

__all__ = ["TopBar"]

_SPACE = 8
_NAME = 120
"""Pixels left for the name of the job, below which a second row is worth its height."""


class TopBar(QWidget):
    """Two groups of buttons, `left` and `right`, that stand side by side or one above the other."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.left, self.right = QHBoxLayout(), QHBoxLayout()
        self._both = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._both.setContentsMargins(0, 0, 0, 0)
        self._both.setSpacing(_SPACE)
        for group, stretch in ((self.left, 1), (self.right, 0)):
            group.setSpacing(_SPACE)
            self._both.addLayout(group, stretch)

    def one_row(self) -> int:
        """Give the width, in pixels, at which one row holds all."""
        ends = self.left.minimumSize().width() + self.right.minimumSize().width()
        return ends + _SPACE + _NAME

    @property
    def abreast(self) -> bool:
        """Whether both groups stand in one row."""
        return self._both.direction() == QBoxLayout.Direction.LeftToRight

    def minimumSizeHint(self) -> QSize:
        """Need the width of the wider group: the other may stand below it."""
        wide = max(group.minimumSize().width() for group in (self.left, self.right))
        return QSize(wide, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Stand in one row or in two."""
        super().resizeEvent(event)
        self._turn()

    def event(self, event: QEvent) -> bool:
        """Look anew once buttons are larger or smaller."""
        if event.type() == QEvent.Type.LayoutRequest:
            self._turn()
        return super().event(event)

    def _turn(self) -> None:
        way = QBoxLayout.Direction
        wanted = way.LeftToRight if self.width() >= self.one_row() else way.TopToBottom
        if self._both.direction() != wanted:
            self._both.setDirection(wanted)
            self.updateGeometry()
