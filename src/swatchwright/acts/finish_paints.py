"""The paints of a finish as they were when it was kept: next year's sheet reckons with them.

A shelf that is used for now is another one tomorrow, and a wash names its paints by their ids only.
So a finish is kept with its paints, as a recipe is, each of them whole.
"""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass

from swatchwright.acts.bench_shelf import shelf_in_use, shelf_of
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import part_label
from swatchwright.acts.plan_job import FINISH_PART
from swatchwright.acts.stock import kept_shelf
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.paint.paints import Paint
from swatchwright.shelf.job_limits import MOST_DOCUMENT
from swatchwright.shelf.jobs import Document, Job
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.paint_rows import paint_bytes, paint_from_bytes
from swatchwright.shelf.store.store import Store

__all__ = ["FINISH_PAINTS", "LaidPaints", "keep_finish", "paints_at_hand", "paints_of_finish"]

FINISH_PAINTS = "finish-paints"
"""The part of a job that holds the paints of its finish."""


@dataclass(frozen=True, slots=True)
class LaidPaints:
    """The paints of a finish, each whole, as JSON."""

    paints: tuple[str, ...] = ()


def keep_finish(store: Store, id_: str, stack: Stack, shelf: Shelf) -> Changes:
    """Keep what goes over the paint of a job, with the paints in it as they are now, in one edit.

    Parameters
    ----------
    store, id_
        Which job.
    stack
        What goes over the paint.
    shelf
        The paints in use; those that it lacks stay as they were kept before, or are taken from the
        kept shelf.

    Raises
    ------
    MendableError
        If there is no such job.
    """
    with store.editing("The finish") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(part_label(FINISH_PART, job.title))
        keep_document(store, id_, FINISH_PART, stack)
        laid = _laid(stack, _first((*shelf.paints, *paints_at_hand(store, job, shelf))))
        if laid is not None or job.document(FINISH_PAINTS) is not None:
            keep_document(store, id_, FINISH_PAINTS, laid)
        return edit.changes


def _laid(stack: Stack, known: dict[str, Paint]) -> LaidPaints | None:
    """Give the paints of a stack that are known; None where there are none or they are too many."""
    ids = dict.fromkeys(id_ for layer in stack.layers for id_, _ in layer.paints)
    laid = LaidPaints(tuple(paint_bytes(known[id_]).decode() for id_ in ids if id_ in known))
    fits = len(Document.of(laid).json) <= MOST_DOCUMENT
    return laid if laid.paints and fits else None


def paints_of_finish(job: Job) -> tuple[Paint, ...]:
    """Give the paints of a job's finish as they were kept; none where none are or can be read."""
    document = job.document(FINISH_PAINTS)
    with suppress(MendableError):
        if document is not None:
            texts = document.read(LaidPaints).paints
            return tuple(paint_from_bytes(text.encode()) for text in texts)
    return ()


def paints_at_hand(store: Store, job: Job, in_use: Shelf | None = None) -> tuple[Paint, ...]:
    """Give the paints that layers of a job are reckoned with, each id once.

    Those that are kept with its finish come first, then those of the shelf in use, then those that
    are kept.

    Parameters
    ----------
    store, job
        Which job.
    in_use
        As in `shelf_in_use`.
    """
    used, kept = shelf_in_use(store, in_use), shelf_of(kept_shelf(store))
    return tuple(_first((*paints_of_finish(job), *used.paints, *kept.paints)).values())


def _first(paints: Iterable[Paint]) -> dict[str, Paint]:
    """Give the first paint of each id."""
    found: dict[str, Paint] = {}
    for paint in paints:
        found.setdefault(paint.id, paint)
    return found
