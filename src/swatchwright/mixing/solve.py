"""The shares of given paints that come closest to a wanted colour, for many subsets at once.

For each subset the CIEDE2000 difference is minimised over the shares. A coarse set of mixtures,
from halves to traces, gives each subset its start; Levenberg-Marquardt on the three terms of
CIEDE2000 takes it from there.
A subset whose best mixture leaves a paint out ends with a share near zero; the smaller subset
holds the same mixture.

References
----------
Duncan 1940, Proc. Phys. Soc. 52:390 (mixing); Allen 1974, J. Opt. Soc. Am. 64:991 (Newton steps
on the colour of a two-constant mixture).
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.difference import delta_e_2000, delta_e_terms, far_difference
from swatchwright.mixing.descent import Ends, descend, shares_of
from swatchwright.paint.hiding import HIDDEN
from swatchwright.paint.mixture import contrast_ratio, mix, quick_dry_lab
from swatchwright.paint.paints import PaintStack

__all__ = ["Rules", "closest_shares"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

# A paint may be the body of the mix, a good part of it, a little, or a trace.
_AMOUNTS = {2: (1.0, 0.3, 0.1, 0.03, 0.01, 0.003), 3: (1.0, 0.15, 0.02)}

_ENDS = Ends(turns=25, gain=1e-7, about=1e-3, stuck=1e4)
_FIRST_TURNS = 5

# After the first turns the subsets that are this many times as far off as the best of them, and
# further by this much, are left as they are: none of them ends among the best.
_FRONT = 40
_HOPELESS_TIMES, _HOPELESS_BEYOND = 2.0, 3.0
_CONTENDERS = 12


# A breach of a rule counts as a difference: this many CIEDE2000 for all of a share or contrast.
_BREACH = 500.0
_KEPT = 0.05


@dataclass(frozen=True, slots=True, eq=False)
class Rules:
    """What a mixture must keep to.

    Parameters
    ----------
    limits
        (p,) greatest share of each paint of the shelf, 0-1, 1 for no limit; None for none at all.
    coats
        Coats within which it must hide black and white alike; None where that is not asked.
    least
        (p,) least share of each paint where a mixture holds it; None for none.
    prices
        (p,) price of a volume of each paint, as a multiple of the greatest that a mixture may
        have; None where that is not asked.
    """

    limits: Floats | None = None
    coats: int | None = None
    least: Floats | None = None
    prices: Floats | None = None

    def breach(self, paints: PaintStack, which: Indices, shares: Floats) -> Floats:
        """Say how far (m,) mixtures break the rules, as a difference; 0 where they keep them."""
        broken: Floats = np.zeros(len(which))
        if self.limits is not None:
            broken += np.maximum(0.0, shares - self.limits[which]).sum(axis=1)
        if self.least is not None:
            broken += np.maximum(0.0, self.least[which] - shares).sum(axis=1)
        if self.prices is not None:
            broken += np.maximum(0.0, (shares * self.prices[which]).sum(axis=1) - 1)
        if self.coats is not None:
            ratio = contrast_ratio(mix(paints, which, shares), self.coats)
            broken += np.maximum(0.0, HIDDEN + 1e-4 - ratio)
        return np.asarray(_BREACH * broken)

    def clipped(self, which: Indices, shares: Floats) -> Floats:
        """Cut what is above a limit, raise what is below a least, and let the others make room."""
        if self.least is not None:
            raised = np.maximum(shares, self.least[which])
            spare = np.maximum(raised - self.least[which], 0.0)
            over = raised.sum(axis=1, keepdims=True) - 1
            shares = raised - spare * over / np.maximum(spare.sum(axis=1, keepdims=True), 1e-12)
        if self.limits is not None:
            shares = self._within_limits(which, shares)
        return shares if self.prices is None else self._cheap_enough(which, shares)

    def _cheap_enough(self, which: Indices, shares: Floats) -> Floats:
        """Take as much of the cheapest paint instead of the others as the price asks."""
        prices = self.prices[which] if self.prices is not None else np.zeros(which.shape)
        price, least = (shares * prices).sum(axis=1), prices.min(axis=1)
        part = np.clip((price - 1) / np.maximum(price - least, 1e-12), 0.0, 1.0)
        cheapest = prices == least[:, None]
        cheapest = cheapest / cheapest.sum(axis=1, keepdims=True)
        return np.asarray((1 - part)[:, None] * shares + part[:, None] * cheapest)

    def _within_limits(self, which: Indices, shares: Floats) -> Floats:
        """Cut what is above a limit."""
        limits = self.limits[which] if self.limits is not None else np.ones(which.shape)
        for _ in range(shares.shape[1]):
            shares = np.minimum(shares, limits)
            free = np.where(shares < limits, shares, 0.0)
            spare = (1 - shares.sum(axis=1, keepdims=True)) / np.maximum(
                free.sum(axis=1, keepdims=True), 1e-12
            )
            shares = shares + free * spare
        return shares


@dataclass(frozen=True, slots=True, eq=False)
class _Task:
    """What is to be approached, with which paints, by which difference, by which rules."""

    paints: PaintStack
    wanted: Floats
    far: bool
    rules: Rules | None = None

    def labs(self, which: Indices, shares: Floats) -> Floats:
        return quick_dry_lab(self.paints, which, shares)

    def apart(self, which: Indices, shares: Floats) -> Floats:
        """Give the difference (m,) of mixtures from the wanted colour."""
        measure = far_difference if self.far else delta_e_2000
        apart = measure(self.wanted, self.labs(which, shares))
        if self.rules is None:
            return apart
        return np.hypot(apart, self.rules.breach(self.paints, which, shares))

    def terms(self, which: Indices, logits: Floats) -> Floats:
        """Give numbers a mixture (m, 3 or 4) whose squares sum to the squared difference.

        A fourth is how far the mixture breaks the rules, where there are any.
        """
        shares = shares_of(logits)
        dL, dC, dH, rotation = delta_e_terms(self.wanted, self.labs(which, shares))
        if not self.far:
            dC, dH = dC + rotation / 2 * dH, np.sqrt(np.maximum(1 - rotation**2 / 4, 0)) * dH
        parts = [dL, dC, dH]
        if self.rules is not None:
            parts.append(self.rules.breach(self.paints, which, shares))
        return np.stack(parts, axis=-1)


def closest_shares(
    paints: PaintStack,
    which: Indices,
    wanted: ArrayLike,
    *,
    far: bool = False,
    rules: Rules | None = None,
) -> tuple[Floats, Floats]:
    """Find the shares of each subset whose dry, opaque colour is closest to the wanted one.

    Parameters
    ----------
    paints
        The shelf.
    which
        (m, k) subsets, k of 1 to 3.
    wanted
        (3,) CIELAB, D65.
    far
        Whether to go by the difference for colours far apart instead of CIEDE2000.
    rules
        What the mixtures must keep to.

    Returns
    -------
    Shares (m, k), each row summing to 1, and their difference (m,): infinite where the paints
    cannot keep the rules.
    """
    task = _Task(paints, np.asarray(wanted, dtype=np.float64), far, rules)
    if which.shape[1] == 1:
        shares: Floats = np.ones(which.shape)
        apart = task.apart(which, shares)
    elif len(which):
        shares, apart = _restarted(task, which, *_descend(task, which, _start(task, which)))
    else:
        return np.ones(which.shape), np.ones(0)
    return (shares, apart) if rules is None else _kept(task, rules, which, shares)


def _kept(task: _Task, rules: Rules, which: Indices, shares: Floats) -> tuple[Floats, Floats]:
    """Cut shares to their limits, and tell what breaks the rules none the less."""
    shares = rules.clipped(which, shares)
    plain = _Task(task.paints, task.wanted, task.far)
    broken = rules.breach(task.paints, which, shares) > _KEPT
    return shares, np.where(broken, np.inf, plain.apart(which, shares))


def _coarse_logits(size: int) -> Floats:
    """Give the coarse mixtures as logits (s, size - 1) relative to the last paint."""
    ratios = {tuple(a / row[-1] for a in row) for row in product(_AMOUNTS[size], repeat=size)}
    return np.unique(np.round(np.log([row[:-1] for row in ratios]), 9), axis=0)


def _start(task: _Task, which: Indices) -> Floats:
    """Pick for each subset the coarse mixture that is closest; logits (m, k - 1)."""
    coarse = _coarse_logits(which.shape[1])
    best: Floats = np.full(which.shape[0], np.inf)
    chosen = np.zeros((which.shape[0], coarse.shape[1]))
    for logits, row in zip(coarse, shares_of(coarse), strict=True):
        apart = task.apart(which, np.broadcast_to(row, which.shape))
        closer = apart < best
        best[closer] = apart[closer]
        chosen[closer] = logits
    return chosen


def _restarted(task: _Task, which: Indices, shares: Floats, apart: Floats) -> tuple[Floats, Floats]:
    """Start the closest subsets again from every coarse mixture, and keep what is closer.

    The difference has more than one valley where the colour is out of reach.
    """
    coarse = _coarse_logits(which.shape[1])
    front = np.argsort(apart, kind="stable")[:_CONTENDERS]
    again = which[np.repeat(front, len(coarse))]
    found, distance = _descend(task, again, np.tile(coarse, (front.size, 1)))
    rows = distance.reshape(front.size, -1)
    picked = np.arange(front.size) * len(coarse) + rows.argmin(axis=1)
    closer = distance[picked] < apart[front]
    shares[front[closer]] = found[picked[closer]]
    apart[front[closer]] = distance[picked[closer]]
    return shares, apart


def _descend(task: _Task, which: Indices, logits: Floats) -> tuple[Floats, Floats]:
    """Go down from the logits of each subset; give shares (m, k) and their difference (m,)."""
    ended, size = descend(
        lambda rows, moved: task.terms(which[rows], moved), logits, _ENDS, _worth_more
    )
    return shares_of(ended), np.sqrt(size)


def _worth_more(turn: int, size: Floats) -> NDArray[np.bool_]:
    """Leave, after the first turns, what cannot end among the best."""
    if turn != _FIRST_TURNS:
        return np.ones(size.shape, dtype=np.bool_)
    apart = np.sqrt(size)
    return np.asarray(apart <= _hopeless(apart))


def _hopeless(apart: Floats) -> float:
    """Give the difference beyond which a subset is not worth further turns."""
    front = np.partition(apart, min(_FRONT, apart.size - 1))[min(_FRONT, apart.size - 1)]
    return float(_HOPELESS_TIMES * front + _HOPELESS_BEYOND)
