"""The hours of a plan are those that the plan tells, and none where there is no plan."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.acts.plan import plan_for
from swatchwright.acts.plan_hours import plan_hours, plan_said_by
from swatchwright.acts.plan_job import PLAN_PART, plan_of_job
from swatchwright.piece.work.order import Age, Surface
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store
from unit.piece.made import work


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


def test_as_the_plan_tells(store: Store) -> None:
    """The hours are the work of all steps, to a tenth; more coats take more of them."""
    id_ = new_job(store, title="A box").jobs[0]
    shelf = demo_shelf()
    assert plan_hours(job_of(store, id_), shelf) is None
    found = []
    for coats in (2, 4):
        keep_document(store, id_, PLAN_PART, work(coats=coats, own=("coats",)))
        job = job_of(store, id_)
        order = plan_of_job(job, shelf)
        assert order is not None
        steps = plan_for(order).plan.steps
        minutes = sum(step.hands_on for step in steps)
        hours = plan_hours(job, shelf)
        assert hours is not None
        assert hours == pytest.approx(minutes / 60, abs=0.05)
        found.append((hours, plan_said_by(job)))
    assert found[0][0] < found[1][0]
    assert found[0][1] != found[1][1]


def test_none_before_lead_is_answered(store: Store) -> None:
    """A plan that cannot be made yet offers no hours."""
    id_ = new_job(store, title="A box").jobs[0]
    plan = replace(work(), surface=Surface.PAINTED, age=Age.OLD)
    keep_document(store, id_, PLAN_PART, plan)
    assert plan_hours(job_of(store, id_), demo_shelf()) is None
