"""A line that is cut with an ellipsis where there is no room, and told whole on pointing at it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy

__all__ = ["ElidedLabel"]

_SLACK = 2
"""Pixels more than the letters advance, for what leans out of them."""


class ElidedLabel(QLabel):
    """Takes what room there is, and needs none.

    Parameters
    ----------
    asks
        Whether it asks for as much as its text takes, or takes what others leave.
    """

    def __init__(self, *, asks: bool = False) -> None:
        super().__init__()
        self._whole = ""
        policy = QSizePolicy.Policy
        self.setSizePolicy(policy.Maximum if asks else policy.Ignored, policy.Preferred)

    def say(self, text: str) -> None:
        """Say a text."""
        self._whole = text
        self.setToolTip(text)
        self.setAccessibleName(text)
        self.updateGeometry()
        self._fit()

    def whole(self) -> str:
        """Give the text as it was said."""
        return self._whole

    def sizeHint(self) -> QSize:
        """Ask for the width of the whole text."""
        wide = self.fontMetrics().horizontalAdvance(self._whole)
        return QSize(wide + 2 * self.margin() + _SLACK, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """Ask for no width, so that a long text widens no window."""
        return QSize(0, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Cut the text anew."""
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        """Cut the text anew in another font."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange):
            self.updateGeometry()
            self._fit()

    def _fit(self) -> None:
        room = self.contentsRect().width()
        self.setText(self.fontMetrics().elidedText(self._whole, Qt.TextElideMode.ElideRight, room))
