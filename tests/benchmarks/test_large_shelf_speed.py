"""How fast large shelves are searched and proven, against scipy set by set in the same run.

The plain way minimises the difference for each set of paints with SLSQP, from equal shares; it is
run on a sample of the sets and its time scaled to all of them. `times_as_fast` among the extra
figures is the ratio of the two.
"""

from __future__ import annotations

import tracemalloc
from math import comb
from time import perf_counter
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
import scipy.optimize
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.proof import PROVEN
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.solve import closest_shares
from swatchwright.paint.mixture import quick_dry_lab
from swatchwright.paint.paints import PaintStack, stack
from swatchwright.values import Lab
from unit.mixing.composed import composed

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

WANTED = {"clay red": Lab(45, 32, 24), "grey-green": Lab(70, -8, 10), "mid blue": Lab(45, 0, -30)}
SETS_OF_300 = 300 + comb(300, 2) + comb(300, 3)

optimize: Any = scipy.optimize


def sampled(count: int, size: int) -> NDArray[np.intp]:
    """Draw triples of a shelf."""
    rng = np.random.default_rng(7)
    return np.sort([rng.choice(count, 3, replace=False) for _ in range(size)], axis=1)


def plainly(each: PaintStack, which: NDArray[np.intp], wanted: Lab) -> float:
    """Minimise for one set of paints from equal shares, and give how far off the best mix is."""

    def apart(shares: NDArray[np.float64]) -> float:
        inside = np.maximum(shares, 1e-9)[None]
        return float(delta_e_2000(wanted.triple, quick_dry_lab(each, which[None], inside))[0])

    found = optimize.minimize(
        apart,
        np.full(which.size, 1 / which.size),
        method="SLSQP",
        bounds=[(0, 1)] * which.size,
        constraints={"type": "eq", "fun": lambda shares: shares.sum() - 1},
    )
    return apart(found.x)


def plain_seconds(each: PaintStack, wanted: Lab, size: int, sets: int) -> tuple[float, float]:
    """Time the plain way on a sample, scaled to all sets; and give the best of the sample."""
    rows = sampled(len(each), size)
    start = perf_counter()
    best = min(plainly(each, row, wanted) for row in rows)
    return (perf_counter() - start) * sets / size, best


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.benchmark(group="recipes of 60 paints")
def test_recipes_of_60_paints(benchmark: BenchmarkFixture, wanted: Lab) -> None:
    """Of 60 paints the closest recipe is no worse than what solving every triple gives."""
    shelf = composed(60)
    found = benchmark(find_recipes, wanted, shelf)
    each = stack(shelf)
    seconds, best = plain_seconds(each, wanted, 5 if benchmark.disabled else 100, 36050)
    _, ours = closest_shares(each, sampled(60, 500), wanted.triple)
    assert found.closest <= min(best, float(ours.min())) + 1e-3
    assert found.subsets_tried == 36050
    if benchmark.stats is not None:
        benchmark.extra_info["scipy_seconds"] = seconds
        benchmark.extra_info["times_as_fast"] = seconds / benchmark.stats.stats.median


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.benchmark(group="recipes of 300 paints, proven")
def test_recipes_of_300_paints(benchmark: BenchmarkFixture, wanted: Lab) -> None:
    """Of 300 paints a colour within reach is proven to 0.02."""
    shelf = composed(300)
    found = benchmark(find_recipes, wanted, shelf, proven=True)
    assert found.subsets_tried == SETS_OF_300
    assert found.proven_gap is not None
    assert found.proven_gap <= PROVEN
    if benchmark.stats is not None:
        seconds, _ = plain_seconds(stack(shelf), wanted, 60, SETS_OF_300)
        benchmark.extra_info["times_as_fast"] = seconds / benchmark.stats.stats.median


def test_300_paints_fit_in_a_gibibyte() -> None:
    """The search of 4.5 million sets never holds more than a quarter of a gibibyte of arrays."""
    shelf = composed(300)
    tracemalloc.start()
    try:
        find_recipes(WANTED["clay red"], shelf, proven=True)
        assert tracemalloc.get_traced_memory()[1] < 2**28
    finally:
        tracemalloc.stop()
