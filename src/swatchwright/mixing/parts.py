"""Recipes in whole parts: found by trying, not by rounding alone.

Up to 20 parts all are mixed, and the smallest total that costs next to nothing is taken. Beyond
that the exact shares are rounded up and down in all ways for every total. A strong paint may need
a large total; that is said by the cost of the smaller ones.
"""

from __future__ import annotations

from functools import cache
from itertools import product
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.recipe import Parts
from swatchwright.paint.mixture import quick_dry_lab
from swatchwright.paint.paints import PaintStack
from swatchwright.values import Lab

__all__ = ["whole_parts"]

Floats = NDArray[np.floating[Any]]

EASY_TOTAL = 20
"""Parts that a person measures without trouble."""

LARGEST_TOTAL = 200
"""Parts beyond which measuring by parts makes no sense; 0.5 % steps."""

_NEXT_TO_NOTHING = 0.25
_TOO_DEAR = 0.8


def whole_parts(
    paints: PaintStack, which: tuple[int, ...], shares: tuple[float, ...], wanted: Lab, exact: float
) -> Parts:
    """Find the whole parts to measure by.

    Parameters
    ----------
    paints, which
        The shelf, and the paints of the recipe as indices into it.
    shares
        Exact shares, summing to 1, none 0.
    wanted
        The colour the recipe is for.
    exact
        CIEDE2000 at the exact shares.

    Returns
    -------
    The smallest total up to 20 that costs at most 0.25 CIEDE2000; failing that the best of up to
    20, unless it costs more than can be seen (0.8); failing that the same up to 200.
    """
    if len(which) == 1:
        return Parts((1,), exact, 0.0)
    for top, dear in ((EASY_TOTAL, _TOO_DEAR), (LARGEST_TOTAL, float("inf"))):
        counts = _all_parts(len(which)) if top == EASY_TOTAL else _candidates(shares, top)
        rows = np.broadcast_to(np.array(which), (len(counts), len(which)))
        apart = delta_e_2000(wanted.triple, quick_dry_lab(paints, rows, _as_shares(counts)))
        chosen = _smallest_good(counts, apart, exact)
        if apart[chosen] - exact <= dear:
            break
    delta_e = float(apart[chosen])
    return Parts(tuple(int(c) for c in counts[chosen]), delta_e, max(0.0, delta_e - exact))


def _as_shares(counts: NDArray[np.int64]) -> Floats:
    return np.asarray(counts / counts.sum(axis=1, keepdims=True))


def _smallest_good(counts: NDArray[np.int64], apart: Floats, exact: float) -> int:
    """Pick the first candidate that costs next to nothing, else the best of all."""
    good = np.flatnonzero(apart - exact <= _NEXT_TO_NOTHING)
    if not good.size:
        return int(apart.argmin())
    totals = counts[good].sum(axis=1)
    smallest = good[totals == totals.min()]
    return int(smallest[apart[smallest].argmin()])


@cache
def _all_parts(size: int) -> NDArray[np.int64]:
    """List all whole parts up to the easy total, without common divisors, smallest total first."""
    counts = np.array(list(product(range(1, EASY_TOTAL), repeat=size)), dtype=np.int64)
    counts = counts[(counts.sum(axis=1) <= EASY_TOTAL) & (np.gcd.reduce(counts, axis=1) == 1)]
    return np.asarray(counts[np.argsort(counts.sum(axis=1), kind="stable")])


def _candidates(shares: tuple[float, ...], top: int) -> NDArray[np.int64]:
    """List whole parts near the shares, of every total up to `top`, smallest total first."""
    totals = np.arange(len(shares), top + 1)
    floors = np.maximum(1, np.floor(totals[:, None] * np.array(shares)).astype(np.int64))
    ups = np.array(list(product((0, 1), repeat=len(shares))))
    counts = (floors[:, None, :] + ups).reshape(-1, len(shares))
    counts = counts[(counts.sum(axis=1) <= top) & (np.gcd.reduce(counts, axis=1) == 1)]
    unique = np.unique(counts, axis=0)
    return np.asarray(unique[np.argsort(unique.sum(axis=1), kind="stable")])
