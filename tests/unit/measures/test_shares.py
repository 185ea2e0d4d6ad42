"""Rounding that loses nothing."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.measures.shares import rounded_amounts, rounded_shares

amounts = st.lists(st.floats(0, 1e6), min_size=1, max_size=8).filter(lambda x: sum(x) > 1e-6)
steps_ = st.sampled_from([1, 3, 10, 200, 1000, 100_000])


def in_steps(values: tuple[float, ...], steps: int) -> list[int]:
    """Count steps in values that should be whole steps."""
    whole = [round(v * steps) for v in values]
    assert [w / steps for w in whole] == list(values)
    return whole


@given(amounts, steps_)
def test_shares_sum_to_one(shares: list[float], steps: int) -> None:
    """Rounded shares are whole steps, and exactly as many as make one."""
    assert sum(in_steps(rounded_shares(shares, steps), steps)) == steps


@given(amounts, steps_)
def test_no_share_is_off_by_a_step(shares: list[float], steps: int) -> None:
    """Each share is less than one step from the exact one."""
    total = sum(Fraction(share) for share in shares)
    for share, whole in zip(shares, in_steps(rounded_shares(shares, steps), steps), strict=True):
        # The exact share is found in floats, which may put a whole one a hair off.
        assert abs(Fraction(share) / total * steps - whole) < 1 + Fraction(1, 10**6)


@given(amounts, steps_)
def test_rounding_again_changes_nothing(shares: list[float], steps: int) -> None:
    """Shares that are whole steps stay as they are."""
    once = rounded_shares(shares, steps)
    assert rounded_shares(once, steps) == once


@given(amounts, steps_)
def test_the_order_of_size_is_kept(shares: list[float], steps: int) -> None:
    """A larger share is never rounded to less than a smaller one."""
    pairs = sorted(zip(shares, rounded_shares(shares, steps), strict=True))
    assert all(a[1] <= b[1] for a, b in pairwise(pairs) if a[0] < b[0])


def test_the_largest_remainders_get_the_rest() -> None:
    """The method of largest remainders, as an apportionment of ten seats shows it."""
    # 10 seats to 47, 16, 15.8, 12, 6.1, 3.1 per cent: quotas 4.7, 1.6, 1.58, 1.2, 0.61, 0.31.
    assert rounded_shares([47, 16, 15.8, 12, 6.1, 3.1], 10) == (0.5, 0.2, 0.1, 0.1, 0.1, 0.0)


@given(amounts, st.integers(1, 1_000_000), st.sampled_from([0.1, 0.5, 1.0, 5.0]))
def test_amounts_sum_to_the_amount(shares: list[float], tenths: int, step: float) -> None:
    """Amounts are multiples of the step and add up to the whole, to the nearest step."""
    total = tenths / 10
    parts = rounded_amounts(shares, max(total, step), step)
    exact_step = Fraction(str(step))
    exact = [Fraction(str(part)) for part in parts]
    assert all((part / exact_step).denominator == 1 for part in exact)
    assert abs(sum(exact) - Fraction(str(max(total, step)))) <= exact_step / 2


def test_grams_of_a_batch() -> None:
    """500 ml in three shares, to 0.1 ml."""
    assert rounded_amounts([0.722, 0.192, 0.086], 500) == (361.0, 96.0, 43.0)
    assert rounded_amounts([1, 1, 1], 100) == (33.4, 33.3, 33.3)


@pytest.mark.parametrize("step", [0.1, 0.25, 1])
def test_nothing_beyond_the_digits_of_the_step(step: float) -> None:
    """No amount shows the noise of floating arithmetic."""
    digits = {0.1: 1, 0.25: 2, 1: 0}[step]
    for part in rounded_amounts([0.3, 0.3, 0.4], 700, step):
        assert part == round(part, digits)
