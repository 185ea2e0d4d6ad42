"""The piece in its new colours, alone or with the photo of it left of a divider.

The divider goes with the mouse, and by keyboard with the arrows; Home and End bring it to an edge.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt
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

from swatchwright.desktop.widgets.framing import Framing, zoom_key
from swatchwright.desktop.widgets.repaint_marks import outline, paint_divider, paint_tag
from swatchwright.desktop.words import repaint as words

__all__ = ["RepaintAfter"]

_STEP = 0.02


class RepaintAfter(QWidget):
    """A picture, or in place of it what is to be done for one."""

    def __init__(self, framing: Framing) -> None:
        super().__init__()
        self.image, self._before = QImage(), QImage()
        self.divided = False
        self.share = 0.5
        self._framing, self._told = framing, words.FIRST_STROKE
        self._panning: QPointF | None = None
        framing.changed.connect(self.update)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(220, 160)
        self._tell()

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(560, 320)

    def show_image(self, image: QImage, told: str) -> None:
        """Show a picture, and tell it to a screen reader."""
        self.image, self._told = image, told
        self._tell()

    def show_before(self, image: QImage) -> None:
        """Take the photo of the piece as it is, for the left of the divider."""
        self._before = image
        self.update()

    def set_divided(self, *, divided: bool) -> None:
        """Show the piece as it is left of a divider, or not."""
        self.divided = divided
        focus = Qt.FocusPolicy.StrongFocus if divided else Qt.FocusPolicy.NoFocus
        self.setFocusPolicy(focus)
        self.setToolTip(f"<p>{words.DIVIDER_KEYS}</p>" if divided else "")
        self.setCursor(Qt.CursorShape.SplitHCursor if divided else Qt.CursorShape.ArrowCursor)
        self._tell()

    def set_share(self, share: float) -> None:
        """Put the divider at a share of the widget's width, 0-1."""
        self.share = min(max(share, 0.0), 1.0)
        self._tell()

    def _tell(self) -> None:
        name = words.divided_name(self._told, self.share) if self.divided else self._told
        self.setAccessibleName(name)
        self.update()

    # --- mouse and keyboard ----------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Bring the divider here; with another button, or without one, move about the photo."""
        if self.divided and event.button() is Qt.MouseButton.LeftButton:
            self.set_share(event.position().x() / self.width())
        else:
            self._panning = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with it."""
        if self._panning is not None:
            way, self._panning = event.position() - self._panning, event.position()
            self._framing.move(QSizeF(self.size()), way)
        elif self.divided and event.buttons() & Qt.MouseButton.LeftButton:
            self.set_share(event.position().x() / self.width())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End it."""
        del event
        self._panning = None

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Enlarge or reduce about the pointer."""
        self._framing.turn_wheel(QSizeF(self.size()), event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the divider, enlarge or reduce."""
        steps = {
            Qt.Key.Key_Left: self.share - _STEP,
            Qt.Key.Key_Right: self.share + _STEP,
            Qt.Key.Key_Home: 0.0,
            Qt.Key.Key_End: 1.0,
        }
        key = Qt.Key(event.key())
        if self.divided and key in steps:
            self.set_share(steps[key])
        elif (factor := zoom_key(event)) is not None:
            self._framing.zoom_at(QSizeF(self.size()), QRectF(self.rect()).center(), factor)
        else:
            super().keyPressEvent(event)

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
        """Paint the picture, or say what it waits for."""
        del event
        painter = QPainter(self)
        if self.image.isNull():
            painter.setPen(self.palette().windowText().color())
            inside = self.rect().adjusted(30, 30, -30, -30)
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(inside, int(flags), words.FIRST_STROKE)
        else:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            frame = self._framing.frame(QSizeF(self.size()))
            painter.drawImage(frame, self.image)
            if self.divided and not self._before.isNull():
                self._paint_before(painter, frame)
        if self.hasFocus():
            outline(painter, QRectF(self.rect()).adjusted(2, 2, -2, -2), Qt.PenStyle.DotLine)
        painter.end()

    def _paint_before(self, painter: QPainter, frame: QRectF) -> None:
        """Paint the piece as it is up to the divider, and say which side is which."""
        at = self.share * self.width()
        painter.save()
        painter.setClipRect(QRectF(0, 0, at, self.height()))
        painter.drawImage(frame, self._before)
        painter.restore()
        paint_divider(painter, at, self.height())
        paint_tag(painter, QPointF(8, 28), words.BEFORE)
        paint_tag(painter, QPointF(self.width() - 8.0, 28), words.AFTER)
