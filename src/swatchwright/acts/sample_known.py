"""Which paints the samples of a job taught: the same tins, better known than before.

A paint that has learnt from a sample is other numbers than the paint that a recipe was made of, and
yet the same tin. So the job remembers what each was before and after, by fingerprint, and whoever
compares a recipe with the shelf can tell it from another paint.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

from swatchwright.language import listed, say, say_count
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.kept import fingerprint
from swatchwright.shelf.store.paint_rows import paint_bytes

__all__ = ["TaughtPaint", "known_to", "noted", "same_tin", "taught_lines"]


@dataclass(frozen=True, slots=True)
class TaughtPaint:
    """A paint that has learnt from the samples of a job.

    Parameters
    ----------
    id
        As on the shelf.
    was, now
        Fingerprints of the paint before it learnt, and after.
    sample
        The number of the last sample that it learnt from.
    """

    id: str
    was: str
    now: str
    sample: int


def noted(before: Shelf, after: Shelf, sample: int) -> tuple[TaughtPaint, ...]:
    """Note which paints of a shelf have learnt from the samples up to one of this number."""
    pairs = zip(before.paints, after.paints, strict=True)
    marks = [(new.id, _mark_of(old), _mark_of(new)) for old, new in pairs if new is not old]
    return tuple(TaughtPaint(id_, was, now, sample) for id_, was, now in marks if was != now)


def known_to(shelf: Shelf, taught: Sequence[TaughtPaint]) -> float:
    """Give the number of the last sample that the paints of a shelf have learnt from.

    A shelf that was taught is on the bench for now: opened again, its paints may be what they were
    before. Infinite where no paint is as it was before it was taught.
    """
    known = inf
    for id_ in {one.id for one in taught}:
        own = [one for one in taught if one.id == id_]
        here = next((_mark_of(paint) for paint in shelf.paints if paint.id == id_), "")
        if here in {one.was for one in own}:
            known = min(known, max((one.sample for one in own if one.now == here), default=0))
    return known


def same_tin(was: Paint, now: Paint, taught: Sequence[TaughtPaint]) -> int | None:
    """Tell whether a paint of the shelf is the tin of the recipe, as far as samples changed it.

    Parameters
    ----------
    was, now
        The paint as the recipe has it, and as the shelf does.
    taught
        What the samples of the job taught.

    Returns
    -------
    The number of the sample since which it is better known; 0 where the shelf has not learnt what
    the recipe knows; None where the samples do not lead from one to the other.
    """
    own = [one for one in taught if one.id == was.id == now.id]
    if not own:
        return None
    before, after = _mark_of(was), _mark_of(now)
    return _learnt(own, before, after) or (0 if _learnt(own, after, before) else None)


def taught_lines(same: Sequence[tuple[str, int]]) -> tuple[str, ...]:
    """Say which paints are the same tins, better known or not yet so.

    Parameters
    ----------
    same
        Names of paints, each with what `same_tin` tells of it.
    """
    told = []
    for number in sorted({sample for _, sample in same}):
        names = [say("“{name}”", name=name) for name, sample in same if sample == number]
        told.append(_better(names, number) if number else _not_yet(names))
    return tuple(told)


def _better(names: Sequence[str], number: int) -> str:
    return say_count(
        "{paints} is the same tin, better known since sample {number}: the recipe stays as it is.",
        "{paints} are the same tins, better known since sample {number}: the recipe stays as it "
        "is.",
        len(names),
        paints=listed(names),
        number=number,
    )


def _not_yet(names: Sequence[str]) -> str:
    return say_count(
        "{paints} is the same tin; the shelf in use has not learnt from the samples of this job.",
        "{paints} are the same tins; the shelf in use has not learnt from the samples of this job.",
        len(names),
        paints=listed(names),
    )


def _learnt(own: Sequence[TaughtPaint], before: str, after: str) -> int:
    """Give the sample by which one state of a paint became the other; 0 where it did not."""
    reached, last = {before}, 0
    for one in own:
        if one.was in reached:
            reached.add(one.now)
            last = one.sample if one.now == after else last
    return last if after in reached else 0


def _mark_of(paint: Paint) -> str:
    return fingerprint(paint_bytes(paint))
