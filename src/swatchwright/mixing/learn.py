"""Learning from samples: what the mixes that were tried say of the paints and of the cloth.

Three things may be amiss when a dried sample is not like the cloth: the paints are not what they
were taken for, the theory of mixing errs about this mix and those like it, or the cloth's colour
was misread. Each is a Gaussian before anything is tried. The samples narrow all three together
(Bayesian regression with a Gaussian process for what the theory gets wrong, linearised anew until
it no longer moves: [Rasmussen2006] chapter 2). What is read is the difference of sample and cloth
in one photo, so that nothing rests on either colour by itself.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.mixing.believed import Believed, Looked, believed
from swatchwright.paint.fit.fitted import FORMULA_SPREAD
from swatchwright.paint.paints import Paint
from swatchwright.values import Covariance, KnownColour, Lab

__all__ = ["HAND", "Learnt", "Tried", "learn"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

HAND = 0.03
"""Standard deviation of the logarithm of an amount that was measured by hand; common practice."""

# How far the theory's error reaches: mixes this many units of CIELAB apart still share six tenths
# of it, and the rest is shared as far as they are of the same paints.
_REACH = 20.0

_TURNS = 30
_HALVINGS = 8
_STILL = 1e-4
_FURTHEST = 4.0


@dataclass(frozen=True, slots=True)
class Tried:
    """A mix that was brushed out, dried and compared with the cloth.

    Parameters
    ----------
    shares
        Shares of the wet volume by id of the paint, summing to 1.
    difference
        The sample less the cloth: L*, a*, b*.
    covariance
        Uncertainty of that, in squared Lab units.
    """

    shares: dict[str, float]
    difference: tuple[float, float, float]
    covariance: Covariance


@dataclass(frozen=True, slots=True, eq=False)
class Learnt:
    """What is believed after some samples.

    Parameters
    ----------
    ground
        The paints as they are now believed to be.
    cloth
        The colour of the cloth, as it is now believed to be.
    tried
        What was tried, as paints (n, p) of the shelf.
    """

    ground: Believed
    cloth: Lab
    shares: Floats
    _prior_cloth: Floats
    _at: Looked
    _pulls: Floats
    _inverse: Floats

    def off(self, which: Indices, shares: Floats) -> tuple[Floats, Floats, Floats]:
        """Say how mixes will differ from the cloth.

        Parameters
        ----------
        which, shares
            (n, k) paints of the shelf and their shares of the wet volume.

        Returns
        -------
        Their expected difference (n, 3), mix less cloth, its covariance (n, 3, 3), and that of
        what the hand that measures adds (n, 3, 3), in units of CIELAB.
        """
        seen = self.ground.look(which, shares)
        like = self._like(which, shares, seen.lab)
        mean = seen.lab - np.array(self.cloth.triple) + self._bias(like)
        own = np.einsum("nkdc,nkde->nce", seen.pushed, seen.pushed)
        theory = (FORMULA_SPREAD * _mixed(shares)) ** 2
        own += self._prior_cloth + theory[:, None, None] * np.eye(3)
        if len(self.shares):
            shared = self._shared(which, seen, like)
            own -= shared @ self._inverse @ np.swapaxes(shared, -1, -2)
        return mean, own, _hand(seen)

    def bias(self, which: Indices, shares: Floats) -> Floats:
        """Give what the theory is believed to get wrong (n, 3) of mixes, as found near them."""
        labs = self.ground.labs(which, shares)
        return self._bias(self._like(which, shares, labs))

    def _bias(self, like: Floats) -> Floats:
        return np.asarray(like @ self._pulls.reshape(-1, 3))

    def _like(self, which: Indices, shares: Floats, labs: Floats) -> Floats:
        """Give the covariance (n, m) of the theory's error of mixes and of those tried."""
        full = np.zeros((len(which), self.ground.log_K.shape[0]))
        for column in range(which.shape[1]):
            full[np.arange(len(which)), which[:, column]] += shares[:, column]
        return _alike(full, labs, self.shares, self._at.lab)

    def _shared(self, which: Indices, seen: Looked, like: Floats) -> Floats:
        """Give the covariance (n, 3, 3 m) of differences of mixes and of those tried."""
        count = len(self.shares)
        # (m, p, d, 3) of those tried, by the paints of each mix.
        there = self._at.pushed[:, which]
        paints = np.einsum("nkdc,mnkde->ncme", seen.pushed, there)
        paints += self._prior_cloth[:, None, :]
        paints += like[:, None, :, None] * np.eye(3)[:, None, :]
        return np.asarray(paints.reshape(len(which), 3, 3 * count))

    def paints(self) -> tuple[Paint, ...]:
        """Give the paints with what was learnt of them; those not tried are as they were."""
        return tuple(self._paint(i) for i in range(len(self.ground.paints)))

    def _paint(self, index: int) -> Paint:
        paint = self.ground.paints[index]
        if not len(self.shares) or not self.shares[:, index].any():
            return paint
        pushed = np.moveaxis(self._at.pushed[:, index], 0, 1)
        across = pushed.reshape(pushed.shape[0], -1)
        left = np.eye(len(across)) - across @ self._inverse @ across.T
        sizes, ways = np.linalg.eigh((left + left.T) / 2)
        root = (ways * np.sqrt(np.maximum(sizes, 0.0))).T
        return self.ground.paint(index, root @ self.ground.spread[index])


