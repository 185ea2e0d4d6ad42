"""How the light falls off over a photo, by the surfaces that are seen at several places of it.

A table, a floor or a cloth has one colour all over, so that where it is seen darker less light
falls on it. The photo is cut into some hundred tiles; two of one tint, not too unlike in lightness,
are taken for one surface, and the smooth light is sought that explains most of such pairs best: by
the least sum of departures, not of their squares, as grain, folds and other things of the same tint
depart far and must not count for it. What lies in the box of the cloth has no more say than the
rest, so that another box tells the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo
    from swatchwright.values import Rect

__all__ = ["Fall", "fall_of"]

Floats = NDArray[np.float64]

_TILES = 32
_PIXELS = 20
_DARKEST = 1e-4
_ONE_TINT, _ONE_SURFACE = 0.08, 0.7
_NEAREST, _FURTHEST = 1 / 8, 1 / 2
_FEWEST = 100
_ROUNDS = 20
_FLOOR = 0.02
_WITHIN, _FEWEST_NEAR = 0.2, 6


@dataclass(frozen=True, slots=True, eq=False)
class Fall:
    """The light over a photo, up to a factor.

    Parameters
    ----------
    terms
        By how much the logarithm of the light rises with x, y, x2, y2 and xy, each in lengths of
        the photo's longer side.
    seen
        Middles of the tiles that it was found by, in the same measure, shape (n, 2).
    side
        The longer side of the photo in pixels.
    """

    terms: Floats
    seen: Floats
    side: int

    def between(self, one: tuple[float, float], other: tuple[float, float]) -> float | None:
        """Give the logarithm of the light at one pixel over that at another.

        None where too little is seen about either of them to tell.
        """
        places = np.array([one, other]) / self.side
        if not all(self._told_at(place) for place in places):
            return None
        here, there = _terms(places[:, 0], places[:, 1])
        return float((here - there) @ self.terms)

    def across(self, rect: Rect) -> float | None:
        """Give the logarithm of the most over the least light on a part; None if not told."""
        middle = (rect.x + rect.width / 2, rect.y + rect.height / 2)
        # The corners of a box are often no longer cloth; from side to side it is told surely.
        steps = np.array([(0.0, 0.5), (1.0, 0.5), (0.5, 0.0), (0.5, 1.0), (0.5, 0.5)])
        places = np.array([rect.x, rect.y]) + steps * np.array([rect.width, rect.height])
        if not self._told_at(np.array(middle) / self.side):
            return None
        light = _terms(*(places / self.side).T) @ self.terms
        return float(np.ptp(light))

    def _told_at(self, place: Floats) -> bool:
        near = np.hypot(*(self.seen - place).T) < _WITHIN
        return int(near.sum()) >= _FEWEST_NEAR


def fall_of(photo: Photo) -> Fall | None:
    """Find how the light falls off over a photo; None where too little in it is alike."""
    side = max(photo.width, photo.height)
    if min(photo.width, photo.height) < 2 * _TILES:
        return None
    tiles, middles = _tiles(photo.linear(None, max(1, side // (_TILES * _PIXELS))))
    pairs = np.concatenate([_along(tiles.shape[:2], axis) for axis in (0, 1)])
    flat, places = tiles.reshape(-1, 3), middles.reshape(-1, 2)
    one, other = pairs.T
    apart = flat[other] - flat[one]
    tints = np.abs(apart[:, 1:]).max(axis=1)
    same = (tints < _ONE_TINT) & (np.abs(apart[:, 0]) < _ONE_SURFACE)
    if int(same.sum()) < _FEWEST:
        return None
    one, other, rise = one[same], other[same], apart[same, 0]
    terms = _terms(places[other, 0], places[other, 1]) - _terms(places[one, 0], places[one, 1])
    seen = places[np.unique(np.concatenate([one, other]))]
    return Fall(_least_departures(terms, rise), seen, side)


def _tiles(light: NDArray[np.floating]) -> tuple[Floats, Floats]:
    """Give each tile's log of green and tints, and its middle in lengths of the longer side."""
    rows, columns = light.shape[:2]
    size = max(1, max(rows, columns) // _TILES)
    down, across = rows // size, columns // size
    log = np.log(np.maximum(light[: down * size, : across * size].astype(np.float64), _DARKEST))
    log = np.stack([log[..., 1], log[..., 0] - log[..., 1], log[..., 2] - log[..., 1]], axis=-1)
    cut = log.reshape(down, size, across, size, 3).swapaxes(1, 2)
    middles = np.median(cut.reshape(down, across, size * size, 3), axis=2)
    y, x = np.meshgrid(np.arange(down) + 0.5, np.arange(across) + 0.5, indexing="ij")
    return middles, np.stack([x, y], axis=-1) * size / max(rows, columns)


def _along(shape: tuple[int, int], axis: int) -> NDArray[np.intp]:
    """List pairs of tiles of one row, or one column, neither next to one another nor far apart."""
    index = np.arange(shape[0] * shape[1]).reshape(shape)
    lines = index if axis == 1 else index.T
    count = lines.shape[1]
    one, other = np.triu_indices(count, 1)
    apart = other - one
    fit = (apart >= max(1, count * _NEAREST)) & (apart <= max(2, count * _FURTHEST))
    return np.stack([lines[:, one[fit]].ravel(), lines[:, other[fit]].ravel()], axis=1)


def _terms(x: Floats, y: Floats) -> Floats:
    return np.stack([x, y, x * x, y * y, x * y], axis=-1)


def _least_departures(terms: Floats, rise: Floats) -> Floats:
    """Fit by the least sum of departures: least squares, weighed anew by what departs."""
    weight: Floats = np.ones(len(rise))
    fit: Floats = np.zeros(terms.shape[1])
    for _ in range(_ROUNDS):
        root = np.sqrt(weight)
        found, *_ = np.linalg.lstsq(terms * root[:, None], rise * root, rcond=None)
        fit = np.asarray(found, dtype=np.float64)
        weight = 1 / np.maximum(_FLOOR, np.abs(rise - terms @ fit))
    return fit
