"""Keep the photos of a job: a reduced copy, what is marked, and by what the original is told."""

from __future__ import annotations

import hashlib
from dataclasses import replace
from io import BytesIO
from pathlib import Path

from swatchwright.acts.colours import open_photo
from swatchwright.acts.labels import ADD_PHOTO, MARK_PHOTO, REMOVE_PHOTO
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.image import Photo
from swatchwright.shelf.job_file import check_copy
from swatchwright.shelf.jobs import Job, KeptPhoto, Marks
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.kept import keep, take
from swatchwright.shelf.store.store import Store

__all__ = ["COPY_SIDE", "add_photo", "hash_of", "mark_photo", "photo_copy", "remove_photo"]

COPY_SIDE = 1600
"""Longest side of the reduced copy in pixels: enough to see the weave and the card."""

_QUALITY = 88


def add_photo(
    store: Store, id_: str, path: Path, *, marks: Marks | None = None, photo: Photo | None = None
) -> Changes:
    """Add a photo to a job; one that is there already gets the marks.

    Parameters
    ----------
    store, id_
        Which job.
    path
        The file of the photo.
    marks
        What is marked in it.
    photo
        The same photo, where it has been opened already.

    Raises
    ------
    MendableError
        If there is no such job, the photo cannot be used, or a mark is outside it.
    """
    opened = open_photo(path) if photo is None else photo
    copy = _reduced(opened)
    check_copy(copy)
    with store.editing("Add a photo") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(ADD_PHOTO.format(job=job.title))
        kept = KeptPhoto(
            hash=hash_of(path),
            name=opened.facts.name,
            size=opened.facts.bytes,
            path=str(path.absolute()),
            width=opened.width,
            height=opened.height,
            copy=keep(edit, "photo", copy),
            marks=Marks() if marks is None else marks,
        )
        others = {old.hash: old for old in job.photos}
        photos = tuple((others | {kept.hash: kept}).values())
        job_rows.write_job(edit, job, replace(job, photos=photos))
        return edit.changes


def mark_photo(store: Store, id_: str, hash_: str, marks: Marks) -> Changes:
    """Change what is marked in a photo of a job.

    Raises
    ------
    MendableError
        If there is no such job or photo, or a mark is outside it.
    """
    with store.editing("Mark a photo") as edit:
        job = job_rows.read_job(edit.connection, id_)
        photo = _photo(job, hash_)
        edit.call(MARK_PHOTO.format(job=job.title))
        photos = tuple(replace(p, marks=marks) if p is photo else p for p in job.photos)
        job_rows.write_job(edit, job, replace(job, photos=photos))
        return edit.changes


def remove_photo(store: Store, id_: str, hash_: str) -> Changes:
    """Take a photo from a job.

    Raises
    ------
    MendableError
        If there is no such job or photo.
    """
    with store.editing("Remove a photo") as edit:
        job = job_rows.read_job(edit.connection, id_)
        photo = _photo(job, hash_)
        edit.call(REMOVE_PHOTO.format(job=job.title))
        photos = tuple(p for p in job.photos if p is not photo)
        job_rows.write_job(edit, job, replace(job, photos=photos))
        return edit.changes


def photo_copy(store: Store, photo: KeptPhoto) -> bytes:
    """Give the reduced copy of a photo, as JPEG.

    Raises
    ------
    MendableError
        If it is missing or damaged.
    """
    with store.reading() as connection:
        return take(connection, photo.copy)


def _photo(job: Job, hash_: str) -> KeptPhoto:
    for photo in job.photos:
        if photo.hash == hash_:
            return photo
    raise MendableError(
        say("“{job}” has no such photo.", job=job.title),
        say("Choose one of those that the job shows."),
    )


def _reduced(photo: Photo) -> bytes:
    from PIL import Image

    written = BytesIO()
    picture = Image.fromarray(photo.preview(COPY_SIDE))
    picture.save(written, "JPEG", quality=_QUALITY, optimize=True)
    return written.getvalue()


def hash_of(path: Path) -> str:
    """Give the SHA-256 of a file.

    Raises
    ------
    MendableError
        If it cannot be read.
    """
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError as error:
        raise MendableError(
            say("“{file}” cannot be read any more.", file=path.name), say("Choose the photo again.")
        ) from error
