"""Dates and times of day are written in one way wherever they are told."""

from __future__ import annotations

from datetime import date, time
from typing import TYPE_CHECKING

import pytest
from babel.dates import format_date, format_time
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.language import ENGLISH, use_language
from swatchwright.language.dates import (
    clock,
    date_text,
    day_and_month,
    full_day,
    month_name,
    time_of_day,
    weekday_name,
)

if TYPE_CHECKING:
    from collections.abc import Iterator

DAYS = st.dates(date(1970, 1, 1), date(2100, 12, 31))


@pytest.fixture
def german() -> Iterator[None]:
    """Speak German for a test."""
    use_language("de")
    yield
    use_language(ENGLISH)


@given(DAYS)
def test_english_days_are_those_of_the_unicode_locales(day: date) -> None:
    """Names of days and months agree with CLDR, as babel has it for British English."""
    told = day.isoformat()
    # CLDR writes Sept, and a comma after the weekday since its release 38.
    names = (format_date(day, pattern, "en_GB") for pattern in ("EEE", "MMM"))
    weekday, month = (name.replace("Sept", "Sep") for name in names)
    assert day_and_month(told) == f"{weekday} {day.day} {month}"
    assert full_day(told) == f"{weekday} {day.day} {month} {day.year}"
    assert date_text(told) == format_date(day, "d MMMM y", "en_GB")


@given(DAYS)
def test_no_german_date_has_two_dots_together(day: date) -> None:
    """Each abbreviation has one dot, and a comma follows the weekday."""
    use_language("de")
    try:
        told = full_day(day.isoformat())
        short = day_and_month(f"{day}T09:00")
    finally:
        use_language(ENGLISH)
    weekday, month = format_date(day, "EEE", "de"), format_date(day, "MMM", "de")
    assert ".." not in told + short
    assert told == f"{weekday}, {day.day}. {month} {day.year}"
    assert short == f"{weekday}, {day.day}. {month}"


@given(DAYS, st.integers(0, 23), st.integers(0, 59))
def test_a_time_of_day_is_the_same_from_a_moment_and_from_its_minutes(
    day: date, hour: int, minute: int
) -> None:
    """A plan, its picture and the sheet write one and the same: 9:05, not 09:05."""
    told = time_of_day(f"{day}T{hour:02}:{minute:02}")
    assert told == clock(60 * hour + minute)
    assert told == format_time(time(hour, minute), "H:mm", locale="en_GB")


def test_what_is_no_date_stays_as_it_is() -> None:
    """A day that was typed as words is told as it was typed."""
    assert date_text("the first of March") == "the first of March"
    assert date_text("2026-13-01") == "2026-13-01"


@pytest.mark.usefixtures("german")
def test_german_names() -> None:
    """Months are cut as in German print, May and June not at all."""
    assert [month_name(month) for month in (5, 6, 11)] == ["Mai", "Juni", "Nov."]
    assert weekday_name(3) == "Do"
