"""The light on the commonest colour of a cloth, cell by cell, to see whether its colour changes."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

__all__ = ["cells_of"]

Floats = NDArray[np.float64]

_GRID = 6
_ONE_COLOUR = 0.3
_LEAST_OF_CELL = 0.1


def cells_of(light: Floats) -> Floats | None:
    """Give the middle of one colour in six by six cells: the log of its green, and the ratios.

    Only the commonest colour of the cloth is followed: stripes would pass for a change of light.

    Returns
    -------
    Shape (6, 6, 3); None if the colour is not found all over.
    """
    rows, columns = (side // _GRID for side in light.shape[:2])
    if min(rows, columns) < 4:
        return None
    log = np.log(np.maximum(light, 1e-5))
    log = np.stack([log[..., 1], log[..., 0] - log[..., 1], log[..., 2] - log[..., 1]], axis=-1)
    mine = np.all(np.abs(log[..., 1:] - _commonest(log[..., 1:])) < _ONE_COLOUR, axis=-1)
    cells = np.empty((_GRID, _GRID, 3))
    for row in range(_GRID):
        for column in range(_GRID):
            at = (
                slice(row * rows, row * rows + rows),
                slice(column * columns, (column + 1) * columns),
            )
            if mine[at].mean() < _LEAST_OF_CELL:
                return None
            cells[row, column] = np.median(log[at][mine[at]], axis=0)
    return cells


def _commonest(ratios: Floats) -> Floats:
    """Give the ratios that most pixels are near to, shape (2,)."""
    flat = ratios.reshape(-1, 2)
    counts, *edges = np.histogram2d(flat[:, 0], flat[:, 1], bins=40)
    best = np.unravel_index(int(counts.argmax()), counts.shape)
    return np.array([(e[i] + e[i + 1]) / 2 for e, i in zip(edges, best, strict=True)])
