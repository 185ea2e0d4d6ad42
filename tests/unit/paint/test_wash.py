"""Washes: thinning, wiping, passes and the grain."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.paint.wash import GRAIN, Wash, dry_film


def test_thinning_and_wiping_leave_less() -> None:
    """Half the paint in the wash and a quarter of it left is an eighth of the dry film."""
    full = dry_film(Wash(water=0, left=1), 0.1, 0.4)
    assert float(full) == pytest.approx(0.04)
    assert float(dry_film(Wash(water=1, left=0.25), 0.1, 0.4)) == pytest.approx(0.04 / 8)
    assert float(dry_film(Wash(passes=3), 0.1, 0.4)) == pytest.approx(3 * 0.02)


@pytest.mark.parametrize("wash", [Wash(water=-1), Wash(left=1.5), Wash(passes=-1)])
def test_a_wash_that_cannot_be_is_refused(wash: Wash) -> None:
    """No wash has less than no water or leaves more than was laid."""
    with pytest.raises(ValueError, match="a wash has"):
        dry_film(wash, 0.1, 0.4)


def test_passes_stack() -> None:
    """Films of many washes at once are each wash's own, and no pass leaves none."""
    wet, solids = np.array([0.08, 0.05]), np.array([0.4, 0.3])
    once = dry_film(Wash(3, 0.2, 1), wet, solids)
    assert_allclose(once, 0.2 * wet * solids / 4)
    assert_allclose(dry_film(Wash(3, 0.2, 3), wet, solids), 3 * once)
    assert_allclose(dry_film(Wash(passes=0), wet, solids), 0)


def test_the_grain_holds_more() -> None:
    """Flats, whole and grain are a rising range around the mean film."""
    flat, whole, grain = GRAIN
    assert 0 <= flat < whole < grain
    assert whole == 1
    assert (flat + grain) / 2 == pytest.approx(whole)
