"""Carrying a measurement to the grid of the program."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.shelf.measured.values import Measurement, on_grid
from swatchwright.values import Lab
from unit.shelf.measured.made import GRIDS, measurement, refused, wavelengths


def smooth(nm: np.ndarray[tuple[int], np.dtype]) -> np.ndarray[tuple[int], np.dtype]:
    """Give a red's reflectance at any wavelengths, an edge about 60 nm wide."""
    return np.asarray(0.05 + 0.75 / (1 + np.exp((590 - nm) / 15)))


@pytest.mark.parametrize("grid", GRIDS)
def test_instrument_grids(grid: tuple[float, float, float]) -> None:
    """Spectra by 5, 10 and 20 nm arrive on the grid: to 0.02 by 20 nm, else at the very points.

    The colour stays within 0.2 CIEDE2000 of the same red read by 10 nm.
    """
    nm = wavelengths(*grid)
    found = on_grid(Measurement("a", "a", nm, smooth(nm), None))
    assert found.shape == (36,)
    inside = (nm[0] <= WAVELENGTHS) & (nm[-1] >= WAVELENGTHS)
    tolerance = 0.02 if grid[2] == 20 else 1e-12
    assert_allclose(found[inside], smooth(WAVELENGTHS)[inside], atol=tolerance)
    assert delta_e_2000(lab_of(found), lab_of(smooth(WAVELENGTHS))) < 0.2


def test_ends_are_held() -> None:
    """Beyond 400 and 700 nm the end values go on."""
    found = on_grid(measurement("a", np.linspace(0.1, 0.7, 31)))
    assert_allclose(found[:2], 0.1)
    assert_allclose(found[-3:], 0.7)


@given(st.lists(st.floats(0, 1), min_size=16, max_size=16))
def test_the_grid_holds_reflectance(values: list[float]) -> None:
    """However steep a spectrum, on the grid it lies in 0-1 and is finite."""
    found = on_grid(Measurement("a", "a", wavelengths(400, 700, 20), np.array(values), None))
    assert found.min() >= 0
    assert found.max() <= 1


def test_a_colour_has_no_spectrum() -> None:
    """A sample that is known by its colour alone is refused by its name."""
    sample = Measurement("clay", "Clay", np.empty(0), None, Lab(46, 34, 24))
    assert "“clay”" in refused(lambda: on_grid(sample)).what
