"""A plan has the steps of the trade, in its order and with its waits."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.order import (
    Age,
    Carrier,
    FinishKind,
    Laid,
    Lead,
    Loose,
    PaintTimes,
    PlanOrder,
    Primer,
    Room,
    Surface,
    Use,
    Which,
)
from swatchwright.piece.work.plan import Plan, Step, plan_of
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import Source
from unit.piece.made import ALL_ROUND, full_work, work


def kinds(plan: Plan) -> list[StepKind]:
    """Give the kinds of all steps in their order."""
    return [step.kind for step in plan.steps]


def of_kind(plan: Plan, kind: StepKind) -> list[Step]:
    """Give the steps of a kind."""
    return [step for step in plan.steps if step.kind is kind]


def gap(first: Step, then: Step) -> timedelta:
    """Give the time from the end of a step to the start of another."""
    return datetime.fromisoformat(then.start) - datetime.fromisoformat(first.end)


def test_bare_wood_in_order() -> None:
    """Raw wood is sanded, dusted, primed once, painted twice with a denib between, and cured."""
    assert kinds(plan_of(work())) == [
        StepKind.SAMPLE,
        StepKind.REMOVE,
        StepKind.SAND,
        StepKind.DUST,
        StepKind.PRIME,
        StepKind.CHECK,
        StepKind.MIX,
        StepKind.COAT,
        StepKind.DENIB,
        StepKind.COAT,
        StepKind.CURE,
        StepKind.REFIT,
    ]


def test_an_old_varnish_in_order() -> None:
    """An old varnish, treated as lead, is cleaned and keyed wet, and its filler smoothed wet."""
    order = work(
        surface=Surface.VARNISHED, age=Age.OLD, lead=Lead.TREAT_AS_LEAD, repairs=True, coats=1
    )
    assert kinds(plan_of(order)) == [
        StepKind.LEAD_CARE,
        StepKind.SAMPLE,
        StepKind.REMOVE,
        StepKind.DEGREASE,
        StepKind.RINSE,
        StepKind.KEY_WET,
        StepKind.DUST,
        StepKind.FILL,
        StepKind.SMOOTH_WET,
        StepKind.DUST,
        StepKind.PRIME,
        StepKind.PRIME,
        StepKind.CHECK,
        StepKind.MIX,
        StepKind.COAT,
        StepKind.CURE,
        StepKind.REFIT,
    ]


def test_the_sample_is_dry_before_it_is_held_to_the_cloth() -> None:
    """A sample has its recoat time before it is judged, in a cold room too, and then all is mixed.

    Common practice, no source: told by a painter of furniture.
    """
    for order in (work(primer=Primer.NONE), work(primer=Primer.NONE, room=Room(12, 60))):
        plan = plan_of(order)
        (sample,), (check,) = of_kind(plan, StepKind.SAMPLE), of_kind(plan, StepKind.CHECK)
        assert gap(sample, check) >= timedelta(hours=4 * plan.wait_factor)
        assert kinds(plan).index(StepKind.MIX) == kinds(plan).index(StepKind.CHECK) + 1
        assert kinds(plan).index(StepKind.COAT) == kinds(plan).index(StepKind.CHECK) + 2


RECIPE = Laid((("Cream", 1.0), ("Soft black", 1.0)), 4.0)


def test_a_wash_is_stirred_by_its_recipe() -> None:
    """The step that mixes a wash names its paints, their parts and its water; a glaze likewise."""
    glaze = Laid((("Cream", 2.0),), 3.0, glaze=True, wiped=False)
    plan = plan_of(work(washes=2, laid=(RECIPE, glaze)))
    washed, glazed = of_kind(plan, StepKind.MIX_WASH)
    assert "1 of “Cream” and 1 of “Soft black”" in washed.how
    assert "4 parts of water" in washed.how
    assert "3 parts of glaze medium" in glazed.how
    assert [step.title for step in of_kind(plan, StepKind.WASH)] == ["Wash 1", "Glaze 2"]
    assert not of_kind(plan_of(work()), StepKind.MIX_WASH)


def test_a_wash_that_is_wiped_waits_overnight() -> None:
    """Before it is wiped over with a wet rag a coat has a night; its tin may say less.

    Common practice, no source: told by a painter of furniture.
    """
    for laid in ((), (RECIPE,)):
        coat = of_kind(plan_of(work(washes=1, laid=laid)), StepKind.COAT)[-1]
        assert coat.wait == 12 * 60
    left = replace(RECIPE, wiped=False)
    assert of_kind(plan_of(work(washes=1, laid=(left,))), StepKind.COAT)[-1].wait == 4 * 60
    quick = work(washes=1, laid=(RECIPE,), paint_times=PaintTimes(30, 60, 300))
    coat = of_kind(plan_of(quick), StepKind.COAT)[-1]
    assert (coat.wait, coat.wait_from) == (300, Source.TIN)


@pytest.mark.parametrize(
    ("loose", "there", "not_there"),
    [
        ((Loose.LID,), "lid", "drawers"),
        ((Loose.DRAWERS,), "drawers", "lid"),
        ((Loose.DRAWERS, Loose.DOORS), "doors", "lid"),
        ((), "screwed on", "drawers"),
        (None, "drawers", "lid"),
    ],
)
def test_what_comes_off_is_what_is_there(
    loose: tuple[Loose, ...] | None, there: str, not_there: str
) -> None:
    """A box has a lid taken off and no drawers taken out, and no runner is waxed at the end."""
    plan = plan_of(work(loose=loose))
    (off,), (on,) = of_kind(plan, StepKind.REMOVE), of_kind(plan, StepKind.REFIT)
    assert there in off.how
    assert not_there not in off.how
    assert ("runners" in on.how) == (loose is None or Loose.DRAWERS in loose)


@pytest.mark.parametrize("finish", list(FinishKind))
def test_wax_and_oil_on_a_seat_are_said_to_be_weak(finish: FinishKind) -> None:
    """Only of wax and oil, and only where it is sat on, played with or eaten from."""
    slick = finish in {FinishKind.WAX, FinishKind.OIL}
    assert not plan_of(work(finish=finish)).weak
    for order in (work(finish=finish, seat=True), work(finish=finish, uses=(Use.FOOD,))):
        assert bool(plan_of(order).weak) == slick


def test_it_is_used_gently_for_four_weeks() -> None:
    """Four weeks after it is ready, by the calendar."""
    plan = plan_of(work())
    ready, gently = (datetime.fromisoformat(t) for t in (plan.ready, plan.gently))
    assert gently - ready == timedelta(weeks=4)


def test_wax_comes_off_first() -> None:
    """A waxed piece has its wax taken off before it is washed."""
    found = kinds(plan_of(work(surface=Surface.WAXED, age=Age.RECENT)))
    assert found.index(StepKind.UNWAX) < found.index(StepKind.DEGREASE)


def test_everything_at_once() -> None:
    """Stain block, primer, paint, wash, wax and buffing follow each other in this order."""
    found = kinds(plan_of(full_work()))
    upright = found[len(found) - found[::-1].index(StepKind.TURN) :]
    wanted = [
        StepKind.STAIN_BLOCK,
        StepKind.PRIME,
        StepKind.COAT,
        StepKind.WASH,
        StepKind.CLEAR,
        StepKind.BUFF,
        StepKind.CURE,
        StepKind.REFIT,
    ]
    assert [kind for kind in upright if kind in wanted and kind is not StepKind.COAT] == [
        kind for kind in wanted if kind is not StepKind.COAT
    ]


def test_trade_waits() -> None:
    """Adhesion primer: two hours, then a day before paint; wax a day after it; buffed in 30 min.

    Common practice, no source: told by a painter of furniture.
    """
    plan = plan_of(
        work(surface=Surface.LAMINATE, finish=FinishKind.WAX, coats=1, faces=(Which.FRONT,))
    )
    first, second = of_kind(plan, StepKind.PRIME)
    (coat,), (wax,), (buff,) = (
        of_kind(plan, kind) for kind in (StepKind.COAT, StepKind.CLEAR, StepKind.BUFF)
    )
    assert gap(first, second) >= timedelta(hours=2)
    assert gap(second, coat) >= timedelta(hours=24)
    assert gap(coat, wax) >= timedelta(hours=24)
    assert gap(wax, buff) == timedelta(minutes=30)
    assert {s.wait_from for s in (first, second, coat, wax)} == {Source.PRACTICE}


def test_the_tin_comes_first() -> None:
    """Times entered from the tin are kept to the minute, and marked so."""
    plan = plan_of(work(coats=3, paint_times=PaintTimes(30, 90, 2880)))
    for coat in of_kind(plan, StepKind.COAT)[:2]:
        assert (coat.wait, coat.wait_from) == (90, Source.TIN)
    (cure,) = of_kind(plan, StepKind.CURE)
    assert (cure.wait, cure.wait_from) == (2880, Source.TIN)


@pytest.mark.parametrize(
    ("surface", "primer", "coats"),
    [
        (Surface.RAW, "Primer", 1),
        (Surface.LAMINATE, "Adhesion primer", 2),
        (Surface.PAINTED, "", 0),
    ],
)
def test_usual_primers(surface: Surface, primer: str, coats: int) -> None:
    """What is usual on a surface is primed with, unless something else is asked for."""
    found = of_kind(plan_of(work(surface=surface)), StepKind.PRIME)
    assert [step.title for step in found] == [f"{primer}, coat {n + 1}" for n in range(coats)]


def test_a_primer_is_chosen() -> None:
    """The painter's own choice of primer and coats is kept."""
    found = of_kind(plan_of(work(primer=Primer.ADHESION, primer_coats=3)), StepKind.PRIME)
    assert len(found) == 3
    assert not of_kind(plan_of(work(primer=Primer.NONE)), StepKind.PRIME)


