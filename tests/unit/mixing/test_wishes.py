"""What the painter may ask, which paints may meet then, and what cannot be kept together."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import numpy as np
import pytest

from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.errors import MendableError
from swatchwright.mixing.allowed import allowed
from swatchwright.mixing.proof import PROVEN
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.subsets import subsets
from swatchwright.mixing.wishes import Wishes, price_per_ml
from swatchwright.paint.family import Family
from swatchwright.paint.mixture import contrast_ratio, dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.values import Lab
from unit.mixing.composed import composed
from unit.mixing.shelves import grid
from unit.paint.made import paint

SHELF = composed(9)
BIG = composed(32)
WANTED = Lab(45, 20, 10)
PRICES = np.array([1000 * (price_per_ml(p) or 0.0) for p in SHELF])
OWNED = frozenset(p.id for p in SHELF[:4])

WISHES = {
    "only": Wishes(only=frozenset({"paint-1", "paint-2", "paint-3", "paint-8"})),
    "without": Wishes(without=frozenset({"paint-1", "paint-4"})),
    "must": Wishes(must=frozenset({"paint-5"})),
    "two musts": Wishes(must=frozenset({"paint-5", "paint-0"})),
    "nothing to buy": Wishes(owned=OWNED, most_to_buy=0),
    "one to buy": Wishes(owned=OWNED, most_to_buy=1),
    "a little of one": Wishes(most_share=(("paint-0", 0.1), ("paint-3", 0.2))),
    "hides in two coats": Wishes(most_coats=2),
    "cheap": Wishes(most_price=28.0),
    "cheap, and a little of one": Wishes(most_price=32.0, most_share=(("paint-0", 0.3),)),
}


def keeps(wishes: Wishes, ids: frozenset[str]) -> bool:
    """Tell whether a set of paints is one that may meet, one wish at a time."""
    bought = ids - (wishes.owned if wishes.owned is not None else ids)
    return (
        (wishes.only is None or ids <= wishes.only)
        and not ids & wishes.without
        and wishes.must <= ids
        and (wishes.most_to_buy is None or len(bought) <= wishes.most_to_buy)
    )


def test_a_greatest_price_binds() -> None:
    """Where the closest mix costs too much, each that is given instead costs no more than asked."""
    most = 28.0

    def litre(recipe: Recipe) -> float:
        return sum(
            1000 * (price_per_ml(p) or 0.0) * s
            for p, s in zip(recipe.paints, recipe.shares, strict=True)
        )

    assert litre(find_recipes(WANTED, SHELF).recipes[0]) > most
    for recipe in find_recipes(WANTED, SHELF, wishes=Wishes(most_price=most), keep=20).recipes:
        assert litre(recipe) <= most + 0.05


@pytest.mark.parametrize(
    ("shelf", "most", "says"),
    [
        (SHELF, 1.0, "cheapest paint costs"),
        (tuple(replace(p, tins=()) for p in SHELF), 30.0, "no paint has a price"),
        (SHELF, -2.0, "at the most was asked"),
    ],
    ids=["too cheap", "no prices", "negative"],
)
def test_a_price_that_cannot_be_kept_is_said(
    shelf: tuple[Paint, ...], most: float, says: str
) -> None:
    """A greatest price below every paint's, of a shelf without prices, or below 0 is refused."""
    with pytest.raises(MendableError, match=says):
        find_recipes(WANTED, shelf, wishes=Wishes(most_price=most))


@pytest.mark.parametrize("wishes", WISHES.values(), ids=WISHES)
@pytest.mark.parametrize("shelf", [SHELF, BIG], ids=["9", "32"])
def test_every_recipe_keeps_the_wishes(wishes: Wishes, shelf: tuple[Paint, ...]) -> None:
    """Sets, greatest shares and hiding are as asked, on shelves solved whole and screened."""
    for recipe in find_recipes(WANTED, shelf, wishes=wishes, keep=20).recipes:
        assert keeps(wishes, frozenset(p.id for p in recipe.paints))
        shares = {p.id: s for p, s in zip(recipe.paints, recipe.shares, strict=True)}
        assert all(shares.get(id_, 0) <= most for id_, most in wishes.most_share)
        assert all(shares[id_] >= 0.05 - 1e-3 for id_ in wishes.must)
        if wishes.most_coats is not None:
            assert recipe.coats is not None
            assert recipe.coats <= wishes.most_coats


@pytest.mark.parametrize("wishes", WISHES.values(), ids=WISHES)
def test_no_allowed_mix_on_a_grid_is_nearer(wishes: Wishes) -> None:
    """Of all mixes on a grid that keep the wishes none is nearer, and the proof holds."""
    each = stack(SHELF)
    result = find_recipes(WANTED, SHELF, wishes=wishes, proven=True)
    limits = dict(wishes.most_share)
    best = np.inf
    for size in (1, 2, 3):
        for which in combinations(range(len(SHELF)), size):
            if not keeps(wishes, frozenset(SHELF[i].id for i in which)):
                continue
            shares = grid(size)
            most = np.array([limits.get(SHELF[i].id, 1.0) for i in which])
            least = np.array([0.05 * (SHELF[i].id in wishes.must) for i in which])
            kept = ((shares <= most + 1e-12) & (shares >= least)).all(axis=1)
            if wishes.most_price is not None:
                kept &= shares @ PRICES[list(which)] <= wishes.most_price
            shares = shares[kept]
            if not len(shares):
                continue
            mixture = mix(each, np.broadcast_to(which, shares.shape), shares)
            measure = far_difference if result.far else delta_e_2000
            apart = measure(WANTED.triple, dry_lab(mixture))
            if wishes.most_coats is not None:
                apart = np.where(contrast_ratio(mixture, wishes.most_coats) >= 0.98, apart, np.inf)
            best = min(best, float(apart.min()))
    assert result.proven_gap is not None
    assert result.proven_gap <= PROVEN
    assert result.closest - result.proven_gap <= best
    assert result.closest <= best + 1e-3


