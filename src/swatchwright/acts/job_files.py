"""Send a job as one file, bring one in, and bring over what a damaged store still holds."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from swatchwright.acts.job_bench import without_places
from swatchwright.acts.labels import BRING_IN, RESCUE
from swatchwright.language import say, say_count
from swatchwright.shelf.job_file import SUFFIX, JobFile, read_job_file, write_job_file
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.kept import keep, take
from swatchwright.shelf.store.rescue import rescue
from swatchwright.shelf.store.store import Store

__all__ = ["export_job", "import_job", "rescue_store"]


def export_job(store: Store, id_: str, path: Path | None = None) -> Path:
    """Write a job, with its photos and its paints as they were, to one file.

    Parameters
    ----------
    store, id_
        Which job.
    path
        The file; one named after the job, in the folder of the moment, if None.

    Returns
    -------
    The file.

    Raises
    ------
    MendableError
        If there is no such job, something of it is damaged, or it cannot be written there.
    """
    with store.reading() as connection:
        job = job_rows.read_job(connection, id_)
        paints = {p.frozen for recipe in job.recipes for p in recipe.paints}
        photos = {photo.copy for photo in job.photos}
        file = JobFile(
            # Where a file lay on this machine is nobody else's business.
            without_places(job),
            {hash_: take(connection, hash_) for hash_ in sorted(paints)},
            {hash_: take(connection, hash_) for hash_ in photos},
        )
    path = Path(f"{id_}{SUFFIX}") if path is None else path
    write_job_file(file, path)
    return path


def import_job(store: Store, path: Path) -> Changes:
    """Bring in a job from a file, as a new one; its paints stay its own and do not go on the shelf.

    Raises
    ------
    MendableError
        If it is not a job file, is damaged, or holds what no job holds.
    """
    file = read_job_file(path)
    with store.editing(BRING_IN.format(job=file.job.title, file=path.name)) as edit:
        for data in file.paints.values():
            keep(edit, "paint", data)
        for data in file.photos.values():
            keep(edit, "photo", data)
        id_ = file.job.id
        taken = edit.connection.execute("SELECT 1 FROM jobs WHERE id = ?", (id_,)).fetchone()
        if taken:
            id_ = job_rows.free_id(edit.connection, file.job.title)
            edit.warn(
                say("A job {old} was there already; this one is {new}.", old=file.job.id, new=id_)
            )
        batches = tuple(
            replace(batch, poured=tuple(replace(p, drawn=0.0) for p in batch.poured))
            for batch in file.job.batches
        )
        # Nor does a job from elsewhere name files to be opened here.
        job_rows.add_job(edit, replace(without_places(file.job), id=id_, batches=batches))
        return edit.changes


def rescue_store(store: Store, path: Path) -> Changes:
    """Bring over the jobs and paints that can still be read of a damaged store.

    The warnings of what is given back say how much came and how much did not.

    Raises
    ------
    MendableError
        If it cannot be opened, or nothing can be read of it.
    """
    with store.editing(RESCUE.format(file=path.name)) as edit:
        found = rescue(edit, path)
        came, lost = _told(found.jobs, found.paints), _told(found.lost_jobs, found.lost_paints)
        edit.warn(say("Brought over: {came}.", came=came))
        if found.lost_jobs or found.lost_paints:
            edit.warn(
                say(
                    "Could not be read: {lost}. Keep the damaged file; a backup may have them.",
                    lost=lost,
                )
            )
        edit.warn(say("Look them through: photos and recipes that were damaged are left out."))
        return edit.changes


def _told(jobs: int, paints: int) -> str:
    """Say how many of each, as in “1 job and 2 paints”."""
    return say(
        "{first} and {last}",
        first=say_count("{count} job", "{count} jobs", jobs),
        last=say_count("{count} paint", "{count} paints", paints),
    )
