"""Bad input for a fit: refused in plain words, or put right and said."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.errors import MendableError
from swatchwright.paint.fit.checks import check_brush_outs, check_reflectance, check_shares
from swatchwright.paint.fit.readings import BrushOut, Reading

FLAT = np.full(36, 0.4)


def level(value: float, **shares: float) -> BrushOut:
    """Make a brush-out that hides, of one reflectance throughout."""
    name = " ".join(f"{part:g} {paint}" for paint, part in shares.items())
    return BrushOut(shares, (Reading(np.full(36, value)),), name=name)


def test_a_sound_spectrum_is_left_alone() -> None:
    """Nothing is changed and nothing said where nothing is off."""
    values, notes = check_reflectance(FLAT, "tile")
    assert_allclose(values, FLAT)
    assert notes == ()


def test_percent_is_understood_and_said() -> None:
    """A spectrum in percent is taken as such, and a note says so."""
    values, notes = check_reflectance(100 * FLAT, "tile")
    assert_allclose(values, FLAT)
    assert "percent" in notes[0]


def test_a_little_outside_is_set_to_the_limit() -> None:
    """A white a little above the standard's white is set to 1, and a note says so."""
    spectrum = FLAT.copy()
    spectrum[5], spectrum[6] = 1.02, -0.004
    values, notes = check_reflectance(spectrum, "tile")
    assert values[5] == 1
    assert values[6] == 0
    assert "limit" in notes[0]


def test_missing_bands_are_said() -> None:
    """Bands missing in the middle stay open, and a note counts them."""
    spectrum = FLAT.copy()
    spectrum[10:13] = np.nan
    values, notes = check_reflectance(spectrum, "tile")
    assert np.isnan(values).sum() == 3
    assert "lacks 3 bands" in notes[0]


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (1.4, "1.400 at 430 nm"),
        (-0.2, "\N{MINUS SIGN}0.200 at 430 nm"),
        (400.0, "neither 0 to 1 nor"),
    ],
)
def test_values_that_cannot_be_are_refused(value: float, words: str) -> None:
    """A reflectance that no paint has is named with its wavelength."""
    spectrum = FLAT.copy()
    spectrum[5] = value
    with pytest.raises(MendableError, match=words):
        check_reflectance(spectrum, "tile")


def test_too_few_bands_are_refused() -> None:
    """Three bands are no spectrum."""
    spectrum = np.full(36, np.nan)
    spectrum[[5, 15, 25]] = 0.3
    with pytest.raises(MendableError, match="only 3 of 36"):
        check_reflectance(spectrum, "tile")


@pytest.mark.parametrize(
    ("parts", "said"),
    [((0.2, 0.8), 0), ((20.0, 80.0), 0), ((1.0, 4.0), 1), ((0.2, 0.79), 1)],
)
def test_shares_come_out_as_fractions(parts: tuple[float, float], said: int) -> None:
    """Fractions, percent and parts all come to the same; what had to be guessed is said."""
    shares, notes = check_shares({"blue": parts[0], "white": parts[1]}, "tint")
    assert sum(shares.values()) == pytest.approx(1)
    assert shares["blue"] == pytest.approx(0.2, abs=0.01)
    assert len(notes) == said


@pytest.mark.parametrize("parts", [(0.3, 0.4), (-0.1, 1.1), (float("nan"), 1.0), (0.0, 0.0)])
def test_shares_that_make_no_sense_are_refused(parts: tuple[float, float]) -> None:
    """Shares that sum to neither 1 nor 100, or are negative, missing or all 0, are refused."""
    with pytest.raises(MendableError, match="shares of tint"):
        check_shares({"blue": parts[0], "white": parts[1]}, "tint")


def test_a_let_down_darker_with_more_white_is_refused() -> None:
    """Let-downs that contradict each other are named."""
    good = [level(0.1, blue=1.0), level(0.3, blue=0.5, white=0.5), level(0.5, blue=0.1, white=0.9)]
    assert len(check_brush_outs(good, "white")[0]) == 3
    swapped = [good[0], level(0.5, blue=0.5, white=0.5), level(0.3, blue=0.1, white=0.9)]
    with pytest.raises(MendableError, match=r"0\.1 blue 0\.9 white” holds more white"):
        check_brush_outs(swapped, "white")


def test_a_colour_out_of_range_is_refused() -> None:
    """A lightness that no colour has, a film of no thickness, and no reading at all."""
    for brush_out, words in (
        (BrushOut({"blue": 1}, (Reading(lab=np.array([140.0, 0, 0])),)), "outside 0 to 100"),
        (BrushOut({"blue": 1}, (Reading(),)), "neither a spectrum nor a colour"),
        (BrushOut({"blue": 1}, (Reading(FLAT),), thickness=0.0), "thickness"),
    ):
        with pytest.raises(MendableError, match=words):
            check_brush_outs([brush_out])


def test_dark_let_downs_are_compared_by_eye() -> None:
    """A dark colour that is clearly darker with white in it is refused, though little reflects."""
    dark = [
        BrushOut(shares, (Reading(lab=np.array([L, 5.0, -20.0])),), name=f"L {L:g}")
        for shares, L in (({"blue": 1.0}, 20.0), ({"blue": 1.0, "white": 4.0}, 15.0))
    ]
    with pytest.raises(MendableError, match="“L 15” holds more white than “L 20”"):
        check_brush_outs(dark, "white")
    assert len(check_brush_outs(dark[::-1][:1], "white")[0]) == 1
