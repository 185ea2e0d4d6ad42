"""The photo of the sample that is on the page: kept with the job as soon as it is there.

What is marked in it is kept here and not with the photo, for the same photo may lie on the bench.
"""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

from swatchwright.acts.job_bench import photo_to_lay
from swatchwright.acts.job_photos import add_photo, remove_photo
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import part_label
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.errors import MendableError
from swatchwright.photo.image import Photo
from swatchwright.shelf.jobs import Job, KeptPhoto, Marks
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store

__all__ = ["SHOT_PART", "keep_shot", "photo_of_shot", "shot_of"]

SHOT_PART = "sample-photo"
"""Name of the part of a job in which it is kept."""


def shot_of(job: Job | None) -> SampleShot | None:
    """Give the photo of the sample that a job keeps; None where it keeps none that can be read."""
    document = None if job is None else job.document(SHOT_PART)
    with suppress(MendableError):
        return None if document is None else document.read(SampleShot)
    return None


def photo_of_shot(job: Job | None, shot: SampleShot | None) -> KeptPhoto | None:
    """Give that photo as the job keeps it; None where it has gone."""
    photos = () if job is None or shot is None else job.photos
    return next((photo for photo in photos if shot and photo.hash == shot.photo), None)


def keep_shot(
    store: Store, id_: str, shot: SampleShot, *, path: Path | None, photo: Photo | None
) -> Changes:
    """Keep marks with a job, and the photo they are in if the job does not have it yet.

    The photo of the sample before goes, unless it serves the job otherwise.

    Parameters
    ----------
    store, id_
        Which job.
    shot
        What is to be kept.
    path, photo
        The file of the photo and the photo as it was read, where they are at hand.

    Raises
    ------
    MendableError
        If there is no such job, or the photo cannot be kept.
    """
    with store.editing("Keep a sample photo") as edit:
        job = job_rows.read_job(edit.connection, id_)
        before = shot_of(job)
        if path is not None and shot.photo not in {one.hash for one in job.photos}:
            add_photo(store, id_, path, photo=photo)
        if before is not None and before.photo != shot.photo:
            _let_go(store, job, photo_of_shot(job, before))
        keep_document(store, id_, SHOT_PART, shot)
        edit.call(part_label(SHOT_PART, job.title))
        return edit.changes


def _let_go(store: Store, job: Job, photo: KeptPhoto | None) -> None:
    """Take a photo from a job that serves for nothing else in it."""
    if photo is None or photo.marks != Marks() or photo_to_lay(job) == photo:
        return
    elsewhere = any(photo.hash in one.json for part, one in job.documents if part != SHOT_PART)
    if not elsewhere:
        remove_photo(store, job.id, photo.hash)
