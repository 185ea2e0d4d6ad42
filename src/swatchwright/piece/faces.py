"""The faces of each shape with their areas, and what a part of it needs to be given."""

from __future__ import annotations

from collections.abc import Callable
from math import hypot, pi, sqrt

from swatchwright.piece.geometry import (
    disc,
    frame_face,
    girth,
    lateral,
    sphere,
    tapered_sides,
    trapezoid,
)
from swatchwright.piece.part import Face, Moulding, Part, Shape

__all__ = ["EDGES", "FLAT", "TURNED", "face_areas", "foot_of", "needs", "outline_radii"]

EDGES = (Face.FRONT_EDGE, Face.BACK_EDGE, Face.SHORT_EDGES)
"""All edges of a flat part."""

FLAT = frozenset({Shape.PANEL, Shape.TOP, Shape.DRAWER_FRONT, Shape.SEAT, Shape.FRAME})
TURNED = frozenset({Shape.TURNED_LEG, Shape.SPINDLE})

# Developed girth over face width; exact for the profile that the name says: quarter and half
# circles, a cut at 45 degrees, and an ogee of two quarter circles.
_GIRTHS = {
    Moulding.FLAT: 1.0,
    Moulding.BEVEL: sqrt(2.0),
    Moulding.QUARTER_ROUND: pi / 2,
    Moulding.HALF_ROUND: pi / 2,
    Moulding.OGEE: pi / 2,
}


def needs(part: Part) -> tuple[str, ...]:
    """Name the sizes beside its length that a part of this shape must be given."""
    if part.shape in TURNED:
        return () if part.profile else ("width",)
    if part.shape is Shape.MOULDING:
        return () if part.moulding is Moulding.OWN else ("width",)
    return _NEEDS[part.shape]


_NEEDS: dict[Shape, tuple[str, ...]] = {
    Shape.PANEL: ("width", "depth"),
    Shape.TOP: ("width", "depth"),
    Shape.DRAWER_FRONT: ("width", "depth"),
    Shape.FRAME: ("width", "depth", "member"),
    Shape.SEAT: ("width", "depth"),
    Shape.SQUARE_LEG: ("width", "depth"),
    Shape.TAPERED_LEG: ("width", "depth", "end"),
    Shape.RAIL: ("width", "depth"),
    Shape.CYLINDER: ("width",),
    Shape.SPHERE: (),
}


def face_areas(part: Part) -> dict[Face, float]:
    """Give the area, mm2, of every face that one such part has, painted or not."""
    return _FACES[part.shape](part)


def foot_of(part: Part) -> tuple[float, float]:
    """Give width and depth, mm, of a leg's foot; a tapered leg keeps its proportions."""
    if part.shape is not Shape.TAPERED_LEG:
        return part.width, part.depth
    return part.end, part.end * part.depth / part.width


def outline_radii(part: Part) -> tuple[tuple[float, float], ...]:
    """Give the outline of a turned part: its profile, or a plain cylinder without one."""
    return part.profile or ((0.0, part.width / 2), (part.length, part.width / 2))


def _panel(part: Part) -> dict[Face, float]:
    flat = part.length * part.width * part.enrichment
    return {
        Face.OUTSIDE: flat,
        Face.INSIDE: part.length * part.width,
        Face.FRONT_EDGE: part.length * part.depth,
        Face.BACK_EDGE: part.length * part.depth,
        Face.SHORT_EDGES: 2 * part.width * part.depth,
    }


def _frame(part: Part) -> dict[Face, float]:
    rail = part.rail or part.member
    face = frame_face(part.length, part.width, part.member, rail)
    opening = part.length - 2 * rail, part.width - 2 * part.member
    return {
        Face.OUTSIDE: face * part.enrichment,
        Face.INSIDE: face,
        Face.FRONT_EDGE: part.length * part.depth,
        Face.BACK_EDGE: part.length * part.depth,
        Face.SHORT_EDGES: 2 * part.width * part.depth,
        Face.INNER_EDGES: 2 * sum(opening) * part.depth,
    }


def _seat(part: Part) -> dict[Face, float]:
    back = part.end or part.width
    flat = trapezoid(part.width, back, part.length)
    return {
        Face.OUTSIDE: flat * part.enrichment,
        Face.INSIDE: flat,
        Face.FRONT_EDGE: part.width * part.depth,
        Face.BACK_EDGE: back * part.depth,
        Face.SHORT_EDGES: 2 * hypot(part.length, (part.width - back) / 2) * part.depth,
    }


def _leg(part: Part) -> dict[Face, float]:
    head, foot = (part.width, part.depth), foot_of(part)
    return {
        Face.ROUND: tapered_sides(part.length, head, foot) * part.enrichment,
        Face.HEAD: head[0] * head[1],
        Face.FOOT: foot[0] * foot[1],
    }


def _turned(part: Part) -> dict[Face, float]:
    radii = outline_radii(part)
    return {
        Face.ROUND: lateral(radii) * part.enrichment,
        Face.HEAD: disc(2 * radii[0][1]),
        Face.FOOT: disc(2 * radii[-1][1]),
    }


def _moulding(part: Part) -> dict[Face, float]:
    own = part.moulding is Moulding.OWN
    across = girth(part.profile) if own else part.width * _GIRTHS[part.moulding]
    return {Face.OUTSIDE: part.length * across * part.enrichment}


def _sphere(part: Part) -> dict[Face, float]:
    return {Face.ROUND: sphere(part.length) * part.enrichment}


_FACES: dict[Shape, Callable[[Part], dict[Face, float]]] = {
    Shape.PANEL: _panel,
    Shape.TOP: _panel,
    Shape.DRAWER_FRONT: _panel,
    Shape.FRAME: _frame,
    Shape.SEAT: _seat,
    Shape.SQUARE_LEG: _leg,
    Shape.TAPERED_LEG: _leg,
    Shape.RAIL: _leg,
    Shape.TURNED_LEG: _turned,
    Shape.SPINDLE: _turned,
    Shape.CYLINDER: _turned,
    Shape.MOULDING: _moulding,
    Shape.SPHERE: _sphere,
}
