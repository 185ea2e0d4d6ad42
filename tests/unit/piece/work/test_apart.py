"""Several clear finishes: each part gets its own in its turn, with its own waits and cautions.

The waits are common practice, no source: varnish (water-borne) 4 h, wax and oil 24 h, and 24 h from
any other coat to wax or oil.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.piece.work.apart import apart_rounds
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import FinishKind, Laid, PaintTimes, PlanOrder, Use, Week, Which
from swatchwright.piece.work.plan import Plan, Step, plan_of
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import Source, Until
from unit.piece.made import ALL_ROUND, work

WAX, OIL, VARNISH = FinishKind.WAX, FinishKind.OIL, FinishKind.VARNISH
SIDES, ABOVE = (Which.FRONT, Which.SIDES), (Which.TOP,)
DAY = 24 * 60


def top(finish: FinishKind, zone: str = "", passes: int = 1) -> Laid:
    """Give coats of a finish on a part: the body from its sides, the top from above."""
    faces = {"": None, "top": ABOVE}.get(zone, SIDES)
    return Laid((), 0.0, passes=passes, zone=zone, faces=faces, finish=finish)


def apart(*tops: Laid, **changes: object) -> PlanOrder:
    """Give an order with several finishes; the one told last is that of the order."""
    last = tops[-1].finish
    assert last is not None
    return replace(work(finish=last, topped=tops), **changes)  # type: ignore[arg-type]


WAXED_BODY = apart(top(WAX, "body", 2), top(VARNISH, "top", 3))
WASH = Laid((("Cream", 1.0),), 3.0, zone="top", faces=ABOVE)


def titles(plan: Plan) -> list[str]:
    """Name the steps that put something over the paint."""
    return [s.title for s in plan.steps if s.kind in {StepKind.WASH, StepKind.CLEAR}]


def named(plan: Plan, title: str) -> Step:
    """Give a step by its title."""
    return next(step for step in plan.steps if step.title == title)


def begun(plan: Plan, title: str) -> datetime:
    """Say when a step begins."""
    return datetime.fromisoformat(named(plan, title).start)


def over(step: Step) -> datetime:
    """Say when a step is over."""
    return datetime.fromisoformat(step.end)


def test_wax_on_the_body_and_varnish_on_the_lid() -> None:
    """Each part gets its own finish with its own coats, the varnish before the wax."""
    plan = plan_of(WAXED_BODY)
    assert titles(plan) == [
        "Varnish, coat 1 on the top",
        "Varnish, coat 2 on the top",
        "Varnish, coat 3 on the top",
        "Wax, coat 1 on the body",
        "Wax, coat 2 on the body",
    ]
    waxed = named(plan, "Wax, coat 1 on the body")
    assert (waxed.parts, waxed.faces) == (("body",), SIDES)
    assert sum(step.kind is StepKind.BUFF for step in plan.steps) == 2


def test_each_waits_as_its_own_finish_asks() -> None:
    """Varnish waits 4 h, wax a day; wax comes a day after the paint below it and no sooner."""
    plan = plan_of(WAXED_BODY)
    first, second = (named(plan, f"Varnish, coat {n} on the top") for n in (1, 2))
    assert (first.wait, second.wait) == (4 * 60, 4 * 60)
    paint = [step for step in plan.steps if step.kind is StepKind.COAT][-1]
    waxed = begun(plan, "Wax, coat 1 on the body")
    assert waxed - over(paint) >= timedelta(days=1)
    buffed = next(step for step in plan.steps if step.kind is StepKind.BUFF)
    assert begun(plan, "Wax, coat 2 on the body") - over(buffed) >= timedelta(days=1)


def test_what_can_be_done_on_one_day_is() -> None:
    """The wax goes on the day of the last varnish, once no lint sticks to that."""
    plan = plan_of(WAXED_BODY)
    last = named(plan, "Varnish, coat 3 on the top")
    assert last.start[:10] == named(plan, "Wax, coat 1 on the body").start[:10]
    assert (last.wait, last.wait_until) == (60, Until.DUST)
    assert "leave this alone: other parts come next (body)" in last.how


def test_washing_one_part_and_varnishing_another_share_their_days() -> None:
    """The lid is varnished while the body's washes dry, and nothing waits for another part."""
    body = replace(WASH, zone="body", faces=SIDES, passes=2)
    order = apart(top(VARNISH, "top", 2), top(WAX, "body"), washes=2, laid=(body,))
    plan = plan_of(order)
    assert titles(plan) == [
        "Wash 1 on the body",
        "Varnish, coat 1 on the top",
        "Wash 2 on the body",
        "Varnish, coat 2 on the top",
        "Wax, coat 1 on the body",
    ]
    washed = named(plan, "Wash 1 on the body")
    varnished = named(plan, "Varnish, coat 1 on the top")
    assert washed.wait == 0
    assert varnished.start == washed.end
    # A wash that is wiped over another waits 12 h for it, and that is told where it is waited.
    assert begun(plan, "Wash 2 on the body") - over(washed) >= timedelta(hours=12)
    assert varnished.wait_until is Until.RAG
    assert "lies there already" in varnished.how


