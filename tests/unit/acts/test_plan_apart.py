"""Several clear finishes on different parts of a piece: plan, amounts, sheet and what is kept."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest

from swatchwright.acts.amounts import Coats, amounts_for
from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_job import AtHand, Beside, form_for, keep_piece, order_for_job
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_job import (
    FINISH_PART,
    PLAN_PART,
    Elsewhere,
    following,
    laid_in,
    plan_of_job,
    topped_in,
    under_layers,
)
from swatchwright.acts.plan_own import answers_set, own_answers
from swatchwright.acts.plan_times import products_in, tin_times, usual_times, with_tin_times
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.sheet import content_of
from swatchwright.acts.stock import take_demo_shelf
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.order import ProductKind
from swatchwright.piece.work.order import FinishKind, Laid, PaintTimes, PlanOrder, Surface
from swatchwright.piece.work.task import StepKind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store
from unit.piece.made import work

SHELF = demo_shelf()
BOX = common_piece(Kind.BLANKET_BOX)
FORM = form_for(Kind.BLANKET_BOX)
WASH = Layer(LayerKind.WASH, (("white-clean", 1.0),), zone="top")
VARNISH = Layer(LayerKind.VARNISH, passes=3, zone="top")
WAX = Layer(LayerKind.WAX, passes=2, zone="body")
BOTH = Stack((WAX, VARNISH))
RED = typed_colour(46, 34, 24)


def elsewhere(stack: Stack, coats: Coats | None = None, *own: str) -> Elsewhere:
    """Tell a plan of the box and what goes over its paint; what of it was set by hand by name."""
    form = replace(FORM, coats=coats or Coats(), own=own)
    laid = laid_in(stack, SHELF, BOX, form)
    return Elsewhere(BOX, form, stack, (), laid, topped_in(stack, BOX, form))


def over(order: PlanOrder) -> list[str]:
    """Name the steps of a plan that put something over the paint."""
    steps = plan_for(order).plan.steps
    return [s.title for s in steps if s.kind in {StepKind.WASH, StepKind.CLEAR}]


def test_each_part_gets_its_own_finish() -> None:
    """Wax on the body and varnish on the lid are both planned, each as often as it is laid."""
    order = following(work(), elsewhere(BOTH))
    assert order.finishes == (FinishKind.WAX, FinishKind.VARNISH)
    titles = over(order)
    assert [t for t in titles if "Varnish" in t] == [
        f"Varnish, coat {n} on the top" for n in (1, 2, 3)
    ]
    assert [t for t in titles if "Wax" in t] == [f"Wax, coat {n} on the body" for n in (1, 2)]


def test_a_wash_and_varnish_on_the_lid_and_wax_on_the_body() -> None:
    """The lid's wash is planned for the lid alone, below its varnish; the body gets only wax."""
    titles = over(following(work(), elsewhere(Stack((WASH, *BOTH.layers)))))
    assert titles[:2] == ["Wash 1 on the top", "Varnish, coat 1 on the top"]
    assert titles[-1] == "Wax, coat 2 on the body"


@pytest.mark.parametrize(
    ("layers", "finish", "coats"),
    [
        ((Layer(LayerKind.WAX, passes=2),), FinishKind.WAX, 2),
        ((replace(WAX, zone="top"), WAX), FinishKind.WAX, 2),
        ((Layer(LayerKind.VARNISH),), FinishKind.VARNISH, 1),
        ((), FinishKind.NONE, 1),
    ],
)
def test_one_finish_is_told_as_before(
    layers: tuple[Layer, ...], finish: FinishKind, coats: int
) -> None:
    """One finish, on all or on parts, or none, has no finish of its own for a part, nor ml."""
    order = following(work(), elsewhere(Stack(layers)))
    assert (order.finish, order.finish_coats, order.tops) == (finish, coats, ())
    assert all(one.finish is None and one.ml is None for one in order.topped)
    assert {"wax", "oil", "varnish"}.isdisjoint(products_in(order))


def test_a_piece_that_is_painted_already() -> None:
    """With no coat of paint both finishes are planned after a look at the paint, for a day dry."""
    plan = plan_for(following(work(), elsewhere(BOTH, Coats(paint=0)))).plan
    assert plan.painted
    assert "dried for 24 hours" in plan.steps[0].how
    assert {s.parts for s in plan.steps if s.kind is StepKind.CLEAR} == {("top",), ("body",)}


