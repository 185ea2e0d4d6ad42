"""The fan of neighbours about a recipe."""

from __future__ import annotations

import pytest

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.fan import BRUSH_OUT, SPACING, Neighbour, fan
from swatchwright.mixing.search import find_recipes
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import made_by

DEMO = demo_shelf().paints
RECIPES = [find_recipes(w, DEMO, keep=1).recipes[0] for w in (Lab(45, 32, 24), Lab(70, -8, 10))]
FANS = [fan(r, DEMO) for r in RECIPES]


@pytest.mark.parametrize("at", [0, 1])
def test_six_to_eight_about_two_away(at: int) -> None:
    """Within the reach of a shelf there are six to eight neighbours, each about 2 away."""
    assert 6 <= len(FANS[at]) <= 8
    assert len({n.word for n in FANS[at]}) == len(FANS[at])
    for n in FANS[at]:
        assert n.apart == pytest.approx(SPACING, abs=1.0)
        assert n.apart == pytest.approx(
            float(delta_e_2000(RECIPES[at].dry.triple, n.dry.triple)), abs=1e-9
        )


@pytest.mark.parametrize("at", [0, 1])
def test_each_lies_where_it_says(at: int) -> None:
    """Lighter is lighter, redder is redder, and so on."""
    here = RECIPES[at].dry
    signs = {
        "lighter": lambda n: n.L > here.L,
        "darker": lambda n: n.L < here.L,
        "redder": lambda n: n.a > here.a,
        "greener": lambda n: n.a < here.a,
        "yellower": lambda n: n.b > here.b,
        "bluer": lambda n: n.b < here.b,
        "more vivid": lambda n: n.a**2 + n.b**2 > here.a**2 + here.b**2,
        "greyer": lambda n: n.a**2 + n.b**2 < here.a**2 + here.b**2,
    }
    assert all(signs[n.word](n.dry) for n in FANS[at])


def neighbours() -> list[Neighbour]:
    """Give all neighbours of both fans."""
    return [n for each in FANS for n in each]


@pytest.mark.parametrize("n", neighbours(), ids=lambda n: n.word)
def test_each_can_be_poured(n: Neighbour) -> None:
    """The parts mix to the colour told, and the amounts make up the brush-out."""
    assert 1 <= len(n.paints) == len(n.parts.counts) == len(n.ml) <= 3
    mixed = made_by(n.paints, [c / sum(n.parts.counts) for c in n.parts.counts])
    assert n.dry.triple == pytest.approx(mixed.triple, abs=1e-9)
    assert sum(n.ml) == pytest.approx(BRUSH_OUT)


def test_what_is_out_of_reach_is_left_out() -> None:
    """About pure white, the lightest of the shelf, there is no lighter neighbour."""
    white = made_by([p for p in DEMO if p.id == "white-clean"], [1.0])
    (recipe,) = find_recipes(white, DEMO, keep=1).recipes
    words = {n.word for n in fan(recipe, DEMO)}
    assert "lighter" not in words
    assert words