def test_a_wash_and_varnish_on_the_lid_and_wax_on_the_body() -> None:
    """On the lid the wash comes first, then its varnish; the body gets no wash, and its wax."""
    order = apart(top(WAX, "body"), top(VARNISH, "top", 2), washes=1, laid=(WASH,))
    assert titles(plan_of(order)) == [
        "Wash 1 on the top",
        "Varnish, coat 1 on the top",
        "Varnish, coat 2 on the top",
        "Wax, coat 1 on the body",
    ]


def test_oil_and_wax_share_their_days() -> None:
    """What is rubbed in on two parts is done on one day; its rags are told of with both."""
    long = Week(tuple(range(7)), 8 * 60, 22 * 60)
    plan = plan_of(apart(top(OIL, "body", 2), top(WAX, "top", 2), week=long))
    oiled, waxed = named(plan, "Oil, coat 1 on the body"), named(plan, "Wax, coat 1 on the top")
    assert oiled.start[:10] == waxed.start[:10]
    assert Danger.RAGS in oiled.cautions
    assert Danger.RAGS in waxed.cautions
    assert begun(plan, "Oil, coat 2 on the body") - over(oiled) >= timedelta(days=1)


def test_cautions_are_those_of_each_finish() -> None:
    """Rags and vapours are told of with the wax, and not with a water-borne varnish."""
    plan = plan_of(WAXED_BODY)
    assert Danger.RAGS not in named(plan, "Varnish, coat 1 on the top").cautions
    assert {Danger.RAGS, Danger.SOLVENTS} <= {*named(plan, "Wax, coat 1 on the body").cautions}
    assert {c.danger for c in plan.cautions} >= {Danger.RAGS, Danger.SOLVENTS}


def test_each_tin_says_its_own() -> None:
    """The times of the varnish's tin hold for varnish alone; the slowest of all is waited for."""
    order = replace(WAXED_BODY, varnish_times=PaintTimes(120, 360, 20 * DAY))
    plan = plan_of(order)
    varnished = named(plan, "Varnish, coat 1 on the top")
    assert (varnished.wait, varnished.wait_from) == (360, Source.TIN)
    assert named(plan, "Varnish, coat 3 on the top").wait == 120
    (cure,) = [step for step in plan.steps if step.kind is StepKind.CURE]
    assert (cure.wait, cure.wait_from) == (20 * DAY, Source.TIN)
    buffed = next(step for step in plan.steps if step.kind is StepKind.BUFF)
    assert (buffed.wait, buffed.wait_from) == (DAY, Source.PRACTICE)


def test_how_much_is_told_with_each() -> None:
    """A step says how much goes on, where that is known."""
    order = apart(replace(top(WAX, "body"), ml=22.0), replace(top(VARNISH, "top"), ml=41.0))
    plan = plan_of(order)
    assert "It takes about 20 ml on the body." in named(plan, "Wax, coat 1 on the body").how
    assert "It takes about 40 ml on the top." in named(plan, "Varnish, coat 1 on the top").how


