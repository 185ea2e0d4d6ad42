"""Where a grey card may lie in a photo: proposals, to be confirmed by whoever laid it there."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from swatchwright.values import Rect

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo

__all__ = ["likely_greys"]

Floats = NDArray[np.float64]

_LONGEST = 320
_FEWEST_CELLS = 16
_MOST = 3
_CALM = 5.0
"""Largest step to a neighbour, in bytes, within something flat."""

_LEAST_AREA, _MOST_AREA = 0.002, 0.25
_FILLED = 0.72
_GREYEST = 0.45
_LIGHT = (0.01, 0.97)
_INNER = 0.6
"""A proposal has this share of the frame, fills its upright box by so much, has channels whose
logarithms spread no more than this, and this much light; and the inner part of it is proposed."""


def likely_greys(photo: Photo) -> tuple[Rect, ...]:
    """Propose up to three rectangles that may be a grey reference, the likeliest first.

    Something flat, about rectangular and of little colour is looked for. What it reflects cannot
    be seen, nor whether it is grey rather than a pale wall, so none is used before it is agreed to.
    """
    from scipy.ndimage import find_objects, label

    step = max(1, round(max(photo.width, photo.height) / _LONGEST))
    small = _averaged(photo, step)
    if min(small.shape[:2]) < _FEWEST_CELLS:
        return ()
    flat, count = label(_calm(small))
    found: list[tuple[float, Rect]] = []
    for number, box in enumerate(find_objects(flat), start=1):
        mine = flat[box] == number
        # A card laid askew still fills most of its box; its outermost cells are edge.
        score = _score(small[box][mine], mine, small.shape[:2])
        if score > 0:
            found.append((score, _inner(box[0], box[1], step, photo)))
    best = sorted(found, key=lambda pair: -pair[0])[:_MOST]
    return tuple(rect for _, rect in best) if count else ()


def _averaged(photo: Photo, step: int) -> Floats:
    """Average the bytes over boxes, a few pixels of each: a weave is not taken for flat."""
    parts = max(1, step // 3)
    rows, columns = photo.height // step, photo.width // step
    total = np.zeros((rows, columns, 3))
    taken = range(0, step, parts)
    for dy in taken:
        whole = photo.encoded[dy : rows * step : step]
        for dx in taken:
            total += whole[:, dx : columns * step : step]
    return total / len(taken) ** 2


def _calm(small: Floats) -> NDArray[np.bool_]:
    """Mark cells that differ little from their neighbours."""
    from scipy.ndimage import binary_erosion, maximum_filter, minimum_filter

    span = maximum_filter(small, (3, 3, 1)) - minimum_filter(small, (3, 3, 1))
    return np.asarray(binary_erosion(span.max(axis=-1) <= _CALM))


def _score(encoded: Floats, mine: NDArray[np.bool_], shape: tuple[int, int]) -> float:
    """Tell how like a grey card something flat is; 0 if it cannot be one."""
    area = mine.sum() / (shape[0] * shape[1])
    filled = float(mine.mean())
    light = np.maximum((np.median(encoded, axis=0) / 255) ** 2.2, 1e-4)
    colour = float(np.std(np.log(light)))
    if not (_LEAST_AREA <= area <= _MOST_AREA and _LIGHT[0] <= light.mean() <= _LIGHT[1]):
        return 0.0
    if filled < _FILLED or colour > _GREYEST:
        return 0.0
    return float(filled * np.exp(-((colour / 0.2) ** 2)) * area**0.25)


def _inner(rows: slice, columns: slice, step: int, photo: Photo) -> Rect:
    """Give the inner part of a box of cells, in pixels."""
    top, bottom = rows.start * step, rows.stop * step
    left, right = columns.start * step, columns.stop * step
    width, height = max(4, int((right - left) * _INNER)), max(4, int((bottom - top) * _INNER))
    x = min((left + right - width) // 2, photo.width - width)
    y = min((top + bottom - height) // 2, photo.height - height)
    return Rect(int(x), int(y), width, height)
