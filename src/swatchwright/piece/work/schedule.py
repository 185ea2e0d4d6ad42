"""Tasks put on days: working hours for hands, any hour for drying."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from math import ceil

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.work.check import first_day
from swatchwright.piece.work.order import Week
from swatchwright.piece.work.task import WET, StepKind, Task
from swatchwright.piece.work.times import Wait

__all__ = ["Session", "dated", "held_back"]

_STEP = 5


@dataclass(frozen=True, slots=True)
class Session:
    """A time of work on one day, local time without a zone, as 2026-12-01T09:00."""

    start: str
    end: str


Times = tuple[tuple[Session, ...], str, str]
"""Sessions of a task, its start and its end."""


def dated(tasks: Sequence[Task], start: str, week: Week) -> list[Times]:
    """Put tasks on days, each as early as its turn comes and the one before has dried.

    Work falls into working hours, up to the next five minutes. What is wet is done in one go on
    one day, and what must follow on the same day, as buffing after waxing, is kept with it; other
    work may go on the next day. Drying goes on day and night.

    Raises
    ------
    MendableError
        If what must be done in one go is longer than a working day.
    """
    now = datetime.combine(first_day(start), time())
    made: list[Times] = []
    ends: list[datetime] = []
    for i, task in enumerate(tasks):
        if (held := held_back(task, ends)) is not None:
            now = max(now, ends[-1] + timedelta(minutes=held.minutes))
        following = tasks[i + 1] if task.with_next and i + 1 < len(tasks) else None
        sessions = list(_sessions(task, following, now, week))
        begin, end = (sessions[0][0], sessions[-1][1]) if sessions else (now, now)
        told = tuple(Session(_text(a), _text(b)) for a, b in sessions)
        made.append((told, _text(begin), _text(end)))
        ends.append(end)
        now = end + timedelta(minutes=task.wait.minutes)
    return made


def held_back(task: Task, ends: Sequence[datetime]) -> Wait | None:
    """Give how long a task waits after the one before it for what was laid on its parts earlier.

    Parameters
    ----------
    task
        The next one.
    ends
        When those before it were over, all of them.
    """
    left = (
        replace(
            hold.wait,
            minutes=hold.wait.minutes - (ends[-1] - ends[-hold.back]) / timedelta(minutes=1),
        )
        for hold in task.holds
    )
    longest = max(left, key=lambda wait: wait.minutes, default=None)
    return None if longest is None or longest.minutes <= 0 else longest


def _text(moment: datetime) -> str:
    return moment.isoformat(timespec="minutes")


def _sessions(
    task: Task, following: Task | None, now: datetime, week: Week
) -> Iterator[tuple[datetime, datetime]]:
    left = _whole(task.hands_on)
    if not left:
        return
    if task.kind in WET or task.kind is StepKind.BUFF:
        together = left
        if following is not None:
            together += _whole(task.wait.minutes) + _whole(following.hands_on)
        begin = _fitting(task, together, now, week)
        yield begin, begin + timedelta(minutes=left)
        return
    while left:
        begin, room = _opening(now, week)
        worked = min(left, room)
        now = begin + timedelta(minutes=worked)
        yield begin, now
        left -= worked


def _hours(week: Week) -> tuple[int, int]:
    """Give the working hours within whole five minutes."""
    return _whole(week.begin), week.end - week.end % _STEP


def _whole(minutes: float) -> int:
    return _STEP * ceil(minutes / _STEP - 1e-9)


def _fitting(task: Task, minutes: int, now: datetime, week: Week) -> datetime:
    open_at, shut_at = _hours(week)
    if minutes > shut_at - open_at:
        raise MendableError(
            say(
                "“{step}” takes {hours:.1f} hours in one go, longer than a working day.",
                step=task.title,
                hours=minutes / 60,
            ),
            say("Give longer days, or plan the piece in parts."),
        )
    begin, room = _opening(now, week)
    while room < minutes:
        begin, room = _opening(_next_day(begin), week)
    return begin


def _opening(now: datetime, week: Week) -> tuple[datetime, int]:
    """Give the next moment at which there is work, and how many minutes are left of that day."""
    open_at, shut_at = _hours(week)
    while True:
        midnight = datetime.combine(now.date(), time())
        begin = max(_up(now), midnight + timedelta(minutes=open_at))
        room = int((midnight + timedelta(minutes=shut_at) - begin) / timedelta(minutes=1))
        if now.weekday() in week.days and room >= _STEP:
            return begin, room
        now = _next_day(now)


def _next_day(now: datetime) -> datetime:
    return datetime.combine(now.date() + timedelta(days=1), time())


def _up(now: datetime) -> datetime:
    """Give the next whole five minutes."""
    over = now.minute % _STEP * 60 + now.second
    return now if not over else now + timedelta(seconds=_STEP * 60 - over)
