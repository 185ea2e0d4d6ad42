"""Show a small picture in another light, as fast as the hand moves."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import srgb_decode, srgb_encode

__all__ = ["relit"]

Bytes = NDArray[np.uint8]

_LIGHT = srgb_decode(np.arange(256) / 255)


def relit(pixels: Bytes, gains: tuple[float, float, float]) -> Bytes:
    """Multiply the light of a picture.

    Parameters
    ----------
    pixels
        Shape (rows, columns, 3): sRGB bytes of the picture as it is.
    gains
        Factors of linear red, green and blue.

    Returns
    -------
    The same shape. What was at the top of a channel stays only as bright as its gain makes it: the
    picture made from the photo itself is exact, and takes longer.
    """
    shown = np.empty_like(pixels)
    for channel, gain in enumerate(gains):
        encoded = srgb_encode(np.clip(_LIGHT * gain, 0.0, 1.0))
        curve = np.rint(np.asarray(encoded) * 255).astype(np.uint8)
        shown[..., channel] = curve[pixels[..., channel]]
    return shown
