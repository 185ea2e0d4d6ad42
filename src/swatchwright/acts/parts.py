"""Change what a piece is built from: sizes, counts, colour zones, faces; a part more or less."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.check import checked_piece
from swatchwright.piece.faces import EDGES, FLAT, TURNED, face_areas, needs
from swatchwright.piece.names import part_word, size_word
from swatchwright.piece.part import Face, Moulding, Part, Piece, Shape

__all__ = [
    "SIZES",
    "faces_in",
    "sizes_in",
    "with_faces",
    "with_part",
    "with_size",
    "with_value",
    "without_part",
]

SIZES = ("length", "width", "depth")
"""The sizes that every table of parts shows."""

# What a part that is added begins with, mm: something to see and to change.
_BEGINS: dict[Shape, tuple[float, float, float]] = {
    Shape.PANEL: (400, 300, 20),
    Shape.TOP: (800, 400, 22),
    Shape.FRAME: (600, 400, 22),
    Shape.DRAWER_FRONT: (400, 150, 20),
    Shape.SEAT: (420, 440, 30),
    Shape.SQUARE_LEG: (700, 42, 42),
    Shape.TAPERED_LEG: (700, 42, 42),
    Shape.TURNED_LEG: (700, 42, 42),
    Shape.SPINDLE: (400, 18, 18),
    Shape.RAIL: (600, 90, 20),
    Shape.MOULDING: (900, 40, 15),
    Shape.SPHERE: (32, 0, 0),
    Shape.CYLINDER: (100, 30, 0),
}
_TAPER = 0.6


def sizes_in(part: Part) -> tuple[str, ...]:
    """Name those of length, width and depth that a part of this shape has.

    A turned part with a profile has a width too: that of its thickest place.
    """
    wanted = {"length", *needs(part)}
    if part.profile and part.shape in TURNED:
        wanted.add("width")
    return tuple(name for name in SIZES if name in wanted)


def faces_in(part: Part) -> tuple[Face, ...]:
    """Name the faces that a part of this shape has, painted or not."""
    return tuple(face_areas(part))


def with_size(piece: Piece, row: int, name: str, mm: float) -> Piece:
    """Give one of the sizes of a part another value, mm.

    What is turned keeps its profile, drawn out or thickened with it; a tapered leg keeps its
    taper.

    Raises
    ------
    MendableError
        If the part cannot be so; it is named.
    """
    part = piece.parts[row]
    if name not in sizes_in(part):
        raise MendableError(
            say(
                "The part “{part}” ({shape}) has no {size}.",
                part=part_word(part.name),
                shape=part_word(part.shape),
                size=size_word(name),
            ),
            say("Change its {sizes}.", sizes=", ".join(map(size_word, sizes_in(part)))),
        )
    changed = _resized(part, name, float(mm))
    if not 0 < mm < float("inf"):
        return _checked(piece, row, changed)
    if part.profile and part.shape in TURNED:
        changed = _turned(part, changed, name, mm)
    elif part.shape is Shape.TAPERED_LEG and name == "width":
        changed = replace(changed, end=part.end * mm / part.width)
    return _checked(piece, row, changed)


def _resized(part: Part, name: str, mm: float) -> Part:
    if name == "length":
        return replace(part, length=mm)
    return replace(part, width=mm) if name == "width" else replace(part, depth=mm)


def _turned(part: Part, changed: Part, name: str, mm: float) -> Part:
    thickest = 2 * max(r for _, r in part.profile)
    if name == "length":
        factor = mm / part.length
        return replace(changed, profile=tuple((z * factor, r) for z, r in part.profile))
    factor = mm / thickest
    return replace(changed, profile=tuple((z, r * factor) for z, r in part.profile))


def with_value(
    piece: Piece,
    row: int,
    *,
    name: str | None = None,
    count: int | None = None,
    zone: str | None = None,
) -> Piece:
    """Give a part another name, number or colour zone; what is None stays.

    Raises
    ------
    MendableError
        If the part cannot be so.
    """
    part = piece.parts[row]
    changed = replace(
        part,
        name=part.name if name is None else name.strip(),
        count=part.count if count is None else count,
        zone=part.zone if zone is None else zone.strip(),
    )
    return _checked(piece, row, changed)


def with_faces(piece: Piece, row: int, painted: tuple[Face, ...]) -> Piece:
    """Paint these faces of a part, and leave the others bare.

    Raises
    ------
    MendableError
        If it has no such face.
    """
    part = piece.parts[row]
    ordered = tuple(face for face in faces_in(part) if face in painted)
    odd = [face for face in painted if face not in ordered]
    return _checked(piece, row, replace(part, painted=(*ordered, *odd)))


def with_part(piece: Piece, shape: Shape) -> Piece:
    """Add a part of a shape, with usual sizes to be changed, at the end of the list.

    Raises
    ------
    MendableError
        If the piece has as many parts as it may.
    """
    length, width, depth = _BEGINS[shape]
    names = [part.name for part in piece.parts]
    number = next(n for n in range(1, len(names) + 2) if _name(shape, n) not in names)
    part = Part(
        _name(shape, number),
        shape,
        length,
        width,
        depth,
        end=width * _TAPER if shape is Shape.TAPERED_LEG else 0.0,
        member=60.0 if shape is Shape.FRAME else 0.0,
        moulding=Moulding.HALF_ROUND if shape is Shape.MOULDING else Moulding.FLAT,
        painted=_usually_painted(shape),
        zone=piece.parts[-1].zone if piece.parts else "body",
    )
    return checked_piece(replace(piece, parts=(*piece.parts, part)))


def _name(shape: Shape, number: int) -> str:
    return shape.value if number == 1 else f"{shape.value} {number}"


def _usually_painted(shape: Shape) -> tuple[Face, ...]:
    if shape in FLAT:
        return (Face.OUTSIDE, *EDGES)
    return (Face.OUTSIDE,) if shape is Shape.MOULDING else (Face.ROUND,)


def without_part(piece: Piece, row: int) -> Piece:
    """Take a part away.

    Raises
    ------
    MendableError
        If it is the last one.
    """
    if len(piece.parts) == 1:
        raise MendableError(
            say("A piece needs one part at least."),
            say("Add another part before you remove this one."),
        )
    return replace(piece, parts=piece.parts[:row] + piece.parts[row + 1 :])


def _checked(piece: Piece, row: int, part: Part) -> Piece:
    parts = (*piece.parts[:row], part, *piece.parts[row + 1 :])
    return checked_piece(replace(piece, parts=parts))
