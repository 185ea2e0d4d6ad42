"""Get to know paints in one sitting: choose them, brush out cards, read these, fit the paints.

A sitting is a value that grows: every function gives a new one. It can be kept with a job, for the
cards take a day to dry.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import isfinite
from pathlib import Path

import numpy as np

from swatchwright.acts.brush_outs import brush_outs_wanted
from swatchwright.acts.fit_told import Next
from swatchwright.acts.known import white_of
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.brush_outs import Strip
from swatchwright.shelf.measured import on_grid
from swatchwright.shelf.measured.values import Measurement, Measurements
from swatchwright.shelf.plain_text import write_text
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = [
    "EYE_OFF",
    "INSTRUMENT_OFF",
    "Card",
    "NewTin",
    "Sitting",
    "measured_cards",
    "names_in",
    "new_tin",
    "next_unread",
    "read_now",
    "save_cards",
    "with_card_more",
    "with_cards",
    "with_reading",
]

_MOST_ML, _MOST_PRICE = 100_000.0, 1e6
_MORE = "-more-"

INSTRUMENT_OFF = 0.5
"""Median CIEDE2000 by which an instrument is off, its place on the card included."""

EYE_OFF = 7.0
"""Median CIEDE2000 by which a colour is off that was judged by eye or off a maker's printed card:
more than of a photo beside a grey card. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class NewTin:
    """A paint that is not on the shelf yet, as its tin tells of it; None where it does not say."""

    id: str
    name: str
    family: Family
    tin_ml: float | None = None
    price: float | None = None
    volume_solids: float | None = None


@dataclass(frozen=True, slots=True)
class Card:
    """A card to brush out, and what was read off it.

    Parameters
    ----------
    id
        Of the film; one over black and one over white have the same.
    mix
        Paints by id with their parts; empty for the bare ground.
    over
        Nothing where it hides, ``black`` or ``white``, or, of the bare ground, which it is.
    coats
        How many; None where it is laid until it hides.
    lab
        What was read, CIELAB, D65; None if nothing yet, or a spectrum.
    spectrum
        (36,) reflectance that was read; empty where there is none.
    usually_off
        Median CIEDE2000 by which such a reading is off.
    read_by
        Where the reading came from, in words.
    """

    id: str
    mix: tuple[tuple[str, float], ...]
    over: str = ""
    coats: float | None = None
    lab: Lab | None = None
    spectrum: tuple[float, ...] = ()
    usually_off: float | None = None
    read_by: str = ""

    @property
    def key(self) -> str:
        """What tells it from all others of a sitting, whatever its number is."""
        mix = "+".join(f"{parts:.6g} {id_}" for id_, parts in self.mix)
        return f"{self.id}/{self.over}/{mix}"

    @property
    def is_read(self) -> bool:
        """Whether anything was read off it."""
        return self.lab is not None or bool(self.spectrum)

    @property
    def colour(self) -> Lab | None:
        """The colour that was read; None if nothing was."""
        if self.lab is None and self.spectrum:
            return Lab.of(lab_of(np.array(self.spectrum)))
        return self.lab


@dataclass(frozen=True, slots=True)
class Sitting:
    """Which paints are to be known, and the cards for it.

    Parameters
    ----------
    ids
        The paints, those of the shelf and new ones, the white among them.
    new
        What the tins of the new ones say.
    white
        Id of the white that the others are let down with; empty where there is none.
    ground
        Whether there is a card of black and white to lay coats on.
    cards
        In the order to brush and to read them.
    """

    ids: tuple[str, ...] = ()
    new: tuple[NewTin, ...] = ()
    white: str = ""
    ground: bool = False
    cards: tuple[Card, ...] = ()


