"""Drawings of what is to come, in the greys of the bench, where there is nothing to show yet."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette, QPen, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.desktop import words

__all__ = ["MixesToCome", "PhotoToTake"]

_PHOTO = QRectF(0, 0, 300, 200)
_COLUMN = QRectF(0, 0, 190, 330)
_GAP, _MOST_COLUMNS, _LEAST = 24.0, 3, 150.0
_STRIPES = ((0, 26), (34, 8), (50, 40), (98, 8), (114, 26))
"""Left edge and width of the darker stripes of the cushion."""


class _Drawing(QWidget):
    """A drawing that a screen reader passes by: the words beside it say the same."""

    def __init__(self) -> None:
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def grey(self, towards_ink: float) -> QColor:
        """Give a grey between the ground, 0, and the ink, 1."""
        ground = self.palette().color(QPalette.ColorRole.Window)
        ink = self.palette().color(QPalette.ColorRole.WindowText)
        level = round(ground.red() + (ink.red() - ground.red()) * towards_ink)
        return QColor(level, level, level)


class PhotoToTake(_Drawing):
    """A cushion with a grey card beside it, and the two boxes that mark them."""

    def __init__(self) -> None:
        super().__init__()
        self.setMinimumHeight(110)
        self.setMaximumHeight(round(_PHOTO.height()) + 20)

    def sizeHint(self) -> QSize:
        """Ask for its size as it was drawn."""
        return _PHOTO.size().toSize()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the photo as it should be, as large as there is room."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        scale = min(self.width() / _PHOTO.width(), self.height() / _PHOTO.height(), 1.2)
        painter.translate(
            (self.width() - _PHOTO.width() * scale) / 2,
            (self.height() - _PHOTO.height() * scale) / 2,
        )
        painter.scale(scale, scale)
        painter.fillRect(_PHOTO, self.grey(0.14))
        painter.save()
        painter.setTransform(QTransform().translate(40, 38).rotate(-4), combine=True)
        painter.fillRect(QRectF(0, 0, 140, 130), self.grey(0.3))
        for left, width in _STRIPES:
            painter.fillRect(QRectF(left, 0, width, 130), self.grey(0.6))
        painter.restore()
        painter.fillRect(QRectF(214, 66, 58, 78), self.grey(0.45))
        self._mark(painter, QRectF(78, 82, 62, 46), words.CLOTH_SHORT, Qt.PenStyle.SolidLine)
        self._mark(painter, QRectF(224, 82, 38, 46), words.GREY_SHORT, Qt.PenStyle.DashLine)
        painter.end()

    def _mark(self, painter: QPainter, box: QRectF, word: str, line: Qt.PenStyle) -> None:
        """Draw a box and its word, as they are drawn on a photo."""
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for ink, width, style in (
            (QColor("#000000"), 4.0, Qt.PenStyle.SolidLine),
            (QColor("#ffffff"), 2.0, line),
        ):
            painter.setPen(QPen(ink, width, style))
            painter.drawRect(box)
        font = painter.font()
        font.setPixelSize(12)
        painter.setFont(font)
        width = painter.fontMetrics().horizontalAdvance(word) + 12.0
        tag = QRectF(box.left(), box.top() - 20, width, 18)
        tag.moveLeft(min(tag.left(), _PHOTO.right() - width - 4))
        painter.fillRect(tag, QColor("#1c1c1c"))
        painter.setPen(Qt.GlobalColor.white)
        painter.drawText(tag, Qt.AlignmentFlag.AlignCenter, word)


class MixesToCome(_Drawing):
    """Mixes side by side as they will stand here: the colours touching, the measures below."""

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw as many columns as there is room for, each a little fainter."""
        del event
        height = min(self.height() - 8.0, _COLUMN.height())
        fit = int((self.width() + _GAP) // (_COLUMN.width() + _GAP))
        if height < _LEAST:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for place in range(min(fit, _MOST_COLUMNS)):
            left = place * (_COLUMN.width() + _GAP)
            self._column(painter, QRectF(left, 4, _COLUMN.width(), height), 1 - 0.3 * place)
        painter.end()

    def _column(self, painter: QPainter, area: QRectF, strength: float) -> None:
        painter.fillRect(area, self.grey(0.06 * strength))
        field = QRectF(area.left(), area.top(), area.width(), area.height() * 0.38)
        painter.fillRect(field, self.grey(0.26 * strength))
        wet = QRectF(field.center().x(), field.center().y(), field.width() / 2, field.height() / 2)
        painter.fillRect(wet, self.grey(0.33 * strength))
        if strength == 1:
            self._name(painter, field.adjusted(9, 7, -9, -7))
        bar = QRectF(area.left() + 13, field.bottom() + 16, area.width() - 26, 26)
        for start, end, tone in ((0.0, 0.72, 0.5), (0.72, 0.9, 0.24), (0.9, 1.0, 0.75)):
            part = QRectF(bar.left() + bar.width() * start, bar.top(), 0, bar.height())
            part.setWidth(bar.width() * (end - start))
            painter.fillRect(part, self.grey(tone * strength))
        painter.setPen(
            QPen(self.grey(0.3 * strength), 7, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
        )
        top = bar.bottom() + 24
        for row in range(3):
            y = top + row * 30
            if y > area.bottom() - 14:
                break
            painter.drawLine(QPointF(bar.left() + 4, y), QPointF(bar.left() + 34, y))
            painter.drawLine(QPointF(bar.left() + 56, y), QPointF(bar.right() - 14 * (row + 1), y))

    def _name(self, painter: QPainter, inside: QRectF) -> None:
        """Say what each colour is, on the column that is strong enough to be read."""
        painter.setPen(self.palette().color(QPalette.ColorRole.WindowText))
        for word, where in (
            (words.WANTED, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop),
            (words.DRY, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom),
            (words.WET, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignBottom),
        ):
            painter.drawText(inside, int(where), word)
