"""How dark and light colours look to eyes without a kind of cone, against colour-science."""

from __future__ import annotations

import warnings

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from swatchwright.colour.sight import black_and_white_on, luminances

BYTE = st.integers(0, 255).map(lambda n: n / 255)
RGB = st.tuples(BYTE, BYTE, BYTE)

LACKS = ("Protanomaly", "Deuteranomaly", "Tritanomaly")


@pytest.fixture(scope="module")
def matrices() -> list[np.ndarray]:
    """Give the matrices of [Machado2009] as colour-science ships them, none the first."""
    from colour.blindness import matrix_cvd_Machado2009

    with warnings.catch_warnings():
        # It says of the third kind that its shift is an approximation.
        warnings.simplefilter("ignore")
        return [np.eye(3), *(np.asarray(matrix_cvd_Machado2009(kind, 1.0)) for kind in LACKS)]


@given(RGB)
@example((1.0, 0.0, 0.0))
@example((0.0, 0.0, 1.0))
@example((0.0, 1.0, 1.0))
def test_luminances(matrices: list[np.ndarray], rgb: tuple[float, float, float]) -> None:
    """Each is that of colour-science's simulation, clipped as a screen does, by its own sRGB."""
    import colour

    light = colour.cctf_decoding(np.array(rgb), function="sRGB")
    luminance = colour.RGB_COLOURSPACES["sRGB"].matrix_RGB_to_XYZ[1]
    expected = [float(luminance @ np.clip(matrix @ light, 0, 1)) for matrix in matrices]
    assert luminances(rgb) == pytest.approx(expected, abs=2e-4)


@given(BYTE)
def test_a_grey_is_the_same_to_all(grey: float) -> None:
    """Eyes without a kind of cone see greys as all others do: the rows of the matrices add to 1."""
    found = luminances((grey, grey, grey))
    assert max(found) - min(found) < 1e-5


@given(RGB)
def test_one_of_the_two_is_seen_by_all(rgb: tuple[float, float, float]) -> None:
    """On any colour, black or white has the contrast of 3 that [WCAG22] asks of a drawn sign."""
    assert max(black_and_white_on(rgb)) >= 3.0
