"""What is asked of a common piece, and the boards, legs and rails that all of them share."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.piece.faces import EDGES
from swatchwright.piece.part import Axes, Face, Part, Shape, Spot

__all__ = [
    "BOARD",
    "Wanted",
    "apron",
    "board",
    "drawer_rows",
    "knobs",
    "legs",
    "side_apron",
    "sides",
    "turned_profile",
    "upright",
]

BOARD = 20.0
"""mm; thickness of a board unless told otherwise."""

_GAP = 3.0
_KNOB = 32.0
_TAPER = 0.6

# Share of the length and of the largest radius, from the head: a square-shouldered vase with two
# rings, as turned legs commonly are. Our own, no source.
_TURNING = (
    (0.0, 1.0),
    (0.14, 1.0),
    (0.14, 0.7),
    (0.17, 0.7),
    (0.19, 0.95),
    (0.21, 0.7),
    (0.3, 0.78),
    (0.42, 0.9),
    (0.6, 0.75),
    (0.84, 0.52),
    (0.86, 0.74),
    (0.88, 0.52),
    (0.92, 0.6),
    (1.0, 0.45),
)


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is asked of a common piece: outer sizes in mm, drawers, legs, and the inside."""

    width: float
    height: float
    depth: float
    drawers: int
    leg: Shape
    inside: bool


def turned_profile(length: float, thickness: float) -> tuple[tuple[float, float], ...]:
    """Give the profile of a turned leg of this length and largest diameter, mm."""
    return tuple((z * length, r * thickness / 2) for z, r in _TURNING)


def board(
    name: str,
    size: tuple[float, float],
    at: tuple[float, float, float],
    *,
    thickness: float = BOARD,
    faces: tuple[Face, ...] = (Face.OUTSIDE, *EDGES),
    zone: str = "top",
) -> Part:
    """Make a level board: its run along x and its width along z, mm."""
    shape = Shape.TOP if zone == "top" else Shape.PANEL
    return Part(
        name,
        shape,
        size[0],
        size[1],
        thickness,
        painted=faces,
        zone=zone,
        inside_zone="inside" if Face.INSIDE in faces else "",
        spots=(Spot(*at, Axes.XZY),),
    )


def upright(
    name: str,
    size: tuple[float, float],
    at: tuple[float, float, float],
    *,
    thickness: float = BOARD,
    faces: tuple[Face, ...] = (Face.OUTSIDE,),
    zone: str = "body",
) -> Part:
    """Make a board that faces the front: its run along x and its height along y, mm."""
    return Part(
        name,
        Shape.PANEL,
        size[0],
        size[1],
        thickness,
        painted=faces,
        zone=zone,
        inside_zone="inside" if Face.INSIDE in faces else "",
        spots=(Spot(*at, Axes.XYZ),),
    )


def sides(
    wanted: Wanted,
    size: tuple[float, float],
    at: tuple[float, float],
    *,
    inset: float = 0.0,
    inside: bool = False,
    open_in_front: bool = True,
) -> Part:
    """Make the two sides of a case: height and depth, mm, and where they begin (y, z)."""
    faces = (Face.OUTSIDE,) + ((Face.FRONT_EDGE,) if open_in_front else ())
    faces += (Face.INSIDE,) if inside else ()
    right = wanted.width - inset - BOARD
    return Part(
        "sides",
        Shape.PANEL,
        size[0],
        size[1],
        BOARD,
        count=2,
        painted=faces,
        inside_zone="inside" if inside else "",
        spots=tuple(Spot(x, *at, Axes.YZX) for x in (inset, right)),
    )


def legs(name: str, shape: Shape, length: float, thick: float, spots: tuple[Spot, ...]) -> Part:
    """Make legs of a shape, as long and thick as told, mm, painted all round."""
    return Part(
        name,
        shape,
        length,
        thick,
        thick,
        end=thick * _TAPER if shape is Shape.TAPERED_LEG else 0.0,
        profile=turned_profile(length, thick) if shape is Shape.TURNED_LEG else (),
        count=len(spots),
        painted=(Face.ROUND,),
        spots=spots,
    )


def apron(name: str, length: float, size: tuple[float, float], spots: tuple[Spot, ...]) -> Part:
    """Make rails that run from left to right: face height and thickness, mm."""
    return _rail(name, length, size, spots)


def side_apron(
    name: str, length: float, size: tuple[float, float], spots: tuple[Spot, ...]
) -> Part:
    """Make rails that run from front to back: face height and thickness, mm."""
    return _rail(name, length, size, tuple(Spot(s.x, s.y, s.z, Axes.ZYX) for s in spots))


def _rail(name: str, length: float, size: tuple[float, float], spots: tuple[Spot, ...]) -> Part:
    return Part(
        name,
        Shape.RAIL,
        length,
        *size,
        count=len(spots),
        painted=(Face.ROUND,),
        spots=spots,
    )


def drawer_rows(
    rows: int, across: int, size: tuple[float, float], at: tuple[float, float], *, thick: float
) -> Part:
    """Make drawer fronts that fill an opening: its width and height, and where it begins (x, y).

    They are alike and have a gap of 3 mm all round.
    """
    wide, high = size[0] / across - _GAP, size[1] / rows - _GAP
    spots = tuple(
        Spot(at[0] + column * (wide + _GAP), at[1] + row * (high + _GAP), 0.0, Axes.XYZ)
        for row in range(rows)
        for column in range(across)
    )
    return Part(
        "drawer fronts",
        Shape.DRAWER_FRONT,
        wide,
        high,
        thick,
        count=len(spots),
        painted=(Face.OUTSIDE, *EDGES),
        zone="drawers",
        spots=spots,
    )


def knobs(fronts: Part, each: int) -> Part:
    """Make wooden knobs for drawer fronts, one in the middle of each or two spread over it."""
    places = (0.5,) if each == 1 else (0.22, 0.78)
    size = min(_KNOB, fronts.width * 0.6)
    return Part(
        "knobs",
        Shape.SPHERE,
        size,
        count=each * fronts.count,
        painted=(Face.ROUND,),
        zone=fronts.zone,
        spots=tuple(
            Spot(s.x + share * fronts.length - size / 2, s.y + (fronts.width - size) / 2, -size)
            for s in fronts.spots
            for share in places
        ),
    )
