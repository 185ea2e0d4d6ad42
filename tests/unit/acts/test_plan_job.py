"""A plan follows what other parts of a job say."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.acts.amounts import Coats
from swatchwright.acts.piece_job import form_for
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_job import (
    Elsewhere,
    answered,
    following,
    laid_in,
    paints_in_use,
    products_in,
    usual_times,
)
from swatchwright.acts.plan_own import answers_set
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.paint.family import Family
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.order import (
    Age,
    Carrier,
    FinishKind,
    Lead,
    PaintTimes,
    PlanOrder,
    Primer,
    Surface,
    Which,
)
from swatchwright.piece.work.task import StepKind
from swatchwright.shelf.csv_file import demo_shelf
from unit.piece.made import work

TABLE = common_piece(Kind.CONSOLE_TABLE)
WASHED_AND_WAXED = Stack(
    (
        Layer(LayerKind.WASH, (("white-clean", 1.0),), passes=2),
        Layer(LayerKind.GLAZE, (("white-clean", 1.0),)),
        Layer(LayerKind.VARNISH),
        Layer(LayerKind.WAX, passes=2),
    )
)


WATER_BORNE = demo_shelf().paints[:2]
OIL = (replace(demo_shelf().paints[0], family=Family.OIL),)


def test_the_piece_is_followed() -> None:
    """Name, area and faces are those of the piece; what was set by hand stays."""
    by_hand = work(coats=4, own=("coats", "washes", "finish"))
    made = following(by_hand, Elsewhere(piece=TABLE, stack=WASHED_AND_WAXED))
    assert made.name == TABLE.name
    assert made.area == pytest.approx(areas_of(TABLE).total, abs=0.005)
    assert Which.UNDERSIDE in made.faces
    assert (made.coats, made.washes, made.finish) == (4, 0, FinishKind.NONE)


def test_the_finish_is_followed() -> None:
    """Washes and glazes are counted by passes, and the finish is what is laid last."""
    made = following(work(), Elsewhere(stack=WASHED_AND_WAXED))
    assert made.washes == 3
    assert (made.finish, made.finish_coats) == (FinishKind.WAX, 2)
    bare = following(replace(made, own=()), Elsewhere(stack=Stack()))
    assert (bare.washes, bare.finish) == (0, FinishKind.NONE)
    plan_for(made)


def test_the_coats_of_the_piece_are_followed() -> None:
    """Coats, primer and clear coats are those that the amounts were reckoned for."""
    coats = Coats(primer=2, paint=3, wash=1, clear=2)
    form = replace(form_for(Kind.CHAIR), coats=coats)
    made = following(work(), Elsewhere(form=form))
    assert (made.coats, made.washes, made.primer, made.primer_coats) == (3, 1, Primer.ORDINARY, 2)
    assert (made.finish, made.finish_coats) == (FinishKind.VARNISH, 2)
    kept = following(work(finish=FinishKind.OIL, primer=Primer.ADHESION), Elsewhere(form=form))
    assert (kept.finish, kept.primer) == (FinishKind.OIL, Primer.ADHESION)


def test_the_carrier_is_that_of_the_paints() -> None:
    """Paints of oil make a solvent-borne plan, others a water-borne one."""
    assert following(work(), Elsewhere(paints=OIL)).carrier is Carrier.SOLVENT
    oil = work(carrier=Carrier.SOLVENT)
    assert following(oil, Elsewhere(paints=WATER_BORNE)).carrier is Carrier.SOLVENT
    left = replace(oil, own=())
    assert following(left, Elsewhere(paints=WATER_BORNE)).carrier is Carrier.WATER
    assert following(oil, Elsewhere()).carrier is Carrier.SOLVENT


def test_following_twice_changes_nothing_more() -> None:
    """An order that follows already stays as it is."""
    told = Elsewhere(TABLE, form_for(Kind.CONSOLE_TABLE), WASHED_AND_WAXED, WATER_BORNE)
    once = following(work(), told)
    assert following(once, told) == once


def test_products_are_those_that_go_on() -> None:
    """Only what is put on has times to give; primer where one is usual."""
    assert products_in(work(surface=Surface.PAINTED)) == ("paint",)
    assert products_in(work(washes=1, finish=FinishKind.WAX)) == (
        "primer",
        "paint",
        "wash",
        "finish",
    )


@pytest.mark.parametrize("product", ["primer", "paint", "wash", "finish"])
def test_usual_times_said_by_the_tin_change_no_wait_but_its_source(product: str) -> None:
    """A plan with the usual times entered as the tin's is over at the same time."""
    order = work(washes=1, finish=FinishKind.VARNISH)
    times = usual_times(order, product)
    assert isinstance(times, PaintTimes)
    told = {"primer": order, "paint": order, "wash": order, "finish": order}[product]
    entered = replace(told, **{f"{product}_times": times})  # type: ignore[arg-type]
    assert plan_for(entered).plan.ready == plan_for(order).plan.ready


def test_an_answer_about_lead_is_not_carried_over() -> None:
    """Once the question no longer binds the answer is forgotten, and is asked anew when it does."""
    old = work(surface=Surface.PAINTED, age=Age.OLD, lead=Lead.TESTED_NEGATIVE)
    assert answered(old) == old
    assert answered(replace(old, age=Age.RECENT)).lead is Lead.NOT_ANSWERED


def test_paints_in_use() -> None:
    """Without a chosen recipe they are those of the first mix, without a mix none."""
    found = recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2)
    first = found.recipes[0].recipe
    assert paints_in_use((), first, demo_shelf()) == first.paints
    assert paints_in_use((), None, demo_shelf()) == ()


def test_what_was_followed_is_not_set_by_hand() -> None:
    """A wash that came from the finish goes with it, whatever else was set meanwhile."""
    blank = PlanOrder("piece", "2027-03-01")
    shown = following(blank, Elsewhere(stack=WASHED_AND_WAXED))
    kept = answers_set(shown, replace(shown, age=Age.RECENT, coats=3))
    assert kept.own == ("coats",)
    for told in (Elsewhere(stack=Stack()), Elsewhere()):
        after = following(kept, told)
        assert (after.washes, after.laid, after.finish) == (0, (), FinishKind.NONE)
        assert after.coats == 3


@pytest.mark.parametrize(("left", "told"), [(None, "to a fifth of it"), (0.5, "to half of it")])
def test_how_far_a_wash_is_wiped_back(left: float | None, told: str) -> None:
    """The step of a wash says how much of it is left, and that the colour hangs on it."""
    stack = Stack((Layer(LayerKind.WASH, (("white-clean", 1.0),), left=left),))
    order = following(work(), Elsewhere(stack=stack, laid=laid_in(stack, demo_shelf())))
    (step,) = (s for s in plan_for(order).plan.steps if s.kind is StepKind.WASH)
    assert told in step.how
