"""A colour moved by as much as one lies from another, held against plain sums of CIELAB."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.values import Lab

COLOURS = st.builds(Lab, st.floats(0, 100), st.floats(-100, 100), st.floats(-100, 100))


@given(COLOURS, COLOURS, COLOURS)
def test_it_lies_as_far_as_they_do(here: Lab, start: Lab, end: Lab) -> None:
    """In a* and b* by the sum, and in lightness as far as there is any."""
    there = here.moved(start, end)
    assert there.triple[1:] == pytest.approx((here.a + end.a - start.a, here.b + end.b - start.b))
    assert pytest.approx(sorted((0.0, here.L + end.L - start.L, 100.0))[1]) == there.L


@given(COLOURS, COLOURS)
def test_from_where_it_is(here: Lab, end: Lab) -> None:
    """From itself it comes to the end."""
    assert here.moved(here, end).triple == pytest.approx(end.triple)
