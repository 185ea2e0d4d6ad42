"""A board of flat patches, photographed: by a plain camera, or by one that wants to please."""

from dataclasses import dataclass
from io import BytesIO

import numpy as np
from numpy.typing import ArrayLike, NDArray
from PIL import Image
from scipy import ndimage

from studio.camera import XYZ_TO_SRGB, Camera, encode, expose, finish, gains, raw_response, vignette
from studio.field import Field
from studio.lights import GRID, Array
from studio.truth import lab_d65

__all__ = ["LOOKS", "Board", "Look", "Scene", "develop", "photograph"]

Rect = tuple[int, int, int, int]
PATCH, GAP, INSET = 28, 6, 6


@dataclass(frozen=True, slots=True)
class Look:
    """What a camera does to please, and how it stores.

    Parameters
    ----------
    contrast
        Strength of a contrast curve on the stored value.
    lift
        Strength of a curve that lightens the middle.
    vivid
        Factor on the distance from grey.
    local
        How far it evens out light and dark parts of the frame, 0-1.
    quality
        Of the JPEG; None to store without loss.
    """

    contrast: float = 0.0
    lift: float = 0.0
    vivid: float = 1.0
    local: float = 0.0
    quality: int | None = None


LOOKS = {
    "linear": Look(),
    "plain JPEG": Look(quality=92),
    "phone": Look(contrast=0.35, lift=0.18, vivid=1.12, local=0.06, quality=85),
}


@dataclass(frozen=True, slots=True)
class Scene:
    """How the light falls, and how it is taken.

    Parameters
    ----------
    power
        Spectral power of the light, shape (81,).
    other
        That of a second light, which comes from the right; None for none.
    across, down
        Natural logarithm of the light lost from left to right and from top to bottom.
    corner
        Part of the light the lens loses in the corners.
    balance
        How far the camera's white balance goes, 0-1.
    exposure
        What the camera brings a perfect white to, in its brightest channel.
    full_well
        Electrons at a raw value of one.
    seed
        Of the noise.
    """

    power: Array
    other: Array | None = None
    across: float = 0.0
    down: float = 0.0
    corner: float = 0.0
    balance: float = 0.7
    exposure: float = 0.85
    full_well: float = 20000.0
    seed: int = 1


@dataclass(frozen=True, slots=True)
class Board:
    """A picture of patches.

    Parameters
    ----------
    picture
        sRGB bytes, shape (rows, columns, 3).
    rects
        x, y, width and height of each patch, drawn in from its edges.
    lab
        True CIELAB of each under D65, 2 degrees, shape (n, 3).
    """

    picture: NDArray[np.uint8]
    rects: list[Rect]
    lab: Array


def photograph(
    cam: Camera, scene: Scene, reflectances: Array, look: Look, columns: int = 12
) -> Board:
    """Lay patches on a grey board, in the order given, row by row, and photograph them."""
    which, rects = _layout(len(reflectances), columns)
    every = np.vstack([reflectances, np.full(reflectances.shape[1], 0.1)])
    raw: Field = raw_response(cam, scene.power, every)[which]
    height, width = which.shape
    if scene.other is not None:
        mix = np.linspace(0.0, 1.0, width)[None, :, None]
        raw = raw * (1 - mix) + raw_response(cam, scene.other, every)[which] * mix
    picture = develop(cam, scene, raw * _fall(scene, height, width)[..., None], look)
    return Board(picture, rects, np.stack([lab_d65(r) for r in reflectances]))


def develop(cam: Camera, scene: Scene, raw: Field, look: Look) -> NDArray[np.uint8]:
    """Expose noiseless raw values, balance, please and store them as sRGB bytes."""
    balance = gains(cam, scene.power, scene.balance)
    white = finish(cam, raw_response(cam, scene.power, np.ones(GRID.size)), balance)
    exposure = scene.exposure / float(np.max(white))
    linear = finish(cam, expose(raw, exposure, scene.full_well, scene.seed), balance)
    return _stored(_pleased(linear, look), look)


def _fall(scene: Scene, height: int, width: int) -> Array:
    y, x = np.mgrid[:height, :width].astype(np.float64)
    left = np.exp(-scene.across * (x / width - 0.5) - scene.down * (y / height - 0.5))
    fall: Array = left * vignette(height, width, scene.corner)
    return fall


def _pleased(linear: ArrayLike, look: Look) -> Field:
    """Even out, make vivid, lift: what comes before the contrast curve."""
    light = np.maximum(np.asarray(linear, dtype=np.float64), 0.0)
    luma = light @ np.linalg.inv(XYZ_TO_SRGB)[1]
    if look.local:
        wide = ndimage.gaussian_filter(luma, max(luma.shape) / 10, mode="nearest")
        light = light * ((wide / wide.mean()) ** -look.local)[..., None]
        luma = light @ np.linalg.inv(XYZ_TO_SRGB)[1]
    pleased: Field = np.maximum(luma[..., None] + look.vivid * (light - luma[..., None]), 0.0)
    return pleased


def _stored(light: Field, look: Look) -> NDArray[np.uint8]:
    held = np.clip(light, 0.0, 1.0)
    if look.lift:
        stored = held ** (1 / 2.4)
        held = (stored + look.lift * stored * (1 - stored)) ** 2.4
    picture = encode(held, look.contrast)
    if look.quality is None:
        return picture
    held_file = BytesIO()
    Image.fromarray(picture).save(held_file, "JPEG", quality=look.quality)
    return np.asarray(Image.open(held_file), dtype=np.uint8)


def _layout(count: int, columns: int) -> tuple[NDArray[np.intp], list[Rect]]:
    """Lay out the board: which surface each pixel shows, `count` for the board itself."""
    step = PATCH + GAP
    rows = -(-count // columns)
    which = np.full((rows * step + GAP, columns * step + GAP), count, dtype=np.intp)
    rects: list[Rect] = []
    for index in range(count):
        x, y = GAP + index % columns * step, GAP + index // columns * step
        which[y : y + PATCH, x : x + PATCH] = index
        rects.append((x + INSET, y + INSET, PATCH - 2 * INSET, PATCH - 2 * INSET))
    return which, rects
