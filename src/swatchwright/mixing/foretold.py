"""How far a mix will usually be from the cloth, from draws of all that is not known.

What paints mix to bends: of a paint of which only one colour is known, a tangent tells too little
of what it may do, and a difference of CIEDE2000 is no straight scale. So the mixes are drawn.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.learnt import HAND, Learnt

__all__ = ["usual_off"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

_DRAWS = 256
_SEED = 31
_FURTHEST = 4.0
_GAMUT = (0.0, -128.0, -128.0), (100.0, 128.0, 128.0)


@cache
def _normals(size: int) -> Floats:
    """Draw once and for all, in pairs of opposites."""
    half = np.random.default_rng(_SEED).standard_normal((_DRAWS // 2, size))
    return np.concatenate([half, -half])


def usual_off(learnt: Learnt, which: Indices, shares: Floats) -> float:
    """Give the root of the expected square of the CIEDE2000 of a mix from the cloth.

    How far the paints of the shelf may be off is not known either, so each width that may be
    counts by how likely it is: one sample can hardly tell a shelf that is far off by its nature
    from one whose mix was bad luck.

    Parameters
    ----------
    learnt
        What is believed by now.
    which, shares
        (k,) paints of the shelf and their shares of the wet volume.
    """
    ways = learnt.ways or ((1.0, learnt),)
    square = sum(weight * _square_off(one, which, shares) for weight, one in ways)
    return float(np.sqrt(square / sum(weight for weight, _ in ways)))


def _square_off(learnt: Learnt, which: Indices, shares: Floats) -> float:
    """Give the expected square, for one width of what the paints may be off."""
    sizes, ways = np.linalg.eigh(learnt.joint(which, shares))
    root = ways * np.sqrt(np.maximum(sizes, 0.0))
    normals = _normals(len(root) + which.size)
    drawn = normals[:, : len(root)] @ root.T
    steps = drawn[:, :-3].reshape(_DRAWS, which.size, -1)
    poured = shares * np.exp(HAND * normals[:, len(root) :])
    rows = np.broadcast_to(which, poured.shape)
    poured = poured / poured.sum(axis=1, keepdims=True)
    labs = learnt.ground.drawn(rows, poured, np.clip(steps, -_FURTHEST, _FURTHEST))
    labs = labs + learnt.bias(which[None], shares[None]) + drawn[:, -3:]
    apart = delta_e_2000(learnt.cloth.triple, np.clip(labs, *_GAMUT))
    return float(np.mean(apart**2))
