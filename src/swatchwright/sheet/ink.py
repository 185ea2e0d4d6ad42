"""Colours as they are printed, and the ink that can be read on them.

References
----------
Contrast: Web Content Accessibility Guidelines 2.2, relative luminance and contrast ratio [WCAG22].
A black and white print: the luma of [BT601], as picture programs and printers turn colour to grey.
"""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.colour.convert import in_srgb, lab_to_hex, srgb_decode
from swatchwright.language import say
from swatchwright.values import Lab

__all__ = ["LEAST_CONTRAST", "RGB", "contrast", "grey_of", "hex_text", "ink_on", "rgb_of"]

RGB = tuple[float, float, float]
"""sRGB, each 0-1."""

LEAST_CONTRAST = 4.5
"""Of text against what is behind it."""

_BLACK, _WHITE = (0.0, 0.0, 0.0), (1.0, 1.0, 1.0)
_LUMINANCE = (0.2126, 0.7152, 0.0722)
_LUMA = (0.299, 0.587, 0.114)


def rgb_of(lab: Lab) -> RGB:
    """Give the nearest 8-bit sRGB colour."""
    digits = lab_to_hex(lab)[1:]
    r, g, b = (int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4))
    return r, g, b


def hex_text(lab: Lab) -> str:
    """Give it as text, with “about” where sRGB cannot show the colour."""
    return lab_to_hex(lab) if in_srgb(lab) else say("about {colour}", colour=lab_to_hex(lab))


def grey_of(rgb: Sequence[float]) -> RGB:
    """Give what is left of a colour in a black and white print."""
    luma = sum(share * value for share, value in zip(_LUMA, rgb, strict=True))
    return luma, luma, luma


def contrast(one: Sequence[float], other: Sequence[float]) -> float:
    """Give the contrast ratio of two sRGB colours, 1 to 21."""
    light = sorted(
        sum(share * float(v) for share, v in zip(_LUMINANCE, srgb_decode(rgb), strict=True))
        for rgb in (one, other)
    )
    return (light[1] + 0.05) / (light[0] + 0.05)


def ink_on(rgb: RGB) -> tuple[RGB, bool]:
    """Give black or white, whichever reads better, in colour and in grey, on a colour.

    And whether it needs a plate of the other behind it: some vivid colours are as dark in grey as
    they are light in colour, so that neither reads in both.
    """
    found = {ink: min(contrast(ink, rgb), contrast(ink, grey_of(rgb))) for ink in (_BLACK, _WHITE)}
    best = max(found, key=lambda ink: found[ink])
    return (best, False) if found[best] >= LEAST_CONTRAST else (_BLACK, True)
