"""Washes of several parts: what lies on other parts is laid on one day, one over another waits."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.order import Age, FinishKind, Laid, Surface, Which
from swatchwright.piece.work.plan import Plan, Step, plan_of
from swatchwright.piece.work.rounds import rounds
from swatchwright.piece.work.seen import painted_sides, sides_of_zone
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import Until
from unit.piece.made import ALL_ROUND, work

BODY = Laid((("Cream", 1.0),), 3.0, zone="body", faces=(Which.FRONT, Which.SIDES))
TOP = Laid((("Soft black", 1.0),), 4.0, zone="top", faces=(Which.TOP,))
ALL = Laid((("Cream", 1.0),), 3.0)


def washes(plan: Plan) -> list[Step]:
    """Give the steps in which something is washed."""
    return [step for step in plan.steps if step.kind is StepKind.WASH]


def test_a_wash_on_one_part_names_it_and_wets_only_its_sides() -> None:
    """The step says which part, is wet there alone, and takes less time than the whole piece."""
    (step,) = washes(plan_of(work(washes=1, laid=(replace(BODY, area=0.6),))))
    (whole,) = washes(plan_of(work(washes=1, laid=(ALL,))))
    assert step.title == "Wash 1 on the body"
    assert step.parts == ("body",)
    assert step.faces == (Which.FRONT, Which.SIDES)
    assert step.hands_on < whole.hands_on
    assert (whole.title, whole.parts) == ("Wash 1", ())


def test_two_parts_are_washed_one_after_the_other_without_a_wait() -> None:
    """What goes on another part need not wait; what goes over either of them does."""
    plan = plan_of(work(washes=2, laid=(replace(BODY, passes=2), TOP)))
    one, other, second = washes(plan)
    assert [s.title for s in (one, other, second)] == [
        "Wash 1 on the body",
        "Wash 1 on the top",
        "Wash 2 on the body",
    ]
    assert one.wait == 0
    assert one.start[:10] == other.start[:10]
    assert other.wait >= 4 * 60


def test_one_wash_on_two_parts_is_one_step_and_stirred_once() -> None:
    """The same wash on two parts is laid in one step, and its paint is stirred once."""
    same = replace(BODY, zone="top", faces=(Which.TOP,))
    plan = plan_of(work(washes=1, laid=(BODY, same)))
    (step,) = washes(plan)
    assert step.title == "Wash 1 on the body and top"
    assert set(step.faces) == {Which.FRONT, Which.SIDES, Which.TOP}
    (mixed,) = [s for s in plan.steps if s.kind is StepKind.MIX_WASH]
    assert mixed.title == "Mix the wash for the body and top"


def test_a_wash_that_comes_later_elsewhere_is_stirred_but_once() -> None:
    """What is laid from below on one part, and later on another, is stirred once for both."""
    below = replace(BODY, faces=ALL_ROUND[:3])
    plan = plan_of(
        work(washes=1, laid=(below, replace(TOP, paints=BODY.paints, water=3.0)), faces=ALL_ROUND)
    )
    (mixed,) = [s for s in plan.steps if s.kind is StepKind.MIX_WASH]
    assert mixed.title == "Mix the wash for the body and top"


def test_how_much_is_said_by_part() -> None:
    """A step says how much goes on each part where that is known."""
    one, other = (replace(laid, ml=ml) for laid, ml in ((BODY, 151.0), (TOP, 52.0)))
    first, then = washes(plan_of(work(washes=1, laid=(one, other))))
    assert "about 150 ml" in first.how
    assert "about 50 ml" in then.how


def test_a_wash_on_all_is_over_each() -> None:
    """What goes on all of the piece waits for each part, and the clear finish for all washes."""
    plan = plan_of(work(washes=2, laid=(BODY, TOP, ALL), finish=FinishKind.VARNISH))
    titles = [s.title for s in plan.steps if s.faces]
    assert titles[-4:] == ["Wash 1 on the body", "Wash 1 on the top", "Wash 2", "Varnish, coat 1"]


def test_more_washes_than_are_known() -> None:
    """Where more are asked for the last one of the fullest part goes on, and fewer end sooner."""
    laid = (replace(BODY, passes=2), TOP)
    titles = [s.title for s in washes(plan_of(work(washes=3, laid=laid)))]
    assert titles == [
        "Wash 1 on the body",
        "Wash 1 on the top",
        "Wash 2 on the body",
        "Wash 3 on the body",
    ]
    fewer = [s.title for s in washes(plan_of(work(washes=1, laid=laid)))]
    assert fewer == ["Wash 1 on the body", "Wash 1 on the top"]


def test_a_part_that_is_not_on_the_piece_is_told() -> None:
    """A wash for a part that the piece does not have is left out, and the plan says so."""
    gone = replace(TOP, zone="doors", faces=())
    plan = plan_of(work(washes=1, laid=(BODY, gone)))
    assert [s.title for s in washes(plan)] == ["Wash 1 on the body"]
    assert len([s for s in plan.steps if s.kind is StepKind.MIX_WASH]) == 1
    assert any("doors" in note for note in plan.notes)


def test_a_clear_finish_on_one_part() -> None:
    """A wax for one part names it; each of two parts is buffed, and neither waits for the other."""
    body, top = Laid((), 0.0, zone="body", faces=BODY.faces), Laid((), 0.0, zone="top")
    plan = plan_of(work(finish=FinishKind.WAX, finish_coats=1, topped=(body, top)))
    (wax,) = [s for s in plan.steps if s.kind is StepKind.CLEAR]
    assert wax.title == "Wax, coat 1 on the body and top"
    (only,) = [
        s
        for s in plan_of(work(finish=FinishKind.VARNISH, topped=(body,))).steps
        if s.kind is StepKind.CLEAR
    ]
    assert (only.title, only.faces) == ("Varnish, coat 1 on the body", BODY.faces)


def test_from_below_only_what_is_seen_there() -> None:
    """Upside down only the part that is seen from below is named, and washed in its share."""
    body = replace(BODY, faces=ALL_ROUND[:3], ml=200.0)
    same = replace(body, zone="top", faces=(Which.TOP,), ml=60.0)
    under, rest = washes(plan_of(work(washes=1, laid=(body, same), faces=ALL_ROUND)))
    assert (under.title, under.faces) == ("Wash 1 on the body", (Which.UNDERSIDE,))
    assert "about 50 ml on the body." in under.how
    assert rest.title == "Wash 1 on the body and top"
    assert "150 ml on the body and 60 ml on the top" in rest.how


def painted(**changes: object) -> Plan:
    """Plan what goes over a piece that is painted already."""
    order = work(coats=0, surface=Surface.PAINTED, age=Age.OLD)
    return plan_of(replace(order, **changes))  # type: ignore[arg-type]


def test_painted_already_begins_with_a_look_at_the_paint() -> None:
    """Nothing is sanded, primed or painted; after a look at the paint come washes and wax."""
    plan = painted(washes=1, finish=FinishKind.WAX, stain_block=True, repairs=True)
    assert [step.kind for step in plan.steps] == [
        StepKind.CHECK_PAINT,
        StepKind.MIX_WASH,
        StepKind.WASH,
        StepKind.CLEAR,
        StepKind.BUFF,
        StepKind.CURE,
        StepKind.REFIT,
    ]
    assert plan.painted
    assert "12 hours" in plan.steps[0].how
    assert "cut through" in plan.steps[0].how


def test_painted_already_tells_of_lead_and_asks_for_no_test() -> None:
    """Old paint below is told of where nobody tested it; bare wood below has none to tell of."""
    old, raw = painted(washes=1), painted(washes=1, surface=Surface.RAW)
    assert {c.danger for c in old.cautions} - {c.danger for c in raw.cautions} == {"lead"}
    assert "may hold lead" in old.steps[0].how
    assert "lead" not in raw.steps[0].how


def test_painted_already_is_turned_only_for_what_is_laid_below() -> None:
    """A wash on the top alone turns nothing over; one on all of it is laid from below first."""
    top = painted(washes=1, laid=(TOP,), faces=ALL_ROUND)
    assert StepKind.TURN not in {step.kind for step in top.steps}
    every = painted(washes=1, laid=(ALL,), faces=ALL_ROUND)
    assert [s.kind for s in every.steps].count(StepKind.TURN) == 2


def test_why_one_waits_is_said() -> None:
    """A coat waits for a wet rag, a wash for wax, and each says so; the last until it is used."""
    plan = plan_of(work(washes=2, laid=(ALL, ALL), finish=FinishKind.WAX))
    coats = [step for step in plan.steps if step.kind is StepKind.COAT]
    first, second = washes(plan)
    assert (coats[0].wait_until, coats[-1].wait_until) == (Until.NEXT, Until.RAG)
    assert (first.wait_until, second.wait_until) == (Until.RAG, Until.WAX)
    (cure,) = [step for step in plan.steps if step.kind is StepKind.CURE]
    assert cure.wait_until is Until.USE


ZONES = ("", "body", "top", "drawers")
laids = st.lists(
    st.builds(
        Laid,
        st.sampled_from([(("Cream", 1.0),), (("Soft black", 1.0),)]),
        st.just(3.0),
        passes=st.integers(1, 3),
        zone=st.sampled_from(ZONES),
    ),
    max_size=5,
).map(tuple)


def most(laid: tuple[Laid, ...]) -> int:
    """Give how many layers the part gets that gets the most."""
    return max(sum(o.passes for o in laid if o.zone in {"", zone}) for zone in ZONES)


@given(laids)
def test_on_each_part_all_is_laid_in_its_turn(laid: tuple[Laid, ...]) -> None:
    """Each part gets just its own layers and those for all, in order, and never two in a round."""
    count = most(laid) if laid else 0
    found = rounds(laid, count)
    for zone in ZONES[1:]:
        wanted = [
            (one.paints, one.zone == "")
            for one in laid
            for _ in range(one.passes)
            if one.zone in {"", zone}
        ]
        got = []
        for level in found:
            here = [one for one in level if not one.zones or zone in one.zones]
            assert len(here) <= 1
            got += [(one.laid.paints, not one.zones) for one in here if one.laid is not None]
        assert got == wanted


@given(laids, st.sampled_from([ALL_ROUND, ALL_ROUND[1:]]))
def test_no_part_is_washed_wet(laid: tuple[Laid, ...], faces: tuple[Which, ...]) -> None:
    """Between two washes of one part lies the usual time of a water-borne coat at the least."""
    count = most(laid)
    if count > 10:
        return
    plan = plan_of(work(washes=count, laid=laid, faces=faces))
    last: dict[tuple[str, Which], datetime] = {}
    for step in washes(plan):
        for zone in step.parts or ZONES[1:]:
            for face in step.faces:
                begun = datetime.fromisoformat(step.start)
                if (zone, face) in last:
                    assert (begun - last[zone, face]).total_seconds() >= 4 * 3600
                last[zone, face] = datetime.fromisoformat(step.end)


@pytest.mark.parametrize("kind", list(Kind))
def test_the_sides_of_all_parts_are_those_of_the_piece(kind: Kind) -> None:
    """What is seen of all parts together is what is painted of the piece."""
    piece = common_piece(kind)
    zones = [zone.zone for zone in areas_of(piece).zones]
    sides = {side for zone in zones for side in sides_of_zone(piece, zone)}
    assert sides == set(painted_sides(piece))
    assert sides_of_zone(piece, "nowhere") == ()
