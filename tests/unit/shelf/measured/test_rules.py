"""What holds for measurements of every format: units, what no surface has, colours, ids."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.shelf.measured.reading import Reading, Viewing
from swatchwright.shelf.measured.rules import (
    MOST_SAMPLES,
    measurements,
    number,
)
from swatchwright.shelf.measured.told import clean
from swatchwright.shelf.measured.values import Measurement
from unit.shelf.measured.made import refused

NM = tuple(range(400, 701, 10))


def reading(id_: str, *values: float, percent: bool = False) -> Reading:
    """Make a reading of 400 to 700 nm; the last value goes on to the end."""
    row = [*values, *values[-1:] * 31][:31]
    return Reading("line 1", id_, spectrum=tuple(zip(NM, row, strict=True)), percent=percent)


def spectrum(sample: Measurement) -> np.ndarray[tuple[int], np.dtype]:
    """Give the reflectance that a sample must have."""
    assert sample.reflectance is not None
    return np.asarray(sample.reflectance)


def colour(lab: tuple[float, float, float], light: str | None, observer: str | None) -> Reading:
    """Make a reading of a colour alone."""
    return Reading("line 1", "c", lab=lab, viewing=Viewing(light, observer))


# --- units ---------------------------------------------------------------------------------------


def test_percent_given_for_fractions() -> None:
    """Values up to 100 are divided by 100 in the whole file, which is noted."""
    found = measurements("x", [reading("a", 80), reading("b", 2.5), reading("c", 0.8)], "D65")
    assert [spectrum(m)[0] for m in found.rows] == [0.8, 0.025, 0.008]
    assert "percent" in found.notes[0]
    assert "nearly black: c." in found.notes[1]


def test_fractions_stay_as_they_are() -> None:
    """Fractions are not touched, nor noted but for where they end."""
    found = measurements("x", [reading("a", 0.0), reading("b", 1.0)], "D65")
    assert [spectrum(m)[0] for m in found.rows] == [0, 1]
    assert len(found.notes) == 1
    assert "400 to 700 nm" in found.notes[0]


def test_one_slip_does_not_turn_a_file_into_percent() -> None:
    """A lost decimal point among fractions is refused, not taken for the unit of the file."""
    readings = [reading("a", 0.4), reading("b", 0.5, 45, 0.5), reading("c", 0.3)]
    assert "“b”" in refused(lambda: measurements("x", readings, "D65")).what


@pytest.mark.parametrize("value", [1.11, 2, 3])
def test_neither_percent_nor_fraction(value: float) -> None:
    """A reflectance between the two units is refused."""
    error = refused(lambda: measurements("x", [reading("a", value)], "D65"))
    assert "“a”" in error.what


def test_said_percent_and_found_percent_may_stand_together() -> None:
    """What a file says is percent is believed, beside samples of which it does not say so."""
    found = measurements("x", [reading("a", 0.5, percent=True), reading("b", 0.5)], "D65")
    assert [spectrum(m)[0] for m in found.rows] == [0.005, 0.5]


# --- surfaces ------------------------------------------------------------------------------------


def test_what_fluoresces_is_cut() -> None:
    """Reflectance up to 1.1 is cut to 1 and noted with the sample."""
    (sample,) = measurements("x", [reading("a", 0.9, 1.08, 0.7)], "D65").rows
    assert spectrum(sample)[:3].tolist() == [0.9, 1, 0.7]
    assert "410 nm" in sample.notes[0]


@pytest.mark.parametrize("values", [(50, 111, 50), (0.5, -0.001, 0.5), (50, -0.1, 50)])
def test_what_no_surface_gives_back(values: tuple[float, ...]) -> None:
    """Reflectance above 110 percent or below zero is refused with its wavelength."""
    assert "410 nm" in refused(lambda: measurements("x", [reading("a", *values)], "D65")).what


@pytest.mark.parametrize(
    ("nm", "says"),
    [
        ([w for w in NM if w != 550], "550 nm"),
        ([w for w in NM if not 540 <= w <= 600], "540 nm"),
        (range(430, 701, 10), "430 to 700"),
        (range(400, 671, 10), "400 to 670"),
        (range(400, 726, 25), "visible range"),
        ([550], "1 wavelengths"),
        ([100, 200], "0 wavelengths"),
        ([400, *NM], "400 nm twice"),
        ([-1e308, 1e308, float("inf"), 400, 410], "visible range"),
    ],
)
def test_missing_wavelengths(nm: list[float], says: str) -> None:
    """Spectra with gaps, coarse or short of the visible range are refused, naming the sample."""
    row = Reading("line 7", "a", spectrum=tuple((float(w), 0.5) for w in nm))
    error = refused(lambda: measurements("x", [row], "D65"))
    assert "“a” (line 7 of x)" in error.what
    assert says in error.what


def test_rounded_wavelengths_are_even() -> None:
    """Steps of ten thirds of a nm, printed to two digits, are even steps."""
    nm = [round(380 + i * 10 / 3, 2) for i in range(106)]
    row = Reading("line 1", "a", spectrum=tuple((w, 0.5) for w in nm))
    assert measurements("x", [row], "D65").rows[0].nm.size == 106


# --- colours -------------------------------------------------------------------------------------


@pytest.mark.parametrize("L", [0.0, 18.4, 50.0, 100.0])
def test_grey_stays_grey_between_lights(L: float) -> None:
    """A neutral of D50 is a neutral of D65 of the same lightness: what Bradford is made for."""
    (sample,) = measurements("x", [colour((L, 0, 0), "D50", "2")], "D65").rows
    assert sample.lab is not None
    assert_allclose(sample.lab.triple, (L, 0, 0), atol=1e-9)


def test_bradford_against_a_library() -> None:
    """D50 is carried to D65 as colour-science does it.

    Source: colour-science, chromatic_adaptation_VonKries with its Bradford matrix, whites of D50
    and D65 to five digits.
    """
    import colour as colour_science

    d50, d65 = np.array([0.96422, 1, 0.82521]), np.array([0.95047, 1, 1.08883])
    xy = [colour_science.XYZ_to_xy(white) for white in (d50, d65)]
    for lab in ((46.0, 34.0, 24.0), (28.5, 2.0, -27.0), (80.0, -10.0, 60.0)):
        xyz = colour_science.adaptation.chromatic_adaptation_VonKries(
            colour_science.Lab_to_XYZ(lab, xy[0]), d50, d65, transform="Bradford"
        )
        (sample,) = measurements("x", [colour(lab, "D50", "2")], "D65").rows
        assert sample.lab is not None
        assert_allclose(sample.lab.triple, colour_science.XYZ_to_Lab(xyz, xy[1]), atol=1e-4)


@pytest.mark.parametrize("lab", [(-1, 0, 0), (101, 0, 0), (50, 151, 0), (50, 0, -151)])
def test_colours_that_no_surface_has(lab: tuple[float, float, float]) -> None:
    """Lab values out of range are refused."""
    assert "“c”" in refused(lambda: measurements("x", [colour(lab, "D65", "2")], "D65")).what


@pytest.mark.parametrize(("light", "observer"), [("A", "2"), ("D65", "10"), ("C", None)])
def test_colours_of_other_lights(light: str, observer: str | None) -> None:
    """Lab for a light or observer that cannot be carried over is refused without a spectrum."""
    lab = (50.0, 10.0, 10.0)
    error = refused(lambda: measurements("x", [colour(lab, light, observer)], "D65"))
    assert light in error.what


@pytest.mark.parametrize("assumed", ["D50", "D65"])
def test_what_is_not_said_is_noted(assumed: str) -> None:
    """Where the light or the observer is not said, what is taken is noted."""
    found = measurements("x", [colour((50, 9, 9), None, "2")], assumed)
    assert f"taken as {assumed}" in found.notes[0]


# --- ids, texts and numbers ----------------------------------------------------------------------


def test_too_many() -> None:
    """A file of more samples than can be read is refused."""
    many = [Reading("line 1", str(i)) for i in range(MOST_SAMPLES + 1)]
    assert str(MOST_SAMPLES) in refused(lambda: measurements("x", many, "D65")).what


def test_ids_that_look_the_same_are_the_same() -> None:
    """Ids that differ in spaces only are one id."""
    readings = [reading("a  b", 0.5), reading(" a b", 0.5)]
    assert "“a b”" in refused(lambda: measurements("x", readings, "D65")).what


@given(st.text())
def test_cleaned_texts_fit_one_line(text: str) -> None:
    """A cleaned text has no line end, tab or control sign, and stays what it is."""
    cleaned = clean(text)
    assert cleaned.isprintable()
    assert clean(cleaned) == cleaned
    assert (cleaned == "") == (not any(c.isprintable() and c != " " for c in text))


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_numbers_as_written(value: float) -> None:
    """Any number is read back as it is written, with a point or a comma."""
    assert number(repr(value), "x") == value
    assert number(repr(value).replace(".", ","), "x") == value


@pytest.mark.parametrize(
    "text", ["", "1.2.3", "1,2,3", "0x1", "inf", "1e999", "1_0", "½", "٣", "1 2"]
)
def test_what_is_no_number(text: str) -> None:
    """Anything but a plain number is refused."""
    assert refused(lambda: number(text, "Line 1 of x")).what.startswith("Line 1 of x")
