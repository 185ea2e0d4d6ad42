"""Washes: thinning, wiping, passes and the grain."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.colorants import compose
from swatchwright.paint.film import film_reflectance, reflectance_of_ratio
from swatchwright.paint.wash import GRAIN, Wash, dry_film, washed, washed_range

K, S = (100 * spectrum for spectrum in compose({"white": 1.0, "bone_black": 0.02}))
VIVID = reflectance_of_ratio(np.divide(*compose({"violet_blue": 1.0, "white": 0.3})))


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


def test_passes_are_films_on_films() -> None:
    """Three passes are the same as a pass over two, and none is the bare ground."""
    one = float(dry_film(Wash(), 0.05, 0.4))
    two = washed(K, S, 2 * one, VIVID)
    assert_allclose(washed(K, S, 3 * one, VIVID), film_reflectance(K, S, one, two), atol=1e-12)
    assert_allclose(washed(K, S, 0.0, VIVID), VIVID)


def test_a_pale_wash_calms_a_vivid_ground_pass_by_pass() -> None:
    """Chroma falls with every pass of pale grey over vivid blue (common practice, no source)."""
    films = np.array([float(dry_film(Wash(passes=n), 0.02, 0.4)) for n in range(5)])
    _, a, b = lab_of(washed(K, S, films, VIVID)).T
    assert np.all(np.diff(np.hypot(a, b)) < 0)


def test_the_grain_holds_more() -> None:
    """The range runs from the flat to the grain around the mean film's colour."""
    film = float(dry_film(Wash(), 0.02, 0.4))
    seen = washed_range(K, S, film, VIVID)
    assert seen.shape == (len(GRAIN), 36)
    assert_allclose(seen[1], washed(K, S, film, VIVID))
    lightness = lab_of(seen)[:, 0]
    assert lightness[0] < lightness[1] < lightness[2]
