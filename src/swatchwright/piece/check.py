"""Whether a piece can be, said in words that tell what to mend."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.piece.faces import TURNED, face_areas, needs
from swatchwright.piece.part import Moulding, Part, Piece, Shape

__all__ = ["LARGEST", "checked_piece", "checked_zone"]

LARGEST = 6000.0
"""mm; longer than any piece of furniture that is painted in one."""

_SMALLEST = 0.5
_MOST_PARTS = 200
_MOST_ALIKE = 200
_MOST_POINTS = 2000
_SIZES = ("length", "width", "depth", "end", "member", "rail")


def checked_piece(piece: Piece) -> Piece:
    """Give the piece back if it can be.

    Raises
    ------
    MendableError
        If a size, count, face, zone or profile cannot be; the part is named.
    """
    if not 1 <= len(piece.parts) <= _MOST_PARTS:
        raise MendableError(
            f"“{piece.name}” has {len(piece.parts)} parts.",
            f"Give it from 1 to {_MOST_PARTS}; parts that are alike may share one line.",
        )
    for part in piece.parts:
        _check(part)
    return piece


def checked_zone(zone: str) -> str:
    """Give the name of a zone back if it can be one.

    Raises
    ------
    MendableError
        If it is empty, longer than 40 letters, or not printable.
    """
    if not (0 < len(zone.strip()) <= 40 and zone.isprintable()):
        raise MendableError(
            f"A colour zone is called “{zone[:60]}”.", "Name it in a word or two, such as drawers."
        )
    return zone


def _check(part: Part) -> None:
    if not part.name.strip() or len(part.name) > 80 or not part.name.isprintable():
        raise MendableError("A part has no name that can be read.", "Name each part, as in top.")
    _check_sizes(part)
    _check_fit(part)
    if part.profile:
        _check_profile(part)
    elif part.shape is Shape.MOULDING and part.moulding is Moulding.OWN:
        raise _off(part, "has no profile", "Give the points across it, in mm.")
    _check_paint(part)


def _off(part: Part, what: str, mend: str) -> MendableError:
    return MendableError(f"The part “{part.name}” {what}.", mend)


def _check_sizes(part: Part) -> None:
    needed = ("length", *needs(part))
    for name in _SIZES:
        value = getattr(part, name)
        if name in needed and not _SMALLEST <= value <= LARGEST:
            raise _off(
                part,
                f"({part.shape}) has a {name} of {value:g} mm",
                f"Give its {name} in mm, from {_SMALLEST:g} to {LARGEST:g}.",
            )
        if not 0 <= value <= LARGEST:
            raise _off(part, f"has a {name} of {value:g} mm", "Give a size of 0 mm or more.")
    if not 1 <= part.count <= _MOST_ALIKE:
        raise _off(part, f"is there {part.count} times", f"Give from 1 to {_MOST_ALIKE}.")
    if not 1 <= part.enrichment <= 3:
        raise _off(
            part,
            f"has an enrichment of {part.enrichment:g}",
            "Give 1 for plain work, 1.3 for raised panels, 2 for carving, at most 3.",
        )
    places = [v for s in part.spots for v in (s.x, s.y, s.z)]
    if not all(isfinite(v) and abs(v) <= 10 * LARGEST for v in places):
        raise _off(part, "stands nowhere that can be drawn", "Give its places in mm.")


def _check_fit(part: Part) -> None:
    if part.shape is Shape.FRAME:
        rail = part.rail or part.member
        if 2 * part.member >= part.width or 2 * rail >= part.length:
            raise _off(
                part,
                "has stiles or rails too wide for it",
                "Two stiles are to be narrower than the frame is wide, two rails than it is long.",
            )


def _check_profile(part: Part) -> None:
    if part.shape not in TURNED | {Shape.MOULDING}:
        raise _off(part, f"is a {part.shape} and has a profile", "Give only turned parts one.")
    if not 2 <= len(part.profile) <= _MOST_POINTS:
        raise _off(part, f"has a profile of {len(part.profile)} points", "Give 2 to 2000.")
    numbers: Iterable[float] = (v for point in part.profile for v in point)
    if not all(isfinite(v) and abs(v) <= LARGEST for v in numbers):
        raise _off(part, "has a profile with a size out of bounds", "Give all its points in mm.")
    if part.shape in TURNED:
        _check_turning(part)


def _check_turning(part: Part) -> None:
    along = [z for z, _ in part.profile]
    if any(b < a for a, b in pairwise(along)) or abs(along[-1] - along[0] - part.length) > 0.5:
        raise _off(
            part,
            f"has a profile that does not run its length of {part.length:g} mm",
            "Give pairs of distance and radius, from the head at 0 to the foot.",
        )
    if min(r for _, r in part.profile) < 0:
        raise _off(part, "has a radius below 0", "Give half the diameter at each distance.")


def _check_paint(part: Part) -> None:
    there = face_areas(part)
    for face in part.painted:
        if face not in there:
            raise _off(part, f"({part.shape}) has no {face}", f"It has: {', '.join(there)}.")
        if part.painted.count(face) > 1:
            raise _off(part, f"has its {face} named twice", "Name each painted face once.")
    checked_zone(part.zone)
    if part.inside_zone:
        checked_zone(part.inside_zone)
