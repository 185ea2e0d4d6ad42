"""The next mix to try: the one that is likeliest to come home, for all that is not known.

Of two mixes that should both hit the cloth the one is better whose colour is surer: of paints that
have been tried, near to what was tried, and forgiving to measure. So the expected square of the
difference counts, and not the difference of what is expected. But what is not known of a mix
shrinks with its next sample, and what is known to be off does not: a mix whose paints cannot reach
the cloth is left for one whose paints may.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import product
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000, delta_e_terms
from swatchwright.mixing.descent import FURTHEST, Ends, descend, shares_of
from swatchwright.mixing.foretold import usual_off
from swatchwright.mixing.learnt import Learnt
from swatchwright.values import Lab

__all__ = ["MOST_PAINTS", "Outlook", "Remix", "least_sure", "outlook", "remix"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

MOST_PAINTS = 4

# A new paint must bring the expected difference down by so much, or it is left out.
_WORTH = 0.97
_LEAST_SHARE = 2e-4

_LEFT = 0.2
"""Share of the variance of a mix that counts while further samples are to come; chosen on simulated
jobs (tools/judge_sample_loop.py), between 0.15 and 0.5 of which it hardly matters."""

_ENDS = Ends(turns=18, gain=1e-4, about=1e-2, stuck=1e3)
_FIRST = replace(_ENDS, turns=4)
_CONTENDERS = 8


@dataclass(frozen=True, slots=True)
class Outlook:
    """What a mix may be expected to be.

    Parameters
    ----------
    dry
        Its likeliest dry colour, in the light of what was tried.
    delta_e
        CIEDE2000 of that from the cloth.
    usual
        Root of the expected square of the CIEDE2000 from the cloth, for all that is not known.
    later
        The same after a further sample of it and a correction: what is not known will shrink.
    """

    dry: Lab
    delta_e: float
    usual: float
    later: float


@dataclass(frozen=True, slots=True)
class Remix:
    """A mix to try next: paints by id with shares of the wet volume, and what to expect of it."""

    shares: dict[str, float]
    outlook: Outlook


def outlook(learnt: Learnt, shares: dict[str, float]) -> Outlook:
    """Say what to expect of a mix, by ids and shares that sum to 1."""
    place = {paint.id: i for i, paint in enumerate(learnt.ground.paints)}
    which = np.array([[place[id_] for id_ in shares]], dtype=np.intp)
    return _outlook(learnt, which, np.array([list(shares.values())]))


def least_sure(learnt: Learnt, shares: dict[str, float]) -> tuple[float, float, float]:
    """Give the step of L*, a*, b*, one standard deviation long, in which a mix is least sure."""
    place = {paint.id: i for i, paint in enumerate(learnt.ground.paints)}
    which = np.array([[place[id_] for id_ in shares]], dtype=np.intp)
    _, unknown, _ = learnt.off(which, np.array([list(shares.values())]))
    root = np.linalg.cholesky(_Task(learnt).metric + 1e-9 * np.eye(3)).T
    sizes, ways = np.linalg.eigh(root @ unknown[0] @ root.T)
    step = np.linalg.solve(root, ways[:, -1] * np.sqrt(max(sizes[-1], 0.0)))
    return float(step[0]), float(step[1]), float(step[2])


def _outlook(learnt: Learnt, which: Indices, shares: Floats) -> Outlook:
    task = _Task(learnt)
    mean, _, _ = learnt.off(which, shares)
    dry = np.array(learnt.cloth.triple) + mean[0]
    dry[0] = np.clip(dry[0], 0.0, 100.0)
    squares = task.terms(which, shares)[0] ** 2
    off, unknown = float(squares[:3].sum()), float(squares[3]) / _LEFT
    return Outlook(
        Lab.of(dry),
        float(delta_e_2000(learnt.cloth.triple, dry)),
        usual_off(learnt, which[0], shares[0]),
        float(np.sqrt(off + _LEFT * unknown)),
    )


def remix(
    learnt: Learnt,
    last: Sequence[str],
    may: Sequence[str] | None = None,
    *,
    also: Sequence[Sequence[str]] = (),
    aside: Sequence[float] = (0.0, 0.0, 0.0),
    most: int = MOST_PAINTS,
) -> Remix:
    """Find the mix to try next.

    Parameters
    ----------
    learnt
        What is believed by now.
    last
        Ids of the paints of the last mix: the next one is of them, or of one less, one more or
        one other.
    may
        Ids of paints that may be added; all that are there if None.
    also
        Further sets of ids to try.
    aside
        How far beside the cloth to aim, L*, a*, b*.
    most
        How many paints it may have, 2 or more; a last mix of more than that becomes one of fewer,
        step by step.

    Returns
    -------
    The mix; a paint that was not in the last one only where it is worth it.
    """
    place = {paint.id: i for i, paint in enumerate(learnt.ground.paints)}
    own = tuple(place[id_] for id_ in last)
    others = tuple(place[id_] for id_ in (place if may is None else may))
    task = _Task(learnt, np.array(aside))
    best: tuple[float, Indices, Floats] | None = None
    listed = [tuple(place[i] for i in one) for one in also]
    for size, sets in _sets(learnt, own, others, listed, most):
        screened = task.screened(np.array(sets, dtype=np.intp), size)
        which, shares, apart = task.solve(screened, size)
        new = np.array([bool(set(row) - set(own)) for row in which.tolist()])
        weighed = np.where(new, apart / _WORTH, apart)
        at = int(weighed.argmin())
        if best is None or weighed[at] < best[0]:
            best = (float(weighed[at]), which[at], shares[at])
    assert best is not None  # noqa: S101 - there is a last mix
    _, which_, shares_ = best
    kept = shares_ > _LEAST_SHARE
    which_, shares_ = which_[kept], shares_[kept] / shares_[kept].sum()
    named = {learnt.ground.paints[i].id: float(s) for i, s in zip(which_, shares_, strict=True)}
    return Remix(named, _outlook(learnt, which_[None], shares_[None]))


def _sets(
    learnt: Learnt,
    own: tuple[int, ...],
    others: tuple[int, ...],
    also: Sequence[tuple[int, ...]],
    most: int,
) -> Iterator[tuple[int, list[tuple[int, ...]]]]:
    """List sets of paints by their size: the last mix's own, one less, one more, one other."""
    paints = learnt.ground.paints
    water = paints[own[0]].finish.waterborne
    more = [i for i in others if i not in own and paints[i].finish.waterborne is water]
    fewer = [own[:i] + own[i + 1 :] for i in range(len(own))] if len(own) > 1 else []
    found = {own, *also, *fewer, *((*less, i) for less in fewer for i in more)}
    if len(own) < most:
        found |= {(*own, i) for i in more}
    # One of fewer than the last mix is always there, if that had too many.
    limit = max(most, min(len(row) for row in found))
    found = {row for row in found if len(row) <= limit}
    for size in sorted({len(row) for row in found}):
        yield size, sorted(row for row in found if len(row) == size)


