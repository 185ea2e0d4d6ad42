"""The words of days and hours, and of the picture of the days of a plan."""

from __future__ import annotations

from datetime import date

from swatchwright.language import bound, figure, mark, say
from swatchwright.language.dates import clock, day_and_month, month_name, weekday_name
from swatchwright.piece.work.days import Block, Day
from swatchwright.piece.work.plan import Step

DAY_NAMES = tuple(weekday_name(place) for place in range(7))
LONG_DAYS = (
    say("Monday"),
    say("Tuesday"),
    say("Wednesday"),
    say("Thursday"),
    say("Friday"),
    say("Saturday"),
    say("Sunday"),
)
PICTURE = say("The days")
DAY_OFF = say("day off")
LEGEND = say(
    "Full: work, with the number of its step. Hatched: it dries or hardens. Press a block to read "
    "its step here, or go to it with the arrow keys; press it twice, or Return, to find it below."
)
DRIES = say("dries")
CURES = say("hardens")
NIGHT = say("night")

_CURE_FROM = 72 * 60


def lasting(minutes: float) -> str:
    """Say how long, roughly as long as it is."""
    if minutes < 60:
        return bound(f"{minutes:.0f} min")
    if minutes <= _CURE_FROM:
        return bound(f"{figure(minutes / 60, '.2g' if minutes < 600 else '.0f')} h")
    return say("{days:.3g} days", days=minutes / 1440)


def picture_name(summary: str) -> str:
    """Name the picture of the days for a screen reader."""
    return f"{PICTURE}: {summary}"


def block_told(day: Day, block: Block, step: Step) -> str:
    """Tell a block of the picture of the days for a screen reader."""
    if not block.drying:
        told = mark("{day}, {begin} to {end}: work on step {number}, {step}")
    elif step.wait > _CURE_FROM:
        told = mark("{day}, {begin} to {end}: hardens after step {number}, {step}")
    else:
        told = mark("{day}, {begin} to {end}: dries after step {number}, {step}")
    return say(
        told,
        day=day_and_month(day.day),
        begin=clock(block.begin),
        end=clock(block.end),
        number=step.number,
        step=step.title,
    )


def waiting_word(step: Step) -> str:
    """Say what is waited for after a step."""
    return CURES if step.wait > _CURE_FROM else DRIES


def day_button(place: int) -> str:
    """Name the button of a working day."""
    return say("Work on {day}s", day=LONG_DAYS[place])


def row_name(days: tuple[Day, ...]) -> str:
    """Name a row of the picture: a day, or the first and last of several."""
    if len(days) == 1:
        return day_and_month(days[0].day)
    first, last = (date.fromisoformat(day.day) for day in (days[0], days[-1]))
    month = month_name(last.month)
    if first.month == last.month:
        return say("{first}–{last} {month}", first=first.day, last=last.day, month=month)
    return say(
        "{first} {first_month}–{last} {month}",
        first=first.day,
        first_month=month_name(first.month),
        last=last.day,
        month=month,
    )


def hardening(days: int) -> str:
    """Say that it does nothing but harden for days."""
    return say("hardens for {days} days", days=days)


def hardening_told(days: tuple[Day, ...], step: Step) -> str:
    """Tell days of mere hardening for a screen reader."""
    return say(
        "{row}: hardens for {days} days after step {number}, {step}",
        row=row_name(days),
        days=len(days),
        number=step.number,
        step=step.title,
    )