def test_varnish_then_wax_on_all() -> None:
    """Two finishes one over the other are both planned, the wax a day after the varnish."""
    plan = plan_of(apart(top(VARNISH), top(WAX)))
    assert titles(plan) == ["Varnish, coat 1", "Wax, coat 1"]
    varnished = named(plan, "Varnish, coat 1")
    assert (varnished.wait, varnished.wait_until) == (DAY, Until.WAX)
    assert plan.weak == ""


@pytest.mark.parametrize(
    ("tops", "told"),
    [
        ((top(WAX, "top"), top(VARNISH, "top")), "Varnish does not hold on wax"),
        ((top(WAX), top(VARNISH, "top")), "Varnish does not hold on wax"),
        ((top(WAX, "top"), top(OIL, "top")), "Oil cannot get through wax"),
        ((top(OIL, "top"), top(VARNISH, "top")), "hardened all through"),
        ((top(VARNISH, "top"), top(OIL, "top")), "stays sticky"),
    ],
)
def test_what_does_not_hold_is_told(tops: tuple[Laid, ...], told: str) -> None:
    """A finish over what it does not hold on is told with its part, in the order it was set."""
    plan = plan_of(apart(*tops))
    assert told in plan.weak
    assert "(top)" in plan.weak
    assert [t.split(",")[0].lower() for t in titles(plan)] == [one.finish for one in tops]


def test_on_all_of_it_is_told_so() -> None:
    """A bad pair on all of the piece names no part."""
    assert "(all of it)" in plan_of(apart(top(WAX), top(VARNISH))).weak


def test_the_edge_is_told_where_parts_meet() -> None:
    """Where varnish and wax meet, the edge is to be kept free of wax; with one finish it is not."""
    assert any("edge with wax" in note for note in plan_of(WAXED_BODY).notes)
    assert not any(
        "edge with" in n for n in plan_of(apart(top(OIL, "body"), top(WAX, "top"))).notes
    )
    assert not any("edge with" in n for n in plan_of(work(finish=WAX)).notes)


def test_weak_for_use_is_what_lies_where_it_is_used() -> None:
    """Wax is weak for children anywhere, and for sitting only where the seat gets it."""
    body, seat = top(WAX, "body"), top(VARNISH, "seat")
    assert plan_of(apart(body, seat, seat=True)).weak == ""
    assert "Wax is weak" in plan_of(apart(top(WAX, "seat"), top(VARNISH, "body"), seat=True)).weak
    assert "Wax is weak" in plan_of(apart(body, seat, uses=(Use.CHILDREN,))).weak


def test_upside_down_nothing_is_waxed() -> None:
    """From below a varnished body is varnished, a waxed one left bare and told so."""
    below = (Which.UNDERSIDE, *SIDES)
    waxed = plan_of(
        apart(replace(top(WAX, "body"), faces=below), top(VARNISH, "top"), faces=ALL_ROUND)
    )
    assert all(Which.UNDERSIDE not in s.faces for s in waxed.steps if s.kind is StepKind.CLEAR)
    assert any("underside is left without wax" in note for note in waxed.notes)
    varnished = plan_of(
        apart(replace(top(VARNISH, "body"), faces=below), top(WAX, "top"), faces=ALL_ROUND)
    )
    assert titles(varnished)[0] == "Varnish, coat 1 on the body"
    assert not any("left without" in note for note in varnished.notes)


def test_painted_already_waits_for_the_slowest() -> None:
    """Before wax goes on any part the paint has dried for a day, even where washes come first."""
    order = apart(top(WAX, "body"), top(VARNISH, "top"), washes=1, laid=(WASH,), coats=0)
    assert "dried for 24 hours" in plan_of(order).steps[0].how


def test_a_part_that_is_not_there() -> None:
    """A finish for a part that the piece does not have is left out, and told."""
    gone = replace(top(VARNISH, "doors", 2), faces=())
    plan = plan_of(apart(gone, top(OIL, "top"), top(WAX, "body")))
    assert titles(plan) == ["Oil, coat 1 on the top", "Wax, coat 1 on the body"]
    assert any("doors" in note for note in plan.notes)


