"""The steps at the mixing bench: a sample, the whole batch, and a wash by its recipe."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from swatchwright.language import listed, mark, say, say_in
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import Laid, PlanOrder, Which
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Wait, paint_times, wait_factor

__all__ = ["mixing", "pass_of", "sampled", "wash_mixing"]

# Minutes; common practice, no source.
_SAMPLE, _CHECK, _MIX, _MIX_WASH = 30.0, 10.0, 30.0, 15.0
_NOW = Wait(0.0)


def sampled(order: PlanOrder, tasks: Sequence[Task], rests_on: Which) -> Iterator[Task]:
    """Give all tasks with the sample put in early, which dries while the piece is got ready.

    What of its drying is not over when it is held to the cloth is waited for at once.
    """
    check = next(n for n, task in enumerate(tasks) if task.kind is StepKind.CHECK)
    # Waits are drawn out by the room later, and work is not.
    factor = wait_factor(order.room)
    meanwhile = sum(task.hands_on / factor + task.wait.minutes for task in tasks[:check])
    dry = order.paint_times or paint_times(order.carrier)
    left = max(0.0, dry.recoat - meanwhile)
    # What keeps lead out of the air comes before all else.
    begin = 1 if tasks[0].kind is StepKind.LEAD_CARE else 0
    yield from tasks[:begin]
    yield Task(
        StepKind.SAMPLE,
        say("Brush a sample"),
        say(
            "Mix a little by the recipe, brush it on card in as many coats as the piece gets, and "
            "let it dry while you go on: wet paint looks otherwise."
        ),
        _SAMPLE,
        Wait(left),
        rests_on,
        cautions=(Danger.MIXING,),
    )
    yield from tasks[begin:]


def mixing(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    """Give what is done at the mixing bench before the first coat of paint."""
    how = say(
        "Hold the dry sample to the cloth in the light of the room. If it is off, put the recipe "
        "right and brush another before you go on."
    )
    yield Task(StepKind.CHECK, say("Hold the sample to the cloth"), how, _CHECK, _NOW, rests_on)
    how = say(
        "Mix all the paint for all coats at once, stir it well and close it: a second batch never "
        "comes out quite the same."
    )
    yield Task(
        StepKind.MIX,
        say("Mix the whole batch"),
        how,
        _MIX if order.area < _LARGE else 2 * _MIX,
        _NOW,
        rests_on,
        cautions=(Danger.MIXING,),
    )


_LARGE = 6.0
"""m2 from which a batch is so large that it takes twice as long."""


def wash_mixing(order: PlanOrder, rests_on: Which) -> Iterator[Task]:
    """Give a step for each wash or glaze that is to be stirred, once for all its passes."""
    if not order.washes:
        return
    seen: list[Laid] = []
    for number in range(1, order.washes + 1):
        laid = pass_of(order, number)
        if laid is not None and laid not in seen:
            seen.append(laid)
    for laid in dict.fromkeys(replace(one, passes=1) for one in seen) or [None]:
        glaze = laid is not None and laid.glaze
        yield Task(
            StepKind.MIX_WASH,
            say_in("step", "Mix the glaze") if glaze else say_in("step", "Mix the wash"),
            _stirred(laid),
            _MIX_WASH,
            _NOW,
            rests_on,
            cautions=(Danger.MIXING,),
        )


_THINNED = {
    (False, False): mark("Thin 1 part of {paints} with {water:g} parts of water."),
    (False, True): mark("Stir 1 part of {paints} into {water:g} parts of glaze medium."),
    (True, False): mark(
        "Stir together, in parts, {paints}; thin 1 part of that with {water:g} parts of water."
    ),
    (True, True): mark(
        "Stir together, in parts, {paints}; stir 1 part of that into {water:g} parts of glaze "
        "medium."
    ),
}


def _stirred(laid: Laid | None) -> str:
    tried = say("Mix enough for all of it, and try it on the dry sample first.")
    if laid is None:
        return tried
    several = len(laid.paints) > 1
    paints = (
        listed(say("{parts:g} of “{paint}”", parts=n, paint=name) for name, n in laid.paints)
        if several
        else say("“{paint}”", paint=laid.paints[0][0])
    )
    told = say(_THINNED[several, laid.glaze], paints=paints, water=laid.water)
    return f"{told} {tried}"


def pass_of(order: PlanOrder, number: int) -> Laid | None:
    """Give what is laid as wash of a number, from 1; the last one goes on; None if not known."""
    passes = [laid for laid in order.laid for _ in range(laid.passes)]
    return passes[min(number, len(passes)) - 1] if passes else None
