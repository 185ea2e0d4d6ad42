"""The grid of spectra, carrying data to it, and summing it to colour."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import (
    WAVELENGTHS,
    Light,
    interpolation,
    lab_of,
    light_weights,
    to_grid,
    xyz_of,
)


def test_the_grid() -> None:
    """The grid is 380 to 730 nm by 10 nm and cannot be changed."""
    assert WAVELENGTHS.tolist() == list(range(380, 731, 10))
    with pytest.raises(ValueError, match="read-only"):
        WAVELENGTHS[0] = 1


@pytest.mark.parametrize("light", Light)
def test_weights_are_shared_safely(light: Light) -> None:
    """The weights of a light cannot be changed by whoever uses them."""
    weights = light_weights(light)
    assert weights.shape == (36, 3)
    with pytest.raises(ValueError, match="read-only"):
        weights[0, 0] = 1


@pytest.mark.parametrize("light", Light)
@given(share=st.floats(0, 1))
def test_a_flat_grey_is_grey_in_every_light(light: Light, share: float) -> None:
    """A reflectance that is the same everywhere has no hue in any light, and its own Y."""
    lab = lab_of(np.full(36, share), light)
    assert_allclose(lab[1:], 0, atol=1e-9)
    assert float(xyz_of(np.full(36, share), light)[1]) == pytest.approx(share, abs=1e-12)


@given(st.lists(st.floats(0, 1), min_size=36, max_size=36), st.floats(0, 1))
def test_light_adds_up(spectrum: list[float], share: float) -> None:
    """Half the reflectance is half the light, and sums of spectra are sums of light."""
    one, two = np.array(spectrum), np.array(spectrum[::-1])
    mixed = share * one + (1 - share) * two
    expected = share * xyz_of(one) + (1 - share) * xyz_of(two)
    assert_allclose(xyz_of(mixed), expected, atol=1e-12)


def test_many_spectra_at_once() -> None:
    """Arrays of spectra of any shape give colours of that shape."""
    spectra = np.random.default_rng(4).uniform(0, 1, (2, 5, 36))
    assert lab_of(spectra).shape == (2, 5, 3)
    assert_allclose(lab_of(spectra)[1, 3], lab_of(spectra[1, 3]))


@given(st.lists(st.floats(-5, 5), min_size=4, max_size=4))
def test_interpolation_is_exact_for_cubics(coefficients: list[float]) -> None:
    """Four points carry any cubic exactly between themselves."""
    cubic = np.polynomial.Polynomial(coefficients)
    source, target = np.linspace(-1, 1, 9), np.linspace(-1, 1, 101)
    assert_allclose(interpolation(source, target) @ cubic(source), cubic(target), atol=1e-12)


@given(st.lists(st.floats(300, 800), min_size=1, max_size=12, unique=True))
def test_interpolation_keeps_a_constant(nodes: list[float]) -> None:
    """Each row of weights sums to one, for any set of wavelengths at least 1 nm apart."""
    source = np.sort(np.round(nodes))
    source = source[np.concatenate([[True], np.diff(source) >= 1])]
    rows = interpolation(source, WAVELENGTHS)
    assert rows.shape == (36, source.size)
    assert_allclose(rows.sum(axis=1), 1, rtol=1e-6)


def test_beyond_its_ends_data_is_held() -> None:
    """Data of 400 to 700 nm keeps its end values to 380 and 730 nm."""
    nm = np.arange(400, 701, 10)
    values = to_grid(nm, nm / 100.0)
    assert values[:2].tolist() == [4, 4]
    assert values[-3:].tolist() == [7, 7, 7]
    assert_allclose(values[2:-3], nm / 100)


def test_the_own_grid_is_left_alone() -> None:
    """Data on the grid stays as it is."""
    values = np.random.default_rng(5).uniform(0, 9, 36)
    assert_allclose(to_grid(WAVELENGTHS, values), values, atol=1e-14)


def test_no_value_falls_below_nothing() -> None:
    """A cubic that swings below zero beside a peak is cut off at zero."""
    nm = np.arange(380, 731, 50)
    peak = np.zeros(nm.size)
    peak[3] = 1
    values = to_grid(nm, peak)
    assert values.min() == 0
    assert (interpolation(nm, WAVELENGTHS) @ peak).min() < 0


@pytest.mark.parametrize("step", [5, 20])
def test_finer_and_coarser_data_agree(step: int) -> None:
    """A smooth spectrum at 5 or 20 nm lands where the same at 10 nm does, within 0.001."""
    nm = np.arange(380, 741, step)

    def smooth(w: np.ndarray) -> np.ndarray:
        return np.asarray(0.5 + 0.4 * np.tanh((w - 570) / 60))

    assert_allclose(to_grid(nm, smooth(nm)), smooth(WAVELENGTHS), atol=1e-3)
