"""Size a piece of furniture, measure what of it is painted, draw it, and keep it in a file."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.areas import PieceAreas, areas_of
from swatchwright.piece.check import checked_piece
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import Drawing, View, drawn
from swatchwright.piece.names import zone_word
from swatchwright.piece.part import Part, Piece, Shape
from swatchwright.piece.svg import svg_of
from swatchwright.shelf.decoding import converted

__all__ = [
    "DrawnPiece",
    "SizedPiece",
    "draw_piece",
    "kind_named",
    "leg_named",
    "read_piece",
    "save_piece",
    "sized",
    "sized_piece",
    "write_drawing",
    "write_text",
]

_MOST_BYTES = 2_000_000
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}")


@dataclass(frozen=True, slots=True)
class SizedPiece:
    """A piece and its painted areas."""

    piece: Piece
    areas: PieceAreas


def sized(piece: Piece) -> SizedPiece:
    """Measure a piece.

    Raises
    ------
    MendableError
        If it cannot be; the part is named.
    """
    return SizedPiece(piece, areas_of(piece))


def sized_piece(
    kind: Kind,
    *,
    width: float | None = None,
    height: float | None = None,
    depth: float | None = None,
    drawers: int | None = None,
    leg: Shape | None = None,
    inside: bool = False,
) -> SizedPiece:
    """Build a common piece from its outer sizes, mm, and measure it; see `common_piece`.

    Raises
    ------
    MendableError
        If it cannot be built so.
    """
    return sized(
        common_piece(
            kind,
            width=width,
            height=height,
            depth=depth,
            drawers=drawers,
            leg=leg,
            inside=inside,
        )
    )


def kind_named(text: str) -> Kind:
    """Read the name of a common piece, in any case, with hyphens or spaces.

    Raises
    ------
    MendableError
        If there is none of that name.
    """
    wanted = re.sub(r"[\s_-]+", " ", text.strip().lower())
    for kind in Kind:
        if kind.value == wanted:
            return kind
    raise MendableError(
        say("There is no piece “{name}”.", name=text),
        say("Use one of: {names}.", names=", ".join(Kind)),
    )


def leg_named(text: str) -> Shape:
    """Read the shape of a leg: square, tapered or turned.

    Raises
    ------
    MendableError
        If it is none of them.
    """
    try:
        return Shape(f"{text.strip().lower()} leg")
    except ValueError as error:
        raise MendableError(
            say("There is no leg “{name}”.", name=text), say("Use square, tapered or turned.")
        ) from error


# --- files ---------------------------------------------------------------------------------------


def read_piece(path: Path) -> Piece:
    """Read a piece from a JSON file of its parts.

    Raises
    ------
    MendableError
        If it cannot be read, is no such file, or the piece cannot be.
    """
    import msgspec

    try:
        data = path.read_bytes() if path.stat().st_size <= _MOST_BYTES else None
    except OSError as error:
        raise MendableError(
            say("{file} cannot be read ({why}).", file=path, why=error.strerror),
            say("Check its name and folder."),
        ) from error
    if data is None:
        raise MendableError(
            say("{file} is too large for a piece.", file=path), say("Give a file of up to 2 MB.")
        )
    try:
        raw: object = msgspec.json.decode(data)
        _check_names(raw)
        return checked_piece(converted(raw, Piece))
    except (msgspec.ValidationError, msgspec.DecodeError, RecursionError) as error:
        raise MendableError(
            say("{file} is not a piece: {why}.", file=path, why=error),
            say("`swatchwright piece KIND --save FILE` writes such a file, to begin from."),
        ) from error


def _check_names(raw: object) -> None:
    """Refuse a field that no piece has: a slip in its name would go unseen."""
    if not isinstance(raw, dict):
        return
    _check_fields(raw, Piece, say("the piece"))
    parts = raw.get("parts")
    for part in parts if isinstance(parts, list) else []:
        if isinstance(part, dict):
            _check_fields(part, Part, say("the part “{name}”", name=part.get("name")))


def _check_fields(raw: dict[str, Any], of: type[Piece | Part], what: str) -> None:
    known = [field.name for field in fields(of)]
    for name in raw:
        if name not in known:
            raise MendableError(
                say("There is no “{name}” in {what}.", name=name, what=what),
                say("It may have: {names}.", names=", ".join(known)),
            )


def save_piece(piece: Piece, path: Path) -> None:
    """Write a piece to a JSON file, to be edited and read again.

    Raises
    ------
    MendableError
        If the file cannot be written.
    """
    import msgspec

    data = msgspec.json.format(msgspec.json.encode(piece), indent=2)
    write_text(path, data.decode() + "\n")


def write_drawing(piece: Piece, path: Path, colours: Mapping[str, str] | None = None) -> None:
    """Draw a piece from the front and as a picture into an SVG file.

    Parameters
    ----------
    piece
        What to draw.
    path
        Where to.
    colours
        sRGB colours of its zones, as ``#a15047``; greys for those that have none.

    Raises
    ------
    MendableError
        If a colour or its zone is none, there is too much to draw, or the file cannot be written.
    """
    drawings = [drawn(piece, view) for view in View]
    zones = {part.zone for part in piece.parts} | {part.inside_zone for part in piece.parts}
    for zone, colour in (colours or {}).items():
        if not _COLOUR.fullmatch(colour):
            raise MendableError(
                say("“{text}” is no colour.", text=colour), say("Write #RRGGBB, as #a15047.")
            )
        if zone not in zones:
            raise MendableError(
                say("The piece has no zone “{zone}”.", zone=zone_word(zone)),
                say("It has: {zones}.", zones=", ".join(map(zone_word, sorted(zones - {""})))),
            )
    write_text(path, svg_of(piece.name, drawings, colours))


def write_text(path: Path, text: str) -> None:
    """Write a text file.

    Raises
    ------
    MendableError
        If it cannot be written.
    """
    try:
        path.write_text(text, encoding="utf-8")
    except OSError as error:
        raise MendableError(
            say("{file} cannot be written ({why}).", file=path, why=error.strerror),
            say("Name a file in a folder of yours."),
        ) from error


# --- drawn ---------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class DrawnPiece:
    """A piece with its areas, drawn from the front and as a picture."""

    sized: SizedPiece
    drawings: Mapping[View, Drawing]


def draw_piece(piece: Piece) -> DrawnPiece:
    """Measure and draw a piece.

    Raises
    ------
    MendableError
        If it cannot be, or has more parts than can be drawn.
    """
    return DrawnPiece(sized(piece), {view: drawn(piece, view) for view in View})
