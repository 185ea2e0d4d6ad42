"""Whether a piece can be, said in words that tell what to mend."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.faces import TURNED, face_areas, needs
from swatchwright.piece.names import face_word, part_word, piece_word, size_word
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
            say(
                "“{piece}” has {count} parts.",
                piece=piece_word(piece.name),
                count=len(piece.parts),
            ),
            say(
                "Give it from 1 to {most}; parts that are alike may share one line.",
                most=_MOST_PARTS,
            ),
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
            say("A colour of the piece is called “{zone}”.", zone=zone[:60]),
            say("Name it in a word or two, such as drawers."),
        )
    return zone


def _check(part: Part) -> None:
    if not part.name.strip() or len(part.name) > 80 or not part.name.isprintable():
        raise MendableError(
            say("A part has no name that can be read."), say("Name each part, as in top.")
        )
    _check_sizes(part)
    _check_bounds(part)
    _check_fit(part)
    if part.profile:
        _check_profile(part)
    elif part.shape is Shape.MOULDING and part.moulding is Moulding.OWN:
        raise MendableError(
            say("The part “{part}” has no profile.", part=_called(part)),
            say("Give the points across it, in mm."),
        )
    _check_paint(part)


def _called(part: Part) -> str:
    return part_word(part.name)


def _shaped(part: Part) -> str:
    return part_word(part.shape.value)


def _check_sizes(part: Part) -> None:
    needed = ("length", *needs(part))
    for name in _SIZES:
        value = getattr(part, name)
        if name in needed and not _SMALLEST <= value <= LARGEST:
            raise MendableError(
                say(
                    "The part “{part}” ({shape}) has a {size} of {value:g} mm.",
                    part=_called(part),
                    shape=_shaped(part),
                    size=size_word(name),
                    value=value,
                ),
                say(
                    "Give its {size} in mm, from {least:g} to {most:g}.",
                    size=size_word(name),
                    least=_SMALLEST,
                    most=LARGEST,
                ),
            )
        if not 0 <= value <= LARGEST:
            raise MendableError(
                say(
                    "The part “{part}” has a {size} of {value:g} mm.",
                    part=_called(part),
                    size=size_word(name),
                    value=value,
                ),
                say("Give a size of 0 mm or more."),
            )


def _check_bounds(part: Part) -> None:
    """Check how many there are, how enriched they are, and where they stand."""
    if not 1 <= part.count <= _MOST_ALIKE:
        raise MendableError(
            say("The part “{part}” is there {count} times.", part=_called(part), count=part.count),
            say("Give from 1 to {most}.", most=_MOST_ALIKE),
        )
    if not 1 <= part.enrichment <= 3:
        raise MendableError(
            say(
                "The part “{part}” has an enrichment of {value:g}.",
                part=_called(part),
                value=part.enrichment,
            ),
            say("Give 1 for plain work, 1.3 for raised panels, 2 for carving, at most 3."),
        )
    places = [v for s in part.spots for v in (s.x, s.y, s.z)]
    if not all(isfinite(v) and abs(v) <= 10 * LARGEST for v in places):
        raise MendableError(
            say("The part “{part}” stands nowhere that can be drawn.", part=_called(part)),
            say("Give its places in mm."),
        )


def _check_fit(part: Part) -> None:
    if part.shape is Shape.FRAME:
        rail = part.rail or part.member
        if 2 * part.member >= part.width or 2 * rail >= part.length:
            raise MendableError(
                say("The part “{part}” has stiles or rails too wide for it.", part=_called(part)),
                say(
                    "Two stiles are to be narrower than the frame is wide, two rails than it is "
                    "long."
                ),
            )


def _check_profile(part: Part) -> None:
    if part.shape not in TURNED | {Shape.MOULDING}:
        raise MendableError(
            say(
                "The part “{part}” is a {shape} and has a profile.",
                part=_called(part),
                shape=_shaped(part),
            ),
            say("Give only turned parts one."),
        )
    if not 2 <= len(part.profile) <= _MOST_POINTS:
        raise MendableError(
            say(
                "The part “{part}” has a profile of {count} points.",
                part=_called(part),
                count=len(part.profile),
            ),
            say("Give 2 to 2000."),
        )
    numbers: Iterable[float] = (v for point in part.profile for v in point)
    if not all(isfinite(v) and abs(v) <= LARGEST for v in numbers):
        raise MendableError(
            say("The part “{part}” has a profile with a size out of bounds.", part=_called(part)),
            say("Give all its points in mm."),
        )
    if part.shape in TURNED:
        _check_turning(part)


def _check_turning(part: Part) -> None:
    along = [z for z, _ in part.profile]
    if any(b < a for a, b in pairwise(along)) or abs(along[-1] - along[0] - part.length) > 0.5:
        raise MendableError(
            say(
                "The part “{part}” has a profile that does not run its length of {length:g} mm.",
                part=_called(part),
                length=part.length,
            ),
            say("Give pairs of distance and radius, from the head at 0 to the foot."),
        )
    if min(r for _, r in part.profile) < 0:
        raise MendableError(
            say("The part “{part}” has a radius below 0.", part=_called(part)),
            say("Give half the diameter at each distance."),
        )


def _check_paint(part: Part) -> None:
    there = face_areas(part)
    for face in part.painted:
        if face not in there:
            raise MendableError(
                say(
                    "The part “{part}” ({shape}) has no {face}.",
                    part=_called(part),
                    shape=_shaped(part),
                    face=face_word(face.value),
                ),
                say("It has: {faces}.", faces=", ".join(face_word(f.value) for f in there)),
            )
        if part.painted.count(face) > 1:
            raise MendableError(
                say(
                    "The part “{part}” has its {face} named twice.",
                    part=_called(part),
                    face=face_word(face.value),
                ),
                say("Name each painted face once."),
            )
    checked_zone(part.zone)
    if part.inside_zone:
        checked_zone(part.inside_zone)
