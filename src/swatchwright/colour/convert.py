"""Between linear light, sRGB, XYZ and CIELAB.

XYZ is scaled so that the perfect white has Y = 1. Arrays have their three coordinates on the
last axis and any shape before it; float32 stays float32 where that is enough for a photo.

References
----------
IEC 61966-2-1:1999 (sRGB); ISO/CIE 11664-4:2019 (CIELAB); CIE 015:2018 (white points); Lam 1985
(the Bradford transform, as fixed by ICC.1:2022 annex E). See docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.values import Lab

__all__ = [
    "D50_WHITE",
    "D65_WHITE",
    "bradford",
    "hex_to_lab",
    "in_srgb",
    "lab_to_hex",
    "lab_to_linear_srgb",
    "lab_to_xyz",
    "linear_srgb_to_lab",
    "linear_srgb_to_xyz",
    "srgb_decode",
    "srgb_encode",
    "xyz_to_lab",
    "xyz_to_linear_srgb",
]

Floats = NDArray[np.floating[Any]]

D65_WHITE = (0.95047, 1.0, 1.08883)
"""XYZ of D65, 2 degree observer (CIE 015:2018)."""

D50_WHITE = (0.96422, 1.0, 0.82521)
"""XYZ of D50, 2 degree observer, to the five digits in common use (ICC profiles keep more)."""

_EPSILON = 216 / 24389
_KAPPA = 24389 / 27

_BRADFORD = np.array(
    [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]]
)


def _srgb_to_xyz_matrix() -> NDArray[np.float64]:
    """Derive the matrix from the primaries, so that white lands exactly on D65.

    The four-decimal matrix printed in IEC 61966-2-1 puts white 0.008 a* off.
    """
    primaries = np.array([[0.64, 0.33, 0.03], [0.30, 0.60, 0.10], [0.15, 0.06, 0.79]]).T
    scale = np.linalg.solve(primaries, np.array(D65_WHITE))
    return np.asarray(primaries * scale, dtype=np.float64)


_RGB_TO_XYZ = _srgb_to_xyz_matrix()
_XYZ_TO_RGB = np.linalg.inv(_RGB_TO_XYZ)


def srgb_decode(encoded: ArrayLike) -> Floats:
    """Decode sRGB values in 0-1 to linear light in 0-1.

    >>> round(float(srgb_decode(128 / 255)), 10)
    0.2158605001
    """
    c = np.asarray(encoded)
    curve = ((np.maximum(c, 0.0) + 0.055) / 1.055) ** 2.4
    return np.asarray(np.where(c <= 0.04045, c / 12.92, curve))


def srgb_encode(linear: ArrayLike) -> Floats:
    """Encode linear light in 0-1 as sRGB in 0-1; what lies outside is clipped."""
    c = np.clip(np.asarray(linear), 0.0, 1.0)
    return np.asarray(np.where(c <= 0.0031308, c * 12.92, 1.055 * c ** (1 / 2.4) - 0.055))


def linear_srgb_to_xyz(rgb: ArrayLike) -> Floats:
    """Convert linear sRGB (may be negative or above 1 for colours outside it) to XYZ."""
    c = np.asarray(rgb)
    return np.asarray(c @ _RGB_TO_XYZ.T.astype(c.dtype if c.dtype == np.float32 else np.float64))


def xyz_to_linear_srgb(xyz: ArrayLike) -> Floats:
    """Convert XYZ to linear sRGB, unclipped."""
    return np.asarray(np.asarray(xyz) @ _XYZ_TO_RGB.T)


def xyz_to_lab(xyz: ArrayLike, white: ArrayLike = D65_WHITE) -> Floats:
    """Convert XYZ (Y of white 1) to CIELAB for a white of that XYZ.

    >>> xyz_to_lab([0.18 * w for w in D65_WHITE]).round(4).tolist()
    [49.4961, 0.0, 0.0]
    """
    c = np.asarray(xyz)
    t = c / np.asarray(white, dtype=c.dtype if c.dtype == np.float32 else np.float64)
    f = np.where(t > _EPSILON, np.cbrt(t), (_KAPPA * t + 16) / 116)
    lab: Floats = np.empty_like(f)
    lab[..., 0] = 116 * f[..., 1] - 16
    lab[..., 1] = 500 * (f[..., 0] - f[..., 1])
    lab[..., 2] = 200 * (f[..., 1] - f[..., 2])
    return lab


def lab_to_xyz(lab: ArrayLike, white: ArrayLike = D65_WHITE) -> Floats:
    """Convert CIELAB to XYZ (Y of white 1)."""
    c = np.asarray(lab, dtype=np.float64)
    fy = (c[..., 0] + 16) / 116
    f = np.stack([fy + c[..., 1] / 500, fy, fy - c[..., 2] / 200], axis=-1)
    cube = f**3
    return np.asarray(np.where(cube > _EPSILON, cube, (116 * f - 16) / _KAPPA) * np.asarray(white))


def linear_srgb_to_lab(rgb: ArrayLike) -> Floats:
    """Convert linear sRGB to CIELAB, D65."""
    return xyz_to_lab(linear_srgb_to_xyz(rgb))


def lab_to_linear_srgb(lab: ArrayLike) -> Floats:
    """Convert CIELAB, D65, to linear sRGB, unclipped."""
    return xyz_to_linear_srgb(lab_to_xyz(lab))


def in_srgb(lab: Lab) -> bool:
    """Tell whether a screen of the sRGB kind can show the colour (to half an 8-bit step)."""
    rgb = lab_to_linear_srgb(lab.triple)
    slack = 0.5 / 255 / 12.92
    return bool(np.all(rgb >= -slack) and np.all(rgb <= 1 + 0.005))


def lab_to_hex(lab: Lab) -> str:
    """Give the nearest 8-bit sRGB colour, each channel clipped, as ``#rrggbb``."""
    rgb = np.rint(srgb_encode(lab_to_linear_srgb(lab.triple)) * 255).astype(int)
    return "#" + "".join(f"{v:02x}" for v in rgb)


def hex_to_lab(text: str) -> Lab:
    """Read ``#rrggbb`` (the hash may be missing) as CIELAB.

    Raises
    ------
    ValueError
        If the text is not six hexadecimal digits.
    """
    digits = text.strip().removeprefix("#")
    if len(digits) != 6 or not all(d in "0123456789abcdefABCDEF" for d in digits):
        raise ValueError(text)
    rgb = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    return Lab.of(linear_srgb_to_lab(srgb_decode(rgb)))


def bradford(source: ArrayLike, destination: ArrayLike) -> NDArray[np.float64]:
    """Give the 3 x 3 matrix that adapts XYZ from one white to another (Bradford, linear)."""
    cones = _BRADFORD @ np.array([source, destination], dtype=np.float64).T
    gains = np.diag(cones[:, 1] / cones[:, 0])
    return np.asarray(np.linalg.inv(_BRADFORD) @ gains @ _BRADFORD)
