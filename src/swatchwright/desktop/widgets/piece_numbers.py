"""Where in a drawing the numbers of its colours stand: on what is seen, and clear of each other."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import hypot

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainterPath

from swatchwright.piece.drawing import Outline

__all__ = ["Spots", "apart", "spots_in"]

Spots = dict[str, list[QPointF]]
"""Places in the colours of a drawing that nothing covers, mm, the best first."""


def spots_in(outlines: Sequence[Outline], paths: Sequence[QPainterPath]) -> Spots:
    """Find places in each colour that nothing covers, in its largest outlines.

    Parameters
    ----------
    outlines, paths
        What is drawn, in its order.
    """
    if not paths:
        return {}
    found: dict[str, list[tuple[float, list[QPointF]]]] = {}
    boxes = [path.boundingRect() for path in paths]
    over = _over(boxes)
    for place, (outline, path) in enumerate(zip(outlines, paths, strict=True)):
        box = boxes[place]
        above = [paths[int(i)] for i in np.flatnonzero(over[place])]
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


def apart(places: Mapping[str, Sequence[QPointF]], least: float) -> dict[str, QPointF]:
    """Give each a place that keeps clear of those before it, where there is room.

    Parameters
    ----------
    places
        Of each, in pixels, the best first.
    least
        Pixels between two at the least.
    """
    taken: dict[str, QPointF] = {}
    for zone, spots in places.items():
        clear = [p for p in spots if all(_far(p, other) > least for other in taken.values())]
        taken[zone] = (clear or list(spots))[0]
    return taken


def _far(one: QPointF, other: QPointF) -> float:
    return hypot(one.x() - other.x(), one.y() - other.y())


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
