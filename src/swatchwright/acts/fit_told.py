"""What is said of fitted paints: how they give back what was read, and what to brush next."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from math import hypot, log

import numpy as np

from swatchwright.acts.mix import own_colours
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.colour.spectrum import lab_of
from swatchwright.language import listed, say
from swatchwright.paint.fit.advice import brush_outs_to_try, next_brush_out
from swatchwright.paint.fit.fitted import FittedPaint, in_unit, known_paint, predict
from swatchwright.paint.fit.prior import Errors, Surface
from swatchwright.paint.fit.problem import Problem
from swatchwright.paint.fit.readings import BrushOut
from swatchwright.paint.fit.solve import Solution
from swatchwright.paint.mixture import DRY_INDEX
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.paint.surface import internal_diffuse, normal_reflectance
from swatchwright.values import Lab

__all__ = ["ERRORS", "FitWork", "Gloss", "Next", "ReadBack", "next_of", "read_back", "said_of"]

ERRORS = Errors(colour=1.2)
"""How far films of house paint are trusted; what the formulas get wrong of a spectrum comes to so
much of its colour."""

_BLACK_BELOW, _GREY_BELOW = 35.0, 12.0

# Shares whose logarithms differ by less make the same brush-out.
_THE_SAME = 0.2

# A film that comes out so far from its reading was spoilt, or its shares are wrong.
_SPOILT = 6.0


class Gloss(StrEnum):
    """Whether the surface's own reflection was read."""

    SEEN = "seen"
    INCLUDED = "included"
    EXCLUDED = "excluded"


@dataclass(frozen=True, slots=True)
class Next:
    """The most useful next brush-out of a paint.

    Parameters
    ----------
    words
        What to mix and lay.
    mix
        Ids and parts, the smallest 1.
    over_black
        Whether it is laid over black, one coat; else until it hides.
    spread_now, spread_then
        Root-mean-square spread of the paint's mixtures, units of CIELAB, now and after it.
    again
        Whether it was brushed out already, as all others were: to read it anew is all that is left.
    """

    words: str
    mix: tuple[tuple[str, float], ...]
    over_black: bool
    spread_now: float
    spread_then: float
    again: bool = False


@dataclass(frozen=True, slots=True)
class ReadBack:
    """A film that hides, as it was read and as the fitted paints predict it."""

    film: str
    read: Lab
    predicted: Lab
    delta_e: float


@dataclass(frozen=True, slots=True)
class FitWork:
    """What a fit goes by: all paints, the unit of S, those known so far and how they were found."""

    paints: Mapping[str, Paint]
    unit: float
    gloss: Gloss
    known: dict[str, FittedPaint] = field(default_factory=dict)
    solved: dict[str, tuple[Problem, Solution]] = field(default_factory=dict)

    def glare(self, paint: Paint) -> float:
        """Give the share of a paint's outer reflection that was read."""
        if self.gloss is Gloss.SEEN:
            return paint.finish.glare
        return 1.0 if self.gloss is Gloss.INCLUDED else 0.0

    def know(self, paint: Paint) -> None:
        """Take a paint of the shelf as it is."""
        own = known_paint(paint.K, paint.S, glare=self.glare(paint))
        self.known[paint.id] = in_unit(own, 1.0 / self.unit)

    def surface(self, id_: str) -> Surface:
        """Give the surface of a paint as it was read."""
        return Surface(
            k1=float(normal_reflectance(DRY_INDEX)),
            k2=float(internal_diffuse(DRY_INDEX)),
            glare=self.glare(self.paints[id_]),
        )

    def paint(self, id_: str) -> Paint:
        """Give a fitted paint in the shelf's unit."""
        fitted = in_unit(self.known[id_], self.unit)
        return replace(
            self.paints[id_],
            K=fitted.K,
            S=fitted.S,
            how_known=fitted.how_known,
            spread=np.ascontiguousarray(fitted.factor.T),
        )


def next_of(work: FitWork, id_: str, used: Sequence[BrushOut], white: str | None) -> Next:
    """Find the most useful next brush-out of a paint.

    Parameters
    ----------
    work
        What the fit went by.
    id_
        The paint.
    used
        The films it was fitted from.
    white
        What let-downs are made with; None if there is no white.
    """
    black = _black_of(work, id_)
    others = {white, black, *(other for b in used for other in b.shares)} - {None, id_}
    every = brush_outs_to_try(id_, white, black, over_black=True)
    left = _not_made(every, used)
    advice = next_brush_out(
        used,
        {other: work.known[other] for other in others if other is not None},
        left or every,
        spectra=any(r.reflectance is not None for b in used for r in b.readings),
        surface=work.surface(id_),
        errors=ERRORS,
        solved=work.solved[id_],
    )[0]
    shares = advice.brush_out.shares
    least = min(shares.values())
    mix = tuple((other, round(share / least, 1)) for other, share in shares.items())
    over = advice.brush_out.readings[0].ground is not None
    return Next(advice.words, mix, over, advice.spread_now, advice.spread_then, again=not left)


