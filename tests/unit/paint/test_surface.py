"""Laws of a film's surface."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.paint.surface import (
    inner_reflectance,
    internal_diffuse,
    normal_reflectance,
    outer_diffuse,
    seen_reflectance,
)

fractions = st.floats(0, 1)
indices = st.floats(1.05, 2.5)


@given(fractions, st.floats(0, 0.2), st.floats(0, 0.9), fractions)
def test_inside_and_seen_undo_each_other(R: float, k1: float, k2: float, glare: float) -> None:
    """What is seen gives back the reflectance inside, for any surface and glare."""
    seen = seen_reflectance(R, k1, k2, glare)
    assert float(inner_reflectance(seen, k1, k2, glare)) == pytest.approx(R, abs=1e-9)


@given(fractions, fractions, indices, fractions)
def test_seen_rises_with_inside(one: float, two: float, n: float, glare: float) -> None:
    """A lighter film is never seen darker; nothing is seen beyond 0 and 1."""
    k1, k2 = normal_reflectance(n), internal_diffuse(n)
    low, high = sorted((one, two))
    below, above = (float(seen_reflectance(R, k1, k2, glare)) for R in (low, high))
    assert 0 <= below <= above + 1e-12
    assert above <= 1 + 1e-12


@given(fractions, indices, fractions)
def test_the_glare_only_adds_its_own(R: float, n: float, glare: float) -> None:
    """Glare adds its share of the outside reflection and changes nothing else."""
    k1, k2 = normal_reflectance(n), internal_diffuse(n)
    added = float(seen_reflectance(R, k1, k2, glare) - seen_reflectance(R, k1, k2, 0))
    assert added == pytest.approx(glare * float(k1), abs=1e-12)


@given(indices, indices)
def test_a_higher_index_turns_back_more(one: float, two: float) -> None:
    """A higher index reflects more outside and turns back more inside."""
    low, high = sorted((one, two))
    for share in (normal_reflectance, outer_diffuse, internal_diffuse):
        assert float(share(low)) <= float(share(high)) + 1e-12


@given(indices)
def test_the_shares_are_ordered(n: float) -> None:
    """More diffuse light is reflected than straight light, and inside more than outside."""
    assert 0 < float(normal_reflectance(n)) < float(outer_diffuse(n)) < float(internal_diffuse(n))
    assert float(internal_diffuse(n)) < 1


@pytest.mark.parametrize("k2", [0.4, 0.596])
def test_darker_than_its_surface_has_no_inside(k2: float) -> None:
    """A reading below the surface's own reflection comes out negative, to be told by the caller."""
    assert float(inner_reflectance(0.039, 0.04, k2)) < 0
    assert float(inner_reflectance(0.04, 0.04, k2)) == pytest.approx(0, abs=1e-12)
