"""Conversions come back, keep their type, and say what they cannot show."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.colour.convert import (
    D50_WHITE,
    D65_WHITE,
    bradford,
    hex_to_lab,
    in_srgb,
    lab_to_hex,
    lab_to_linear_srgb,
    lab_to_xyz,
    linear_srgb_to_lab,
    linear_srgb_to_xyz,
    srgb_decode,
    srgb_encode,
    xyz_to_lab,
    xyz_to_linear_srgb,
)
from swatchwright.values import Lab

bytes_ = st.integers(0, 255)
labs = st.builds(Lab, st.floats(0, 100), st.floats(-128, 128), st.floats(-128, 128))


@given(bytes_, bytes_, bytes_)
def test_a_screen_colour_comes_back(red: int, green: int, blue: int) -> None:
    """Any 8-bit colour goes to CIELAB and back to the same digits."""
    code = f"#{red:02x}{green:02x}{blue:02x}"
    lab = hex_to_lab(code)
    assert lab_to_hex(lab) == code
    assert in_srgb(lab)
    assert 0 <= lab.L <= 100


@given(labs)
def test_cielab_comes_back(lab: Lab) -> None:
    """Any CIELAB colour goes to XYZ and to linear light and back."""
    for white in (D65_WHITE, D50_WHITE):
        assert_allclose(xyz_to_lab(lab_to_xyz(lab.triple, white), white), lab.triple, atol=1e-9)
    assert_allclose(linear_srgb_to_lab(lab_to_linear_srgb(lab.triple)), lab.triple, atol=1e-8)


@given(st.lists(st.floats(-0.5, 2), min_size=3, max_size=3))
def test_linear_light_comes_back(rgb: list[float]) -> None:
    """Linear light, even outside sRGB, goes to XYZ and back."""
    assert_allclose(xyz_to_linear_srgb(linear_srgb_to_xyz(rgb)), rgb, atol=1e-12)


def test_bytes_come_back() -> None:
    """All 256 encoded values decode and encode to themselves, and rise."""
    c = np.arange(256) / 255
    linear = srgb_decode(c)
    assert_allclose(srgb_encode(linear), c, atol=1e-12)
    assert np.all(np.diff(linear) > 0)


def test_what_is_beyond_the_screen_is_clipped() -> None:
    """Light below nothing or above white encodes as black or white."""
    assert_allclose(srgb_encode([-0.2, 1.7]), [0, 1], rtol=0, atol=1e-15)


def test_a_photo_stays_in_single_precision() -> None:
    """float32 arrays of any shape stay float32 on their way to CIELAB, to 0.001."""
    photo = np.random.default_rng(3).uniform(0, 1, (5, 7, 3))
    small = photo.astype(np.float32)
    steps = (srgb_decode(small), linear_srgb_to_xyz(small), linear_srgb_to_lab(small))
    assert [a.dtype for a in steps] == [np.float32] * 3
    assert_allclose(steps[2], linear_srgb_to_lab(photo), rtol=0, atol=2e-3)


@pytest.mark.parametrize(
    ("lab", "shown"),
    [
        (Lab(50, 0, 0), True),
        (Lab(100, 0, 0), True),
        (Lab(0, 0, 0), True),
        (Lab(50, 100, 0), False),
        (Lab(50, 0, -90), False),
        (Lab(5, -30, 20), False),
        (Lab(90, -5, 60), True),
        (Lab(99, 0, 60), False),
    ],
)
def test_whether_a_screen_can_show_it(lab: Lab, shown: object) -> None:
    """Greys can be shown; vivid colours beyond the primaries cannot."""
    assert in_srgb(lab) is shown


def test_a_colour_beyond_the_screen_gets_the_nearest_digits() -> None:
    """A colour that no screen shows still has six digits, its channels clipped."""
    code = lab_to_hex(Lab(50, 120, -10))
    assert len(code) == 7
    assert "ff" in code
    assert "00" in code


def test_the_hash_and_the_case_do_not_matter() -> None:
    """A colour may be typed without its hash, in capitals, with blanks around it."""
    expected = hex_to_lab("#a4503c")
    assert hex_to_lab(" A4503C ") == expected
    assert hex_to_lab("a4503c") == expected


@pytest.mark.parametrize("text", ["", "#fff", "#12345", "#1234567", "#12345g", "red", "#+12345"])
def test_other_texts_are_refused(text: str) -> None:
    """Anything but six hexadecimal digits is refused."""
    with pytest.raises(ValueError, match=r".*"):
        hex_to_lab(text)


def test_adapting_to_the_same_white_changes_nothing() -> None:
    """Bradford from a white to itself is the identity, and there and back cancels."""
    assert_allclose(bradford(D65_WHITE, D65_WHITE), np.eye(3), atol=1e-12)
    there, back = bradford(D65_WHITE, D50_WHITE), bradford(D50_WHITE, D65_WHITE)
    assert_allclose(back @ there, np.eye(3), atol=1e-12)
