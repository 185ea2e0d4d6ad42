"""How strokes and boxes look on the photo of the piece: told by word and line, not by colour."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPainterPathStroker, QPen

from swatchwright.acts.repaint import NOT_THIS, Stroke
from swatchwright.desktop.letters import grown
from swatchwright.desktop.words import repaint as words

__all__ = ["outline", "paint_box", "paint_divider", "paint_stroke", "paint_tag"]

ToWidget = Callable[[float, float], QPointF]
_INK, _PAPER = QColor("#1c1c1c"), QColor("#ffffff")
_VEIL, _SHADE = QColor(255, 255, 255, 120), QColor(0, 0, 0, 110)


def paint_stroke(painter: QPainter, stroke: Stroke, to_widget: ToWidget, scale: float) -> None:
    """Paint a stroke as a veil with two rims, dark and dashed where it is none of the piece."""
    places = [to_widget(x, y) for x, y in stroke.points]
    path = QPainterPath(places[0])
    for place in places[1:]:
        path.lineTo(place)
    if stroke.filled:
        path.closeSubpath()
        shape = path
    else:
        path.lineTo(places[-1] + QPointF(0.1, 0))
        shape = _stroker(stroke.width * scale).createStroke(path).simplified()
    out = stroke.zone == NOT_THIS
    painter.fillPath(shape, _SHADE if out else _VEIL)
    style = Qt.PenStyle.DashLine if out else Qt.PenStyle.SolidLine
    for ink, width in ((_INK, 2.4), (_PAPER, 1.0)):
        painter.setPen(QPen(ink, width, style))
        painter.drawPath(shape)
    paint_tag(painter, places[0], words.zone_word(stroke.zone))


def paint_box(painter: QPainter, box: QRectF, word: str, to_widget: ToWidget) -> None:
    """Paint a box with its word."""
    area = QRectF(to_widget(box.left(), box.top()), to_widget(box.right(), box.bottom()))
    outline(painter, area, Qt.PenStyle.DashLine)
    paint_tag(painter, area.topLeft(), word)


def outline(painter: QPainter, area: QRectF, style: Qt.PenStyle) -> None:
    """Draw a line that is seen on light and dark."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for ink, width in ((_INK, 3.0), (_PAPER, 1.2)):
        painter.setPen(QPen(ink, width, style if ink is _PAPER else Qt.PenStyle.SolidLine))
        painter.drawRect(area)


def paint_tag(painter: QPainter, at: QPointF, word: str) -> None:
    """Paint a word above a place, inside the picture."""
    font = painter.font()
    font.setPixelSize(grown(11))
    painter.setFont(font)
    metrics = painter.fontMetrics()
    tag = QRectF(at, QSizeF(metrics.horizontalAdvance(word) + 10.0, metrics.height() + 2.0))
    tag.moveTop(max(at.y() - tag.height() - 3, 0.0))
    tag.moveLeft(min(tag.left(), painter.viewport().width() - tag.width()))
    painter.fillRect(tag, _INK)
    painter.setPen(_PAPER)
    painter.drawText(tag, Qt.AlignmentFlag.AlignCenter, word)


def paint_divider(painter: QPainter, at: float, height: float) -> None:
    """Draw an upright line with a handle, seen on light and dark."""
    middle = height / 2
    for ink, width in ((_INK, 4.0), (_PAPER, 2.0)):
        painter.setPen(QPen(ink, width))
        painter.drawLine(QPointF(at, 0), QPointF(at, height))
    painter.setPen(QPen(_INK, 1.5))
    painter.setBrush(_PAPER)
    painter.drawEllipse(QPointF(at, middle), 9.0, 9.0)
    for way in (-1, 1):
        tip, side = QPointF(at + 6 * way, middle), at + 2.5 * way
        painter.drawLine(tip, QPointF(side, middle - 3.5))
        painter.drawLine(tip, QPointF(side, middle + 3.5))


def _stroker(width: float) -> QPainterPathStroker:
    made = QPainterPathStroker()
    made.setWidth(max(2.0, width))
    made.setCapStyle(Qt.PenCapStyle.RoundCap)
    made.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return made