def learn(shelf: Sequence[Paint], cloth: KnownColour, tried: Sequence[Tried]) -> Learnt:
    """Learn from what was tried.

    Parameters
    ----------
    shelf
        The paints as they were known before any of it.
    cloth
        The colour of the cloth as it was read before any of it; one without a covariance is
        taken as exact.
    tried
        The samples, each against that cloth.
    """
    ground = believed(shelf)
    shares = _rows(shelf, tried)
    prior_cloth = np.zeros((3, 3)) if cloth.covariance is None else np.array(cloth.covariance)
    task = _Task(ground, np.array(cloth.lab.triple), prior_cloth, shares, tried)
    steps, pulls, inverse = task.solve()
    moved = np.zeros(3)
    if len(shares):
        moved = -prior_cloth @ pulls.reshape(-1, 3).sum(axis=0)
    after = ground.moved(steps)
    at = after.look(task.which, shares)
    return Learnt(after, Lab.of(task.cloth + moved), shares, prior_cloth, at, pulls, inverse)


def _rows(shelf: Sequence[Paint], tried: Sequence[Tried]) -> Floats:
    place = {paint.id: i for i, paint in enumerate(shelf)}
    rows = np.zeros((len(tried), len(shelf)))
    for row, one in zip(rows, tried, strict=True):
        for id_, share in one.shares.items():
            row[place[id_]] = share
    return rows


def _mixed(shares: Floats) -> Floats:
    """Tell (n,) how much of a mix it is: 0 for one paint, of which no theory can be wrong, to 1."""
    return np.asarray(np.sqrt(np.clip(2.0 - 2.0 * (shares**2).sum(axis=1), 0.0, 1.0)))


def _alike(one: Floats, one_lab: Floats, two: Floats, two_lab: Floats) -> Floats:
    """Give the covariance (n, m) of what the theory gets wrong of mixes, by their paints (., p)."""
    apart = ((one_lab[:, None] - two_lab) ** 2).sum(axis=-1)
    both = np.sqrt(one[:, None] * two).sum(axis=-1)
    mixed = _mixed(one)[:, None] * _mixed(two)
    return np.asarray(FORMULA_SPREAD**2 * mixed * both * np.exp(-apart / (2 * _REACH**2)))


def _hand(seen: Looked) -> Floats:
    poured = HAND * seen.poured
    return np.asarray(np.einsum("nkc,nke->nce", poured, poured))


class _Task:
    """The samples against what is believed, to be solved."""

    def __init__(
        self,
        ground: Believed,
        cloth: Floats,
        prior_cloth: Floats,
        shares: Floats,
        tried: Sequence[Tried],
    ) -> None:
        self.ground, self.cloth, self.prior_cloth = ground, cloth, prior_cloth
        self.shares = shares
        self.which = np.tile(np.arange(len(ground.paints)), (len(shares), 1))
        self.seen = np.array([one.difference for one in tried]).reshape(-1, 3)
        self.read = np.array([one.covariance for one in tried]).reshape(-1, 3, 3)

    def solve(self) -> tuple[Floats, Floats, Floats]:
        """Find the likeliest paints: linearise, solve, and again.

        Returns
        -------
        Steps (p, d) along the spreads, pulls (3 m,) at the samples, and the inverse covariance
        (3 m, 3 m) of what was read.
        """
        steps: Floats = np.zeros(self.ground.spread.shape[:2])
        if not len(self.shares):
            return steps, np.zeros(0), np.zeros((0, 0))
        for _ in range(_TURNS):
            wanted, pulls, inverse = self._turn(steps)
            moved = self._nearer(steps, wanted)
            still = float(np.abs(moved - steps).max())
            steps = moved
            if still < _STILL:
                break
        _, pulls, inverse = self._turn(steps)
        return steps, pulls, inverse

    def _turn(self, steps: Floats) -> tuple[Floats, Floats, Floats]:
        seen = self.ground.moved(steps).look(self.which, self.shares)
        across = np.moveaxis(seen.pushed, 0, 2)
        across = across.reshape(*steps.shape, -1)
        flat = across.reshape(steps.size, -1)
        inverse = np.linalg.inv(flat.T @ flat + self._others(seen))
        off = (self.seen - (seen.lab - self.cloth)).ravel() + flat.T @ steps.ravel()
        pulls = inverse @ off
        return (flat @ pulls).reshape(steps.shape), pulls, inverse

    def _others(self, seen: Looked) -> Floats:
        """Give the covariance (3 m, 3 m) of all but the paints."""
        count = len(self.shares)
        like = _alike(self.shares, seen.lab, self.shares, seen.lab)
        whole = np.kron(like, np.eye(3)) + np.kron(np.ones((count, count)), self.prior_cloth)
        own = self.read + _hand(seen) + 1e-4 * np.eye(3)
        for i in range(count):
            whole[3 * i : 3 * i + 3, 3 * i : 3 * i + 3] += own[i]
        return whole

    def _nearer(self, steps: Floats, wanted: Floats) -> Floats:
        """Go towards the solution as far as it is likelier there."""
        wanted = np.clip(wanted, -_FURTHEST, _FURTHEST)
        before, size = self._unlikely(steps), 1.0
        for _ in range(_HALVINGS):
            moved = steps + size * (wanted - steps)
            if self._unlikely(moved) < before:
                return np.asarray(moved)
            size /= 2
        return steps

    def _unlikely(self, steps: Floats) -> float:
        seen = self.ground.moved(steps).look(self.which, self.shares)
        off = (self.seen - (seen.lab - self.cloth)).ravel()
        whole = self._others(seen)
        told = off @ np.linalg.solve(whole, off) + np.linalg.slogdet(whole)[1]
        return float((steps**2).sum() + told)
