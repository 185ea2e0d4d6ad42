"""The order of recipes as a painter would put them."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.mixing.ranking import (
    LEAST_TIE,
    change_between_lights,
    ranked,
    upset_by_slip,
)
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.mixing.wishes import price_per_ml
from swatchwright.paint.paints import Tin
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
