"""Sittings as they were left, written down beside the store: the photo of the cards, its marks.

What is read off a card is kept with the job. The photo, the grey and the boxes on the cards are no
edit of a job, and yet nobody wants to mark twenty cards again after a crash.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from swatchwright.acts.file_stamp import Stamp
from swatchwright.acts.job_bench import scaled
from swatchwright.acts.last_job import last_job
from swatchwright.acts.left_file import leave, left, left_photo
from swatchwright.language import mark
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD
from swatchwright.shelf.jobs import Marks
from swatchwright.shelf.store.store import Store
from swatchwright.values import Rect

__all__ = [
    "LastSitting",
    "SittingPhoto",
    "forget_sitting",
    "last_sitting",
    "photo_of_sitting",
    "remember_sitting",
]

_MEMORY = "last-sittings.json"
_MOST_SITTINGS, _MOST_BOXES, _MOST_STEP = 12, 400, 3

_OTHER = mark("{name} is not the photo that was marked here.")
_AGAIN = mark("Open the photo again and mark the grey and the cards in it.")


@dataclass(frozen=True, slots=True)
class LastSitting:
    """A sitting as it was left.

    Parameters
    ----------
    job
        Id of the job that it is of; None for none.
    path, stamp
        The file of the photo of the cards, as it was; empty and None where there was none.
    size
        Pixels of the photo, across and down.
    grey
        Where the grey was marked; None where it was not yet.
    reflectance
        What it reflects, 0-1.
    boxes
        Where cards were marked, each by the key of its card.
    step, in_view
        The step that was shown, 0 the first, and whether the sitting was in view.
    """

    job: str | None = None
    path: str = ""
    stamp: Stamp | None = None
    size: tuple[int, int] = (0, 0)
    grey: Rect | None = None
    reflectance: float = GREY_CARD
    boxes: tuple[tuple[str, Rect], ...] = ()
    step: int = 0
    in_view: bool = False


@dataclass(frozen=True, slots=True)
class _Sittings:
    """All that are remembered, the one that was left last first."""

    all: tuple[LastSitting, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class SittingPhoto:
    """The photo of the cards, opened anew, with its marks in its own pixels."""

    photo: Photo
    path: Path
    stamp: Stamp | None
    grey: Rect | None
    boxes: Mapping[str, Rect]


def remember_sitting(store: Store, sitting: LastSitting) -> None:
    """Write a sitting down beside the store, as the last of its job.

    One of no job is of the job that has just been begun for it, if there is one. The oldest are
    forgotten where there are many. Where nothing can be written, the next start has what is kept
    with the job, and no more.
    """
    told = sitting if sitting.job is not None else replace(sitting, job=last_job(store))
    others = (one for one in _remembered(store) if one.job not in {sitting.job, told.job})
    _write(store, (told, *others))


def forget_sitting(store: Store, job: str | None) -> None:
    """Forget the sitting of a job: its paints are kept, or it was given up."""
    there = _remembered(store)
    rest = tuple(one for one in there if one.job != job)
    if rest != there:
        _write(store, rest)


def last_sitting(store: Store, job: str | None) -> LastSitting | None:
    """Give the sitting of a job as it was left; None where there is none that is sound."""
    return next((one for one in _remembered(store) if one.job == job), None)


def photo_of_sitting(sitting: LastSitting) -> SittingPhoto | None:
    """Open the photo of a sitting with its marks; None where it had none.

    Raises
    ------
    MendableError
        If it cannot be opened, or the file is another by now.
    """
    opened = left_photo(sitting.path, sitting.stamp, other=_OTHER, again=_AGAIN)
    if opened is None:
        return None
    photo = opened.photo
    grey = None if sitting.grey is None else _laid(sitting.grey, sitting.size, photo)
    boxes = {key: _laid(box, sitting.size, photo) for key, box in sitting.boxes}
    there = {key: box for key, box in boxes.items() if box}
    return SittingPhoto(photo, opened.path, opened.stamp, grey, there)


def _laid(rect: Rect, size: tuple[int, int], photo: Photo) -> Rect | None:
    """Carry a box over to a photo, whose size may be another now; None where it is not in it."""
    here = photo.width, photo.height
    (laid,) = scaled(Marks((rect,)), size, here).grey
    return laid if laid.inside(*here) else None


def _remembered(store: Store) -> tuple[LastSitting, ...]:
    told = left(store, _MEMORY, _Sittings)
    return () if told is None else tuple(one for one in told.all if _is_sound(one))


def _is_sound(one: LastSitting) -> bool:
    sized = not one.path or min(one.size) > 0
    bounded = 0 < one.reflectance <= 1 and 0 <= one.step <= _MOST_STEP
    return sized and bounded and len(one.boxes) <= _MOST_BOXES


def _write(store: Store, sittings: tuple[LastSitting, ...]) -> None:
    leave(store, _MEMORY, _Sittings(sittings[:_MOST_SITTINGS]))
