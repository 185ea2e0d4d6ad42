"""The proof that nothing comes nearer, against grids, and what it says of how near that is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import combinations
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_xyz
from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.mixing.ball import ball_about
from swatchwright.mixing.cells import Cells, corners_of, lab_boxes, outside
from swatchwright.mixing.ground import Ground, ground_of
from swatchwright.mixing.groups import gathered
from swatchwright.mixing.proof import PROVEN, prove
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.solve import closest_shares
from swatchwright.paint.family import Family
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.composed import composed
from unit.mixing.shelves import SIX, STRONG, WARM, some
from unit.paint.made import paints

Floats = NDArray[np.floating[Any]]

WANTED = {
    "clay red": Lab(45, 32, 24),
    "grey-green": Lab(70, -8, 10),
    "ink": Lab(22, 4, -12),
    "too vivid": Lab(50, 80, 40),
    "too light": Lab(99, 0, 0),
}


def fine_grid() -> Floats:
    """List shares of three at steps of 0.5 %."""
    one, two = np.meshgrid(np.arange(201), np.arange(201), indexing="ij")
    keep = one + two <= 200
    shares = np.stack([one[keep], two[keep], 200 - one[keep] - two[keep]], axis=1)
    return np.asarray(shares / 200)


def nearest_on_grid(each: PaintStack, wanted: Lab, *, far: bool) -> float:
    """Try all mixes of every three at steps of 0.5 %."""
    measure = far_difference if far else delta_e_2000
    grid = fine_grid()
    return min(
        float(
            measure(wanted.triple, dry_lab(mix(each, np.broadcast_to(w, grid.shape), grid))).min()
        )
        for w in combinations(range(len(each)), 3)
    )


def solver(each: PaintStack, wanted: Lab, best: list[float], *, far: bool) -> Callable[..., float]:
    """Give the solver that the proof calls where a corner comes nearer."""

    def solve(rows: NDArray[np.intp]) -> float:
        _, apart = closest_shares(each, rows, wanted.triple, far=far)
        best.append(min(best[-1], float(apart.min())))
        return best[-1]

    return solve


def whole(each: PaintStack) -> Ground:
    """Lay out all mixtures of three of a shelf."""
    return ground_of(each, [np.arange(len(each))], [(0, 0, 0)])


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.parametrize("ids", [STRONG, WARM, SIX[1:5]], ids=["strong", "warm", "four"])
def test_no_grid_undercuts_what_is_proven(ids: tuple[str, ...], wanted: Lab) -> None:
    """No mix on a grid of 0.5 % is nearer than the proof says any can be."""
    each = stack(some(*ids))
    for far in (False, True):
        on_grid = nearest_on_grid(each, wanted, far=far)
        best = [on_grid]
        solve = solver(each, wanted, best, far=far)
        proof = prove(whole(each), np.array(wanted.triple), on_grid, solve, lambda _: None, far=far)
        assert proof.least <= on_grid
        assert best[-1] - proof.least <= PROVEN
        assert best[-1] >= proof.least


def test_a_bad_start_is_mended_on_the_way() -> None:
    """Told that nothing is nearer than 10, the proof finds what is, and proves that."""
    each, wanted = stack(composed(8)), Lab(45, 20, 10)
    best = [10.0]
    solve = solver(each, wanted, best, far=False)
    proof = prove(whole(each), np.array(wanted.triple), 10.0, solve, lambda _: None)
    _, apart = closest_shares(each, np.array(list(combinations(range(8), 3))), wanted.triple)
    assert best[-1] == pytest.approx(float(apart.min()), abs=1e-3)
    assert best[-1] - proof.least <= PROVEN


def test_paints_that_differ_in_glare_alone_are_told_apart() -> None:
    """A chalky and a shiny tin of one colour, and a tin twice, still let the proof end."""
    made = composed(6)
    shiny = replace(made[3], id="shiny", family=Family.GLOSS)
    shelf = (*made, shiny, replace(made[4], id="twice"))
    found = find_recipes(Lab(50, 80, 40), shelf, proven=True)
    groups, _ = gathered(stack(shelf), [np.arange(len(shelf))])
    assert np.all(groups.width[groups.paint < 0] > 0)
    assert np.all(groups.width[groups.paint >= 0] == 0)
    assert found.proven_gap is not None
    assert found.proven_gap <= PROVEN


@pytest.mark.parametrize("wanted", [Lab(50, 80, 40), Lab(40, 60, -60)], ids=["red", "purple"])
def test_a_colour_far_out_of_reach_is_proven_too(wanted: Lab) -> None:
    """With two dozen paints the proof ends for colours that none of them comes near."""
    found = find_recipes(wanted, demo_shelf().paints, proven=True)
    assert found.far
    assert found.proven_gap is not None
    assert found.proven_gap <= PROVEN


def test_an_unfinished_proof_says_less() -> None:
    """With few cells to spend the proof still holds, and claims less."""
    each, wanted = stack(composed(12)), Lab(50, 80, 40)
    _, apart = closest_shares(
        each, np.array(list(combinations(range(12), 3))), wanted.triple, far=True
    )
    best = float(apart.min())
    target = np.array(wanted.triple)
    short = prove(
        whole(each), target, best, lambda _: best, lambda _: None, far=True, most_cells=50
    )
    long = prove(whole(each), target, best, lambda _: best, lambda _: None, far=True)
    assert 0 <= short.least < long.least <= best
    assert best - long.least <= PROVEN


@settings(max_examples=60)
@given(st.lists(paints(), min_size=3, max_size=3), st.integers(0, 1000))
def test_mixtures_stay_in_the_boxes_of_their_cell(of: list[Paint], seed: int) -> None:
    """Whatever the three paints and the cell, its mixtures lie in the box that is given for it.

    The same for the cell of groups that hold the paints with others.
    """
    rng = np.random.default_rng(seed)
    corners = rng.dirichlet([0.5] * 3, (1, 3))
    for extra in ([], list(composed(3, seed=seed))):
        each = stack([*of, *extra])
        pools = [np.array([i, *([3 + i] if extra else [])]) for i in range(3)]
        groups, roots = gathered(each, pools)
        cell = Cells(np.array([roots]), corners, np.ones(1), np.zeros(1))
        at = corners_of(cell, groups, single=not extra)
        low, high = lab_boxes(at)
        amounts = rng.dirichlet([1.0] * 3, 300) @ corners[0]
        wet = amounts / groups.scattering[:3]
        labs = dry_lab(
            mix(each, np.tile([0, 1, 2], (300, 1)), wet / wet.sum(axis=1, keepdims=True))
        )
        assert np.all(labs >= low - 1e-6)
        assert np.all(labs <= high + 1e-6)


@pytest.mark.parametrize("radius", [0.05, 0.5, 4.0])
@pytest.mark.parametrize("wanted", [*WANTED.values(), Lab(50, 0, 0), Lab(40, 20, -70)])
def test_the_ball_holds_what_is_near_enough(wanted: Lab, radius: float) -> None:
    """Every colour within the difference lies in all half-spaces; far away ones do not."""
    ball = ball_about(np.array(wanted.triple), radius, far=False)
    rng = np.random.default_rng(1)
    labs = np.array(wanted.triple) + radius * rng.normal(0, 2, (20000, 3))
    labs = labs[(labs[:, 0] > 0) & (labs[:, 0] < 100)]
    near = delta_e_2000(wanted.triple, labs) <= radius
    assert near.any()
    assert np.all(lab_to_xyz(labs[near]) @ ball.directions.T <= ball.reach)
    away = delta_e_2000(wanted.triple, labs) > 3 * radius
    assert np.mean((lab_to_xyz(labs[away]) @ ball.directions.T > ball.reach).any(axis=1)) > 0.9


def test_cells_that_hold_the_colour_are_never_dropped() -> None:
    """A cell with the wanted colour inside is not outside the ball, however it is cut."""
    each = stack(composed(3))
    groups, roots = gathered(each, [np.array([i]) for i in range(3)])
    rng = np.random.default_rng(4)
    for _ in range(40):
        corners = rng.dirichlet([0.5] * 3, (1, 3))
        wet = rng.dirichlet([1.0] * 3) @ corners[0] / groups.scattering
        wanted = dry_lab(mix(each, [[0, 1, 2]], [wet / wet.sum()]))[0]
        cell = Cells(np.array([roots]), corners, np.ones(1), np.zeros(1))
        ball = ball_about(wanted, 0.1, far=False)
        assert not outside(corners_of(cell, groups, single=True), ball).any()


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_a_search_says_how_proven(wanted: Lab) -> None:
    """A proven search gives a gap of at most 0.02, and the same recipes as one that is not."""
    shelf = composed(10)
    plain, proven = find_recipes(wanted, shelf), find_recipes(wanted, shelf, proven=True)
    assert proven.proven_gap is not None
    assert 0 <= proven.proven_gap <= PROVEN
    assert proven.closest <= plain.closest + 1e-9
    assert proven.recipes[0].delta_e == pytest.approx(plain.recipes[0].delta_e, abs=0.02)
    assert proven.far == (proven.recipes[0].delta_e > 5)
