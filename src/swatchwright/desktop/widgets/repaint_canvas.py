"""The photo of the piece, on which strokes are drawn.

A drag draws with the brush that is chosen; with that of the grey card it draws a box. By keyboard:
Return lays a box in the middle, arrows move it, Shift with arrows sizes it, Return again makes a
stroke of it, Delete or Escape takes it away; + and - enlarge and reduce. The wheel does so about
the pointer, and a drag with another button moves about the photo.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.acts.repaint import Marked, Stroke
from swatchwright.desktop.widgets.framing import ARROWS, Framing, zoom_key
from swatchwright.desktop.widgets.repaint_marks import outline, paint_box, paint_stroke
from swatchwright.desktop.words import repaint as words
from swatchwright.desktop.words.photo import PROPOSED_TAG
from swatchwright.values import Rect

__all__ = ["RepaintCanvas"]

_APART = 3.0
"""Pixels of the widget that the brush goes before another point is noted."""

_SMALLEST_BOX = 8.0


class RepaintCanvas(QWidget):
    """The photo fitted into the space there is, with the strokes on it.

    Its framing may be shared: what is enlarged here is enlarged there.

    Signals
    -------
    stroked(tuple, bool)
        A stroke was drawn: its points in pixels of the photo, and whether it fills them.
    boxed(Rect)
        A box was drawn with the brush of the grey card.
    wider(int)
        A wider brush is asked for, or of -1 a narrower one.
    """

    stroked = Signal(object, bool)
    boxed = Signal(object)
    wider = Signal(int)

    def __init__(self, framing: Framing) -> None:
        super().__init__()
        self._framing = framing
        self._panning: QPointF | None = None
        framing.changed.connect(self.update)
        self._image = QImage()
        self._marked = Marked((1, 1))
        self._grey: Rect | None = None
        self._proposed: Rect | None = None
        self._zone: str | None = None
        self._width = 24.0
        self._points: list[QPointF] = []
        self._start: QPointF | None = None
        self.box: QRectF | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(220, 160)
        self.setAccessibleName(words.CANVAS_NAME)
        self.setToolTip(f"<p>{words.BY_KEYS}</p>")

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(560, 320)

    def show_image(self, image: QImage) -> None:
        """Show a picture of the photo."""
        self._image = image
        self.update()

    def show_marks(self, marked: Marked, grey: Rect | None) -> None:
        """Show strokes and the box of the grey card, on the photo of the size they are for."""
        if marked.size != self._marked.size:
            self.box, self._points = None, []
        self._marked, self._grey = marked, grey
        self._framing.fit(QSizeF(*marked.size))
        self.setAccessibleName(words.canvas_told(marked.zones, grey=grey is not None))
        self.update()

    def show_proposed(self, rect: Rect | None) -> None:
        """Show where the grey card may be, which is asked about elsewhere; None for no more."""
        self._proposed = rect
        self.update()

    def set_brush(self, zone: str | None, width: float) -> None:
        """Take a brush: a zone and its width in pixels of the photo, or None for the grey card."""
        self._zone, self._width = zone, width
        self.update()

    # --- between photo and screen ----------------------------------------------------------------

    def scale(self) -> float:
        """Give widget pixels per pixel of the photo."""
        return self._framing.scale(QSizeF(self.size()))

    def to_widget(self, x: float, y: float) -> QPointF:
        """Give where a place of the photo is in the widget."""
        return self._framing.to_widget(QSizeF(self.size()), x, y)

    def _to_photo(self, at: QPointF) -> QPointF:
        return self._framing.to_picture(QSizeF(self.size()), at)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Enlarge or reduce about the pointer."""
        self._framing.turn_wheel(QSizeF(self.size()), event)

    # --- mouse -----------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Put the brush down; with another button, move about the photo."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        if self._image.isNull():
            return
        if event.button() is not Qt.MouseButton.LeftButton:
            self._panning = event.position()
            return
        at = self._to_photo(event.position())
        if self._zone is None:
            self._start, self.box = at, QRectF(at, QSizeF(0, 0))
        else:
            self._points, self.box = [at], None
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Draw or move on."""
        if self._panning is not None:
            way, self._panning = event.position() - self._panning, event.position()
            self._framing.move(QSizeF(self.size()), way)
            return
        at = self._to_photo(event.position())
        if self._start is not None:
            self.box = QRectF(self._start, at).normalized()
            self.update()
        elif self._points:
            way = (at - self._points[-1]) * self.scale()
            if way.manhattanLength() >= _APART:
                self._points.append(at)
                self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Lift the brush."""
        if event.button() is not Qt.MouseButton.LeftButton:
            self._panning = None
            return
        if self._start is not None:
            box, self._start, self.box = self.box or QRectF(), None, None
            if min(box.width(), box.height()) * self.scale() >= _SMALLEST_BOX:
                self.boxed.emit(self._framing.whole(box))
        elif self._points:
            points, self._points = self._points, []
            self.stroked.emit(tuple((round(p.x(), 1), round(p.y(), 1)) for p in points), False)
        self.update()

    # --- keyboard --------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Lay, move, size and use a box; or take another brush."""
        key = event.key()
        if self._image.isNull():
            super().keyPressEvent(event)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._agree()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Escape) and self.box:
            self.box = None
        elif key in ARROWS and self.box is not None:
            sizing = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            way = ARROWS[Qt.Key(key)]
            self.box = self._framing.nudged(self.box, way, sizing=sizing, least=2)
        elif (factor := zoom_key(event)) is not None:
            self._framing.zoom_at(QSizeF(self.size()), QRectF(self.rect()).center(), factor)
        elif key in _WIDER:
            self.wider.emit(_WIDER[Qt.Key(key)])
        else:
            super().keyPressEvent(event)
        self.update()

    def _agree(self) -> None:
        """Lay a box, or make a stroke of the one that lies there; it stays for the next one."""
        width, height = self._marked.size
        if self.box is None:
            self.box = QRectF(width * 0.45, height * 0.45, width * 0.1, height * 0.1)
        elif self._zone is None:
            box, self.box = self.box, None
            self.boxed.emit(self._framing.whole(box))
        else:
            corners = (self.box.topLeft(), self.box.topRight(), self.box.bottomRight())
            points = (*corners, self.box.bottomLeft())
            self.stroked.emit(tuple((round(p.x(), 1), round(p.y(), 1)) for p in points), True)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show the focus."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show that it is gone."""
        super().focusOutEvent(event)
        self.update()

    # --- painting --------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the photo and what is drawn on it."""
        del event
        painter = QPainter(self)
        painter.setRenderHints(
            QPainter.RenderHint.SmoothPixmapTransform | QPainter.RenderHint.Antialiasing
        )
        if not self._image.isNull():
            painter.drawImage(self._framing.frame(QSizeF(self.size())), self._image)
            for stroke in self._marked.strokes:
                paint_stroke(painter, stroke, self.to_widget, self.scale())
            if self._points:
                points = tuple((p.x(), p.y()) for p in self._points)
                stroke = Stroke(self._zone or "", points, self._width)
                paint_stroke(painter, stroke, self.to_widget, self.scale())
            for rect, word in ((self._grey, words.GREY_TAG), (self._proposed, PROPOSED_TAG)):
                if rect is not None:
                    area = QRectF(rect.x, rect.y, rect.width, rect.height)
                    paint_box(painter, area, word, self.to_widget)
            if self.box is not None:
                zone = self._zone
                word = words.GREY_TAG if zone is None else words.zone_word(zone)
                paint_box(painter, self.box, word, self.to_widget)
        if self.hasFocus():
            outline(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), Qt.PenStyle.DotLine)
        painter.end()


_WIDER = {Qt.Key.Key_BracketLeft: -1, Qt.Key.Key_BracketRight: 1}
