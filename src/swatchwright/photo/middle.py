"""The middle of a group of pixels: where they lie densest, not their mean.

Folds and the flanks of threads only ever take light away, so the mean of a cloth is darker than
its yarn. The densest part is the part in full light.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

__all__ = ["densest", "middle"]

Floats = NDArray[np.float64]

_CORE = 0.25
"""Share of the pixels, in their shortest range of L*, that counts as fully lit. Less follows the
light more closely and is noisier."""

_CORE_OF_HUE = 0.5
_FEWEST = 60

_BINS = 200
_BLUR = 3
_HEAP = 0.4
_VALLEY = 0.7
"""Heaps of lightness: counted in half units of L*, smoothed over so many; a heap counts from this
share of the highest, and is parted from the next by a valley of this share of its height."""


def middle(lab: Floats) -> Floats:
    """Give the densest colour of pixels, shape (n, 3), n >= 1: L*, a*, b*."""
    bright = lab[_in_light(lab[:, 0])]
    lit = bright[densest(bright[:, 0], _CORE)]
    a, b = (float(np.median(v[densest(v, _CORE_OF_HUE)])) for v in (lit[:, 1], lit[:, 2]))
    return np.array([np.median(lit[:, 0]), a, b])


def _in_light(L: Floats) -> NDArray[np.bool_]:
    """Mark the pixels in light, shape (n,): where lightness has two heaps, the lighter one.

    A cloth in sun and shadow has two heaps; the lighter counts if it is not far smaller.
    """
    counts = np.histogram(np.clip(L, 0.0, 100.0), _BINS, (0.0, 100.0))[0].astype(np.float64)
    reach = np.arange(-3 * _BLUR, 3 * _BLUR + 1)
    smooth = np.convolve(counts, np.exp(-0.5 * (reach / _BLUR) ** 2), mode="same")
    lightest = int(np.flatnonzero(smooth >= _HEAP * smooth.max())[-1])
    peak = lowest = lightest
    for at in range(lightest, -1, -1):
        if smooth[at] > smooth[peak]:
            peak = lowest = at
        elif smooth[at] < smooth[lowest]:
            lowest = at
        elif smooth[lowest] < _VALLEY * min(smooth[peak], smooth[at]):
            return np.asarray(100 * lowest / _BINS <= L)
    return np.ones(len(L), dtype=np.bool_)


def densest(values: Floats, share: float) -> NDArray[np.bool_]:
    """Mark the values in the shortest range that holds this share of them, shape (n,)."""
    count = min(len(values), max(round(share * len(values)), _FEWEST))
    ordered = np.sort(values)
    widths = ordered[count - 1 :] - ordered[: len(values) - count + 1]
    # Bytes make many ranges equally short: the one in the middle of them leans to no side.
    shortest = np.flatnonzero(widths <= widths.min() + 1e-9)
    start = int(shortest[len(shortest) // 2])
    return np.asarray((values >= ordered[start]) & (values <= ordered[start + count - 1]))
