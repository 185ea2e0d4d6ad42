"""Plan the work on a piece, day by day, and put it into a calendar."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.piece.names import side_word, zone_word
from swatchwright.piece.part import Piece
from swatchwright.piece.work.calendar import calendar_of
from swatchwright.piece.work.days import Day, days_of
from swatchwright.piece.work.order import PlanOrder, Which
from swatchwright.piece.work.plan import Plan, Step, plan_of
from swatchwright.piece.work.seen import painted_sides

__all__ = ["PlannedWork", "faces_of", "plan_for", "save_calendar", "titled"]


@dataclass(frozen=True, slots=True)
class PlannedWork:
    """A plan, and its days as a picture of them needs them."""

    plan: Plan
    days: tuple[Day, ...]


def plan_for(order: PlanOrder) -> PlannedWork:
    """Plan the work.

    Raises
    ------
    MendableError
        If what is on the piece may hold lead and that is not answered, paint would not dry, or
        the order cannot be.
    """
    plan = plan_of(order)
    return PlannedWork(plan, days_of(plan, order.week))


def titled(step: Step) -> str:
    """Tell what a step does, and on which sides.

    Of a part that is called as its only side, as a top, that is not said twice.
    """
    sides = ", ".join(side_word(face.value) for face in step.faces)
    parts = ", ".join(zone_word(part) for part in step.parts)
    return f"{step.title} ({sides})" if sides and sides != parts else step.title


def faces_of(piece: Piece) -> tuple[Which, ...]:
    """Give the sides that are painted of a piece, for a plan."""
    return painted_sides(piece)


def save_calendar(plan: Plan, path: Path, *, stamp: datetime | None = None) -> None:
    """Write a plan to an iCalendar file.

    Parameters
    ----------
    plan
        The plan.
    path
        Where to, usually ``.ics``.
    stamp
        When it is written, with its zone; now if None.

    Raises
    ------
    MendableError
        If the file cannot be written.
    """
    try:
        path.write_bytes(calendar_of(plan, stamp=stamp))
    except OSError as error:
        raise MendableError(
            say("{file} cannot be written ({why}).", file=path, why=error.strerror),
            say("Name a file in a folder of yours."),
        ) from error
