"""What a plan takes from the finish, part by part, and from a piece that is painted already."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.acts.amounts import Coats, amounts_for
from swatchwright.acts.client_wish import ClientWishes, Stands
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_follow import followed
from swatchwright.acts.piece_job import AtHand, Beside, form_for, order_for_job
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_job import (
    Elsewhere,
    following,
    laid_in,
    products_in,
    said_painted,
    topped_in,
)
from swatchwright.acts.plan_own import plan_coats_apart
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.order import ProductKind
from swatchwright.piece.work.order import FinishKind, Which
from swatchwright.piece.work.task import StepKind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.piece.made import work

SHELF = demo_shelf()
TABLE = common_piece(Kind.CONSOLE_TABLE)
FORM = form_for(Kind.CONSOLE_TABLE)
WHITE = (("white-clean", 1.0),)
PARTS = Stack(
    (
        Layer(LayerKind.WASH, WHITE, zone="body", passes=2),
        Layer(LayerKind.WASH, WHITE, water=5.0, zone="top"),
        Layer(LayerKind.WAX),
    )
)


def elsewhere(stack: Stack, *, paint: int = 2) -> Elsewhere:
    """Tell a plan of the table and what goes over its paint."""
    form = replace(FORM, coats=Coats(paint=paint))
    laid = laid_in(stack, SHELF, TABLE, form)
    return Elsewhere(TABLE, form, stack, (), laid, topped_in(stack, TABLE))


def test_a_wash_is_laid_where_its_part_is_seen() -> None:
    """The body of a table is laid from below and from its sides, its top from above alone."""
    body, top = laid_in(PARTS, SHELF, TABLE, FORM)
    assert Which.TOP not in (body.faces or ())
    assert Which.UNDERSIDE in (body.faces or ())
    assert top.faces == (Which.TOP,)
    areas = {zone.zone: zone.area for zone in sized(TABLE).areas.zones}
    assert (body.area, top.area) == (areas["body"], areas["top"])


def test_how_much_is_as_the_amounts_of_the_piece() -> None:
    """The ml of a part are those that the amounts of the piece tell for it."""
    order = order_for_job(FORM, TABLE, {}, SHELF, AtHand(), beside=Beside(PARTS))
    needs = {
        row.zone: row.need_ml / row.coats
        for row in amounts_for(order).coatings
        if row.product.startswith(ProductKind.WASH.value)
    }
    found = {laid.zone: laid.ml for laid in laid_in(PARTS, SHELF, TABLE, FORM)}
    assert found == pytest.approx(needs)


def test_the_plan_has_as_many_washes_as_the_part_with_the_most() -> None:
    """Two washes on the body and one on the top are two washes, and each is planned."""
    order = following(work(), elsewhere(PARTS))
    assert (order.washes, order.finish) == (2, FinishKind.WAX)
    titles = {s.title for s in plan_for(order).plan.steps if s.kind is StepKind.WASH}
    assert titles == {"Wash 1 on the body", "Wash 2 on the body", "Wash 1 on the top"}


def test_a_part_that_the_piece_has_not() -> None:
    """A wash for drawers that a table has not counts for nothing, and is told of."""
    stack = Stack((Layer(LayerKind.WASH, WHITE, zone="drawers", passes=3), PARTS.layers[1]))
    order = following(work(), elsewhere(stack))
    assert order.washes == 1
    plan = plan_for(order).plan
    assert [s.title for s in plan.steps if s.kind is StepKind.WASH] == ["Wash 1 on the top"]
    assert any("drawers" in note for note in plan.notes)


def test_a_finish_on_a_part() -> None:
    """A wax on the top alone is planned for the top; one set by hand is on all of the piece."""
    stack = Stack((Layer(LayerKind.WAX, zone="top", passes=2),))
    order = following(work(), elsewhere(stack))
    assert order.finish_coats == 2
    clear = [s for s in plan_for(order).plan.steps if s.kind is StepKind.CLEAR]
    assert [s.parts for s in clear] == [("top",), ("top",)]
    by_hand = following(work(finish=FinishKind.OIL), elsewhere(stack))
    assert by_hand.topped == ()


def test_a_piece_without_paint_is_painted_already() -> None:
    """Where the piece has no coat of paint the plan begins with the wash."""
    order = following(work(), elsewhere(PARTS, paint=0))
    assert order.painted
    plan = plan_for(order).plan
    assert plan.steps[0].kind is StepKind.CHECK_PAINT
    assert not {StepKind.SAND, StepKind.PRIME, StepKind.COAT} & {s.kind for s in plan.steps}
    assert products_in(order) == ("wash", "finish")


def test_without_paint_the_piece_takes_no_primer() -> None:
    """Nor is a primer bought for a piece that gets no paint, but where it is set by hand."""
    bare = replace(FORM, coats=Coats(paint=0), own=())
    assert followed(bare, Beside()).coats.primer == 0
    assert followed(replace(bare, coats=Coats(paint=1)), Beside()).coats.primer == 2
    by_hand = replace(bare, coats=Coats(paint=0, primer=1), own=("primer",))
    assert followed(by_hand, Beside()).coats.primer == 1


def test_said_to_be_painted() -> None:
    """What the client part says offers to begin with the wash, unless some is still in the pot."""
    red, blue = Lab(40, 50, 30), Lab(30, 0, -30)
    painted = ClientWishes().standing(red, Stands.PAINTED)
    assert said_painted(painted)
    assert not said_painted(painted.standing(blue, Stands.POT))
    # Of a colour that nobody wants any more nothing counts.
    assert not said_painted(painted, [blue])
    assert said_painted(painted, [red, blue])
    assert not said_painted(painted.standing(red, Stands.UNMIXED))
    assert not said_painted(ClientWishes())
    assert not said_painted(None)


def test_coats_of_plan_and_piece_that_differ() -> None:
    """Coats that were set with the plan are told of where the piece has others."""
    assert plan_coats_apart(work(coats=0, own=("coats",)), 2) == 0
    assert plan_coats_apart(work(coats=3, own=("coats",)), 2) == 3
    assert plan_coats_apart(work(coats=3, own=("coats",)), 3) is None
    assert plan_coats_apart(work(coats=3, own=()), 2) is None
    assert plan_coats_apart(None, 2) is None
