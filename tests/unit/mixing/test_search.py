"""The search for recipes: as close as can be, and what is shown of it."""

from __future__ import annotations

from itertools import combinations, pairwise

import numpy as np
import pytest

from swatchwright.colour.difference import VALID_TO, delta_e_2000
from swatchwright.measures.shares import rounded_shares
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.solve import closest_shares
from swatchwright.paint.mixture import contrast_ratio, dry_lab, mix, wet_lab
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import (
    COOL,
    MUTED,
    SHELVES,
    SIX,
    STRONG,
    WANTED,
    WARM,
    all_subsets,
    closest_on_grid,
    ids,
    made_by,
    some,
)

DEMO = demo_shelf().paints

# What a further paint must bring, in CIEDE2000, to be worth its measuring.
A_TENTH = 0.1


def rounding(recipe: Recipe, wanted: Lab) -> float:
    """Say how much rounding shares to 0.1 % may have cost.

    The most that moving any share by half a step, to the good of another, changes the
    difference. Of a strong paint half a tenth of a per cent is much.
    """
    size = len(recipe.shares)
    moves = [0.0005 * (np.eye(size)[i] - np.eye(size)[j]) for i in range(size) for j in range(i)]
    near = [np.maximum(np.add(recipe.shares, sign * m), 0) for m in moves for sign in (1, -1)]
    apart = [float(delta_e_2000(wanted.triple, made_by(recipe.paints, s).triple)) for s in near]
    return 2 * max((abs(a - recipe.delta_e) for a in apart), default=0.0)


# --- as close as can be --------------------------------------------------------------------------


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.parametrize("shelf", SHELVES.values(), ids=SHELVES)
def test_no_grid_comes_closer(shelf: tuple[str, ...], wanted: Lab) -> None:
    """No mix of a recipe's paints on a grid comes closer than it, but for the rounding.

    And none of the whole shelf comes closer than the first recipe, but for paints left out
    because they bring less than 0.1 each.
    """
    each = some(*shelf)
    stacked = stack(each)
    result = find_recipes(wanted, each)
    apart = {w: closest_on_grid(stacked, w, wanted) for w in all_subsets(each)}
    if result.recipes[0].delta_e <= VALID_TO:
        for recipe in result.recipes:
            which = tuple(sorted(each.index(p) for p in recipe.paints))
            assert recipe.delta_e < apart[which] + 1e-3 + rounding(recipe, wanted), which
    first = result.recipes[0]
    left_out = 2 * A_TENTH
    if first.delta_e <= VALID_TO:
        assert first.delta_e < min(apart.values()) + 1e-3 + rounding(first, wanted) + left_out
    else:
        assert min(apart.values()) > 0.5 * VALID_TO


KNOWN = [
    {"white-clean": 0.7, "clay-red-muted": 0.3},
    {"white-clean": 0.98, "soft-black": 0.02},
    {"strong-yellow-orange": 0.6, "deep-blue-red": 0.4},
    {"white-clean": 0.5, "clay-red-muted": 0.3, "soft-black": 0.2},
    {"white-clean": 0.9, "deep-blue-red": 0.08, "earth-brown-mid": 0.02},
    {"strong-red-orange": 0.55, "leaf-green-mid": 0.25, "white-yellow": 0.2},
    {"cream-pale-yellow": 0.5, "sage-green-pale": 0.3, "ink-blue-dark": 0.2},
]


@pytest.mark.parametrize("known", KNOWN)
def test_a_known_mix_is_found_again(known: dict[str, float]) -> None:
    """The colour of a mix of two or three is found on the whole shelf, to 0.05."""
    wanted = made_by(some(*known), list(known.values()))
    best = find_recipes(wanted, DEMO).recipes[0]
    # A pair may stand for it where the third paint brings less than 0.1.
    assert best.delta_e < (0.05 if len(best.paints) >= len(known) else A_TENTH + 0.05)


@pytest.mark.parametrize("known", KNOWN)
def test_on_its_own_paints_it_is_the_same_mix(known: dict[str, float]) -> None:
    """From its own paints alone the very shares come back, to 0.2 %."""
    each = some(*known)
    wanted = made_by(each, list(known.values()))
    best = find_recipes(wanted, each).recipes[0]
    assert best.delta_e < 0.05
    found = {p.id: share for p, share in zip(best.paints, best.shares, strict=True)}
    assert found == pytest.approx(known, abs=0.0021)


