"""The steps before the first coat: take apart, clean, rub down, fill."""

from __future__ import annotations

from collections.abc import Iterator

from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import Loose, PlanOrder, Surface, Which
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Wait, drawn_out, wait_factor
from swatchwright.piece.work.waits import wait_of_coat

__all__ = ["preparation", "put_back"]

# Minutes for each m2, and minutes at the least: common practice, no source.
_PACE = {
    StepKind.UNWAX: (25.0, 20.0),
    StepKind.DEGREASE: (12.0, 10.0),
    StepKind.RINSE: (6.0, 5.0),
    StepKind.SAND: (30.0, 15.0),
    StepKind.KEY_WET: (35.0, 20.0),
    StepKind.DUST: (5.0, 5.0),
    StepKind.FILL: (5.0, 15.0),
    StepKind.SMOOTH: (4.0, 10.0),
    StepKind.SMOOTH_WET: (5.0, 15.0),
}

_WOOD_DRIES = Wait(120.0)
_FILLER_DRIES = Wait(240.0)
_NOW = Wait(0.0)

_TITLES = {
    StepKind.UNWAX: mark_in("step", "Take off wax"),
    StepKind.DEGREASE: mark_in("step", "Degrease"),
    StepKind.RINSE: mark_in("step", "Rinse"),
    StepKind.SAND: mark_in("step", "Sand"),
    StepKind.KEY_WET: mark_in("step", "Key, wet"),
    StepKind.DUST: mark_in("step", "Dust off"),
    StepKind.FILL: mark_in("step", "Fill"),
    StepKind.SMOOTH: mark_in("step", "Sand filler"),
    StepKind.SMOOTH_WET: mark_in("step", "Smooth filler, wet"),
}

_SANDED = {
    Surface.RAW: mark("Sand along the grain with 120 to 180 grit until it feels even."),
    Surface.PAINTED: mark(
        "Sand with 180 to 240 grit until the sheen is gone and loose edges are level."
    ),
    Surface.VARNISHED: mark(
        "Sand with 180 to 240 grit until the gloss is gone, not down to the wood."
    ),
    Surface.WAXED: mark("Sand lightly with 180 grit along the grain, once the wax is off."),
    Surface.VENEER: mark(
        "Sand lightly by hand with 240 grit, along the grain: veneer is soon through."
    ),
    Surface.METAL: mark("Sand with 240 grit until rust and gloss are gone."),
    Surface.UNKNOWN: mark("Sand lightly with 180 to 240 grit, and stop where another coat shows."),
}


