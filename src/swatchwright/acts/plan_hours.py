"""How many hours of work the plan of a job comes to, for a price."""

from __future__ import annotations

from swatchwright.acts.piece_job import FORM_PART, PIECE_PART
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_job import FINISH_PART, PLAN_PART, plan_of_job
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf

__all__ = ["plan_hours", "plan_said_by"]

_MINUTES = 60


def plan_hours(job: Job, shelf: Shelf) -> float | None:
    """Give the hours of work of a job's plan, to the tenth that a plan tells.

    Parameters
    ----------
    job
        The job.
    shelf
        The paints that are in use.

    Returns
    -------
    float | None
        Hours with the hands at work, waits left out. None where the job has no plan, or one that
        cannot be made yet, as where old paint may hold lead and that is not answered.
    """
    try:
        order = plan_of_job(job, shelf)
        hours = 0.0 if order is None else plan_for(order).plan.hands_on / _MINUTES
    except MendableError:
        return None
    return round(hours, 1) or None


def plan_said_by(job: Job) -> tuple[object, ...]:
    """Give what the hours go by: they are the same while this is."""
    parts = (PLAN_PART, FINISH_PART, PIECE_PART, FORM_PART)
    kept: tuple[KeptRecipe, ...] = job.recipes
    return (job.id, kept, *(job.document(part) for part in parts))
