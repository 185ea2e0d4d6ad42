"""How well a paint is known: what its mixes will usually be off by, in figures and in words.

There is one rule, and all who speak of a paint go by it: the words follow from what its mixes are
usually off by, and how it hides is a guess unless a coat of it was read over black.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.confidence import confidence_in
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import usual_difference
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.language import mark, say
from swatchwright.paint.fit.doubt import mix_covariances
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import HowKnown, Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab

__all__ = [
    "GOOD",
    "WHITE_ABOVE",
    "Grade",
    "Hiding",
    "Known",
    "Likely",
    "Off",
    "grade_of",
    "hiding_of",
    "is_well_known",
    "known_of",
    "likely_errors",
    "white_of",
]

Floats = NDArray[np.floating[Any]]

WHITE_ABOVE = 85.0
"""L* above which a paint is a white."""

# Shares of the paint in mixes with white, and of it and another in crossings: half and half, and
# the same let down with as much white again.
_WITH_WHITE = (0.5, 0.2, 0.07)

_MOST_CROSSINGS = 40

# CIEDE2000 from which a paint is another colour than one (docs/glossary.md).
_ANOTHER_COLOUR = 10.0

# Of a paint alone: what is not known of it moves its mixes by less than is just seen.
_WELL = 0.8

GOOD = 4.5
"""Usual CIEDE2000 of mixes up to which a paint is well known, told as 4: about what the theory of
mixing alone gets wrong, so that more cards would hardly help. 3.4 was the median on open data of
real oil paints with let-downs in the fit, and 9 to 12 from single drawdowns (docs/accuracy.md)."""


class Grade(StrEnum):
    """How well a paint is known, from what its mixes are usually off by."""

    WELL = mark("well known")
    ENOUGH = mark("known well enough to mix from")
    ROUGHLY = mark("roughly known")
    HARDLY = mark("hardly known")


# The last one has no limit. 5 is plain to anyone, 10 is another colour (docs/glossary.md). Halves,
# so that a figure that is told as a whole number always goes with the same words.
_GRADES = ((GOOD, Grade.WELL), (5.5, Grade.ENOUGH), (7.5, Grade.ROUGHLY))


class Hiding(StrEnum):
    """What is behind the number of coats in which a paint hides."""

    READ = "read"
    STATED = "stated"
    GUESSED = "guessed"


# Per mm: of a white and of a black such as are sold, for a paint that stands alone.
_ORDINARY = {True: (0.6, 110.0), False: (150.0, 20.0)}


@dataclass(frozen=True, slots=True)
class Off:
    """Usual CIEDE2000 of mixes: from the spreads of the paints, and as a recipe would have it."""

    paints: float
    whole: float


@dataclass(frozen=True, slots=True)
class Likely:
    """How far a paint's mixes will usually be off; None where there is nothing to mix it with.

    Parameters
    ----------
    with_white
        With the white of the shelf, the worst of three shares.
    crossing
        With each other paint of another colour half and half, the median.
    off
        The first of these that there is; of a paint that stands alone, with an ordinary white, or
        with a black where it is a white itself.
    """

    with_white: Off | None
    crossing: Off | None
    off: Off

    @property
    def grade(self) -> Grade:
        """How well it is known."""
        return grade_of(self.off.whole)

    @property
    def words(self) -> str:
        """The same in words."""
        return say(self.grade.value)


@dataclass(frozen=True, slots=True)
class Known:
    """All that is to be said of how well a paint is known.

    Parameters
    ----------
    off
        Usual CIEDE2000 by which a mix with it will be off; None for an invented paint, which is
        what it is said to be.
    hiding
        What is behind the number of coats in which it hides.
    """

    off: float | None
    hiding: Hiding

    @property
    def grade(self) -> Grade | None:
        """How well it is known; None for an invented paint."""
        return None if self.off is None else grade_of(self.off)

    @property
    def words(self) -> str:
        """The same in words; empty for an invented paint."""
        return "" if self.grade is None else say(self.grade.value)


def known_of(shelf: Shelf, paint: Paint) -> Known:
    """Say how well a paint of a shelf is known, and whether how it hides is."""
    hiding = hiding_of(paint)
    if paint.spread is not None:
        return Known(likely_errors(shelf, paint).off.whole, hiding)
    if paint.how_known is HowKnown.INVENTED:
        return Known(None, hiding)
    exact = KnownColour(Lab(50.0, 0.0, 0.0), None, "computed")
    return Known(confidence_in(exact, (paint,)).paints, hiding)


def hiding_of(*paints: Paint) -> Hiding:
    """Say what is behind the number of coats in which a paint, or a mix of some, hides.

    A paint that was fitted or guessed and of which no coat over black is known was taken to hide
    as paints do: from films that hide alone nobody can tell.
    """
    found = {_hiding_of_one(paint) for paint in paints}
    return next(one for one in (Hiding.GUESSED, Hiding.STATED, Hiding.READ) if one in found)


def _hiding_of_one(paint: Paint) -> Hiding:
    if paint.hiding_read is not None:
        return Hiding.READ if paint.hiding_read else Hiding.GUESSED
    stated = paint.how_known in {HowKnown.INVENTED, HowKnown.MEASURED}
    return Hiding.STATED if stated else Hiding.GUESSED


def white_of(paints: Sequence[Paint]) -> Paint | None:
    """Give the lightest paint, if it is a white."""
    if not paints:
        return None
    labs = _masstones(paints)
    lightest = int(np.argmax(labs[:, 0]))
    return paints[lightest] if labs[lightest, 0] >= WHITE_ABOVE else None


def likely_errors(shelf: Shelf, paint: Paint) -> Likely:
    """Say how far mixes of a paint with the others of a shelf will usually be off.

    Paints of which nothing is told but how they are known count as they are.
    """
    others = [
        other
        for other in shelf.paints
        if other.id != paint.id and other.finish.waterborne is paint.finish.waterborne
    ]
    white = white_of(others)
    with_white = crossing = None
    if white is not None:
        with_white = _worst([_off(paint, white, share) for share in _WITH_WHITE])
    colours = [other for other in others if white is None or other.id != white.id]
    colours = _unlike(paint, colours)
    if colours:
        offs = [_off(paint, other, 0.5) for other in colours[:_MOST_CROSSINGS]]
        crossing = Off(*(float(v) for v in np.median([(o.paints, o.whole) for o in offs], axis=0)))
    return Likely(with_white, crossing, with_white or crossing or _alone(paint))


def _unlike(paint: Paint, others: Sequence[Paint]) -> list[Paint]:
    """Leave out what has nearly the same colour: a mix of such two tells nothing of either."""
    if not others:
        return []
    own, *labs = _masstones([paint, *others])
    return [
        other
        for other, lab in zip(others, labs, strict=True)
        if float(delta_e_2000(own, lab)) > _ANOTHER_COLOUR
    ]


def grade_of(off: float) -> Grade:
    """Say how well a paint is known whose mixes are usually off by so much, CIEDE2000."""
    return next((grade for limit, grade in _GRADES if off <= limit), Grade.HARDLY)


def is_well_known(off: Off) -> bool:
    """Tell whether a paint whose mixes are off by so much needs no more brush-outs of its own."""
    return off.paints <= _WELL


def _off(paint: Paint, other: Paint, share: float) -> Off:
    pair, shares = [paint, other], [[share, 1 - share]]
    lab = dry_lab(mix(stack(pair), [[0, 1]], shares))[0]
    own = usual_difference(Lab.of(lab), mix_covariances(pair, shares, formula=0.0)[0])
    exact = KnownColour(Lab.of(lab), None, "computed")
    return Off(own, confidence_in(exact, (paint, other), (share, 1 - share)).paints)


def _alone(paint: Paint) -> Off:
    """Mix a paint that stands alone with what every shelf has."""
    white = _masstones([paint])[0, 0] < WHITE_ABOVE
    K, S = (np.full(WAVELENGTHS.size, level) for level in _ORDINARY[bool(white)])
    other = Paint("", "", paint.family, K, S, HowKnown.INVENTED)
    return _worst([_off(paint, other, share) for share in _WITH_WHITE])


def _worst(offs: Sequence[Off]) -> Off:
    return max(offs, key=lambda off: off.whole)


def _masstones(paints: Sequence[Paint]) -> Floats:
    alone = [[i] for i in range(len(paints))]
    return dry_lab(mix(stack(paints), alone, [[1.0]] * len(paints)))
