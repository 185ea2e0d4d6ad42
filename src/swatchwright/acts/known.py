"""How well a paint is known: what its mixes will usually be off by, in figures and in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.confidence import confidence_in
from swatchwright.colour.doubt import usual_difference
from swatchwright.language import mark, say
from swatchwright.paint.fit.doubt import mix_covariances
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab

__all__ = ["WHITE_ABOVE", "Likely", "Off", "how_well", "is_well_known", "likely_errors", "white_of"]

Floats = NDArray[np.floating[Any]]

WHITE_ABOVE = 85.0
"""L* above which a paint is a white."""

# Shares of the paint in mixes with white, and of it and another in crossings: half and half, and
# the same let down with as much white again.
_WITH_WHITE = (0.5, 0.2, 0.07)

_MOST_CROSSINGS = 40

# Usual CIEDE2000 of mixes from a paint's own doubt: just seen, accepted by most, clearly seen.
_WELL = 0.8
_WORDS = (
    (_WELL, mark("well known")),
    (1.8, mark("known well enough to mix from")),
    (3.5, mark("roughly known")),
    (float("inf"), mark("hardly known")),
)


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
        With each other paint half and half, the median.
    words
        The same in words.
    """

    with_white: Off | None
    crossing: Off | None
    words: str


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
    if colours:
        offs = [_off(paint, other, 0.5) for other in colours[:_MOST_CROSSINGS]]
        crossing = Off(*(float(v) for v in np.median([(o.paints, o.whole) for o in offs], axis=0)))
    return Likely(with_white, crossing, how_well(with_white or crossing or _alone(paint)))


def how_well(off: Off) -> str:
    """Say in words how well a paint is known whose mixes are off by so much."""
    return say(next(words for limit, words in _WORDS if off.paints <= limit))


def is_well_known(off: Off) -> bool:
    """Tell whether a paint whose mixes are off by so much needs no more brush-outs."""
    return off.paints <= _WELL


def _off(paint: Paint, other: Paint, share: float) -> Off:
    pair, shares = [paint, other], [[share, 1 - share]]
    lab = dry_lab(mix(stack(pair), [[0, 1]], shares))[0]
    own = usual_difference(Lab.of(lab), mix_covariances(pair, shares, formula=0.0)[0])
    exact = KnownColour(Lab.of(lab), None, "computed")
    return Off(own, confidence_in(exact, (paint, other), (share, 1 - share)).paints)


def _alone(paint: Paint) -> Off:
    own = usual_difference(Lab.of(_masstones([paint])[0]), mix_covariances([paint], [[1.0]])[0])
    return Off(own, own)


def _worst(offs: Sequence[Off]) -> Off:
    return max(offs, key=lambda off: off.whole)


def _masstones(paints: Sequence[Paint]) -> Floats:
    alone = [[i] for i in range(len(paints))]
    return dry_lab(mix(stack(paints), alone, [[1.0]] * len(paints)))
