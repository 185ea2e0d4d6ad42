"""Figures that tell how good a photo is: sharpness, blocks, texture, and how light runs over it.

References
----------
Crété and others 2007, SPIE 6492 (blur as what blurring again still changes); ITU-T T.81 (JPEG);
CIE 015:2018 (whiteness). See docs/bibliography.md.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import D65_WHITE, lab_to_xyz

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo
    from swatchwright.values import Lab, Rect

__all__ = [
    "blur",
    "plane_of",
    "sharpest_blur",
    "small_steps",
    "stored_lightness",
    "texture",
    "whiteness",
]

Floats = NDArray[np.float64]

_TILE = 192
_TILES = 5
_REBLUR = 11
_WEIGHTS = np.array([0.299, 0.587, 0.114])
"""Of stored red, green and blue in what blur and blocks are looked for (ITU-R BT.601)."""

_LOW_WAVES = ((0, 1), (1, 0), (1, 1), (0, 2), (2, 0))
_ROUNDING, _SMALL_WAVE = 2.5, 12.0
_FEWEST_WAVES = 60
"""The longest waves of a block; the heights, in bytes, up to which a wave may be but rounding and
up to which it is small; and how many waves are needed to tell."""

_EDGE = 12.0
"""Least range of stored lightness, in bytes, between the 2nd and 98th percentile of a tile that
has an edge to judge by."""


def stored_lightness(photo: Photo, rect: Rect) -> Floats:
    """Give the stored lightness of a part, in bytes, shape (rows, columns)."""
    return np.asarray(photo.cut(rect) @ _WEIGHTS)


def blur(grey: Floats) -> float:
    """Tell how blurred a picture is, 0 (sharp) to 1 (Crété and others 2007).

    Parameters
    ----------
    grey
        Shape (rows, columns), at least 12 each, with some contrast.
    """
    from scipy.ndimage import sobel, uniform_filter1d

    worst = 0.0
    inner = tuple(slice(2, side - 1) for side in grey.shape)
    for axis in (0, 1):
        again = uniform_filter1d(grey, _REBLUR, axis=axis, mode="reflect")
        sharp = np.abs(sobel(grey, axis=axis))[inner]
        soft = np.abs(sobel(again, axis=axis))[inner]
        total = float(sharp.sum())
        lost = float(np.maximum(0.0, sharp - soft).sum())
        worst = max(worst, abs(total - lost) / total if total else 0.0)
    return worst


def sharpest_blur(photo: Photo) -> float | None:
    """Give the blur of the sharpest of the tiles with an edge in them; None if there is none."""
    from swatchwright.values import Rect

    side = min(_TILE, photo.width, photo.height)
    if side < 2 * _REBLUR:
        return None
    found = []
    for y in np.linspace(0, photo.height - side, _TILES).astype(int):
        for x in np.linspace(0, photo.width - side, _TILES).astype(int):
            tile = stored_lightness(photo, Rect(int(x), int(y), side, side))
            low, high = np.percentile(tile[::4, ::4], (2, 98))
            if high - low >= _EDGE:
                found.append(blur(tile))
    return min(found, default=None)


def small_steps(grey: Floats) -> float:
    """Tell how much fine gradation is left after JPEG: about 0.2 to 1; next to 0 for hard JPEG.

    JPEG rounds the waves of each block of eight by eight pixels to steps; where the steps are
    coarse, no wave of a small height is left (ITU-T T.81). A turned or cropped file may have its
    blocks anywhere, so each of the 64 places is tried and the one that has least counts.

    Parameters
    ----------
    grey
        Stored lightness in bytes, shape (rows, columns); 1 is given for less than 24 of either,
        or where there is too little in it to tell.
    """
    from scipy.fft import dctn

    least = 1.0
    rows, columns = ((side - 8) // 8 * 8 for side in grey.shape)
    if min(rows, columns) < 16:
        return 1.0
    for y in range(8):
        for x in range(8):
            part = grey[y : y + rows, x : x + columns]
            blocks = part.reshape(rows // 8, 8, columns // 8, 8).swapaxes(1, 2)
            waves = np.abs(dctn(blocks, axes=(2, 3), norm="ortho"))
            low = np.concatenate([waves[:, :, at, to].ravel() for at, to in _LOW_WAVES])
            told = low[low > _ROUNDING]
            if len(told) >= _FEWEST_WAVES:
                least = min(least, float(np.mean(told < _SMALL_WAVE)))
    return least


def texture(grey: Floats) -> float:
    """Give the finest structure of a part, in bytes: mean departure from the next neighbours."""
    around = (grey[:-2, 1:-1] + grey[2:, 1:-1] + grey[1:-1, :-2] + grey[1:-1, 2:]) / 4
    return float(np.mean(np.abs(grey[1:-1, 1:-1] - around)))


def plane_of(values: Floats) -> tuple[float, float]:
    """Lay a plane through values on a grid, shape (rows, columns).

    Returns
    -------
    By how much it rises from one end to the other where it is steepest, and the share, 0-1, of
    the variance that it explains.
    """
    rows, columns = values.shape
    y, x = np.meshgrid(np.linspace(-1, 1, rows), np.linspace(-1, 1, columns), indexing="ij")
    terms = np.stack([np.ones(values.size), x.ravel(), y.ravel()], axis=1)
    fit, *_ = np.linalg.lstsq(terms, values.ravel(), rcond=None)
    left = values.ravel() - terms @ fit
    spread = float(np.var(values))
    explained = 1 - float(np.var(left)) / spread if spread > 0 else 0.0
    return 2 * float(np.hypot(fit[1], fit[2])), explained


def whiteness(lab: Lab) -> float:
    """Give the CIE whiteness of a colour; 100 for the perfect white (CIE 015:2018).

    >>> from swatchwright.values import Lab
    >>> round(whiteness(Lab(100, 0, 0)), 6)
    100.0
    """
    xyz = lab_to_xyz(lab.triple)
    white = np.array(D65_WHITE)
    x, y = xyz[:2] / xyz.sum()
    x_white, y_white = white[:2] / white.sum()
    return float(100 * xyz[1] + 800 * (x_white - x) + 1700 * (y_white - y))
