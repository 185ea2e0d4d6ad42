"""The solver of shares against grids and general-purpose minimisers."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import numpy as np
import pytest
import scipy.optimize
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.mixing.solve import closest_shares
from swatchwright.mixing.subsets import subsets
from swatchwright.paint.mixture import dry_lab, mix, quick_dry_lab
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.values import Lab
from unit.mixing.shelves import (
    COOL,
    MUTED,
    SHELVES,
    SIX,
    STRONG,
    WARM,
    Floats,
    Which,
    all_subsets,
    closest_on_grid,
    made_by,
    some,
)
from unit.paint.made import paints

# Clay red, pale grey-green, a near-white made by traces, a mid and a dark blue, and two that no
# paint reaches.
WANTED = {
    "clay red": Lab(45, 32, 24),
    "grey-green": Lab(70, -8, 10),
    "near-white": Lab(90, 1, 6),
    "mid blue": Lab(45, 0, -30),
    "ink": Lab(22, 4, -12),
    "too vivid": Lab(50, 80, 40),
    "too light": Lab(99, 0, 0),
}


NEAR_AT_ALL = 15.0

# Its stubs do not know that arrays of this kind are welcome.
optimize: Any = scipy.optimize


def solved(each: PaintStack, which: Which, wanted: Lab, *, far: bool = False) -> float:
    """Solve one subset, check that the answer is what it says, and give how far off it is."""
    shares, apart = closest_shares(each, np.array([which]), wanted.triple, far=far)
    assert shares.min() >= 0
    assert float(shares.sum()) == pytest.approx(1, abs=1e-12)
    measure = far_difference if far else delta_e_2000
    recomputed = float(measure(wanted.triple, dry_lab(mix(each, [which], shares)))[0])
    assert float(apart[0]) == pytest.approx(recomputed, abs=1e-7)
    return float(apart[0])


def reach(each: PaintStack, wanted: Lab, *, far: bool = False) -> dict[Which, float]:
    """Solve all subsets, and give how far off each is or, if that is less, a smaller one in it.

    A paint that is best left out stays as a trace of it; the smaller subset has none.
    """
    found: dict[Which, float] = {}
    for which in all_subsets(each):
        smaller = [found[part] for part in combinations(which, len(which) - 1) if part]
        found[which] = min([solved(each, which, wanted, far=far), *smaller])
    return found


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.parametrize("ids", SHELVES.values(), ids=SHELVES)
def test_no_grid_comes_closer(ids: tuple[str, ...], wanted: Lab) -> None:
    """For each pair and triple no mix on a grid comes closer than the solver's, by 0.001.

    Of those that come near at all: CIEDE2000 jumps by one or two between opposite hues, and
    beside such a jump a lucky point of the grid is closer than any valley.
    """
    each = stack(some(*ids))
    for which, ours in reach(each, wanted).items():
        theirs = closest_on_grid(each, which, wanted)
        assert ours < theirs + 1e-3 or theirs > NEAR_AT_ALL, (which, ours, theirs)


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_the_whole_shelf_at_once_is_as_good(wanted: Lab) -> None:
    """Solving all triples together, giving up on the hopeless, still finds the closest of all."""
    each = stack(some(*SIX))
    _, apart = closest_shares(each, subsets(each, 3), wanted.triple)
    best = min(solved(each, which, wanted) for which in combinations(range(len(each)), 3))
    assert float(apart.min()) == pytest.approx(best, abs=1e-3)


def by_slsqp(each: PaintStack, which: Which, wanted: Lab) -> float:
    """Minimise by scipy's SLSQP from the middle, the corners and beside the corners."""
    size = len(which)
    rows = np.array([which])

    def apart(shares: Floats) -> float:
        inside = np.maximum(shares, 1e-12)[None] / np.maximum(shares, 1e-12).sum()
        return float(delta_e_2000(wanted.triple, quick_dry_lab(each, rows, inside))[0])

    corners = 0.97 * np.eye(size) + 0.03 / size
    starts = [np.full(size, 1 / size), *corners, *(0.6 * np.eye(size) + 0.4 / size)]
    found = [
        optimize.minimize(
            apart,
            start,
            method="SLSQP",
            bounds=[(0, 1)] * size,
            constraints={"type": "eq", "fun": lambda x: x.sum() - 1},
        )
        for start in starts
    ]
    return min(apart(row.x) for row in found)


