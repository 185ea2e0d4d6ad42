"""The room the pages lie in: a page is in view where it fits, and scrolled where it does not."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt, QTimer
from PySide6.QtWidgets import (
    QFrame,
    QScrollArea,
    QScrollBar,
    QSizePolicy,
    QStackedWidget,
    QStyle,
    QWidget,
)

from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.words import bench as words

__all__ = ["BenchArea", "PageStack", "RailArea"]

_LEAST = QSize(640, 420)
"""Pixels of a page that are always in view."""


class PageStack(QStackedWidget):
    """Needs what the page in view needs; the others may be laid out for other letters still."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._highs: dict[int, int] = {}
        self.currentChanged.connect(self._take_room)

    def minimumSizeHint(self) -> QSize:
        """Need as much as the page in view."""
        page = self.currentWidget()
        return QSize() if page is None else page.minimumSizeHint()

    def heightForWidth(self, width: int) -> int:
        """Give how high a width makes the page in view; Qt would give that of the highest."""
        page = self.currentWidget()
        if page is None or not page.hasHeightForWidth():
            return -1
        if not self.isVisible() and not self._highs:
            # Out of view nothing tells that the page has changed: known for this step alone.
            QTimer.singleShot(0, self, self._highs.clear)
        # It is asked several times for each time that the page changes.
        if width not in self._highs:
            self._highs[width] = page.heightForWidth(width)
        return self._highs[width]

    def event(self, event: QEvent) -> bool:
        """Ask the page anew once it has changed; out of view nothing tells of that."""
        if event.type() in {QEvent.Type.LayoutRequest, QEvent.Type.Hide}:
            self._highs.clear()
        return super().event(event)

    def _take_room(self) -> None:
        """Leave the pages that are out of view out of account, also in how high a width makes it.

        Qt's own layout would be as high as the highest of all.
        """
        self._highs.clear()
        policy = QSizePolicy.Policy
        for place in range(self.count()):
            page = self.widget(place)
            if page is not None:
                asks = policy.Preferred if page is self.currentWidget() else policy.Ignored
                page.setSizePolicy(asks, asks)
        self.updateGeometry()


class BenchArea(ScrollArea):
    """Lets a page be larger than the window: with the largest letters on a small screen it is.

    Then it is scrolled, rather than anything cut, as WCAG 2.2, 1.4.4 asks [WCAG22].
    """

    def __init__(self, pages: PageStack, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setWidget(pages)
        self.setAccessibleName(words.BENCH)
        for bar in self.bars():
            bar.rangeChanged.connect(self._take_keys)
        self._take_keys()

    def bars(self) -> tuple[QScrollBar, QScrollBar]:
        """Give its scroll bars."""
        return self.horizontalScrollBar(), self.verticalScrollBar()

    def needs(self) -> QSize:
        """Give the size, in pixels, at which all of the page in view is seen."""
        pages = self.widget()
        return QSize() if pages is None else pages.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """Ask for a part of it: a window is never made larger than the screen by its letters."""
        return self.needs().boundedTo(_LEAST)

    def _take_keys(self) -> None:
        """Be gone to by the Tab key only where there is something to scroll by arrows."""
        scrolls = any(bar.maximum() > 0 for bar in self.bars())
        policy = Qt.FocusPolicy
        self.setFocusPolicy(policy.TabFocus if scrolls else policy.NoFocus)


class RailArea(QScrollArea):
    """Keeps the rail as wide as it is, and scrolls it where the window is too low for all of it."""

    def __init__(self, rail: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setWidgetResizable(True)
        self.setWidget(rail)
        rail.installEventFilter(self)
        self.verticalScrollBar().rangeChanged.connect(self._widen)
        self._widen()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the rail's width, which its letters change."""
        if watched is self.widget() and event.type() == QEvent.Type.Resize:
            self._widen()
        return super().eventFilter(watched, event)

    def _widen(self) -> None:
        rail = self.widget()
        if rail is None:
            return
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        self.setFixedWidth(rail.maximumWidth() + bar * (self.verticalScrollBar().maximum() > 0))
