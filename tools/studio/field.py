"""The picture plane: where its samples lie, smooth noise over it, and soft edges."""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

__all__ = ["Field", "Frame", "along", "blurred", "layered_noise", "noise", "shrunk", "soft_step"]

Field = NDArray[np.floating[Any]]
LATTICE = 128


@dataclass(frozen=True, slots=True)
class Frame:
    """A picture plane measured in pixels of the full-size picture.

    Parameters
    ----------
    width, height
        Size in full-size pixels.
    pitch
        Distance between samples: 0.5 takes four samples a pixel, 2 makes a picture of half size.
    """

    width: int
    height: int
    pitch: float

    def places(self) -> tuple[Field, Field]:
        """Give the x and y of every sample, in full-size pixels, each (rows, columns)."""
        columns = (np.arange(round(self.width / self.pitch)) + 0.5) * self.pitch
        rows = (np.arange(round(self.height / self.pitch)) + 0.5) * self.pitch
        x, y = np.meshgrid(columns.astype(np.float32), rows.astype(np.float32))
        return x, y


def noise(x: Field, y: Field, seed: int) -> Field:
    """Give smooth noise of mean 0 within about -1 to 1, one hill to a unit of x and y.

    It hangs on a lattice of fixed numbers, so it is the same at every pitch.
    """
    lattice = np.random.default_rng(seed).uniform(-1.0, 1.0, (LATTICE, LATTICE)).astype(np.float32)
    column, row = np.floor(x), np.floor(y)
    across, down = _eased(x - column), _eased(y - row)
    i, j = row.astype(np.int32) % LATTICE, column.astype(np.int32) % LATTICE
    i_next, j_next = (i + 1) % LATTICE, (j + 1) % LATTICE
    upper = lattice[i, j] * (1 - across) + lattice[i, j_next] * across
    lower = lattice[i_next, j] * (1 - across) + lattice[i_next, j_next] * across
    mixed: Field = upper * (1 - down) + lower * down
    return mixed


def layered_noise(x: Field, y: Field, seed: int, layers: int = 3) -> Field:
    """Add noise of halving size and height, about -1 to 1."""
    total = np.zeros(np.broadcast(x, y).shape, dtype=np.float32)
    for layer in range(layers):
        finer = np.float32(2.0**layer)
        total += noise(x * finer + 17.3 * layer, y * finer + 9.1 * layer, seed + layer) / finer
    return total / np.float32(1.5)


def soft_step(value: Field, low: float, high: float) -> Field:
    """Rise smoothly from 0 at `low` to 1 at `high`; fall, if `low` is the greater."""
    eased: Field = _eased(np.clip((value - low) / (high - low), 0.0, 1.0))
    return eased


def blurred(mask: Field, pixels: float, pitch: float) -> Field:
    """Blur by a Gaussian of a standard deviation in full-size pixels."""
    soft: Field = ndimage.gaussian_filter(mask, pixels / pitch, mode="nearest", truncate=3.0)
    return soft


def along(grid: Field, extent: float, a: Field, b: Field) -> Field:
    """Read a square map that spans -extent to extent at places a (across) and b (down)."""
    scale = (grid.shape[0] - 1) / (2.0 * extent)
    where = np.stack([(b + extent) * scale, (a + extent) * scale])
    read: Field = ndimage.map_coordinates(grid, where, order=1, mode="nearest", prefilter=False)
    return read


def shrunk(picture: Field, times: int) -> Field:
    """Average blocks of times by times samples, over the first two axes."""
    rows, columns = picture.shape[0] // times, picture.shape[1] // times
    blocks = picture.reshape(rows, times, columns, times, *picture.shape[2:])
    small: Field = blocks.mean(axis=(1, 3), dtype=np.float32)
    return small


def _eased(part: Field) -> Field:
    curve: Field = part * part * (3 - 2 * part)
    return curve
