"""A paint put on the shelf by hand: from its tin and one colour, as well as that is known."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from enum import StrEnum
from itertools import pairwise
from math import isfinite

from swatchwright.acts import labels
from swatchwright.acts.films import PHOTO_OFF
from swatchwright.acts.mix import own_colours
from swatchwright.acts.sitting import (
    EYE_OFF,
    INSTRUMENT_OFF,
    Card,
    Sitting,
    new_tin,
    with_reading,
)
from swatchwright.acts.sitting_fit import fit_sitting
from swatchwright.acts.stock import put_paints
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown, Paint, Tin
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import paint_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

__all__ = [
    "MOST_TINS",
    "ColourFrom",
    "add_paint",
    "change_paint",
    "moved_from",
    "name_and_tins",
    "paint_by_hand",
]

MOST_TINS = 12
"""Sizes that a paint may be told to be sold in."""

_MOST_ML, _MOST_PRICE = 100_000.0, 1e6


class ColourFrom(StrEnum):
    """How the colour of a paint is known, the least sure first."""

    EYE = "eye"
    PHOTO = "photo"
    MEASURED = "measured"

    @property
    def usually_off(self) -> float:
        """Median CIEDE2000 by which such a colour is off."""
        return _OFF[self]


_OFF = {
    ColourFrom.EYE: EYE_OFF,
    ColourFrom.PHOTO: PHOTO_OFF,
    ColourFrom.MEASURED: INSTRUMENT_OFF,
}


def paint_by_hand(
    name: str,
    family: Family,
    lab: Lab,
    *,
    shelf: Shelf,
    usually_off: float = EYE_OFF,
    tins: Sequence[Tin] = (),
    taken: Sequence[str] = (),
    stopped: Callable[[], bool] | None = None,
) -> Paint:
    """Make a paint of one colour, by the same fit as of one brushed card.

    Parameters
    ----------
    name, family
        What it is called, and how it finishes.
    lab
        Its dry colour, laid until it hides.
    shelf
        The paints in use, among which it comes.
    usually_off
        Median CIEDE2000 by which the colour is off, see `ColourFrom`.
    tins
        The sizes it is sold in.
    taken
        Ids that are given already besides those of the shelf.
    stopped
        Asked whether to give up.

    Raises
    ------
    MendableError
        If it has no name, a size or a price cannot be, or no surface has the colour.
    Stopped
        If `stopped` said so.
    """
    sold = _checked(tins)
    tin = new_tin(name, family, taken=[*taken, *(paint.id for paint in shelf.paints)])
    card = Card(f"{tin.id}-1", ((tin.id, 1.0),))
    sitting = Sitting((tin.id,), (tin,), cards=(card,))
    read = with_reading(sitting, 0, lab, usually_off=usually_off)
    found = fit_sitting(read, shelf, stopped=stopped)
    return replace(found.shelf.paint(tin.id), tins=sold)


def moved_from(paint: Paint, given: Lab) -> float:
    """Say how far the colour of a paint is from that which was given for it, CIEDE2000.

    Of all paints that could be made, the likeliest with a colour that is not sure looks a little
    otherwise.
    """
    return float(delta_e_2000(own_colours((paint,))[0].triple, given.triple))


def _checked(tins: Sequence[Tin]) -> tuple[Tin, ...]:
    """Refuse sizes and prices that cannot be, and put them in order, the smallest first."""
    if len(tins) > MOST_TINS:
        raise MendableError(
            say("These are too many sizes of tin."),
            say("Leave the {most} that you buy most.", most=MOST_TINS),
        )
    for tin in tins:
        if not (isfinite(tin.ml) and 0 < tin.ml <= _MOST_ML):
            raise MendableError(
                say("A tin of {ml:g} ml cannot be.", ml=tin.ml),
                say("Give more than 0 and up to {most:g}.", most=_MOST_ML),
            )
        if tin.price is not None and not (isfinite(tin.price) and 0 < tin.price <= _MOST_PRICE):
            raise MendableError(
                say("A price of {value:g} cannot be.", value=tin.price),
                say("Give more than 0 and up to {most:g}.", most=_MOST_PRICE),
            )
    in_order = tuple(sorted(tins, key=lambda tin: tin.ml))
    for one, other in pairwise(in_order):
        if one.ml == other.ml:
            raise MendableError(
                say("The tin of {ml:g} ml is there twice.", ml=one.ml),
                say("Leave one of them, with its price."),
            )
    return in_order


def add_paint(store: Store, paint: Paint, *, beside: Sequence[Paint] = ()) -> Changes:
    """Put a new paint on the shelf; where she has none of her own, it begins one.

    Parameters
    ----------
    store
        Where the shelf is.
    paint
        The paint.
    beside
        The paints in use. Those that are hers and are not kept yet, as they were read from a file,
        are kept with it, so that they stay beside it; invented ones are not.

    Raises
    ------
    MendableError
        If a paint is impossible, or one with this id is kept already.
    """
    hers = [one for one in beside if one.how_known is not HowKnown.INVENTED]
    with store.editing(labels.ADD_PAINT.format(paint=paint.name)) as edit:
        there = {
            stocked.paint.id
            for stocked in paint_rows.read_paints(edit.connection)
            if stocked.paint.how_known is not HowKnown.INVENTED
        }
        if paint.id in there:
            raise MendableError(
                say("“{paint}” is on your shelf already.", paint=paint.name),
                say("Give the new paint another name, or change the one that is there."),
            )
        done = put_paints(store, (*(one for one in hers if one.id not in there), paint))
        return replace(edit.changes, warnings=done.warnings)


def name_and_tins(name: str, tins: Sequence[Tin]) -> tuple[str, tuple[Tin, ...]]:
    """Give a name without needless blanks, and tins in their order, as a paint may have them.

    Raises
    ------
    MendableError
        If there is no name, or a size or a price cannot be.
    """
    return new_tin(name, Family.EMULSION).name, _checked(tins)


def change_paint(store: Store, id_: str, *, name: str, tins: Sequence[Tin]) -> Changes:
    """Give a paint of the kept shelf another name, other sizes or other prices.

    What is known of its colour stays, and what is left of it. Where nothing is another, nothing is
    changed.

    Raises
    ------
    MendableError
        If it is not on the shelf, has no name, or a size or a price cannot be.
    """
    told, sold = name_and_tins(name, tins)
    with store.editing(labels.CHANGE_PAINT.format(paint=told)) as edit:
        found = paint_rows.read_paints(edit.connection, (id_,))
        if not found:
            raise MendableError(
                say("This paint is no longer on your shelf."),
                say("Undo brings back what was taken off."),
            )
        before = found[0].paint
        edit.call(labels.CHANGE_PAINT.format(paint=before.name))
        if (before.name, before.tins) != (told, sold):
            paint = replace(before, name=told, tins=sold)
            paint_rows.write_paint(edit, replace(found[0], paint=paint))
        return edit.changes
