"""Fitting the paints of a sheet: each kind of sheet, on a paint whose truth is known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.acts.fit import Gloss, fit_sheet
from swatchwright.acts.mix import look_of_mix
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.brush_outs import Sheet, parse_sheet
from swatchwright.shelf.measured.values import Measurement, Measurements
from swatchwright.shelf.shelf import Shelf
from unit.acts.films_made import LET_DOWNS, RED, SHELF, TRUE, WHITE, off, seen, sheet_of

UNSEEN = (0.75, 0.25, 0.03)


@pytest.mark.parametrize("spectra", [True, False], ids=["spectra", "colours"])
def test_let_downs_predict_unseen_ones(spectra: bool) -> None:  # noqa: FBT001
    """From a masstone and two let-downs, others with white and another colour come out right."""
    found = fit_sheet(sheet_of(spectra=spectra), SHELF, usually_off=0.3)
    (fit,) = found.fits
    assert fit.paint.how_known is (HowKnown.MEASURED if spectra else HowKnown.FITTED)
    assert (fit.before, fit.brush_outs) == (None, 3)
    assert fit.paint.family is Family.SATIN
    assert max(off(fit.paint, share) for share in UNSEEN) < 1.0
    assert off(fit.paint, 0.5, RED) < 2.0
    assert max(one.delta_e for one in found.read_back) < 0.6
    assert [p.id for p in found.shelf.paints] == [*(p.id for p in SHELF.paints), "blue"]
    # The white is what the blue was measured by; the others are as they were.
    assert [p.spread is None for p in found.shelf.paints] == [False, True, True, False]


@pytest.mark.parametrize("spectra", [True, False], ids=["spectra", "colours"])
def test_over_black_and_white(spectra: bool) -> None:  # noqa: FBT001
    """One coat over black and over white tells K and S, and so how the paint hides."""
    sheet = sheet_of(({"blue": 1},), spectra=spectra, grounds=True)
    (fit,) = fit_sheet(sheet, SHELF, usually_off=0.3).fits
    assert off(fit.paint, 0.9999) < 1.5
    assert float(np.log(fit.paint.S / TRUE.S).mean()) == pytest.approx(0, abs=0.5)
    assert off(fit.paint, 0.2) < 8


def test_one_colour_is_a_guess() -> None:
    """A colour alone gives a paint of that colour, and says that its mixes are hardly known."""
    (fit,) = fit_sheet(sheet_of(({"blue": 1},)), SHELF, usually_off=0.5).fits
    assert fit.paint.how_known is HowKnown.GUESSED
    assert off(fit.paint, 0.9999) < 1.5
    assert fit.likely.words == "hardly known"
    assert fit.likely.with_white is not None
    assert fit.likely.with_white.paints > 3.5
    assert "white-clean" in fit.next.words


def test_more_brush_outs_leave_less_doubt() -> None:
    """The stated doubt falls from one colour to three, and the next brush-out is a new one."""
    doubts = []
    for count in (1, 2, 3):
        (fit,) = fit_sheet(sheet_of(LET_DOWNS[:count]), SHELF, usually_off=0.5).fits
        assert fit.likely.with_white is not None
        doubts.append(fit.likely.with_white.paints)
        assert dict(fit.next.mix) not in [dict(mix) for mix in LET_DOWNS[:count]]
        assert fit.next.spread_then <= fit.next.spread_now
    assert doubts == sorted(doubts, reverse=True)
    assert doubts[2] < 0.5 * doubts[0]


def test_the_white_may_be_new_too() -> None:
    """Without any shelf a white and a colour are fitted in turn, and predict their own mixes."""
    sheet = sheet_of(({"white-clean": 1}, *LET_DOWNS), spectra=True)
    found = fit_sheet(sheet)
    assert [fit.paint.id for fit in found.fits] == ["white-clean", "blue"]
    assert max(one.delta_e for one in found.read_back) < 0.8
    white, blue = (fit.paint for fit in found.fits)
    assert float(white.S.mean()) == pytest.approx(110)
    for share in UNSEEN:
        mine = look_of_mix(found.shelf, [("blue", share), ("white-clean", 1 - share)])
        right = lab_of(seen({"blue": share, "white-clean": 1 - share}))
        assert delta_e_2000(mine.dry.triple, right) < 1.5
    assert blue.how_known is white.how_known is HowKnown.MEASURED
    with_white = found.fits[1].likely.with_white
    assert with_white is not None
    # The white's own strength cancels: it is no doubt about mixes with it.
    assert with_white.paints < 3


def test_a_paint_of_the_shelf_is_fitted_again() -> None:
    """A paint that was guessed keeps its place, name and tins, and is known better after."""
    guessed = replace(TRUE, id="blue", K=TRUE.K * 2, how_known=HowKnown.GUESSED)
    shelf = Shelf("mine", (guessed, *SHELF.paints))
    found = fit_sheet(sheet_of(), shelf, again=["blue"], usually_off=0.3)
    assert [p.id for p in found.shelf.paints] == [p.id for p in shelf.paints]
    again = found.shelf.paints[0]
    assert (again.name, again.tins, again.density) == (TRUE.name, TRUE.tins, TRUE.density)
    assert found.fits[0].before is HowKnown.GUESSED
    assert off(again, 0.25) < 1


def test_readings_from_a_measurement_file() -> None:
    """A sheet may name samples of a measurement file, which need not cover the whole grid."""
    nm = np.arange(400.0, 701.0, 10.0)
    rows = tuple(
        Measurement(f"S{n}", f"S{n}", nm, seen(mix)[2:33], None)
        for n, mix in enumerate(LET_DOWNS, 1)
    )
    text = "id,mix,family,volume_solids,reading\n" + "\n".join(
        f"f{n},{' '.join(f'{i}={p:g}' for i, p in mix.items())},"
        f"{'satin,0.39' if len(mix) == 1 else ','},S{n}"
        for n, mix in enumerate(LET_DOWNS, 1)
    )
    found = fit_sheet(parse_sheet(text, "x"), SHELF, measured=Measurements("m", rows))
    assert found.fits[0].paint.how_known is HowKnown.MEASURED
    assert max(off(found.fits[0].paint, share) for share in UNSEEN) < 1
    with pytest.raises(MendableError, match="holds none"):
        fit_sheet(parse_sheet(text, "x"), SHELF, measured=Measurements("m", rows[1:]))


def test_parts_by_weight() -> None:
    """Grams of paints whose densities are known are as good as millilitres."""
    by_weight = "id,mix,family,volume_solids,density_g_per_ml,l,a,b\n"
    for n, mix in enumerate(LET_DOWNS, 1):
        lab = ",".join(map(str, sheet_of((mix,)).strips[0].lab.triple))  # type: ignore[union-attr]
        grams = {"blue": 2.0 * mix["blue"], "white-clean": 1.44 * mix.get("white-clean", 0)}
        told = " ".join(f"{i}={g:g}" for i, g in grams.items() if g)
        by_weight += f"f{n},{told},{'satin,0.39,2' if n == 1 else ',,'},{lab}\n"
    found = fit_sheet(parse_sheet(by_weight, "x"), SHELF, by_weight=True, usually_off=0.3)
    assert max(off(found.fits[0].paint, share) for share in UNSEEN) < 1
    no_density = parse_sheet(by_weight.replace("0.39,2,", "0.39,,"), "x")
    with pytest.raises(MendableError, match="density of blue is not known"):
        fit_sheet(no_density, SHELF, by_weight=True)


def test_gloss_that_was_read_is_taken_off() -> None:
    """An instrument that reads the gloss of a satin paint sees more than the eye, and is told."""
    shift = 0.04 * (1 - TRUE.finish.glare)
    wrong = fit_sheet(_lifted(shift), SHELF).fits[0].paint
    right = fit_sheet(_lifted(shift), SHELF, gloss=Gloss.INCLUDED).fits[0].paint
    assert off(right, 0.9999) < 0.5 * off(wrong, 0.9999)


def _lifted(shift: float) -> Sheet:
    sheet = sheet_of(({"blue": 1},), spectra=True)
    (strip,) = sheet.strips
    assert strip.reflectance is not None
    return replace(sheet, strips=(replace(strip, reflectance=strip.reflectance + shift),))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("a,blue=1,,20,10,-30\nb,blue=1 white-clean=4,,15,10,-30", "holds more white than"),
        ("a,blue=1 red=1,,20,10,-30\nb,blue=1 red=3,,30,0,-30", "Nothing tells blue and red apart"),
        ("a,blue=1,ochre,20,10,-30", "lies over “ochre”"),
        ("a,blue=1,,,,", "holds no reading"),
        ("a,white-clean=1,,95,0,2", "on the shelf already"),
        ("a,blue=1,,20,1,1\na,blue=1,black,20,1,1", "said to hide, and to lie over a ground"),
        ("a,blue=1,black,20,1,1\na,blue=2 white-clean=1,white,20,1,1", "both of film a"),
    ],
)
def test_sheets_that_cannot_be_fitted(text: str, words: str) -> None:
    """Contradictions and gaps are told by line or film."""
    with pytest.raises(MendableError, match=words):
        fit_sheet(parse_sheet("id,mix,over,l,a,b\n" + text, "sheet.csv"), SHELF)


def test_a_paint_to_fit_again_must_be_in_the_sheet() -> None:
    """Fitting again a paint that was not brushed out is refused."""
    with pytest.raises(MendableError, match="soft-black is to be fitted again"):
        fit_sheet(sheet_of(), SHELF, again=["soft-black"])


def test_what_was_assumed_is_said() -> None:
    """Colours of unknown error, an unread card, a weak white and a spoilt strip are all said."""
    weak = Shelf("mine", (replace(WHITE, how_known=HowKnown.GUESSED),))
    text = (
        "id,mix,over,coats,l,a,b\n1,blue,,,20,20,-40\n2,blue=1 white-clean=1,,,80,60,60\n"
        "3,blue,black,1,18,17,-31\n4,blue=1 white-clean=3,,,,,\n"
    )
    notes = " ".join(fit_sheet(parse_sheet(text, "x"), weak).notes)
    for said in (
        "usually within 5.5",
        "black of the card was not read",
        "white-clean (guessed)",
        "Read as another colour than the paints on it give: 2 (off by ",
        "See whether its parts",
        "Not read yet, and left out: 4",
        "No finish family is given for blue",
    ):
        assert said in notes
