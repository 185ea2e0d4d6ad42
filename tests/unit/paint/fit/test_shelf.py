"""Fitting several paints at once."""

from __future__ import annotations

import numpy as np
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.fit.fitted import predict
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.fit.shelf import fit_shelf
from unit.paint.fit.made import BLACK, BLUE, EXACT, PALE, SURFACE, WHITE, paint, truth

RED = paint(warm_red=0.5)
TRUE = {"blue": BLUE, "white": WHITE, "red": RED}


def samples() -> list[BrushOut]:
    """Draw down each paint and let the colours down, over black and white, without error."""
    mixes = [{name: 1.0} for name in TRUE] + [{name: 0.3, "white": 0.7} for name in ("blue", "red")]
    return [
        BrushOut(
            shares,
            tuple(Reading(truth(TRUE, shares, g), ground=g) for g in (BLACK, PALE)),
            thickness_spread=0.02,
        )
        for shares in mixes
    ]


def test_unseen_mixtures_are_predicted() -> None:
    """A mixture of two colours neither of which was mixed with the other comes out right."""
    found = fit_shelf(samples(), surface=SURFACE, errors=EXACT)
    assert set(found) == set(TRUE)
    for shares in ({"blue": 0.5, "red": 0.5}, {"blue": 0.1, "red": 0.1, "white": 0.8}):
        right = lab_of(truth(TRUE, shares, PALE))
        mine = lab_of(predict(found, shares, PALE, surface=SURFACE))
        assert delta_e_2000(right, mine) < 1.0


def test_a_known_paint_is_left_as_it_is() -> None:
    """Paints that are given as known are used and not fitted."""
    found = fit_shelf(samples(), {"white": WHITE}, surface=SURFACE, errors=EXACT)
    assert set(found) == {"blue", "red"}


def test_a_spoilt_sample_does_not_spoil_the_shelf() -> None:
    """One sample of something else among good ones loses its say."""
    good = samples()
    spoilt = BrushOut({"red": 0.6, "white": 0.4}, good[0].readings, thickness_spread=0.02)
    errors = type(EXACT)(reading=1e-3, formula=5e-3, share=1e-2, doubt=3.0)
    found = fit_shelf([*good, spoilt], surface=SURFACE, errors=errors)
    right = lab_of(truth(TRUE, {"red": 0.3, "white": 0.7}, PALE))
    mine = lab_of(predict(found, {"red": 0.3, "white": 0.7}, PALE, surface=SURFACE))
    assert delta_e_2000(right, mine) < 2.0


def test_draws_scatter_as_the_covariance_says() -> None:
    """Drawn paints have the mean and the spread that the fit states."""
    blue = fit_shelf(samples(), surface=SURFACE, errors=EXACT)["blue"]
    K, S = blue.draw(4000, np.random.default_rng(1))
    spread = np.sqrt(np.sum(blue.factor**2, axis=1))
    drawn = np.concatenate([np.log(K).std(axis=0), np.log(S).std(axis=0)])
    assert_allclose(drawn, spread, rtol=0.08, atol=1e-6)
    assert_allclose(np.log(K).mean(axis=0), np.log(blue.K), atol=0.08 * spread.max())


def test_a_trace_of_a_strong_colour_is_not_taken_for_spoilt() -> None:
    """A strong, dark blue is learnt from a trace of it in white, unlike its masstone as that is."""
    true = {"white": WHITE, "night": paint(green_blue=6.0)}
    shares = {"night": 0.06, "white": 0.94}
    seen = [
        BrushOut(
            mix,
            tuple(Reading(truth(true, mix, g), ground=g) for g in (BLACK, PALE)),
            thickness_spread=0.2,
        )
        for mix in ({"white": 1.0}, {"night": 1.0}, shares)
    ]
    found = fit_shelf(seen, surface=SURFACE)
    right = lab_of(truth(true, shares, PALE))
    mine = lab_of(predict(found, shares, PALE, surface=SURFACE))
    assert delta_e_2000(right, mine) < 2.0
