"""A dated plan of work, and the days of it as a picture needs them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from swatchwright.language import say
from swatchwright.piece.names import zone_word
from swatchwright.piece.work.cautions import CAUTIONS, Caution, Danger
from swatchwright.piece.work.check import checked_plan_order
from swatchwright.piece.work.coats import coating, finishing
from swatchwright.piece.work.order import Lead, PlanOrder, Room, Which
from swatchwright.piece.work.pairs import edges_told, left_bare, weak_told
from swatchwright.piece.work.prepare import preparation
from swatchwright.piece.work.rounds import zones_left_out
from swatchwright.piece.work.schedule import Session, Times, dated, held_back
from swatchwright.piece.work.stirring import sampled
from swatchwright.piece.work.task import StepKind, Task, meet
from swatchwright.piece.work.times import Source, Until, Wait, dew_point, drawn_out, wait_factor

__all__ = ["Plan", "Step", "plan_of"]

_GENTLY = 28 * 1440.0
"""Minutes from when it may be used until it is as hard as it gets: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a plan.

    Parameters
    ----------
    number
        From 1.
    kind, title, how
        What to do; the texts in the language in use.
    sessions
        When it is worked on; more than one where a day does not suffice, none for mere waiting.
    start, end
        Local time without a zone, as 2026-12-01T09:00.
    hands_on
        Minutes of work.
    wait
        Minutes to wait before what follows, drawn out by cold and damp.
    wait_from
        Where that comes from.
    rests_on
        What the piece stands or lies on meanwhile.
    faces
        What is wet after it.
    cautions
        What can hurt.
    parts
        The parts of the piece that it goes on; none for all of it.
    wait_until
        What is waited for.
    """

    number: int
    kind: StepKind
    title: str
    how: str
    sessions: tuple[Session, ...]
    start: str
    end: str
    hands_on: float
    wait: float
    wait_from: Source
    rests_on: Which
    faces: tuple[Which, ...]
    cautions: tuple[Danger, ...]
    parts: tuple[str, ...] = ()
    wait_until: Until = Until.DRY


@dataclass(frozen=True, slots=True)
class Plan:
    """A plan of work.

    Parameters
    ----------
    name
        Of the piece.
    steps
        In their order.
    ready
        When it may be used, local time.
    gently
        Until when it is to be used gently, as it goes on hardening, local time.
    hands_on
        Minutes of work in all.
    wait_factor
        How much longer than at 20 Celsius and 50 % things are taken to dry.
    cautions
        Each that a step names, once; in English until they are shown.
    notes
        What was assumed, in plain words.
    weak
        Where what goes on top is weak for how the piece is used, or does not hold on what lies
        below it, in plain words; or empty.
    painted
        Whether the piece is painted already in this job, and it begins with what goes over that.
    """

    name: str
    steps: tuple[Step, ...]
    ready: str
    gently: str
    hands_on: float
    wait_factor: float
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]
    weak: str = ""
    painted: bool = False


def plan_of(order: PlanOrder) -> Plan:
    """Make a plan.

    Raises
    ------
    MendableError
        If no plan can be made of the order: see `check`, and where a coat takes longer than a
        working day.
    """
    checked_plan_order(order)
    factor = wait_factor(order.room)
    tasks = [_drawn(task, factor) for task in _tasks(order)]
    times = dated(tasks, order.start, order.week)
    tasks = list(_held(tasks, times))
    steps = tuple(
        _step(number, task, sessions, start, end)
        for number, (task, (sessions, start, end)) in enumerate(zip(tasks, times, strict=True), 1)
    )
    named = dict.fromkeys(danger for step in steps for danger in step.cautions)
    return Plan(
        order.name,
        steps,
        _ready(steps),
        _later(_ready(steps), _GENTLY),
        sum(step.hands_on for step in steps),
        factor,
        tuple(CAUTIONS[danger] for danger in named),
        _notes(order, factor, tasks),
        weak_told(order),
        order.painted,
    )


def _tasks(order: PlanOrder) -> list[Task]:
    first = Which.BACK if order.flat else Which.UNDERSIDE
    laid = list(coating(order))
    left_on = laid[-1].rests_on if laid else first
    tasks = [*preparation(order, first), *laid, *finishing(order, left_on)]
    return list(sampled(order, tasks, first))


def _drawn(task: Task, factor: float) -> Task:
    holds = tuple(replace(hold, wait=drawn_out(hold.wait, factor)) for hold in task.holds)
    return replace(task, wait=drawn_out(task.wait, factor), holds=holds)


def _held(tasks: Sequence[Task], times: Sequence[Times]) -> Iterator[Task]:
    """Let a step wait as long as what follows waits for what was laid before on its parts."""
    ends = [datetime.fromisoformat(end) for _, _, end in times]
    for n, task in enumerate(tasks):
        held = held_back(tasks[n + 1], ends[: n + 1]) if n + 1 < len(tasks) else None
        if held is None or held.minutes <= task.wait.minutes:
            yield task
            continue
        told = "" if meet(task, tasks[n + 1]) else say("The wait is for what lies there already.")
        yield replace(task, how=f"{task.how} {told}" if told else task.how, wait=held)


def _step(number: int, task: Task, sessions: tuple[Session, ...], start: str, end: str) -> Step:
    wait: Wait = task.wait
    return Step(
        number,
        task.kind,
        task.title,
        task.how,
        sessions,
        start,
        end,
        task.hands_on,
        wait.minutes,
        wait.source,
        task.rests_on,
        task.faces,
        task.cautions,
        task.parts,
        wait.until,
    )


def _ready(steps: tuple[Step, ...]) -> str:
    """Give when the last step is over, and what it leaves has hardened."""
    return _later(steps[-1].end, steps[-1].wait)


def _later(moment: str, minutes: float) -> str:
    later = datetime.fromisoformat(moment) + timedelta(minutes=minutes)
    return later.isoformat(timespec="minutes")


def _notes(order: PlanOrder, factor: float, tasks: list[Task]) -> tuple[str, ...]:
    notes = []
    if any(task.wait.minutes and task.wait.source is Source.PRACTICE for task in tasks):
        notes.append(
            say(
                "Waits that are common practice have no source. What the tin says comes first: "
                "enter its times."
            )
        )
    if factor > 1:
        notes.append(
            say(
                "Waits are {factor:.1f} times as long for the cold or the damp: a rule of thumb.",
                factor=factor,
            )
        )
    if _sweats(order.room):
        notes.append(
            say(
                "The air is so damp that a surface 3 °C colder than the room would sweat: let the "
                "piece warm up, and feel whether it is dry."
            )
        )
    if order.lead_asked and order.lead is Lead.TESTED_NEGATIVE:
        notes.append(say("Dry sanding is planned because the coat was tested and holds no lead."))
    if order.without_dust and not order.painted:
        notes.append(
            say("It is treated as lead: nothing old is sanded dry. Local rules come first.")
        )
    notes += edges_told(order)
    notes += left_bare(order)
    notes += [
        say(
            "What was to go on the {part} is left out: the piece has no such part. Look at the "
            "page Finish.",
            part=zone_word(zone),
        )
        for zone in zones_left_out((*order.laid, *order.topped))
    ]
    notes.append(say("It goes on hardening for weeks after it is ready (common practice)."))
    return tuple(notes)


def _sweats(room: Room) -> bool:
    if room.humidity <= 0:
        return False
    return room.temperature - dew_point(room.temperature, room.humidity) < 3.0
