"""Spots of a photo that show a colour well, to be marked on the picture."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

__all__ = ["spots"]

Floats = NDArray[np.float64]

_MOST = 3
_NEAR = 3.0
_REACH = 0.03
_APART = 0.2
_WORTH = 0.5


def spots(
    distance: Floats, x: NDArray[np.intp], y: NDArray[np.intp]
) -> tuple[tuple[int, int], ...]:
    """Choose one to three well separated spots deep inside the patches of a colour.

    Parameters
    ----------
    distance
        Shape (rows, columns): CIEDE2000 of each cell from the colour; infinite where it is none
        of it. At least one is finite.
    x, y
        Where the pixel of each cell lies in the photo.

    Returns
    -------
    x and y of each spot, the best first.
    """
    from scipy.ndimage import gaussian_filter

    finite = np.isfinite(distance)
    near = finite & (distance <= max(_NEAR, float(np.median(distance[finite]))))
    diagonal = float(np.hypot(*distance.shape))
    reach = max(1.0, _REACH * diagonal)
    # Near pixels averaged over two reaches: thick patches win, and their inner parts within them.
    patch = near.astype(np.float64)
    wide, narrow = (gaussian_filter(patch, reach * k, mode="constant") for k in (1.0, 0.4))
    inside = wide + narrow
    rows, columns = np.indices(distance.shape)
    chosen: list[tuple[int, int]] = []
    best = 0.0
    while len(chosen) < _MOST:
        row, column = divmod(int(np.argmax(inside)), distance.shape[1])
        best = best or float(inside[row, column])
        if float(inside[row, column]) < _WORTH * best:
            break
        around = np.hypot(rows - row, columns - column)
        cost = np.where(near, np.where(near, distance, 0.0) + around / reach * _NEAR, np.inf)
        at = divmod(int(np.argmin(cost)), distance.shape[1])
        chosen.append((int(x[at]), int(y[at])))
        inside = np.where(around < _APART * diagonal, -1.0, inside)
    return tuple(chosen)
