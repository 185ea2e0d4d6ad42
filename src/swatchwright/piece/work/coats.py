"""The steps that put something on, in an order in which no wet face is ever set down.

What is seen from below is painted first, upside down, through to its last coat; when it may bear
the piece's weight, the piece is turned, and the rest is painted. So what is painted last, and seen
most, is never set down at all.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from swatchwright.piece.work import times
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import (
    Carrier,
    FinishKind,
    PaintTimes,
    PlanOrder,
    Primer,
    Surface,
    Use,
    Which,
)
from swatchwright.piece.work.task import WET, StepKind, Task
from swatchwright.piece.work.times import Source, Wait

__all__ = ["SLICK", "Stance", "coating", "finishing", "stances", "usual_primer"]

# Minutes for each m2 and coat, and minutes at the least: common practice, no source.
_PACE = {
    StepKind.STAIN_BLOCK: (12.0, 10.0),
    StepKind.PRIME: (18.0, 15.0),
    StepKind.COAT: (20.0, 15.0),
    StepKind.WASH: (15.0, 15.0),
    StepKind.CLEAR: (18.0, 15.0),
    StepKind.DENIB: (8.0, 5.0),
    StepKind.DENIB_WET: (10.0, 10.0),
    StepKind.BUFF: (12.0, 10.0),
}
_TURNING = 10.0
_REFITTING = 30.0
_DAMP_DRIES = 30.0

_HOLDS = {
    Surface.RAW: Primer.ORDINARY,
    Surface.PAINTED: Primer.NONE,
}


@dataclass(frozen=True, slots=True)
class Stance:
    """How the piece stands or lies, what is painted meanwhile, and which share of it all."""

    rests_on: Which
    faces: tuple[Which, ...]
    share: float


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


def usual_primer(order: PlanOrder) -> tuple[Primer, int]:
    """Give the primer and its coats: what was asked for, or what is usual on the surface.

    Bare wood takes one coat of primer and sound paint none; what is slick or unknown takes two
    coats of an adhesion primer. Common practice, no source.
    """
    primer = order.primer
    if primer is None:
        primer = _HOLDS.get(order.surface, Primer.ADHESION)
    if primer is Primer.NONE:
        return primer, 0
    return primer, order.primer_coats or (2 if primer is Primer.ADHESION else 1)


def coating(order: PlanOrder) -> Iterator[Task]:
    """Give all steps from the first coat to the last buffing, with their waits."""
    stood = stances(order)
    for i, stance in enumerate(stood):
        if i or stance.rests_on in {Which.TOP, Which.FRONT}:
            yield _turned(stance.rests_on)
        to_be_turned = i + 1 < len(stood)
        tasks = list(_layers(order, stance, to_be_turned=to_be_turned))
        for task, following in pairwise([*tasks, None]):
            assert task is not None  # noqa: S101 - only the last is None
            last = following is None and to_be_turned
            yield replace(task, wait=_wait_after(order, task, following, turned_next=last))


def _turned(rests_on: Which) -> Task:
    how = f"Turn it, with help, to rest on its {rests_on}, on clean battens or a soft cloth."
    return Task(StepKind.TURN, f"Turn onto its {rests_on}", how, _TURNING, Wait(0.0), rests_on)


def finishing(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    """Give what is left to do after the last coat."""
    last = _last_times(order)
    how = "Let it harden before it is used: nothing set on it, no water, no cloth over it."
    yield Task(StepKind.CURE, "Cure", how, 0.0, last, rests_on)
    if order.fittings:
        how = "Put drawers, doors, handles and locks back, with a drop of wax on the runners."
        yield Task(StepKind.REFIT, "Refit", how, _REFITTING, Wait(0.0), rests_on)


# --- layers --------------------------------------------------------------------------------------


def _layers(order: PlanOrder, stance: Stance, *, to_be_turned: bool) -> Iterator[Task]:
    if order.stain_block:
        how = "Seal knots, stains and old ink with a stain block."
        yield _wet(StepKind.STAIN_BLOCK, "Stain block", how, order, stance, Danger.SOLVENTS)
    primer, primer_coats = usual_primer(order)
    for n in range(1, primer_coats + 1):
        yield _wet(
            StepKind.PRIME,
            f"{primer.value.capitalize()}, coat {n}",
            "Brush it out thin and even.",
            order,
            stance,
            Danger.MIXING,
        )
    yield from _paint(order, stance)
    for n in range(1, order.washes + 1):
        how = "Brush the wash over a part at a time and wipe it back along the grain."
        yield _wet(StepKind.WASH, f"Wash {n}", how, order, stance, Danger.MIXING)
    # Paint does not hold on wax or oil, and hands carry them: none before all is painted.
    if not (to_be_turned and order.finish in SLICK):
        yield from _clear(order, stance)


def _paint(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    for n in range(1, order.coats + 1):
        if n > 1:
            yield _denib(order, stance)
        how = "Stir, strain, and lay off along the grain; stop at an edge, never in a face."
        yield _wet(StepKind.COAT, f"Paint, coat {n}", how, order, stance, Danger.MIXING)


def _denib(order: PlanOrder, stance: Stance) -> Task:
    if order.without_dust:
        how = "Rub lightly with a wet, very fine pad, and wipe; do not go through to the old coat."
        minutes = _minutes(StepKind.DENIB_WET, order, stance)
        dries = Wait(_DAMP_DRIES)
        lead = (Danger.LEAD,)
        return Task(
            StepKind.DENIB_WET, "Denib, wet", how, minutes, dries, stance.rests_on, cautions=lead
        )
    how = "Rub lightly with very fine abrasive until it feels smooth, and wipe with a damp cloth."
    minutes = _minutes(StepKind.DENIB, order, stance)
    return Task(
        StepKind.DENIB,
        "Denib",
        how,
        minutes,
        Wait(_DAMP_DRIES),
        stance.rests_on,
        cautions=(Danger.DUST,),
    )


SLICK = frozenset({FinishKind.WAX, FinishKind.OIL})
"""Finishes on which paint does not hold."""

_CLEAR_HOW = {
    FinishKind.WAX: "Work a thin film of wax in with a cloth or a brush, a part at a time.",
    FinishKind.VARNISH: "Brush on thin, along the grain, and leave it alone.",
    FinishKind.OIL: "Wipe on a thin film, and wipe off all that has not gone in after 15 minutes.",
}
_CLEAR_DANGERS = {
    FinishKind.WAX: (Danger.SOLVENTS, Danger.RAGS),
    FinishKind.VARNISH: (Danger.MIXING,),
    FinishKind.OIL: (Danger.SOLVENTS, Danger.RAGS),
}


def _clear(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    if order.finish is FinishKind.NONE:
        return
    name = order.finish.value.capitalize()
    for n in range(1, order.finish_coats + 1):
        dangers = _CLEAR_DANGERS[order.finish]
        title = f"{name}, coat {n}"
        task = _wet(StepKind.CLEAR, title, _CLEAR_HOW[order.finish], order, stance, *dangers)
        yield replace(task, with_next=order.finish is FinishKind.WAX)
        if order.finish is FinishKind.WAX:
            how = "Buff with a clean soft cloth, turned often, until it no longer drags."
            minutes = _minutes(StepKind.BUFF, order, stance)
            yield Task(
                StepKind.BUFF,
                "Buff",
                how,
                minutes,
                Wait(0.0),
                stance.rests_on,
                cautions=(Danger.RAGS,),
            )


def _minutes(kind: StepKind, order: PlanOrder, stance: Stance) -> float:
    pace, least = _PACE[kind]
    return max(least, pace * order.area * stance.share)


def _wet(
    kind: StepKind, title: str, how: str, order: PlanOrder, stance: Stance, *dangers: Danger
) -> Task:
    cautions = list(dangers)
    if order.carrier is Carrier.SOLVENT and Danger.SOLVENTS not in cautions:
        cautions += [Danger.SOLVENTS]
    if order.carrier is Carrier.SOLVENT and Danger.RAGS not in cautions:
        cautions += [Danger.RAGS]
    cautions += [{Use.CHILDREN: Danger.CHILDREN, Use.FOOD: Danger.FOOD}[use] for use in order.uses]
    return Task(
        kind,
        title,
        how,
        _minutes(kind, order, stance),
        Wait(0.0),
        stance.rests_on,
        stance.faces,
        tuple(cautions),
    )


# --- waits ---------------------------------------------------------------------------------------


def _times(order: PlanOrder, kind: StepKind) -> tuple[PaintTimes, Source]:
    primer, _ = usual_primer(order)
    given, usual = {
        StepKind.STAIN_BLOCK: (None, times.stain_block_times()),
        StepKind.PRIME: (order.primer_times, times.primer_times(primer, order.carrier)),
        StepKind.COAT: (order.paint_times, times.paint_times(order.carrier)),
        StepKind.WASH: (order.wash_times, times.paint_times(order.carrier)),
        StepKind.CLEAR: (order.finish_times, times.finish_times(order.finish, order.carrier)),
    }[kind]
    return (usual, Source.PRACTICE) if given is None else (given, Source.TIN)


def _wait_after(order: PlanOrder, task: Task, following: Task | None, *, turned_next: bool) -> Wait:
    if task.kind is StepKind.BUFF:
        return _after_buffing(order, following)
    if task.kind not in WET:
        return task.wait
    if following is not None and following.kind is StepKind.BUFF:
        return Wait(times.BUFF_AFTER)
    dry, source = _times(order, task.kind)
    wait = Wait(max(dry.recoat, dry.touch_dry), source)
    if turned_next:
        return times.set_down(wait, order.carrier)
    if following is None:
        return Wait(0.0, source)
    return _longest(wait, _practice_between(order, task.kind, following.kind))


def _after_buffing(order: PlanOrder, following: Task | None) -> Wait:
    """Wait for the next coat of wax; what follows the last is the cure."""
    dry, source = _times(order, StepKind.CLEAR)
    return Wait(0.0) if following is None else Wait(dry.recoat, source)


def _practice_between(order: PlanOrder, kind: StepKind, following: StepKind) -> Wait:
    primer, _ = usual_primer(order)
    if kind is StepKind.PRIME and primer is Primer.ADHESION and following is not StepKind.PRIME:
        return Wait(times.ADHESION_BEFORE_PAINT)
    if following is StepKind.CLEAR and kind is not StepKind.CLEAR and order.finish in SLICK:
        return Wait(times.BEFORE_WAX)
    return Wait(0.0)


def _longest(tin: Wait, practice: Wait) -> Wait:
    return tin if tin.minutes >= practice.minutes else practice


def _last_times(order: PlanOrder) -> Wait:
    """Give how long all that was put on takes to be ready for use: the slowest of it."""
    kinds = [StepKind.COAT]
    if order.washes:
        kinds.append(StepKind.WASH)
    if order.finish is not FinishKind.NONE:
        kinds.append(StepKind.CLEAR)
    found = [_times(order, kind) for kind in kinds]
    dry, source = max(found, key=lambda pair: pair[0].hard)
    return Wait(dry.hard, source)
