"""Recipes with what to measure out, and how sure they are."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations
from math import sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.recipes import (
    amounts_for,
    check_volume,
    confidence_in,
    could_be_closer,
    proof_text,
    read_colour,
    recipes_for,
    typed_colour,
    with_volume,
)
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.mixing.recipe import Parts, Recipe
from swatchwright.mixing.search import Stopped, find_recipes
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import HowKnown, stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab
from unit.paint.made import paint

DEMO = demo_shelf()
CLAY = typed_colour(46, 34, 24)


def made_recipe(shares: tuple[float, ...], density: float | None = 1.3) -> Recipe:
    """Make a recipe of these shares; nothing of its colours matters here."""
    paints = tuple(paint(f"p{i}", density=density) for i in range(len(shares)))
    lab = Lab(50, 0, 0)
    return Recipe(paints, shares, 0.0, lab, lab, Parts((1,) * len(shares), 0.0, 0.0), 2)


# --- the wanted colour ---------------------------------------------------------------------------


def test_a_typed_colour_is_exact() -> None:
    """A typed colour has no uncertainty, and says that it was typed."""
    assert CLAY.lab == Lab(46, 34, 24)
    assert CLAY.covariance is None
    assert "typed" in CLAY.origin


@pytest.mark.parametrize(
    ("text", "lab"),
    [
        ("46, 34, 24", (46, 34, 24)),
        ("46;34;-24.5", (46, 34, -24.5)),
        (" 46 ,34,24 ", (46, 34, 24)),
        ("#ffffff", (100, 0, 0)),
        ("000000", (0, 0, 0)),
        # sRGB 128, 128, 128: L* 53.585 (IEC 61966-2-1, ISO/CIE 11664-4).
        ("#808080", (53.585, 0, 0)),
    ],
)
def test_a_colour_may_be_typed_two_ways(text: str, lab: tuple[float, float, float]) -> None:
    """Three numbers are CIELAB, six digits a screen colour."""
    assert read_colour(text).lab.triple == pytest.approx(lab, abs=1e-3)


@pytest.mark.parametrize(
    "text", ["", "red", "46,34", "46,34,24,1", "#12345", "a,b,c", "nan,1,1", "101,0,0", "50,200,0"]
)
def test_what_is_no_colour_is_refused(text: str) -> None:
    """Anything else, and a colour no surface can have, is refused."""
    with pytest.raises(MendableError):
        read_colour(text)


# --- amounts -------------------------------------------------------------------------------------


@given(
    st.lists(st.integers(1, 998), min_size=1, max_size=3),
    st.integers(10, 1_000_000).map(lambda tenths: tenths / 10),
)
def test_millilitres_add_up(parts: list[int], volume: float) -> None:
    """Amounts are whole tenths of a millilitre and add up to the volume exactly."""
    recipe = made_recipe(tuple(p / sum(parts) for p in parts))
    ml = [amount.ml for amount in amounts_for(recipe, volume)]
    assert sum(round(10 * x) for x in ml) == round(10 * volume)
    assert ml == [round(x, 1) for x in ml]


def test_grams_go_by_density() -> None:
    """412 ml at 1.35 g/ml are 556.2 g; without a density there are no grams."""
    (amount,) = amounts_for(made_recipe((1.0,), 1.35), 412)
    assert (amount.ml, amount.grams) == (412.0, 556.2)
    (amount,) = amounts_for(made_recipe((1.0,), None), 412)
    assert amount.grams is None


@pytest.mark.parametrize("volume", [0.0, 0.99, -5.0, 100_001.0, float("nan"), float("inf")])
def test_a_volume_nobody_mixes_is_refused(volume: float) -> None:
    """Volumes below 1 ml, above 100 l, or no number are refused, in every act."""
    with pytest.raises(MendableError, match="ml was asked for"):
        check_volume(volume)
    with pytest.raises(MendableError, match="ml was asked for"):
        recipes_for(CLAY, DEMO, volume=volume)


@pytest.mark.parametrize("volume", [1.0, 500.0, 100_000.0])
def test_another_volume_changes_the_amounts_only(volume: float) -> None:
    """The same recipes for another volume are the same recipes."""
    found = recipes_for(CLAY, DEMO)
    other = with_volume(found, volume)
    assert other.volume == volume
    assert other == recipes_for(CLAY, DEMO, volume=volume)
    assert with_volume(other, found.volume) == found
    with pytest.raises(MendableError):
        with_volume(found, 0)


# --- recipes -------------------------------------------------------------------------------------


def test_recipes_are_those_of_the_search() -> None:
    """The act gives the search's recipes, with an amount for each paint."""
    found = recipes_for(CLAY, DEMO, most_paints=2, keep=3)
    searched = find_recipes(CLAY.lab, DEMO.paints, most_paints=2, keep=3)
    assert tuple(m.recipe for m in found.recipes) == searched.recipes
    assert (found.shortfall, found.subsets_tried) == (searched.shortfall, searched.subsets_tried)
    assert found.notes == DEMO.notes
    for m in found.recipes:
        assert len(m.amounts) == len(m.recipe.paints)
        assert sum(round(10 * a.ml) for a in m.amounts) == 5000


