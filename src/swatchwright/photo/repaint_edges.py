"""Fit the edges of masks to those of a picture, in whatever size it is shown.

A mask found on a small copy is written, window by window, as the linear function of the picture's
three channels that comes nearest to it (the guided filter [He2013]). Those functions vary slowly,
so they can be enlarged, and applied to the full picture they draw the edge where it has one
[HeSun2015]. Where a whole window is of one zone, the mask is exactly 1 there.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

__all__ = ["Fitted", "enlarged", "fitted"]

Floats = NDArray[np.floating[Any]]

_RADIUS = 4
_SMOOTH = 3e-5
_LOW, _HIGH = 0.2, 0.8


@dataclass(frozen=True, slots=True, eq=False)
class Fitted:
    """Masks as linear functions of a picture: factors of its channels and what is added.

    Parameters
    ----------
    factors
        Shape (masks, 3, rows, columns).
    added
        Shape (masks, rows, columns).
    """

    factors: Floats
    added: Floats

    def masks(self, picture: Floats, part: slice, rows: int) -> Floats:
        """Give the masks on some rows of a picture.

        Parameters
        ----------
        picture
            Those rows, encoded as sRGB in 0-1, shape (rows of the part, columns, 3).
        part
            Which rows they are.
        rows
            How many the whole picture has.

        Returns
        -------
        Shape (masks, rows of the part, columns), 0-1.
        """
        shape = (part.stop - part.start, picture.shape[1])
        share = (part.start / rows, part.stop / rows)
        found = np.empty((len(self.added), *shape), dtype=np.float32)
        for mask, (factors, added) in enumerate(zip(self.factors, self.added, strict=True)):
            value = enlarged(added, shape, share)
            for channel in range(3):
                value += enlarged(factors[channel], shape, share) * picture[..., channel]
            found[mask] = value
        return _firm(found)


def _firm(soft: Floats) -> Floats:
    """Draw an edge that the small copy has blurred together again."""
    share = np.clip((soft - _LOW) / (_HIGH - _LOW), 0.0, 1.0)
    firm = share * share * (3 - 2 * share)
    whole = firm.sum(axis=0)
    return np.asarray(firm / np.maximum(whole, 1.0))


def enlarged(field: Floats, shape: tuple[int, int], share: tuple[float, float]) -> Floats:
    """Enlarge the rows of a field that lie between two shares of its height, smoothly."""
    from PIL import Image

    rows, columns = field.shape
    box = (0.0, share[0] * rows, float(columns), share[1] * rows)
    picture = Image.fromarray(np.ascontiguousarray(field, dtype=np.float32))
    smooth = Image.Resampling.BILINEAR
    return np.array(picture.resize((shape[1], shape[0]), smooth, box=box))


def fitted(picture: Floats, masks: Floats, radius: int = _RADIUS) -> Fitted:
    """Write masks as linear functions of a picture.

    Parameters
    ----------
    picture
        Encoded as sRGB in 0-1, shape (rows, columns, 3).
    masks
        0-1, shape (masks, rows, columns).
    radius
        Half the side of a window in pixels.
    """

    def mean(field: Floats) -> Floats:
        return _box(field, 2 * radius + 1)

    guide = np.moveaxis(picture.astype(np.float32), -1, 0)
    middle = np.stack([mean(channel) for channel in guide])
    spread = np.empty((*picture.shape[:2], 3, 3), dtype=np.float32)
    for i in range(3):
        for j in range(i, 3):
            both = mean(guide[i] * guide[j]) - middle[i] * middle[j]
            spread[..., i, j] = spread[..., j, i] = both + (_SMOOTH if i == j else 0.0)
    inverse = np.linalg.inv(spread)
    factors, added = [], []
    for mask in masks.astype(np.float32):
        part = mean(mask)
        along = np.stack([mean(guide[i] * mask) - middle[i] * part for i in range(3)], axis=-1)
        slope = np.moveaxis(np.einsum("ijkl,ijl->ijk", inverse, along), -1, 0)
        rest = part - np.sum(slope * middle, axis=0)
        factors.append(np.stack([mean(one) for one in slope]))
        added.append(mean(rest))
    return Fitted(np.stack(factors), np.stack(added))


def _box(field: Floats, side: int) -> Floats:
    from scipy.ndimage import uniform_filter

    return np.asarray(uniform_filter(field, side, mode="nearest"))
