"""How long to wait after each coat: as its tin says, and as what follows asks for."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.piece.work import times
from swatchwright.piece.work.order import FinishKind, PaintTimes, PlanOrder, Primer, Surface
from swatchwright.piece.work.task import WET, StepKind, Task
from swatchwright.piece.work.times import Source, Until, Wait

__all__ = [
    "SLICK",
    "bears_weight",
    "last_wait",
    "times_of",
    "usual_primer",
    "wait_after",
    "wait_of_coat",
]

SLICK = frozenset({FinishKind.WAX, FinishKind.OIL})
"""Finishes on which paint does not hold."""

_PAINTED = frozenset({StepKind.COAT, StepKind.WASH})

_HOLDS = {
    Surface.RAW: Primer.ORDINARY,
    Surface.PAINTED: Primer.NONE,
}


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


def times_of(order: PlanOrder, kind: StepKind, finish: FinishKind) -> tuple[PaintTimes, Source]:
    """Give how long what is laid dries, and where that comes from.

    Parameters
    ----------
    order
        What is planned.
    kind
        A step that leaves a wet face.
    finish
        Of a clear finish, which one.
    """
    primer, _ = usual_primer(order)
    given, usual = {
        StepKind.STAIN_BLOCK: (None, times.stain_block_times()),
        StepKind.PRIME: (order.primer_times, times.primer_times(primer, order.carrier)),
        StepKind.COAT: (order.paint_times, times.paint_times(order.carrier)),
        StepKind.WASH: (order.wash_times, times.paint_times(order.carrier)),
        StepKind.CLEAR: (order.tin_of(finish), times.finish_times(finish, order.carrier)),
    }[kind]
    return (usual, Source.PRACTICE) if given is None else (given, Source.TIN)


def wait_after(order: PlanOrder, task: Task, following: Task | None, *, turned_next: bool) -> Wait:
    """Give how long to wait after a step: as the tin says, or practice asks for what follows.

    Parameters
    ----------
    order
        What is planned.
    task, following
        The step, and the one after it while the piece stands so; None where there is none.
    turned_next
        Whether the piece is turned then, to stand on what is wet now.
    """
    if following is not None and task.beside:
        return Wait(0.0)
    if task.kind not in WET:
        buffed = task.kind is StepKind.BUFF
        return _after_buffing(order, task, following) if buffed else task.wait
    if following is not None and following.kind is StepKind.BUFF:
        return Wait(times.BUFF_AFTER, until=Until.BUFF)
    wait = _recoat(order, task.kind, task.finish)
    if turned_next:
        return bears_weight(order, task)
    if following is None:
        return Wait(0.0, wait.source)
    other = following.finish if following.finish is not task.finish else FinishKind.NONE
    return _longest(wait, _practice_between(order, task.kind, following.kind, other))


def bears_weight(order: PlanOrder, task: Task) -> Wait:
    """Give how long what is laid dries until the piece may be set down on it."""
    wait = _recoat(order, task.kind, task.finish)
    return replace(times.set_down(wait, order.carrier), until=Until.TURN)


def wait_of_coat(order: PlanOrder, following: StepKind) -> Wait:
    """Give how long a coat of paint dries before what goes over it, as its tin or practice says."""
    slick = next((finish for finish in order.finishes if finish in SLICK), FinishKind.NONE)
    recoat = _recoat(order, StepKind.COAT, FinishKind.NONE)
    return _longest(recoat, _practice_between(order, StepKind.COAT, following, slick))


def _recoat(order: PlanOrder, kind: StepKind, finish: FinishKind) -> Wait:
    dry, source = times_of(order, kind, finish)
    return Wait(max(dry.recoat, dry.touch_dry), source, Until.NEXT)


def _after_buffing(order: PlanOrder, task: Task, following: Task | None) -> Wait:
    """Wait for the next coat of wax; what follows the last is the cure."""
    dry, source = times_of(order, StepKind.CLEAR, task.finish)
    return Wait(0.0) if following is None else Wait(dry.recoat, source, Until.NEXT)


def _practice_between(
    order: PlanOrder,
    kind: StepKind,
    following: StepKind,
    finish: FinishKind = FinishKind.NONE,
) -> Wait:
    """Give what practice asks for between two steps; of a wax or an oil that is another's, which.

    More of the same finish waits for nothing but its own time.
    """
    primer, _ = usual_primer(order)
    if kind is StepKind.PRIME and primer is Primer.ADHESION and following is not StepKind.PRIME:
        return Wait(times.ADHESION_BEFORE_PAINT, until=Until.PAINT)
    if following in {StepKind.MIX_WASH, StepKind.WASH} and kind in _PAINTED and _wiped(order):
        return _bears_a_rag(order, kind)
    if following is StepKind.CLEAR and finish in SLICK:
        return Wait(times.BEFORE_WAX, until=Until.WAX)
    return Wait(0.0)


def _wiped(order: PlanOrder) -> bool:
    """Tell whether a wash is wiped back; one of which nothing is known usually is."""
    return any(laid.wiped for laid in order.laid) or not order.laid


def _bears_a_rag(order: PlanOrder, kind: StepKind) -> Wait:
    """Wait until a coat bears a wet rag; its tin shortens that where it is hard before."""
    usual = times.BEFORE_WIPING[order.carrier]
    tin, source = times_of(order, kind, FinishKind.NONE)
    if source is Source.TIN and tin.hard < usual:
        return Wait(tin.hard, source, Until.RAG)
    return Wait(usual, until=Until.RAG)


def _longest(tin: Wait, practice: Wait) -> Wait:
    return tin if tin.minutes >= practice.minutes else practice


def last_wait(order: PlanOrder) -> Wait:
    """Give how long all that was put on takes to be ready for use: the slowest of it."""
    bare = [] if order.painted and (order.washes or order.finishes) else [StepKind.COAT]
    if order.washes:
        bare.append(StepKind.WASH)
    found = [times_of(order, kind, FinishKind.NONE) for kind in bare]
    found += [times_of(order, StepKind.CLEAR, finish) for finish in order.finishes]
    dry, source = max(found, key=lambda pair: pair[0].hard)
    return Wait(dry.hard, source, Until.USE)
