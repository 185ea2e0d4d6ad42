"""A fair sample of the pixels of a part of a photo, laid out as a coarse picture."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, sqrt
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from swatchwright.photo.image import Photo
    from swatchwright.values import Rect

__all__ = ["MOST_SAMPLES", "Sample", "sample"]

MOST_SAMPLES = 60_000

_CLIPPED_FROM = 254
_BLACK_TO = 3
_SEED = 20

_CALM_TO = 8
_CALM_SHARE = 0.6
_AROUND = 9
"""A pixel is calm where its neighbours differ by no more bytes than this, or by no more than this
share of what they differ by on average, among so many cells around."""


@dataclass(frozen=True, slots=True, eq=False)
class Sample:
    """Pixels, one out of each cell of a grid; all arrays have the grid's shape (rows, columns).

    Parameters
    ----------
    x, y
        Where each was taken, in pixels of the upright photo.
    encoded
        Their bytes, shape (rows, columns, 3).
    usable
        Which are opaque, not excluded, and neither clipped nor black.
    weight
        0 where a pixel differs much from its neighbours, for its part of the photo: at the edge of
        a thread or a patch, where two colours mix. In the middle of one, where it is calm, as many
        pixels as it stands for: 1 on a flat patch, more on a weave, where fewer are calm.
    """

    x: NDArray[np.intp]
    y: NDArray[np.intp]
    encoded: NDArray[np.uint8]
    usable: NDArray[np.bool_]
    weight: NDArray[np.float64]


def sample(photo: Photo, area: Rect, exclude: Sequence[Rect]) -> Sample:
    """Take one pixel at random out of each cell of a grid of at most 60 000 cells.

    The grid spreads them evenly; chance within the cell keeps a weave from beating with the grid.
    The same photo and area always give the same pixels.
    """
    step = ceil(sqrt(area.width * area.height / MOST_SAMPLES))
    y, x = np.meshgrid(
        np.arange(area.y, area.bottom, step), np.arange(area.x, area.right, step), indexing="ij"
    )
    rng = np.random.default_rng(_SEED)
    y = np.minimum(y + rng.integers(0, step, y.shape), area.bottom - 1)
    x = np.minimum(x + rng.integers(0, step, x.shape), area.right - 1)
    encoded = photo.encoded[y, x]
    usable = np.all(encoded < _CLIPPED_FROM, axis=-1) & np.any(encoded > _BLACK_TO, axis=-1)
    if photo.opaque is not None:
        usable &= photo.opaque[y, x]
    for rect in exclude:
        usable &= (x < rect.x) | (x >= rect.right) | (y < rect.y) | (y >= rect.bottom)
    return Sample(x, y, encoded, usable, _weight(photo, x, y))


def _weight(photo: Photo, x: NDArray[np.intp], y: NDArray[np.intp]) -> NDArray[np.float64]:
    """Weigh each pixel by how calm it is, see `Sample.weight`."""
    from scipy.ndimage import uniform_filter

    around = np.stack(
        [
            photo.encoded[np.clip(y + dy, 0, photo.height - 1), np.clip(x + dx, 0, photo.width - 1)]
            for dy, dx in ((-1, 0), (1, 0), (0, -1), (0, 1))
        ]
    )
    contrast = (around.max(axis=0) - around.min(axis=0)).max(axis=-1).astype(np.float64)
    calm = contrast <= np.maximum(_CALM_TO, _CALM_SHARE * uniform_filter(contrast, _AROUND))
    share = uniform_filter(calm.astype(np.float64), _AROUND)
    return np.where(calm, 1.0 / np.maximum(share, 1.0 / _AROUND**2), 0.0)
