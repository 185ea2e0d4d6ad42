"""Two colours on one piece: each is mixed in a pot of its own, and each coat says where it goes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from swatchwright.acts.amounts import Coats, amounts_for
from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.acts.piece_job import FORM_PART, amounts_order_of, form_for, keep_piece
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_job import PLAN_PART, keep_plan, plan_of_job
from swatchwright.acts.plan_pots import pots_at_coats, pots_in
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.stock import take_demo_shelf
from swatchwright.colour.names import colour_name
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.order import ProductKind
from swatchwright.piece.work.order import PlanOrder
from swatchwright.piece.work.plan import Step
from swatchwright.piece.work.task import StepKind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Job
from swatchwright.shelf.store.store import Store
from unit.piece.made import work

SHELF = demo_shelf()
BOX = common_piece(Kind.BLANKET_BOX)


@pytest.fixture(scope="module")
def red() -> Recipes:
    """Give the mixes for a red."""
    return recipes_for(typed_colour(46, 34, 24), SHELF, keep=2)


@pytest.fixture(scope="module")
def blue() -> Recipes:
    """Give the mixes for a blue."""
    return recipes_for(typed_colour(28, 3, -24), SHELF, keep=2)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with the demonstration shelf."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        take_demo_shelf(made)
        yield made


@pytest.fixture
def box(store: Store, red: Recipes) -> str:
    """Give the id of a job with a blanket box, a red mix for its body and a plan."""
    id_ = new_job(store, title="Blanket box").jobs[0]
    keep_piece(store, id_, form_for(Kind.BLANKET_BOX), BOX, None)
    keep_recipes(store, id_, red, zone="body")
    keep_document(store, id_, PLAN_PART, work())
    return id_


def order_of(job: Job) -> PlanOrder:
    """Give the order of a job's plan."""
    found = plan_of_job(job, SHELF)
    assert found is not None
    return found


def told(store: Store, id_: str, *kinds: StepKind) -> list[Step]:
    """Give the steps of some kinds of a job's plan."""
    steps = plan_for(order_of(job_of(store, id_))).plan.steps
    return [step for step in steps if step.kind in kinds]


def names(job: Job) -> dict[str, str]:
    """Name the colour of each chosen mix by its zone."""
    return {recipe.zone: colour_name(recipe.dry) for recipe in job.recipes if recipe.chosen}


def test_one_colour_is_told_as_before(store: Store, box: str, red: Recipes) -> None:
    """With one mix, on a part or on all, there are no pots, and the plan is as without mixes."""
    plain = plan_for(replace(order_of(job_of(store, box)), pots=())).plan
    assert plan_for(order_of(job_of(store, box))).plan == plain
    assert [s.title for s in told(store, box, StepKind.MIX)] == ["Mix the whole batch"]
    keep_recipes(store, box, red)
    assert [s.title for s in told(store, box, StepKind.COAT)] == ["Paint, coat 1", "Paint, coat 2"]
    # The same recipe for both parts is one batch.
    keep_recipes(store, box, red, zone="top")
    assert pots_in(job_of(store, box), SHELF) == ()


def test_each_pot_is_named_with_what_the_piece_takes(store: Store, box: str, blue: Recipes) -> None:
    """Mixing names colour, part and ml of each pot, the ml as the amounts of the piece have it."""
    keep_recipes(store, box, blue, zone="top")
    job = job_of(store, box)
    order = amounts_order_of(store, job, SHELF)
    assert order is not None
    amounts = amounts_for(order)
    zones = {row.product: row.zone for row in amounts.coatings}
    ml = {zones[b.product]: b.mix_ml for b in amounts.batches if b.kind is ProductKind.PAINT}
    named = names(job)
    (mix,) = told(store, box, StepKind.MIX)
    assert mix.title == (
        f"Mix each colour whole, in one pot each: {named['body']} for the body, "
        f"{ml['body']:.0f} ml; {named['top']} for the top, {ml['top']:.0f} ml"
    )
    assert "a second batch never comes out quite the same" in mix.how


def test_each_coat_says_which_colour_goes_where(store: Store, box: str, blue: Recipes) -> None:
    """Coats name colour and part; where they meet, the first is dry before tape goes on it."""
    keep_recipes(store, box, blue, zone="top")
    named = names(job_of(store, box))
    coats = told(store, box, StepKind.COAT)
    assert [step.title for step in coats] == [
        f"Paint, coat {n}: {named['body']} on the body, {named['top']} on the top" for n in (1, 2)
    ]
    # Water-borne paint takes the next coat after 4 h: common practice, no source.
    assert all("dry for 4 h before" in step.how and "cut in by hand" in step.how for step in coats)
    assert all("off before the paint is hard" in step.how for step in coats)


def test_two_colours_take_the_days_of_one(store: Store, box: str, blue: Recipes) -> None:
    """Days, waits, work and cautions are those of one colour; only titles and texts differ."""
    one = plan_for(order_of(job_of(store, box))).plan
    keep_recipes(store, box, blue, zone="top")
    two = plan_for(order_of(job_of(store, box))).plan
    assert [replace(s, title="", how="") for s in two.steps] == [
        replace(s, title="", how="") for s in one.steps
    ]
    differing = {a.kind for a, b in zip(one.steps, two.steps, strict=True) if a != b}
    assert differing == {StepKind.MIX, StepKind.COAT}
    assert replace(two, steps=()) == replace(one, steps=())


