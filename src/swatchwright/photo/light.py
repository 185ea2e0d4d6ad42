"""The light on a photo: its chromaticity and colour temperature.

References
----------
McCamy 1992, Color Research & Application 17:142-144 (colour temperature from chromaticity);
Krystek 1985, Color Research & Application 10:38-40 (chromaticity of a black body); CIE 015:2018
section 9.5 (colour temperature has no meaning further than 0.05 from the black body).
"""

from __future__ import annotations

from math import hypot
from typing import TYPE_CHECKING

from swatchwright.colour.convert import linear_srgb_to_xyz

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

__all__ = ["CCT_RANGE", "cct_mccamy", "chromaticity", "from_black_body"]

CCT_RANGE = (2000.0, 12500.0)
"""Kelvin between which McCamy's formula is within 4 % of the black body."""

_FURTHEST_FROM_BLACK_BODY = 0.05


def chromaticity(light: ArrayLike) -> tuple[float, float]:
    """Give CIE 1931 x, y of one linear sRGB colour, shape (3,)."""
    xyz = linear_srgb_to_xyz(light)
    return float(xyz[0] / xyz.sum()), float(xyz[1] / xyz.sum())


def cct_mccamy(x: float, y: float) -> float | None:
    """Give the correlated colour temperature of a light in kelvin (McCamy 1992).

    Returns
    -------
    None outside 2 000 to 12 500 K, where the formula is off by more than 4 %, and further than
    0.05 (CIE 1960 u, v) from the black body, where the figure has no meaning.
    """
    if abs(y - 0.1858) < 1e-6:
        return None
    n = (x - 0.3320) / (y - 0.1858)
    cct = -449 * n**3 + 3525 * n**2 - 6823.3 * n + 5520.33
    if not CCT_RANGE[0] <= cct <= CCT_RANGE[1]:
        return None
    u, v = 4 * x / (12 * y - 2 * x + 3), 6 * y / (12 * y - 2 * x + 3)
    u_body, v_body = _black_body_uv(cct)
    return cct if hypot(u - u_body, v - v_body) <= _FURTHEST_FROM_BLACK_BODY else None


def from_black_body(x: float, y: float) -> float:
    """Give how far a light is from the nearest black body, 1 000 to 15 000 K (CIE 1960 u, v).

    >>> from_black_body(0.4476, 0.4074) < 0.001  # illuminant A is one
    True
    """
    u, v = 4 * x / (12 * y - 2 * x + 3), 6 * y / (12 * y - 2 * x + 3)
    bodies = (_black_body_uv(1e6 / mired) for mired in range(67, 1001, 3))
    return min(hypot(u - body[0], v - body[1]) for body in bodies)


def _black_body_uv(kelvin: float) -> tuple[float, float]:
    """Give CIE 1960 u, v of a black body, 1 000 to 15 000 K (Krystek 1985)."""
    t = kelvin
    u = (0.860117757 + 1.54118254e-4 * t + 1.28641212e-7 * t**2) / (
        1 + 8.42420235e-4 * t + 7.08145163e-7 * t**2
    )
    v = (0.317398726 + 4.22806245e-5 * t + 4.20481691e-8 * t**2) / (
        1 - 2.89741816e-5 * t + 1.61456053e-7 * t**2
    )
    return u, v
