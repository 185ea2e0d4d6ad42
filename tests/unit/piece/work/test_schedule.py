"""Tasks on days: nights, weekends, month ends, and work that goes on the next day."""

from __future__ import annotations

import pytest

from swatchwright.errors import MendableError
from swatchwright.piece.work.order import Week, Which
from swatchwright.piece.work.schedule import Session, dated
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Wait


def task(kind: StepKind, minutes: float, wait: float = 0, *, with_next: bool = False) -> Task:
    """Give a task of so many minutes."""
    top = Which.UNDERSIDE
    return Task(kind, "x", "x", minutes, Wait(wait), top, with_next=with_next)


def test_a_coat_is_not_parted_by_the_evening() -> None:
    """A coat of two hours that would begin at 16:00 begins the next morning."""
    tasks = [task(StepKind.SAND, 420), task(StepKind.COAT, 120)]
    sanded, coat = dated(tasks, "2026-12-01", Week())
    assert sanded[1:] == ("2026-12-01T09:00", "2026-12-01T16:00")
    assert coat[1:] == ("2026-12-02T09:00", "2026-12-02T11:00")


def test_sanding_goes_on_after_the_weekend() -> None:
    """Ten hours of sanding from a Friday morning: eight that day, two on Monday."""
    ((sessions, _, _),) = dated([task(StepKind.SAND, 600)], "2026-12-04", Week())
    assert sessions == (
        Session("2026-12-04T09:00", "2026-12-04T17:00"),
        Session("2026-12-07T09:00", "2026-12-07T11:00"),
    )


def test_drying_goes_on_at_night() -> None:
    """What waits 16 hours from 16:00 may go on at 9:00 the next day."""
    tasks = [task(StepKind.COAT, 420, 16 * 60), task(StepKind.COAT, 30)]
    assert dated(tasks, "2026-12-01", Week())[1][1] == "2026-12-02T09:00"


@pytest.mark.parametrize(
    ("start", "then"),
    [
        ("2028-02-28", "2028-02-29T09:00"),
        ("2027-02-26", "2027-03-01T09:00"),
        ("2026-12-31", "2027-01-01T09:00"),
    ],
    ids=["a leap day", "February into March over a weekend", "the year's end"],
)
def test_months_end(start: str, then: str) -> None:
    """A day later is the next day of the calendar, or the next that is worked on."""
    tasks = [task(StepKind.COAT, 30, 16 * 60), task(StepKind.COAT, 30)]
    assert dated(tasks, start, Week())[1][1] == then


def test_clocks_that_change_do_not_move_it() -> None:
    """Over the night of 28 March 2027, when clocks change in much of Europe, nine stays nine."""
    tasks = [task(StepKind.COAT, 30, 24 * 60), task(StepKind.COAT, 30)]
    every_day = Week(days=tuple(range(7)))
    assert dated(tasks, "2027-03-27", every_day)[1][1] == "2027-03-28T09:30"


def test_a_start_on_a_day_off() -> None:
    """A plan from a Saturday begins on Monday."""
    assert dated([task(StepKind.COAT, 30)], "2026-12-05", Week())[0][1] == "2026-12-07T09:00"


def test_buffing_stays_with_its_wax() -> None:
    """Wax that could be put on at 16:00 but not buffed by 17:00 waits for the morning."""
    tasks = [
        task(StepKind.SAND, 420),
        task(StepKind.CLEAR, 30, 30, with_next=True),
        task(StepKind.BUFF, 20),
    ]
    _, wax, buff = dated(tasks, "2026-12-01", Week())
    assert wax[1:] == ("2026-12-02T09:00", "2026-12-02T09:30")
    assert buff[1] == "2026-12-02T10:00"


def test_mere_waiting_has_no_session() -> None:
    """What takes no hands begins at once, at any hour, and is over at once."""
    tasks = [task(StepKind.COAT, 480), task(StepKind.CURE, 0, 60)]
    assert dated(tasks, "2026-12-01", Week())[1] == ((), "2026-12-01T17:00", "2026-12-01T17:00")


def test_longer_than_a_day() -> None:
    """A coat of nine hours does not fit into a day of eight."""
    with pytest.raises(MendableError, match=r"9\.0 hours in one go"):
        dated([task(StepKind.COAT, 540)], "2026-12-01", Week())
