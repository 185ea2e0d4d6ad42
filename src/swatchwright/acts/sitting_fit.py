"""Fit the paints of a sitting from the cards that were read, and say how well they are known."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from swatchwright.acts.fit import FittedShelf, PaintFit, fit_sheet
from swatchwright.acts.known import known_of
from swatchwright.acts.mix import own_colours
from swatchwright.acts.sitting import Card, NewTin, Sitting, names_in
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.paints import HowKnown, Paint, Tin
from swatchwright.shelf.brush_outs import NewPaint, Sheet, Strip
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["Doubt", "doubts_of", "fit_sitting", "kept_paints", "most_helpful"]

_LEAST_GAIN = 0.05
_NAME = mark("these cards")


def fit_sitting(
    sitting: Sitting,
    shelf: Shelf,
    *,
    progress: Callable[[float], None] | None = None,
    stopped: Callable[[], bool] | None = None,
) -> FittedShelf:
    """Fit the paints of a sitting from the cards that were read.

    Paints that are invented stay out of it, unless they were brushed out.

    Parameters
    ----------
    sitting, shelf
        The sitting, and the shelf in use.
    progress, stopped
        Told the share done, and asked whether to give up.

    Raises
    ------
    MendableError
        If no card was read, or the cards contradict each other.
    Stopped
        If `stopped` said so.
    """
    read = [card for card in sitting.cards if card.is_read]
    met = list(dict.fromkeys(id_ for card in read for id_, _ in card.mix))
    if not met:
        raise MendableError(
            say("No card has been read yet."),
            say("Read at least one card of a paint first."),
        )
    real = tuple(p for p in shelf.paints if p.how_known is not HowKnown.INVENTED or p.id in met)
    there = [paint.id for paint in real]
    tins = {tin.id: tin for tin in sitting.new}
    told = {id_: _said(tins.get(id_), id_) for id_ in met}
    sheet = Sheet(_NAME, tuple(_strip(n, card) for n, card in enumerate(read, 1)), told)
    again = [id_ for id_ in met if id_ in there and id_ in sitting.ids]
    names = names_in(sitting, shelf)
    try:
        found = fit_sheet(
            sheet, Shelf(shelf.name, real), again=again, progress=progress, stopped=stopped
        )
    except MendableError as error:
        what, mend = (_by_name(text, sitting, names) for text in (error.what, error.mend))
        raise MendableError(what, mend) from error
    notes = tuple(_by_name(note, sitting, names) for note in found.notes)
    fits = tuple(replace(fit, cards=_holding(fit.paint.id, read)) for fit in found.fits)
    return _with_tins(replace(found, fits=fits, notes=notes), tins)


def _holding(id_: str, cards: Sequence[Card]) -> int:
    """Count the cards that hold a paint, as she does: each that she brushed is one."""
    return sum(any(id_ == one for one, _ in card.mix) for card in cards)


def _by_name(text: str, sitting: Sitting, names: Mapping[str, str]) -> str:
    """Tell of cards by their numbers and of paints by their names, in place of ids."""
    cards = enumerate(sitting.cards, 1)
    numbers = {card.id: say("card {number}", number=n) for n, card in cards if card.mix}
    quoted = {id_: say("“{name}”", name=name) for id_, name in names.items()} | numbers
    ids = sorted(quoted, key=len, reverse=True)
    whole = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, ids))})(?![\w-])")
    return whole.sub(lambda found: quoted[found.group()], text)


def _said(tin: NewTin | None, id_: str) -> NewPaint:
    if tin is None:
        return NewPaint(id_)
    return NewPaint(id_, tin.name, tin.family, tin.volume_solids)


def _strip(line: int, card: Card) -> Strip:
    return Strip(
        line,
        card.id,
        card.mix,
        over=card.over if card.mix else "",
        coats=card.coats,
        lab=card.lab,
        reflectance=np.array(card.spectrum) if card.spectrum else None,
        usually_off=card.usually_off,
    )


def _with_tins(found: FittedShelf, tins: dict[str, NewTin]) -> FittedShelf:
    """Put what is sold onto the new paints."""

    def sold(paint: Paint) -> Paint:
        tin = tins.get(paint.id)
        if tin is None or tin.tin_ml is None or paint.tins:
            return paint
        return replace(paint, tins=(Tin(tin.tin_ml, tin.price),))

    paints = tuple(sold(paint) for paint in found.shelf.paints)
    fits = tuple(replace(fit, paint=sold(fit.paint)) for fit in found.fits)
    return replace(found, shelf=replace(found.shelf, paints=paints), fits=fits)


@dataclass(frozen=True, slots=True)
class Doubt:
    """How far mixes with a fitted paint are usually off, CIEDE2000, before and after the fit.

    Parameters
    ----------
    dry
        Its colour now.
    before, after
        None where nothing could be said: of a new paint, or one that was invented.
    """

    dry: Lab
    before: float | None
    after: float | None


def doubts_of(found: FittedShelf, shelf: Shelf) -> tuple[Doubt, ...]:
    """Say of each fitted paint how far its mixes were off on a shelf, and how far they are now."""
    before = {paint.id: paint for paint in shelf.paints}
    colours = own_colours(tuple(fit.paint for fit in found.fits))
    told = []
    for fit, dry in zip(found.fits, colours, strict=True):
        was = before.get(fit.paint.id)
        told.append(
            Doubt(
                dry,
                None if was is None else known_of(shelf, was).off,
                known_of(found.shelf, fit.paint).off,
            )
        )
    return tuple(told)


def most_helpful(found: FittedShelf) -> PaintFit | None:
    """Give the fitted paint of which one card more would teach most; None if none would."""
    gains = {
        n: fit.next.spread_now - fit.next.spread_then
        for n, fit in enumerate(found.fits)
        if not fit.next.again
    }
    best = max(gains, key=lambda n: gains[n], default=None)
    return None if best is None or gains[best] <= _LEAST_GAIN else found.fits[best]


def kept_paints(found: FittedShelf) -> tuple[Paint, ...]:
    """Give the paints of a fit that belong on a shelf of real paints."""
    return tuple(p for p in found.shelf.paints if p.how_known is not HowKnown.INVENTED)
