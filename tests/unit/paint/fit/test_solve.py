"""The solver: it goes down, and what it says of its answer is what the data say."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.paint.fit.prior import COLORANT_PAINT, UNSEEN_PIGMENT
from swatchwright.paint.fit.problem import Problem, build
from swatchwright.paint.fit.solve import cost_of, information, posterior, solve, start, walk
from unit.paint.fit.made import BLACK, EXACT, PALE, SURFACE, WHITE, brushed


@pytest.fixture(params=[COLORANT_PAINT, UNSEEN_PIGMENT], ids=["colorants", "unseen"])
def problem(request: pytest.FixtureRequest) -> Problem:
    """Give a small fit: a film over two grounds, a let-down and a colour."""
    return build(
        [brushed(1.0, grounds=(BLACK, PALE)), brushed(0.3), brushed(0.1, colour=True)],
        {"white": WHITE},
        prior=request.param,
        surface=SURFACE,
        errors=EXACT,
    )


def test_the_gradient_is_that_of_the_cost(problem: Problem) -> None:
    """Near the best unknowns the cost changes as its gradient says."""
    x = walk(problem, start(problem))[0]
    x = x + np.random.default_rng(0).normal(0, 0.01, x.size)
    _, gradient, cost = information(problem, x)
    assert cost == pytest.approx(cost_of(problem, x))
    for seed in range(4):
        step = 1e-5 * np.random.default_rng(seed).normal(size=x.size)
        change = cost_of(problem, x + step) - cost_of(problem, x - step)
        assert change / 2 == pytest.approx(2 * gradient @ step, rel=0.05)


def test_it_ends_at_the_bottom(problem: Problem) -> None:
    """No small step from the answer costs notably less."""
    found = solve(problem, start(problem))
    assert found.cost < cost_of(problem, start(problem))
    for seed in range(10):
        step = 0.02 * np.random.default_rng(seed).normal(size=found.x.size)
        assert cost_of(problem, found.x + step) > found.cost * 0.999


def test_errors_that_are_alike_teach_less(problem: Problem) -> None:
    """If neighbouring bands err together, the answer is said to be less well known."""
    x = walk(problem, start(problem))[0]
    alike = replace(problem, errors=replace(problem.errors, alike=5.0))
    sharp, vague = (np.linalg.inv(posterior(p, x)) for p in (problem, alike))
    assert np.trace(vague) > np.trace(sharp)
    assert np.linalg.eigvalsh(posterior(problem, x)).min() > 0
