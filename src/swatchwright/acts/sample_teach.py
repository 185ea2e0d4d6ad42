"""Keeping the samples of a job, and what they taught, as an edit that says what it was."""

from __future__ import annotations

from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import TEACH, part_label
from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop
from swatchwright.acts.sample_tried import loop_of
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store

__all__ = ["keep_samples"]


def keep_samples(store: Store, id_: str, loop: SampleLoop) -> Changes:
    """Keep the samples of a job; where the paints have just learnt from them, the edit says so.

    Parameters
    ----------
    store, id_
        Which job.
    loop
        Its samples.

    Raises
    ------
    MendableError
        If there is no such job.
    """
    with store.editing("Keep samples") as edit:
        job = job_rows.read_job(edit.connection, id_)
        there = loop_of(job)
        keep_document(store, id_, SAMPLES_PART, loop)
        same = there is not None and len(there.rounds) == len(loop.rounds)
        taught = same and there is not None and there.lessons != loop.lessons
        edit.call(TEACH.format(job=job.title) if taught else part_label(SAMPLES_PART, job.title))
        return edit.changes
