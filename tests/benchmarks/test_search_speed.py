"""How fast recipes are found, against scipy set by set in the same run.

The plain way minimises the difference for each set of paints with SLSQP, from equal shares. It is
run on a sample of the sets and its time scaled to all of them; `times_as_fast` among the extra
figures of the measurement is the ratio.
"""

from __future__ import annotations

from time import perf_counter
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
import scipy.optimize
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.search import NO_BETTER, find_recipes
from swatchwright.mixing.solve import closest_shares
from swatchwright.mixing.subsets import subsets
from swatchwright.paint.mixture import quick_dry_lab
from swatchwright.paint.paints import PaintStack, stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

DEMO = demo_shelf().paints
WANTED = {"clay red": Lab(46, 34, 24), "near-white": Lab(90, 1, 6), "out of reach": Lab(50, 80, 40)}

optimize: Any = scipy.optimize


def plainly(each: PaintStack, which: NDArray[np.intp], wanted: Lab) -> float:
    """Minimise for one set of paints, and give how far off the best mix is."""
    rows = which[None]

    def apart(shares: NDArray[np.float64]) -> float:
        inside = np.maximum(shares, 1e-9)[None]
        return float(delta_e_2000(wanted.triple, quick_dry_lab(each, rows, inside))[0])

    found = optimize.minimize(
        apart,
        np.full(which.size, 1 / which.size),
        method="SLSQP",
        bounds=[(0, 1)] * which.size,
        constraints={"type": "eq", "fun": lambda shares: shares.sum() - 1},
    )
    return apart(found.x)


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.benchmark(group="recipes of 24 paints")
def test_recipes_of_24_paints(benchmark: BenchmarkFixture, wanted: Lab) -> None:
    """The search over 24 paints is no worse, set by set, than scipy on a sample of the sets."""
    each = stack(DEMO)
    triples = subsets(each, 3)
    found = benchmark(find_recipes, wanted, DEMO)

    sample = np.arange(0, len(triples), 200 if benchmark.disabled else 25)
    start = perf_counter()
    plain = np.array([plainly(each, triples[i], wanted) for i in sample])
    seconds = (perf_counter() - start) * found.subsets_tried / sample.size

    _, ours = closest_shares(each, triples, wanted.triple)
    # Sets far behind the best are given up early, for no recipe comes of them.
    in_play = plain < ours.min() + 1
    assert np.all(ours[sample][in_play] < plain[in_play] + 0.02)
    assert ours.min() < plain.min() + 0.02
    if found.recipes[0].delta_e < 5:
        assert found.recipes[0].delta_e < plain.min() + 2 * NO_BETTER
    if benchmark.stats is not None:
        benchmark.extra_info["scipy_seconds"] = seconds
        benchmark.extra_info["times_as_fast"] = seconds / benchmark.stats.stats.median
