"""Fitting one paint from each kind of brush-outs."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.fit.fitted import FittedPaint, predict, predict_draws, spread_of_lab
from swatchwright.paint.fit.one import fit_paint
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.paints import HowKnown
from unit.paint.fit.made import BLACK, BLUE, EXACT, PALE, SURFACE, WHITE, brushed, paint, truth


def fitted(brush_outs: list[BrushOut]) -> FittedPaint:
    """Fit the blue with what the tests say of the readings."""
    return fit_paint(brush_outs, {"white": WHITE}, surface=SURFACE, errors=EXACT)


def spread(found: FittedPaint) -> float:
    """Give the root-mean-square spread of the blue's tint."""
    rng = np.random.default_rng(0)
    paints = {"blue": found, "white": WHITE}
    drawn = predict_draws(paints, {"blue": 0.2, "white": 0.8}, 400, rng, surface=SURFACE)
    return float(np.sqrt(np.trace(spread_of_lab(drawn)[1])))


def test_a_film_over_black_and_white_gives_both_constants() -> None:
    """One film over two grounds fixes absorption and scattering of every band."""
    found = fitted([brushed(1.0, grounds=(BLACK, PALE))])
    assert found.how_known is HowKnown.MEASURED
    seen = truth({"blue": BLUE}, {"blue": 1.0}, np.full(36, 0.4))
    assert_allclose(
        predict({"blue": found}, {"blue": 1.0}, np.full(36, 0.4), surface=SURFACE), seen, atol=0.01
    )
    strong = BLUE.K < 2.0
    assert_allclose(found.K[strong], BLUE.K[strong], rtol=0.15, atol=0.02)


@pytest.mark.parametrize(("colour", "limit"), [(False, 0.3), (True, 0.8)])
def test_let_downs_predict_other_let_downs(colour: bool, limit: float) -> None:  # noqa: FBT001
    """Masstone and two let-downs, as spectra or colours, predict a third let-down."""
    found = fitted([brushed(c, colour=colour) for c in (1.0, 0.5, 0.1)])
    assert found.how_known is (HowKnown.FITTED if colour else HowKnown.MEASURED)
    for shares in ({"blue": 0.25, "white": 0.75}, {"blue": 0.03, "white": 0.97}):
        right = truth({"blue": BLUE, "white": WHITE}, shares)
        mine = predict({"blue": found, "white": WHITE}, shares, surface=SURFACE)
        assert delta_e_2000(lab_of(right), lab_of(mine)) < limit


def test_one_colour_is_met_and_called_a_guess() -> None:
    """One colour is reproduced, by a paint that is said to be guessed and to be little known."""
    found = fitted([brushed(1.0, colour=True)])
    assert found.how_known is HowKnown.GUESSED
    right = truth({"blue": BLUE}, {"blue": 1.0})
    mine = predict({"blue": found}, {"blue": 1.0}, surface=SURFACE)
    assert delta_e_2000(lab_of(right), lab_of(mine)) < 0.5
    assert spread(found) > 3


@pytest.mark.parametrize(
    "amounts",
    [
        {"white": 1.0, "bone_black": 0.0004},
        {"white": 1.0, "mid_yellow": 0.005, "bone_black": 0.002},
        {"white": 0.85, "mid_blue": 0.06, "bone_black": 0.006},
        {"white": 0.3, "warm_red": 0.4},
        {"white": 0.02, "violet_blue": 1.0},
    ],
    ids=["white", "cream", "pale blue", "red", "deep blue"],
)
def test_one_colour_does_not_tell_how_much_pigment_a_paint_holds(amounts: dict[str, float]) -> None:
    """Pale or deep, a paint known by one colour is held to be about as strong as any other.

    The truth is a sum of measured colorants [Geldof2018] of about one unit in all. A white was once
    taken for one of twenty units, as it has so little of the others.
    """
    made = paint(**amounts)
    colour = Reading(lab=lab_of(truth({"p": made}, {"p": 1.0})), covariance=np.eye(3))
    found = fit_paint([BrushOut({"p": 1.0}, (colour,))])
    assert 0.5 < sum(found.amounts.values()) < 2.5
    assert abs(float(np.log(found.S[5:33] / made.S[5:33]).mean())) < np.log(4.0)


def test_more_brush_outs_leave_less_spread() -> None:
    """Each further brush-out narrows what a tint may look like."""
    brush_outs = [brushed(c, colour=True) for c in (1.0, 0.5, 0.1)]
    spreads = [spread(fitted(brush_outs[:n])) for n in (1, 2, 3)]
    assert spreads[0] > spreads[1] > spreads[2]


def test_a_guessed_blue_and_yellow_make_green() -> None:
    """Blue and yellow known by one colour each give a green, not the grey of their mean."""
    yellow = paint(lemon_yellow=0.5, white=0.3)
    both = {
        "blue": fitted([brushed(1.0, colour=True)]),
        "yellow": fit_paint(
            [
                BrushOut(
                    {"yellow": 1.0},
                    (Reading(lab=lab_of(truth({"y": yellow}, {"y": 1.0}))),),
                )
            ],
            surface=SURFACE,
            errors=EXACT,
        ),
    }
    _, a, b = lab_of(predict(both, {"blue": 0.2, "yellow": 0.8}, surface=SURFACE))
    assert a < -5
    assert b > 0


def test_two_unknown_paints_are_refused() -> None:
    """One paint at a time: which of two is meant cannot be told."""
    with pytest.raises(ValueError, match="exactly one"):
        fit_paint([BrushOut({"blue": 1, "red": 1}, brushed(1.0).readings)])
