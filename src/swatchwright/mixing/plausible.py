"""Reflectances that a cloth of a known colour may well have, for nobody knows the one it has.

Smooth random curves are laid on the smoothest reflectance, counted in the inverse hyperbolic
tangent so that nothing leaves 0-1, and each is then moved by the least that gives it the wanted
colour again. Their size and breadth were fitted to the 99 measured surfaces of CIE 224 (textiles,
paints, prints, skin, leaves): half of those lie further from the smoothest, under a lamp, an LED
or a tube, than half of the curves drawn here do.

References
----------
Burns 2020 (the smoothest, and the scale it is counted in); Rasmussen and Williams 2006 (smooth
random curves); CIE 224:2017 (the surfaces). See docs/bibliography.md.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_xyz
from swatchwright.colour.spectrum import WAVELENGTHS, light_weights
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.values import Lab

__all__ = ["plausible_reflectances"]

Floats = NDArray[np.floating[Any]]

# Curves, in pairs of opposites, and the seed that makes them the same every time.
_DRAWS = 128
_SEED = 20

# Standard deviation of the curves, in the inverse hyperbolic tangent, and how far apart two
# wavelengths are before they hardly go together, nm: fitted, see above.
_SIZE, _BREADTH = 0.35, 50.0

_TURNS = 8
_HIT = 1e-4


@cache
def _curves() -> tuple[Floats, Floats]:
    """Give smooth curves (n, 36) about zero, and their covariance (36, 36)."""
    apart = (WAVELENGTHS[:, None] - WAVELENGTHS) / _BREADTH
    covariance = _SIZE**2 * np.exp(-0.5 * apart**2) + 1e-9 * np.eye(WAVELENGTHS.size)
    half = np.random.default_rng(_SEED).standard_normal((_DRAWS // 2, WAVELENGTHS.size))
    drawn = half @ np.linalg.cholesky(covariance).T
    return np.concatenate([drawn, -drawn]), covariance


@lru_cache(maxsize=64)
def plausible_reflectances(wanted: Lab) -> Floats:
    """Give reflectances (n, 36), 0-1, that all have a colour under D65.

    For a colour that no surface can have there is one only, the nearest that one can.
    """
    smoothest = smoothest_reflectance(wanted)
    target = lab_to_xyz(wanted.triple)
    found = _moved_to(target, np.arctanh(2 * np.clip(smoothest, 1e-4, 1 - 1e-4) - 1))
    hit = np.abs(found @ light_weights() - target).max(axis=1) < _HIT
    kept = found[hit] if hit.any() else smoothest[None]
    kept.setflags(write=False)
    return np.asarray(kept)


def _moved_to(target: Floats, middle: Floats) -> Floats:
    """Lay the curves on a middle, and move each by its likeliest change to the target XYZ."""
    drawn, covariance = _curves()
    weights, z = light_weights(), middle + drawn
    for _ in range(_TURNS):
        R = (np.tanh(z) + 1) / 2
        slopes = (2 * R * (1 - R))[..., None] * weights
        spread = np.einsum("ij,njk->nik", covariance, slopes)
        normal = np.einsum("nik,nil->nkl", slopes, spread) + 1e-12 * np.eye(3)
        step = np.linalg.solve(normal, (target - R @ weights)[..., None])
        z = z + np.clip((spread @ step)[..., 0], -1.0, 1.0)
    return np.asarray((np.tanh(z) + 1) / 2)
