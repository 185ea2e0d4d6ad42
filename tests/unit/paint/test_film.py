"""Laws of Kubelka-Munk films, over the whole range of what a film may be."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.paint.film import (
    film_reflectance,
    film_transmittance,
    ratio_of_reflectance,
    reflectance_of_ratio,
)

coefficients = st.one_of(st.just(0.0), st.floats(1e-9, 1e4))
thicknesses = st.one_of(st.just(0.0), st.floats(1e-6, 10))
grounds = st.floats(0, 1)
films = st.tuples(coefficients, coefficients)


@given(st.floats(1e-6, 1))
def test_ratio_and_reflectance_undo_each_other(R: float) -> None:
    """A thick film's K/S and reflectance give each other back."""
    assert float(reflectance_of_ratio(ratio_of_reflectance(R))) == pytest.approx(R, rel=1e-6)


@given(st.floats(0, 1e12), st.floats(0, 1e12))
def test_more_absorption_is_darker(one: float, two: float) -> None:
    """A larger K/S never reflects more, and reflectance stays within 0 and 1."""
    low, high = sorted((one, two))
    assert 0 < float(reflectance_of_ratio(high)) <= float(reflectance_of_ratio(low)) <= 1


@pytest.mark.parametrize("R", [0.0, -0.1, 1.0000001, [0.5, 0.0]])
def test_a_reflectance_out_of_range_is_refused(R: float | list[float]) -> None:
    """No film reflects nothing at all, less than that, or more than all."""
    with pytest.raises(ValueError, match="must lie above 0"):
        ratio_of_reflectance(R)


@given(films, thicknesses, grounds)
def test_a_film_reflects_between_nothing_and_all(
    film: tuple[float, float], X: float, ground: float
) -> None:
    """Any film over any ground has a reflectance and a transmittance of 0 to 1."""
    R = float(film_reflectance(*film, X, ground))
    assert -1e-12 <= R <= 1 + 1e-12
    assert -1e-12 <= float(film_transmittance(*film, X)) <= 1 + 1e-12


@given(films, grounds)
def test_a_film_of_nothing_is_its_ground(film: tuple[float, float], ground: float) -> None:
    """Without thickness nothing is seen but the ground, and all light goes through."""
    assert float(film_reflectance(*film, 0, ground)) == pytest.approx(ground, abs=1e-12)
    assert float(film_transmittance(*film, 0)) == pytest.approx(1, abs=1e-12)


@given(st.floats(1e-3, 1e4), st.floats(1e-3, 1e4), grounds)
def test_a_thick_film_is_the_infinite_film(K: float, S: float, ground: float) -> None:
    """A film thick enough has the reflectance of K/S on any ground."""
    thick = 40 / np.sqrt(K * (K + 2 * S))
    expected = float(reflectance_of_ratio(K / S))
    assert float(film_reflectance(K, S, thick, ground)) == pytest.approx(expected, abs=1e-9)
    assert float(film_reflectance(K, S, 1e6 * thick, ground)) == pytest.approx(expected, abs=1e-9)
    assert float(film_transmittance(K, S, 1e6 * thick)) == pytest.approx(0, abs=1e-300)


@given(films, st.floats(0, 3), st.floats(0, 3), grounds)
def test_coats_add_up(film: tuple[float, float], one: float, two: float, ground: float) -> None:
    """A film over a film of the same paint is one film of both thicknesses."""
    stacked = film_reflectance(*film, one, film_reflectance(*film, two, ground))
    assert_allclose(stacked, film_reflectance(*film, one + two, ground), rtol=0, atol=1e-9)


@given(films, st.floats(0, 3), grounds)
def test_a_film_is_itself_over_black_and_what_comes_through(
    film: tuple[float, float], X: float, ground: float
) -> None:
    """R = R0 + T^2 Rg / (1 - R0 Rg): Kubelka 1948."""
    R0, T = float(film_reflectance(*film, X, 0)), float(film_transmittance(*film, X))
    between = 1 - R0 * ground
    if between < 1e-6:  # a perfect white over a perfect white: nothing over nothing
        return
    expected = R0 + T**2 * ground / between
    assert float(film_reflectance(*film, X, ground)) == pytest.approx(expected, abs=1e-7)


@given(films, st.floats(0, 3), grounds, grounds)
def test_a_lighter_ground_never_darkens(
    film: tuple[float, float], X: float, one: float, two: float
) -> None:
    """Over a lighter ground a film is never darker."""
    dark, light = sorted((one, two))
    below, above = (float(film_reflectance(*film, X, g)) for g in (dark, light))
    assert below <= above + 1e-12


@given(st.floats(1e-3, 10), st.floats(1e-3, 10), st.floats(0, 2))
def test_without_loss_light_goes_one_way_or_the_other(K: float, S: float, X: float) -> None:
    """Reflectance and transmittance sum to one without absorption, and to less with it."""
    clear = film_reflectance(0, S, X, 0) + film_transmittance(0, S, X)
    assert float(clear) == pytest.approx(1, abs=1e-12)
    assert float(film_reflectance(K, S, X, 0) + film_transmittance(K, S, X)) <= 1 + 1e-12


@pytest.mark.parametrize("S", [0.5, 30.0])
def test_no_absorption_and_a_trace_are_one(S: float) -> None:
    """The limit of no absorption is met smoothly, where the formula would be nothing by nothing."""
    K = np.array([0.0, 1e-18, 1e-16, 1e-14, 1e-13])
    assert_allclose(film_reflectance(K, S, 1, 0.3), film_reflectance(0, S, 1, 0.3), atol=1e-10)
    assert_allclose(film_transmittance(K, S, 1), film_transmittance(0, S, 1), atol=1e-10)


@pytest.mark.parametrize("power", range(-18, 3))
def test_coats_add_up_at_any_absorption(power: int) -> None:
    """Two half coats are one coat from no absorption to much, where the formula changes over."""
    K, S = 10.0**power, 30.0
    stacked = film_reflectance(K, S, 0.5, film_reflectance(K, S, 0.5, 0.3))
    assert float(stacked) == pytest.approx(float(film_reflectance(K, S, 1, 0.3)), abs=1e-10)


def test_everything_broadcasts() -> None:
    """Spectra, thicknesses and grounds combine as arrays do."""
    K, S = np.linspace(0, 3, 36), np.linspace(1, 9, 36)
    films = film_reflectance(K, S, np.array([0.01, 0.1])[:, None], 0.5)
    assert films.shape == (2, 36)
    assert float(films[1, 7]) == pytest.approx(float(film_reflectance(K[7], S[7], 0.1, 0.5)))
