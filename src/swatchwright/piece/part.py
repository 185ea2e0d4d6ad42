"""A part of a piece of furniture: its shape, its sizes in mm, and its painted faces."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from swatchwright.language import mark_in

__all__ = ["Axes", "Face", "Moulding", "Part", "Piece", "Shape", "Spot"]


class Shape(StrEnum):
    """What a part is like."""

    PANEL = mark_in("part", "panel")
    TOP = mark_in("part", "top")
    FRAME = mark_in("part", "frame")
    DRAWER_FRONT = mark_in("part", "drawer front")
    SEAT = mark_in("part", "seat")
    SQUARE_LEG = mark_in("part", "square leg")
    TAPERED_LEG = mark_in("part", "tapered leg")
    TURNED_LEG = mark_in("part", "turned leg")
    SPINDLE = mark_in("part", "spindle")
    RAIL = mark_in("part", "rail")
    MOULDING = mark_in("part", "moulding")
    SPHERE = mark_in("part", "sphere")
    CYLINDER = mark_in("part", "cylinder")


class Face(StrEnum):
    """A face of a part. Which of them a shape has is told in `piece.faces`.

    Of a flat part: its outside and inside, and its edges (the long edge seen in front, the one
    at the back, and the two short ones). Of a leg or rail: all round, its head and its foot.
    """

    OUTSIDE = mark_in("face", "outside")
    INSIDE = mark_in("face", "inside")
    FRONT_EDGE = mark_in("face", "front edge")
    BACK_EDGE = mark_in("face", "back edge")
    SHORT_EDGES = mark_in("face", "short edges")
    INNER_EDGES = mark_in("face", "inner edges")
    ROUND = mark_in("face", "all round")
    HEAD = mark_in("face", "head")
    FOOT = mark_in("face", "foot")


class Moulding(StrEnum):
    """The profile of a moulding of a given face width, or one of its own."""

    FLAT = "flat"
    BEVEL = "bevel"
    QUARTER_ROUND = "quarter round"
    HALF_ROUND = "half round"
    OGEE = "ogee"
    OWN = "own profile"


class Axes(StrEnum):
    """Along which of the piece's axes a part's length, width and depth lie.

    x goes to the right, y up and z away from who looks at its front.
    """

    XYZ = "xyz"
    XZY = "xzy"
    YXZ = "yxz"
    YZX = "yzx"
    ZXY = "zxy"
    ZYX = "zyx"


@dataclass(frozen=True, slots=True)
class Spot:
    """Where one copy of a part is: its left, lower, front corner, mm, and how it lies."""

    x: float
    y: float
    z: float
    axes: Axes = Axes.YXZ


@dataclass(frozen=True, slots=True)
class Part:
    """One part, or several that are alike.

    Parameters
    ----------
    name
        What it is called.
    shape
        What it is like.
    length
        mm: the long side of a panel, the height of a leg, the run of a rail or moulding, the
        front-to-back of a seat; the diameter of a sphere.
    width
        mm: the other side of a panel, the front of a seat, the face of a rail, the diameter of
        what is round, the face of a moulding.
    depth
        mm: thickness, or the other side of a leg or rail.
    end
        mm: the square foot of a tapered leg; the back of a seat. 0 for as wide as the other end.
    member
        mm: how wide the stiles of a frame are.
    rail
        mm: how wide its rails are; 0 for as wide as the stiles.
    profile
        Turned parts: distance along and radius, mm, from the head. Mouldings with a profile of
        their own: points across it, mm.
    moulding
        Which profile a moulding has.
    count
        How many of them.
    painted
        Its painted faces, each once; empty for a part that is left bare.
    zone
        The colour zone it belongs to.
    inside_zone
        The zone of its inside, where that has another colour; empty for the same.
    enrichment
        What flat area is multiplied by for carving or raised panels, 1-3: [IS1200] takes 1.30
        for panelled doors and 2.00 for carved work.
    spots
        Where each of them is, for the drawing; those beyond the list are laid out beside it.
    """

    name: str
    shape: Shape
    length: float
    width: float = 0.0
    depth: float = 0.0
    end: float = 0.0
    member: float = 0.0
    rail: float = 0.0
    profile: tuple[tuple[float, float], ...] = ()
    moulding: Moulding = Moulding.FLAT
    count: int = 1
    painted: tuple[Face, ...] = ()
    zone: str = "body"
    inside_zone: str = ""
    enrichment: float = 1.0
    spots: tuple[Spot, ...] = ()


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of furniture, built from parts.

    Parameters
    ----------
    name
        What it is.
    parts
        What it is built from.
    underside
        Whether it is turned over to paint what is seen from below.
    flat
        Whether it lies flat to be painted, as a frame or a length of rail does.
    """

    name: str
    parts: tuple[Part, ...]
    underside: bool = False
    flat: bool = False
