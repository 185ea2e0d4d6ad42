"""How a picture stands in a widget: fitted, enlarged about a point, moved about.

Two widgets that show the same picture may share one framing: then both show the same part of it.
"""

from __future__ import annotations

from PySide6.QtCore import QObject, QPoint, QPointF, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QWheelEvent

from swatchwright.values import Rect

__all__ = ["ARROWS", "Framing", "zoom_key"]

_MOST_ZOOM = 12.0
_ZOOMS = {Qt.Key.Key_Plus: 1.25, Qt.Key.Key_Equal: 1.25, Qt.Key.Key_Minus: 0.8}
ARROWS = {
    Qt.Key.Key_Left: QPoint(-1, 0),
    Qt.Key.Key_Right: QPoint(1, 0),
    Qt.Key.Key_Up: QPoint(0, -1),
    Qt.Key.Key_Down: QPoint(0, 1),
}
"""The ways of the arrow keys."""


class Framing(QObject):
    """Which part of a picture is seen, and how large; `room` is always the size of the widget.

    Signals
    -------
    changed()
        Another part is seen, or in another size.
    """

    changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.size = QSizeF()
        self.zoom = 1.0
        self._centre = QPointF(0.5, 0.5)

    def fit(self, size: QSizeF) -> None:
        """Take a picture of this size in pixels; one of another size than before is seen whole."""
        if size != self.size:
            self.size, self.zoom, self._centre = size, 1.0, QPointF(0.5, 0.5)
            self.changed.emit()

    def frame(self, room: QSizeF) -> QRectF:
        """Give where the picture stands in the widget; empty where there is none."""
        if self.size.isEmpty():
            return QRectF()
        fitted = self.size.scaled(room, Qt.AspectRatioMode.KeepAspectRatio) * self.zoom
        left = room.width() / 2 - self._centre.x() * fitted.width()
        top = room.height() / 2 - self._centre.y() * fitted.height()
        return QRectF(QPointF(left, top), fitted)

    def scale(self, room: QSizeF) -> float:
        """Give widget pixels per pixel of the picture."""
        return self.frame(room).width() / self.size.width()

    def to_widget(self, room: QSizeF, x: float, y: float) -> QPointF:
        """Give where a pixel of the picture is in the widget."""
        return self.frame(room).topLeft() + QPointF(x, y) * self.scale(room)

    def box_to_widget(self, room: QSizeF, box: QRectF) -> QRectF:
        """Give where a box in pixels of the picture is in the widget."""
        corners = (box.topLeft(), box.bottomRight())
        return QRectF(*(self.to_widget(room, at.x(), at.y()) for at in corners))

    def to_picture(self, room: QSizeF, at: QPointF) -> QPointF:
        """Give the place in the picture of a point of the widget, kept inside it."""
        inside = (at - self.frame(room).topLeft()) / self.scale(room)
        return QPointF(
            min(max(inside.x(), 0.0), self.size.width()),
            min(max(inside.y(), 0.0), self.size.height()),
        )

    # --- enlarging and moving --------------------------------------------------------------------

    def zoom_at(self, room: QSizeF, at: QPointF, factor: float) -> None:
        """Enlarge or reduce, keeping what is at a point of the widget there."""
        before = self.frame(room)
        if before.isEmpty():
            return
        x = (at.x() - before.left()) / before.width()
        y = (at.y() - before.top()) / before.height()
        self.zoom = min(max(self.zoom * factor, 1.0), _MOST_ZOOM)
        after = self.frame(room)
        x += (room.width() / 2 - at.x()) / after.width()
        y += (room.height() / 2 - at.y()) / after.height()
        self._look_at(room, QPointF(x, y))

    def turn_wheel(self, room: QSizeF, event: QWheelEvent) -> None:
        """Enlarge or reduce about the pointer."""
        self.zoom_at(room, event.position(), 1.2 ** (event.angleDelta().y() / 120))
        event.accept()

    def move(self, room: QSizeF, way: QPointF) -> None:
        """Move the picture by a way in the widget, no further than its edge."""
        frame = self.frame(room)
        if not frame.isEmpty():
            step = QPointF(way.x() / frame.width(), way.y() / frame.height())
            self._look_at(room, self._centre - step)

    def _look_at(self, room: QSizeF, centre: QPointF) -> None:
        """Bring a place of the picture, in shares of its size, to the middle of the widget."""
        frame = self.frame(room)
        reach_x = max(0.0, (frame.width() - room.width()) / 2 / frame.width())
        reach_y = max(0.0, (frame.height() - room.height()) / 2 / frame.height())
        self._centre = QPointF(
            min(max(centre.x(), 0.5 - reach_x), 0.5 + reach_x),
            min(max(centre.y(), 0.5 - reach_y), 0.5 + reach_y),
        )
        self.changed.emit()

    # --- boxes on the picture --------------------------------------------------------------------

    def whole(self, box: QRectF) -> Rect:
        """Give a box in whole pixels inside the picture."""
        width, height = round(self.size.width()), round(self.size.height())
        left, top = min(round(box.left()), width - 1), min(round(box.top()), height - 1)
        right, bottom = min(round(box.right()), width), min(round(box.bottom()), height)
        return Rect(left, top, max(1, right - left), max(1, bottom - top))

    def nudged(self, box: QRectF, way: QPoint, *, sizing: bool, least: float) -> QRectF:
        """Move or size a box by a hundredth of the picture; as it was where that may not be.

        `least` is the smallest width and height in pixels of the picture.
        """
        step = max(1.0, self.size.width() / 100)
        moved = QRectF(box)
        if sizing:
            moved.setSize(box.size() + QSizeF(way.x(), way.y()) * step)
        else:
            moved.translate(QPointF(way) * step)
        inside = QRectF(QPointF(0, 0), self.size).contains(moved)
        return moved if inside and min(moved.width(), moved.height()) >= least else box


def zoom_key(event: QKeyEvent) -> float | None:
    """Give by how much a key enlarges, if it is one that does: + and -."""
    return _ZOOMS.get(Qt.Key(event.key()))
