"""The laws of the colour difference, and its ordering of far colours."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from swatchwright.colour.difference import delta_e_2000, delta_e_terms, far_difference

labs = st.tuples(st.floats(0, 100), st.floats(-128, 128), st.floats(-128, 128))

Triple = tuple[float, float, float]


@given(labs, labs)
def test_it_is_symmetric(one: Triple, two: Triple) -> None:
    """The difference is the same from either colour."""
    assert_allclose(delta_e_2000(one, two), delta_e_2000(two, one), rtol=1e-9, atol=1e-9)
    assert_allclose(far_difference(one, two), far_difference(two, one), rtol=1e-9, atol=1e-9)


@given(labs)
def test_a_colour_does_not_differ_from_itself(lab: Triple) -> None:
    """The difference from itself is exactly nothing."""
    assert float(delta_e_2000(lab, lab)) == 0
    assert float(far_difference(lab, lab)) == 0


@given(labs, labs)
def test_it_is_a_finite_number_not_below_nothing(one: Triple, two: Triple) -> None:
    """Any two colours have a difference, of 0 or more."""
    both = np.array([delta_e_2000(one, two), far_difference(one, two)])
    assert np.all(np.isfinite(both))
    assert np.all(both >= 0)


@given(st.floats(0, 100), st.floats(0, 100), st.floats(-128, 128), st.floats(-128, 128))
def test_a_grey_has_no_hue(L1: float, L2: float, a: float, b: float) -> None:
    """Where one colour is a grey, no part of the difference comes from hue."""
    _, _, dH, _ = delta_e_terms((L1, 0, 0), (L2, a, b))
    assert float(dH) == 0


@given(labs, labs)
def test_the_terms_say_which_way(one: Triple, two: Triple) -> None:
    """Turned round, each term changes its sign and the rotation stays."""
    there, back = delta_e_terms(one, two), delta_e_terms(two, one)
    assert_allclose(there[0], -back[0], atol=1e-9)
    assert_allclose(there[1], -back[1], atol=1e-9)
    # Of exactly opposite hues either may be called ahead.
    assert_allclose(np.abs(there[2]), np.abs(back[2]), rtol=1e-9, atol=1e-9)
    assert_allclose(there[3], back[3], rtol=1e-9, atol=1e-9)


def test_it_works_on_arrays() -> None:
    """Arrays broadcast, and give what single pairs give."""
    one = np.random.default_rng(1).uniform((0, -90, -90), (100, 90, 90), (3, 1, 3))
    two = np.random.default_rng(2).uniform((0, -90, -90), (100, 90, 90), (4, 3))
    all_of_them = delta_e_2000(one, two)
    assert all_of_them.shape == (3, 4)
    singly = [[float(delta_e_2000(a[0], b)) for b in two] for a in one]
    assert_allclose(all_of_them, singly, rtol=0, atol=1e-12)


def test_far_colours_are_ordered_as_they_are_seen() -> None:
    """To a vivid purple a muted purple is nearer than a greenish grey."""
    vivid, muted, greenish = (50, 90, -60), (45, 35, -25), (60, -4, 1)
    assert float(far_difference(vivid, muted)) < float(far_difference(vivid, greenish))


@pytest.mark.parametrize("step", [(0.5, 0, 0), (0, 0.5, 0), (0, 0, 0.5)])
def test_without_rotation_near_colours_hardly_differ(step: Triple) -> None:
    """Away from blue the two differences are the same."""
    start = np.array([55, 30, 40])
    near = start + step
    assert_allclose(far_difference(start, near), delta_e_2000(start, near), rtol=1e-3)
