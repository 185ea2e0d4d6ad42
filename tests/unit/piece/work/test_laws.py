"""Laws that hold for every plan: no dry sanding of what may hold lead, no wet face set down."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.days import days_of
from swatchwright.piece.work.order import (
    Age,
    Carrier,
    FinishKind,
    Laid,
    Lead,
    PaintTimes,
    PlanOrder,
    Primer,
    Room,
    Surface,
    Use,
    Week,
    Which,
)
from swatchwright.piece.work.plan import Plan, Step, plan_of
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import paint_times, primer_times

DRY = {StepKind.SAND, StepKind.SMOOTH, StepKind.DENIB}
NO_COAT = {Surface.RAW, Surface.LAMINATE}

tin_times = st.none() | st.lists(st.integers(0, 4000), min_size=3, max_size=3).map(
    lambda v: PaintTimes(*sorted(map(float, v)))
)
weeks = st.builds(
    Week,
    st.sets(st.integers(0, 6), min_size=1).map(lambda days: tuple(sorted(days))),
    st.integers(0, 700),
    st.integers(1000, 1440),
)
laids = st.lists(
    st.builds(
        Laid,
        st.sampled_from([(("Cream", 1.0),), (("Soft black", 1.0),)]),
        st.just(3.0),
        passes=st.integers(0, 2),
        zone=st.sampled_from(("", "body", "top")),
        faces=st.none() | st.sets(st.sampled_from(Which)).map(lambda f: tuple(sorted(f))),
    ),
    max_size=3,
).map(tuple)
finishes = st.sampled_from([FinishKind.WAX, FinishKind.OIL, FinishKind.VARNISH])
topped_apart = st.builds(
    lambda laid, kinds: tuple(
        replace(one, finish=kind) for one, kind in zip(laid, kinds, strict=False)
    ),
    laids,
    st.lists(finishes, min_size=3, max_size=3),
)
orders = st.builds(
    PlanOrder,
    name=st.just("piece"),
    start=st.dates(datetime(1990, 1, 1).date(), datetime(2090, 1, 1).date()).map(str),  # noqa: DTZ001
    surface=st.sampled_from(Surface),
    age=st.sampled_from(Age),
    lead=st.sampled_from(Lead),
    area=st.floats(0.05, 6),
    carrier=st.sampled_from(Carrier),
    primer=st.none() | st.sampled_from(Primer),
    coats=st.integers(0, 4),
    washes=st.integers(0, 2),
    finish=st.sampled_from(FinishKind),
    finish_coats=st.integers(1, 3),
    stain_block=st.booleans(),
    repairs=st.booleans(),
    fittings=st.booleans(),
    faces=st.sets(st.sampled_from(Which), min_size=1).map(lambda f: tuple(sorted(f))),
    flat=st.booleans(),
    uses=st.sets(st.sampled_from(Use)).map(lambda u: tuple(sorted(u))),
    primer_times=tin_times,
    paint_times=tin_times,
    wash_times=tin_times,
    finish_times=tin_times,
    room=st.builds(Room, st.floats(10, 35), st.floats(20, 85)),
    week=weeks,
    laid=laids,
    topped=laids | topped_apart,
    wax_times=tin_times,
    varnish_times=tin_times,
).filter(lambda order: order.coats or order.washes or order.finish is not FinishKind.NONE)


def planned(order: PlanOrder) -> Plan | None:
    """Give the plan; None where it is refused, which may only be for lead that is not answered."""
    if lead_is_open(order):
        return None
    return plan_of(order)


def lead_is_open(order: PlanOrder) -> bool:
    """Tell from the words of the order alone whether lead is still to be answered."""
    coated = order.surface not in NO_COAT
    doubtful = order.surface is Surface.UNKNOWN or order.age in {Age.OLD, Age.UNKNOWN}
    return bool(order.coats) and coated and doubtful and order.lead is Lead.NOT_ANSWERED


def at(moment: str) -> datetime:
    """Read a moment."""
    return datetime.fromisoformat(moment)


def refused(order: PlanOrder) -> bool:
    """Tell whether the order is refused in words."""
    try:
        plan_of(order)
    except MendableError:
        return True
    return False


@settings(max_examples=3 * settings().max_examples)
@given(orders)
def test_no_dry_sanding_of_what_may_hold_lead(order: PlanOrder) -> None:
    """Of an old or unknown coat nothing is sanded dry unless it was tested negative."""
    doubtful = order.surface is Surface.UNKNOWN or order.age in {Age.OLD, Age.UNKNOWN}
    if order.surface in NO_COAT or not doubtful or order.lead is Lead.TESTED_NEGATIVE:
        return
    if order.lead is Lead.NOT_ANSWERED and order.coats:
        assert refused(order)
        return
    plan = plan_of(order)
    assert not DRY & {step.kind for step in plan.steps}
    if not order.coats:  # painted already: what lies below is told of, and not touched
        assert Danger.LEAD in plan.steps[0].cautions
        return
    assert plan.steps[0].kind is StepKind.LEAD_CARE
    assert "licensed contractor" in plan.steps[0].how


def drying(step: Step, order: PlanOrder) -> timedelta:
    """Give the least that a face needs to bear a touch: what its tin says, or common practice."""
    usual = {
        StepKind.PRIME: order.primer_times or primer_times(Primer.ADHESION, order.carrier),
        StepKind.COAT: order.paint_times or paint_times(order.carrier),
        StepKind.WASH: order.wash_times or paint_times(order.carrier),
        StepKind.CLEAR: tin_of_finish(step, order) if step.kind is StepKind.CLEAR else None,
    }.get(step.kind)
    return timedelta(minutes=usual.recoat if usual else 30)


def tin_of_finish(step: Step, order: PlanOrder) -> PaintTimes | None:
    """Give what the tin of a clear finish says: its own comes before that of the order's one."""
    word = step.title.split(",")[0].lower()
    own = {"wax": order.wax_times, "varnish": order.varnish_times}.get(word)
    return order.finish_times if own is None and word == order.finish else own


