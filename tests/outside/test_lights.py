"""Observers, lights and the sums over spectra against the CIE's tables and colour-science."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import (
    WAVELENGTHS,
    Light,
    lab_of,
    light_weights,
    light_white,
    xyz_of,
)

Floats = NDArray[np.floating[Any]]

DATA = Path(__file__).parents[1] / "data"
FIVE = colour.SpectralShape(380, 780, 5)
ONE = colour.SpectralShape(380, 780, 1)
OBSERVER = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]

# CIE 015:2018, 2 degree observer: x, y of each light as printed, and XYZ at Y = 100 as the sums of
# its tables at 1 nm (the spiky lights interpolated to that step, which moves them a little).
WHITES = {
    Light.LAMP: ((0.44758, 0.40745), (109.849, 100, 35.591)),
    Light.D50: ((0.34570, 0.35850), (96.424, 100, 82.513)),
    Light.D65: ((0.31270, 0.32900), (95.047, 100, 108.883)),
    Light.TUBE: ((0.3805, 0.3769), (100.900, 100, 64.267)),
    Light.WARM_LED: ((0.4560, 0.4078), (111.771, 100, 33.384)),
    Light.COOL_LED: ((0.3756, 0.3723), (100.862, 100, 67.634)),
}

SPIKY = {Light.TUBE, Light.WARM_LED, Light.COOL_LED}


@cache
def frozen() -> dict[str, Floats]:
    """Read the table that the program carries."""
    text = files("swatchwright.colour").joinpath("cie_5nm.csv").read_text("utf-8")
    head, *rows = text.splitlines()
    numbers = np.array([[float(cell) for cell in row.split(",")] for row in rows])
    return dict(zip(head.split(","), numbers.T, strict=True))


@cache
def chart() -> tuple[tuple[str, ...], Floats]:
    """Read the spectra of a printed chart of 24 patches, on the program's grid."""
    lines = (DATA / "chart24_spectra_10nm.csv").read_text("utf-8").splitlines()
    head, *rows = [line.split(",") for line in lines if not line.startswith("#")]
    numbers = np.array(rows, dtype=np.float64)
    assert_allclose(numbers[:, 0], WAVELENGTHS)
    return tuple(head[1:]), numbers[:, 1:].T


def test_the_frozen_observer_is_the_published_one() -> None:
    """The 2 degree observer equals colour-science's table of CIE 015:2018."""
    ours = np.stack([frozen()[c] for c in ("x2", "y2", "z2")], axis=1)
    assert_allclose(frozen()["nm"], FIVE.wavelengths)
    assert_allclose(ours, OBSERVER.copy().align(FIVE).values, rtol=0, atol=1e-12)


@pytest.mark.parametrize("name", ["A", "D50", "D65", "FL2", "FL11", "LED-B1", "LED-B3"])
def test_a_frozen_light_is_the_published_one(name: str) -> None:
    """Each light equals colour-science's table of CIE 015:2018."""
    theirs = colour.SDS_ILLUMINANTS[name].copy().align(FIVE).values
    assert_allclose(frozen()[name], theirs, rtol=0, atol=1e-12)


def test_the_lamp_is_a_formula() -> None:
    """Light A is the formula that CIE 015:2018 defines it by, to the digits of its table."""
    nm = frozen()["nm"]
    planck = 100 * (560 / nm) ** 5
    planck *= np.expm1(1.435e7 / (2848 * 560)) / np.expm1(1.435e7 / (2848 * nm))
    assert_allclose(frozen()["A"], planck, rtol=2e-5)


@pytest.mark.parametrize("light", Light)
def test_a_white_is_the_published_one(light: Light) -> None:
    """The perfect white has its published x, y and XYZ under each light."""
    xy, xyz = WHITES[light]
    X, Y, Z = light_white(light)
    assert_allclose((X / (X + Y + Z), Y / (X + Y + Z)), xy, rtol=0, atol=5.5e-5)
    assert_allclose(np.multiply(100, (X, Y, Z)), xyz, rtol=0, atol=0.1 if light in SPIKY else 0.01)
    assert_allclose(light_weights(light).sum(axis=0), (X, Y, Z), rtol=0, atol=1e-12)
    assert_allclose(xyz_of(np.ones(36), light), (X, Y, Z), rtol=0, atol=1e-12)


