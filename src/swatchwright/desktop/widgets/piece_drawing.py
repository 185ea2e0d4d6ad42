"""A piece drawn to scale, its zones filled with their colours and numbered."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import hypot

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.desktop.letters import grown
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.widgets.piece_fields import quiet_ink
from swatchwright.piece.drawing import Drawing, Outline, Side

__all__ = ["PieceDrawing", "path_of"]

_TALLEST = 318
_SHADES = {Side.FRONT: 100, Side.TOP: 108, Side.RIGHT: 84}
_GREYS = (190, 150, 215, 120, 170, 105)


def path_of(outline: Outline) -> QPainterPath:
    """Give an outline as a path, mm, y down from the floor."""
    path = QPainterPath()
    if outline.ellipse:
        (x, y), (rx, ry) = outline.points
        path.addEllipse(QPointF(x, -y), rx, ry)
        return path
    path.addPolygon(QPolygonF([QPointF(x, -y) for x, y in outline.points]))
    path.closeSubpath()
    return path


class PieceDrawing(QWidget):
    """Draws what it is given; zones without a mix are grey, and what is bare is hatched."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._drawing: Drawing | None = None
        self._paths: list[QPainterPath] = []
        self._numbers: dict[str, int] = {}
        self._colours: dict[str, QColor] = {}
        self._spots: dict[str, list[QPointF]] = {}
        self._told = ("", "")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(320, 250)
        self.setMaximumHeight(_TALLEST)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(560, 320)

    def show_drawing(
        self, drawing: Drawing, zones: Sequence[str], told: tuple[str, str] = ("", "")
    ) -> None:
        """Show a drawing; `zones` in the order of their numbers, `told` its width and height."""
        self._drawing = drawing
        self._paths = [path_of(outline) for outline in drawing.outlines]
        self._numbers = {zone: number for number, zone in enumerate(zones, 1)}
        self._spots = self._find_spots()
        self._told = told
        self.update()

    def show_colours(self, colours: Mapping[str, QColor]) -> None:
        """Fill zones with these colours, and those not named with greys."""
        self._colours = dict(colours)
        self.update()

    def fill(self, zone: str) -> QColor | None:
        """Give the colour that a zone is filled with; None for what is bare."""
        if zone not in self._numbers:
            return None
        grey = _GREYS[(self._numbers[zone] - 1) % len(_GREYS)]
        return self._colours.get(zone, QColor(grey, grey, grey))

    def numbered(self) -> dict[str, QPointF]:
        """Give where the number of each zone stands that is seen, in pixels.

        A number keeps clear of those before it where its zone leaves it room.
        """
        frame = self._frame()
        taken: dict[str, QPointF] = {}
        for zone in sorted(self._spots, key=lambda z: self._numbers.get(z, 0)):
            places = [self._at(spot, frame) for spot in self._spots[zone]]
            clear = [p for p in places if all(_apart(p, other) for other in taken.values())]
            taken[zone] = (clear or places)[0]
        return taken

    def _find_spots(self) -> dict[str, list[QPointF]]:
        """Find places in each zone that nothing covers, in its largest outlines."""
        if self._drawing is None:
            return {}
        rows = list(zip(self._drawing.outlines, self._paths, strict=True))
        found: dict[str, list[tuple[float, list[QPointF]]]] = {}
        boxes = [path.boundingRect() for path in self._paths]
        over = _over(boxes)
        for place, (outline, path) in enumerate(rows):
            box = boxes[place]
            above = [self._paths[i] for i in np.flatnonzero(over[place])]
            seen = [
                spot
                for spot in (_places_in(box) if outline.zone else ())
                if path.contains(spot) and not any(p.contains(spot) for p in above)
            ]
            if seen:
                found.setdefault(outline.zone, []).append((box.width() * box.height(), seen))
        return {
            zone: [spot for _, spots in sorted(sets, key=lambda s: -s[0]) for spot in spots]
            for zone, sets in found.items()
        }

    # --- painting --------------------------------------------------------------------------------

    def _frame(self) -> tuple[float, QPointF]:
        """Give pixels for a mm, and where the floor's left end is."""
        if self._drawing is None:
            return 1.0, QPointF()
        wide, high = self.width() - 2 * _margin(), self.height() - 2 * _margin()
        scale = min(wide / self._drawing.width, high / self._drawing.height)
        left = (self.width() - scale * self._drawing.width) / 2
        low = (self.height() + scale * self._drawing.height) / 2
        return scale, QPointF(left, low)

    @staticmethod
    def _at(spot: QPointF, frame: tuple[float, QPointF]) -> QPointF:
        return frame[1] + spot * frame[0]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the outlines, then the numbers of the zones and the sizes."""
        del event
        if self._drawing is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        scale, floor = self._frame()
        painter.save()
        painter.translate(floor)
        painter.scale(scale, scale)
        ink = self.palette().windowText().color()
        pen = QPen(ink, 1.2)
        pen.setCosmetic(True)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        for outline, path in zip(self._drawing.outlines, self._paths, strict=True):
            self._fill(painter, outline, path, scale)
        painter.restore()
        self._number(painter)
        self._measure(painter, (scale, floor))
        painter.end()

    def _fill(self, painter: QPainter, outline: Outline, path: QPainterPath, scale: float) -> None:
        colour = self.fill(outline.zone)
        if colour is not None:
            painter.setBrush(colour.lighter(_SHADES[outline.side]))
            painter.drawPath(path)
            return
        painter.setBrush(self.palette().base())
        painter.drawPath(path)
        hatch = QBrush(quiet_ink(), Qt.BrushStyle.BDiagPattern)
        # Hatched in pixels, not in mm, so that it looks the same at every size.
        hatch.setTransform(painter.transform().fromScale(1 / scale, 1 / scale))
        painter.setBrush(hatch)
        painter.drawPath(path)

    def _number(self, painter: QPainter) -> None:
        font = painter.font()
        font.setBold(True)
        painter.setFont(font)
        badge = _badge()
        for zone, at in self.numbered().items():
            colour = self.fill(zone)
            if colour is None:
                continue
            painter.setPen(QPen(ink_on(colour), 1.4))
            painter.setBrush(colour)
            painter.drawEllipse(at, badge, badge)
            box = QRectF(at.x() - badge, at.y() - badge, 2 * badge, 2 * badge)
            centred = int(Qt.AlignmentFlag.AlignCenter)
            write_on(painter, box, centred, str(self._numbers[zone]), colour)

    def _measure(self, painter: QPainter, frame: tuple[float, QPointF]) -> None:
        """Write the width below and the height beside, with their lines, where they are told."""
        if self._drawing is None or not self._told[0]:
            return
        scale, floor = frame
        right, top = floor.x() + scale * self._drawing.width, floor.y()
        high = scale * self._drawing.height
        font = painter.font()
        font.setBold(False)
        painter.setFont(font)
        painter.setPen(QPen(self.palette().windowText().color(), 1))
        y = floor.y() + 6
        painter.drawLine(QPointF(floor.x(), y), QPointF(right, y))
        below = QRectF(0, y + 1, self.width(), _margin() - 8)
        painter.drawText(below, Qt.AlignmentFlag.AlignCenter, self._told[0])
        x = floor.x() - 6
        painter.drawLine(QPointF(x, top), QPointF(x, top - high))
        painter.save()
        painter.translate(x - _margin() + 8, top)
        painter.rotate(-90)
        beside = QRectF(0, 0, max(high, 80.0), _margin() - 10)
        painter.drawText(beside, Qt.AlignmentFlag.AlignCenter, self._told[1])
        painter.restore()


# Where in its outline a number is tried: shares from its left and top.
_PLACES = (
    (0.5, 0.5),
    (0.25, 0.5),
    (0.75, 0.5),
    (0.5, 0.2),
    (0.5, 0.8),
    (0.1, 0.5),
    (0.9, 0.5),
    (0.5, 0.08),
    (0.5, 0.92),
    (0.04, 0.5),
    (0.96, 0.5),
)


def _margin() -> int:
    """Give the pixels about the drawing, in which its sizes are written."""
    return grown(26)


def _badge() -> int:
    """Give the pixels from the middle of a number to its ring."""
    return grown(11)


def _apart(one: QPointF, other: QPointF) -> bool:
    """Tell whether two numbers do not touch."""
    return hypot(one.x() - other.x(), one.y() - other.y()) > 2 * _badge() + 2


def _over(boxes: Sequence[QRectF]) -> NDArray[np.bool_]:
    """Tell of each two outlines whether the second is drawn later and its box meets the first's.

    A piece of many parts has a hundred thousand such pairs: too many to ask one by one.
    """
    left, top, right, low = np.array([box.getCoords() for box in boxes]).reshape(-1, 4).T
    beside = (left[:, None] < right) & (left < right[:, None])
    above = (top[:, None] < low) & (top < low[:, None])
    return np.triu(beside & above, k=1)


def _places_in(box: QRectF) -> list[QPointF]:
    """Give places to try for a number: the middle first, then about it."""
    return [QPointF(box.left() + x * box.width(), box.top() + y * box.height()) for x, y in _PLACES]
