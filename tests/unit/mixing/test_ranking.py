"""The order of recipes as a painter would put them."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.mixing.ranking import (
    LEAST_TIE,
    Judged,
    change_between_lights,
    ranked,
    upset_by_slip,
)
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.mixing.wishes import price_per_ml
from swatchwright.paint.paints import Paint, Tin
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import made_by, some
from unit.paint.made import paint

WANTED = Lab(45, 32, 24)
FOUND = find_recipes(WANTED, demo_shelf().paints, keep=8).recipes


def as_close(recipe: Recipe, delta_e: float) -> Recipe:
    """Give the recipe as if it came this close."""
    return replace(recipe, delta_e=delta_e)


def test_a_slip_is_the_worst_of_all_measures() -> None:
    """Pouring 5 % too much or too little of any one paint changes no more than is said."""
    for recipe in FOUND:
        worst = 0.0
        for i in range(len(recipe.paints)):
            for factor in (0.95, 1.05):
                amounts = [s * (factor if j == i else 1) for j, s in enumerate(recipe.shares)]
                mixed = made_by(recipe.paints, [a / sum(amounts) for a in amounts])
                worst = max(worst, float(delta_e_2000(recipe.dry.triple, mixed.triple)))
        assert upset_by_slip(recipe) == pytest.approx(worst, abs=1e-9)


def test_a_grey_cloth_and_a_grey_paint_agree_in_every_light() -> None:
    """Two flat spectra keep their difference from light to light."""
    grey = paint("grey", K=5.0, S=50.0)
    wanted = made_by([grey], [1.0])
    (recipe,) = find_recipes(wanted, [grey, paint("dark", K=50.0, S=50.0)], keep=1).recipes
    assert change_between_lights(recipe, wanted) < 0.02


def test_a_spiky_paint_changes_more_than_a_smooth_one() -> None:
    """Of two mixes of one colour, the one with a jagged spectrum changes more between lights."""
    changes = [change_between_lights(r, WANTED) for r in FOUND]
    assert max(changes) > 2 * min(changes) > 0


@settings(max_examples=60)
@given(st.floats(15, 95), st.floats(-25, 25), st.floats(-25, 25))
def test_the_smoothest_reflectance_has_the_colour(L: float, a: float, b: float) -> None:
    """It lies between 0 and 1 and has the wanted colour; a grey's is flat."""
    R = smoothest_reflectance(Lab(L, a, b))
    assert R.min() >= 0
    assert R.max() <= 1
    if abs(a) + abs(b) < L / 3 and L < 90:
        assert lab_of(R) == pytest.approx([L, a, b], abs=0.05)
    assert float(np.ptp(smoothest_reflectance(Lab(L, 0, 0)))) < 1e-3


def test_a_colour_beyond_all_surfaces_has_the_nearest() -> None:
    """Where no reflectance has the colour one is given none the less, within 0-1."""
    R = smoothest_reflectance(Lab(30, 40, -95))
    assert 0 <= R.min() <= R.max() <= 1
    assert float(delta_e_2000(lab_of(R, Light.D65), [30, 40, -95])) < 10


def test_fewer_paints_win_a_tie_and_lose_beyond_it() -> None:
    """A pair that is 0.3 further off goes before a triple; one that is 0.5 further off does not."""
    triple = as_close(next(r for r in FOUND if len(r.paints) == 3), 0.2)
    (pair, *_) = find_recipes(WANTED, demo_shelf().paints, most_paints=2).recipes
    pair = replace(pair, coats=1)
    first = ranked([triple, as_close(pair, 0.5)], WANTED)
    assert first.recipes[0].recipe.paints == pair.paints
    assert "fewer paints" in first.why_first
    second = ranked([triple, as_close(pair, 0.7)], WANTED)
    assert second.recipes[0].recipe is triple
    assert "closest" in second.why_first
    doubtful = ranked([triple, as_close(pair, 0.7)], WANTED, doubt=1.5)
    assert doubtful.recipes[0].recipe.paints == pair.paints


