"""A length of three-strand rope lying on the bench."""

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.spatial import cKDTree

from studio.field import Field, noise, soft_step
from studio.glow import Glow, facing

__all__ = ["Rope", "lay_rope"]


@dataclass(frozen=True, slots=True)
class Rope:
    """A rope through points.

    Parameters
    ----------
    points
        x and y of points on it, in pixels.
    radius
        Half its thickness, in pixels.
    """

    points: tuple[tuple[float, float], ...]
    radius: float

    def height(self, x: Field, y: Field) -> Field:
        """Give how high it stands over the bench, in pixels."""
        across, _, _ = self.frame(x, y)
        height: Field = 2.0 * self.radius * np.sqrt(np.clip(1 - across**2, 0, 1))
        return height

    def frame(self, x: Field, y: Field) -> tuple[Field, Field, Field]:
        """Give the place across (-1 to 1 on it), along in pixels, and its direction in radians."""
        knots = np.arange(len(self.points), dtype=np.float64)
        spline = CubicSpline(knots, np.array(self.points))
        fine = np.linspace(0, knots[-1], 1500)
        line, heading = spline(fine), spline(fine, 1)
        run = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
        turn = np.arctan2(heading[:, 1], heading[:, 0])
        _, nearest = cKDTree(line).query(np.stack([x.ravel(), y.ravel()], -1))
        index = nearest.reshape(x.shape)
        off_x, off_y = x - line[index, 0], y - line[index, 1]
        side = off_y * np.cos(turn[index]) - off_x * np.sin(turn[index])
        ahead = run[index] + off_x * np.cos(turn[index]) + off_y * np.sin(turn[index])
        return side / self.radius, ahead, turn[index]


def lay_rope(canvas: Field, colour: Field, rope: Rope, glow: Glow, *, x: Field, y: Field) -> None:
    """Lay a rope on the picture, in place.

    Parameters
    ----------
    canvas
        The picture, shape (rows, columns, 3).
    colour
        Its colour, shape (3,).
    rope
        Where it lies.
    glow
        The light.
    x, y
        Places of the samples, in pixels.
    """
    reach = rope.radius + 2
    low, high = np.min(rope.points, axis=0) - 60, np.max(rope.points, axis=0) + 60
    columns = (x[0] > low[0] - reach) & (x[0] < high[0] + reach)
    rows = (y[:, 0] > low[1] - reach) & (y[:, 0] < high[1] + reach)
    box = np.ix_(rows, columns)
    across, ahead, turn = rope.frame(x[box], y[box])
    lit = _strands(across, ahead, turn, glow)
    cover = soft_step(np.abs(across), 1.05, 0.95)[..., None]
    canvas[box] = canvas[box] * (1 - cover) + colour * lit[..., None] * cover


def _strands(across: Field, ahead: Field, turn: Field, glow: Glow) -> Field:
    """Give the light on the strands: round, twisted, with fibres along them."""
    held = np.clip(across, -0.999, 0.999)
    around = np.arcsin(held)
    phase = ahead / 19.0 + around / np.pi * 1.1
    strand = 2 * (phase - np.floor(phase)) - 1
    rise = np.sqrt(1 - held**2)
    fall_side = -np.clip(held / np.maximum(rise, 0.25), -2.2, 2.2)
    fall_ahead = -0.9 * strand
    cos, sin = np.cos(turn), np.sin(turn)
    slope_x = fall_ahead * cos - fall_side * sin
    slope_y = fall_ahead * sin + fall_side * cos
    groove = 1 - 0.6 * np.abs(strand) ** 5
    fibre = 1 + 0.10 * noise(phase * 5.5, ahead / 26 - around, 111)
    lit: Field = facing(glow, slope_x, slope_y) * groove * fibre
    return lit
