"""The colorant basis, and composing paints from it."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.colorants import colorants, compose
from swatchwright.paint.film import reflectance_of_ratio


def test_every_colorant_is_a_possible_paint() -> None:
    """Thirteen colorants have K and S on the grid, finite and not below nothing."""
    basis = colorants()
    assert len(basis) == 13
    for K, S in basis.values():
        assert K.shape == S.shape == WAVELENGTHS.shape
        assert np.all(np.isfinite(K))
        assert np.all(K >= 0)
        assert np.all(S > 0)


def test_the_white_is_the_unit() -> None:
    """The white's S has a mean of 1 over the data's own range, and it hardly absorbs."""
    K, S = colorants()["white"]
    inside = (WAVELENGTHS >= 400) & (WAVELENGTHS <= 700)
    assert float(S[inside].mean()) == pytest.approx(1, abs=0.02)
    assert float((K / S).max()) < 0.02


@pytest.mark.parametrize(
    ("name", "hue"),
    # What each name says, as quarters of the CIELAB circle of its tint in white; no source.
    [
        ("mid_yellow", (60, 110)),
        ("lemon_yellow", (85, 120)),
        ("orange_red", (10, 75)),
        ("warm_red", (0, 60)),
        ("violet_blue", (250, 310)),
        ("mid_blue", (240, 310)),
        ("green_blue", (190, 280)),
        ("blue_green", (140, 230)),
        ("bright_green", (110, 190)),
    ],
)
def test_a_tint_has_the_hue_of_its_name(name: str, hue: tuple[float, float]) -> None:
    """Each colorant in ten parts of white has the hue that its name tells."""
    K, S = compose({"white": 10, name: 1})
    _, a, b = lab_of(reflectance_of_ratio(K / S))
    assert hue[0] < np.degrees(np.arctan2(b, a)) % 360 < hue[1]


def test_black_takes_lightness_only() -> None:
    """The black in white makes greys, darker the more there is of it."""
    labs = [
        lab_of(reflectance_of_ratio(np.divide(*compose({"white": 1, "bone_black": amount}))))
        for amount in (0.0, 0.01, 0.1, 1.0)
    ]
    assert np.all(np.diff([lab[0] for lab in labs]) < -5)
    assert max(float(np.hypot(*lab[1:])) for lab in labs) < 6


def test_colorants_add() -> None:
    """K and S of a composed paint are sums; the unit of the amounts does not matter."""
    (Kw, Sw), (Kr, Sr) = (colorants()[name] for name in ("white", "warm_red"))
    K, S = compose({"white": 0.5, "warm_red": 2})
    assert_allclose(K, 0.5 * Kw + 2 * Kr)
    assert_allclose(S, 0.5 * Sw + 2 * Sr)


def test_an_unknown_colorant_is_refused() -> None:
    """A colorant that is not in the basis is an error, not nothing."""
    with pytest.raises(KeyError, match="ochre"):
        compose({"white": 1, "ochre": 0.1})