@settings(max_examples=3 * settings().max_examples)
@given(orders)
def test_no_wet_face_is_set_down(order: PlanOrder) -> None:
    """Whatever the piece rests on at a step is dry, and is not painted at that step."""
    plan = planned(order)
    wet_until: dict[Which, datetime] = {}
    turned_wet = 0
    for step in plan.steps if plan else ():
        assert step.rests_on not in step.faces
        ready = wet_until.get(step.rests_on)
        assert ready is None or ready <= at(step.start)
        turned_wet += ready is not None
        for face in step.faces:
            wet_until[face] = at(step.end) + drying(step, order)
    first = Which.BACK if order.flat else Which.UNDERSIDE
    if plan and order.coats and first in order.faces and len(order.faces) > 1:
        assert turned_wet  # the law is not empty: it does rest on what was painted


@settings(max_examples=3 * settings().max_examples)
@given(orders)
def test_every_wait_is_kept(order: PlanOrder) -> None:
    """No step begins before the one ahead of it is over and has waited, in working hours only."""
    plan = planned(order)
    if plan is None:
        return
    for step, then in pairwise(plan.steps):
        assert at(then.start) >= at(step.end) + timedelta(minutes=step.wait)
    for step in plan.steps:
        worked = timedelta()
        for session in step.sessions:
            begin, end = at(session.start), at(session.end)
            assert begin.weekday() in order.week.days
            assert begin.hour * 60 + begin.minute >= order.week.begin
            midnight = datetime.combine(begin.date(), datetime.min.time())
            assert end <= midnight + timedelta(minutes=order.week.end)
            worked += end - begin
        assert timedelta(minutes=step.hands_on) <= worked + timedelta(seconds=1)
        assert worked < timedelta(minutes=step.hands_on + 5)
        assert len(step.sessions) <= 1 or not step.faces


@given(orders)
def test_a_coat_waits_for_the_one_below(order: PlanOrder) -> None:
    """Between two coats on one face there is at least the tin's time to recoat."""
    plan = planned(order)
    last: dict[Which, Step] = {}
    for step in plan.steps if plan else ():
        for face in step.faces:
            if face in last and last[face].kind is StepKind.COAT:
                times = order.paint_times or paint_times(order.carrier)
                assert at(step.start) - at(last[face].end) >= timedelta(minutes=times.recoat)
            last[face] = step


@given(orders)
def test_wax_is_buffed_in_time(order: PlanOrder) -> None:
    """Every coat of wax is buffed on its day, half an hour later or as the cold draws out."""
    topped = tuple(replace(one, finish=None) for one in order.topped)
    plan = planned(replace(order, finish=FinishKind.WAX, topped=topped))
    for step, then in pairwise(plan.steps) if plan else ():
        if step.kind is StepKind.CLEAR:
            assert then.kind is StepKind.BUFF
            assert at(then.start) - at(step.end) == timedelta(minutes=step.wait)
            assert 30 <= step.wait <= 30 * 4 + 15


@given(orders, st.floats(0, 10), st.floats(0, 20))
def test_colder_is_never_sooner(order: PlanOrder, colder: float, damper: float) -> None:
    """In a colder or damper room the same piece is never ready sooner."""
    plan = planned(order)
    if plan is None:
        return
    room = Room(
        max(0, order.room.temperature - colder),
        min(100, order.room.humidity + damper),
        tin_allows=True,
    )
    assert plan_of(replace(order, room=room)).ready >= plan.ready


@given(orders)
def test_the_days_hold_the_whole_plan(order: PlanOrder) -> None:
    """The days follow each other without a gap, and their blocks are all the work and waiting."""
    plan = planned(order)
    if plan is None:
        return
    days = days_of(plan, order.week)
    for day, then in pairwise(days):
        assert at(then.day) - at(day.day) == timedelta(days=1)
    blocks = [block for day in days for block in day.blocks]
    assert all(0 <= b.begin < b.end <= 1440 for b in blocks)
    worked = sum(b.end - b.begin for b in blocks if not b.drying)
    sessions = [s for step in plan.steps for s in step.sessions]
    assert timedelta(minutes=worked) == sum(
        (at(s.end) - at(s.start) for s in sessions), timedelta()
    )
    waited = sum(b.end - b.begin for b in blocks if b.drying)
    assert waited == sum(step.wait for step in plan.steps)
