"""The days of a plan, hour by hour, as a picture of them needs it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from swatchwright.piece.work.order import Week
from swatchwright.piece.work.plan import Plan

__all__ = ["Block", "Day", "days_of"]


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of one day.

    Parameters
    ----------
    step
        Number of the step.
    begin, end
        Minutes of the day, 0 to 1440.
    drying
        Whether it is waiting rather than work.
    """

    step: int
    begin: int
    end: int
    drying: bool


@dataclass(frozen=True, slots=True)
class Day:
    """A day of the plan, as 2026-12-01; whether she works on it; and what happens on it."""

    day: str
    working: bool
    blocks: tuple[Block, ...]


def days_of(plan: Plan, week: Week) -> tuple[Day, ...]:
    """Give every day from the first step to the last, in order, idle ones too."""
    by_day: dict[date, list[Block]] = {}
    for number, begin, end, drying in _stretches(plan):
        for day, low, high in _split(begin, end):
            by_day.setdefault(day, []).append(Block(number, low, high, drying))
    first = datetime.fromisoformat(plan.steps[0].start).date()
    last = max([*by_day, datetime.fromisoformat(plan.ready).date()])
    days = [first + timedelta(days=i) for i in range((last - first).days + 1)]
    return tuple(
        Day(day.isoformat(), day.weekday() in week.days, tuple(by_day.get(day, ()))) for day in days
    )


def _stretches(plan: Plan) -> Iterator[tuple[int, datetime, datetime, bool]]:
    for step in plan.steps:
        for session in step.sessions:
            begin, end = (datetime.fromisoformat(t) for t in (session.start, session.end))
            yield step.number, begin, end, False
        if step.wait:
            end = datetime.fromisoformat(step.end)
            yield step.number, end, end + timedelta(minutes=step.wait), True


def _split(begin: datetime, end: datetime) -> Iterator[tuple[date, int, int]]:
    """Cut a stretch at midnight."""
    day = begin.date()
    while day <= end.date():
        midnight = datetime.combine(day, datetime.min.time())
        low, high = (
            max(0, min(1440, int((t - midnight) / timedelta(minutes=1)))) for t in (begin, end)
        )
        if high > low:
            yield day, low, high
        day += timedelta(days=1)
