"""What the colour of a pixel alone says of the surface it is on.

Light and shade change how light a surface is seen, and hardly the ratios of its channels. So the
marks of each zone make a histogram over two ratios and, more loosely, the lightness.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

__all__ = ["LUMINANCE", "likely"]

Floats = NDArray[np.floating[Any]]

LUMINANCE = np.array([0.2126, 0.7152, 0.0722], dtype=np.float32)
"""Y of linear sRGB (IEC 61966-2-1)."""

_BLACK = 0.008
_BINS = (40, 44, 44)
_LEAST, _MOST = (-4.9, -2.2, -2.2), (0.1, 2.2, 2.2)
_BLUR = (3.0, 1.3, 1.3)
_ODD = 0.02
_FAINT = 1e-4
_SHADED = 0.9
_DARK = (0.01, 0.04)


def likely(light: Floats, marks: NDArray[np.uint8], count: int) -> Floats:
    """Give how much the colour of each pixel speaks for each label.

    Parameters
    ----------
    light
        Linear sRGB, shape (rows, columns, 3).
    marks
        Labels, shape (rows, columns); the last label is for what is none of the piece, to which
        a colour belongs that is like no mark.
    count
        How many labels there are.

    Returns
    -------
    Shape (count, rows, columns); sums to 1.
    """
    place = _bins(light)
    votes = np.empty((count, *marks.shape), dtype=np.float32)
    for label in range(count):
        votes[label] = _histogram(place[marks == label]).ravel()[place]
    votes += _FAINT
    votes[-1] += _ODD
    votes /= votes.sum(axis=0)
    # In the dark a colour is hardly told: gaps and deep shadows go to what is about them.
    lit = np.clip((light @ LUMINANCE - _DARK[0]) / (_DARK[1] - _DARK[0]), 0.0, 1.0)
    return np.asarray(lit * votes + (1 - lit) / count, dtype=np.float32)


def _bins(light: Floats) -> NDArray[np.intp]:
    """Give the bin of each pixel, as one number."""
    safe = np.log(np.maximum(light, 0) + _BLACK)
    lightness = np.log(np.maximum(light @ LUMINANCE, 0) + _BLACK)
    axes = (lightness, safe[..., 0] - safe[..., 1], safe[..., 2] - safe[..., 1])
    whole = np.zeros(lightness.shape, dtype=np.intp)
    for value, least, most, bins in zip(axes, _LEAST, _MOST, _BINS, strict=True):
        at = ((value - least) * (bins / (most - least))).astype(np.intp)
        whole = whole * bins + np.clip(at, 0, bins - 1)
    return whole


def _histogram(places: NDArray[np.intp]) -> Floats:
    """Give a smooth histogram whose highest bin is 1."""
    from scipy.ndimage import gaussian_filter

    counts = np.bincount(places, minlength=int(np.prod(_BINS))).astype(np.float32)
    smooth = gaussian_filter(counts.reshape(_BINS), _BLUR, mode="nearest")
    # The same surface may well lie in shade, where no stroke was drawn.
    for bin_ in range(_BINS[0] - 2, -1, -1):
        np.maximum(smooth[bin_], _SHADED * smooth[bin_ + 1], out=smooth[bin_])
    top = float(smooth.max())
    return smooth / top if top > 0 else smooth
