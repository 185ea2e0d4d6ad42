"""The uncertainty of a colour as one figure that an eye would agree with.

A step of CIELAB is one of CIEDE2000 only near grey: of a strong colour it is half as much or less.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.values import KnownColour, Lab

__all__ = ["give_or_take", "usual_difference"]

Floats = NDArray[np.floating[Any]]

# Draws by which a covariance is turned into a usual difference, in pairs of opposites; and the
# seed that makes them the same every time.
_DRAWS = 512
_SEED = 20

# So far from the middle no colour is drawn in L*, a* or b*: there are none.
_FAR = 100.0


@cache
def _draws() -> Floats:
    half = np.random.default_rng(_SEED).standard_normal((_DRAWS // 2, 3))
    return np.concatenate([half, -half])


def usual_difference(lab: Lab, covariance: ArrayLike) -> float:
    """Give the median CIEDE2000 between a colour and what it may really be.

    Parameters
    ----------
    lab
        The colour.
    covariance
        (3, 3) of its L*, a*, b*, in squared units.
    """
    middle = np.array(lab.triple)
    values, vectors = np.linalg.eigh(np.asarray(covariance, dtype=np.float64))
    away = _draws() * np.sqrt(np.maximum(values, 0.0)) @ vectors.T
    drawn = middle + np.clip(away, -_FAR, _FAR)
    drawn[:, 0] = np.clip(drawn[:, 0], 0.0, 100.0)
    return float(np.median(delta_e_2000(middle, drawn)))


# A page asks it of the same few colours again and again, on the thread of the interface.
@lru_cache(maxsize=256)
def give_or_take(colour: KnownColour) -> float:
    """Give the same of a colour that carries its uncertainty; 0 for one that is exact."""
    return 0.0 if colour.covariance is None else usual_difference(colour.lab, colour.covariance)