def _not_made(
    candidates: Mapping[str, BrushOut], used: Sequence[BrushOut]
) -> Mapping[str, BrushOut]:
    """Leave out what was brushed out already."""
    made = [(b.shares, any(r.ground is not None for r in b.readings)) for b in used]

    def is_made(one: BrushOut) -> bool:
        over = one.readings[0].ground is not None
        return any(
            shares.keys() == one.shares.keys()
            and over is grounded
            and all(abs(log(shares[i] / one.shares[i])) < _THE_SAME for i in shares)
            for shares, grounded in made
        )

    return {words: one for words, one in candidates.items() if not is_made(one)}


def _black_of(work: FitWork, id_: str) -> str | None:
    """Give the darkest paint that is known and may be mixed with this one, if it is a black."""
    water = work.paints[id_].finish.waterborne
    known = tuple(
        paint
        for paint in work.paints.values()
        if paint.id != id_ and paint.id in work.known and paint.finish.waterborne is water
    )
    if not known:
        return None
    greys = [
        (lab.L, paint.id)
        for lab, paint in zip(own_colours(known), known, strict=True)
        if lab.L < _BLACK_BELOW and hypot(lab.a, lab.b) < _GREY_BELOW
    ]
    return min(greys)[1] if greys else None


def read_back(work: FitWork, brush_outs: Sequence[BrushOut]) -> tuple[ReadBack, ...]:
    """Predict each film that hides and compare it with what was read."""
    found = []
    for b in brush_outs:
        if b.shares.keys() - work.known.keys():
            continue
        surface = work.surface(next(iter(b.shares)))
        mine = predict(work.known, b.shares, surface=surface)
        for reading in (r for r in b.readings if r.ground is None):
            seen = reading.lab
            if reading.reflectance is not None:
                held = np.where(np.isfinite(reading.reflectance), reading.reflectance, mine)
                seen = lab_of(held)
            predicted = lab_of(mine)
            if seen is not None:
                off = float(delta_e_2000(seen, predicted))
                found.append(ReadBack(b.name, Lab.of(seen), Lab.of(predicted), off))
    return tuple(found)


def said_of(
    work: FitWork, found: Mapping[str, Sequence[BrushOut]], back: Sequence[ReadBack]
) -> tuple[str, ...]:
    """Say what of the fit is to be doubted."""
    mixed = {b.name for used in found.values() for b in used if len(b.shares) > 1}
    return (*_doubts(work, found), *_spoilt(back, mixed))


def _doubts(work: FitWork, found: Mapping[str, Sequence[BrushOut]]) -> list[str]:
    """Say which paints were leant on that are themselves not well known."""
    leant = {id_ for used in found.values() for b in used for id_ in b.shares if id_ not in found}
    weak = [
        f"{id_} ({say(work.paints[id_].how_known.value)})"
        for id_ in sorted(leant & work.known.keys())
        if work.paints[id_].how_known in {HowKnown.GUESSED, HowKnown.INVENTED}
    ]
    if not weak:
        return []
    return [
        say(
            "Mixed with {paints}: what is fitted by a paint cannot be surer than that paint.",
            paints=", ".join(weak),
        )
    ]


def _spoilt(read_back: Sequence[ReadBack], mixed: Collection[str]) -> list[str]:
    """Name the films that come out far from their reading; a mix may have other parts than told."""
    spoilt = [one for one in read_back if one.delta_e > _SPOILT]
    if not spoilt:
        return []
    films = listed(
        [
            say(
                "{film} (off by {off:.0f}, {seen})",
                film=b.film,
                off=b.delta_e,
                seen=closeness(round(b.delta_e)),
            )
            for b in spoilt
        ]
    )
    if any(one.film in mixed for one in spoilt):
        return [
            say(
                "Read as another colour than the paints on it give: {films}. See whether its parts "
                "were others, or it was swapped, or read wrongly.",
                films=films,
            )
        ]
    return [
        say(
            "Read as another colour than the paint on it gives: {films}. See whether it was "
            "swapped, or read wrongly.",
            films=films,
        )
    ]
