"""The piece in its new colours, as large as there is room."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.desktop.words import repaint as words

__all__ = ["RepaintAfter"]


class RepaintAfter(QWidget):
    """A picture, or in place of it what is to be done for one."""

    def __init__(self) -> None:
        super().__init__()
        self.image = QImage()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(220, 160)
        self.setAccessibleName(words.FIRST_STROKE)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(560, 400)

    def show_image(self, image: QImage, told: str) -> None:
        """Show a picture, and tell it to a screen reader."""
        self.image = image
        self.setAccessibleName(told)
        self.update()

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
            fitted = QSizeF(self.image.size()).scaled(
                QSizeF(self.size()), Qt.AspectRatioMode.KeepAspectRatio
            )
            left = (self.width() - fitted.width()) / 2
            top = (self.height() - fitted.height()) / 2
            painter.drawImage(QRectF(QPointF(left, top), fitted), self.image)
        painter.end()
