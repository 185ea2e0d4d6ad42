"""A calendar file, read by a parser that is not the one that wrote it (vobject)."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

import pytest
import vobject
from hypothesis import given, settings

from swatchwright.piece.work.calendar import calendar_of
from swatchwright.piece.work.order import PlanOrder
from swatchwright.piece.work.plan import Plan, plan_of
from unit.piece.made import full_work, work
from unit.piece.work.test_laws import orders, planned

STAMP = datetime(2026, 11, 25, 12, tzinfo=UTC)


def events(plan: Plan) -> list[Any]:
    """Write a plan and read its events back."""
    text = calendar_of(plan, stamp=STAMP).decode("utf-8")
    return list(vobject.readOne(text).contents.get("vevent", []))


@settings(max_examples=40)
@given(orders)
def test_every_time_of_work_is_an_event(order: PlanOrder) -> None:
    """Another parser finds each session with its begin and end, local and without a zone."""
    plan = planned(order)
    if plan is None:
        return
    sessions = [(s.start, s.end) for step in plan.steps for s in step.sessions]
    found = [(e.dtstart.value, e.dtend.value) for e in events(plan)]
    assert all(begin.tzinfo is None for begin, _ in found)
    assert [
        (a.isoformat(timespec="minutes"), b.isoformat(timespec="minutes")) for a, b in found
    ] == sessions
    assert len({e.uid.value for e in events(plan)}) == len(sessions)


def test_what_an_event_says() -> None:
    """An event names piece and step, and tells how, how long to wait and what can hurt."""
    plan = plan_of(full_work())
    by_title = {e.summary.value: e.description.value for e in events(plan)}
    (wax,) = [text for title, text in by_title.items() if title == "table: Wax, coat 1"]
    assert "thin film of wax" in wax
    assert "Then wait 0.5 h (common practice, no source)." in wax
    assert "Take care (oily rags): Never pile them." in wax


def test_a_name_with_signs_of_the_format() -> None:
    """Commas, semicolons, backslashes and letters of other scripts come back as they were."""
    plan = plan_of(work(name="chest; oak, Ünü \\ 2"))
    assert events(plan)[0].summary.value.startswith("chest; oak, Ünü \\ 2: ")


def test_no_line_is_too_long() -> None:
    """Every line has at most 75 octets and ends with CR LF (RFC 5545, section 3.1)."""
    data = calendar_of(plan_of(full_work()), stamp=STAMP)
    assert data.endswith(b"\r\n")
    assert max(len(line) for line in data.split(b"\r\n")) <= 75


def test_the_same_plan_is_the_same_file() -> None:
    """Written again at the same time it is the same to the byte, so its events stay the same."""
    first, second = (calendar_of(plan_of(work()), stamp=STAMP) for _ in range(2))
    assert first == second
    later = calendar_of(plan_of(work()), stamp=STAMP.replace(year=2027))
    uids = [line for line in later.splitlines() if line.startswith(b"UID")]
    assert uids == [line for line in first.splitlines() if line.startswith(b"UID")]


def test_without_a_stamp_it_is_now() -> None:
    """Written without a time it carries the present one, in UTC as the format asks."""
    text = calendar_of(plan_of(work())).decode("utf-8")
    stamp = vobject.readOne(text).vevent.dtstamp.value
    assert abs(datetime.now(UTC) - stamp).total_seconds() < 3600


@pytest.mark.parametrize("key", ["version", "prodid"])
def test_it_says_what_it_is(key: str) -> None:
    """A calendar needs a version and a producer (RFC 5545, section 3.6)."""
    assert key in vobject.readOne(calendar_of(plan_of(work())).decode("utf-8")).contents
