"""A plan as a calendar file: iCalendar, RFC 5545 ([RFC5545])."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from hashlib import sha256
from typing import TYPE_CHECKING

from swatchwright.language import say
from swatchwright.piece.names import piece_word
from swatchwright.piece.work.cautions import CAUTIONS
from swatchwright.piece.work.plan import Plan, Step
from swatchwright.piece.work.schedule import Session

if TYPE_CHECKING:
    from icalendar import Event

__all__ = ["calendar_of"]


def calendar_of(plan: Plan, *, stamp: datetime | None = None) -> bytes:
    """Write a plan as a calendar: an event for each time of work.

    Times are local without a zone, so that they stay what they are wherever it is opened. An event
    keeps its identity when the same plan is written again, so that a calendar takes it for the
    same.

    Parameters
    ----------
    plan
        The plan.
    stamp
        When it is written, with its zone; now if None.
    """
    from icalendar import Calendar

    written = datetime.now(UTC) if stamp is None else stamp.astimezone(UTC)
    calendar = Calendar()
    calendar.add("prodid", "-//Swatchwright//plan of work//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", say("Painting: {piece}", piece=piece_word(plan.name)))
    for event in _events(plan, written):
        calendar.add_component(event)
    return bytes(calendar.to_ical())


def _events(plan: Plan, written: datetime) -> Iterator[Event]:
    from icalendar import Event

    identity = sha256(f"{plan.name} {plan.steps[0].start}".encode()).hexdigest()[:16]
    for step in plan.steps:
        for part, session in enumerate(step.sessions, 1):
            event = Event()
            event.add("uid", f"{identity}-{step.number}-{part}@swatchwright")
            event.add("dtstamp", written)
            event.add("summary", _summary(plan, step, session))
            event.add("dtstart", datetime.fromisoformat(session.start))
            event.add("dtend", datetime.fromisoformat(session.end))
            event.add("description", _description(step))
            yield event


def _summary(plan: Plan, step: Step, session: Session) -> str:
    piece = piece_word(plan.name)
    if session is step.sessions[0]:
        return say("{piece}: {step}", piece=piece, step=step.title)
    return say("{piece}: {step} (going on)", piece=piece, step=step.title)


def _description(step: Step) -> str:
    lines = [step.how]
    if step.wait:
        source = say(step.wait_from.value)
        lines.append(say("Then wait {hours:g} h ({source}).", hours=step.wait / 60, source=source))
    lines += [
        say(
            "Take care ({danger}): {do}",
            danger=say(danger.value),
            do=say(CAUTIONS[danger].do),
        )
        for danger in step.cautions
    ]
    return "\n".join(lines)
