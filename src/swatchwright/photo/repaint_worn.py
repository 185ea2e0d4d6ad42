"""Worn patches of the old paint: where something of another hue shows through.

A new paint covers them, so they must not stay lighter or darker than what is about them. A patch is
told from gloss and shade by its hue, which no mixture of the old paint with white light has.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.photo.repaint_colours import LUMINANCE

__all__ = ["lighter_where_worn", "worn"]

Floats = NDArray[np.floating[Any]]

_HARDLY, _SURELY = 0.10, 0.20
_GREY = 0.12
_DARKEST = 1e-3
_WINDOW = 41
_FEWEST = 40
_MOST = 1.6


def worn(light: Floats, hue: Floats) -> Floats:
    """Tell how surely a pixel is not of the old paint, 0-1.

    Parameters
    ----------
    light
        Linear sRGB, shape (rows, columns, 3).
    hue
        Linear sRGB of the old paint, shape (3,).

    Returns
    -------
    Shape (rows, columns).
    """
    size = np.maximum(np.sqrt(np.sum(light**2, axis=-1)), _DARKEST)
    across = np.cross(hue / np.linalg.norm(hue), np.ones(3) / np.sqrt(3))
    tilt = float(np.linalg.norm(across))
    if tilt > _GREY:
        off = np.abs(light @ (across / tilt).astype(np.float32)) / size
    else:
        # A grey paint and white light are one line, and any hue is off it.
        grey = light.mean(axis=-1, keepdims=True)
        off = np.sqrt(np.sum((light - grey) ** 2, axis=-1)) / size
    share = np.clip((off - _HARDLY) / (_SURELY - _HARDLY), 0.0, 1.0)
    return np.asarray(share * share * (3 - 2 * share), dtype=np.float32)


def lighter_where_worn(light: Floats, inside: NDArray[np.bool_], patch: Floats) -> float:
    """Give how much lighter the patches are than sound paint near by.

    Parameters
    ----------
    light
        Linear sRGB, shape (rows, columns, 3).
    inside
        Where the zone is.
    patch
        As `worn` gives it.

    Returns
    -------
    The factor of their luminance, 0.2 to 5; 1 where there are none.
    """
    from scipy.ndimage import uniform_filter

    Y = np.log(np.maximum(light @ LUMINANCE, _DARKEST))
    sound = (inside & (patch < 0.1)).astype(np.float32)
    near = uniform_filter(sound, _WINDOW, mode="nearest")
    about = uniform_filter(sound * Y, _WINDOW, mode="nearest") / np.maximum(near, 1e-3)
    told = inside & (patch > 0.9) & (near > 0.1)
    if int(told.sum()) < _FEWEST:
        return 1.0
    return float(np.exp(np.clip(np.median((Y - about)[told]), -_MOST, _MOST)))
