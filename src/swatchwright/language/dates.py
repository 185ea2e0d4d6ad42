"""How days and times of day are told: one way for the window, the plan and the printed sheet.

Days are kept as ISO 8601 has them, 2026-12-01, and moments as 2026-12-01T09:00, in local time.
"""

from __future__ import annotations

import re
from datetime import date, datetime

from swatchwright.language import mark, mark_in, say, say_in

__all__ = [
    "clock",
    "date_text",
    "day_and_month",
    "full_day",
    "month_name",
    "time_of_day",
    "weekday_name",
]

_DAY = re.compile(r"\d{4}-\d\d-\d\d", re.ASCII)
_WEEKDAYS = (
    mark_in("day", "Mon"),
    mark_in("day", "Tue"),
    mark_in("day", "Wed"),
    mark_in("day", "Thu"),
    mark_in("day", "Fri"),
    mark_in("day", "Sat"),
    mark_in("day", "Sun"),
)
_SHORT = (
    *(mark_in("month", "Jan"), mark_in("month", "Feb"), mark_in("month", "Mar")),
    *(mark_in("month", "Apr"), mark_in("month", "May"), mark_in("month", "Jun")),
    *(mark_in("month", "Jul"), mark_in("month", "Aug"), mark_in("month", "Sep")),
    *(mark_in("month", "Oct"), mark_in("month", "Nov"), mark_in("month", "Dec")),
)
_LONG = (
    *(mark("January"), mark("February"), mark("March"), mark("April"), mark("May"), mark("June")),
    *(mark("July"), mark("August"), mark("September"), mark("October"), mark("November")),
    mark("December"),
)


def date_text(day: str) -> str:
    """Write a day out, as in 1 March 2026; a text that is no day stays as it is."""
    if not _DAY.fullmatch(day):
        return day
    try:
        when = date.fromisoformat(day)
    except ValueError:
        return day
    month = say(_LONG[when.month - 1])
    return say("{day} {month} {year}", day=when.day, month=month, year=when.year)


def full_day(moment: str) -> str:
    """Give the day of a moment with its year, as in Tue 1 Dec 2026."""
    return say("{day} {year}", day=day_and_month(moment), year=_day_of(moment).year)


def day_and_month(moment: str) -> str:
    """Give the day of a moment where the year is plain, as in Tue 1 Dec."""
    when = _day_of(moment)
    return say(
        "{weekday} {day} {month}",
        weekday=weekday_name(when.weekday()),
        day=when.day,
        month=month_name(when.month),
    )


def weekday_name(place: int) -> str:
    """Name a day of the week in short, 0 for Monday."""
    return say_in("day", _WEEKDAYS[place])


def month_name(month: int) -> str:
    """Name a month in short, 1 for January."""
    return say_in("month", _SHORT[month - 1])


def time_of_day(moment: str) -> str:
    """Give the time of day of a moment, as in 9:05."""
    when = datetime.fromisoformat(moment)
    return clock(60 * when.hour + when.minute)


def clock(minutes: int) -> str:
    """Write a minute of the day, as in 9:05."""
    return f"{minutes // 60}:{minutes % 60:02}"


def _day_of(moment: str) -> date:
    return date.fromisoformat(moment[:10])
