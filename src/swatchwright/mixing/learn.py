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
from copy import copy
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.mixing.believed import Believed, Looked, believed
from swatchwright.mixing.learnt import Learnt, alike, by_hand
from swatchwright.paint.paints import Paint
from swatchwright.values import Covariance, KnownColour, Lab

__all__ = ["Tried", "learn"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

_SHARED = 0.7
"""Of the error of a comparison in a photo, the share that other photos by the same camera have too;
simulated, see docs/sample.md."""

_FREEDOM = 3.0
"""How much it takes to change how sure one is, as degrees of freedom of a Student process;
simulated, see docs/sample.md."""

_WIDTHS = (0.6, 1.0, 1.8, 3.2, 5.6)
_WIDTH_SPREAD = 0.7
"""How far the paints of a shelf may be off, as a factor on what is usual for them: each counts by
how likely it makes the samples; a usual width needs no reason. The standard deviation of its
logarithm is how unlike shelves are taken to be; common practice, no source."""

_LEAST_LIKELY = 0.02
"""Widths that are less likely than this are left out of what is told."""

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
    by_photo
        Whether it was compared in a photo: what the camera gets wrong, it gets wrong in all.
    """

    shares: dict[str, float]
    difference: tuple[float, float, float]
    covariance: Covariance
    by_photo: bool = False


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
    if not len(shares):
        return _learnt(task, task.nothing())
    ways = _by_width(task)
    best = max(ways, key=lambda row: row[0])[1]
    kept = tuple(row for row in ways if row[0] > _LEAST_LIKELY)
    return replace(best, ways=kept)


def _by_width(task: _Task) -> list[tuple[float, Learnt]]:
    """Solve for each width of what the paints may be off: how likely it is, and what is learnt."""
    widened = [task.widened(width) for width in _WIDTHS]
    solved = [one.solve() for one in widened]
    usual = (np.log(_WIDTHS) / _WIDTH_SPREAD) ** 2 / 2
    likely = np.array([found.likely for found in solved]) - usual
    weights = np.exp(likely - likely.max())
    weights /= weights.sum()
    return [
        (float(weight), _learnt(one, found))
        for weight, one, found in zip(weights, widened, solved, strict=True)
    ]


def _learnt(task: _Task, found: _Solved) -> Learnt:
    """Give what is believed where that was found."""
    many = task.seen.size
    strain = (_FREEDOM + found.surprise) / (_FREEDOM + many) if many else 1.0
    moved = -task.prior_cloth @ found.pulls.reshape(-1, 3).sum(axis=0)
    after = task.ground.moved(found.steps)
    at = after.look(task.which, task.shares)
    lab = Lab.of(task.cloth + moved)
    return Learnt(after, lab, task.shares, strain, task.prior_cloth, at, found.pulls, found.inverse)


def _rows(shelf: Sequence[Paint], tried: Sequence[Tried]) -> Floats:
    place = {paint.id: i for i, paint in enumerate(shelf)}
    rows = np.zeros((len(tried), len(shelf)))
    for row, one in zip(rows, tried, strict=True):
        for id_, share in one.shares.items():
            row[place[id_]] = share
    return rows


def _read(tried: Sequence[Tried]) -> Floats:
    """Give the covariance (3 m, 3 m) of what comparing gets wrong."""
    count = len(tried)
    own = np.array([one.covariance for one in tried]).reshape(-1, 3, 3)
    sizes, ways = np.linalg.eigh(own)
    roots = (ways * np.sqrt(np.maximum(sizes, 0.0))[:, None]) @ np.swapaxes(ways, -1, -2)
    photo = np.array([one.by_photo for one in tried], dtype=np.float64)
    shared = _SHARED * np.outer(photo, photo)
    np.fill_diagonal(shared, 1.0)
    whole = np.einsum("ij,icd,jed->icje", shared, roots, roots)
    return np.asarray(whole.reshape(3 * count, 3 * count))


@dataclass(frozen=True, slots=True, eq=False)
class _Solved:
    """The likeliest paints.

    Parameters
    ----------
    steps
        (p, d) along the spreads.
    pulls
        (3 m,) at the samples.
    inverse
        (3 m, 3 m) of the covariance of what was read.
    surprise
        Squared distance of the samples from what was thought, of 3 m on average.
    """

    steps: Floats
    pulls: Floats
    inverse: Floats
    surprise: float

    @property
    def likely(self) -> float:
        """Logarithm of how likely the samples were, as of a Student process."""
        many = self.pulls.size
        spread = -float(np.linalg.slogdet(self.inverse)[1])
        tail = (_FREEDOM + many) * np.log1p(self.surprise / _FREEDOM)
        return -(spread + float(tail)) / 2


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
        self.read = _read(tried)

    def widened(self, width: float) -> _Task:
        """Give the same with paints that may be off so much more."""
        other = copy(self)
        other.ground = replace(self.ground, spread=width * self.ground.spread)
        return other

    def nothing(self) -> _Solved:
        """Give what is learnt from no sample."""
        return _Solved(np.zeros(self.ground.spread.shape[:2]), np.zeros(0), np.zeros((0, 0)), 0.0)

    def solve(self) -> _Solved:
        """Find the likeliest paints: linearise, solve, and again."""
        steps: Floats = np.zeros(self.ground.spread.shape[:2])
        for _ in range(_TURNS):
            wanted, _ = self._turn(steps)
            moved = self._nearer(steps, wanted)
            still = float(np.abs(moved - steps).max())
            steps = moved
            if still < _STILL:
                break
        return self._turn(steps)[1]

    def _turn(self, steps: Floats) -> tuple[Floats, _Solved]:
        """Linearise: give where the solution then lies, and all that is known where it is now."""
        seen = self.ground.moved(steps).look(self.which, self.shares)
        across = np.moveaxis(seen.pushed, 0, 2)
        across = across.reshape(*steps.shape, -1)
        flat = across.reshape(steps.size, -1)
        inverse = np.linalg.inv(flat.T @ flat + self._others(seen))
        off = (self.seen - (seen.lab - self.cloth)).ravel() + flat.T @ steps.ravel()
        pulls = inverse @ off
        solved = _Solved(steps, pulls, inverse, float(off @ pulls))
        return (flat @ pulls).reshape(steps.shape), solved

    def _others(self, seen: Looked) -> Floats:
        """Give the covariance (3 m, 3 m) of all but the paints."""
        count = len(self.shares)
        like = alike(self.shares, seen.lab, self.shares, seen.lab)
        whole = np.kron(like, np.eye(3)) + np.kron(np.ones((count, count)), self.prior_cloth)
        whole += self.read
        own = by_hand(seen) + 1e-4 * np.eye(3)
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
