"""The fit's slopes against differences of what it computes."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.fit.model import colour_slope, mean_of_colorants, slopes, state
from swatchwright.paint.fit.prior import COLORANT_PAINT, basis
from swatchwright.paint.fit.problem import build
from swatchwright.paint.fit.solve import start
from unit.paint.fit.made import BLACK, BLUE, EXACT, PALE, SURFACE, WHITE, brushed

STEP = 1e-5


@pytest.mark.parametrize("known", ["white", "none"])
def test_slopes_are_those_of_the_model(known: str) -> None:
    """Every unknown changes what is seen as its slope says."""
    problem = build(
        [brushed(1.0, grounds=(BLACK, PALE)), brushed(0.3), brushed(0.6, grounds=(PALE,))],
        {"white": WHITE} if known == "white" else {},
        prior=COLORANT_PAINT,
        surface=SURFACE,
        errors=EXACT,
    )
    x = start(problem) + np.random.default_rng(1).normal(0, 0.05, problem.layout.size)
    by = slopes(problem, state(problem, x))
    layout = problem.layout
    for i in np.random.default_rng(2).choice(layout.size, 60, replace=False):
        step: Any = np.zeros(layout.size)
        step[i] = STEP
        change = state(problem, x + step).seen - state(problem, x - step).seen
        if i < layout.spectra:
            band, column = divmod(int(i), 2 * layout.paints)
            expected: Any = np.zeros_like(change)
            expected[:, band] = by.spectra[:, band, column]
        else:
            expected = by.others[..., i - layout.spectra]
        assert_allclose(change / (2 * STEP), expected, rtol=1e-4, atol=1e-6)


def test_a_thick_truth_is_seen_as_such() -> None:
    """At the truth the model sees what was read."""
    problem = build(
        [brushed(0.3), brushed(1.0, grounds=(BLACK,))],
        {"white": WHITE, "blue": BLUE},
        prior=COLORANT_PAINT,
        surface=SURFACE,
        errors=EXACT,
    )
    seen = state(problem, start(problem)).seen
    assert_allclose(np.cbrt(seen), problem.cube_root, atol=1e-6)


def test_slopes_of_colorants_and_colours() -> None:
    """The mean of colorants and CIELAB change as their slopes say."""
    amounts = np.random.default_rng(3).normal(-2, 1, len(basis()[0]))
    _, by_amount = mean_of_colorants(amounts)
    step = np.zeros_like(amounts)
    step[2] = STEP
    change = mean_of_colorants(amounts + step)[0] - mean_of_colorants(amounts - step)[0]
    assert_allclose(change / (2 * STEP), by_amount[:, 2], rtol=1e-4, atol=1e-8)
    R = np.linspace(0.001, 0.7, 36)
    change = lab_of(R + STEP * R) - lab_of(R - STEP * R)
    assert_allclose(change / (2 * STEP), colour_slope(R) @ R, rtol=1e-5)