# --- what is shown -------------------------------------------------------------------------------


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.parametrize("most", [2, 3])
def test_a_recipe_is_what_it_says(wanted: Lab, most: int) -> None:
    """Shares sum to one, largest first; colours, difference and coats are those of the mix."""
    result = find_recipes(wanted, DEMO, most_paints=most)
    assert result.wanted == wanted
    assert 1 <= len(result.recipes) <= 6
    for r in result.recipes:
        assert 1 <= len(r.paints) == len(r.shares) == len(r.parts.counts) <= most
        assert sum(round(1000 * s) for s in r.shares) == 1000
        assert r.shares == pytest.approx([round(s, 3) for s in r.shares], abs=1e-12)
        assert list(r.shares) == sorted(r.shares, reverse=True)
        assert min(r.shares) > 0
        mixture = mix(stack(r.paints), [range(len(r.paints))], [r.shares])
        assert r.dry.triple == pytest.approx(tuple(dry_lab(mixture)[0]), abs=1e-9)
        assert r.wet.triple == pytest.approx(tuple(wet_lab(mixture)[0]), abs=1e-9)
        apart = float(delta_e_2000(wanted.triple, r.dry.triple))
        assert r.delta_e == pytest.approx(apart, abs=1e-9)
        hidden = [n for n in range(1, 7) if contrast_ratio(mixture, n)[0] >= 0.98]
        assert r.coats == (hidden[0] if hidden else None)


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_the_closest_come_first(wanted: Lab) -> None:
    """Within reach recipes come in the order of their difference, and no set comes twice."""
    found = find_recipes(wanted, DEMO, keep=20).recipes
    assert len({ids(r) for r in found}) == len(found)
    if found[0].delta_e <= VALID_TO:
        assert all(a.delta_e <= b.delta_e + 1e-9 for a, b in pairwise(found))


def closest_of(paints: tuple[Paint, ...], wanted: Lab) -> float:
    """Give how far off the best mix of all these paints is, at shares to 0.1 %."""
    all_of_them = np.arange(len(paints))[None]
    (shares,), _ = closest_shares(stack(paints), all_of_them, wanted.triple)
    lab = made_by(paints, rounded_shares(shares.tolist()))
    return float(delta_e_2000(wanted.triple, lab.triple))


@pytest.mark.parametrize("wanted", [*WANTED.values(), Lab(90, 0, -2), Lab(30, 5, 5)])
@pytest.mark.parametrize("shelf", [STRONG, WARM, None], ids=["strong", "warm", "all"])
def test_every_paint_earns_its_place(shelf: tuple[str, ...] | None, wanted: Lab) -> None:
    """Each recipe beats every mix of fewer of its paints by 0.1, and in whole parts too."""
    each = DEMO if shelf is None else some(*shelf)
    for recipe in find_recipes(wanted, each).recipes:
        if len(recipe.paints) == 1 or recipe.delta_e > VALID_TO:
            continue
        size = len(recipe.paints)
        smaller = [part for n in range(1, size) for part in combinations(recipe.paints, n)]
        fewer = min(closest_of(part, wanted) for part in smaller)
        assert recipe.delta_e < fewer - A_TENTH + 0.01
        assert recipe.delta_e + recipe.parts.cost < fewer - A_TENTH + 0.01


def test_a_third_paint_that_brings_nothing_is_not_shown() -> None:
    """A colour that two paints make exactly is not shown again with a third poured in."""
    wanted = made_by(some("white-clean", "clay-red-muted"), (0.7, 0.3))
    found = find_recipes(wanted, DEMO, keep=20).recipes
    pair = {"white-clean", "clay-red-muted"}
    assert ids(found[0]) == pair
    assert not [r for r in found[1:] if ids(r) > pair]


def test_one_paint_that_is_the_colour_stands_alone() -> None:
    """The colour of a paint on the shelf is that paint, and nothing is mixed into it."""
    wanted = made_by(some("clay-red-muted"), (1.0,))
    found = find_recipes(wanted, DEMO, keep=20).recipes
    assert ids(found[0]) == {"clay-red-muted"}
    assert found[0].delta_e < 1e-6
    assert not [r for r in found[1:] if "clay-red-muted" in ids(r)]


def test_traces_that_parts_cannot_hold_are_left_out() -> None:
    """Two traces that cancel out exactly, and only exactly, do not make a recipe.

    White with a thousandth each of plum and green comes 0.1 closer than white alone, and either
    trace alone none; but no whole parts up to 200 hold it.
    """
    shelf = some("white-clean", "dark-plum", "deep-green-blue")
    (best,) = find_recipes(Lab(90, 0, -2), shelf, keep=1).recipes
    assert ids(best) == {"white-clean"}


def test_pairs_only_when_asked() -> None:
    """With two paints at the most there is no third, and the best pair is the same as ever."""
    wanted = WANTED["mid blue"]
    pairs = find_recipes(wanted, DEMO, most_paints=2, keep=20)
    assert max(len(r.paints) for r in pairs.recipes) == 2
    assert pairs.subsets_tried == 24 + 276
    for shelf in (COOL, MUTED):
        few = find_recipes(wanted, some(*shelf), most_paints=2).recipes[0]
        assert len(few.paints) <= 2


@pytest.mark.parametrize("keep", [1, 2, 50])
def test_as_many_as_asked_for(keep: int) -> None:
    """No more recipes are given than asked for, and the first are the same."""
    wanted = WANTED["grey-green"]
    found = find_recipes(wanted, some(*SIX), keep=keep).recipes
    assert 1 <= len(found) <= keep
    more = find_recipes(wanted, some(*SIX), keep=60).recipes
    assert [ids(r) for r in found] == [ids(r) for r in more[: len(found)]]


def test_all_sets_are_tried() -> None:
    """24 paints make 24 singles, 276 pairs and 2024 triples."""
    assert find_recipes(WANTED["clay red"], DEMO).subsets_tried == 24 + 276 + 2024
