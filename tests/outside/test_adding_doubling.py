"""Films, surfaces, wetting and fitted mixtures against adding-doubling radiative transfer.

The oracle is iadpython 0.5.3 (MIT), on a reduced grid; tools/compare_with_adding_doubling.py prints
the whole of it. Bounds are those of docs/accuracy.md.
"""

from __future__ import annotations

import numpy as np
import pytest

from compare_with_adding_doubling import (
    BEAM,
    DIFFUSE,
    compared,
    from_one_film,
    mixtures,
    oracle,
    summary,
    wetting,
)

ALBEDOS = (0.3, 0.9, 0.99, 0.9999)
DEPTHS = (0.3, 10.0, 100.0)


@pytest.mark.parametrize("index", [1.0, 1.5])
def test_plausible_paint_is_within_one(index: float) -> None:
    """Films that scatter ten times over and hardly absorb are well within 1 CIEDE2000."""
    paint = summary(compared(index, BEAM[index], ALBEDOS, DEPTHS))["paint"]
    assert np.median(paint) < 0.4
    assert np.percentile(paint, 95) < 0.6


def test_without_fitted_factors_a_beam_costs_a_little() -> None:
    """Taken for diffuse light, a beam's reading is within 1 in the median, 3 in nearly all."""
    paint = summary(compared(1.5, DIFFUSE, (0.9, 0.99, 0.9999), DEPTHS[1:]))["paint"]
    assert np.median(paint) < 1.0
    assert np.percentile(paint, 95) < 3.0


def test_films_predicted_from_a_fit() -> None:
    """From one film over black and white, thicker ones and other grounds come out near."""
    found = summary(from_one_film(1.5, 10.0, (0.9, 0.999), (10.0, 100.0)))["paint"]
    assert np.median(found) < 1.0
    assert np.percentile(found, 95) < 2.5


def test_outside_of_paint_the_error_is_bounded() -> None:
    """Thin films of dyes, which are no paint, are off by up to 10 and no more."""
    everything = summary(compared(1.5, BEAM[1.5], ALBEDOS, DEPTHS))["all"]
    assert np.median(everything) < 1.0
    assert everything.max() < 10.0


def test_wetting() -> None:
    """The wet look of a thick film reckoned from its dry one is within 1.5."""
    found = wetting((0.6, 0.97, 0.999))
    assert np.median(found) < 1.0
    assert found.max() < 1.5


def test_mixtures_of_fitted_virtual_paints() -> None:
    """Opaque mixtures of paints fitted from masstone and two let-downs come within 0.3, and 1."""
    found = mixtures(2)
    assert np.median(found) < 0.3
    assert np.percentile(found, 95) < 1.0


def test_the_oracle_keeps_its_own_exact_cases() -> None:
    """A film that absorbs nothing on a perfect white gives all light back, with any surface."""
    for index in (1.0, 1.5):
        assert oracle(1.0 - 1e-12, 3.0, 1.0, index) == pytest.approx(1.0, abs=2e-3)
