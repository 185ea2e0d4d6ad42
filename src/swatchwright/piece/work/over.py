"""The steps that put something over the paint: washes and glazes by part, then the finish."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from swatchwright.language import listed, mark, say, say_in
from swatchwright.paint.wiped import share_left
from swatchwright.piece.names import zone_word
from swatchwright.piece.work.apart import apart_rounds
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import FinishKind, Laid, PlanOrder
from swatchwright.piece.work.pace import PACE, Stance, minutes_for, wet
from swatchwright.piece.work.rounds import Pass, passes_in, rounds
from swatchwright.piece.work.stirring import stuff_of, wash_mixing
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Wait
from swatchwright.piece.work.waits import SLICK

__all__ = ["apart", "clear", "stirred", "washes"]


def stirred(order: PlanOrder, stance: Stance, before: Sequence[Stance]) -> Iterator[Task]:
    """Give the stirring of each wash of which something is laid now for the first time.

    It is stirred once, for all the parts that it goes on.
    """
    known = {stuff_of(laid) for earlier in before for laid in _laid_now(order, earlier)}
    fresh = {stuff_of(laid) for laid in _laid_now(order, stance)} - known
    laid = passes_in(order.laid, order.washes)
    yield from wash_mixing([one for one in laid if stuff_of(one) in fresh], stance.rests_on)


def _laid_now(order: PlanOrder, stance: Stance) -> list[Laid | None]:
    here = _rounds_seen(order.laid, order.washes, stance)
    return [laid for level in here for one in level for laid in one.on]


def washes(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    """Give the washes and glazes, round by round."""
    for here in _rounds_seen(order.laid, order.washes, stance):
        for one in here:
            yield replace(_washed(order, one, stance), beside=one is not here[-1])


def _washed(order: PlanOrder, one: Pass, stance: Stance) -> Task:
    how, ml = _wash_how(one.laid), _amounts(order, one, stance)
    told = f"{how} {ml}" if ml else how
    task = wet(StepKind.WASH, _wash_title(one), told, order, stance, Danger.MIXING)
    return _on_parts(order, task, one, stance)


def _rounds_seen(laid: Sequence[Laid], count: int, stance: Stance) -> Iterator[tuple[Pass, ...]]:
    """Give each round with what of it is laid while the piece stands so."""
    for level in rounds(laid, count):
        seen = (one.standing(stance.faces) for one in level)
        if here := tuple(one for one in seen if one is not None):
            yield here


def _wash_title(one: Pass) -> str:
    glaze = one.laid is not None and one.laid.glaze
    if not one.zones:
        return say("Glaze {n}", n=one.number) if glaze else say("Wash {n}", n=one.number)
    told = mark("Glaze {n} on the {parts}") if glaze else mark("Wash {n} on the {parts}")
    return say(told, n=one.number, parts=_parts_said(one.zones))


def _parts_said(zones: Sequence[str]) -> str:
    return listed(zone_word(zone) for zone in zones)


def _wash_how(laid: Laid | None) -> str:
    if laid is not None and laid.glaze:
        return say("Brush the glaze over a part at a time and lay it off along the grain.")
    if laid is not None and not laid.wiped:
        return say("Brush the wash over a part at a time, thin and even, and leave it.")
    return _wiped_back(laid)


_TAKES = {
    False: (mark("Thinned it takes about {ml:.0f} ml."), mark("Thinned it takes about {amounts}.")),
    True: (mark("It takes about {ml:.0f} ml."), mark("It takes about {amounts}.")),
}


def _amounts(order: PlanOrder, one: Pass, stance: Stance) -> str:
    """Say how much of it goes on, part by part; empty where that is not known."""
    told = []
    on_all, on_parts = _TAKES[one.finish is not None]
    for laid in one.on:
        if laid is None or laid.ml is None:
            return ""
        ml = 5 * max(1, round(laid.ml * _share(order, laid, stance) / 5))
        if not laid.zone:
            return say(on_all, ml=ml)
        told.append(say("{ml:.0f} ml on the {part}", ml=ml, part=zone_word(laid.zone)))
    return say(on_parts, amounts=listed(told))


def _share(order: PlanOrder, laid: Laid | None, stance: Stance) -> float:
    """Give which share of a part is laid while the piece stands so."""
    seen = order.faces if laid is None or laid.faces is None else laid.faces
    elsewhere = [face for face in seen if face in order.faces and face not in stance.faces]
    return stance.share if elsewhere else 1.0


def _on_parts(order: PlanOrder, task: Task, one: Pass, stance: Stance) -> Task:
    """Let a step be on the parts of a pass alone: what is wet then, and how long it takes."""
    areas = [
        (order.area if laid is None or laid.area is None else laid.area)
        * _share(order, laid, stance)
        for laid in one.on
    ]
    return replace(
        task,
        faces=one.seen_from(stance.faces),
        parts=one.zones,
        hands_on=minutes_for(task.kind, min(order.area, sum(areas))),
    )


def _wiped_back(laid: Laid | None) -> str:
    """Say how a wash is wiped back, and how far where that is known."""
    if laid is None or laid.left is None:
        return say("Brush the wash over a part at a time and wipe it back along the grain.")
    return say(
        "Brush the wash over a part at a time and wipe it back along the grain to {left} of it; "
        "how much is left decides the colour.",
        left=share_left(laid.left),
    )


_CLEAR_HOW = {
    FinishKind.WAX: mark("Work a thin film of wax in with a cloth or a brush, a part at a time."),
    FinishKind.VARNISH: mark("Brush on thin, along the grain, and leave it alone."),
    FinishKind.OIL: mark(
        "Wipe on a thin film, and wipe off all that has not gone in after 15 minutes."
    ),
}
_CLEAR_TITLES = {
    FinishKind.WAX: mark("Wax, coat {n}"),
    FinishKind.VARNISH: mark("Varnish, coat {n}"),
    FinishKind.OIL: mark("Oil, coat {n}"),
}
_CLEAR_DANGERS = {
    FinishKind.WAX: (Danger.SOLVENTS, Danger.RAGS),
    FinishKind.VARNISH: (Danger.MIXING,),
    FinishKind.OIL: (Danger.SOLVENTS, Danger.RAGS),
}


def clear(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    """Give the coats of the clear finish, each buffed where it is wax."""
    if order.finish is FinishKind.NONE:
        return
    for here in _rounds_seen(order.topped, order.finish_coats, stance):
        for one in here:
            *first, last = _cleared(order, order.finish, one, stance)
            yield from first
            yield replace(last, beside=one is not here[-1])


def apart(order: PlanOrder, stance: Stance, *, slick: bool) -> Iterator[Task]:
    """Give washes and coats of several clear finishes, round by round.

    Parameters
    ----------
    order
        What is planned.
    stance
        How the piece stands.
    slick
        Whether oil and wax may be laid now.
    """
    for level in apart_rounds(order):
        for one in level:
            here = one.standing(stance.faces)
            if here is None or (here.finish in SLICK and not slick):
                continue
            if here.finish is None:
                yield _washed(order, here, stance)
            else:
                yield from _cleared(order, here.finish, here, stance)


def _cleared(order: PlanOrder, finish: FinishKind, one: Pass, stance: Stance) -> Iterator[Task]:
    """Give a coat of a clear finish, and of wax the buffing."""
    how, ml = say(_CLEAR_HOW[finish]), _amounts(order, one, stance) if one.finish else ""
    told, dangers = f"{how} {ml}" if ml else how, _CLEAR_DANGERS[finish]
    task = wet(StepKind.CLEAR, _clear_title(finish, one), told, order, stance, *dangers)
    task = replace(_on_parts(order, task, one, stance), finish=finish)
    if finish is not FinishKind.WAX:
        yield task
        return
    yield replace(task, with_next=True)
    yield _buffed(order, task)


def _clear_title(finish: FinishKind, one: Pass) -> str:
    title = say(_CLEAR_TITLES[finish], n=one.number)
    if not one.zones:
        return title
    return say("{coat} on the {parts}", coat=title, parts=_parts_said(one.zones))


def _buffed(order: PlanOrder, waxed: Task) -> Task:
    pace, _ = PACE[StepKind.CLEAR]
    return Task(
        StepKind.BUFF,
        say_in("step", "Buff"),
        say("Buff with a clean soft cloth, turned often, until it no longer drags."),
        minutes_for(StepKind.BUFF, min(order.area, waxed.hands_on / pace)),
        Wait(0.0),
        waxed.rests_on,
        cautions=(Danger.RAGS,),
        parts=waxed.parts,
        finish=waxed.finish,
    )
