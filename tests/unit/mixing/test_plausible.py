"""Reflectances that a cloth of a known colour may have, against measured surfaces."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, Light, lab_of
from swatchwright.mixing.plausible import plausible_reflectances
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.values import Lab

Floats = NDArray[np.floating[Any]]

LIGHTS = (Light.LAMP, Light.WARM_LED, Light.COOL_LED, Light.TUBE)
CHART = Path(__file__).parents[2] / "data" / "chart24_spectra_10nm.csv"


@cache
def surfaces() -> Floats:
    """Give the 99 measured surfaces of CIE 224:2017, as colour-science ships them."""
    from colour.quality.cfi2017 import load_TCS_CIE2017

    table = load_TCS_CIE2017(colour.SpectralShape(380, 780, 5))
    rows = np.asarray(table.values).T
    return np.array([np.interp(WAVELENGTHS, table.wavelengths, row) for row in rows])


@cache
def chart() -> Floats:
    """Give the measured spectra of a printed chart of 24 patches."""
    lines = CHART.read_text("utf-8").splitlines()
    rows = [line.split(",") for line in lines if not line.startswith("#")][1:]
    return np.array(rows, dtype=np.float64)[:, 1:].T


def ranks(spectra: Floats, light: Light) -> Floats:
    """Give for each true spectrum the share of plausible ones that are nearer the smoothest."""
    found = []
    for true in spectra:
        wanted = Lab.of(lab_of(true))
        middle = lab_of(smoothest_reflectance(wanted), light)
        others = delta_e_2000(middle, lab_of(plausible_reflectances(wanted), light))
        found.append(np.mean(others < delta_e_2000(middle, lab_of(true, light))))
    return np.array(found)


@pytest.mark.parametrize("light", LIGHTS)
def test_measured_surfaces_lie_among_the_plausible(light: Light) -> None:
    """Of 99 real surfaces about half are nearer the smoothest than half of the plausible are.

    Of a perfect answer the ranks would be spread evenly over 0-1; our kinds of surface and lights
    are few, so that the middle may be off by a fifth, and a twelfth may lie outside of all.
    """
    found = ranks(surfaces(), light)
    assert 0.3 < np.median(found) < 0.7
    assert np.mean(found > 0.995) < 1 / 8
    assert 0.1 < np.percentile(found, 25) < 0.4
    assert 0.55 < np.percentile(found, 75) < 0.92


@pytest.mark.parametrize("light", LIGHTS)
def test_printed_patches_are_not_outside(light: Light) -> None:
    """Of 24 printed patches, which had no part in the fit, next to none lies outside of all."""
    assert np.mean(ranks(chart(), light) > 0.995) <= 2 / 24


@given(
    st.floats(20, 90),
    st.floats(-30, 30),
    st.floats(-30, 30),
)
def test_all_have_the_colour(L: float, a: float, b: float) -> None:
    """Whatever the colour, each has it in daylight, none leaves 0-1, and they are not all one."""
    wanted = Lab(L, a, b)
    found = plausible_reflectances(wanted)
    assert found.min() >= 0
    assert found.max() <= 1
    if found.shape[0] > 1:
        assert delta_e_2000(wanted.triple, lab_of(found)).max() < 0.05
        assert np.ptp(lab_of(found, Light.LAMP), axis=0).max() > 0.05


def test_a_colour_no_surface_has() -> None:
    """Beyond all surfaces there is one answer only, the nearest."""
    wanted = Lab(50, 0, -140)
    found = plausible_reflectances(wanted)
    assert found.shape == (1, 36)
    assert np.array_equal(found[0], smoothest_reflectance(wanted))
