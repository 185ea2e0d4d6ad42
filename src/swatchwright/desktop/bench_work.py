"""The bench's work that takes time, to be done off the interface's thread."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from time import monotonic

from swatchwright.acts.colours import PhotoColours, colours_of
from swatchwright.acts.file_stamp import stamp_of
from swatchwright.acts.recipes import Order, Recipes, recipes_for
from swatchwright.acts.references import from_a_metre, references_of
from swatchwright.acts.shelf_used import ShelfFrom, UsedShelf
from swatchwright.acts.wish import wishes_on
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.workers import Job
from swatchwright.mixing.wishes import Wishes
from swatchwright.photo.image import Photo
from swatchwright.shelf.csv_file import read_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour

__all__ = ["MixesAsked", "opening_shelf", "reading_colours", "searching"]

_PATIENCE = 30.0
"""Seconds that a proof may take in the background."""


@dataclass(frozen=True, slots=True)
class MixesAsked:
    """What mixes are asked for: the colour, the paints, how many of them and how many ml."""

    wanted: KnownColour
    shelf: Shelf
    wishes: Wishes
    most_paints: int
    volume: float


def reading_colours(photo: Photo, marks: Marks) -> Callable[[Job], PhotoColours]:
    """Give the work of reading the colours of a photo by its marks."""

    def work(_: Job) -> PhotoColours:
        found = colours_of(
            photo,
            grey=marks.grey,
            reflectance=marks.reflectance,
            references=references_of(marks.references),
            light=marks.light,
            area=marks.cloth,
        )
        return from_a_metre(found) if marks.metre else found

    return work


def searching(asked: MixesAsked, *, proven: bool = False) -> Callable[[Job], Recipes]:
    """Give the work of finding mixes, and of proving that little is better.

    A proof that takes too long is given up: it would only keep the machine busy.
    """
    wishes = wishes_on(asked.shelf, asked.wishes)

    def work(job: Job) -> Recipes:
        end = monotonic() + _PATIENCE
        return recipes_for(
            asked.wanted,
            asked.shelf,
            most_paints=asked.most_paints,
            volume=asked.volume,
            order=Order.PAINTER,
            wishes=wishes,
            proven=proven,
            progress=job.progress,
            stopped=lambda: job.stopped() or (proven and monotonic() > end),
        )

    return work


def opening_shelf(path: Path) -> Callable[[Job], tuple[Shelf, UsedShelf]]:
    """Give the work of reading a shelf file, and of noting which it was."""

    def work(_: Job) -> tuple[Shelf, UsedShelf]:
        used = UsedShelf(ShelfFrom.FILE, str(path.absolute()), stamp_of(path))
        return read_shelf(path), used

    return work
