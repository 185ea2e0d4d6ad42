"""Which colours a surface can have."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.colour.convert import hex_to_lab, lab_to_xyz
from swatchwright.colour.solid import can_be_a_surface
from swatchwright.colour.spectrum import lab_of
from swatchwright.values import Lab

BAND = st.floats(0, 1)


@given(st.lists(BAND, min_size=36, max_size=36))
def test_every_reflectance_can_be_a_surface(bands: list[float]) -> None:
    """Whatever reflectance between 0 and 1, its colour is one that a surface can have."""
    lab = lab_of(np.array(bands))
    assert can_be_a_surface(Lab(*(float(v) for v in lab)))


@pytest.mark.parametrize("first", [0, 7, 18])
@pytest.mark.parametrize("last", [19, 28, 36])
def test_optimal_colours_are_on_its_skin(first: int, last: int) -> None:
    """A colour a little more vivid than one that reflects all or nothing is past every surface.

    All or nothing with two steps is what MacAdam 1935 proved the optimal colours to be.
    """
    bands = np.zeros(36)
    bands[first:last] = 1
    L, a, b = (float(v) for v in lab_of(bands))
    assert can_be_a_surface(Lab(L, a, b))
    if np.hypot(a, b) > 40:
        assert not can_be_a_surface(Lab(L, 1.3 * a, 1.3 * b))


def test_what_is_refused_is_outside_the_published_limits() -> None:
    """Every colour refused lies outside the MacAdam limits that colour-science has for D65."""
    import colour

    rng = np.random.default_rng(7)
    labs = rng.uniform((5, -120, -120), (99, 120, 120), (400, 3))
    refused = [lab for lab in labs if not can_be_a_surface(Lab(*(float(v) for v in lab)))]
    assert 100 < len(refused) < 390
    xyY = colour.XYZ_to_xyY(np.array([lab_to_xyz(lab) for lab in refused]))
    inside = colour.is_within_macadam_limits(xyY, "D65")
    # The table is coarse near black and near white; elsewhere the two agree.
    assert np.mean(inside) < 0.03


@pytest.mark.parametrize(
    "shown", ["#ff0000", "#00ff00", "#0000ff", "#ff00ff", "#ffffff", "#000000"]
)
def test_what_a_screen_shows_a_surface_can_have(shown: str) -> None:
    """The corners of sRGB are colours of possible surfaces."""
    assert can_be_a_surface(hex_to_lab(shown))
