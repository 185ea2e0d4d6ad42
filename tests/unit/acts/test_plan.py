"""Planning the work on a piece."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest
import vobject

from swatchwright.acts.plan import faces_of, plan_for, save_calendar
from swatchwright.errors import MendableError
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.days import days_of
from swatchwright.piece.work.order import Which
from swatchwright.piece.work.plan import plan_of
from unit.piece.made import work


def test_a_plan_comes_with_its_days() -> None:
    """The act gives the plan and the days that picture it."""
    made = plan_for(work())
    assert made.plan == plan_of(work())
    assert made.days == days_of(made.plan, work().week)


def test_faces_by_the_piece() -> None:
    """A table is painted from below as well, a chest is not, and a frame lies flat."""
    assert Which.UNDERSIDE in faces_of(common_piece(Kind.CONSOLE_TABLE))
    assert Which.UNDERSIDE not in faces_of(common_piece(Kind.CHEST_OF_DRAWERS))
    assert faces_of(common_piece(Kind.MIRROR_FRAME)) == (Which.FRONT,)


def test_a_calendar_is_saved(tmp_path: Path) -> None:
    """The file is read by another parser, with an event for every time of work."""
    plan = plan_for(work()).plan
    path = tmp_path / "plan.ics"
    save_calendar(plan, path, stamp=datetime(2026, 11, 25, tzinfo=UTC))
    found = vobject.readOne(path.read_bytes().decode())
    assert len(found.contents["vevent"]) == sum(len(step.sessions) for step in plan.steps)


def test_a_calendar_that_cannot_be_written(tmp_path: Path) -> None:
    """A folder that is not there is named."""
    with pytest.raises(MendableError, match="cannot be written"):
        save_calendar(plan_for(work()).plan, tmp_path / "no" / "plan.ics")