def test_how_much_is_as_the_amounts_of_the_piece() -> None:
    """The ml and the areas of each part are those that the amounts of the piece tell."""
    order = order_for_job(FORM, BOX, {}, SHELF, AtHand(), beside=Beside(BOTH))
    amounts = amounts_for(order)
    rows = [row for row in amounts.coatings if row.product in {"wax", "varnish"}]
    assert {(row.zone, row.product, row.coats) for row in rows} == {
        ("body", "wax", 2),
        ("top", "varnish", 3),
    }
    areas = {zone.zone: zone.area for zone in sized(BOX).areas.zones}
    assert {row.zone: row.area for row in rows} == areas
    found = topped_in(BOTH, BOX, FORM)
    needs = {row.zone: row.need_ml / row.coats for row in rows}
    assert {one.zone: one.ml for one in found} == pytest.approx(needs)
    bought = {p.id: p.need_ml for p in amounts.purchases}
    assert {"wax", "varnish"} <= set(bought)
    clear = {b.product for b in amounts.batches if b.kind is ProductKind.CLEAR}
    assert clear == {"wax", "varnish"}


def test_on_all_of_it_its_whole_area_counts() -> None:
    """Varnish and then wax on all take what all of the piece takes, and both are planned."""
    stack = Stack((Layer(LayerKind.VARNISH), Layer(LayerKind.WAX)))
    order = order_for_job(FORM, BOX, {}, SHELF, AtHand(), beside=Beside(stack))
    rows = [r for r in amounts_for(order).coatings if r.product in {"wax", "varnish"}]
    needs = {name: sum(r.need_ml for r in rows if r.product == name) for name in ("wax", "varnish")}
    found = {one.finish: one.ml for one in topped_in(stack, BOX, FORM)}
    assert found == pytest.approx(needs)
    assert over(following(work(), elsewhere(stack))) == ["Varnish, coat 1", "Wax, coat 1"]


def test_as_often_as_is_set_with_the_piece() -> None:
    """Clear coats set by hand with the piece are those of the part with the most of them."""
    more, fewer = (following(work(), elsewhere(BOTH, Coats(clear=n), "clear")) for n in (4, 1))
    assert {(o.finish, o.passes) for o in more.tops} == {
        (FinishKind.WAX, 2),
        (FinishKind.VARNISH, 4),
    }
    assert {(o.finish, o.passes) for o in fewer.tops} == {
        (FinishKind.WAX, 1),
        (FinishKind.VARNISH, 1),
    }


def test_following_twice_changes_nothing_more() -> None:
    """An order that follows already stays as it is."""
    once = following(work(), elsewhere(BOTH))
    assert following(once, elsewhere(BOTH)) == once


def test_a_part_that_the_piece_has_not() -> None:
    """A finish for doors that a box has not leaves one finish, and is told."""
    gone = Layer(LayerKind.OIL, passes=2, zone="doors")
    order = following(work(), elsewhere(Stack((WAX, gone))))
    assert (order.finish, order.tops) == (FinishKind.WAX, ())
    plan = plan_for(order).plan
    assert [s.parts for s in plan.steps if s.kind is StepKind.CLEAR] == [("body",), ("body",)]
    assert any("doors" in note for note in plan.notes)
    three = following(work(), elsewhere(Stack((gone, *BOTH.layers))))
    assert three.finishes == (FinishKind.WAX, FinishKind.VARNISH)


def test_one_finish_set_by_hand_goes_on_all() -> None:
    """Where another is set with the plan it is the only one, on all of the piece."""
    shown = following(work(), elsewhere(BOTH))
    changed = answers_set(shown, replace(shown, finish=FinishKind.VARNISH, topped=()))
    assert "finish" in own_answers(changed)
    order = following(changed, elsewhere(BOTH))
    assert (order.finish, order.topped) == (FinishKind.VARNISH, ())


def test_layers_that_are_given() -> None:
    """Layers tell washes and finishes of an order; a part that is not there is refused."""
    order = under_layers(work(), Stack((WASH, *BOTH.layers)), SHELF, BOX)
    assert order.washes == 1
    assert order.finishes == (FinishKind.WAX, FinishKind.VARNISH)
    assert following(replace(order, own=("finish",)), Elsewhere(BOX)).tops == order.tops
    single = under_layers(work(), Stack((WAX,)), SHELF, BOX)
    assert over(single) == ["Wax, coat 1 on the body", "Wax, coat 2 on the body"]
    with pytest.raises(MendableError, match="doors"):
        under_layers(work(), Stack((replace(WAX, zone="doors"),)), SHELF, BOX)


