"""How fast mixtures become colours, against a plain loop in the same run."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.testing import assert_allclose
from numpy.typing import NDArray

from swatchwright.colour.convert import xyz_to_lab
from swatchwright.colour.spectrum import light_weights
from swatchwright.paint.mixture import dry_lab, mix, quick_dry_lab
from swatchwright.paint.paints import stack
from swatchwright.paint.surface import internal_diffuse, normal_reflectance
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

COUNT = 10_000
EACH = stack(demo_shelf().paints)
RNG = np.random.default_rng(24)
WHICH = np.array([RNG.choice(24, 3, replace=False) for _ in range(COUNT)])
SHARES = RNG.dirichlet(np.ones(3), COUNT)


def plainly(count: int) -> NDArray[np.float64]:
    """Mix one at a time, by the formulas as a book has them (Duncan, Kubelka-Munk, Saunderson)."""
    k1, k2 = float(normal_reflectance(1.5)), float(internal_diffuse(1.5))
    weights = light_weights()
    labs = []
    for which, shares in zip(WHICH[:count], SHARES[:count], strict=True):
        dry = shares * EACH.solids[which]
        dry = dry / dry.sum()
        q = (dry @ EACH.K[which]) / (dry @ EACH.S[which])
        R = 1 + q - np.sqrt(q * q + 2 * q)
        seen = k1 * (dry @ EACH.glare[which]) + (1 - k1) * (1 - k2) * R / (1 - k2 * R)
        labs.append(xyz_to_lab(seen @ weights))
    return np.array(labs)


@pytest.mark.benchmark(group="10,000 mixtures")
def test_mixtures_for_searching(benchmark: BenchmarkFixture) -> None:
    """A batch gives the colours that the loop gives."""
    labs = benchmark(quick_dry_lab, EACH, WHICH, SHARES)
    assert labs.shape == (COUNT, 3)
    assert_allclose(labs[:300], plainly(300), rtol=0, atol=1e-8)


@pytest.mark.benchmark(group="10,000 mixtures")
def test_mixtures_with_all_that_a_recipe_shows(benchmark: BenchmarkFixture) -> None:
    """So does the long way, which also knows the wet film and hiding."""
    labs = benchmark(lambda: dry_lab(mix(EACH, WHICH, SHARES)))
    assert_allclose(labs[:300], plainly(300), rtol=0, atol=1e-8)


@pytest.mark.benchmark(group="10,000 mixtures")
def test_mixtures_plainly(benchmark: BenchmarkFixture) -> None:
    """The loop over one mixture at a time."""
    count = 300 if benchmark.disabled else COUNT
    labs = benchmark(plainly, count)
    assert_allclose(labs, quick_dry_lab(EACH, WHICH, SHARES)[:count], rtol=0, atol=1e-8)
