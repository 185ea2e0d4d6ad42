"""One colour of a cloth from several photos, against the theory of weighted means."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.mixing.readings import SHARED, contradict, one_reading
from swatchwright.values import KnownColour, Lab, isotropic

FIRST = KnownColour(Lab(50, 20, 20), isotropic(3.0), "a photo")


def read(L: float, a: float, b: float, usual: float) -> KnownColour:
    """Give a later reading."""
    return KnownColour(Lab(L, a, b), isotropic(usual), "")


def test_one_photo_is_what_it_is() -> None:
    """Alone, or with readings that carry no doubt, the first stays as it was."""
    assert one_reading(FIRST, []) == FIRST
    assert one_reading(FIRST, [KnownColour(Lab(60, 20, 20), None, "")]) == FIRST
    exact = KnownColour(Lab(50, 20, 20), None, "")
    assert one_reading(exact, [FIRST]) == exact


def test_two_as_good_count_alike_and_narrow_what_is_their_own() -> None:
    """Of errors that are shared by so much, the mean of two has (1 + shared) / 2 of the variance.

    The variance of a mean of two correlated readings, as in any textbook of statistics.
    """
    both = one_reading(FIRST, [read(52, 20, 18, 3.0)])
    assert both.lab.triple == pytest.approx((51, 20, 19), abs=1e-6)
    assert both.covariance is not None
    assert FIRST.covariance is not None
    narrowed = both.covariance[0][0] / FIRST.covariance[0][0]
    assert narrowed == pytest.approx((1 + SHARED) / 2, rel=1e-3)


def test_a_much_better_photo_nearly_decides() -> None:
    """A first photo without a grey gives way to a second with one."""
    rough = KnownColour(Lab(50, 20, 20), isotropic(9.0), "a photo")
    both = one_reading(rough, [read(56, 20, 14, 2.0)])
    assert pytest.approx(56, abs=0.4) == both.lab.L
    assert both.lab.b == pytest.approx(14, abs=0.4)


def test_a_photo_of_another_cloth_is_left_out() -> None:
    """What contradicts the first reading does not move it."""
    other = read(80, -10, 0, 3.0)
    assert contradict(FIRST, other)
    assert one_reading(FIRST, [other]) == FIRST


@given(
    st.lists(
        st.tuples(st.floats(-3, 3), st.floats(-3, 3), st.floats(-3, 3), st.floats(0.5, 9)),
        min_size=1,
        max_size=5,
    )
)
def test_more_photos_never_make_it_less_sure_nor_surer_than_they_can(
    rows: list[tuple[float, float, float, float]],
) -> None:
    """Together they are no worse than the best, and what they share stays."""
    more = [read(50 + L, 20 + a, 20 + b, usual) for L, a, b, usual in rows]
    both = one_reading(FIRST, more)
    assert both.covariance is not None
    used = [FIRST, *(one for one in more if not contradict(FIRST, one))]
    best = min(np.trace(np.array(one.covariance)) for one in used)
    assert SHARED * best * 0.999 < np.trace(np.array(both.covariance)) <= best * 1.001
