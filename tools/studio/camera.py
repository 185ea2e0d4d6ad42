"""A camera in arithmetic: from light and reflectance to the picture it would store.

The sensitivities are those measured by a national laboratory, as shipped with colour-science. The
colour matrix is fitted as makers do it: in daylight, by least squares, on surfaces of many kinds.
"""

from dataclasses import dataclass
from functools import cache

import colour
import numpy as np
from colour.quality.cfi2017 import load_TCS_CIE2017
from numpy.typing import ArrayLike, NDArray

from studio.field import Field
from studio.lights import GRID, Array, light, on_grid

__all__ = ["Camera", "camera", "encode", "expose", "finish", "gains", "raw_response", "vignette"]

XYZ_TO_SRGB = np.array(
    [[3.2406, -1.5372, -0.4986], [-0.9689, 1.8758, 0.0415], [0.0557, -0.2040, 1.0570]]
)  # IEC 61966-2-1:1999


@dataclass(frozen=True, slots=True)
class Camera:
    """One camera.

    Parameters
    ----------
    sensitivity
        Response per channel on the grid, shape (81, 3), green summing to one.
    matrix
        From balanced raw to linear sRGB, shape (3, 3), each row summing to one.
    """

    sensitivity: Array
    matrix: Array


@cache
def camera(position: int) -> Camera:
    """Give the camera at a position (0 or 1) of the table in colour-science 0.4.7."""
    table = list(colour.MSDS_CAMERA_SENSITIVITIES.values())[position]
    # The second table stops at 400 and 680 nm, where its camera has an infra-red filter.
    known = np.asarray(table.wavelengths, dtype=np.float64)
    channels = np.asarray(table.values, dtype=np.float64).T
    sensitivity = np.stack([np.interp(GRID, known, c, left=0.0, right=0.0) for c in channels], -1)
    sensitivity /= sensitivity[:, 1].sum()
    return Camera(sensitivity, _fitted_matrix(sensitivity))


def raw_response(cam: Camera, power: Array, reflectance: ArrayLike) -> Array:
    """Integrate light times reflectance times sensitivity over 380-780 nm by 5.

    Parameters
    ----------
    cam
        The camera.
    power
        Spectral power of the light, shape (81,).
    reflectance
        Reflectance 0-1, shape (..., 81).

    Returns
    -------
    Array
        Raw values, shape (..., 3); a perfect white gives one in green.
    """
    seen = power[:, None] * cam.sensitivity
    response: Array = np.asarray(reflectance, dtype=np.float64) @ seen / seen[:, 1].sum()
    return response


def gains(cam: Camera, power: Array, strength: float = 1.0, preset: str = "D65") -> Array:
    """Give the white balance the camera sets, per channel.

    Parameters
    ----------
    cam
        The camera.
    power
        The light it finds, shape (81,).
    strength
        How far its automatic goes: 0 is the preset, 1 makes a white quite white. Between them the
        gains move evenly in their logarithm.
    preset
        Name of the light of the preset.

    Returns
    -------
    Array
        Factors for red, green and blue, shape (3,); green stays one.
    """
    white = np.ones(GRID.size)
    full = 1.0 / raw_response(cam, power, white)
    fixed = 1.0 / raw_response(cam, light(preset), white)
    return np.asarray(full**strength * fixed ** (1.0 - strength), dtype=np.float64)


def finish(cam: Camera, raw: Field, balance: Array) -> Field:
    """Balance raw values and bring them to linear sRGB, shape (..., 3) in and out."""
    linear: Field = raw @ (balance[:, None] * cam.matrix.T).astype(raw.dtype)
    return linear


def expose(raw: Field, exposure: float, full_well: float, seed: int) -> Field:
    """Expose, adding shot and read noise.

    Parameters
    ----------
    raw
        Noiseless raw values, shape (..., 3), one at a perfect white.
    exposure
        Factor on them.
    full_well
        Electrons held at a raw value of one; the read noise is 4 of them.
    seed
        Of the noise: the same seed gives the same picture.

    Returns
    -------
    Array
        Raw values held at most at one, where the sensor is full.
    """
    draw = np.random.default_rng(seed).standard_normal(raw.shape, dtype=np.float32)
    clean = np.maximum(raw * exposure, 0.0)
    spread = np.sqrt(clean / full_well + (4.0 / full_well) ** 2)
    held: Field = np.minimum(clean + draw * spread, 1.0)
    return held


def vignette(height: int, width: int, corner: float) -> Array:
    """Give the falling off towards the corners, shape (height, width): one at the centre.

    Parameters
    ----------
    height, width
        Size of the picture in pixels.
    corner
        Part of the light lost in the corners, 0-1.
    """
    y, x = np.mgrid[:height, :width].astype(np.float64)
    away = ((x + 0.5) / width - 0.5) ** 2 + ((y + 0.5) / height - 0.5) ** 2
    left: Array = 1.0 - corner * 2.0 * away
    return left


def encode(linear: Field, tone: float = 0.0) -> NDArray[np.uint8]:
    """Store linear sRGB in 8 bit (IEC 61966-2-1:1999), after an optional tone curve.

    Parameters
    ----------
    linear
        Linear sRGB, shape (..., 3); what is outside 0-1 is cut off.
    tone
        Strength of a contrast curve on the stored value, 0 for none; 0.3 is a lively camera.
    """
    held = np.clip(linear, 0.0, 1.0)
    stored = np.where(held <= 0.0031308, 12.92 * held, 1.055 * held ** (1 / 2.4) - 0.055)
    # A cubic through 0, one half and 1, steeper in the middle.
    curved = stored + tone * stored * (1.0 - stored) * (2.0 * stored - 1.0)
    return np.asarray(np.rint(curved * 255.0), dtype=np.uint8)


def _fitted_matrix(sensitivity: Array) -> Array:
    """Fit raw to linear sRGB on the 99 colour samples of CIE 224:2017 under D65, white kept."""
    samples = on_grid(load_TCS_CIE2017(colour.SpectralShape(380, 780, 5))).T
    power = light("D65")
    unit = raw_response(Camera(sensitivity, np.eye(3)), power, np.ones(GRID.size))
    seen = raw_response(Camera(sensitivity, np.eye(3)), power, samples) / unit
    wanted = _true_srgb(power, samples)
    # Rows sum to one: the third weight is what the first two leave, so white stays white.
    solved = np.linalg.lstsq(seen[:, :2] - seen[:, 2:], wanted - seen[:, 2:], rcond=None)[0].T
    return np.column_stack([solved, 1.0 - solved.sum(axis=1)])


def _true_srgb(power: Array, reflectance: Array) -> Array:
    observer = on_grid(colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"])
    weights = power[:, None] * observer
    srgb = (reflectance @ weights / weights[:, 1].sum()) @ XYZ_TO_SRGB.T
    white = (weights.sum(axis=0) / weights[:, 1].sum()) @ XYZ_TO_SRGB.T
    return np.asarray(srgb / white, dtype=np.float64)