def test_a_part_without_a_mix(store: Store, red: Recipes, blue: Recipes) -> None:
    """Two of three parts with mixes: the third is said to have none yet, in mixing and in coats."""
    id_ = new_job(store, title="Chest").jobs[0]
    chest = common_piece(Kind.CHEST_OF_DRAWERS)
    keep_piece(store, id_, form_for(Kind.CHEST_OF_DRAWERS), chest, None)
    keep_document(store, id_, PLAN_PART, work())
    keep_recipes(store, id_, red, zone="body")
    keep_recipes(store, id_, blue, zone="drawers")
    (mix,) = told(store, id_, StepKind.MIX)
    assert "for the drawers" in mix.title
    assert "the top" not in mix.title
    first = told(store, id_, StepKind.COAT)[0]
    assert all("No mix is kept yet for this: top." in step.how for step in (mix, first))
    keep_recipes(store, id_, blue)
    (mix,) = told(store, id_, StepKind.MIX)
    assert "No mix" not in mix.how
    assert "for the drawers and top" in mix.title or "for the top and drawers" in mix.title


def test_before_the_piece_is_sized(store: Store, red: Recipes, blue: Recipes) -> None:
    """Without a piece the pots are told by what the mixes are kept for, with no ml."""
    id_ = new_job(store, title="Box").jobs[0]
    keep_document(store, id_, PLAN_PART, work())
    keep_recipes(store, id_, red)
    keep_recipes(store, id_, blue, zone="lid")
    named = names(job_of(store, id_))
    (mix,) = told(store, id_, StepKind.MIX)
    assert mix.title.endswith(f"{named['lid']} for the lid; {named[WHOLE_PIECE]} for the rest")
    assert "ml" not in mix.title.split(":")[1]
    first = told(store, id_, StepKind.COAT)[0]
    assert first.title.endswith(f"{named['lid']} on the lid, {named[WHOLE_PIECE]} on the rest")


def test_while_it_lies_upside_down(store: Store, red: Recipes, blue: Recipes) -> None:
    """What is not seen while the piece stands so is not told of then; one colour meets no other."""
    id_ = new_job(store, title="Table").jobs[0]
    table = common_piece(Kind.CONSOLE_TABLE)
    keep_piece(store, id_, form_for(Kind.CONSOLE_TABLE), table, None)
    keep_document(store, id_, PLAN_PART, work())
    keep_recipes(store, id_, red, zone="body")
    keep_recipes(store, id_, blue, zone="top")
    coats = told(store, id_, StepKind.COAT)
    seen = [{zone for zone in ("body", "top") if f"on the {zone}" in s.title} for s in coats]
    # Two coats upside down, of the body alone; then two of all that is seen as it stands.
    assert seen == [{"body"}, {"body"}, {"body", "top"}, {"body", "top"}]
    meeting = ["Where two colours meet" in step.how for step in coats]
    assert meeting == [False, False, True, True]


def test_other_coats_than_the_piece_has(store: Store, box: str, blue: Recipes) -> None:
    """Coats set with the plan alone take other amounts than the piece tells: none is told then."""
    keep_recipes(store, box, blue, zone="top")
    keep_plan(store, box, work(coats=3, own=("coats",)))
    (mix,) = told(store, box, StepKind.MIX)
    assert "ml" not in mix.title.split(":")[1]
    form = replace(form_for(Kind.BLANKET_BOX), coats=Coats(paint=3))
    keep_document(store, box, FORM_PART, form)
    (mix,) = told(store, box, StepKind.MIX)
    assert mix.title.endswith(" ml")


def test_a_paint_that_the_shelf_lacks(store: Store, box: str, blue: Recipes) -> None:
    """Where a paint is not at hand the pot is told without ml, and the other with it."""
    keep_recipes(store, box, blue, zone="top")
    job = job_of(store, box)
    body, top = (job.chosen(zone) for zone in ("body", "top"))
    assert body is not None
    assert top is not None
    only = {p.paint for p in body.paints} - {p.paint for p in top.paints}
    less = replace(SHELF, paints=tuple(p for p in SHELF.paints if p.id not in only))
    pots = pots_in(job, less)
    assert [pot.ml is None for pot in pots] == [True, False]
    assert pots_at_coats(pots, 2, 2) == pots


def test_what_is_kept_is_read_again(store: Store, box: str, blue: Recipes) -> None:
    """A plan with pots is the same after it was kept; one kept before pots were told has none."""
    keep_recipes(store, box, blue, zone="top")
    order = order_of(job_of(store, box))
    assert len(order.pots) == 2
    keep_plan(store, box, order)
    document = job_of(store, box).document(PLAN_PART)
    assert document is not None
    assert document.read(PlanOrder) == order
    old = msgspec.json.decode(document.json)
    del old["pots"]
    assert msgspec.json.decode(msgspec.json.encode(old), type=PlanOrder) == replace(order, pots=())
