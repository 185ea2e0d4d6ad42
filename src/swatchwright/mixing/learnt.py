"""What is believed of paints and cloth after some samples, and what that says of any mix of them.

A sample that lies further off than was thought likely also says that less was known than was
thought: all that is left unknown is then larger by as much, as in a Student process, and smaller
where samples came as near as they could ([Shah2014]).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.mixing.believed import Believed, Looked
from swatchwright.paint.fit.fitted import FORMULA_SPREAD
from swatchwright.paint.paints import Paint
from swatchwright.values import Lab

__all__ = ["HAND", "Learnt", "alike", "by_hand"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

HAND = 0.05
"""Standard deviation of the logarithm of an amount that was measured by hand: one part in twenty,
common practice, no source."""

# How far the theory's error reaches: mixes this many units of CIELAB apart still share six tenths
# of it, and the rest is shared as far as they are of the same paints.
_REACH = 20.0


@dataclass(frozen=True, slots=True, eq=False)
class Learnt:
    """What is believed after some samples.

    Parameters
    ----------
    ground
        The paints as they are now believed to be.
    cloth
        The colour of the cloth, as it is now believed to be.
    shares
        What was tried, as shares (n, p) of the paints of the shelf.
    strain
        Factor on all variances, by how far off the samples were from what was thought likely; 1
        before any.
    ways
        How likely each width of what the paints may be off is, and what is believed for it; this
        is the likeliest. Empty before any sample.
    """

    ground: Believed
    cloth: Lab
    shares: Floats
    strain: float
    _prior_cloth: Floats
    _at: Looked
    _pulls: Floats
    _inverse: Floats
    ways: tuple[tuple[float, Learnt], ...] = ()

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
        return mean, self.strain * own, by_hand(seen)

    def joint(self, which: Indices, shares: Floats) -> Floats:
        """Give the covariance of all that is not known of one mix, but for the hand.

        Parameters
        ----------
        which, shares
            (k,) paints of the shelf and their shares of the wet volume.

        Returns
        -------
        (k d + 3, k d + 3): steps along the spread of each paint, and what the theory and the
        reading of the cloth add to the difference of mix and cloth.
        """
        ways = which.size * self.ground.spread.shape[1]
        whole = np.eye(ways + 3)
        theory = (FORMULA_SPREAD * _mixed(shares[None])[0]) ** 2
        whole[ways:, ways:] = self._prior_cloth + theory * np.eye(3)
        if len(self.shares):
            like = self._like(
                which[None], shares[None], self.ground.labs(which[None], shares[None])
            )
            paints = np.moveaxis(self._at.pushed[:, which], 0, 2).reshape(ways, -1)
            rest = np.kron(like, np.eye(3)) + np.tile(self._prior_cloth, len(self.shares))
            shared = np.vstack([paints, rest])
            whole -= shared @ self._inverse @ shared.T
        return self.strain * whole

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
        return alike(full, labs, self.shares, self._at.lab)

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
        left = self.strain * (np.eye(len(across)) - across @ self._inverse @ across.T)
        sizes, ways = np.linalg.eigh((left + left.T) / 2)
        root = (ways * np.sqrt(np.maximum(sizes, 0.0))).T
        return self.ground.paint(index, root @ self.ground.spread[index])


def _mixed(shares: Floats) -> Floats:
    """Tell (n,) how much of a mix it is: 0 for one paint, of which no theory can be wrong, to 1."""
    return np.asarray(np.sqrt(np.clip(2.0 - 2.0 * (shares**2).sum(axis=1), 0.0, 1.0)))


def alike(one: Floats, one_lab: Floats, two: Floats, two_lab: Floats) -> Floats:
    """Give the covariance (n, m) of what the theory gets wrong of mixes, by their paints (., p)."""
    apart = ((one_lab[:, None] - two_lab) ** 2).sum(axis=-1)
    both = np.sqrt(one[:, None] * two).sum(axis=-1)
    mixed = _mixed(one)[:, None] * _mixed(two)
    return np.asarray(FORMULA_SPREAD**2 * mixed * both * np.exp(-apart / (2 * _REACH**2)))


def by_hand(seen: Looked) -> Floats:
    """Give the covariance (n, 3, 3) of what a hand that measures adds."""
    poured = HAND * seen.poured
    return np.asarray(np.einsum("nkc,nke->nce", poured, poured))