def new_tin(
    name: str,
    family: Family,
    *,
    taken: Sequence[str] = (),
    tin_ml: float | None = None,
    price: float | None = None,
    volume_solids: float | None = None,
) -> NewTin:
    """Take down a new paint, with an id made of its name.

    Parameters
    ----------
    name, family
        What it is called, and how it finishes.
    taken
        Ids that are given already.
    tin_ml, price, volume_solids
        What the tin says, or None: ml, its price, and solids by volume as a share, 0-1.

    Raises
    ------
    MendableError
        If it has no name or a number is out of range.
    """
    plain = " ".join(name.split())
    if not re.search(r"\w", plain) or len(plain) > 120:
        raise MendableError(
            say("The new paint has no name."), say("Write what is on the tin, in a line.")
        )
    for told, value, most in (
        (mark("A tin of {value:g} cannot be."), tin_ml, _MOST_ML),
        (mark("A price of {value:g} cannot be."), price, _MOST_PRICE),
        (mark("A share of solids of {value:g} cannot be."), volume_solids, 0.95),
    ):
        if value is not None and not (isfinite(value) and 0 < value <= most):
            raise MendableError(
                say(told, value=value), say("Give more than 0 and up to {most:g}.", most=most)
            )
    slug = "-".join(re.findall(r"[^\W_]+", plain.lower()))[:40].strip("-")
    numbered = (slug if n == 1 else f"{slug}-{n}" for n in range(1, len(taken) + 2))
    id_ = next(one for one in numbered if one not in taken)
    return NewTin(id_, plain, family, tin_ml, price, volume_solids)


def names_in(sitting: Sitting, shelf: Shelf) -> dict[str, str]:
    """Give the names of all paints that the cards may hold, by id."""
    return {p.id: p.name for p in shelf.paints} | {tin.id: tin.name for tin in sitting.new}


def with_cards(sitting: Sitting, shelf: Shelf) -> Sitting:
    """Work out the cards of a sitting; what was read off a card that stays is kept.

    The white is always among the paints: what is let down with it is no better known than it is.
    Where none is named, the lightest of the chosen paints is taken if it is a white.

    Raises
    ------
    MendableError
        If no paint is chosen, or more than 200 cards would have to be brushed.
    """
    if not sitting.ids:
        raise MendableError(
            say("No paint is chosen."), say("Tick the paints you mix from most, and a white.")
        )
    white = sitting.white or _white_among(sitting, shelf)
    ids = sitting.ids if not white or white in sitting.ids else (white, *sitting.ids)
    # White first: it is in most of the cards.
    ids = tuple(sorted(ids, key=lambda id_: id_ != white))
    wanted = brush_outs_wanted(
        _from_nothing(sitting, shelf), ids, card=sitting.ground, white=white or None
    )
    before = {(card.id, card.mix, card.over): card for card in sitting.cards}
    cards = [_card(one.strip) for one in wanted.asked]
    asked = {(card.id, card.mix, card.over) for card in cards}
    kept = [before.get((c.id, c.mix, c.over), c) for c in cards]
    more = [c for key, c in before.items() if key not in asked and _stays(c, ids)]
    return replace(sitting, ids=ids, white=white, cards=(*kept, *more))


def _white_among(sitting: Sitting, shelf: Shelf) -> str:
    chosen = white_of([paint for paint in shelf.paints if paint.id in sitting.ids])
    return "" if chosen is None else chosen.id


def _stays(card: Card, ids: Sequence[str]) -> bool:
    """Tell whether a card that is not asked for stays: it was read, or was wanted besides."""
    wanted = card.is_read or _MORE in card.id
    return wanted and any(id_ in ids for id_, _ in card.mix)


def _from_nothing(sitting: Sitting, shelf: Shelf) -> Shelf:
    """Give the shelf as if nothing had been brushed out yet, with blanks for what is new.

    All that was fitted before is fitted from the cards of this sitting alone, and so needs all of
    them; and no real paint is let down with an invented white, unless she means to.
    """
    blanks = tuple(_blank(tin) for tin in sitting.new)
    there = (
        replace(p, spread=None)
        for p in shelf.paints
        if p.how_known is not HowKnown.INVENTED or p.id in {*sitting.ids, sitting.white}
    )
    return replace(shelf, paints=(*there, *blanks))


def _blank(tin: NewTin) -> Paint:
    nothing = np.ones(36)
    return Paint(tin.id, tin.name, tin.family, nothing, nothing, HowKnown.GUESSED)


