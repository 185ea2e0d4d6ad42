"""The piece of a job: its form, the mixes of its zones, its order, kept and read again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.amounts import Coats, amounts_for
from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import job_of, new_job, open_jobs, undo
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_job import (
    AMOUNTS_PART,
    FORM_PART,
    PIECE_PART,
    AtHand,
    PieceForm,
    ZoneMix,
    at_hand,
    form_for,
    form_of_parts,
    has_inside,
    keep_sized,
    mixes_by_zone,
    order_for_job,
    piece_of_form,
)
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.stock import put_paints, set_stock
from swatchwright.errors import MendableError
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.order import AmountsOrder, ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.tins import TinSize
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store
from unit.piece.made import panel, piece

CHEST = common_piece(Kind.CHEST_OF_DRAWERS)
FORM = form_for(Kind.CHEST_OF_DRAWERS)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as opened:
        yield opened


@pytest.fixture(scope="module")
def clay() -> Recipes:
    """Give recipes for a clay red."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2)


@pytest.fixture(scope="module")
def ink() -> Recipes:
    """Give recipes for an ink blue."""
    return recipes_for(typed_colour(30, 0, -20), demo_shelf(), most_paints=2)


@pytest.mark.parametrize("kind", list(Kind))
def test_a_form_builds_the_common_piece(kind: Kind) -> None:
    """The form of a kind as it usually is builds that kind as it usually is."""
    assert piece_of_form(form_for(kind)) == common_piece(kind)
    assert has_inside(kind) == (kind in {Kind.BLANKET_BOX, Kind.BEDSIDE_CABINET, Kind.DRESSER})


def test_a_piece_from_a_file_has_no_sizes() -> None:
    """A form without a kind builds nothing, and says to change the parts."""
    with pytest.raises(MendableError, match="parts"):
        piece_of_form(form_of_parts())


def test_the_mix_on_the_bench_serves_all_zones(clay: Recipes) -> None:
    """Before a job has a chosen recipe, every zone is shown in the first mix."""
    found = mixes_by_zone(CHEST, (), clay.recipes[0].recipe)
    assert found.keys() == {"top", "body", "drawers"}
    assert {mix.dry for mix in found.values()} == {clay.recipes[0].recipe.dry}
    assert mixes_by_zone(CHEST, (), None) == {}


def test_chosen_recipes_go_to_their_zones(store: Store, clay: Recipes, ink: Recipes) -> None:
    """A zone has its own chosen recipe, the others that for the whole piece, or none."""
    id_ = new_job(store, title="Chest").jobs[0]
    keep_recipes(store, id_, ink, zone="drawers")
    first = clay.recipes[0].recipe
    alone = mixes_by_zone(CHEST, job_of(store, id_).recipes, first)
    assert alone.keys() == {"drawers"}
    keep_recipes(store, id_, clay)
    both = mixes_by_zone(CHEST, job_of(store, id_).recipes, None)
    assert both["drawers"].dry == ink.recipes[0].recipe.dry
    assert both["top"].dry == both["body"].dry == clay.recipes[0].recipe.dry


def test_a_recipe_is_ordered_when_the_shelf_lacks_it(store: Store, clay: Recipes) -> None:
    """Paints that have left the shelf are taken as they were when the recipe was kept."""
    id_ = new_job(store, title="Chest").jobs[0]
    keep_recipes(store, id_, clay)
    put_paints(store, demo_shelf().paints)
    used = clay.recipes[0].recipe.paints[0].id
    set_stock(store, used, 120)
    recipes = job_of(store, id_).recipes
    known = at_hand(store, recipes)
    mixes = mixes_by_zone(CHEST, recipes, None)
    order = order_for_job(FORM, CHEST, mixes, Shelf("empty", ()), known)
    found = amounts_for(order)
    assert {p.id: p.left_ml for p in found.purchases}[used] == 120
    mixed = {p.id for p in clay.recipes[0].recipe.paints}
    assert {p.id for p in found.purchases} == {"primer", *mixed}


def test_what_she_typed_comes_before_the_stock() -> None:
    """What she says is left or sold counts, and what is not used is passed over."""
    form = replace(
        FORM,
        coats=Coats(primer=1, paint=0),
        left={"primer": 50.0, "wash": 9.0},
        tins={"primer": (TinSize(250),), "drawers": (TinSize(500),)},
    )
    order = order_for_job(form, CHEST, {}, demo_shelf(), AtHand((), {"primer": 10.0}))
    (primer,) = order.products
    assert primer.kind is ProductKind.PRIMER
    assert primer.ingredients[0].left_ml == 50
    assert primer.ingredients[0].tins == (TinSize(250),)


def test_a_zone_without_a_mix_is_reckoned_too() -> None:
    """The need is area times coats over the rate, over what a brush leaves on the piece."""
    made = piece(panel())
    order = order_for_job(form_of_parts(), made, {}, demo_shelf(), AtHand())
    # What is on it is not known: two coats of an adhesion primer come first.
    _, batch = amounts_for(order).batches
    # 0.5 m x 0.3 m, two coats, 12 m2 a litre, 5 % left in the brush: worked by hand.
    assert batch.need_ml == pytest.approx(0.15 * 2 / 12 * 1000 / 0.95)


def test_a_mix_of_paints_that_nobody_knows_is_passed_over() -> None:
    """A recipe of paints that are neither on the shelf nor kept leaves its zone without one."""
    mix = ZoneMix((("gone", 1.0),), typed_colour(46, 34, 24).lab)
    order = order_for_job(FORM, CHEST, {"body": mix}, demo_shelf(), AtHand())
    assert {p.id for p in order.products} == {"primer", "top", "body", "drawers"}


def test_nothing_painted_is_said() -> None:
    """A piece without a painted face has no amounts, and what to do is said."""
    bare = piece(panel(painted=()))
    with pytest.raises(MendableError, match="painted"):
        order_for_job(form_of_parts(), bare, {}, demo_shelf(), AtHand())


@pytest.mark.parametrize("painted", [True, False])
def test_all_is_kept_as_one_edit(store: Store, painted: bool) -> None:  # noqa: FBT001
    """Piece, form and order come back as they were, and one undo takes all of them away."""
    id_ = new_job(store, title="Chest").jobs[0]
    made = CHEST if painted else piece(panel(painted=()))
    form = replace(FORM, tins={"primer": (TinSize(250),)}, left={"body": 2.5}, by_hand=True)
    keep_sized(store, id_, form, made, mixes={}, shelf=demo_shelf(), known=AtHand())
    job = job_of(store, id_)
    kept, set_, order = (job.document(p) for p in (PIECE_PART, FORM_PART, AMOUNTS_PART))
    assert kept is not None
    assert set_ is not None
    assert kept.read(Piece) == made
    assert set_.read(PieceForm) == form
    assert (order is not None) == painted
    if order is not None:
        assert sum(z.area for z in order.read(AmountsOrder).zones) == pytest.approx(
            sized(made).areas.total
        )
    undo(store)
    assert job_of(store, id_).documents == ()
