"""Mixtures of fitted paints, and their spread."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.film import film_reflectance, reflectance_of_ratio
from swatchwright.paint.fit.fitted import (
    FittedPaint,
    at_its_level,
    in_unit,
    known_paint,
    predict,
    predict_draws,
    spread_of_lab,
)
from swatchwright.paint.fit.prior import Surface
from swatchwright.paint.paints import HowKnown
from swatchwright.paint.surface import inner_reflectance, seen_reflectance
from unit.paint.fit.made import BLUE, PALE, WHITE

BARE = Surface(k1=0.0, k2=0.0)


def test_a_mixture_is_the_sum_of_its_paints() -> None:
    """K and S add by share (Duncan 1940), whatever the shares sum to."""
    K, S = (0.25 * b + 0.75 * w for b, w in ((BLUE.K, WHITE.K), (BLUE.S, WHITE.S)))
    paints = {"blue": BLUE, "white": WHITE}
    expected = seen_reflectance(reflectance_of_ratio(K / S), 0.04, 0.6)
    for shares in ({"blue": 0.25, "white": 0.75}, {"blue": 1.0, "white": 3.0}):
        assert_allclose(predict(paints, shares), expected)


def test_a_film_over_a_ground() -> None:
    """Over a ground a film has a thickness, and the ground is seen through the film's surface."""
    found = predict({"blue": BLUE}, {"blue": 1.0}, PALE, 0.5)
    ground = inner_reflectance(PALE, 0.0, 0.6)
    expected = seen_reflectance(film_reflectance(BLUE.K, BLUE.S, 0.5, ground), 0.04, 0.6)
    assert_allclose(found, expected)
    assert_allclose(predict({"blue": BLUE}, {"blue": 1.0}, PALE, 0.0, BARE), PALE, atol=1e-12)


def test_a_voluminous_paint_counts_more() -> None:
    """By mass, a paint of twice the volume is as twice as much of it."""
    double = FittedPaint(BLUE.K, BLUE.S, BLUE.factor, volume=2.0)
    one = predict({"blue": double, "white": WHITE}, {"blue": 0.25, "white": 0.75})
    two = predict({"blue": BLUE, "white": WHITE}, {"blue": 0.4, "white": 0.6})
    assert_allclose(one, two)


def test_what_is_exact_has_no_spread() -> None:
    """A known paint is drawn as it is, and its colour has only the theory's own spread."""
    assert WHITE.how_known is HowKnown.MEASURED
    drawn = predict_draws({"white": WHITE}, {"white": 1.0}, 5, np.random.default_rng(0))
    assert_allclose(drawn, predict({"white": WHITE}, {"white": 1.0})[None].repeat(5, axis=0))
    middle, covariance = spread_of_lab(drawn, formula=2.0)
    assert_allclose(middle, lab_of(drawn[0]))
    assert_allclose(covariance, 4 * np.eye(3), atol=1e-9)


def test_spread_follows_strength() -> None:
    """If a blue's strength is known to 10 % only, its tint spreads along its own tint series."""
    factor = np.concatenate([np.full(36, 0.1), np.full(36, 0.1)])[:, None]
    vague = FittedPaint(BLUE.K, BLUE.S, factor)
    paints = {"blue": vague, "white": WHITE}
    drawn = predict_draws(paints, {"blue": 0.1, "white": 0.9}, 2000, np.random.default_rng(1))
    stronger, weaker = (
        lab_of(predict(paints, {"blue": 0.1 * f, "white": 0.9})) for f in (1.1, 1 / 1.1)
    )
    _, covariance = spread_of_lab(drawn)
    assert float(np.sqrt(np.trace(covariance))) == pytest.approx(
        float(np.linalg.norm(stronger - weaker)) / 2, rel=0.1
    )


def test_units() -> None:
    """In another unit a film looks the same if its thickness is given in it."""
    per_mm = in_unit(BLUE, 110.0)
    one = predict({"blue": BLUE}, {"blue": 1.0}, PALE, 0.55)
    assert_allclose(predict({"blue": per_mm}, {"blue": 1.0}, PALE, 0.55 / 110.0), one)
    assert_allclose(known_paint(per_mm.K, per_mm.S).K, 110.0 * BLUE.K)


def test_a_white_is_the_measure_of_strength() -> None:
    """At its own level a paint keeps the doubt about K that is left when S is known."""
    rng = np.random.default_rng(2)
    together = np.vstack([np.eye(36), np.eye(36)]) * 0.5
    factor = np.hstack([together, 0.05 * rng.normal(size=(72, 40))])
    found = at_its_level(FittedPaint(WHITE.K, WHITE.S, factor))
    whole, left = factor @ factor.T, found.factor @ found.factor.T
    # The conditional covariance of a Gaussian, as any textbook has it.
    K, S, cross = whole[:36, :36], whole[36:, 36:], whole[:36, 36:]
    read = S + 0.005**2 * np.eye(36)
    assert_allclose(left[:36, :36], K - cross @ np.linalg.solve(read, cross.T), atol=1e-9)
    assert np.sqrt(np.diag(left))[36:].max() < 0.006
    assert np.all(np.diag(left)[:36] < 0.8 * np.diag(whole)[:36])
    assert at_its_level(WHITE).factor.shape == WHITE.factor.shape
