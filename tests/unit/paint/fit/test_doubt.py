"""What is not known of paints, carried to the colours of their mixes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import usual_difference
from swatchwright.paint.fit.doubt import mix_covariances, spread_after
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.values import Lab
from unit.paint.made import paint, smooth

RNG = np.random.default_rng(4)
BLUE = paint("blue", smooth([1, 0, 1, 2.5, 2.6]), 15.0, spread=0.02 * RNG.normal(size=(5, 72)))
WHITE = paint("white", 0.4, 110.0, spread=0.01 * RNG.normal(size=(3, 72)), volume_solids=0.6)
PAIR = [BLUE, WHITE]
SHARES = [(0.9, 0.1), (0.5, 0.5), (0.1, 0.9)]


def drawn(one: Paint, count: int, rng: np.random.Generator) -> list[Paint]:
    """Draw a paint as it may really be."""
    assert one.spread is not None
    steps = rng.standard_normal((count, len(one.spread))) @ one.spread
    return [replace(one, K=one.K * np.exp(s[:36]), S=one.S * np.exp(s[36:])) for s in steps]


def test_it_is_the_covariance_of_drawn_mixes() -> None:
    """Carried along the slopes, doubt comes out as the scatter of many mixes of drawn paints."""
    rng = np.random.default_rng(1)
    blues, whites = (drawn(one, 1500, rng) for one in PAIR)
    found = mix_covariances(PAIR, SHARES, formula=0.0)
    every = stack([*blues, *whites])
    which = np.arange(3000).reshape(2, -1).T
    for shares, covariance in zip(SHARES, found, strict=True):
        labs = dry_lab(mix(every, which, np.tile(shares, (1500, 1))))
        scatter = np.cov(labs.T)
        assert_allclose(covariance, scatter, atol=0.12 * np.trace(scatter))


def test_the_theory_adds_its_own_to_mixes_only() -> None:
    """What the theory gets wrong counts in a mix, and not where a paint stands alone."""
    plain = [replace(one, spread=None) for one in PAIR]
    assert_allclose(mix_covariances(plain, [(0.5, 0.5)], formula=2.0)[0], 4 * np.eye(3))
    assert_allclose(mix_covariances(plain[:1], [(1.0,)], formula=2.0)[0], 0)
    assert_allclose(mix_covariances(plain, [(1.0, 0.0)], formula=2.0)[0], 0)


def test_strength_known_to_a_tenth() -> None:
    """A paint known but for a tenth of its strength scatters as a tenth more or less of it does."""
    vague = replace(BLUE, spread=np.full((1, 72), 0.1))
    white = replace(WHITE, spread=None, volume_solids=BLUE.volume_solids)
    (found,) = mix_covariances([vague, white], [(0.1, 0.9)], formula=0.0)
    parts = np.array([[0.11, 0.9], [0.1 / 1.1, 0.9]])
    more, less = dry_lab(
        mix(stack([vague, white]), [[0, 1]] * 2, parts / parts.sum(axis=1, keepdims=True))
    )
    assert float(np.sqrt(np.trace(found))) == pytest.approx(
        float(np.linalg.norm(more - less)) / 2, rel=0.15
    )


def test_a_usual_difference_is_the_median() -> None:
    """Half of what a colour may be lies within the usual difference."""
    lab, root = np.array([45.0, 30, 20]), np.diag([1.0, 2.0, 0.5])
    usual = usual_difference(Lab.of(lab), root @ root.T)
    many = lab + np.random.default_rng(7).standard_normal((40_000, 3)) @ root.T
    assert np.mean(delta_e_2000(lab, many) < usual) == pytest.approx(0.5, abs=0.03)
    assert usual_difference(Lab.of(lab), np.zeros((3, 3))) == 0


def test_a_reading_leaves_less() -> None:
    """A mix that is read leaves what Bayes' rule says of it: here, nearly what it was read to."""
    shares = (0.3, 0.7)
    left = replace(BLUE, spread=spread_after(PAIR, shares, 0.1))
    exact = replace(WHITE, spread=None)
    (before,) = mix_covariances([BLUE, exact], [shares], formula=0.0)
    (after,) = mix_covariances([left, exact], [shares], formula=0.0)
    noise = 0.01 * np.eye(3)
    assert_allclose(after, before - before @ np.linalg.inv(before + noise) @ before, atol=1e-9)


def test_of_what_is_exact_nothing_can_be_left() -> None:
    """A paint without a spread cannot be told what would be left of it."""
    with pytest.raises(ValueError, match="spread"):
        spread_after([replace(BLUE, spread=None), WHITE], (0.5, 0.5), 1.0)