def test_the_underside_is_painted_first() -> None:
    """The underside has all its coats, dries overnight, and only then is the piece turned."""
    plan = plan_of(work(faces=ALL_ROUND))
    down, up = of_kind(plan, StepKind.TURN)
    assert (down.rests_on, up.rests_on) == (Which.TOP, Which.UNDERSIDE)
    under = [s for s in plan.steps if Which.UNDERSIDE in s.faces]
    top = [s for s in plan.steps if Which.TOP in s.faces]
    assert max(s.end for s in under) < up.start < min(s.start for s in top)
    assert gap(under[-1], up) >= timedelta(hours=12)


def test_a_frame_is_painted_from_its_back() -> None:
    """What lies flat is painted on its back first, lying on its front."""
    plan = plan_of(work(flat=True, faces=(Which.FRONT, Which.BACK)))
    painted = [step for step in plan.steps if step.faces]
    assert painted[0].faces == (Which.BACK,)
    assert painted[0].rests_on is Which.FRONT
    assert painted[-1].rests_on is Which.BACK


def test_only_the_underside() -> None:
    """A piece of which only the underside is painted is turned once, and left so to cure."""
    plan = plan_of(work(faces=(Which.UNDERSIDE,)))
    assert len(of_kind(plan, StepKind.TURN)) == 1
    assert plan.steps[-1].rests_on is Which.TOP


