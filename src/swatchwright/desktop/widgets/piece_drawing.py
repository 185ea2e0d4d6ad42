"""A piece drawn to scale, filled with its colours and numbered; what is marked has an outline."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPalette,
    QPen,
    QTransform,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from swatchwright.desktop.letters import grown
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.widgets.piece_fields import quiet_ink
from swatchwright.desktop.widgets.piece_numbers import Spots, apart, spots_in
from swatchwright.desktop.widgets.piece_paths import path_of, topmost
from swatchwright.piece.drawing import Drawing, Outline, Side

__all__ = ["PieceDrawing"]

_TALLEST, _SMALLEST = 290, (120, 100)
_SHADES = {Side.FRONT: 100, Side.TOP: 108, Side.RIGHT: 84}
_GREYS = (190, 150, 215, 120, 170, 105)
_NARROW = 12
"""Pixels about a drawing whose sizes are not told."""
_EDGE = 1.2
"""Pixels of the lines of a drawing."""
_MANY = 1000
"""Faces that are marked times all: beyond that their hidden edges take too long to paint."""
_RING, _RIM = 2.2, 1.3
"""Pixels of the outline of what is marked, and of its rim, which stands out where that does not."""


class PieceDrawing(QWidget):
    """Draws what it is given; zones without a mix are grey, and what is bare is hatched.

    Parameters
    ----------
    small
        Whether it stands beside what matters more, without numbers and sizes.
    """

    def __init__(self, parent: QWidget | None = None, *, small: bool = False) -> None:
        super().__init__(parent)
        self._small = small
        self._drawing: Drawing | None = None
        self._paths: list[QPainterPath] = []
        self._boxes: list[QRectF] = []
        self._numbers: dict[str, int] = {}
        self._colours: dict[str, QColor] = {}
        self._spots: Spots = {}
        self._marked: frozenset[int] = frozenset()
        self._told = ("", "")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        if small:
            self.setMinimumSize(*_SMALLEST)
        else:
            self.setMinimumSize(320, 250)
            self.setMaximumHeight(_TALLEST)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(*_SMALLEST) if self._small else QSize(560, _TALLEST)

    def show_drawing(
        self, drawing: Drawing, zones: Sequence[str], told: tuple[str, str] = ("", "")
    ) -> None:
        """Show a drawing; `zones` in the order of their numbers, `told` its width and height."""
        self._drawing = drawing
        self._paths = [path_of(outline) for outline in drawing.outlines]
        self._boxes = [path.boundingRect() for path in self._paths]
        self._numbers = {zone: number for number, zone in enumerate(zones, 1)}
        self._spots = {} if self._small else spots_in(drawing.outlines, self._paths)
        self._marked = frozenset()
        self._told = told
        self.update()

    def show_colours(self, colours: Mapping[str, QColor]) -> None:
        """Fill zones with these colours, and those not named with greys."""
        self._colours = dict(colours)
        self.update()

    def mark(self, places: Collection[int]) -> None:
        """Outline these faces of the drawing, by their places in it, and no others."""
        self._marked = frozenset(places)
        self.update()

    def marked(self) -> frozenset[int]:
        """Give the places of the faces that are outlined."""
        return self._marked

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
        placing = self._placing()
        zones = sorted(self._spots, key=lambda z: self._numbers.get(z, 0))
        places = {zone: [placing.map(spot) for spot in self._spots[zone]] for zone in zones}
        return apart(places, 2 * _badge() + 2)

    def face_at(self, pixel: QPointF) -> int | None:
        """Give the place in the drawing of the face that is seen at a pixel; None beside all."""
        back, _ = self._placing().inverted()
        return topmost(self._paths, back.map(pixel))

    # --- painting --------------------------------------------------------------------------------

    def _placing(self) -> QTransform:
        """Give how a spot of the drawing, mm, becomes a pixel."""
        if self._drawing is None:
            return QTransform()
        edge = _margin() if self._told[0] else _NARROW
        wide, high = self.width() - 2 * edge, self.height() - 2 * edge
        scale = min(wide / self._drawing.width, high / self._drawing.height)
        left = (self.width() - scale * self._drawing.width) / 2
        low = (self.height() + scale * self._drawing.height) / 2
        return QTransform(scale, 0, 0, scale, left, low)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the outlines, then the numbers of the zones and the sizes."""
        del event
        if self._drawing is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        placing = self._placing()
        painter.save()
        painter.setTransform(placing, combine=True)
        rows = zip(self._drawing.outlines, self._paths, strict=True)
        dashed = 0 < len(self._marked) * len(self._paths) <= _MANY
        painter.setPen(_pen(self.palette().windowText().color(), _EDGE))
        for place, (outline, path) in enumerate(rows):
            self._fill(painter, outline, path, placing.m11())
            if place in self._marked:
                self._ring(painter, path)
            elif dashed:
                self._show_hidden(painter, place)
        painter.restore()
        self._number(painter)
        self._measure(painter, placing)
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

    def _ring(self, painter: QPainter, path: QPainterPath) -> None:
        """Outline a face within itself: what touches it covers nothing of that, what hides it does.

        Each line is painted at twice its width, and the outer half cut off.
        """
        press, rim = self._greys()
        painter.save()
        painter.setClipPath(path, Qt.ClipOperation.IntersectClip)
        painter.strokePath(path, _pen(rim, 2 * (_RING + _RIM)))
        painter.strokePath(path, _pen(press, 2 * _RING))
        painter.restore()
        painter.strokePath(path, _pen(self.palette().windowText().color(), _EDGE))

    def _show_hidden(self, painter: QPainter, place: int) -> None:
        """Draw the edges of what is marked dashed where a face hides them, as draughtsmen do."""
        over, box = self._paths[place], self._boxes[place]
        hidden = [n for n in self._marked if n < place and self._boxes[n].intersects(box)]
        if not hidden:
            return
        press, rim = self._greys()
        dashed = _pen(press, _EDGE)
        dashed.setDashPattern([4, 4])
        painter.save()
        painter.setClipPath(over, Qt.ClipOperation.IntersectClip)
        for number in hidden:
            painter.strokePath(self._paths[number], _pen(rim, _EDGE))
            painter.strokePath(self._paths[number], dashed)
        painter.restore()
        # What only touches it is not hidden: its own edge goes over that.
        painter.strokePath(over, _pen(self.palette().windowText().color(), _EDGE))

    def _greys(self) -> tuple[QColor, QColor]:
        """Give the grey of what is pressed, and the one that is read on it."""
        roles = QPalette.ColorRole
        return self.palette().color(roles.Highlight), self.palette().color(roles.HighlightedText)

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

    def _measure(self, painter: QPainter, placing: QTransform) -> None:
        """Write the width below and the height beside, with their lines, where they are told."""
        if self._drawing is None or not self._told[0]:
            return
        floor = placing.map(QPointF())
        corner = placing.map(QPointF(self._drawing.width, -self._drawing.height))
        font = painter.font()
        font.setBold(False)
        painter.setFont(font)
        painter.setPen(QPen(self.palette().windowText().color(), 1))
        y = floor.y() + 6
        painter.drawLine(QPointF(floor.x(), y), QPointF(corner.x(), y))
        below = QRectF(0, y + 1, self.width(), _margin() - 8)
        painter.drawText(below, Qt.AlignmentFlag.AlignCenter, self._told[0])
        x = floor.x() - 6
        painter.drawLine(QPointF(x, floor.y()), QPointF(x, corner.y()))
        painter.save()
        painter.translate(x - _margin() + 8, floor.y())
        painter.rotate(-90)
        beside = QRectF(0, 0, max(floor.y() - corner.y(), 80.0), _margin() - 10)
        painter.drawText(beside, Qt.AlignmentFlag.AlignCenter, self._told[1])
        painter.restore()


def _pen(colour: QColor, wide: float) -> QPen:
    """Give a pen of so many pixels at every scale."""
    pen = QPen(colour, wide)
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def _margin() -> int:
    """Give the pixels about the drawing, in which its sizes are written."""
    return grown(26)


def _badge() -> int:
    """Give the pixels from the middle of a number to its ring."""
    return grown(11)