class _Task:
    """The expected square of the difference, and where it is least."""

    def __init__(self, learnt: Learnt, aside: Floats | None = None) -> None:
        self.learnt = learnt
        self.aside = np.zeros(3) if aside is None else aside
        self.cloth = np.array(learnt.cloth.triple)
        slopes = (self._terms(0.5 * np.eye(3)) - self._terms(-0.5 * np.eye(3))).T
        self.metric = slopes.T @ slopes

    def _terms(self, off: Floats) -> Floats:
        """Give three numbers (n, 3) whose squares sum to the squared CIEDE2000 of an offset."""
        dL, dC, dH, rotation = delta_e_terms(self.cloth, self.cloth + off)
        return np.stack(
            [dL, dC + rotation / 2 * dH, np.sqrt(np.maximum(1 - rotation**2 / 4, 0.0)) * dH],
            axis=-1,
        )

    def terms(self, which: Indices, shares: Floats) -> Floats:
        """Give numbers (n, 4) whose squares sum to the expected square of the CIEDE2000."""
        mean, unknown, hand = self.learnt.off(which, shares)
        spread = _LEFT * np.einsum("cd,ncd->n", self.metric, unknown + hand)
        return np.concatenate(
            [self._terms(mean - self.aside), np.sqrt(np.maximum(spread, 1e-9))[:, None]], axis=1
        )

    def screened(self, which: Indices, size: int) -> Indices:
        """Keep the sets that come nearest after a few turns; of the others none ends the best."""
        if len(which) <= _CONTENDERS or size == 1:
            return which
        logits = np.log(_share_starts(size))
        rows = np.repeat(which, len(logits), axis=0)
        labs = self.learnt.ground.labs(rows, np.tile(_share_starts(size), (len(which), 1)))
        near = np.abs(self._terms(labs - self.cloth - self.aside)).sum(axis=1)
        starts = near.reshape(len(which), -1).argmin(axis=1)
        first = logits[starts] - logits[starts][:, -1:]
        moved = self._descend(which, first[:, :-1], _FIRST)
        apart = (self.terms(which, shares_of(moved)) ** 2).sum(axis=1)
        return which[np.argsort(apart, kind="stable")[:_CONTENDERS]]

    def solve(self, which: Indices, size: int) -> tuple[Indices, Floats, Floats]:
        """Find the best shares of each set, by Levenberg-Marquardt from several starts."""
        if size == 1:
            shares: Floats = np.ones(which.shape)
            return which, shares, np.sqrt((self.terms(which, shares) ** 2).sum(axis=1))
        starts = self._starts(size)
        rows = np.repeat(which, len(starts), axis=0)
        full = np.tile(starts, (len(which), 1)) + self._tried(rows)
        begin = np.clip(full[:, :-1] - full[:, -1:], -FURTHEST, FURTHEST)
        logits = self._descend(rows, begin, _ENDS)
        shares = shares_of(logits)
        apart = np.sqrt((self.terms(rows, shares) ** 2).sum(axis=1)).reshape(-1, len(starts))
        picked = np.arange(len(which)) * len(starts) + apart.argmin(axis=1)
        return which, shares[picked], apart.min(axis=1)

    @staticmethod
    def _starts(size: int) -> Floats:
        """Give shifts of the logarithms of shares to start from: none, and more of each paint."""
        return np.concatenate([np.zeros((1, size)), 1.2 * np.eye(size)])

    def _tried(self, rows: Indices) -> Floats:
        """Give the logarithms of the shares last tried; a hundredth for a paint that was not."""
        last = self.learnt.shares[-1] if len(self.learnt.shares) else np.zeros(rows.max() + 1)
        return np.log(np.maximum(last[rows], 0.02))

    def _descend(self, which: Indices, logits: Floats, ends: Ends) -> Floats:
        def terms(rows: Indices, moved: Floats) -> Floats:
            return self.terms(which[rows], shares_of(moved))

        return descend(terms, logits, ends)[0]


@cache
def _share_starts(size: int) -> Floats:
    """Give coarse mixtures (s, size): each paint the body of it, a part or a trace."""
    rows = {tuple(a / sum(row) for a in row) for row in product((1.0, 0.2, 0.03), repeat=size)}
    return np.array(sorted(rows))