@pytest.mark.parametrize(
    ("light", "xyz"),
    [
        # ASTM E308, the whites printed with its weighting tables (from memory).
        (Light.D65, (95.047, 100, 108.883)),
        (Light.LAMP, (109.850, 100, 35.585)),
        (Light.D50, (96.422, 100, 82.521)),
    ],
)
def test_a_white_is_that_of_the_weighting_tables(
    light: Light, xyz: tuple[float, float, float]
) -> None:
    """The whites are those of the published weighting tables, within 0.02."""
    assert_allclose(np.multiply(100, light_white(light)), xyz, rtol=0, atol=0.02)


@pytest.mark.parametrize("light", Light)
def test_the_whites_come_of_the_tables(light: Light) -> None:
    """A plain sum of the frozen tables gives each white to 0.01 of 100, before it is scaled."""
    observer = np.stack([frozen()[c] for c in ("x2", "y2", "z2")])
    plain = observer @ frozen()[light.value]
    assert_allclose(100 * plain / plain[1], np.multiply(100, light_white(light)), rtol=0, atol=0.01)


def summed_finely(spectrum: Floats, light: Light, shape: colour.SpectralShape) -> Floats:
    """Give CIELAB by colour-science: the spectrum interpolated by Sprague, the sums at a step."""
    source = colour.SDS_ILLUMINANTS[light.value].copy().align(shape)
    observer = OBSERVER.copy().align(shape)

    def xyz(sd: Any) -> Floats:
        return np.asarray(colour.sd_to_XYZ(sd, observer, source, method="Integration") / 100)

    sd = colour.SpectralDistribution(dict(zip(WAVELENGTHS, spectrum, strict=True)))
    sd = sd.interpolate(colour.SpectralShape(380, 730, shape.interval)).extrapolate(shape)
    white = xyz(colour.sd_ones(shape))
    return np.asarray(colour.XYZ_to_Lab(xyz(sd), colour.XYZ_to_xy(white)))


# Worst found: 0.004 in smooth light at either step; in spiky light 0.017 at 5 nm, where ours are
# summed too, and 0.041 at 1 nm, most of it the lamp's lines that a table at 5 nm cannot hold.
@pytest.mark.parametrize(
    ("light", "shape", "most"),
    [
        (Light.D65, ONE, 0.006),
        (Light.D50, ONE, 0.006),
        (Light.LAMP, ONE, 0.006),
        (Light.TUBE, FIVE, 0.02),
        (Light.COOL_LED, FIVE, 0.02),
        (Light.TUBE, ONE, 0.05),
        (Light.COOL_LED, ONE, 0.05),
        (Light.WARM_LED, ONE, 0.05),
    ],
)
def test_the_chart_agrees_with_an_independent_program(
    light: Light, shape: colour.SpectralShape, most: float
) -> None:
    """24 measured spectra have the colours that colour-science gives them in every light."""
    names, spectra = chart()
    theirs = np.array([summed_finely(spectrum, light, shape) for spectrum in spectra])
    apart = delta_e_2000(theirs, lab_of(spectra, light))
    assert dict(zip(names, apart.tolist(), strict=True)) == pytest.approx(
        dict.fromkeys(names, 0), abs=most
    )


def test_the_fine_step_is_needed() -> None:
    """Summing a lamp of narrow lines at 10 nm shifts patches far more than ours ever are."""
    light = Light.TUBE
    _, spectra = chart()
    coarse = np.isin(frozen()["nm"], WAVELENGTHS)
    observer = np.stack([frozen()[c][coarse] for c in ("x2", "y2", "z2")])
    weights = (observer * frozen()[light.value][coarse]).T
    white = weights.sum(axis=0) / weights[:, 1].sum()
    plain = colour.XYZ_to_Lab(spectra @ weights / weights[:, 1].sum(), colour.XYZ_to_xy(white))
    fine = np.array([summed_finely(spectrum, light, FIVE) for spectrum in spectra])
    assert delta_e_2000(plain, fine).max() > 0.5
    assert delta_e_2000(lab_of(spectra, light), fine).max() < 0.02


@pytest.mark.parametrize(
    ("patch", "lab"),
    [
        # The same chart's average under D65, 2 degree observer, by colour-science 0.4.7, which
        # sums by the tables of ASTM E308.
        ("white", (96.508, -0.895, 2.601)),
        ("neutral 5", (50.838, -0.565, -0.086)),
        ("dark skin", (37.973, 12.107, 13.697)),
        ("red", (40.737, 50.714, 26.072)),
    ],
)
def test_a_patch_has_its_colour(patch: str, lab: tuple[float, float, float]) -> None:
    """Four patches have their known CIELAB in daylight."""
    names, spectra = chart()
    assert float(delta_e_2000(lab_of(spectra[names.index(patch)]), lab)) < 0.02
