"""Small drawings of the pages, in lines of one ink; each stands beside a word."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPen, QPixmap, QPolygonF

__all__ = ["DRAWINGS", "page_icon"]

_SIDE = 24


def _brief(pen: QPainter) -> None:
    pen.drawRect(QRectF(5, 3, 14, 18))
    for y in (8.0, 12.0, 16.0):
        pen.drawLine(QPointF(8, y), QPointF(16 if y < 16 else 12, y))


def _colour(pen: QPainter) -> None:
    pen.drawRect(QRectF(3, 6, 9, 12))
    pen.save()
    pen.setBrush(pen.pen().color())
    pen.drawRect(QRectF(12, 6, 9, 12))
    pen.restore()


def _compare(pen: QPainter) -> None:
    for x in (3.0, 9.0, 15.0):
        pen.save()
        if x == 9.0:
            pen.setBrush(pen.pen().color())
        pen.drawRect(QRectF(x, 5, 6, 14))
        pen.restore()


def _shelf(pen: QPainter) -> None:
    pen.drawLine(QPointF(2, 20), QPointF(22, 20))
    for x, top in ((3.5, 10.0), (9.5, 7.0), (15.5, 12.0)):
        pen.drawRect(QRectF(x, top, 5, 20 - top))
        pen.drawLine(QPointF(x, top + 3), QPointF(x + 5, top + 3))


def _sample(pen: QPainter) -> None:
    pen.drawRect(QRectF(3, 9, 12, 12))
    pen.drawLine(QPointF(6, 15), QPointF(12, 15))
    pen.drawPolyline(QPolygonF([QPointF(12, 12), QPointF(20, 3), QPointF(22, 5), QPointF(14, 14)]))


def _finish(pen: QPainter) -> None:
    for y in (6.0, 11.0, 16.0):
        corners = [QPointF(3, y + 2), QPointF(12, y - 2), QPointF(21, y + 2), QPointF(12, y + 6)]
        pen.drawPolygon(QPolygonF(corners))


def _piece(pen: QPainter) -> None:
    pen.drawRect(QRectF(4, 4, 16, 14))
    for y in (8.5, 13.0):
        pen.drawLine(QPointF(4, y), QPointF(20, y))
    for x in (6.0, 18.0):
        pen.drawLine(QPointF(x, 18), QPointF(x, 21))
    for y in (6.2, 10.8, 15.5):
        pen.drawPoint(QPointF(12, y))


def _repaint(pen: QPainter) -> None:
    pen.drawRect(QRectF(3, 5, 18, 14))
    pen.drawLine(QPointF(12, 3), QPointF(12, 21))
    pen.drawRect(QRectF(7, 10, 5, 6))
    pen.save()
    pen.setBrush(pen.pen().color())
    pen.drawRect(QRectF(12, 10, 5, 6))
    pen.restore()


def _plan(pen: QPainter) -> None:
    pen.drawRect(QRectF(3, 5, 18, 16))
    pen.drawLine(QPointF(3, 9), QPointF(21, 9))
    pen.drawLine(QPointF(6, 13), QPointF(13, 13))
    pen.drawLine(QPointF(11, 17), QPointF(18, 17))


def _sheet(pen: QPainter) -> None:
    pen.drawPolygon(
        QPolygonF([QPointF(5, 3), QPointF(15, 3), QPointF(19, 7), QPointF(19, 21), QPointF(5, 21)])
    )
    pen.drawRect(QRectF(8, 8, 4, 5))
    pen.drawRect(QRectF(12, 8, 4, 5))
    pen.drawLine(QPointF(8, 17), QPointF(16, 17))


DRAWINGS: Mapping[str, Callable[[QPainter], None]] = {
    "brief": _brief,
    "colour": _colour,
    "compare": _compare,
    "shelf": _shelf,
    "sample": _sample,
    "finish": _finish,
    "piece": _piece,
    "repaint": _repaint,
    "plan": _plan,
    "sheet": _sheet,
}


def page_icon(key: str, ink: str, press_ink: str, size: int = _SIDE) -> QIcon:
    """Draw a page's icon in the ink of the bench, and of a pressed button."""
    icon = QIcon()
    for state, colour in ((QIcon.State.Off, ink), (QIcon.State.On, press_ink)):
        for scale in (1, 2):
            picture = QPixmap(QSize(size, size) * scale)
            picture.setDevicePixelRatio(scale)
            picture.fill(Qt.GlobalColor.transparent)
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.scale(size / _SIDE, size / _SIDE)
            pen = QPen(QColor(colour), 1.6)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            DRAWINGS[key](painter)
            painter.end()
            icon.addPixmap(picture, QIcon.Mode.Normal, state)
    return icon