def preparation(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    """Give the steps before the first coat, in their order.

    Where what is on the piece may hold lead, nothing is sanded dry: it is keyed wet, and filler
    is smoothed wet. What is painted already in this job is only looked at.
    """
    if order.painted:
        yield _paint_seen(order, rests_on)
        return
    if order.without_dust:
        yield _lead_care(rests_on)
    if order.fittings:
        yield _remove(order, rests_on)
    yield from _clean(order, rests_on)
    yield _rub_down(order, rests_on)
    yield _dust_off(order, rests_on)
    if order.repairs:
        yield from _fill(order, rests_on)


def _task(
    kind: StepKind,
    how: str,
    order: PlanOrder,
    rests_on: Which,
    *cautions: Danger,
    wait: Wait = _NOW,
) -> Task:
    pace, least = _PACE[kind]
    title = say_in("step", _TITLES[kind])
    minutes = max(least, pace * order.area)
    return Task(kind, title, how, minutes, wait, rests_on, cautions=cautions)


def _paint_seen(order: PlanOrder, rests_on: Which) -> Task:
    """Give the look at paint that is on already, before anything is laid over it."""
    following = [StepKind.WASH] if order.washes else [StepKind.CLEAR]
    # With several finishes some go on parts that get no wash.
    following += [StepKind.CLEAR] if order.tops else []
    waits = [wait_of_coat(order, kind) for kind in following]
    dry = drawn_out(max(waits, key=lambda wait: wait.minutes), wait_factor(order.room))
    told = [
        say(
            "The last coat has dried for {hours:g} hours at the least, and as long as its label "
            "says, and nothing is tacky. Wipe dust and fingermarks off with a soft cloth, barely "
            "damp, and let it dry. Do not sand, and do not cut through the paint.",
            hours=dry.minutes / 60,
        )
    ]
    if order.lead_below:
        told.append(
            say(
                "What lies below the paint may hold lead. Leave it covered; where it shows, leave "
                "it alone, have it tested first, and follow your local rules."
            )
        )
    if order.fittings:
        told.append(say("Take off what was put back already."))
    return Task(
        StepKind.CHECK_PAINT,
        say("See that the paint is dry and clean"),
        " ".join(told),
        max(10.0, 5.0 * order.area),
        Wait(30.0),
        rests_on,
        cautions=(Danger.LEAD,) if order.lead_below else (),
    )


def _lead_care(rests_on: Which) -> Task:
    return Task(
        StepKind.LEAD_CARE,
        say("Get ready for lead"),
        say(
            "Lay sheets that can be thrown away, have gloves, the mask your local rules name, wet "
            "abrasive and bags ready, and keep children and pregnant women out. Where the coat is "
            "loose or must come off, stop and call a licensed contractor."
        ),
        20.0,
        _NOW,
        rests_on,
        cautions=(Danger.LEAD,),
    )


_ANY = (
    mark(
        "Take off handles, hinges and locks, take out drawers and doors, and bag and label the "
        "screws."
    ),
    mark("Put drawers, doors, handles and locks back, with a drop of wax on the runners."),
)

# How fittings come off and go on again, by what of the piece is loose.
_LOOSE = {
    frozenset({Loose.LID}): (
        mark(
            "Take the lid off its hinges, then hinges, handles and locks off the rest, and bag and "
            "label the screws."
        ),
        mark(
            "Hang the lid on its hinges, and put handles and locks back; soft pads keep the lid "
            "from sticking to the rim."
        ),
    ),
    frozenset({Loose.DRAWERS}): (
        mark(
            "Take the drawers out and number them, take off handles and locks, and bag and label "
            "the screws."
        ),
        mark("Put handles, locks and drawers back, with a drop of wax on the runners."),
    ),
    frozenset({Loose.DOORS}): (
        mark(
            "Take the doors off their hinges, take off handles and locks, and bag and label the "
            "screws."
        ),
        mark("Put handles and locks back, and hang the doors."),
    ),
    frozenset({Loose.DRAWERS, Loose.DOORS}): _ANY,
    frozenset[Loose](): (
        mark("Take off what is screwed on or hooked in, and bag and label the screws."),
        mark("Put back what was taken off."),
    ),
}


def _fittings(order: PlanOrder) -> tuple[str, str]:
    """Give how fittings come off, and how they go on again."""
    return _ANY if order.loose is None else _LOOSE.get(frozenset(order.loose), _ANY)


def put_back(order: PlanOrder) -> str:
    """Say how the fittings go on again."""
    return say(_fittings(order)[1])


def _remove(order: PlanOrder, rests_on: Which) -> Task:
    return Task(
        StepKind.REMOVE,
        say_in("step", "Remove fittings"),
        say(_fittings(order)[0]),
        20.0,
        _NOW,
        rests_on,
    )


def _clean(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    lead = (Danger.LEAD,) if order.lead_matters else ()
    if order.surface is Surface.WAXED:
        yield _task(
            StepKind.UNWAX,
            say("Rub the wax off with white spirit or a wax remover, turning the cloth often."),
            order,
            rests_on,
            Danger.SOLVENTS,
            Danger.RAGS,
            *lead,
            wait=_WOOD_DRIES,
        )
    if order.surface is Surface.RAW:
        return
    yield _task(
        StepKind.DEGREASE,
        say("Wash with a degreaser that rinses off, from the foot up, most where hands have been."),
        order,
        rests_on,
        *lead,
    )
    yield _task(
        StepKind.RINSE,
        say(
            "Wipe twice with clean water and dry with a cloth: what stays of a cleaner stops paint "
            "from holding."
        ),
        order,
        rests_on,
        wait=_WOOD_DRIES,
    )


def _rub_down(order: PlanOrder, rests_on: Which) -> Task:
    if order.without_dust:
        how = say(
            "Key the surface with a wet abrasive pad, without dust; wipe as you go and bag pads "
            "and cloths. Do not go through the coat."
        )
        return _task(StepKind.KEY_WET, how, order, rests_on, Danger.LEAD, wait=_WOOD_DRIES)
    if order.surface is Surface.LAMINATE:
        how = say("Key the laminate with a wet, very fine abrasive pad until it is evenly dull.")
        return _task(StepKind.KEY_WET, how, order, rests_on, wait=_WOOD_DRIES)
    return _task(StepKind.SAND, say(_SANDED[order.surface]), order, rests_on, Danger.DUST)


def _dust_off(order: PlanOrder, rests_on: Which) -> Task:
    how = say("Wipe all dust off with a damp cloth, and let it dry.")
    return _task(StepKind.DUST, how, order, rests_on, wait=Wait(20.0))


def _fill(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    yield _task(
        StepKind.FILL,
        say("Fill dents and holes a little proud; fill what is deep in two goes."),
        order,
        rests_on,
        Danger.SILICA,
        wait=_FILLER_DRIES,
    )
    if order.without_dust:
        how = say("Rub the filler level with a wet sponge, without touching the old coat dry.")
        cautions = (Danger.LEAD, Danger.SILICA)
        yield _task(StepKind.SMOOTH_WET, how, order, rests_on, *cautions, wait=_WOOD_DRIES)
    else:
        how = say("Sand the filler level with 180 grit, with extraction.")
        yield _task(StepKind.SMOOTH, how, order, rests_on, Danger.DUST, Danger.SILICA)
    yield _dust_off(order, rests_on)
