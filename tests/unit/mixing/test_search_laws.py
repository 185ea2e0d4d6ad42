"""What holds of every search: carriers kept apart, order, progress, stopping, what is missing."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from swatchwright.colour.difference import ACCEPTED, delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.mixing.search import Stopped, find_recipes
from swatchwright.paint.family import FAMILIES, Family
from swatchwright.paint.paints import Paint
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import MUTED, SIX, STRONG, WANTED, WARM, ids, some
from unit.paint.made import paint

DEMO = demo_shelf().paints


# --- water and solvent ---------------------------------------------------------------------------


def as_oil(of: Paint) -> Paint:
    """Make a solvent-borne paint of the same colours."""
    return paint(f"oil-{of.id}", of.K, of.S, Family.OIL)


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_water_and_solvent_are_never_mixed(wanted: Lab) -> None:
    """On a shelf of both kinds each recipe is of one kind, though both kinds are found."""
    water = some(*STRONG)
    found = find_recipes(wanted, [*water, *map(as_oil, water)], keep=40).recipes
    kinds = [{FAMILIES[p.family].waterborne for p in r.paints} for r in found]
    assert all(len(kind) == 1 for kind in kinds)
    assert {True, False} == set().union(*kinds)


def test_one_of_each_kind_is_not_mixed() -> None:
    """Of one water-borne and one solvent-borne paint the nearer is taken as it is."""
    white, black = some("white-clean", "soft-black")
    found = find_recipes(Lab(40, 0, 0), [white, as_oil(black)]).recipes
    assert [len(r.paints) for r in found] == [1] * len(found)


# --- independence, progress, stopping ------------------------------------------------------------


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
@pytest.mark.parametrize("shelf", [SIX, None], ids=["six", "all"])
def test_the_order_of_the_shelf_does_not_matter(shelf: tuple[str, ...] | None, wanted: Lab) -> None:
    """Paints in another order give the same recipes, but for ties."""
    each = DEMO if shelf is None else some(*shelf)
    first = find_recipes(wanted, each).recipes
    for turn in range(2):
        order = np.random.default_rng(turn).permutation(len(each))
        again = find_recipes(wanted, [each[i] for i in order]).recipes
        assert [r.delta_e for r in again] == pytest.approx([r.delta_e for r in first], abs=0.02)
        firm = {ids(r) for r in first if r.delta_e < first[-1].delta_e - 0.02}
        assert firm <= {ids(r) for r in again}


def told(wanted: Lab) -> list[float]:
    """Give the progress that a search tells."""
    done: list[float] = []
    find_recipes(wanted, some(*SIX), progress=done.append)
    return done


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_progress_rises_to_one(wanted: Lab) -> None:
    """Progress starts above nothing, never falls, and ends at 1, within reach and out of it."""
    done = told(wanted)
    assert 0 < done[0] < 1
    assert done == sorted(done)
    assert done[-1] == 1


@pytest.mark.parametrize("turn", [1, 2, 3])
def test_it_can_be_stopped(turn: int) -> None:
    """A search that is told to stop raises and gives nothing."""
    asked: list[int] = []

    def stopped() -> bool:
        asked.append(1)
        return len(asked) == turn

    with pytest.raises(Stopped):
        find_recipes(WANTED["clay red"], DEMO, stopped=stopped)
    assert len(asked) == turn


def test_not_stopping_changes_nothing() -> None:
    """A search that is watched and not stopped gives what it would have given."""
    plain = find_recipes(WANTED["clay red"], some(*WARM))
    watched = find_recipes(
        WANTED["clay red"], some(*WARM), stopped=lambda: False, progress=lambda _: None
    )
    assert [(ids(r), r.shares) for r in watched.recipes] == [
        (ids(r), r.shares) for r in plain.recipes
    ]


# --- out of reach --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("wanted", "word"),
    [
        (Lab(100, 0, 0), "lighter"),
        (Lab(4, 0, 0), "darker"),
        (Lab(45, 95, 60), "more vivid"),
        (Lab(80, -80, 70), "more vivid"),
        (Lab(30, 40, -95), "more vivid"),
        (Lab(85, 5, 120), "more vivid"),
    ],
)
def test_what_is_missing_is_said(wanted: Lab, word: str) -> None:
    """A colour beyond the shelf is said to be so, how far, and in which direction first."""
    result = find_recipes(wanted, DEMO)
    assert result.shortfall is not None
    assert result.shortfall.delta_e == result.recipes[0].delta_e > ACCEPTED
    assert result.shortfall.towards[0] == word


@pytest.mark.parametrize(
    ("shelf", "wanted", "words"),
    [
        (MUTED, Lab(65, 25, 15), {"redder", "more vivid"}),
        (("white-clean", "soft-black"), Lab(60, 0, -25), {"bluer"}),
        (("white-clean", "soft-black"), Lab(60, 0, 30), {"yellower"}),
        (("white-clean", "soft-black"), Lab(60, -25, 0), {"greener"}),
        (("white-clean", "soft-black"), Lab(60, 25, 0), {"redder"}),
    ],
)
def test_the_missing_hue_is_said(shelf: tuple[str, ...], wanted: Lab, words: set[str]) -> None:
    """A shelf without a hue is said to want it."""
    short = find_recipes(wanted, some(*shelf)).shortfall
    assert short is not None
    assert words & set(short.towards)


@pytest.mark.parametrize("wanted", [Lab(50, 90, -60), Lab(60, 90, -40)])
def test_a_vivid_purple_out_of_reach_is_not_answered_with_grey(wanted: Lab) -> None:
    """Far from what can be mixed, the nearest is still on the wanted side of the circle.

    By CIEDE2000 alone, made for small differences, a greenish grey would be nearer.
    """
    best = find_recipes(wanted, DEMO).recipes[0]
    greenish_grey = Lab(wanted.L, -4, -4)
    assert best.dry.a > 10
    assert float(delta_e_2000(wanted.triple, greenish_grey.triple)) < best.delta_e


def test_within_reach_nothing_is_missing() -> None:
    """A colour that is reached has no shortfall."""
    assert find_recipes(WANTED["clay red"], DEMO).shortfall is None


# --- refusals ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("ask", "says"),
    [
        (lambda: find_recipes(Lab(50, 0, 0), ()), "0 paints"),
        (lambda: find_recipes(Lab(50, 0, 0), DEMO[:1]), "1 paint:"),
        (lambda: find_recipes(Lab(50, 0, 0), DEMO, most_paints=1), "at most 1"),
        (lambda: find_recipes(Lab(50, 0, 0), DEMO, most_paints=4), "at most 4"),
        (lambda: find_recipes(Lab(50, 0, 0), DEMO, keep=0), "0 recipes"),
    ],
)
def test_what_cannot_be_searched_is_refused(ask: Callable[[], object], says: str) -> None:
    """Too few paints or a count out of range are refused, and the message names them."""
    with pytest.raises(MendableError) as caught:
        ask()
    assert says in caught.value.what
    assert caught.value.mend
