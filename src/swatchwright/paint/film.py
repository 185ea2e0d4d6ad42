"""Kubelka-Munk films: infinitely thick, and of a finite thickness over a ground.

K and S are absorption and scattering per unit thickness (1/mm of dry film where units matter),
reflectances are inside the film, without its surface. Everything broadcasts.

References
----------
Kubelka, Munk 1931, Z. tech. Phys. 12:593; Kubelka 1948, J. Opt. Soc. Am. 38:448;
ISO 6504-1 and ASTM D2805 (hiding by contrast ratio). See docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "film_reflectance",
    "film_transmittance",
    "ratio_of_reflectance",
    "reflectance_of_ratio",
]

Floats = NDArray[np.floating[Any]]

# coth differs from 1 by less than a double can hold beyond this, and sinh overflows later.
_THICK = 40.0


def reflectance_of_ratio(ratio: ArrayLike) -> Floats:
    """Give the reflectance (0-1) of an infinitely thick film from K/S (0 or more).

    Written so that nothing cancels at a large K/S.

    >>> round(float(reflectance_of_ratio(1.0)), 10)
    0.2679491924
    """
    q = np.asarray(ratio, dtype=np.float64)
    return np.asarray(1.0 / (1.0 + q + np.sqrt(q * (q + 2.0))))


def ratio_of_reflectance(reflectance: ArrayLike) -> Floats:
    """Give K/S from the reflectance of an infinitely thick film, 0 < R <= 1.

    Raises
    ------
    ValueError
        If a reflectance is outside 0-1 or is 0, whose K/S is infinite.
    """
    R = np.asarray(reflectance, dtype=np.float64)
    if np.any(R <= 0) or np.any(R > 1):
        raise ValueError("a reflectance must lie above 0 and at most at 1")
    return np.asarray((1.0 - R) ** 2 / (2.0 * R))


def _optics(
    K: ArrayLike, S: ArrayLike, thickness: ArrayLike
) -> tuple[Floats, Floats, Floats, Floats]:
    """Give K + S, beta = sqrt(K (K + 2 S)), S, and beta times thickness.

    In these the film has no division by S or by beta, so S = 0 and K = 0 need no case apart.
    """
    k, s, x = (np.asarray(v, dtype=np.float64) for v in (K, S, thickness))
    beta = np.sqrt(k * (k + 2.0 * s))
    return k + s, beta, s, beta * x


def _sinh_over(depth: Floats, thickness: ArrayLike) -> tuple[Floats, Floats]:
    """Give sinh(depth) / beta and cosh(depth), both divided by exp(depth).

    The first tends to the thickness as depth tends to 0.
    """
    x = np.asarray(thickness, dtype=np.float64)
    fall = np.exp(-2.0 * np.minimum(depth, _THICK))
    small = depth < 1e-6
    safe = np.where(small, 1.0, depth)
    shape = np.where(small, 1.0 - depth, (1.0 - fall) / (2.0 * safe))
    return x * shape, (1.0 + fall) / 2.0


def film_reflectance(K: ArrayLike, S: ArrayLike, thickness: ArrayLike, ground: ArrayLike) -> Floats:
    """Give the reflectance of a film on a ground, both seen from inside the film.

    Parameters
    ----------
    K, S
        Absorption and scattering, 0 or more, per unit of thickness.
    thickness
        0 or more, finite.
    ground
        Reflectance of the ground, 0-1.

    Examples
    --------
    >>> round(float(film_reflectance(0.1, 1, 1, 0.8)), 10)
    0.7123472869
    """
    total, _, s, depth = _optics(K, S, thickness)
    g = np.asarray(ground, dtype=np.float64)
    sinh, cosh = _sinh_over(depth, thickness)
    return np.asarray((s * sinh + g * (cosh - total * sinh)) / (cosh + (total - s * g) * sinh))


def film_transmittance(K: ArrayLike, S: ArrayLike, thickness: ArrayLike) -> Floats:
    """Give the diffuse transmittance (0-1) of a film.

    >>> round(float(film_transmittance(0.1, 1, 1)), 8)
    0.44528421
    """
    total, _, _, depth = _optics(K, S, thickness)
    sinh, cosh = _sinh_over(depth, thickness)
    return np.asarray(np.exp(-np.minimum(depth, 700.0)) / (cosh + total * sinh))
