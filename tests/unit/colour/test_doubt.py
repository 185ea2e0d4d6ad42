"""The uncertainty of a colour as one figure."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import give_or_take, usual_difference
from swatchwright.values import KnownColour, Lab, isotropic


@pytest.mark.parametrize("lab", [Lab(50, 0, 0), Lab(45, 33, 24), Lab(25, 2, -24), Lab(80, 5, 60)])
@pytest.mark.parametrize("spread", [(1, 1, 1), (2, 5, 3), (0.5, 4, 0.5)])
def test_it_is_the_median_of_drawn_differences(lab: Lab, spread: tuple[float, ...]) -> None:
    """It agrees with the median CIEDE2000 of many drawn errors, within a tenth or so."""
    covariance = np.diag(np.square(spread))
    errors = np.random.default_rng(1).multivariate_normal(lab.triple, covariance, 20_000)
    drawn = float(np.median(delta_e_2000(lab.triple, errors)))
    rows = tuple(tuple(float(v) for v in row) for row in covariance)
    assert usual_difference(lab, rows) == pytest.approx(drawn, rel=0.12)


def test_a_strong_colour_may_be_further_off_in_lab() -> None:
    """The same step of Lab is less to the eye on a strong colour than on a grey."""
    doubt = isotropic(3.0)
    assert usual_difference(Lab(50, 50, 40), doubt) < 0.7 * usual_difference(Lab(50, 0, 0), doubt)


def test_what_is_exact_has_no_doubt() -> None:
    """A colour that was typed in, and one with a covariance of nought, give 0."""
    assert give_or_take(KnownColour(Lab(50, 0, 0), None, "typed in")) == 0
    zero = ((0.0, 0.0, 0.0),) * 3
    assert give_or_take(KnownColour(Lab(50, 0, 0), zero, "exact")) == 0
