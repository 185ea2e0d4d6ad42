"""Chromaticity and colour temperature of the light on a photo."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.photo.light import cct_mccamy, chromaticity

# Light sources of CIE 015:2018, table 8.1/8.2: name, x, y, colour temperature.
A_AND_D65 = ((0.44758, 0.40745, 2856), (0.31272, 0.32903, 6504))


@pytest.mark.parametrize(("x", "y", "kelvin"), A_AND_D65)
def test_the_standard_lights_have_their_temperature(x: float, y: float, kelvin: float) -> None:
    """Illuminants A and D65 (CIE 015:2018) come out within 5 K."""
    assert cct_mccamy(x, y) == pytest.approx(kelvin, abs=5)


@pytest.mark.parametrize("kelvin", [2100, 2700, 4000, 5000, 7500, 11000])
def test_the_formula_is_mccamys(kelvin: float) -> None:
    """It gives what colour-science's McCamy 1992 gives, near the black body of Krystek 1985."""
    import colour

    xy = colour.UCS_uv_to_xy(colour.temperature.CCT_to_uv_Krystek1985(float(kelvin)))
    expected = float(colour.temperature.xy_to_CCT_McCamy1992(xy))
    assert cct_mccamy(*(float(v) for v in xy)) == pytest.approx(expected, rel=1e-9)
    assert expected == pytest.approx(kelvin, rel=0.04)


@pytest.mark.parametrize(
    "xy", [(0.3, 0.55), (0.16, 0.02), (0.6, 0.38), (0.25, 0.24), (0.3, 0.1858)]
)
def test_a_light_far_from_white_has_no_temperature(xy: tuple[float, float]) -> None:
    """Green, violet, deep orange and very blue light give None instead of a figure."""
    assert cct_mccamy(*xy) is None


def test_equal_light_is_d65() -> None:
    """Equal linear sRGB of any strength is the white of sRGB."""
    for level in (0.01, 0.18, 3.0):
        assert chromaticity(np.full(3, level)) == pytest.approx((0.3127, 0.3290), abs=1e-4)
