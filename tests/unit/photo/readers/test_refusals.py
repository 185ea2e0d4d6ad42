"""What is refused by the header of a picture, in words."""

from __future__ import annotations

import pytest

from swatchwright.errors import MendableError
from swatchwright.photo.readers.refusals import (
    MOST_PIXELS,
    SMALLEST_SIDE,
    refuse_mode,
    refuse_size,
    several_pictures,
)


@pytest.mark.parametrize(
    ("mode", "word"),
    [
        ("CMYK", "inks"),
        ("LAB", "CIELAB"),
        *((mode, "black-and-white") for mode in ("1", "L", "LA", "I;16B", "F", "L;16", "La;16")),
    ],
)
def test_modes_without_red_green_and_blue_are_refused(mode: str, word: str) -> None:
    """Each in its own words."""
    with pytest.raises(MendableError, match=word):
        refuse_mode(mode, "x")


@pytest.mark.parametrize("mode", ["RGB", "RGBA", "P", "PA", "YCbCr", "RGB;16", "RGBX"])
def test_modes_of_colour_are_not(mode: str) -> None:
    """Whatever holds colour passes."""
    refuse_mode(mode, "x")


def test_the_bounds_of_size_are_exact() -> None:
    """What is at a bound passes, what is beyond does not."""
    refuse_size(SMALLEST_SIDE, MOST_PIXELS // SMALLEST_SIDE, "x")
    for width, height in ((SMALLEST_SIDE - 1, 99), (99, SMALLEST_SIDE - 1)):
        with pytest.raises(MendableError, match="only"):
            refuse_size(width, height, "x")
    with pytest.raises(MendableError, match="100 million"):
        refuse_size(MOST_PIXELS // 10 + 1, 10, "x")


def test_several_are_counted() -> None:
    """The count and the kind are named."""
    assert "holds 3 pages" in str(several_pictures("x", 3, "pages"))