def test_too_many_coats() -> None:
    """More coats than can be on one part are refused, with how many may be."""
    with pytest.raises(MendableError, match="11 coats of finish") as refused:
        plan_of(apart(top(VARNISH, "top", 6), top(WAX, "top", 5)))
    assert "10" in refused.value.mend


def test_times_that_cannot_be() -> None:
    """Times of the wax that go backwards are refused by its name."""
    with pytest.raises(MendableError, match="times of the wax"):
        plan_of(replace(WAXED_BODY, wax_times=PaintTimes(10, 5, 3)))


# --- laws ----------------------------------------------------------------------------------------

ZONES = ("body", "top", "drawers")
USUAL = {VARNISH: 4 * 60, WAX: DAY, OIL: DAY}
tops = st.lists(
    st.builds(
        top, st.sampled_from([WAX, OIL, VARNISH]), st.sampled_from(["", *ZONES]), st.integers(1, 3)
    ),
    min_size=1,
    max_size=5,
).filter(lambda found: all(sum(o.passes for o in found if o.zone in {"", z}) <= 10 for z in ZONES))
washed = st.lists(
    st.builds(
        Laid,
        st.sampled_from([(("Cream", 1.0),), (("Soft black", 1.0),)]),
        st.just(3.0),
        passes=st.integers(1, 2),
        zone=st.sampled_from(["", *ZONES]),
    ),
    max_size=3,
)
orders = st.builds(
    lambda laid, tops, faces: apart(*tops, laid=tuple(laid), washes=6 if laid else 0, faces=faces),
    washed,
    tops,
    st.sampled_from([ALL_ROUND, ALL_ROUND[1:]]),
)


def on(zone: str, laid: tuple[Laid, ...]) -> list[FinishKind | None]:
    """Give what goes on a part, each coat in its turn."""
    return [one.finish for one in laid for _ in range(one.passes) if one.zone in {"", zone}]


@given(orders)
def test_on_each_part_all_is_laid_in_its_turn(order: PlanOrder) -> None:
    """Each part gets all its coats, in order, after its washes, and never two in a round."""
    rounds = apart_rounds(order)
    for zone in ZONES:
        got: list[FinishKind | None] = []
        for level in rounds:
            here = [one for one in level if not one.zones or zone in one.zones]
            assert len(here) <= 1
            got += [one.finish for one in here]
        assert [kind for kind in got if kind] == on(zone, order.topped)
        assert got == sorted(got, key=lambda kind: kind is not None)


@given(orders)
def test_rubbed_in_after_brushed(order: PlanOrder) -> None:
    """Where no part has wax or oil below varnish, none is laid before all is varnished."""
    slick = {WAX, OIL}
    chains = [on(zone, order.topped) for zone in ("", *ZONES)]
    if any(a in slick and b is VARNISH for chain in chains for a, b in pairwise(chain)):
        return
    kinds = [one.finish for level in apart_rounds(order) for one in level]
    first = next((n for n, kind in enumerate(kinds) if kind in slick), len(kinds))
    assert all(kind in slick for kind in kinds[first:])


@given(orders)
def test_no_part_is_coated_wet(order: PlanOrder) -> None:
    """Between two coats on a face of a part lies what the lower one needs, a day before wax."""
    plan = plan_of(order)
    last: dict[tuple[str, Which], tuple[Step, FinishKind | None]] = {}
    for step in plan.steps:
        if step.kind not in {StepKind.COAT, StepKind.WASH, StepKind.CLEAR}:
            continue
        word = step.title.split(",")[0].lower()
        kind = FinishKind(word) if step.kind is StepKind.CLEAR else None
        for key in [(z, face) for z in (step.parts or ZONES) for face in step.faces]:
            if key in last:
                below, was = last[key]
                least = 4 * 60 if was is None else USUAL[was]
                if kind in {WAX, OIL} and kind is not was:
                    least = max(least, DAY)
                gap = datetime.fromisoformat(step.start) - over(below)
                assert gap >= timedelta(minutes=least)
            last[key] = (step, kind)
    for step, then in pairwise(plan.steps):
        assert datetime.fromisoformat(then.start) >= over(step) + timedelta(minutes=step.wait)
