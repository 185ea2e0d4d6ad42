"""A piece drawn to scale: seen from the front, and as a simple picture of its three sides.

The picture is a cabinet projection: the front as it is, what goes back drawn at 45 degrees and at
half its length, as draughtsmen do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from heapq import heapify, heappop, heappush
from itertools import combinations
from math import cos, pi, sin, sqrt

from swatchwright.piece.check import checked_piece
from swatchwright.piece.faces import outline_radii
from swatchwright.piece.part import Piece, Shape
from swatchwright.piece.solids import Point3, Solid, solids_of

__all__ = ["Drawing", "Outline", "Side", "View", "drawn"]

Point = tuple[float, float]

_BACK = 0.5 * sqrt(0.5)
_TOUCH = 1e-6
_ARC = 48


class View(StrEnum):
    """From where a piece is drawn."""

    FRONT = "front"
    PICTURE = "picture"


class Side(StrEnum):
    """Which way the drawn face looks, so that it can be shaded."""

    FRONT = "front"
    TOP = "top"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Outline:
    """A face to fill.

    Parameters
    ----------
    part
        Name of its part.
    zone
        Colour zone to fill it with; empty where it is left bare.
    side
        Which way it looks.
    points
        Corners of a polygon, mm, x to the right and y up; or of an ellipse, its middle and its
        two radii.
    ellipse
        Whether it is an ellipse.
    row
        The place of the part among those of its piece.
    """

    part: str
    zone: str
    side: Side
    points: tuple[Point, ...]
    ellipse: bool = False
    row: int = 0


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing: what is first is covered by what follows.

    Parameters
    ----------
    view
        From where.
    outlines
        In the order to be drawn.
    width, height
        mm; all points lie between 0 and these.
    """

    view: View
    outlines: tuple[Outline, ...]
    width: float
    height: float


def drawn(piece: Piece, view: View) -> Drawing:
    """Draw a piece.

    Raises
    ------
    MendableError
        If the piece cannot be, or has more parts than can be drawn.
    """
    solids = solids_of(checked_piece(piece))
    if view is View.FRONT:
        ordered = sorted(solids, key=lambda s: -s.low[2])
        outlines = [replace(_front(solid), row=solid.row) for solid in ordered]
    else:
        outlines = [
            replace(outline, row=solid.row)
            for solid in _back_to_front(solids)
            for outline in _picture(solid)
        ]
    return _from_zero(view, outlines)


def _from_zero(view: View, outlines: list[Outline]) -> Drawing:
    boxes = [_bounds(outline) for outline in outlines]
    left, low = (min(box[0][i] for box in boxes) for i in (0, 1))
    right, high = (max(box[1][i] for box in boxes) for i in (0, 1))

    def moved(outline: Outline) -> Outline:
        kept = 1 if outline.ellipse else len(outline.points)
        places = tuple((x - left, y - low) for x, y in outline.points[:kept])
        return replace(outline, points=places + outline.points[kept:])

    return Drawing(view, tuple(moved(o) for o in outlines), right - left, high - low)


def _bounds(outline: Outline) -> tuple[Point, Point]:
    if outline.ellipse:
        (x, y), (rx, ry) = outline.points
        return (x - rx, y - ry), (x + rx, y + ry)
    xs, ys = zip(*outline.points, strict=True)
    return (min(xs), min(ys)), (max(xs), max(ys))


# --- from the front ------------------------------------------------------------------------------


def _flat(p: Point3) -> Point:
    return p[0], p[1]


def _front(solid: Solid) -> Outline:
    zone = solid.zone_towards(2)
    if solid.is_round:
        return _round(solid, zone, _flat)
    corners = [_flat(solid.corner(far)) for far in _CORNERS]
    return Outline(solid.part.name, zone, Side.FRONT, _hull(corners))


_CORNERS = tuple((x, y, z) for x in (False, True) for y in (False, True) for z in (False, True))