def by_evolution(each: PaintStack, which: Which, wanted: Lab, *, far: bool = False) -> float:
    """Minimise by scipy's differential evolution over the whole simplex."""
    measure = far_difference if far else delta_e_2000

    def apart(cuts: Floats) -> Floats:
        # Sorted cuts of a stick of length 1 are shares.
        inner = np.sort(cuts.T, axis=1)
        edges = np.concatenate([0 * inner[:, :1], inner, 0 * inner[:, :1] + 1], axis=1)
        shares = np.diff(edges, axis=1)
        rows = np.broadcast_to(which, shares.shape)
        return np.asarray(measure(wanted.triple, quick_dry_lab(each, rows, shares)))

    found = optimize.differential_evolution(
        apart,
        [(0, 1)] * (len(which) - 1),
        vectorized=True,
        updating="deferred",
        popsize=20,
        maxiter=60,
        tol=1e-8,
        polish=False,
        rng=np.random.default_rng(6),
    )
    return float(found.fun)


CASES = [
    (WARM, (0, 2, 3), WANTED["clay red"]),
    (WARM, (0, 1, 3), WANTED["near-white"]),
    (COOL, (0, 1, 2), WANTED["mid blue"]),
    (COOL, (0, 1, 2), WANTED["grey-green"]),
    (STRONG, (0, 1, 2), WANTED["near-white"]),
    (STRONG, (1, 2, 3), WANTED["ink"]),
    (STRONG, (0, 2, 4), WANTED["ink"]),
    (MUTED, (0, 1, 2), WANTED["grey-green"]),
    (SIX, (1, 3, 5), WANTED["too vivid"]),
    (STRONG, (0, 1), WANTED["clay red"]),
    # Two valleys: the coarse mixture that is nearest leads into the higher one.
    (
        ("white-yellow", "ink-blue-dark", "sage-green-pale"),
        (0, 1, 2),
        Lab(74.17902597, 39.06321662, -33.74480849),
    ),
]


@pytest.mark.parametrize(("ids", "which", "wanted"), CASES)
def test_no_general_minimiser_comes_closer(ids: tuple[str, ...], which: Which, wanted: Lab) -> None:
    """SLSQP from several starts and differential evolution come no closer, by 0.02."""
    each = stack(some(*ids))
    ours = solved(each, which, wanted)
    assert ours < by_slsqp(each, which, wanted) + 0.02
    assert ours < by_evolution(each, which, wanted) + 0.02


@pytest.mark.parametrize("name", ["too vivid", "too light"])
def test_nor_by_the_difference_of_far_colours(name: str) -> None:
    """Out of reach, by the difference meant for that, differential evolution comes no closer.

    For the sets of paints that come nearest; further off this difference jumps too.
    """
    each, wanted = stack(some(*STRONG)), WANTED[name]
    found = {w: d for w, d in reach(each, wanted, far=True).items() if len(w) == 3}
    nearest = sorted(found, key=lambda which: found[which])[:5]
    for which in nearest:
        assert found[which] < by_evolution(each, which, wanted, far=True) + 0.02


@pytest.mark.parametrize("ids", [WARM, COOL, STRONG])
def test_one_paint_is_what_it_is(ids: tuple[str, ...]) -> None:
    """A subset of one paint takes all of it."""
    each, wanted = some(*ids), WANTED["clay red"]
    shares, apart = closest_shares(stack(each), subsets(stack(each), 1), wanted.triple)
    assert shares.tolist() == [[1.0]] * len(each)
    alone = [float(delta_e_2000(wanted.triple, made_by([p], [1]).triple)) for p in each]
    assert apart.tolist() == pytest.approx(alone, abs=1e-9)


@pytest.mark.parametrize("trace", [0.3, 0.03, 0.005, 0.001, 0.0003])
def test_a_trace_is_found_as_well_as_a_third(trace: float) -> None:
    """A mix with any amount of a strong paint, down to 0.03 %, is found again."""
    each = some("white-clean", "deep-blue-red", "stone-grey-warm")
    wanted = made_by(each, (0.6 - trace, trace, 0.4))
    shares, apart = closest_shares(stack(each), np.array([[0, 1, 2]]), wanted.triple)
    assert float(apart[0]) < 1e-3
    assert float(shares[0, 1]) == pytest.approx(trace, rel=0.02)


@settings(max_examples=40)
@given(
    st.lists(paints(), min_size=3, max_size=3),
    st.lists(st.floats(0.02, 1), min_size=3, max_size=3),
)
def test_what_three_paints_make_they_are_found_to_make(of: list[Paint], parts: list[float]) -> None:
    """The colour of any mix of any three paints is found again, to 0.05."""
    wanted = made_by(of, [p / sum(parts) for p in parts])
    assert solved(stack(of), (0, 1, 2), wanted) < 0.05