def test_ties_run_from_the_best_and_do_not_chain() -> None:
    """Closeness 0.0, 0.3, 0.6: the third does not tie with the first by way of the second."""
    same = FOUND[0]
    rows = [as_close(same, d) for d in (0.6, 0.3, 0.0)]
    order = [j.recipe.delta_e for j in ranked(rows, WANTED).recipes]
    assert order == [0.0, 0.3, 0.6]
    assert all(b - a <= LEAST_TIE for a, b in pairwise(order))


def test_open_tins_are_preferred() -> None:
    """Among recipes of as many paints that tie, the one with open tins goes first."""
    rows = [as_close(r, 0.1) for r in FOUND if len(r.paints) == 3]
    last = ranked(rows, WANTED).recipes[-1]
    opened = frozenset(p.id for p in last.recipe.paints)
    first = ranked(rows, WANTED, opened=opened)
    assert first.recipes[0].opened == 3
    assert "open" in first.why_first


def test_the_cheaper_wins_where_all_else_is_equal() -> None:
    """Of two recipes of one mix the cheaper goes first; an unknown price goes last."""
    (one,) = some("clay-red-muted")
    base = find_recipes(WANTED, demo_shelf().paints, keep=1).recipes[0]

    def priced(*prices: float | None) -> Recipe:
        paints = tuple(
            replace(p, tins=(Tin(500.0, price),))
            for p, price in zip(base.paints, prices, strict=True)
        )
        return replace(base, paints=paints)

    count = len(base.paints)
    dear, cheap, unknown = (priced(*[v] * count) for v in (30.0, 10.0, None))
    found = ranked([unknown, dear, cheap], WANTED)
    assert [j.recipe for j in found.recipes] == [cheap, dear, unknown]
    assert "cheaper" in found.why_first
    assert found.recipes[0].price == pytest.approx(10 / 500)
    assert found.recipes[2].price is None
    assert price_per_ml(replace(one, tins=(Tin(100, 4.0), Tin(1000, 20.0), Tin(50)))) == 0.02


def test_one_recipe_is_said_to_be_the_only_one() -> None:
    """A single recipe needs no comparison; no recipe is our fault."""
    assert "only" in ranked(FOUND[:1], WANTED).why_first
    with pytest.raises(ValueError, match="nothing"):
        ranked([], WANTED)


def told_of(recipe: Recipe, delta_e: float, coats: int | None) -> Recipe:
    """Give the recipe as if it came this close and hid in so many coats."""
    return replace(recipe, delta_e=delta_e, coats=coats)


def test_where_even_the_nearest_is_far_off_closeness_comes_first() -> None:
    """No doubt of the photo puts a mix of 3.8, cheaper or not, before one of 3.2."""
    pairs = [r for r in FOUND if len(r.paints) == 3][:2]
    rows = [told_of(pairs[0], 3.8, 1), told_of(pairs[1], 3.2, 5)]
    found = ranked(rows, WANTED, doubt=3.0)
    assert [j.recipe.delta_e for j in found.recipes] == [3.2, 3.8]
    assert found.why_first == "It is the closest: the next is 0.6 further off."


def test_a_mix_further_off_goes_first_only_with_its_reason_told() -> None:
    """Two coats go before four within the doubt, and both counts are said; beyond it not."""
    one, other = [r for r in FOUND if len(r.paints) == 3][:2]
    rows = [told_of(one, 0.9, 4), told_of(other, 1.6, 2)]
    found = ranked(rows, WANTED, doubt=1.0)
    assert found.recipes[0].recipe is rows[1]
    assert found.why_first == ("It hides in fewer coats: 2. Mix 2 is 0.7 closer and needs 4.")
    assert ranked(rows, WANTED, doubt=0.5).recipes[0].recipe is rows[0]
    dark = [told_of(one, 0.9, None), rows[1]]
    assert "needs more than 6" in ranked(dark, WANTED, doubt=1.0).why_first


