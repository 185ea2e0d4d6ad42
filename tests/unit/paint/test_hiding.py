"""How thick a film hides."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.paint.film import ratio_of_reflectance
from swatchwright.paint.hiding import coats_to_hide, contrast, hiding_thickness

ONE = np.ones(36)


@pytest.mark.parametrize(
    ("Rinf", "SX"),
    # S X at which Y over black is 0.98 of Y over a white of 0.8 (the contrast of ISO 6504 and
    # ASTM D2805): the hyperbolic form of Kubelka 1948 solved for it.
    [(0.95, 10.808942), (0.85, 7.667049), (0.70, 4.838052), (0.50, 2.871655), (0.30, 1.636515)],
)
def test_full_hiding(Rinf: float, SX: float) -> None:
    """The thickness that hides is the one that theory says."""
    K = float(ratio_of_reflectance(Rinf)) * ONE
    assert float(hiding_thickness(K, ONE)) == pytest.approx(SX, abs=2e-6)
    assert float(contrast(K, ONE, SX)) == pytest.approx(0.98, abs=1e-6)


def test_coats() -> None:
    """A film of S X = 2 a coat and a thick-film reflectance of 0.85 hides with the fourth."""
    K = float(ratio_of_reflectance(0.85)) * ONE
    found = [round(float(contrast(K, ONE, 2 * n)), 4) for n in (1, 2, 3, 4)]
    assert found == [0.7911, 0.9197, 0.9635, 0.9822]
    assert float(coats_to_hide(K, ONE, 2.0, k1=0.0, k2=0.0)) == 4
    assert float(coats_to_hide(K, ONE, 100.0, k1=0.0, k2=0.0)) == 1


def test_a_clear_film_never_hides() -> None:
    """A film that neither absorbs nor scatters has no thickness that hides; many at once."""
    K = np.stack([0 * ONE, ONE])
    S = np.stack([0 * ONE, ONE])
    found = hiding_thickness(K, S)
    assert np.isinf(found[0])
    assert 0 < found[1] < 10
