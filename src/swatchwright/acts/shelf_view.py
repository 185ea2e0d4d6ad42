"""The shelf as it is shown: a line for each paint, and all there is to see of one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.acts.brush_outs import brush_outs_wanted
from swatchwright.acts.known import WHITE_ABOVE, Known, known_of, white_of
from swatchwright.acts.mix import own_colours
from swatchwright.acts.paint import PaintLook, look_of_paint
from swatchwright.acts.stock import StockedPaint
from swatchwright.mixing.wishes import price_per_ml
from swatchwright.paint.mixture import mix
from swatchwright.paint.over_card import over_card_lab
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.brush_outs import Strip
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["CardCoat", "PaintLine", "WholeLook", "shelf_lines", "whole_look"]

_MOST_COATS = 4
_ML_PER_LITRE = 1000.0


@dataclass(frozen=True, slots=True)
class PaintLine:
    """A paint as a line of the shelf.

    Parameters
    ----------
    paint
        The paint.
    dry
        Its colour by itself.
    known
        How well it is known.
    ml_left
        What is left of it; None where nobody has said.
    price
        Of a litre in the cheapest tin; None where none is priced.
    """

    paint: Paint
    dry: Lab
    known: Known
    ml_left: float | None
    price: float | None

    @property
    def is_white(self) -> bool:
        """Whether others can be let down with it."""
        return self.dry.L >= WHITE_ABOVE


@dataclass(frozen=True, slots=True)
class CardCoat:
    """A paint over the black and the white of a card after so many coats, dry."""

    coats: int
    over_black: Lab
    over_white: Lab


@dataclass(frozen=True, slots=True)
class WholeLook:
    """All there is to see of a paint.

    Parameters
    ----------
    look
        Its colours and how it is known.
    card
        How it hides, coat after coat.
    wanted
        What to brush out next, the bare card left out; nothing where no more is asked for.
    let_down_with
        The white of the shelf that it is let down with; None where there is none.
    """

    look: PaintLook
    card: tuple[CardCoat, ...]
    wanted: tuple[Strip, ...]
    let_down_with: Paint | None = None

    @property
    def known(self) -> Known:
        """How well it is known."""
        return self.look.known

    @property
    def is_white(self) -> bool:
        """Whether others can be let down with it."""
        return self.look.dry.L >= WHITE_ABOVE


def shelf_lines(shelf: Shelf, stocked: Sequence[StockedPaint] = ()) -> tuple[PaintLine, ...]:
    """Give a line for each paint of a shelf, in its order.

    Parameters
    ----------
    shelf
        The paints.
    stocked
        What is known to be left of them; others may be among them.
    """
    left = {one.paint.id: one.ml_left for one in stocked}
    return tuple(
        _line(shelf, paint, dry, left.get(paint.id))
        for paint, dry in zip(shelf.paints, own_colours(shelf.paints), strict=True)
    )


def _line(shelf: Shelf, paint: Paint, dry: Lab, left: float | None) -> PaintLine:
    price = price_per_ml(paint)
    a_litre = None if price is None else price * _ML_PER_LITRE
    return PaintLine(paint, dry, known_of(shelf, paint), left, a_litre)


def whole_look(shelf: Shelf, id_: str) -> WholeLook:
    """Give all there is to see of a paint of a shelf.

    Raises
    ------
    MendableError
        If it is not on the shelf.
    """
    look = look_of_paint(shelf, id_)
    alone = mix(stack([look.paint]), [[0]], [[1.0]])
    card = []
    for coats in range(1, _MOST_COATS + 1):
        black, white = over_card_lab(alone, coats)
        card.append(CardCoat(coats, Lab.of(black[0]), Lab.of(white[0])))
    asked = brush_outs_wanted(shelf, [id_]).asked
    wanted = tuple(one.strip for one in asked if one.strip.mix)
    water = look.paint.finish.waterborne
    others = [p for p in shelf.paints if p.id != id_ and p.finish.waterborne is water]
    return WholeLook(look, tuple(card), wanted, white_of(others))
