"""The densest middle of a group of pixels."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.photo.middle import densest, middle

RNG = np.random.default_rng(12)


def test_a_flat_colour_is_its_own_middle() -> None:
    """Noise on both sides cancels."""
    lab = np.array([60.0, 20.0, -30.0]) + RNG.normal(0, 1, (4000, 3))
    assert middle(lab) == pytest.approx([60, 20, -30], abs=0.4)
    assert middle(np.array([[50.0, 1.0, 2.0]])).tolist() == [50, 1, 2]


def test_shade_does_not_pull_it_dark() -> None:
    """With most pixels lit and a long tail of shade it stays at the lit end, unlike the mean."""
    L = 70 - 30 * RNG.beta(1, 5, 5000)
    lab = np.stack([L, np.full(5000, 5.0), np.full(5000, 9.0)], axis=1)
    assert abs(middle(lab)[0] - 70) < 1.5
    assert abs(L.mean() - 70) > 4


def test_of_sun_and_shadow_the_sunlit_part_counts() -> None:
    """Even if more of the cloth lies in shadow."""
    L = np.concatenate([RNG.normal(70, 1.5, 2000), RNG.normal(45, 1.0, 3000)])
    lab = np.stack([L, L / 10, L / 5], axis=1)
    assert middle(lab) == pytest.approx([70, 7, 14], abs=0.7)


def test_a_few_highlights_do_not_count() -> None:
    """A small heap of much lighter pixels is glare and not the colour."""
    L = np.concatenate([RNG.normal(50, 1.5, 5000), RNG.normal(80, 1.5, 300)])
    assert middle(np.stack([L, L, L], axis=1))[0] == pytest.approx(50, abs=0.7)


def test_lighter_than_white_is_no_failure() -> None:
    """A cloth that a wrong reference makes lighter than white still has a middle."""
    assert middle(np.full((200, 3), 104.0)).tolist() == [104, 104, 104]


def test_the_shortest_range_holds_its_share() -> None:
    """Marked values lie together and are at least the share asked for, or sixty."""
    values = np.sort(RNG.exponential(1.0, 1000))
    marked = np.flatnonzero(densest(values, 0.25))
    assert len(marked) == 250
    assert marked[0] <= 20
    assert densest(values[:70], 0.25).sum() == 60
    assert densest(values[:5], 0.25).all()
