"""Ink that can be read on a colour, in colour and in a black and white print."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from swatchwright.sheet.ink import LEAST_CONTRAST, contrast, grey_of, hex_text, ink_on, rgb_of
from swatchwright.values import Lab

BYTES = st.integers(0, 255)
WHITE = (1.0, 1.0, 1.0)


@given(r=BYTES, g=BYTES, b=BYTES)
def test_ink_is_readable_on_every_colour(r: int, g: int, b: int) -> None:
    """On every 8-bit colour the ink, or the plate behind it, gives the least contrast or more."""
    rgb = (r / 255, g / 255, b / 255)
    ink, plated = ink_on(rgb)
    for behind in (WHITE,) if plated else (rgb, grey_of(rgb)):
        assert contrast(ink, behind) >= LEAST_CONTRAST


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # From memory of published tables of WCAG contrast, to two decimals.
        ((0, 0, 0), (255, 255, 255), 21.0),
        ((255, 255, 255), (255, 255, 255), 1.0),
        ((255, 0, 0), (255, 255, 255), 4.0),
        ((0, 0, 255), (255, 255, 255), 8.59),
        ((118, 118, 118), (255, 255, 255), 4.54),
        ((119, 119, 119), (255, 255, 255), 4.48),
    ],
)
def test_contrast_is_that_of_the_guidelines(
    one: tuple[int, ...], other: tuple[int, ...], ratio: float
) -> None:
    """Contrast agrees with values in common use, in either order."""
    a, b = ([v / 255 for v in rgb] for rgb in (one, other))
    assert contrast(a, b) == pytest.approx(ratio, abs=0.006)
    assert contrast(b, a) == contrast(a, b)


@given(r=BYTES, g=BYTES, b=BYTES)
def test_grey_is_that_of_a_picture_program(r: int, g: int, b: int) -> None:
    """A colour turns to the same grey as when Pillow makes a picture black and white."""
    grey = Image.new("RGB", (1, 1), (r, g, b)).convert("L").tobytes()[0]
    assert grey_of((r / 255, g / 255, b / 255))[0] * 255 == pytest.approx(grey, abs=1)


def test_a_vivid_red_gets_a_plate() -> None:
    """On pure red, light in colour and dark in grey, neither ink reads in both."""
    assert ink_on((1.0, 0.0, 0.0))[1]
    assert not ink_on((0.67, 0.33, 0.28))[1]


def test_a_colour_that_cannot_be_shown_says_about() -> None:
    """A colour outside sRGB is told with “about”, one inside without."""
    assert hex_text(Lab(46, 34, 24)) == "#aa5447"
    assert hex_text(Lab(50, -90, 0)).startswith("about #")
    assert rgb_of(Lab(0, 0, 0)) == (0, 0, 0)
