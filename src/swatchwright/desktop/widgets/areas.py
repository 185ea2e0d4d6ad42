"""What is scrolled, in one kind for all pages: by keyboard it is gone to, by a click it is not."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QLineEdit,
    QPlainTextEdit,
    QScrollArea,
    QWidget,
)

__all__ = ["ScrollArea"]

_TYPED_INTO = (QLineEdit, QAbstractSpinBox, QPlainTextEdit)


class ScrollArea(QScrollArea):
    """Shows its frame to those who came with the Tab key and scroll it by arrows.

    A click beside all fields ends typing, as it does where a click gives the focus.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Be done with the field that was typed into."""
        focused = QApplication.focusWidget()
        if isinstance(focused, _TYPED_INTO) and focused.window() is self.window():
            focused.clearFocus()
        super().mousePressEvent(event)
