"""The skin of a film: what it reflects outside, and what it turns back inside.

Light enters a film through its surface, of refractive index n, and leaves by it; some never gets
in, and more than half of what would leave is turned back. The reflectance inside the film and the
one a person sees are linked by Saunderson's formula.

References
----------
Saunderson 1942, J. Opt. Soc. Am. 32:727; Walsh 1926 and Duntley 1942 (diffuse reflectance of a
smooth surface, closed form). See docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "inner_reflectance",
    "internal_diffuse",
    "normal_reflectance",
    "outer_diffuse",
    "seen_reflectance",
]

Floats = NDArray[np.floating[Any]]


def normal_reflectance(index: ArrayLike) -> Floats:
    """Give the share of light that a smooth surface reflects at normal incidence.

    >>> round(float(normal_reflectance(1.5)), 12)
    0.04
    """
    n = np.asarray(index, dtype=np.float64)
    return np.asarray(((n - 1.0) / (n + 1.0)) ** 2)


def outer_diffuse(index: ArrayLike) -> Floats:
    """Give the share of perfectly diffuse light that a smooth surface reflects from outside.

    Parameters
    ----------
    index
        Refractive index of the film relative to what is above it, more than 1.

    Examples
    --------
    >>> round(float(outer_diffuse(1.5)), 6)
    0.091778
    """
    n = np.asarray(index, dtype=np.float64)
    n2 = n * n
    plus, minus = n2 + 1.0, n2 - 1.0
    return np.asarray(
        0.5
        + (n - 1.0) * (3.0 * n + 1.0) / (6.0 * (n + 1.0) ** 2)
        + n2 * minus**2 / plus**3 * np.log((n - 1.0) / (n + 1.0))
        - 2.0 * n**3 * (n2 + 2.0 * n - 1.0) / (plus * (n**4 - 1.0))
        + 8.0 * n**4 * (n**4 + 1.0) / (plus * (n**4 - 1.0) ** 2) * np.log(n)
    )


def internal_diffuse(index: ArrayLike) -> Floats:
    """Give the share of diffuse light that a smooth surface turns back inside.

    >>> round(float(internal_diffuse(1.5)), 6)
    0.596346
    """
    n = np.asarray(index, dtype=np.float64)
    return np.asarray(1.0 - (1.0 - outer_diffuse(n)) / (n * n))


def seen_reflectance(
    inside: ArrayLike, k1: ArrayLike, k2: ArrayLike, glare: ArrayLike = 1.0
) -> Floats:
    """Give the reflectance that is seen of a film with a surface.

    Parameters
    ----------
    inside
        Reflectance inside the film, 0-1.
    k1
        Share reflected outside by the surface, 0-1.
    k2
        Share of diffuse light turned back inside, 0-1.
    glare
        Share of the outside reflection that reaches the eye, 0-1: 1 for a matte surface, which
        sends it everywhere, 0 for a gloss seen away from its glint.

    Examples
    --------
    >>> round(float(seen_reflectance(0.5, 0.04, 0.6)), 6)
    0.314286
    """
    R, outer, back = (np.asarray(v, dtype=np.float64) for v in (inside, k1, k2))
    through = (1.0 - outer) * (1.0 - back) * R / (1.0 - back * R)
    return np.asarray(np.asarray(glare) * outer + through)


def inner_reflectance(
    seen: ArrayLike, k1: ArrayLike, k2: ArrayLike, glare: ArrayLike = 1.0
) -> Floats:
    """Give the reflectance inside a film from the one that is seen; inverse of the above.

    A reading below the surface's own reflection has no answer; it comes out negative, and it
    is for the caller to say so.
    """
    Rm, outer, back = (np.asarray(v, dtype=np.float64) for v in (seen, k1, k2))
    through = Rm - np.asarray(glare) * outer
    return np.asarray(through / ((1.0 - outer) * (1.0 - back) + back * through))
