"""What lay on the bench last, written down beside the store for the next start.

A job keeps the photo and the wanted colour once a mix is kept with it. What is marked and picked
before that is no edit of a job, and yet nobody wants to mark it again after a crash.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.file_stamp import Stamp
from swatchwright.acts.job_bench import BenchPhoto, laid_photo, scaled
from swatchwright.acts.last_job import last_job
from swatchwright.acts.left_file import MOST_LEFT, leave, left, left_photo
from swatchwright.acts.recipes import DEFAULT_VOLUME
from swatchwright.acts.sample_lessons import Lesson, is_whole
from swatchwright.acts.shelf_used import UsedShelf
from swatchwright.language import mark
from swatchwright.mixing.wishes import Wishes
from swatchwright.shelf.jobs import Job, Marks
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour

__all__ = ["LastBench", "last_bench", "photo_of_bench", "remember_bench"]

_MEMORY = "last-bench.json"
_MOST_VOLUME = 1e6
_LONGEST_PAGE = 40
_MOST_TAUGHT = MOST_LEFT // 2
"""Letters of lessons that are written down: more paints than a painter mixes samples of."""

_OTHER = mark("{name} is not the photo that was on the bench.")
_AGAIN = mark("Open the photo again and mark the card and the cloth.")


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
    page
        Key of the page that was in view; empty where that was not written down.
    taught
        What the paints of the shelf had learnt from samples; None where that was not written down.
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
    page: str = ""
    taught: tuple[Lesson, ...] | None = None


def remember_bench(store: Store, bench: LastBench) -> None:
    """Write a bench down beside the store.

    Where that cannot be written, the next start lays what is kept with the job, and no more.
    """
    long = sum(len(one.was) + len(one.now) for one in bench.taught or ()) > _MOST_TAUGHT
    leave(store, _MEMORY, replace(bench, taught=None) if long else bench)


def last_bench(store: Store) -> LastBench | None:
    """Give the bench as it was left, if the job that was on it is still the one to be laid."""
    bench = left(store, _MEMORY, LastBench)
    return (
        bench if bench is not None and _is_sound(bench) and bench.job == last_job(store) else None
    )


def _is_sound(bench: LastBench) -> bool:
    sized = not (bench.path or bench.kept) or min(bench.size) > 0
    asked = 0 < bench.volume <= _MOST_VOLUME and bench.most_paints in {2, 3}
    whole = all(is_whole(lesson) for lesson in bench.taught or ())
    return sized and asked and whole and len(bench.page) <= _LONGEST_PAGE


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
    opened = left_photo(bench.path, bench.stamp, other=_OTHER, again=_AGAIN)
    if opened is None:
        return None
    size = opened.photo.width, opened.photo.height
    return BenchPhoto(opened.photo, scaled(bench.marks, bench.size, size), opened.path)
