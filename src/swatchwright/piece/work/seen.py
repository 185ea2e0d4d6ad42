"""What a plan has to know of a piece: which of its sides are painted, what comes off, who sits."""

from __future__ import annotations

from swatchwright.piece.part import Axes, Face, Part, Piece, Shape
from swatchwright.piece.work.order import Loose, Which

__all__ = ["loose_parts", "painted_sides", "sat_on", "sides_of_zone"]

_FREE = frozenset(
    {Shape.SQUARE_LEG, Shape.TAPERED_LEG, Shape.TURNED_LEG, Shape.SPINDLE, Shape.RAIL}
)
_UPRIGHT, _LEVEL = frozenset({Axes.XYZ, Axes.YXZ}), frozenset({Axes.XZY, Axes.ZXY})
_LOOSE = {"lid": Loose.LID, "door": Loose.DOORS, "doors": Loose.DOORS}
_BACK = "back"


def painted_sides(piece: Piece) -> tuple[Which, ...]:
    """Give the sides of a piece that are painted, in the order they are told.

    A board is painted where it looks to, and is taken to stand at the back by its name. What is
    painted all round is painted from all sides. Of a piece that lies flat it is the front.
    """
    if piece.flat:
        return (Which.FRONT,)
    found = {side for part in piece.parts if part.painted for side in _of_part(part)}
    if piece.underside:
        found.add(Which.UNDERSIDE)
    if not found:
        return (Which.FRONT, Which.SIDES, Which.TOP)
    order = (Which.UNDERSIDE, Which.FRONT, Which.SIDES, Which.BACK, Which.TOP, Which.INSIDE)
    return tuple(side for side in order if side in found)


def sides_of_zone(piece: Piece, zone: str) -> tuple[Which, ...]:
    """Give the sides from which a colour zone of a piece is painted; none where it has no such.

    Of a piece that is turned over for its underside, that belongs to every zone but to those that
    are only seen from above or from inside, as a table's top.
    """
    found = {side for part in piece.parts for side in _of_zone(part, zone)}
    if piece.flat:
        return (Which.FRONT,) if found else ()
    if piece.underside and found - {Which.TOP, Which.INSIDE}:
        found.add(Which.UNDERSIDE)
    return tuple(side for side in painted_sides(piece) if side in found)


def _of_zone(part: Part, zone: str) -> set[Which]:
    """Give the sides from which that of a part is painted which belongs to a zone."""
    if not part.painted:
        return set()
    inner = part.inside_zone or part.zone
    inside = Face.INSIDE in part.painted
    outer = part.painted != (Face.INSIDE,)
    found = set()
    if outer and part.zone == zone:
        found |= _of_part(part) - ({Which.INSIDE} if inner != zone else set())
    if inside and inner == zone:
        found |= {Which.INSIDE} if part.inside_zone else _of_part(part)
    return found


def _of_part(part: Part) -> set[Which]:
    if part.shape in _FREE:
        return {Which.FRONT, Which.SIDES, *_behind(part)}
    found = {Which.INSIDE} if Face.INSIDE in part.painted and part.inside_zone else set()
    if part.painted == (Face.INSIDE,):
        return found
    axes = part.spots[0].axes if part.spots else None
    if part.shape in {Shape.TOP, Shape.SEAT} or axes in _LEVEL:
        return {*found, Which.TOP}
    if axes is Axes.ZYX or axes is Axes.YZX:
        return {*found, Which.SIDES}
    return {*found, Which.BACK if part.name == _BACK and axes in _UPRIGHT else Which.FRONT}


def _behind(part: Part) -> set[Which]:
    """Tell whether a leg or a rail is one of the piece's back, or of all its corners."""
    return {Which.BACK} if part.name.startswith((_BACK, "leg", "apron")) else set()


def loose_parts(piece: Piece) -> tuple[Loose, ...]:
    """Give what of a piece comes off or out before it is painted."""
    found = {_LOOSE[part.name] for part in piece.parts if part.name in _LOOSE}
    if any(part.shape is Shape.DRAWER_FRONT for part in piece.parts):
        found.add(Loose.DRAWERS)
    return tuple(kind for kind in Loose if kind in found)


def sat_on(piece: Piece) -> bool:
    """Tell whether a piece has a seat."""
    return any(part.shape is Shape.SEAT for part in piece.parts)
