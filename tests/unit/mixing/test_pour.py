"""The order to pour in, and what rounding costs."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.mixing.pour import least_volume, measured, pouring_order, strongest
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.search import find_recipes
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import made_by, some

WANTED = Lab(70, 2, -6)
SHELF = some("white-clean", "soft-black", "deep-blue-red")
RECIPE = find_recipes(WANTED, SHELF, keep=1).recipes[0]


def test_black_in_white_is_the_strongest() -> None:
    """A hundredth more black changes a pale mix more than a hundredth more white."""
    assert RECIPE.paints[strongest(RECIPE)].id != "white-clean"


def test_light_first_strong_last_in_thirds() -> None:
    """All is poured, the white first; the strongest in three and a tenth held back."""
    amounts = [100 * s for s in RECIPE.shares]
    pours = pouring_order(RECIPE, amounts)
    strong = RECIPE.paints[strongest(RECIPE)]
    assert pours[0].paint.id == "white-clean"
    assert [p.paint.id for p in pours[-4:]] == [strong.id] * 4
    assert [p.held_back for p in pours] == [False] * (len(pours) - 1) + [True]
    assert sum(p.ml for p in pours) == pytest.approx(100)
    last = amounts[strongest(RECIPE)]
    assert [p.ml for p in pours[-4:]] == pytest.approx([0.3 * last] * 3 + [0.1 * last])


def test_one_paint_is_just_poured() -> None:
    """A recipe of one paint has one step."""
    (alone,) = find_recipes(made_by(SHELF[:1], [1.0]), SHELF, keep=1).recipes
    assert len(pouring_order(alone, [50.0])) == 1


@pytest.mark.parametrize("step", [0.1, 0.5, 1.0])
def test_rounding_to_a_syringe_costs_what_is_said(step: float) -> None:
    """Amounts are multiples of the step, and mixing them again gives the difference told."""
    found = measured(RECIPE, 200.0, WANTED, step=step)
    assert all(abs(ml / step - round(ml / step)) < 1e-9 for ml in found.ml)
    mixed = made_by(RECIPE.paints, [ml / sum(found.ml) for ml in found.ml])
    assert found.delta_e == pytest.approx(float(delta_e_2000(WANTED.triple, mixed.triple)))
    assert found.cost == pytest.approx(max(0.0, found.delta_e - RECIPE.delta_e))
    assert found.grams is None


def weighed(recipe: Recipe, density: float | None) -> Recipe:
    """Give the recipe with paints of this density."""
    return replace(recipe, paints=tuple(replace(p, density=density) for p in recipe.paints))


def test_grams_are_by_density() -> None:
    """412 ml at 1.35 g/ml weigh 556.2 g; whole grams are what a scale of 1 g can tell."""
    found = measured(weighed(RECIPE, 1.35), 412.0, WANTED, step=1.0, weighed=True)
    assert found.grams is not None
    assert sum(found.grams) == pytest.approx(556.2, abs=1.5)
    assert all(g == round(g) for g in found.grams)
    assert [g / 1.35 for g in found.grams] == pytest.approx(list(found.ml))


def test_without_a_density_nothing_is_weighed() -> None:
    """A paint of unknown density is named when grams are asked for."""
    bare = weighed(RECIPE, None)
    with pytest.raises(MendableError, match="density"):
        measured(bare, 400.0, WANTED, step=1.0, weighed=True)


def test_the_least_volume_is_the_least() -> None:
    """At the least volume every paint can be measured, and of half of it one cannot."""
    least = least_volume(RECIPE, 0.5)
    assert min(s * least for s in RECIPE.shares) == pytest.approx(0.5)
    measured(RECIPE, least, WANTED, step=0.5)
    with pytest.raises(MendableError, match=r"than 0\.5 ml can tell") as caught:
        measured(RECIPE, least * 0.45, WANTED, step=0.5)
    assert f"{least:.0f} ml" in caught.value.mend


def test_nonsense_is_refused() -> None:
    """A volume or a step of nothing is refused."""
    for volume, step in ((0.0, 0.1), (100.0, 0.0), (float("nan"), 1.0)):
        with pytest.raises(MendableError, match="cannot be measured"):
            measured(RECIPE, volume, WANTED, step=step)


def test_the_demonstration_shelf_can_be_poured() -> None:
    """Every recipe of the demonstration can be told in tenths of a ml for half a litre."""
    for recipe in find_recipes(Lab(45, 32, 24), demo_shelf().paints).recipes:
        assert measured(recipe, 500.0, Lab(45, 32, 24), step=0.1).cost < 0.2
