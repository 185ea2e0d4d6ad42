"""The outlines of a drawing as paths, and which of them is on top at a spot."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath, QPolygonF

from swatchwright.piece.drawing import Outline

__all__ = ["path_of", "topmost"]


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


def topmost(paths: Sequence[QPainterPath], spot: QPointF) -> int | None:
    """Give the place of the path that is painted last over a spot; None where there is none.

    Parameters
    ----------
    paths
        In the order in which they are painted.
    spot
        In their own coordinates.
    """
    places = range(len(paths) - 1, -1, -1)
    return next((place for place in places if paths[place].contains(spot)), None)
