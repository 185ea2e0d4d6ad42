"""The pages of a sheet as they will print, on the neutral ground of the bench."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRect, QSize, QTimer, Signal
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QStyle, QWidget

from swatchwright.desktop.widgets.areas import ScrollArea

__all__ = ["SheetPreview"]

_MARGIN, _GAP = 14, 14
_MM = 25.4
_RESTED = 150
_LARGEST, _SMALLEST = 2.5, 0.2
_EDGE = QColor("#8a8a8a")


class SheetPreview(ScrollArea):
    """Pages in rows, a whole one in view or each as large as on paper.

    Every picture is drawn anew for the size in which it is shown, and laid on the screen dot for
    dot; until it is there, the last one is stretched.

    Signals
    -------
    dots_wanted(float)
        The pages are to be drawn with so many dots to the inch.
    """

    dots_wanted = Signal(float)

    def __init__(self) -> None:
        super().__init__()
        self.full = False
        self._size = (210.0, 297.0)
        self._asked: float | None = None
        self.leaves = _Leaves()
        self.setWidget(self.leaves)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self._rested = QTimer(self)
        self._rested.setSingleShot(True)
        self._rested.setInterval(_RESTED)
        self._rested.timeout.connect(self.ask)

    # --- what is shown ---------------------------------------------------------------------------

    def show_size(self, size: tuple[float, float]) -> None:
        """Show pages of another size, mm, from now on; what they are drawn with is asked for."""
        self._size, self._asked = size, None
        self.ask()

    def show_pages(self, images: Sequence[QImage], dpi: float) -> None:
        """Show pages that were drawn with so many dots to the inch."""
        ratio = self.devicePixelRatioF()
        for image in images:
            image.setDevicePixelRatio(ratio)
        self.leaves.set_images(images, dpi / ratio)
        self._place()

    def clear(self) -> None:
        """Show nothing."""
        self._asked = None
        self.leaves.set_images((), 0.0)
        self._place()

    def set_full(self, *, full: bool) -> None:
        """Show pages as large as on paper, or a whole one."""
        self.full = full
        self._place()
        self.ask()

    @property
    def times(self) -> float:
        """How large pages are shown, 1 as on paper."""
        return self._shown() / self.logicalDpiX()

    def ask(self) -> None:
        """Ask for pictures in the size in which they are shown, unless that was done."""
        dots = self._shown() * self.devicePixelRatioF()
        if dots != self._asked:
            self._asked = dots
            self.dots_wanted.emit(dots)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Place the pages anew, and have them drawn once the window keeps its size."""
        super().resizeEvent(event)
        self._place()
        self._rested.start()

    # --- sizes -----------------------------------------------------------------------------------

    def _room(self) -> QSize:
        """Give the room for pages, with that of a bar to scroll with taken off."""
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        room = self.maximumViewportSize()
        return QSize(room.width() - bar - 2 * _MARGIN, room.height() - 2 * _MARGIN)

    def _shown(self) -> float:
        """Give how many dots of the window an inch of paper takes."""
        real = float(self.logicalDpiX())
        if self.full:
            return real
        room = self._room()
        wide, high = (max(1, side) for side in (room.width(), room.height()))
        fits = min(wide / (self._size[0] / _MM), high / (self._size[1] / _MM))
        return min(max(fits, _SMALLEST * real), _LARGEST * real)

    def _place(self) -> None:
        """Lay the pages in rows, as many beside each other as there is room for."""
        dots = self._shown()
        wide, high = (max(1, round(side * dots / _MM)) for side in self._size)
        count = len(self.leaves.images)
        across = max(1, min(count, (self._room().width() + _GAP) // (wide + _GAP)))
        rows = -(-count // across)
        needs = QSize(
            across * wide + (across - 1) * _GAP + 2 * _MARGIN,
            max(0, rows * (high + _GAP) - _GAP) + 2 * _MARGIN,
        )
        room = self.maximumViewportSize()
        left = max(_MARGIN, (room.width() - needs.width()) // 2 + _MARGIN)
        self.leaves.resize(
            max(needs.width(), self.viewport().width()),
            max(needs.height(), self.viewport().height()),
        )
        self.leaves.place(
            dots,
            [
                QRect(
                    left + (i % across) * (wide + _GAP),
                    _MARGIN + (i // across) * (high + _GAP),
                    wide,
                    high,
                )
                for i in range(count)
            ],
        )


class _Leaves(QWidget):
    """The pages, painted where they were placed."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("bench")
        self.images: tuple[QImage, ...] = ()
        self.places: list[QRect] = []
        self._drawn = self._dots = 0.0

    def set_images(self, images: Sequence[QImage], drawn: float) -> None:
        """Take the pictures, and for how many dots of the window to the inch they were drawn."""
        self.images, self._drawn = tuple(images), drawn
        self.update()

    def place(self, dots: float, places: list[QRect]) -> None:
        """Take where the pages lie."""
        self._dots, self.places = dots, places
        self.update()

    @property
    def dot_for_dot(self) -> bool:
        """Whether the pictures were drawn for the size in which they are shown."""
        return abs(self._drawn - self._dots) < 1e-6

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the pages that are in view."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        for image, place in zip(self.images, self.places, strict=False):
            if not place.adjusted(-1, -1, 2, 2).intersects(event.rect()):
                continue
            paper = place
            if self.dot_for_dot:
                # The last row of dots is drawn whole, where the paper ends within it.
                paper = QRect(place.topLeft(), image.deviceIndependentSize().toSize())
                painter.drawImage(paper.topLeft(), image)
            else:
                painter.drawImage(paper, image)
            painter.setPen(_EDGE)
            painter.drawRect(paper.adjusted(-1, -1, 0, 0))
        painter.end()
