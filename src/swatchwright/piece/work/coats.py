"""The steps that put something on, in an order in which no wet face is ever set down.

What is seen from below is painted first, upside down, through to its last coat; when it may bear
the piece's weight, the piece is turned, and the rest is painted. So what is painted last, and seen
most, is never set down at all.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from swatchwright.language import mark, say, say_in
from swatchwright.piece.names import side_word
from swatchwright.piece.work.apart import until_turned, waiting_apart
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import (
    PlanOrder,
    Primer,
    Which,
)
from swatchwright.piece.work.over import apart, clear, stirred, washes
from swatchwright.piece.work.pace import Stance, minutes_for, wet
from swatchwright.piece.work.pots import coat_how, coat_title
from swatchwright.piece.work.prepare import put_back
from swatchwright.piece.work.stirring import mixing
from swatchwright.piece.work.task import Hold, StepKind, Task
from swatchwright.piece.work.times import Wait
from swatchwright.piece.work.waits import SLICK, last_wait, usual_primer, wait_after

__all__ = ["SLICK", "Stance", "coating", "finishing", "stances", "usual_primer"]

_TURNING = 10.0
_REFITTING = 30.0
_DAMP_DRIES = 30.0


def stances(order: PlanOrder) -> tuple[Stance, ...]:
    """Give how the piece is stood one after the other."""
    first, then = (Which.UNDERSIDE, Which.TOP) if not order.flat else (Which.BACK, Which.FRONT)
    rest = tuple(face for face in order.faces if face is not first)
    if first not in order.faces:
        return (Stance(first, rest, 1.0),)
    if not rest:
        return (Stance(then, (first,), 1.0),)
    share = 0.5 if order.flat else 0.25
    return (Stance(then, (first,), share), Stance(first, rest, 1.0 - share))


def coating(order: PlanOrder) -> Iterator[Task]:
    """Give all steps from the first coat to the last buffing, with their waits.

    It is turned only for what is laid on it then.
    """
    rests_on = Which.BACK if order.flat else Which.UNDERSIDE
    laid = _laid_standing(order)
    held: tuple[Hold, ...] = ()
    for i, (stance, tasks) in enumerate(laid):
        if stance.rests_on is not rests_on:
            rests_on = stance.rests_on
            yield replace(_turned(rests_on), holds=held)
        last = i + 1 < len(laid)
        if order.tops:
            held = tuple(until_turned(order, tasks))
            yield from waiting_apart(order, tasks, turned_next=last)
        else:
            yield from _waiting(order, tasks, turned_next=last)


def _waiting(order: PlanOrder, tasks: Sequence[Task], *, turned_next: bool) -> Iterator[Task]:
    """Give tasks with their waits, each before the next."""
    for task, following in pairwise([*tasks, None]):
        assert task is not None  # noqa: S101 - only the last is None
        last = following is None and turned_next
        yield replace(task, wait=wait_after(order, task, following, turned_next=last))


def _laid_standing(order: PlanOrder) -> list[tuple[Stance, list[Task]]]:
    """Give what is laid while the piece stands so, but for how nothing is laid."""
    stood = stances(order)
    found = [
        (stance, list(_layers(order, stance, stood[:i], to_be_turned=i + 1 < len(stood))))
        for i, stance in enumerate(stood)
    ]
    return [(stance, tasks) for stance, tasks in found if tasks]


def _turned(rests_on: Which) -> Task:
    side = side_word(rests_on.value)
    title = say("Turn onto its {side}", side=side)
    how = say(
        "Turn it, with help, to rest on its {side}, on clean battens or a soft cloth.", side=side
    )
    return Task(StepKind.TURN, title, how, _TURNING, Wait(0.0), rests_on)


def finishing(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    """Give what is left to do after the last coat."""
    last = last_wait(order)
    how = say("Let it harden before it is used: nothing set on it, no water, no cloth over it.")
    yield Task(StepKind.CURE, say_in("step", "Cure"), how, 0.0, last, rests_on)
    if order.fittings:
        title = say_in("step", "Refit")
        yield Task(StepKind.REFIT, title, put_back(order), _REFITTING, Wait(0.0), rests_on)


# --- layers --------------------------------------------------------------------------------------


_PRIMED = {
    Primer.ORDINARY: mark("Primer, coat {n}"),
    Primer.ADHESION: mark("Adhesion primer, coat {n}"),
}


def _layers(
    order: PlanOrder, stance: Stance, before: Sequence[Stance], *, to_be_turned: bool
) -> Iterator[Task]:
    if not order.painted:
        yield from _primed(order, stance)
        if not before:
            yield from mixing(order, stance.rests_on)
        yield from _paint(order, stance)
    yield from stirred(order, stance, before)
    # Paint does not hold on wax or oil, and hands carry them: none before all is painted.
    if order.tops:
        yield from apart(order, stance, slick=not to_be_turned)
        return
    yield from washes(order, stance)
    if not (to_be_turned and order.finish in SLICK):
        yield from clear(order, stance)


def _primed(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    if order.stain_block:
        title = say_in("step", "Stain block")
        how = say("Seal knots, stains and old ink with a stain block.")
        yield wet(StepKind.STAIN_BLOCK, title, how, order, stance, Danger.SOLVENTS)
    primer, primer_coats = usual_primer(order)
    for n in range(1, primer_coats + 1):
        yield wet(
            StepKind.PRIME,
            say(_PRIMED[primer], n=n),
            say("Brush it out thin and even."),
            order,
            stance,
            Danger.MIXING,
        )


def _paint(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    for n in range(1, order.coats + 1):
        if n > 1:
            yield _denib(order, stance)
        title = coat_title(order, n, stance.faces)
        how = say("Stir, strain, and lay off along the grain; stop at an edge, never in a face.")
        told = coat_how(order, how, stance.faces)
        yield wet(StepKind.COAT, title, told, order, stance, Danger.MIXING)


def _denib(order: PlanOrder, stance: Stance) -> Task:
    if order.without_dust:
        title = say_in("step", "Denib, wet")
        how = say(
            "Rub lightly with a wet, very fine pad, and wipe; do not go through to the old coat."
        )
        minutes = minutes_for(StepKind.DENIB_WET, order.area * stance.share)
        dries = Wait(_DAMP_DRIES)
        lead = (Danger.LEAD,)
        return Task(StepKind.DENIB_WET, title, how, minutes, dries, stance.rests_on, cautions=lead)
    how = say(
        "Rub lightly with very fine abrasive until it feels smooth, and wipe with a damp cloth."
    )
    minutes = minutes_for(StepKind.DENIB, order.area * stance.share)
    return Task(
        StepKind.DENIB,
        say_in("step", "Denib"),
        how,
        minutes,
        Wait(_DAMP_DRIES),
        stance.rests_on,
        cautions=(Danger.DUST,),
    )
