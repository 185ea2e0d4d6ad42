"""A made-up photo of a clay-red and ink-blue cloth beside a grey card."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from PIL import Image

from swatchwright.colour.convert import lab_to_linear_srgb, srgb_encode
from swatchwright.values import Lab, Rect

if TYPE_CHECKING:
    from pathlib import Path

RED = Lab(45, 33, 24)
BLUE = Lab(28, 3, -24)
GREY = Rect(10, 10, 60, 60)
CLOTH = Rect(90, 20, 200, 160)
CARD = 0.18

WARM = (1.25, 1.0, 0.6)
"""Light of a lamp that the camera made up for in part only, as gains on linear sRGB."""


def scene(path: Path, light: tuple[float, float, float] = WARM, *, with_card: bool = True) -> Path:
    """Paint the photo: two thirds of the cloth red, the rest blue; fine noise all over."""
    linear = np.full((200, 300, 3), 0.45)
    linear[GREY.y : GREY.bottom, GREY.x : GREY.right] = CARD if with_card else 0.45
    stripes = np.arange(CLOTH.width) % 60 < 40
    cloth = np.where(stripes[:, None], *(lab_to_linear_srgb(c.triple) for c in (RED, BLUE)))
    linear[CLOTH.y : CLOTH.bottom, CLOTH.x : CLOTH.right] = cloth
    noise = np.random.default_rng(12).normal(1, 0.02, linear.shape[:2])
    encoded = srgb_encode(linear * noise[..., None] * light)
    Image.fromarray(np.rint(255 * encoded).astype(np.uint8)).save(path)
    return path
