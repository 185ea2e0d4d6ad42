"""What lay on the bench last, written down beside the store for the next start.

A job keeps the photo and the wanted colour once a mix is kept with it. What is marked and picked
before that is no edit of a job, and yet nobody wants to mark it again after a crash.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass, field, replace
from pathlib import Path

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.colours import open_photo
from swatchwright.acts.file_stamp import Stamp, stamp_of
from swatchwright.acts.job_bench import BenchPhoto, laid_photo, scaled
from swatchwright.acts.last_job import last_job
from swatchwright.acts.recipes import DEFAULT_VOLUME
from swatchwright.acts.shelf_used import UsedShelf
from swatchwright.acts.whole_file import write_whole
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.wishes import Wishes
from swatchwright.shelf.jobs import Document, Job, Marks
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour

__all__ = ["LastBench", "last_bench", "photo_of_bench", "remember_bench", "stamp_of"]

_MEMORY = "last-bench.json"
_MOST_BYTES = 2**20
_MOST_VOLUME = 1e6


@dataclass(frozen=True, slots=True)
class LastBench:
    """A bench as it was left.

    Parameters
    ----------
    job
        Id of the job that was on it; None for none.
    path, stamp
        The file of the photo, as it was; empty and None where there was none.
    kept
        SHA-256 of the photo where the job keeps it; empty where it does not.
    size
        Pixels of the photo on the bench, across and down.
    marks
        What was marked in it, in these pixels.
    wanted
        The wanted colour; None for none.
    volume, most_paints, zone
        How much to mix, ml, of how many paints at the most, and for which zone.
    wishes
        What was asked of all mixes.
    shelf
        Which shelf was used; None where that was not written down.
    """

    job: str | None = None
    path: str = ""
    stamp: Stamp | None = None
    kept: str = ""
    size: tuple[int, int] = (0, 0)
    marks: Marks = field(default_factory=Marks)
    wanted: KnownColour | None = None
    volume: float = DEFAULT_VOLUME
    most_paints: int = 3
    zone: str = WHOLE_PIECE
    wishes: Wishes = field(default_factory=Wishes)
    shelf: UsedShelf | None = None


def remember_bench(store: Store, bench: LastBench) -> None:
    """Write a bench down beside the store.

    Where that cannot be written, the next start lays what is kept with the job, and no more.
    """
    with suppress(MendableError):
        write_whole(store.path.with_name(_MEMORY), Document.of(bench).json.encode())


def last_bench(store: Store) -> LastBench | None:
    """Give the bench as it was left, if the job that was on it is still the one to be laid."""
    file = store.path.with_name(_MEMORY)
    try:
        with file.open("rb") as opened:
            text = opened.read(_MOST_BYTES).decode()
        bench = Document(1, text).read(LastBench)
    except (OSError, ValueError, MendableError):
        return None
    sound = 0 < bench.volume <= _MOST_VOLUME and bench.most_paints in {2, 3}
    return bench if sound and bench.job == last_job(store) else None


def photo_of_bench(store: Store, bench: LastBench, job: Job | None) -> BenchPhoto | None:
    """Open the photo that was on the bench, with its marks; None where there was none.

    Raises
    ------
    MendableError
        If it cannot be opened, or the file is another by now.
    """
    photos = () if job is None else job.photos
    kept = next((photo for photo in photos if photo.hash == bench.kept), None)
    if kept is not None:
        marks = scaled(bench.marks, bench.size, (kept.width, kept.height))
        return laid_photo(store, replace(kept, marks=marks))
    if not bench.path:
        return None
    path = Path(bench.path)
    if bench.stamp is not None and stamp_of(path) not in {None, bench.stamp}:
        raise MendableError(
            say("{name} is not the photo that was on the bench.", name=path.name),
            say("Open the photo again and mark the card and the cloth."),
        )
    photo = open_photo(path)
    return BenchPhoto(photo, scaled(bench.marks, bench.size, (photo.width, photo.height)), path)
