"""Fit the paints of a sheet of brush-outs, say how well each is known, and what to brush next."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from swatchwright.acts.films import films_of
from swatchwright.acts.fit_order import fit_in_turn, white_among
from swatchwright.acts.fit_told import (
    FitWork,
    Gloss,
    Next,
    ReadBack,
    next_of,
    read_back,
    said_of,
)
from swatchwright.acts.known import Likely, likely_errors
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.hunt import Stopped
from swatchwright.paint.fit.checks import check_brush_outs
from swatchwright.paint.fit.readings import BrushOut
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.brush_outs import Sheet
from swatchwright.shelf.measured.values import Measurements
from swatchwright.shelf.shelf import Shelf

__all__ = ["FittedShelf", "Gloss", "Next", "PaintFit", "ReadBack", "fit_sheet"]

# S of a white house paint, per mm, where no shelf says what its white has.
_WHITE_S = 110.0
_LEAST_WHITE_S = 10.0

# A ground that reflects less shows through a coat as the black of a card does.
_DARK = 0.2


@dataclass(frozen=True, slots=True)
class PaintFit:
    """A paint as it was fitted.

    Parameters
    ----------
    paint
        The paint with its K, S and spread.
    before
        How it was known before; None for a new one.
    brush_outs
        How many films it was fitted from.
    likely
        How far its mixes will usually be off.
    next
        What to brush out next.
    cards
        How many cards that were read hold it, as a sitting counts them; 0 where there is none.
    """

    paint: Paint
    before: HowKnown | None
    brush_outs: int
    likely: Likely
    next: Next
    cards: int = 0


@dataclass(frozen=True, slots=True)
class FittedShelf:
    """The shelf with the fitted paints in it.

    Parameters
    ----------
    shelf
        Paints of before, the fitted ones in their place or at the end.
    fits
        The fitted ones, in the order they were fitted in.
    read_back
        How well they give back what was read.
    notes
        What was assumed, in plain words.
    """

    shelf: Shelf
    fits: tuple[PaintFit, ...]
    read_back: tuple[ReadBack, ...]
    notes: tuple[str, ...]


def fit_sheet(
    sheet: Sheet,
    shelf: Shelf | None = None,
    *,
    measured: Measurements | None = None,
    again: Sequence[str] = (),
    by_weight: bool = False,
    gloss: Gloss = Gloss.SEEN,
    usually_off: float | None = None,
    progress: Callable[[float], None] | None = None,
    stopped: Callable[[], bool] | None = None,
) -> FittedShelf:
    """Fit every paint of a sheet that is not on the shelf, and those that are to be fitted again.

    Parameters
    ----------
    sheet
        The brush-outs.
    shelf
        Paints that are known.
    measured
        Readings that the sheet names.
    again
        Ids of paints of the shelf to fit anew.
    by_weight
        Whether parts in the sheet are grams.
    gloss
        Whether spectra and colours hold the surface's own reflection: as it is seen, all, none.
    usually_off
        Median CIEDE2000 by which colours are off; that of a photo with a grey card if None.
    progress, stopped
        Told the share done, and asked between paints whether to give up.

    Raises
    ------
    MendableError
        If the sheet contradicts itself, names what is not there, or leaves a paint untold.
    Stopped
        If `stopped` said so.
    """
    watch = _Watch(progress, stopped)
    unit = _unit(shelf, again)
    films = films_of(
        sheet,
        shelf,
        measured=measured,
        by_weight=by_weight,
        usually_off=usually_off,
        unit=unit,
    )
    wanted = [*films.new, *_again(again, sheet, shelf, films.new)]
    if not wanted:
        raise MendableError(
            say("Every paint of {sheet} is on the shelf already.", sheet=say(sheet.name)),
            say("Name those to be fitted again, or give a new paint an id of its own."),
        )
    work = FitWork(films.paints, unit, gloss)
    for id_, paint in films.paints.items():
        if id_ not in wanted:
            work.know(paint)
    white = white_among(sheet, films.paints, films.brush_outs, wanted)
    brush_outs, said = check_brush_outs(films.brush_outs, white)
    found = fit_in_turn(work, brush_outs, wanted, white, watch.tell)
    paints = {
        id_: replace(work.paint(id_), hiding_read=_is_hiding_read(found[id_]))
        if id_ in found
        else p
        for id_, p in films.paints.items()
    }
    paints |= {id_: _taken_as_exact(paints[id_]) for id_ in _leant_on(found) & set(paints)}
    result = _placed(shelf, paints, sheet.name)
    before = {} if shelf is None else {paint.id: paint.how_known for paint in shelf.paints}
    fits = []
    for number, (id_, used) in enumerate(found.items()):
        watch.tell(0.5 + 0.5 * number / len(found))
        fits.append(
            PaintFit(
                paint=paints[id_],
                before=before.get(id_),
                brush_outs=len(used),
                likely=likely_errors(result, paints[id_]),
                next=next_of(work, id_, used, None if white == id_ else white),
            )
        )
    back = read_back(work, brush_outs)
    notes = (*films.notes, *said, *said_of(work, found, back))
    return FittedShelf(result, tuple(fits), back, tuple(dict.fromkeys(notes)))


@dataclass(frozen=True, slots=True)
class _Watch:
    """Who is told how far it is, and asked whether to go on."""

    progress: Callable[[float], None] | None
    stopped: Callable[[], bool] | None

    def tell(self, done: float) -> None:
        """Tell the share done, 0-1."""
        if self.stopped is not None and self.stopped():
            raise Stopped
        if self.progress is not None:
            self.progress(done)


def _unit(shelf: Shelf | None, again: Sequence[str]) -> float:
    """Give the S of the best scatterer that is known, per mm."""
    known = [] if shelf is None else [p for p in shelf.paints if p.id not in again]
    best = max((float(paint.S.mean()) for paint in known), default=0.0)
    return best if best >= _LEAST_WHITE_S else _WHITE_S


def _again(
    again: Sequence[str], sheet: Sheet, shelf: Shelf | None, new: Sequence[str]
) -> list[str]:
    """Check the paints that are to be fitted again."""
    found = []
    for id_ in again:
        if id_ not in sheet.paints:
            raise MendableError(
                say(
                    "{paint} is to be fitted again, and no brush-out of {sheet} holds it.",
                    paint=id_,
                    sheet=say(sheet.name),
                ),
                say(
                    "Use an id of the sheet, such as {ids}.", ids=", ".join(list(sheet.paints)[:4])
                ),
            )
        if shelf is not None and id_ not in new:
            found.append(id_)
    return found


def _is_hiding_read(used: Sequence[BrushOut]) -> bool:
    """Tell whether a coat of the paint alone was read over something dark."""
    grounds = [r.ground for b in used if len(b.shares) == 1 for r in b.readings]
    return any(ground is not None and np.nanmean(ground) < _DARK for ground in grounds)


def _leant_on(found: Mapping[str, Sequence[BrushOut]]) -> set[str]:
    """Give the paints that others were fitted by and that were not fitted themselves."""
    return {id_ for used in found.values() for b in used for id_ in b.shares} - found.keys()


def _taken_as_exact(paint: Paint) -> Paint:
    """Give a measured paint as what it was for the fit: known; what is fitted by it goes by it."""
    if paint.spread is not None or paint.how_known in {HowKnown.GUESSED, HowKnown.INVENTED}:
        return paint
    return replace(paint, spread=np.zeros((0, 2 * WAVELENGTHS.size)))


def _placed(shelf: Shelf | None, paints: Mapping[str, Paint], name: str) -> Shelf:
    """Put the paints onto the shelf, each in its place, new ones at the end."""
    before = () if shelf is None else shelf.paints
    there = {paint.id for paint in before}
    after = [paints.get(paint.id, paint) for paint in before]
    after += [paint for id_, paint in paints.items() if id_ not in there]
    return Shelf(name if shelf is None else shelf.name, tuple(after))
