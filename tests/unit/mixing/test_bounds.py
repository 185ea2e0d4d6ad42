"""The bound of CIEDE2000 over a box of colours, tried by colours inside it."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.mixing.bounds import least_difference

Floats = NDArray[np.floating[Any]]
Triple = tuple[float, float, float]

labs = st.tuples(st.floats(0, 100), st.floats(-120, 120), st.floats(-120, 120))
sizes = st.tuples(*[st.floats(-3, 2).map(lambda p: 10**p)] * 3)


def inside(low: Floats, high: Floats, seed: int) -> Floats:
    """Draw colours of a box: all over it, on its faces and at its corners."""
    rng = np.random.default_rng(seed)
    at = rng.uniform(-0.3, 1.3, (4000, 3)).clip(0, 1)
    return np.asarray(low + at * (high - low))


@pytest.mark.parametrize("far", [False, True])
@settings(max_examples=300)
@given(wanted=labs, corner=labs, size=sizes, seed=st.integers(0, 5))
def test_no_colour_of_the_box_is_nearer(
    wanted: Triple, corner: Triple, size: Triple, seed: int, *, far: bool
) -> None:
    """Whatever the box and the wanted colour, no colour in the box undercuts the bound."""
    low, high = np.array(corner), np.add(corner, size)
    measure = far_difference if far else delta_e_2000
    apart = measure(wanted, inside(low, high, seed))
    assert float(least_difference(low, high, wanted, far=far)) <= float(apart.min())


@settings(max_examples=400)
@given(labs, st.tuples(*[st.floats(-8, 8)] * 3), sizes, st.integers(0, 5))
def test_nor_close_by(wanted: Triple, step: Triple, size: Triple, seed: int) -> None:
    """The same where it is hardest to keep: boxes beside and around the wanted colour."""
    low = np.add(wanted, step)
    high = low + size
    apart = delta_e_2000(wanted, inside(low, high, seed))
    assert float(least_difference(low, high, wanted)) <= float(apart.min())


@pytest.mark.parametrize(
    "wanted", [(50, 0, 0), (50, 3, -1), (45, 5, -60), (30, -2, -40), (60, 50, 1e-6)]
)
@pytest.mark.parametrize("turn", range(0, 360, 15))
def test_nor_across_the_grey_axis(wanted: Triple, turn: int) -> None:
    """Nor among greys, blues and hues opposite to the wanted one, where the formula jumps."""
    for chroma in (0.0, 1.0, 4.0, 30.0):
        at = np.array([48, chroma * np.cos(np.radians(turn)), chroma * np.sin(np.radians(turn))])
        for size in (0.1, 1.0, 5.0):
            low, high = at - size / 2, at + size / 2
            apart = delta_e_2000(wanted, inside(low, high, turn))
            assert float(least_difference(low, high, wanted)) <= float(apart.min())


@pytest.mark.parametrize("far", [False, True])
@settings(max_examples=200)
@given(wanted=labs, other=labs)
def test_a_box_of_one_colour_is_that_colour(wanted: Triple, other: Triple, *, far: bool) -> None:
    """As the box shrinks to a colour the bound becomes its difference, but across the hue circle.

    There the formula itself jumps from one side to the other.
    """
    measure = far_difference if far else delta_e_2000
    exact = float(measure(wanted, other))
    bound = float(least_difference(np.array(other), np.array(other), wanted, far=far))
    turn = abs(np.degrees(np.arctan2(wanted[2], wanted[1]) - np.arctan2(other[2], other[1])))
    if min(np.hypot(*wanted[1:]), np.hypot(*other[1:])) > 1e-3 and abs(turn - 180) > 30:
        assert bound == pytest.approx(exact, abs=1e-4)
    assert bound <= exact


def test_small_boxes_lose_little() -> None:
    """Over boxes of 0.02 about colours within reach the bound is within 0.05 of the least."""
    rng = np.random.default_rng(5)
    for wanted in ((45.0, 32.0, 24.0), (70.0, -8.0, 10.0), (30.0, 5.0, -40.0), (90.0, 1.0, 6.0)):
        at = np.array(wanted) + rng.normal(0, 2, (50, 3))
        bound = least_difference(at - 0.01, at + 0.01, wanted)
        assert np.all(delta_e_2000(wanted, at) - bound < 0.05)