def test_no_wax_before_all_is_painted() -> None:
    """The underside is left without wax, which would keep paint from holding, and that is said."""
    plan = plan_of(work(faces=ALL_ROUND, finish=FinishKind.WAX))
    waxed = of_kind(plan, StepKind.CLEAR)
    assert all(Which.UNDERSIDE not in step.faces for step in waxed)
    assert any("Its underside is left without wax" in note for note in plan.notes)
    varnished = of_kind(plan_of(work(faces=ALL_ROUND, finish=FinishKind.VARNISH)), StepKind.CLEAR)
    assert any(Which.UNDERSIDE in step.faces for step in varnished)


def bound(order: PlanOrder, kind: StepKind) -> set[Danger]:
    """Give the cautions of the steps of a kind."""
    return {d for step in of_kind(plan_of(order), kind) for d in step.cautions}


def test_cautions_are_bound_to_their_steps() -> None:
    """Each danger stands at the steps that it comes from, and once in the plan."""
    old = work(surface=Surface.PAINTED, age=Age.OLD, lead=Lead.TESTED_NEGATIVE)
    assert Danger.DUST in bound(old, StepKind.SAND)
    assert Danger.LEAD in bound(old, StepKind.DEGREASE)
    assert Danger.SILICA in bound(work(repairs=True), StepKind.FILL)
    assert Danger.RAGS in bound(work(finish=FinishKind.OIL), StepKind.CLEAR)
    solvent = work(carrier=Carrier.SOLVENT)
    assert {Danger.SOLVENTS, Danger.RAGS, Danger.MIXING} <= bound(solvent, StepKind.COAT)
    assert Danger.SOLVENTS not in bound(work(), StepKind.COAT)
    used = work(uses=(Use.CHILDREN, Use.FOOD))
    assert {Danger.CHILDREN, Danger.FOOD} <= bound(used, StepKind.COAT)
    plan = plan_of(used)
    named = {danger for step in plan.steps for danger in step.cautions}
    assert {c.danger for c in plan.cautions} == named
    assert len(plan.cautions) == len(named)


def test_cautions_say_what_to_do() -> None:
    """Each danger has a caution; lead, rags and children say what their sources say.

    Lead: the UK government leaflets on old paint; rags: the NFPA tip sheet on oily rags.
    """
    assert set(CAUTIONS) == set(Danger)
    lead, rags = CAUTIONS[Danger.LEAD].do, CAUTIONS[Danger.RAGS].do
    for words in ("no dry sanding", "blowlamp", "pregnant", "licensed", "local rules"):
        assert words in lead
    for words in ("Never pile", "flat outdoors", "filled with water", "lid"):
        assert words in rags
    assert "label" in CAUTIONS[Danger.SOLVENTS].do
    assert "cannot say" in CAUTIONS[Danger.CHILDREN].do


def test_cold_is_said() -> None:
    """Waits drawn out by cold or damp are said to be, and damp air is warned of."""
    plan = plan_of(work(room=Room(12, 84)))
    assert plan.wait_factor > 2
    assert any("times as long" in note for note in plan.notes)
    assert any("sweat" in note for note in plan.notes)
    assert not any("sweat" in note for note in plan_of(work()).notes)


def test_without_fittings_nothing_is_refitted() -> None:
    """With nothing to take off there is nothing to put back, and it is ready when cured."""
    plan = plan_of(work(fittings=False))
    assert not {StepKind.REMOVE, StepKind.REFIT} & set(kinds(plan))
    assert datetime.fromisoformat(plan.ready) - datetime.fromisoformat(
        plan.steps[-1].end
    ) == timedelta(days=7)