def _hull(points: Iterable[Point]) -> tuple[Point, ...]:
    """Give the convex hull, by the monotone chain of Andrew ([Andrew1979])."""
    ordered = sorted(set(points))

    def chain(run: Iterable[Point]) -> list[Point]:
        made: list[Point] = []
        for p in run:
            while len(made) > 1 and _turn(made[-2], made[-1], p) <= 0:
                made.pop()
            made.append(p)
        return made[:-1]

    return (*chain(ordered), *chain(reversed(ordered)))


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _round(solid: Solid, zone: str, flat: Callable[[Point3], Point]) -> Outline:
    """Draw what is round by its outline, in the plane through its middle."""
    x, y = flat(solid.middle)
    radius = solid.start[0] / 2
    if solid.part.shape is Shape.SPHERE or solid.order[0] == 2:
        return Outline(solid.part.name, zone, Side.FRONT, ((x, y), (radius, radius)), ellipse=True)
    radii = outline_radii(solid.part)
    half = solid.part.length / 2
    steps = [(z - radii[0][0] - half, r) for z, r in radii]
    there = [(x + r, y - d) if solid.order[0] == 1 else (x + d, y + r) for d, r in steps]
    back = [(x - r, y - d) if solid.order[0] == 1 else (x + d, y - r) for d, r in steps]
    return Outline(solid.part.name, zone, Side.FRONT, (*there, *reversed(back)))


# --- the picture ---------------------------------------------------------------------------------


def _oblique(p: Point3) -> Point:
    return p[0] + _BACK * p[2], p[1] + _BACK * p[2]


def _picture(solid: Solid) -> Iterator[Outline]:
    if solid.is_round:
        yield from _round_picture(solid)
        return
    for axis, side in ((1, Side.TOP), (0, Side.RIGHT), (2, Side.FRONT)):
        corners = _facing(solid, axis)
        points = tuple(_oblique(corner) for corner in corners)
        yield Outline(solid.part.name, solid.zone_towards(axis), side, points)


def _facing(solid: Solid, axis: int) -> list[Point3]:
    """Give the corners of the face that looks up, right or to the front, in their round."""
    others = [a for a in range(3) if a != axis]
    found = []
    for first, second in ((False, False), (True, False), (True, True), (False, True)):
        far = [axis != 2] * 3
        far[others[0]], far[others[1]] = first, second
        found.append(solid.corner((far[0], far[1], far[2])))
    return found


def _round_picture(solid: Solid) -> Iterator[Outline]:
    if solid.order[0] == 2 and solid.part.shape is not Shape.SPHERE:
        radius = solid.start[0] / 2
        x, y, _ = solid.middle
        rim = [(x + radius * cos(t), y + radius * sin(t)) for t in _around()]
        ends = [_oblique((px, py, z)) for z in (solid.low[2], solid.high[2]) for px, py in rim]
        yield Outline(solid.part.name, solid.zone_towards(0), Side.RIGHT, _hull(ends))
        middle = _oblique((x, y, solid.low[2]))
        points = (middle, (radius, radius))
        yield Outline(solid.part.name, solid.zone_towards(2), Side.FRONT, points, ellipse=True)
    else:
        yield _round(solid, solid.zone_towards(2), _oblique)


def _around() -> list[float]:
    return [2 * pi * i / _ARC for i in range(_ARC)]


def _never_covers(a: Solid, b: Solid) -> bool:
    """Tell whether a plane between them proves that a cannot hide any of b."""
    return (
        a.low[2] >= b.high[2] - _TOUCH
        or a.high[0] <= b.low[0] + _TOUCH
        or a.high[1] <= b.low[1] + _TOUCH
    )


def _back_to_front(solids: tuple[Solid, ...]) -> list[Solid]:
    """Order solids so that each is drawn after those it may hide.

    Where three hide each other in a ring no order is right, and the furthest is drawn first.
    """
    after: list[list[int]] = [[] for _ in solids]
    waiting = [0] * len(solids)
    for i, j in combinations(range(len(solids)), 2):
        i_never, j_never = _never_covers(solids[i], solids[j]), _never_covers(solids[j], solids[i])
        if i_never != j_never:
            first, then = (i, j) if i_never else (j, i)
            after[first].append(then)
            waiting[then] += 1
    return [solids[i] for i in _unravelled(after, waiting, [_nearness(s) for s in solids])]


def _nearness(solid: Solid) -> float:
    x, y, z = solid.middle
    return _BACK * (x + y) - z


def _unravelled(after: list[list[int]], waiting: list[int], near: list[float]) -> Iterator[int]:
    ready = [(near[i], i) for i, n in enumerate(waiting) if n == 0]
    heapify(ready)
    left = set(range(len(waiting)))
    while left:
        i = heappop(ready)[1] if ready else min(left, key=lambda k: near[k])
        if i not in left:
            continue
        left.discard(i)
        yield i
        for j in after[i]:
            waiting[j] -= 1
            if waiting[j] == 0 and j in left:
                heappush(ready, (near[j], j))
