"""Bring over what can still be read of a damaged store."""

from __future__ import annotations

import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from pathlib import Path

import msgspec

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.jobs import Job
from swatchwright.shelf.store import job_rows, paint_rows
from swatchwright.shelf.store.kept import keep, take
from swatchwright.shelf.store.paint_rows import StockedPaint
from swatchwright.shelf.store.store import Edit

__all__ = ["Rescued", "rescue"]

_UNREADABLE = (sqlite3.Error, MendableError, msgspec.DecodeError, ValueError, TypeError)
_MOST_ROWS = 1_000_000


@dataclass(frozen=True, slots=True)
class Rescued:
    """What came over: jobs and paints, and how many of each were seen but could not be read."""

    jobs: int
    paints: int
    lost_jobs: int
    lost_paints: int


def rescue(edit: Edit, path: Path) -> Rescued:
    """Bring jobs and paints of a damaged store into the one that is being edited.

    The damaged file is only read. Paints whose id is on the shelf already stay as they are there;
    jobs whose id is taken get another. A photo or recipe whose picture or paints cannot be read is
    left out of its job.

    Raises
    ------
    MendableError
        If nothing at all can be read of it.
    """
    with _copied(path) as connection:
        ids = _ids(connection, "jobs")
        jobs = sum(_bring_job(edit, connection, id_) for id_ in ids)
        shelf = {stocked.paint.id for stocked in paint_rows.read_paints(edit.connection)}
        missing = [id_ for id_ in _ids(connection, "paints") if id_ not in shelf]
        paints = sum(_bring_paint(edit, connection, id_) for id_ in missing)
    if not jobs and not paints:
        raise MendableError(
            say("Nothing new can be read of {path}.", path=path),
            say("Put your last backup of the store in its place."),
        )
    return Rescued(jobs, paints, len(ids) - jobs, len(missing) - paints)


@contextmanager
def _copied(path: Path) -> Iterator[sqlite3.Connection]:
    """Open a copy, for SQLite mends a journal that was left behind, and the original is kept."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy.sqlite"
        try:
            shutil.copyfile(path, copy)
            for tail in ("-wal", "-shm"):
                with suppress(FileNotFoundError):
                    shutil.copyfile(path.with_name(path.name + tail), f"{copy}{tail}")
        except (OSError, ValueError) as error:
            raise MendableError(
                say("The damaged store {path} could not be opened.", path=path),
                say("Check its name and place."),
            ) from error
        connection = sqlite3.connect(copy, isolation_level=None)
        try:
            connection.execute("PRAGMA trusted_schema = OFF")
            yield connection
        finally:
            connection.close()


def _ids(connection: sqlite3.Connection, table: str) -> list[str]:
    """Give the ids of a table that are readable, stepping over the rows that are not."""
    found: list[str] = []
    # The index of the ids and the table itself lie in different places of the file.
    for query in (
        f"SELECT id FROM {table} NOT INDEXED ORDER BY row",  # noqa: S608
        f"SELECT id FROM {table} INDEXED BY sqlite_autoindex_{table}_1",  # noqa: S608
        f"SELECT id FROM {table} NOT INDEXED ORDER BY row DESC",  # noqa: S608
    ):
        with suppress(sqlite3.Error):
            for (id_,) in connection.execute(f"{query} LIMIT {_MOST_ROWS}"):
                found += [id_] if isinstance(id_, str) else []
    return list(dict.fromkeys(found))


def _bring_paint(edit: Edit, connection: sqlite3.Connection, id_: str) -> bool:
    try:
        (stocked,) = paint_rows.read_paints(connection, (id_,))
        paint_rows.check_paint(stocked.paint)
        ml = stocked.ml_left if isinstance(stocked.ml_left, float) else None
        paint_rows.write_paint(edit, StockedPaint(stocked.paint, ml, stocked.times))
    except _UNREADABLE:
        return False
    return True


def _bring_job(edit: Edit, connection: sqlite3.Connection, id_: str) -> bool:
    try:
        job = _with_what_is_there(edit, connection, job_rows.read_job(connection, id_))
        new_id = job_rows.free_id(edit.connection, id_)
        job_rows.add_job(edit, replace(job, id=new_id))
    except _UNREADABLE:
        return False
    return True


def _with_what_is_there(edit: Edit, connection: sqlite3.Connection, job: Job) -> Job:
    """Bring pictures and paints over, and leave out what has lost its own."""

    def brought(hash_: str, kind: str) -> bool:
        try:
            keep(edit, kind, take(connection, hash_))
        except _UNREADABLE:
            return False
        return True

    photos = tuple(photo for photo in job.photos if brought(photo.copy, "photo"))
    recipes = tuple(r for r in job.recipes if all(brought(p.frozen, "paint") for p in r.paints))
    return replace(job, photos=photos, recipes=recipes)
