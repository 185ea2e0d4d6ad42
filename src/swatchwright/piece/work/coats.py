"""The steps that put something on, in an order in which no wet face is ever set down.

What is seen from below is painted first, upside down, through to its last coat; when it may bear
the piece's weight, the piece is turned, and the rest is painted. So what is painted last, and seen
most, is never set down at all.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from swatchwright.language import mark, say, say_in
from swatchwright.paint.wiped import share_left
from swatchwright.piece.names import side_word
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import (
    Carrier,
    FinishKind,
    Laid,
    PlanOrder,
    Primer,
    Use,
    Which,
)
from swatchwright.piece.work.prepare import put_back
from swatchwright.piece.work.stirring import mixing, pass_of, wash_mixing
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Wait
from swatchwright.piece.work.waits import SLICK, last_wait, usual_primer, wait_after

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


def coating(order: PlanOrder) -> Iterator[Task]:
    """Give all steps from the first coat to the last buffing, with their waits."""
    stood = stances(order)
    for i, stance in enumerate(stood):
        if i or stance.rests_on in {Which.TOP, Which.FRONT}:
            yield _turned(stance.rests_on)
        to_be_turned = i + 1 < len(stood)
        tasks = list(_layers(order, stance, first=not i, to_be_turned=to_be_turned))
        for task, following in pairwise([*tasks, None]):
            assert task is not None  # noqa: S101 - only the last is None
            last = following is None and to_be_turned
            yield replace(task, wait=wait_after(order, task, following, turned_next=last))


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


def _layers(order: PlanOrder, stance: Stance, *, first: bool, to_be_turned: bool) -> Iterator[Task]:
    if order.stain_block:
        title = say_in("step", "Stain block")
        how = say("Seal knots, stains and old ink with a stain block.")
        yield _wet(StepKind.STAIN_BLOCK, title, how, order, stance, Danger.SOLVENTS)
    primer, primer_coats = usual_primer(order)
    for n in range(1, primer_coats + 1):
        yield _wet(
            StepKind.PRIME,
            say(_PRIMED[primer], n=n),
            say("Brush it out thin and even."),
            order,
            stance,
            Danger.MIXING,
        )
    if first:
        yield from mixing(order, stance.rests_on)
    yield from _paint(order, stance)
    if first:
        yield from wash_mixing(order, stance.rests_on)
    yield from _washes(order, stance)
    # Paint does not hold on wax or oil, and hands carry them: none before all is painted.
    if not (to_be_turned and order.finish in SLICK):
        yield from _clear(order, stance)


def _washes(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    for n in range(1, order.washes + 1):
        laid = pass_of(order, n)
        title = say("Wash {n}", n=n)
        how = _wiped_back(laid)
        if laid is not None and laid.glaze:
            title = say("Glaze {n}", n=n)
            how = say("Brush the glaze over a part at a time and lay it off along the grain.")
        elif laid is not None and not laid.wiped:
            how = say("Brush the wash over a part at a time, thin and even, and leave it.")
        yield _wet(StepKind.WASH, title, how, order, stance, Danger.MIXING)


def _wiped_back(laid: Laid | None) -> str:
    """Say how a wash is wiped back, and how far where that is known."""
    if laid is None or laid.left is None:
        return say("Brush the wash over a part at a time and wipe it back along the grain.")
    return say(
        "Brush the wash over a part at a time and wipe it back along the grain to {left} of it; "
        "how much is left decides the colour.",
        left=share_left(laid.left),
    )


def _paint(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    for n in range(1, order.coats + 1):
        if n > 1:
            yield _denib(order, stance)
        title = say("Paint, coat {n}", n=n)
        how = say("Stir, strain, and lay off along the grain; stop at an edge, never in a face.")
        yield _wet(StepKind.COAT, title, how, order, stance, Danger.MIXING)


def _denib(order: PlanOrder, stance: Stance) -> Task:
    if order.without_dust:
        title = say_in("step", "Denib, wet")
        how = say(
            "Rub lightly with a wet, very fine pad, and wipe; do not go through to the old coat."
        )
        minutes = _minutes(StepKind.DENIB_WET, order, stance)
        dries = Wait(_DAMP_DRIES)
        lead = (Danger.LEAD,)
        return Task(StepKind.DENIB_WET, title, how, minutes, dries, stance.rests_on, cautions=lead)
    how = say(
        "Rub lightly with very fine abrasive until it feels smooth, and wipe with a damp cloth."
    )
    minutes = _minutes(StepKind.DENIB, order, stance)
    return Task(
        StepKind.DENIB,
        say_in("step", "Denib"),
        how,
        minutes,
        Wait(_DAMP_DRIES),
        stance.rests_on,
        cautions=(Danger.DUST,),
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


def _clear(order: PlanOrder, stance: Stance) -> Iterator[Task]:
    if order.finish is FinishKind.NONE:
        return
    dangers, how = _CLEAR_DANGERS[order.finish], say(_CLEAR_HOW[order.finish])
    for n in range(1, order.finish_coats + 1):
        title = say(_CLEAR_TITLES[order.finish], n=n)
        task = _wet(StepKind.CLEAR, title, how, order, stance, *dangers)
        yield replace(task, with_next=order.finish is FinishKind.WAX)
        if order.finish is FinishKind.WAX:
            yield _buffed(order, stance)


def _buffed(order: PlanOrder, stance: Stance) -> Task:
    return Task(
        StepKind.BUFF,
        say_in("step", "Buff"),
        say("Buff with a clean soft cloth, turned often, until it no longer drags."),
        _minutes(StepKind.BUFF, order, stance),
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
