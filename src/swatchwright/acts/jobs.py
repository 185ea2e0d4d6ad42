"""Keep jobs: begin, change, find, copy, remove, and take any of it back.

Every act that writes is one edit that can be undone, and says what it changed.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import isfinite
from pathlib import Path
from typing import Any

from swatchwright.acts import labels
from swatchwright.acts.kept_words import COPIED_FROM
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.job_limits import check_text
from swatchwright.shelf.jobs import Document, Job, JobLine, Note, Status, WantedColour
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes, EditLine
from swatchwright.shelf.store.opening import open_store
from swatchwright.shelf.store.search import Near, ids_with, nearest
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

__all__ = [
    "LIKE_WITHIN",
    "Changes",
    "EditLine",
    "FoundJob",
    "JobLine",
    "Store",
    "change_job",
    "copy_job",
    "edits",
    "find_jobs",
    "id_of",
    "job_of",
    "keep_document",
    "list_jobs",
    "new_job",
    "note_job",
    "open_jobs",
    "redo",
    "remove_job",
    "status_of",
    "undo",
    "want_colours",
]

LIKE_WITHIN = 6.0
"""CIEDE2000 up to which a colour is taken to be like another when jobs are looked for."""


@dataclass(frozen=True, slots=True)
class FoundJob:
    """A job that was found, and where it was sought by colour, its colour that is nearest."""

    line: JobLine
    near: Near | None = None


# --- looking -------------------------------------------------------------------------------------


def open_jobs(path: Path | None = None) -> Store:
    """Open the store of shelf and jobs, making it if it is not there.

    Raises
    ------
    MendableError
        If it cannot be opened; what to do is said.
    """
    return open_store(path)


def id_of(store: Store, typed: str) -> str:
    """Give the id of the job meant by an id or its beginning.

    Raises
    ------
    MendableError
        If none or several begin like that.
    """
    with store.reading() as connection:
        return job_rows.full_id(connection, typed)


def job_of(store: Store, id_: str) -> Job:
    """Give a job, whole.

    Raises
    ------
    MendableError
        If there is none of that id.
    """
    with store.reading() as connection:
        return job_rows.read_job(connection, id_)


def list_jobs(store: Store, *, status: Status | None = None) -> tuple[JobLine, ...]:
    """List the jobs, the one changed last first, all or those that have come so far."""
    with store.reading() as connection:
        lines = job_rows.read_lines(connection)
    return lines if status is None else tuple(line for line in lines if line.status is status)


def find_jobs(
    store: Store,
    *,
    text: str = "",
    piece: str = "",
    client: str = "",
    like: Lab | None = None,
    within: float = LIKE_WITHIN,
) -> tuple[FoundJob, ...]:
    """Find jobs by words, by a colour, or by both.

    Parameters
    ----------
    store
        Where they are.
    text
        Words that stand anywhere in a job: piece, client, brief, notes, paints, zones.
    piece, client
        Words of the title or of the client alone.
    like
        A colour; jobs that wanted or chose one near it are found, the nearest first.
    within
        How near, CIEDE2000, above 0 and up to 100.

    Raises
    ------
    MendableError
        If `within` is out of range.
    """
    if not (isfinite(within) and 0 < within <= 100):
        raise MendableError(
            say("A colour within {within:g} was asked for.", within=within),
            say("Ask for one within 1 to 100."),
        )
    with store.reading() as connection:
        ids = ids_with(connection, text=text, title=piece, client=client)
        if like is None:
            lines = job_rows.read_lines(connection)
            return tuple(FoundJob(line) for line in lines if ids is None or line.id in ids)
        near = [n for n in nearest(connection, like, within) if ids is None or n.job in ids]
        if not near:
            return ()
        lines = job_rows.read_lines(connection, tuple(n.job for n in near))
        return tuple(FoundJob(line, n) for line, n in zip(lines, near, strict=True))


def edits(store: Store, *, most: int = 50) -> tuple[EditLine, ...]:
    """List what was done, the newest first, and whether it is undone."""
    return store.history(most)


def status_of(text: str) -> Status:
    """Read how far a job has come.

    Raises
    ------
    MendableError
        If it is not one of the words for that.
    """
    try:
        return Status(text.strip().lower())
    except ValueError as error:
        raise MendableError(
            say("“{text}” does not say how far a job has come.", text=text),
            say("Use one of: {names}.", names=", ".join(Status)),
        ) from error


# --- writing -------------------------------------------------------------------------------------


def new_job(
    store: Store, *, title: str, client: str = "", brief: str = "", room_light: str = ""
) -> Changes:
    """Begin a job; its id is in what is given back.

    Raises
    ------
    MendableError
        If the title is empty or a text too long.
    """
    check_text(title, "title", needed=True)
    with store.editing(labels.BEGIN.format(job=title.strip())) as edit:
        job = Job(
            id=job_rows.free_id(edit.connection, title),
            title=title.strip(),
            client=client.strip(),
            brief=brief.strip(),
            room_light=room_light.strip(),
            created=edit.made,
            changed=edit.made,
        )
        job_rows.add_job(edit, job)
        return edit.changes


def change_job(
    store: Store,
    id_: str,
    *,
    title: str | None = None,
    client: str | None = None,
    brief: str | None = None,
    room_light: str | None = None,
    status: Status | None = None,
) -> Changes:
    """Change what is written at the head of a job; what is None stays.

    Raises
    ------
    MendableError
        If there is no such job, the title is empty or a text too long.
    """
    texts = {"title": title, "client": client, "brief": brief, "room_light": room_light}
    given: dict[str, Any] = {n: text.strip() for n, text in texts.items() if text is not None}
    with store.editing("Change the head of a job") as edit:
        job = job_rows.read_job(edit.connection, id_)
        new = replace(job, **given, status=job.status if status is None else status)
        edit.call(labels.CHANGE_HEAD.format(job=new.title))
        job_rows.write_job(edit, job, new)
        return edit.changes


def note_job(store: Store, id_: str, text: str) -> Changes:
    """Write a note to a job.

    Raises
    ------
    MendableError
        If there is no such job or the note is empty or too long.
    """
    check_text(text, "note", most=20_000, needed=True)
    with store.editing("Note") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(labels.NOTE.format(job=job.title))
        notes = (*job.notes, Note(edit.made, text.strip()))
        job_rows.write_job(edit, job, replace(job, notes=notes))
        return edit.changes


def want_colours(store: Store, id_: str, wanted: tuple[WantedColour, ...]) -> Changes:
    """Write down which colours a job wants, each for a zone of the piece, in place of others.

    Raises
    ------
    MendableError
        If there is no such job or a colour cannot be.
    """
    with store.editing("Wanted colours") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(labels.WANTED.format(job=job.title))
        job_rows.write_job(edit, job, replace(job, wanted=wanted))
        return edit.changes


def keep_document(
    store: Store, id_: str, part: str, value: object | None, *, schema: int = 1
) -> Changes:
    """Keep a part of a job that is defined elsewhere: “piece”, “plan”, “finish”, “samples”.

    Parameters
    ----------
    store, id_
        Which job.
    part
        Name of the part.
    value
        Any value of frozen dataclasses, plain types and arrays; None takes the part away.
    schema
        Version of its layout.

    Raises
    ------
    MendableError
        If there is no such job, or the part has no fit name or is too large.
    """
    with store.editing("Part of a job") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(labels.part_label(part, job.title))
        document = None if value is None else Document.of(value, schema)
        job_rows.write_document(edit, job, part, document)
        return edit.changes


def copy_job(store: Store, id_: str, *, title: str | None = None, client: str = "") -> Changes:
    """Begin a job as a copy of another: its colours, recipes, photos and parts, not its batches.

    Raises
    ------
    MendableError
        If there is no such job or a text is too long.
    """
    with store.editing("Copy a job") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(labels.COPY.format(job=job.title))
        named = (title or job.title).strip()
        copy = replace(
            job,
            id=job_rows.free_id(edit.connection, named),
            title=named,
            client=client.strip() or job.client,
            status=Status.ASKED,
            created=edit.made,
            changed=edit.made,
            batches=(),
            notes=(Note(edit.made, COPIED_FROM.format(job=job.title, id=job.id)),),
        )
        job_rows.add_job(edit, copy)
        return edit.changes


def remove_job(store: Store, id_: str) -> Changes:
    """Take a job away; undo brings it back.

    Raises
    ------
    MendableError
        If there is no such job.
    """
    with store.editing("Remove a job") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(labels.REMOVE.format(job=job.title))
        job_rows.delete_job(edit, id_)
        return edit.changes


def undo(store: Store) -> Changes:
    """Take the last edit back, whatever it was and whenever it was made.

    Raises
    ------
    MendableError
        If there is nothing to undo.
    """
    return store.undo()


def redo(store: Store) -> Changes:
    """Bring back the edit that was undone last.

    Raises
    ------
    MendableError
        If there is nothing to redo.
    """
    return store.redo()
