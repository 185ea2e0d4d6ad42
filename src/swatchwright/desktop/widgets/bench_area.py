"""The room the bench lies in: all of it in view where it fits, and scrolled where it does not."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtWidgets import QFrame, QWidget

from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.words import bench as words

__all__ = ["BenchArea"]


class BenchArea(ScrollArea):
    """Asks for the room that the bench needs, but for no more than the screen has.

    With the largest letters on a small screen there is not enough: then it is scrolled, rather than
    anything cut, as WCAG 2.2, 1.4.4 asks [WCAG22].
    """

    def __init__(self, bench: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setWidget(bench)
        self.setAccessibleName(words.BENCH)
        for bar in (self.horizontalScrollBar(), self.verticalScrollBar()):
            bar.rangeChanged.connect(self._take_keys)
        self._take_keys()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Ask for another room when the bench needs another: a scroll area would not."""
        if event.type() == QEvent.Type.LayoutRequest and watched is self.widget():
            self.updateGeometry()
        return super().eventFilter(watched, event)

    def minimumSizeHint(self) -> QSize:
        """Ask for what the bench needs, as far as the screen has it."""
        return self.needs().boundedTo(self.screen().availableSize())

    def needs(self) -> QSize:
        """Give the size, in pixels, at which all of the bench is in view."""
        bench = self.widget()
        return QSize() if bench is None else bench.minimumSizeHint()

    def _take_keys(self) -> None:
        """Be gone to by the Tab key only where there is something to scroll by arrows."""
        bars = (self.horizontalScrollBar(), self.verticalScrollBar())
        scrolls = any(bar.maximum() > 0 for bar in bars)
        policy = Qt.FocusPolicy
        self.setFocusPolicy(policy.TabFocus if scrolls else policy.NoFocus)
