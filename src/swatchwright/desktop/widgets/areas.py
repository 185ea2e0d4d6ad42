"""What is scrolled, in one kind for all pages: by keyboard it is gone to, by a click it is not."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt, QTimer
from PySide6.QtGui import QHideEvent, QMouseEvent
from PySide6.QtWidgets import (
    QAbstractSpinBox,
    QApplication,
    QLineEdit,
    QPlainTextEdit,
    QScrollArea,
    QStyle,
    QWidget,
)

__all__ = ["ScrollArea", "bring_into_view"]

_OFF = Qt.ScrollBarPolicy.ScrollBarAlwaysOff
_TYPED_INTO = (QLineEdit, QAbstractSpinBox, QPlainTextEdit)


class ScrollArea(QScrollArea):
    """Shows its frame to those who came with the Tab key and scroll it by arrows.

    A click beside all fields ends typing, as it does where a click gives the focus. Without a bar
    below, it needs the width of what is in it: there is no other way to see all of that.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._highs: dict[int, int] = {}
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def set_whole(self, *, whole: bool) -> None:
        """Be as high as all that is in it, which is scrolled with the page then; or no longer."""
        policy = self.sizePolicy()
        policy.setHeightForWidth(whole)
        self.setSizePolicy(policy)
        # A bar would take width, and with that make what is in it higher than there is room for.
        self.setVerticalScrollBarPolicy(_OFF if whole else Qt.ScrollBarPolicy.ScrollBarAsNeeded)

    def heightForWidth(self, width: int) -> int:
        """Give how high all that is in it is, while it is to be so; else it goes by no width."""
        inside = self.widget()
        if inside is None or self.isHidden() or not self.hasHeightForWidth():
            return -1
        if not self.isVisible() and not self._highs:
            # Out of view nothing tells that what is in it has changed: known for this step alone.
            QTimer.singleShot(0, self, self._highs.clear)
        # It is asked several times for each time that what is in it changes.
        if width not in self._highs:
            self._highs[width] = self._high(inside, width)
        return self._highs[width]

    def _high(self, inside: QWidget, width: int) -> int:
        edges = 2 * self.frameWidth()
        high = inside.heightForWidth(width - edges) if inside.hasHeightForWidth() else 0
        return max(high, inside.minimumSizeHint().height()) + edges

    def minimumSizeHint(self) -> QSize:
        """Need the width of what is in it, where no bar would bring the rest into view."""
        least, inside = super().minimumSizeHint(), self.widget()
        if inside is None or self.horizontalScrollBarPolicy() != _OFF:
            return least
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        wide = inside.minimumSizeHint().width() + bar + 2 * self.frameWidth()
        return QSize(max(least.width(), wide), least.height())

    def hideEvent(self, event: QHideEvent) -> None:
        """Forget what may change out of view."""
        self._highs.clear()
        super().hideEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Need another width when what is in it does."""
        if event.type() == QEvent.Type.LayoutRequest and watched is self.widget():
            self._changed()
        return super().eventFilter(watched, event)

    def viewportEvent(self, event: QEvent) -> bool:
        """Hear of a change here where what is in it has no layout, as a text has none."""
        if event.type() == QEvent.Type.LayoutRequest:
            self._changed()
        return super().viewportEvent(event)

    def _changed(self) -> None:
        self._highs.clear()
        self.updateGeometry()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Be done with the field that was typed into."""
        focused = QApplication.focusWidget()
        if isinstance(focused, _TYPED_INTO) and focused.window() is self.window():
            focused.clearFocus()
        super().mousePressEvent(event)


def bring_into_view(part: QWidget, *, above: int = 0) -> None:
    """Scroll all that a widget is scrolled in, the page too, until it is seen.

    Parameters
    ----------
    part
        The widget.
    above
        Pixels to be seen above and below it.
    """
    around = part.parentWidget()
    while around is not None:
        if isinstance(around, QScrollArea):
            around.ensureWidgetVisible(part, 0, above)
        around = around.parentWidget()
