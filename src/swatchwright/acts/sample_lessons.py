"""What samples taught the paints, kept so that nothing teaches twice and all can be taken back.

With a loop stands what each paint was before the samples taught it, and what it is since. Whoever
learns again begins from what it was, with all samples there are: the same samples come to the same
paints, however often they are taught.
"""

from __future__ import annotations

import base64
import hashlib
import json
import zlib
from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Covariance

__all__ = [
    "Lesson",
    "Stand",
    "evidence_mark",
    "is_whole",
    "learnt_since",
    "lessons_of",
    "put_as_taught",
    "settled",
    "stand_of",
    "taught_again",
    "untaught",
]

Floats = NDArray[np.floating[Any]]

_BANDS = WAVELENGTHS.size
_DOUBLE = np.dtype("<f8")
_ALIKE = 1e-4
"""Share by which K and S that were written to a file and read back may differ."""

_MOST_PACKED = 1 << 18
"""Bytes that a paint is unpacked to at the most: some hundred ways in which it may be off."""

_MOST_SETTLED = 24
"""Lessons of samples that were begun anew: the oldest are forgotten."""


class Stand(StrEnum):
    """How a paint stands to a lesson."""

    BEFORE = "before"
    AFTER = "after"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Lesson:
    """What the samples of a loop taught a paint.

    Parameters
    ----------
    id
        As on the shelf.
    was, now
        K, S and spread of the paint before, and since, packed.
    samples
        Marks of the samples that taught it.
    """

    id: str
    was: str
    now: str
    samples: tuple[str, ...]


def evidence_mark(
    shares: dict[str, float],
    how: str,
    difference: Sequence[float],
    covariance: Covariance,
) -> str:
    """Give a mark of what a sample says: the same mix that was seen just so tells it once.

    Parameters
    ----------
    shares
        The mix.
    how
        How it was compared.
    difference, covariance
        The sample less the cloth, and the uncertainty of that.
    """
    told = (
        sorted((id_, round(share, 4)) for id_, share in shares.items()),
        how,
        [round(v, 6) for v in difference],
        [[round(v, 6) for v in row] for row in covariance],
    )
    return hashlib.sha256(json.dumps(told).encode()).hexdigest()[:16]


def lessons_of(before: Shelf, after: Shelf, samples: Sequence[str]) -> tuple[Lesson, ...]:
    """Note what each paint was before and after it learnt; nothing of those that did not."""
    pairs = zip(before.paints, after.paints, strict=True)
    return tuple(
        Lesson(new.id, _packed(old), _packed(new), tuple(samples))
        for old, new in pairs
        if new is not old
    )


def learnt_since(before: Shelf, now: Shelf) -> tuple[Lesson, ...]:
    """Note what paints have learnt since a shelf was taken, from whatever samples.

    Parameters
    ----------
    before, now
        The paints as they were taken, and as they lie on the bench.
    """
    was = {paint.id: paint for paint in before.paints}
    pairs = [(was.get(paint.id), paint) for paint in now.paints]
    told = [
        Lesson(new.id, _packed(old), _packed(new), ())
        for old, new in pairs
        if old is not None and new is not old
    ]
    return tuple(one for one in told if one.was != one.now)


def taught_again(shelf: Shelf, lessons: Sequence[Lesson]) -> Shelf:
    """Give a shelf that was taken anew with what its paints had learnt, one lesson upon another.

    Paints that a lesson does not begin from, for they hold it already or are others by now, stay.
    """
    for lesson in lessons:
        shelf = put_as_taught(shelf, (), (lesson,))
    return shelf


def is_whole(lesson: Lesson) -> bool:
    """Tell whether a lesson that was read from a file can be taught."""
    try:
        kept = [_unpacked(lesson.was), _unpacked(lesson.now)]
    except (ValueError, zlib.error):
        return False
    values = [row for one in kept for row in one if row is not None]
    whole = all(bool(np.isfinite(row).all()) for row in values)
    return whole and all(bool((K >= 0).all() and (S > 0).all()) for K, S, _ in kept)


