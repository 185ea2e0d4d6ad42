"""Every one, two or three paints that may be mixed together."""

from __future__ import annotations

from itertools import combinations
from math import comb

import numpy as np
from numpy.typing import NDArray

from swatchwright.paint.paints import PaintStack

__all__ = ["subsets"]


def subsets(paints: PaintStack, size: int) -> NDArray[np.intp]:
    """List the subsets of a size as rows of indices, water- and solvent-borne kept apart.

    Returns
    -------
    (m, size) indices into the stack, in lexical order.
    """
    n = len(paints)
    rows = np.fromiter(
        (i for row in combinations(range(n), size) for i in row),
        dtype=np.intp,
        count=comb(n, size) * size,
    ).reshape(-1, size)
    carried = paints.waterborne[rows]
    return np.asarray(rows[carried.all(axis=1) | ~carried.any(axis=1)])
