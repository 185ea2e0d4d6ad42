"""How thick a film must be to hide black and white.

References
----------
ISO 6504-1 and ASTM D2805 (0.98 of the luminance over white counts as hidden). See
docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import xyz_of
from swatchwright.paint.film import film_reflectance
from swatchwright.paint.surface import seen_reflectance

__all__ = ["HIDDEN", "coats_to_hide", "contrast", "hiding_thickness"]

Floats = NDArray[np.floating[Any]]

HIDDEN = 0.98
"""Luminance over black as a share of that over white at which a film hides."""

_CHART_WHITE = 0.8

# Halvings of the logarithm of thickness between the bounds: to 1e-12 of it.
_HALVINGS = 60

# In units of 1 / S: no film hides when thinner or fails to when thicker than any that is met.
_THINNEST, _THICKEST = 1e-6, 1e6


def contrast(
    K: ArrayLike,
    S: ArrayLike,
    thickness: ArrayLike,
    *,
    k1: float = 0.0,
    k2: float = 0.0,
    glare: ArrayLike = 1.0,
) -> Floats:
    """Give luminance over black as a share of luminance over a white of 0.8, D65.

    Parameters
    ----------
    K, S
        (..., 36), per unit of thickness.
    thickness
        (...) of the film.
    k1, k2
        Of its surface; none if 0.
    glare
        (...) share of the outer reflection that is seen, 0-1.
    """
    shown = np.asarray(glare, dtype=np.float64)[..., None]
    x = np.asarray(thickness, dtype=np.float64)[..., None]
    black, white = (
        xyz_of(seen_reflectance(film_reflectance(K, S, x, ground), k1, k2, shown))[..., 1]
        for ground in (0.0, _CHART_WHITE)
    )
    return np.asarray(black / white)


def hiding_thickness(
    K: ArrayLike, S: ArrayLike, share: float = HIDDEN, *, k1: float = 0.0, k2: float = 0.0
) -> Floats:
    """Give the thickness (...) at which the contrast reaches a share, by halving.

    A paint that hides at any thickness met gets the thinnest; one that never does, infinity.
    """
    s = np.asarray(S, dtype=np.float64)
    unit = 1.0 / np.maximum((np.asarray(K) + s).mean(axis=-1), 1e-300)
    low = np.full(unit.shape, np.log(_THINNEST))
    high = np.full(unit.shape, np.log(_THICKEST))
    never = contrast(K, S, unit * _THICKEST, k1=k1, k2=k2) < share
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        hides = contrast(K, S, unit * np.exp(middle), k1=k1, k2=k2) >= share
        low, high = np.where(hides, low, middle), np.where(hides, middle, high)
    return np.asarray(np.where(never, np.inf, unit * np.exp(high)))


def coats_to_hide(
    K: ArrayLike, S: ArrayLike, coat: ArrayLike, share: float = HIDDEN, *, k1: float, k2: float
) -> Floats:
    """Give the number of whole coats (...) of a dry thickness that hide; infinite if none do."""
    needed = hiding_thickness(K, S, share, k1=k1, k2=k2) / np.asarray(coat, dtype=np.float64)
    return np.asarray(np.maximum(np.ceil(needed - 1e-9), 1.0))
