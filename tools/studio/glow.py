"""How light reaches a scene: its direction, how it falls off, and the shadows it leaves."""

from dataclasses import dataclass

import numpy as np
from scipy import ndimage

from studio.field import Field, Frame, blurred

__all__ = ["Glow", "cast", "even_light", "facing"]

COARSE = 4.0
SLICES = 9


@dataclass(frozen=True, slots=True)
class Glow:
    """One source and the room that scatters it.

    Parameters
    ----------
    towards
        Direction to the source: right, down, up.
    room
        Share of the light on a level surface that comes from all round, 0-1.
    softness
        Blur of a shadow per pixel of height.
    fall
        Part of the light lost from one corner of the frame to the other, along `fall_along`.
    fall_along
        Right and down, in which it falls.
    pool
        Radius in pixels at which a near lamp has lost two thirds; infinite for a window.
    pool_at
        Where under the lamp is, in pixels.
    """

    towards: tuple[float, float, float]
    room: float
    softness: float
    fall: float
    fall_along: tuple[float, float]
    pool: float = float("inf")
    pool_at: tuple[float, float] = (0.0, 0.0)


def even_light(frame: Frame, glow: Glow) -> Field:
    """Give the light on a level surface with nothing about, shape of the frame, one at most."""
    x, y = frame.places()
    right, down = glow.fall_along
    # Nought in the corner that is best lit, one in the one across from it.
    start = frame.width * min(right, 0.0) + frame.height * min(down, 0.0)
    across = (x * right + y * down - start) / (frame.width * abs(right) + frame.height * abs(down))
    near = (x - glow.pool_at[0]) ** 2 + (y - glow.pool_at[1]) ** 2
    field: Field = (1 - glow.fall * across) / (1 + near / glow.pool**2) ** 1.5
    return field.astype(np.float32)


def facing(glow: Glow, slope_x: Field, slope_y: Field) -> Field:
    """Give the light on a sloping surface, one where it is level.

    Parameters
    ----------
    glow
        The light.
    slope_x, slope_y
        Rise of the surface to the right and down.
    """
    length = float(np.linalg.norm(glow.towards))
    right, down, up = (part / length for part in glow.towards)
    normal = np.sqrt(1 + slope_x**2 + slope_y**2)
    cosine = (up - slope_x * right - slope_y * down) / normal
    wrap = 0.35  # a window or a shade is wide: it still reaches a little round the edge
    direct = np.maximum(cosine + wrap, 0) / (up + wrap)
    sky = 0.5 + 0.5 / normal
    lit: Field = (1 - glow.room) * direct + glow.room * sky
    return lit


def cast(frame: Frame, glow: Glow, height: Field) -> Field:
    """Give the light left on the bench beside things standing on it.

    Parameters
    ----------
    frame
        The picture plane.
    glow
        The light.
    height
        Height of things over the bench in pixels, sampled every 4 pixels.

    Returns
    -------
    Field
        Share of the light left, 0-1, shape of the frame.
    """
    shade = np.zeros_like(height)
    for level in np.linspace(1.0, max(float(height.max()) * 0.92, 1.5), SLICES):
        stand = (height > level).astype(np.float32)
        moved = [-level * glow.towards[axis] / glow.towards[2] / COARSE for axis in (1, 0)]
        fallen = ndimage.shift(stand, moved, order=1, mode="nearest")
        shade = np.maximum(shade, blurred(fallen, 2.0 + glow.softness * level, COARSE))
    solid = (height > 1.0).astype(np.float32)
    tall = float(height.max())
    near = 0.75 * blurred(solid, 3 + 0.30 * tall, COARSE) + 0.25 * blurred(solid, 3.0, COARSE)
    left = (1 - glow.room) * (1 - shade) + glow.room * (1 - 0.85 * near)
    return _spread(frame, left)


def _spread(frame: Frame, coarse: Field) -> Field:
    x, y = frame.places()
    where = np.stack([y / COARSE - 0.5, x / COARSE - 0.5])
    fine: Field = ndimage.map_coordinates(coarse, where, order=1, mode="nearest", prefilter=False)
    return fine