def test_hiding_costs_where_it_must() -> None:
    """On a shelf of thin paints what hides in one coat is further off, and no proof denies it."""
    thin = tuple(replace(p, spreading_rate=16.0) for p in SHELF[:4])
    free = find_recipes(WANTED, thin, proven=True)
    tight = find_recipes(WANTED, thin, wishes=Wishes(most_coats=1), proven=True)
    assert tight.closest > free.closest
    assert {r.coats for r in tight.recipes} == {1}
    assert free.proven_gap is not None
    assert tight.proven_gap is not None
    # What is proven without the wish holds with it.
    assert tight.closest - tight.proven_gap <= tight.closest
    assert free.proven_gap <= PROVEN


def test_no_wish_changes_nothing() -> None:
    """Without wishes, or with ones that everything keeps, the recipes are the same."""
    plain = find_recipes(WANTED, SHELF).recipes
    easy = Wishes(owned=frozenset(p.id for p in SHELF), most_to_buy=0, most_share=(("paint-1", 1),))
    for wishes in (Wishes(), easy):
        found = find_recipes(WANTED, SHELF, wishes=wishes).recipes
        assert [r.shares for r in found] == [r.shares for r in plain]


@pytest.mark.parametrize("size", [1, 2, 3])
def test_all_sets_are_listed_once(size: int) -> None:
    """Of a shelf of both carriers the same sets come as from the plain list of them."""
    shelf = [paint(str(i), family=Family.OIL if i % 3 == 0 else Family.SATIN) for i in range(8)]
    wishes = Wishes(owned=frozenset({"1", "2", "3"}), most_to_buy=3)
    rows = allowed(shelf, wishes, 3).sets(size)
    assert rows.tolist() == subsets(stack(shelf), size).tolist()
    assert allowed(shelf, wishes, 3).count(size) == len(rows)


REFUSED: list[tuple[Wishes, str]] = [
    (Wishes(must=frozenset({"paint-1"}), without=frozenset({"paint-1"})), "paint-1 must be in"),
    (Wishes(must=frozenset({"paint-1"}), only=frozenset({"paint-2"})), "paint-1 must be in"),
    (Wishes(must=frozenset({"paint-1", "paint-2", "paint-3", "paint-4"})), "4 paints must"),
    (Wishes(must=frozenset({"paint-7"}), owned=OWNED, most_to_buy=0), "paint-7 must be in"),
    (Wishes(without=frozenset(p.id for p in SHELF)), "No paint is left"),
    (Wishes(only=frozenset({"paint-99"})), "names paint-99"),
    (Wishes(most_share=(("paint-1", 0.0),)), "At most 0 of paint-1"),
    (Wishes(most_share=tuple((p.id, 0.2) for p in SHELF)), "do not add up"),
    (Wishes(must=frozenset({"paint-1"}), most_share=(("paint-1", 0.01),)), "paint-1 must be in"),
    (Wishes(most_coats=0), "within 0 coats"),
    (Wishes(most_to_buy=-1), "At most \N{MINUS SIGN}1"),
    (Wishes(owned=frozenset(), most_to_buy=0), "needs only 0 to be bought"),
]


@pytest.mark.parametrize(("wishes", "says"), REFUSED)
def test_what_cannot_be_kept_is_named(wishes: Wishes, says: str) -> None:
    """Wishes that contradict each other or the shelf are refused by name, and mendable."""
    with pytest.raises(MendableError) as caught:
        find_recipes(WANTED, SHELF, wishes=wishes)
    assert says in caught.value.what
    assert caught.value.mend


def test_what_nothing_hides_is_said() -> None:
    """Where no mix hides within the coats, that is the wish that is named."""
    glassy = [paint(str(i), K=0.01, S=1.0 + i) for i in range(3)]
    with pytest.raises(MendableError, match="hides within 2 coats"):
        find_recipes(WANTED, glassy, wishes=Wishes(most_coats=2))


def test_a_paint_twice_is_refused() -> None:
    """Two paints of one id on a shelf are refused."""
    with pytest.raises(MendableError, match="Two paints have the id"):
        find_recipes(WANTED, [*SHELF, SHELF[0]])


def test_both_carriers_cannot_be_musts() -> None:
    """A water-borne and a solvent-borne paint cannot both be in every recipe."""
    shelf = [paint("a"), paint("b", family=Family.OIL), paint("c")]
    with pytest.raises(MendableError, match="one is water-borne"):
        find_recipes(WANTED, shelf, wishes=Wishes(must=frozenset({"a", "b"})))
