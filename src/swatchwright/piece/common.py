"""Common pieces of furniture, ready to size: parts derived from outer sizes, to be edited.

How thick boards and legs are, how far a top stands over and how drawers are spread is common
practice, no source; every part is a value that can be changed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.piece import cases
from swatchwright.piece import tables_and_chairs as stands
from swatchwright.piece.check import checked_piece
from swatchwright.piece.names import part_word, piece_word, size_word
from swatchwright.piece.part import Part, Piece, Shape
from swatchwright.piece.wanted import Wanted

__all__ = ["USUAL", "Kind", "Usual", "common_piece"]

_MOST_DRAWERS = 12
_LEGS = (Shape.SQUARE_LEG, Shape.TAPERED_LEG, Shape.TURNED_LEG)


class Kind(StrEnum):
    """A common piece."""

    CONSOLE_TABLE = mark("console table")
    CHEST_OF_DRAWERS = mark("chest of drawers")
    CHAIR = mark("chair")
    BLANKET_BOX = mark("blanket box")
    BEDSIDE_CABINET = mark("bedside cabinet")
    DRESSER = mark("dresser")
    MIRROR_FRAME = mark("mirror frame")
    PICTURE_RAIL = mark("picture rail")


@dataclass(frozen=True, slots=True)
class Usual:
    """What a common piece is like unless something else is asked for.

    Parameters
    ----------
    size
        Width, height, depth, mm.
    least, most
        The smallest and the largest that its parts still make sense at, mm.
    build
        Derives its parts.
    leg
        Shape of its legs; None where it has none to choose.
    drawers
        How many; None where it has none to choose.
    underside, flat
        As in `Piece`.
    """

    size: tuple[float, float, float]
    least: tuple[float, float, float]
    most: tuple[float, float, float]
    build: Callable[[Wanted], tuple[Part, ...]]
    leg: Shape | None = None
    drawers: int | None = None
    underside: bool = False
    flat: bool = False


USUAL: dict[Kind, Usual] = {
    Kind.CONSOLE_TABLE: Usual(
        (900, 780, 350),
        (300, 300, 200),
        (3000, 1200, 1200),
        stands.console_table,
        leg=Shape.TAPERED_LEG,
        drawers=0,
        underside=True,
    ),
    Kind.CHEST_OF_DRAWERS: Usual(
        (900, 900, 450), (300, 300, 200), (2400, 2000, 900), cases.chest_of_drawers, drawers=4
    ),
    Kind.CHAIR: Usual(
        (450, 900, 450),
        (250, 500, 250),
        (900, 1500, 900),
        stands.chair,
        leg=Shape.TURNED_LEG,
        underside=True,
    ),
    Kind.BLANKET_BOX: Usual(
        (1000, 500, 450), (300, 250, 200), (2000, 1000, 900), cases.blanket_box
    ),
    Kind.BEDSIDE_CABINET: Usual(
        (420, 600, 380), (250, 350, 200), (900, 1000, 700), cases.bedside_cabinet, drawers=1
    ),
    Kind.DRESSER: Usual(
        (1200, 1900, 450), (600, 1200, 300), (3000, 2600, 800), cases.dresser, drawers=3
    ),
    Kind.MIRROR_FRAME: Usual(
        (600, 800, 25), (150, 150, 8), (2500, 2500, 100), stands.mirror_frame, flat=True
    ),
    Kind.PICTURE_RAIL: Usual(
        (2400, 50, 20), (100, 15, 5), (6000, 300, 100), stands.picture_rail, flat=True
    ),
}
"""The common pieces."""


def common_piece(
    kind: Kind,
    *,
    width: float | None = None,
    height: float | None = None,
    depth: float | None = None,
    drawers: int | None = None,
    leg: Shape | None = None,
    inside: bool = False,
) -> Piece:
    """Build a common piece from its outer sizes.

    Parameters
    ----------
    kind
        Which one.
    width, height, depth
        mm, seen from the front; as is usual for it where None. A picture rail is as wide as its
        run and as high as its face.
    drawers
        How many, where it has any to choose.
    leg
        Square, tapered or turned, where it has legs to choose.
    inside
        Whether the inside of a case is painted too; it is a zone of its own.

    Raises
    ------
    MendableError
        If a size is out of bounds, or drawers or legs are asked for that the kind does not have.
    """
    usual = USUAL[kind]
    size = tuple(
        _size(kind, name, given, i)
        for i, (name, given) in enumerate((("width", width), ("height", height), ("depth", depth)))
    )
    wanted = Wanted(
        size[0], size[1], size[2], _drawers(kind, drawers), _leg(kind, leg), inside=inside
    )
    piece = Piece(kind.value, usual.build(wanted), usual.underside, usual.flat)
    return checked_piece(piece)


def _size(kind: Kind, name: str, given: float | None, axis: int) -> float:
    usual = USUAL[kind]
    size = usual.size[axis] if given is None else given
    if not (isfinite(size) and usual.least[axis] <= size <= usual.most[axis]):
        raise MendableError(
            say(
                "A {kind} cannot be built with a {name} of {size:g} mm.",
                kind=piece_word(kind.value),
                name=size_word(name),
                size=size,
            ),
            say(
                "Give from {least:g} to {most:g} mm, or build it from parts.",
                least=usual.least[axis],
                most=usual.most[axis],
            ),
        )
    return float(size)


def _drawers(kind: Kind, asked: int | None) -> int:
    usual = USUAL[kind].drawers
    if asked is None:
        return usual or 0
    if usual is None:
        raise MendableError(
            say("A {kind} here has no drawers.", kind=piece_word(kind.value)),
            say("Leave the drawers out."),
        )
    least = 1 if usual else 0
    if not least <= asked <= _MOST_DRAWERS:
        raise MendableError(
            say("{asked} drawers were asked for.", asked=asked),
            say("Ask for {least} to {most}.", least=least, most=_MOST_DRAWERS),
        )
    return asked


def _leg(kind: Kind, asked: Shape | None) -> Shape:
    usual = USUAL[kind].leg
    if asked is None:
        return usual or Shape.SQUARE_LEG
    if usual is None:
        raise MendableError(
            say("A {kind} here has no legs to choose.", kind=piece_word(kind.value)),
            say("Leave the legs out."),
        )
    if asked not in _LEGS:
        raise MendableError(
            say("“{shape}” is no leg.", shape=part_word(asked.value)),
            say("Use one of: {words}.", words=", ".join(part_word(leg.value) for leg in _LEGS)),
        )
    return asked
