"""A piece as solids in space, for its drawing: where each copy of a part is and what is seen of it.

x goes to the right, y up, z away from who looks; mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.faces import FLAT, TURNED, foot_of, outline_radii
from swatchwright.piece.names import piece_word
from swatchwright.piece.part import Axes, Face, Part, Piece, Shape, Spot

__all__ = ["Point3", "Solid", "solids_of"]

Point3 = tuple[float, float, float]

_GAP = 40.0
_ROW = 3000.0
_MOST = 400
_THIN = 10.0
"""mm; how thick something is drawn whose thickness is not given."""


@dataclass(frozen=True, slots=True)
class Solid:
    """A copy of a part in space.

    Parameters
    ----------
    part
        Whose copy it is.
    low, high
        Its left, lower, front corner and the opposite one.
    order
        The axes (0 x, 1 y, 2 z) along which its length, width and depth lie.
    start, end
        Its section at the head and at the foot: width and depth, mm.
    row
        The place of the part among those of its piece.
    """

    part: Part
    low: Point3
    high: Point3
    order: tuple[int, int, int]
    start: tuple[float, float]
    end: tuple[float, float]
    row: int

    @property
    def is_round(self) -> bool:
        """Whether it is turned, a cylinder or a ball."""
        return self.part.shape in TURNED | {Shape.CYLINDER, Shape.SPHERE}

    @property
    def middle(self) -> Point3:
        """The middle of the box around it."""
        x, y, z = ((a + b) / 2 for a, b in zip(self.low, self.high, strict=True))
        return (x, y, z)

    def corner(self, far: tuple[bool, bool, bool]) -> Point3:
        """Give the corner on the low or the far side of each axis."""
        along, wide, deep = self.order
        # The head of what stands is at the top; of what lies, at the left or in front.
        at_foot = far[along] != (along == 1)
        width, depth = self.end if at_foot else self.start
        place = [0.0, 0.0, 0.0]
        place[along] = self.high[along] if far[along] else self.low[along]
        for axis, size in ((wide, width), (deep, depth)):
            place[axis] = self.middle[axis] + (size / 2 if far[axis] else -size / 2)
        return (place[0], place[1], place[2])

    def zone_towards(self, axis: int) -> str:
        """Give the zone of the face that looks along an axis; empty where it is left bare."""
        part, which = self.part, self.order.index(axis)
        for face in _seen(part, which):
            if face in part.painted:
                return (part.inside_zone or part.zone) if face is Face.INSIDE else part.zone
        return ""


def _seen(part: Part, which: int) -> tuple[Face, ...]:
    if part.shape is Shape.MOULDING:
        return (Face.OUTSIDE,)
    if part.shape in FLAT:
        long: tuple[Face, ...] = (Face.FRONT_EDGE, Face.BACK_EDGE)
        short: tuple[Face, ...] = (Face.SHORT_EDGES,)
        across, along = (long, short) if part.shape is Shape.SEAT else (short, long)
        return (across, along, (Face.OUTSIDE, Face.INSIDE))[which]
    return (Face.ROUND, Face.HEAD) if which or part.shape is Shape.SPHERE else _ENDS


_ENDS = (Face.HEAD, Face.FOOT, Face.ROUND)


def solids_of(piece: Piece) -> tuple[Solid, ...]:
    """Give all copies of all parts: those with a place at it, the rest laid out beside them.

    Raises
    ------
    MendableError
        If there are more of them than a drawing can show.
    """
    copies = sum(part.count for part in piece.parts)
    if copies > _MOST:
        raise MendableError(
            say(
                "“{piece}” has {copies} parts to draw.",
                piece=piece_word(piece.name),
                copies=copies,
            ),
            say("A drawing shows up to {most}; draw a part of the piece.", most=_MOST),
        )
    placed = [
        solid
        for row, part in enumerate(piece.parts)
        for spot in part.spots[: part.count]
        for solid in _solids(row, part, spot)
    ]
    start = max((s.high[0] for s in placed), default=-_GAP) + _GAP
    return (*placed, *_laid_out(piece, start))


def _laid_out(piece: Piece, start: float) -> Iterator[Solid]:
    x, y, tallest = start, 0.0, 0.0
    for row, part in enumerate(piece.parts):
        for _ in range(part.count - len(part.spots)):
            made = list(_solids(row, part, Spot(x, y, 0.0)))
            yield from made
            tallest = max(tallest, *(s.high[1] - y for s in made))
            x = max(s.high[0] for s in made) + _GAP
            if x > start + _ROW:
                x, y, tallest = start, y + tallest + _GAP, 0.0


def _solids(row: int, part: Part, spot: Spot) -> Iterator[Solid]:
    if part.shape is not Shape.FRAME:
        yield _solid(row, part, spot)
        return
    rail = part.rail or part.member
    stile = replace(part, shape=Shape.PANEL, width=part.member)
    cross = replace(part, shape=Shape.PANEL, length=rail, width=part.width - 2 * part.member)
    across, along = part.width - part.member, part.length - rail
    for piece_of_it, at_length, at_width in (
        (stile, 0.0, 0.0),
        (stile, 0.0, across),
        (cross, 0.0, part.member),
        (cross, along, part.member),
    ):
        yield _solid(row, piece_of_it, _moved(spot, at_length, at_width))


def _moved(spot: Spot, along: float, across: float) -> Spot:
    place = [spot.x, spot.y, spot.z]
    order = _order(spot.axes)
    place[order[0]] += along
    place[order[1]] += across
    return Spot(place[0], place[1], place[2], spot.axes)


def _order(axes: Axes) -> tuple[int, int, int]:
    first, second, third = ("xyz".index(letter) for letter in axes.value)
    return (first, second, third)


def _solid(row: int, part: Part, spot: Spot) -> Solid:
    order = _order(spot.axes)
    start, end = _sections(part)
    sizes = part.length, max(start[0], end[0]), max(start[1], end[1])
    low = (spot.x, spot.y, spot.z)
    high = tuple(low[axis] + sizes[order.index(axis)] for axis in range(3))
    return Solid(part, low, (high[0], high[1], high[2]), order, start, end, row)


def _sections(part: Part) -> tuple[tuple[float, float], tuple[float, float]]:
    if part.shape is Shape.SPHERE:
        return (part.length, part.length), (part.length, part.length)
    if part.shape in TURNED | {Shape.CYLINDER}:
        thick = 2 * max(r for _, r in outline_radii(part))
        return (thick, thick), (thick, thick)
    plain = part.width or _THIN, part.depth or _THIN
    if part.shape is Shape.SEAT:
        return plain, (part.end or part.width, plain[1])
    return plain, foot_of(part) if part.shape is Shape.TAPERED_LEG else plain
