"""Which job was on the bench last, written down beside the store for the next start."""

from __future__ import annotations

import json
from contextlib import suppress

from swatchwright.acts.whole_file import write_whole
from swatchwright.errors import MendableError
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.store import Store

__all__ = ["last_job", "remember_job"]

_MEMORY = "last-job.json"


def remember_job(store: Store, id_: str | None) -> None:
    """Write down beside the store which job is on the bench, to be laid there at the next start.

    Where that cannot be written, the next start begins with an empty bench, and nothing is lost.
    """
    with suppress(MendableError):
        write_whole(store.path.with_name(_MEMORY), json.dumps({"job": id_}).encode())


def last_job(store: Store) -> str | None:
    """Give the job that was on the bench last, if it still is kept."""
    try:
        told = json.loads(store.path.with_name(_MEMORY).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None
    id_ = told.get("job") if isinstance(told, dict) else None
    with store.reading() as connection:
        kept = {line.id for line in job_rows.read_lines(connection)}
    return id_ if id_ in kept else None
