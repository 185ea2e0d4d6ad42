"""The steps at the mixing bench: a sample, the whole batch, and a wash by its recipe."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from swatchwright.language import listed, mark, say, say_in
from swatchwright.piece.names import zone_word
from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import Laid, PlanOrder, Which
from swatchwright.piece.work.pots import mix_how, mix_title
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Until, Wait, paint_times, wait_factor

__all__ = ["mixing", "sampled", "stuff_of", "wash_mixing"]

# Minutes; common practice, no source.
_SAMPLE, _CHECK, _MIX, _MIX_WASH = 30.0, 10.0, 30.0, 15.0
_NOW = Wait(0.0)


def sampled(order: PlanOrder, tasks: Sequence[Task], rests_on: Which) -> Iterator[Task]:
    """Give all tasks with the sample put in early, which dries while the piece is got ready.

    What of its drying is not over when it is held to the cloth is waited for at once. Of paint that
    is on the piece already no sample is brushed.
    """
    if order.painted:
        yield from tasks
        return
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
        Wait(left, until=Until.SAMPLE),
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
        mix_title(order.pots) if order.pots else say("Mix the whole batch"),
        mix_how(order.pots) if order.pots else how,
        _MIX if order.area < _LARGE else 2 * _MIX,
        _NOW,
        rests_on,
        cautions=(Danger.MIXING,),
    )


_LARGE = 6.0
"""m2 from which a batch is so large that it takes twice as long."""


Stuff = tuple[tuple[tuple[str, float], ...], float, bool]


def stuff_of(laid: Laid | None) -> Stuff | None:
    """Give what a wash is stirred of; None where nothing is known of it."""
    return None if laid is None else (laid.paints, laid.water, laid.glaze)


def wash_mixing(laid: Sequence[Laid | None], rests_on: Which) -> Iterator[Task]:
    """Give a step for each wash or glaze that is to be stirred, once for all its passes and parts.

    Parameters
    ----------
    laid
        What is laid, each as often as it is; None where nothing is known of it.
    rests_on
        What the piece stands on meanwhile.
    """
    known = [one for one in laid if one is not None]
    if not known and laid:
        yield _wash_mixed(None, (), rests_on)
    for stuff in dict.fromkeys(map(stuff_of, known)):
        same = [one for one in known if stuff_of(one) == stuff]
        zones = tuple(dict.fromkeys(one.zone for one in same))
        yield _wash_mixed(same[0], () if "" in zones else zones, rests_on)


def _wash_mixed(laid: Laid | None, zones: Sequence[str], rests_on: Which) -> Task:
    glaze = laid is not None and laid.glaze
    title = say_in("step", "Mix the glaze") if glaze else say_in("step", "Mix the wash")
    if zones:
        told = (
            mark("Mix the glaze for the {parts}") if glaze else mark("Mix the wash for the {parts}")
        )
        title = say(told, parts=listed(zone_word(zone) for zone in zones))
    return Task(
        StepKind.MIX_WASH,
        title,
        _stirred(laid),
        _MIX_WASH,
        _NOW,
        rests_on,
        cautions=(Danger.MIXING,),
        parts=tuple(zones),
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
    tried = say(
        "Stir its paint once for the whole job, so that the colour stays the same, and thin only "
        "what you use within the hour (common practice, no source). Try it first where the paint "
        "is dry, on the sample or an inside face."
    )
    if laid is None or not laid.paints:
        return tried
    several = len(laid.paints) > 1
    paints = (
        listed(say("{parts:g} of “{paint}”", parts=n, paint=name) for name, n in laid.paints)
        if several
        else say("“{paint}”", paint=laid.paints[0][0])
    )
    told = say(_THINNED[several, laid.glaze], paints=paints, water=laid.water)
    return f"{told} {tried}"
