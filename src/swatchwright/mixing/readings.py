"""One colour of the cloth from the readings of several photos.

What photos by one camera get wrong of a cloth is mostly the same in all of them: the camera, the
grey card and the cloth's own dye see to it, and only light, noise and marks change. So a second
photo narrows the doubt little where it is as good as the first, and much where it is better.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.values import KnownColour, Lab

__all__ = ["SHARED", "contradict", "one_reading"]

Floats = NDArray[np.floating[Any]]

SHARED = 0.8
"""Of the variance of a cloth's colour in a photo, the share that other photos have too; simulated,
see docs/sample.md."""

_CONTRADICTS = 6.25
"""Squared distance, in standard deviations of both, that nine of ten pairs of photos are within:
the 0.9 quantile of the chi-squared distribution with three degrees of freedom."""


def one_reading(first: KnownColour, more: Sequence[KnownColour]) -> KnownColour:
    """Give the likeliest colour of a cloth that was read several times.

    Parameters
    ----------
    first
        As it was read before any sample.
    more
        As later photos show it. One that contradicts the first is left out: it is of another
        cloth, or of another light than it was said to be.

    Returns
    -------
    The first where nothing is to be added to it: it is exact, or the only one.
    """
    if first.covariance is None:
        return first
    agreed = [one for one in more if one.covariance is not None and not contradict(first, one)]
    if not agreed:
        return first
    labs = np.array([one.lab.triple for one in (first, *agreed)])
    sizes = np.array([one.covariance for one in (first, *agreed)])
    shared = SHARED * sizes[np.trace(sizes, axis1=1, axis2=2).argmin()]
    weights = np.linalg.inv(np.array([_own(size, shared) for size in sizes]))
    narrowed = np.linalg.inv(weights.sum(axis=0))
    lab = narrowed @ np.einsum("ncd,nd->c", weights, labs)
    lab[0] = np.clip(lab[0], 0.0, 100.0)
    whole = shared + narrowed
    rows = [(float(row[0]), float(row[1]), float(row[2])) for row in (whole + whole.T) / 2]
    return KnownColour(Lab.of(lab), (rows[0], rows[1], rows[2]), first.origin)


def _own(size: Floats, shared: Floats) -> Floats:
    """Give what is a reading's own: what is not shared, and the least it must be."""
    sizes, ways = np.linalg.eigh(size - shared)
    least = (1.0 - SHARED) * float(np.linalg.eigvalsh(size)[0]) + 1e-6
    return np.asarray((ways * np.maximum(sizes, least)) @ ways.T)


def contradict(one: KnownColour, other: KnownColour) -> bool:
    """Tell whether two readings are further apart than nine of ten pairs of photos would be.

    One that carries no covariance contradicts none.
    """
    if one.covariance is None or other.covariance is None:
        return False
    both = np.array(one.covariance) + np.array(other.covariance)
    step = np.array(one.lab.triple) - other.lab.triple
    return float(step @ np.linalg.solve(both, step)) > _CONTRADICTS
