"""A stuffed cushion seen from above: its outline, its height and how the cloth lies on it."""

from dataclasses import dataclass

import numpy as np

from studio.field import Field, along, noise, soft_step

__all__ = ["Cushion", "Placed", "plump", "read"]

EXTENT = 1.25
CELLS = 601


@dataclass(frozen=True, slots=True)
class Cushion:
    """Maps over the square -1.25 to 1.25, each (601, 601), lengths in half-sides.

    Parameters
    ----------
    outline
        Below one inside, one at the seam.
    height
        Height over the seam.
    slope_a, slope_b
        Slope of the height.
    cloth_a, cloth_b
        Length of cloth from the middle lines.
    """

    outline: Field
    height: Field
    slope_a: Field
    slope_b: Field
    cloth_a: Field
    cloth_b: Field


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a cushion lies in the picture: centre and half-side in pixels, turn in radians."""

    x: float
    y: float
    half: float
    turn: float

    def local(self, x: Field, y: Field) -> tuple[Field, Field]:
        """Bring places of the picture to half-sides of the cushion."""
        cos, sin = np.float32(np.cos(self.turn)), np.float32(np.sin(self.turn))
        right, down = (x - self.x) / self.half, (y - self.y) / self.half
        return right * cos + down * sin, down * cos - right * sin


def plump(seed: int) -> Cushion:
    """Stuff a cushion; the seed settles its folds."""
    line = np.linspace(-EXTENT, EXTENT, CELLS, dtype=np.float32)
    a, b = np.meshgrid(line, line)
    waist = 0.075
    far_a = np.abs(a) + waist * np.clip(1 - b * b, 0, 1) * (1 + 0.25 * noise(b * 1.3, 0 * a, seed))
    far_b = np.abs(b) + waist * np.clip(1 - a * a, 0, 1) * (1 + 0.25 * noise(a * 1.3, 0 * b, seed))
    outline = (far_a**18 + far_b**18) ** (1 / 18)
    full = np.clip(1 - far_a**2, 0, 1) * np.clip(1 - far_b**2, 0, 1)
    height = 0.58 * full**0.66 + _folds(a, b, outline, seed) * soft_step(full, 0.0, 0.05)
    slope_b, slope_a = np.gradient(height, line, line)
    slope_a, slope_b = np.clip(slope_a, -2.2, 2.2), np.clip(slope_b, -2.2, 2.2)
    return Cushion(
        outline.astype(np.float32),
        height.astype(np.float32),
        slope_a.astype(np.float32),
        slope_b.astype(np.float32),
        _run(slope_a, line, 1),
        _run(slope_b, line, 0),
    )


def _folds(a: Field, b: Field, outline: Field, seed: int) -> Field:
    """Give the height of puckers at the seam, of pulls from the corners and of soft dents."""
    inside = np.clip(1 - outline, 0, 1)
    edge = np.where(np.abs(a) > np.abs(b), b + 3 * np.sign(a), a + 7 * np.sign(b))
    pucker = 0.016 * noise(edge * 13, 0 * edge, seed + 1) * np.exp(-inside / 0.13)
    pulls = np.zeros_like(a)
    for corner_a in (-1, 1):
        for corner_b in (-1, 1):
            p, q = corner_a * 1.02 - a, corner_b * 1.02 - b
            reach = np.hypot(p, q)
            turn = np.arctan2(q * corner_b, p * corner_a)
            wave = noise(turn * 5.5 + 3 * corner_a, 0 * turn + corner_b, seed + 2)
            pulls += 0.045 * wave * np.exp(-(((reach - 0.34) / 0.20) ** 2))
    dents = 0.030 * noise(a * 1.5 + 5, b * 1.5 + 5, seed + 3)
    folds: Field = (pucker + pulls + dents).astype(np.float32)
    return folds


def _run(slope: Field, line: Field, axis: int) -> Field:
    """Add up the length of cloth along an axis, nought on the middle line."""
    length = np.cumsum(np.sqrt(1 + 0.8 * slope**2), axis=axis) * (line[1] - line[0])
    middle = np.take(length, [CELLS // 2], axis=axis)
    from_middle: Field = (length - middle).astype(np.float32)
    return from_middle


def read(cushion_map: Field, a: Field, b: Field) -> Field:
    """Read one of a cushion's maps at local places."""
    return along(cushion_map, EXTENT, a, b)
