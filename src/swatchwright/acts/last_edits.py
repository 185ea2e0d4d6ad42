"""Which edits of a job can be taken back at the next start: the last ones, if all are of that job.

The store can undo whatever was done last, to any job and by anybody. At a new start that may be
weeks old or of another piece: only what is seen on the bench once it is taken back is offered.
"""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.shelf.store import history
from swatchwright.shelf.store.store import Store

__all__ = ["MOST_RECALLED", "LastEdits", "last_edits"]

MOST_RECALLED = 20
"""How many edits are offered to be taken back."""


@dataclass(frozen=True, slots=True)
class LastEdits:
    """Edits of a job in plain words: what can be undone, and redone, in the order of doing so."""

    undo: tuple[str, ...] = ()
    redo: tuple[str, ...] = ()


def last_edits(store: Store, job: str) -> LastEdits:
    """Give the last edits of all, as far as they are of this job and nothing else.

    That it was begun is not among them: a new start does not offer to take a job away.
    """
    with store.reading() as connection:
        told = [
            (line, history.changes_of(connection, line.id, line.label))
            for line in history.lines(connection, history.MOST_EDITS)
        ]
    of_it = [line.id for line, changes in told if job in changes.jobs]
    begun = min(of_it, default=0)

    def run(*, undone: bool) -> tuple[str, ...]:
        labels: list[str] = []
        for line, changes in told if not undone else reversed(told):
            if line.undone is not undone:
                continue
            if changes.jobs != (job,) or changes.paints or line.id == begun:
                break
            labels.append(line.label)
        return tuple(labels[:MOST_RECALLED])

    return LastEdits(run(undone=False), run(undone=True))