def _card(strip: Strip) -> Card:
    over = strip.over if strip.mix else strip.id
    return Card(strip.id, strip.mix, over, strip.coats)


def with_card_more(sitting: Sitting, paint: str, wanted: Next) -> Sitting:
    """Add the card that would teach most of a paint."""
    over = "black" if wanted.over_black else ""
    count = sum(card.id.startswith(f"{paint}{_MORE}") for card in sitting.cards)
    card = Card(f"{paint}{_MORE}{count + 1}", wanted.mix, over, 1.0 if over else None)
    known = {(one.mix, one.over) for one in sitting.cards}
    if (card.mix, card.over) in known:
        return sitting
    return replace(sitting, cards=(*sitting.cards, card))


def with_reading(
    sitting: Sitting, number: int, lab: Lab | None, *, usually_off: float = 5.5, read_by: str = ""
) -> Sitting:
    """Note what was read off a card, or with None that nothing was.

    Parameters
    ----------
    sitting
        The sitting.
    number
        Which card, from 0.
    lab
        The colour.
    usually_off
        Median CIEDE2000 by which it is off, above 0 and up to 30.
    read_by
        Where it came from, in words.

    Raises
    ------
    MendableError
        If the colour cannot be one of a surface.
    """
    card = sitting.cards[number]
    if lab is None:
        read = replace(card, lab=None, spectrum=(), usually_off=None, read_by="")
    else:
        Lab.of_a_surface(*lab.triple)
        off = min(max(usually_off, 0.1), 30.0)
        read = replace(card, lab=lab, spectrum=(), usually_off=off, read_by=read_by)
    cards = (*sitting.cards[:number], read, *sitting.cards[number + 1 :])
    return replace(sitting, cards=cards)


def next_unread(sitting: Sitting, after: int = -1) -> int | None:
    """Give the next card that nothing was read off, beginning after one; None if all are read."""
    count = len(sitting.cards)
    order = [(after + 1 + n) % count for n in range(count)] if count else []
    return next((n for n in order if not sitting.cards[n].is_read), None)


def read_now(sitting: Sitting) -> int:
    """Count the cards that were read."""
    return sum(card.is_read for card in sitting.cards)


def measured_cards(sitting: Sitting, measured: Measurements) -> tuple[Sitting, int]:
    """Take readings off a measurement file.

    A sample belongs to the card whose number or id it has; where none has either, and there are
    as many samples as cards, they are taken in their order.

    Returns
    -------
    The sitting, and how many cards were read.

    Raises
    ------
    MendableError
        If no sample belongs to a card.
    """
    found = {n: row for n in range(len(sitting.cards)) if (row := _sample(sitting, n, measured))}
    if not found and len(measured.rows) == len(sitting.cards):
        found = dict(enumerate(measured.rows))
    read = {n: row for n, row in found.items() if row.reflectance is not None or row.lab}
    if not read:
        raise MendableError(
            say("No sample of {file} belongs to a card.", file=measured.name),
            say(
                "Name the samples by the numbers of the cards, 1 to {most}, or export just as many "
                "as there are cards, in their order.",
                most=len(sitting.cards),
            ),
        )
    cards = list(sitting.cards)
    for n, row in read.items():
        spectrum = () if row.reflectance is None else tuple(on_grid(row).tolist())
        lab = None if spectrum else row.lab
        cards[n] = replace(
            cards[n], lab=lab, spectrum=spectrum, usually_off=INSTRUMENT_OFF, read_by=measured.name
        )
    return replace(sitting, cards=tuple(cards)), len(read)


def _sample(sitting: Sitting, number: int, measured: Measurements) -> Measurement | None:
    card = sitting.cards[number]
    names = {str(number + 1), f"{card.id}-{card.over}" if card.over and card.mix else card.id}
    rows = [row for row in measured.rows if names & {row.id, row.name}]
    return rows[0] if len(rows) == 1 else None


def save_cards(text: str, path: Path) -> None:
    """Write the list of cards to a file, to take to the workbench.

    Raises
    ------
    MendableError
        If it cannot be written there.
    """
    write_text(path, text, "the list of cards")