def stand_of(paint: Paint, lesson: Lesson) -> Stand:
    """Tell whether a paint is as it was before a lesson, as it is since, or another by now."""
    if _alike(paint, lesson.was):
        return Stand.BEFORE
    return Stand.AFTER if _alike(paint, lesson.now) else Stand.OTHER


def untaught(shelf: Shelf, lessons: Sequence[Lesson]) -> Shelf:
    """Give the shelf with each paint that holds a lesson as it was before."""
    return _changed(shelf, {one.id: (one.now, one.was) for one in lessons})


def put_as_taught(shelf: Shelf, here: Sequence[Lesson], there: Sequence[Lesson]) -> Shelf:
    """Give the shelf as other lessons left it, in place of those that are taken back.

    Parameters
    ----------
    shelf
        The paints; those that are others by now stay.
    here, there
        The lessons that they hold, and those that they are to hold.
    """
    held, wanted = ({one.id: one for one in lessons} for lessons in (here, there))
    turns = {}
    for id_ in held.keys() | wanted.keys():
        old, new = held.get(id_), wanted.get(id_)
        if old is not None:
            turns[id_] = (old.now, old.was if new is None else new.now)
        elif new is not None:
            turns[id_] = (new.was, new.now)
    return _changed(shelf, turns)


def settled(lessons: Sequence[Lesson], before: Sequence[Lesson]) -> tuple[Lesson, ...]:
    """Give the lessons that stay with the paints when the samples are begun anew."""
    return (*before, *lessons)[-_MOST_SETTLED:]


def _changed(shelf: Shelf, turns: dict[str, tuple[str, str]]) -> Shelf:
    """Turn each paint that is as the first of a pair tells into what the second tells."""
    paints = tuple(
        _as_packed(paint, turns[paint.id][1])
        if paint.id in turns and _alike(paint, turns[paint.id][0])
        else paint
        for paint in shelf.paints
    )
    same = all(new is old for new, old in zip(paints, shelf.paints, strict=True))
    return shelf if same else replace(shelf, paints=paints)


# --- packing -------------------------------------------------------------------------------------


def _packed(paint: Paint) -> str:
    rows = [paint.K, paint.S]
    if paint.spread is not None:
        rows.append(np.asarray(paint.spread).ravel())
    data = b"".join(np.ascontiguousarray(row, dtype=_DOUBLE).tobytes() for row in rows)
    kind = b"\0" if paint.spread is None else b"\1"
    return base64.b85encode(zlib.compress(kind + data, 1)).decode()


@lru_cache(maxsize=128)
def _unpacked(text: str) -> tuple[Floats, Floats, Floats | None]:
    opened = zlib.decompressobj()
    data = opened.decompress(base64.b85decode(text), _MOST_PACKED)
    if not opened.eof or len(data) <= 2 * _BANDS * _DOUBLE.itemsize:
        raise ValueError("not a packed paint")
    values = np.frombuffer(data, dtype=_DOUBLE, offset=1).astype(np.float64)
    values.setflags(write=False)
    K, S, rest = values[:_BANDS], values[_BANDS : 2 * _BANDS], values[2 * _BANDS :]
    return K, S, rest.reshape(-1, 2 * _BANDS) if data[:1] == b"\1" else None


def _as_packed(paint: Paint, text: str) -> Paint:
    K, S, spread = _unpacked(text)
    return replace(paint, K=K, S=S, spread=spread)


def _alike(paint: Paint, text: str) -> bool:
    K, S, spread = _unpacked(text)
    if not (np.allclose(paint.K, K, rtol=_ALIKE) and np.allclose(paint.S, S, rtol=_ALIKE)):
        return False
    if paint.spread is None or spread is None:
        return paint.spread is None and spread is None
    if paint.spread.shape != spread.shape:
        return False
    return bool(np.allclose(paint.spread, spread, rtol=_ALIKE, atol=1e-6))