def test_nothing_but_paints_and_coats_outweighs_what_is_seen() -> None:
    """A cheaper mix that is touched less by slips and lights stays behind one visibly closer."""
    one, other = [r for r in FOUND if len(r.paints) == 3][:2]
    for rows in ([one, other], [other, one]):
        closer, further = told_of(rows[0], 0.3, 2), told_of(rows[1], 0.75, 2)
        assert ranked([further, closer], WANTED, doubt=2.0).recipes[0].recipe is closer


def _dominated(mine: Judged, other: Judged) -> bool:
    if mine.price is None or other.price is None:
        return False
    coats = [9 if j.recipe.coats is None else j.recipe.coats for j in (mine, other)]
    return (
        mine.recipe.delta_e > other.recipe.delta_e
        and mine.price > other.price
        and coats[0] > coats[1]
        and mine.slip > other.slip
        and mine.light_change > other.light_change
    )


SURFACES = st.tuples(st.floats(18, 92), st.floats(-45, 50), st.floats(-45, 60))
SHELVES = st.lists(
    st.sampled_from(demo_shelf().paints), min_size=3, max_size=9, unique_by=lambda p: p.id
)


@settings(max_examples=40, deadline=None)
@given(SURFACES, SHELVES, st.floats(0, 4), st.sets(st.integers(0, 8), max_size=3))
def test_none_stands_before_what_is_better_in_everything(
    lab: tuple[float, float, float], shelf: list[Paint], doubt: float, open_: set[int]
) -> None:
    """Nor does one visibly further off, or in a worse class of closeness, without fewer of these.

    For many wanted colours and shelves: fewer paints, more of them open, or fewer coats.
    """
    wanted = Lab(*lab)
    opened = frozenset(shelf[at].id for at in open_ if at < len(shelf))
    found = ranked(find_recipes(wanted, shelf).recipes, wanted, doubt=doubt, opened=opened)
    first = found.recipes[0]
    for at, mine in enumerate(found.recipes):
        assert not any(_dominated(mine, other) for other in found.recipes[at + 1 :])
    closest = min(found.recipes, key=lambda j: j.recipe.delta_e)
    off, least = first.recipe.delta_e, closest.recipe.delta_e
    if off > least + LEAST_TIE or closeness(off) != closeness(least):
        assert off <= min(1.8, least + max(doubt, LEAST_TIE))
        saved = (
            len(first.recipe.paints) < len(closest.recipe.paints)
            or first.opened > closest.opened
            or (first.recipe.coats or 7) < (closest.recipe.coats or 7)
        )
        assert saved
    check_why(found.why_first, found.recipes)


def check_why(why: str, order: tuple[Judged, ...]) -> None:
    """Take the sentence apart, and hold each thing that it says to the recipes."""
    first = order[0]
    off = [round(j.recipe.delta_e, 1) for j in order]
    number = re.search(r"mix (\d)", why, re.IGNORECASE)
    other = order[int(number[1]) - 1] if number else None
    gap = re.search(r"(\d+\.\d) (?:closer|further)", why)
    if why.startswith("It is the closest"):
        assert off[0] == min(off)
        if gap:
            assert float(gap[1]) == pytest.approx(min(off[1:]) - off[0], abs=0.051)
    elif why.startswith("It is as close as any"):
        assert first.recipe.delta_e <= min(j.recipe.delta_e for j in order) + LEAST_TIE
        assert closeness(first.recipe.delta_e) == closeness(min(j.recipe.delta_e for j in order))
    elif "only" not in why:
        assert gap
        assert other is not None
        assert float(gap[1]) == pytest.approx(off[0] - off[order.index(other)], abs=0.051)
    if other is None:
        return
    claims = {
        "fewer paints": len(first.recipe.paints) < len(other.recipe.paints),
        "what is open": first.opened / len(first.recipe.paints)
        > other.opened / len(other.recipe.paints),
        "fewer coats": (first.recipe.coats or 7) < (other.recipe.coats or 7),
        "upset by a slip": first.slip < other.slip,
        "one light to another": first.light_change < other.light_change,
        "price is known": first.price is not None and other.price is None,
        "cheaper": (first.price or 9.0) < (other.price or 0.0),
    }
    said = [claim for claim in claims if claim in why]
    assert said
    assert all(claims[claim] for claim in said)