# --- times ---------------------------------------------------------------------------------------


def test_each_finish_has_times_of_its_own() -> None:
    """Of several finishes each is asked for, in the order they come, with its usual times."""
    order = following(work(), elsewhere(BOTH))
    assert products_in(order)[-2:] == ("varnish", "wax")
    assert "finish" not in products_in(order)
    # Common practice, no source: a water-borne varnish 4 h to the next coat, wax a day.
    assert [usual_times(order, name).recoat for name in ("varnish", "wax")] == [240, 1440]


def test_times_of_the_one_finish_stay_with_it() -> None:
    """What the tin of the wax said is said of the wax when a varnish comes in, and back again."""
    tin = PaintTimes(60, 600, 6000)
    one = following(work(finish_times=tin), elsewhere(Stack((WAX,))))
    assert tin_times(one, "finish") == tin
    both = following(one, elsewhere(Stack((VARNISH, WAX))))
    assert (tin_times(both, "wax"), tin_times(both, "varnish")) == (tin, None)
    told = with_tin_times(both, {"wax": None, "varnish": tin})
    assert (tin_times(told, "wax"), tin_times(told, "varnish")) == (None, tin)
    back = following(told, elsewhere(Stack((VARNISH,))))
    assert tin_times(back, "finish") == tin
    none = with_tin_times(back, {"finish": None})
    assert tin_times(none, "finish") is None


# --- kept ----------------------------------------------------------------------------------------


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def job(store: Store) -> str:
    """Give the id of a job for a box with wax on its body and varnish on its lid."""
    take_demo_shelf(store)
    id_ = new_job(store, title="Blanket box", client="Harbour workshop").jobs[0]
    keep_recipes(store, id_, recipes_for(RED, SHELF, keep=1), zone="all")
    keep_piece(store, id_, FORM, BOX, None)
    keep_document(store, id_, FINISH_PART, BOTH)
    plan = PlanOrder("box", "2026-12-01", surface=Surface.RAW, own=("surface",))
    keep_document(store, id_, PLAN_PART, plan)
    return id_


def test_the_sheet_tells_each_finish_with_its_part(store: Store, job: str) -> None:
    """Plan, amounts, what to buy and the label name wax for the body and varnish for the lid."""
    content = content_of(store, job)
    steps = [line.title for line in content.plan]
    assert "Varnish, coat 3 on the top" in steps
    assert "Wax, coat 2 on the body" in steps
    lines = {(line.zone, line.product, line.coats) for line in content.piece}
    assert {("body", "wax", 2), ("top", "varnish", 3)} <= lines
    assert {"wax", "varnish"} <= {line.name for line in content.buy}
    told = " ".join(content.zones[0].finish)
    assert "body: a wax, twice" in told
    assert "top: a varnish, 3 times" in told
    assert "oily rags" in {box.danger for box in content.cautions}


def test_what_was_kept_before_opens_as_before(store: Store, job: str) -> None:
    """A plan kept without finishes by part has one; what it then gets follows the other pages."""
    old = msgspec.json.decode(msgspec.json.encode(work(finish=FinishKind.OIL)))
    for name in ("wax_times", "oil_times", "varnish_times"):
        del old[name]
    laid = {"paints": [], "water": 0.0, "passes": 1, "zone": "body"}
    old |= {"own": ["finish"], "topped": [laid]}
    kept = msgspec.json.decode(msgspec.json.encode(old), type=PlanOrder)
    assert kept.topped == (Laid((), 0.0, zone="body"),)
    assert (kept.finishes, kept.tops) == ((FinishKind.OIL,), ())
    keep_document(store, job, PLAN_PART, kept)
    order = plan_of_job(job_of(store, job), SHELF)
    assert order is not None
    assert (order.finish, order.topped) == (FinishKind.OIL, ())
    keep_document(store, job, PLAN_PART, replace(kept, own=()))
    followed = plan_of_job(job_of(store, job), SHELF)
    assert followed is not None
    assert followed.finishes == (FinishKind.WAX, FinishKind.VARNISH)


def test_what_is_kept_is_read_again(store: Store, job: str) -> None:
    """Finishes by part, with the times of their tins, are the same after they were kept."""
    tin = PaintTimes(60, 600, 6000)
    order = replace(under_layers(work(), BOTH, SHELF, BOX), wax_times=tin)
    keep_document(store, job, PLAN_PART, order)
    document = job_of(store, job).document(PLAN_PART)
    assert document is not None
    assert document.read(PlanOrder) == order