def test_each_paint_has_its_own_colour() -> None:
    """Beside a recipe stand the dry colours of its paints by themselves."""
    for m in recipes_for(CLAY, DEMO).recipes:
        alone = [dry_lab(mix(stack([p]), [[0]], [[1.0]]))[0] for p in m.recipe.paints]
        for own, lab in zip(m.own_colours, alone, strict=True):
            assert own.triple == pytest.approx(tuple(lab), abs=1e-9)


def test_progress_and_stopping_are_passed_on() -> None:
    """Whoever asks for recipes is told of the progress, and may stop it."""
    done: list[float] = []
    recipes_for(CLAY, DEMO, most_paints=2, progress=done.append)
    assert done[-1] == 1
    with pytest.raises(Stopped):
        recipes_for(CLAY, DEMO, stopped=lambda: True)


# --- how sure ------------------------------------------------------------------------------------


def test_the_usual_error_is_the_median() -> None:
    """The usual error of a photo is the median CIEDE2000 that its covariance gives (simulated)."""
    lab, spread = np.array([46.0, 34.0, 24.0]), 2.5
    drawn = lab + np.random.default_rng(33).normal(0, spread, (50_000, 3))
    simulated = float(np.median(delta_e_2000(lab, drawn)))
    v = spread**2
    known = KnownColour(Lab.of(lab), ((v, 0, 0), (0, v, 0), (0, 0, v)), "photo")
    assert confidence_in(known, (DEMO.paints[0],)).photo == pytest.approx(simulated, rel=0.05)


def test_the_least_known_paint_decides() -> None:
    """A recipe is no surer than its least known paint; a typed colour adds nothing."""
    order = (HowKnown.INVENTED, HowKnown.MEASURED, HowKnown.GUESSED)
    each = [paint(how.value, how_known=how) for how in order]
    doubt = [confidence_in(CLAY, (p,)).paints for p in each]
    assert 0 == doubt[0] < doubt[1] < doubt[2]
    assert confidence_in(CLAY, tuple(each)).paints == doubt[2]
    assert confidence_in(CLAY, tuple(each)).photo == 0


@given(st.floats(0, 30), st.sampled_from(HowKnown))
def test_errors_add_as_independent_ones_do(variance: float, how: HowKnown) -> None:
    """Both errors together are the root of the sum of their squares."""
    v = variance
    known = replace(CLAY, covariance=((v, 0, 0), (0, v, 0), (0, 0, v)))
    sure = confidence_in(known, (paint(how_known=how),))
    assert sure.both == pytest.approx(sqrt(sure.photo**2 + sure.paints**2))
    assert sure.both >= max(sure.photo, sure.paints) - 1e-12


def test_a_shelf_of_one_is_refused() -> None:
    """Nothing can be mixed from a shelf of one paint."""
    with pytest.raises(MendableError, match="1 paint:"):
        recipes_for(CLAY, Shelf("mine", DEMO.paints[:1]))


def test_that_none_is_closer_is_said_as_far_as_it_is_true() -> None:
    """It is said of the nearest told, with how many paints, and rounded up, never down."""
    assert proof_text(0.002, 3) == (
        "Of all that may be mixed from up to 3 of the paints in use, none comes closer than the "
        "nearest of these by more than 0.01, which no eye can tell."
    )
    assert "up to 2 of" in proof_text(0.031, 2)
    assert "more than 0.04," in proof_text(0.031, 2)
    told = proof_text(0.61, 3)
    assert told == "A mix up to 0.7 closer than the nearest of these is not ruled out."


@pytest.mark.parametrize("wanted", [CLAY, typed_colour(83.9, 22.3, 18.7)], ids=["near", "pale"])
def test_what_is_said_to_come_closer_counts_from_the_nearest_told(wanted: KnownColour) -> None:
    """No mix found at exact shares undercuts it, though the nearest told is rounded.

    The mixes are weighed anew over all pairs of the shelf, at shares to 1 %, by the mixing alone.
    """
    shelf = DEMO.paints
    found = recipes_for(wanted, DEMO, most_paints=2, proven=True)
    closer = could_be_closer(found, found)
    assert closer is not None
    assert found.proven_gap is not None
    assert closer >= found.proven_gap - 1e-9
    nearest = min(one.recipe.delta_e for one in found.recipes)
    shares = [(s / 100, 1 - s / 100) for s in range(101)]
    for pair in combinations(range(len(shelf)), 2):
        dry = dry_lab(mix(stack(shelf), [pair] * len(shares), shares))
        apart = delta_e_2000(wanted.lab.triple, dry)
        assert float(apart.min()) >= nearest - closer - 1e-9


def test_of_a_search_that_was_not_proven_nothing_is_said() -> None:
    """How much closer another may come is open as long as nothing was proven."""
    found = recipes_for(typed_colour(50, 60, -40), DEMO)
    assert found.proven_gap is None
    assert could_be_closer(found, found) is None
