"""The job on the bench: which it is, what is kept of it, and edits of it that can be undone.

The store is read and written by one thread of its own, one edit after another, so that the window
never waits for a disk. Every edit is noted in the session's history.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import count
from typing import TypeVar

from PySide6.QtCore import QObject, Signal

from swatchwright.acts.jobs import (
    Changes,
    JobLine,
    Store,
    job_of,
    keep_document,
    list_jobs,
    new_job,
    open_jobs,
    redo,
    undo,
)
from swatchwright.desktop import words
from swatchwright.desktop.history import History
from swatchwright.desktop.workers import Workshop
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import Job

__all__ = ["Desk"]

T = TypeVar("T")
Act = Callable[[Store], Changes]


class Desk(QObject):
    """The job that is worked on, kept as it grows.

    Signals
    -------
    job_changed()
        Another job is on the bench, or something of this one was changed.
    jobs_changed()
        Some job was begun, changed or removed.
    failed(object)
        An act on the store could not be done, as a worker tells it.
    """

    job_changed = Signal()
    jobs_changed = Signal()
    failed = Signal(object)

    def __init__(self, history: History, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.history = history
        self.workshop = Workshop(self, threads=1)
        self.workshop.failed.connect(self.failed)
        self.job: Job | None = None
        self.jobs: tuple[JobLine, ...] = ()
        self.warnings: tuple[str, ...] = ()
        self._store: Store | None = None
        self._number = count()

    # --- reading ---------------------------------------------------------------------------------

    def ask(self, act: Callable[[Store], T], done: Callable[[T], None]) -> None:
        """Ask something of the store; `done` gets the answer on the interface thread."""
        self.workshop.start(
            f"store-{next(self._number)}", words.KEEPING, lambda _: act(self._open()), done
        )

    def part(self, name: str, kind: type[T]) -> T | None:
        """Give a part of the job that is kept as a document; None where there is none.

        A part that cannot be read is told of and counts as none.
        """
        document = None if self.job is None else self.job.document(name)
        if document is None:
            return None
        try:
            return document.read(kind)
        except MendableError as error:
            self.failed.emit(error)
            return None

    def refresh(self) -> None:
        """Read the list of jobs anew."""
        self.ask(list_jobs, self._listed)

    def _listed(self, jobs: tuple[JobLine, ...]) -> None:
        self.jobs = jobs
        self.jobs_changed.emit()

    def open_job(self, id_: str, then: Callable[[], None] | None = None) -> None:
        """Lay a job on the bench."""

        def done(job: Job) -> None:
            self.job = job
            self.job_changed.emit()
            if then is not None:
                then()

        self.ask(lambda store: job_of(store, id_), done)

    def put_away(self) -> None:
        """Take the job off the bench; it stays kept."""
        self.job = None
        self.job_changed.emit()

    # --- writing ---------------------------------------------------------------------------------

    def edit(self, act: Act, then: Callable[[Changes], None] | None = None) -> None:
        """Do an act that writes, and note it so that it can be undone."""

        def work(store: Store) -> tuple[Changes, Job | None, tuple[JobLine, ...]]:
            return self._after(store, act(store))

        def done(answer: tuple[Changes, Job | None, tuple[JobLine, ...]]) -> None:
            changes = answer[0]
            self._show(*answer[1:])
            self.warnings = changes.warnings
            if changes:
                self.history.add(changes.label, self._take_back, self._do_again)
            if then is not None:
                then(changes)

        self.ask(work, done)

    def edit_job(self, act: Callable[[Store, str], Changes]) -> None:
        """Do an act on the job on the bench; where there is none, one is begun for it."""
        job = self.job
        if job is not None:
            self.edit(lambda store: act(store, job.id))
            return

        def begun(changes: Changes) -> None:
            self.open_job(
                changes.jobs[0], lambda: self.edit(lambda store: act(store, changes.jobs[0]))
            )

        self.edit(lambda store: new_job(store, title=words.UNTITLED), begun)

    def keep_part(self, name: str, value: object | None) -> None:
        """Keep a part of the job as a document; None takes it away."""
        self.edit_job(lambda store, id_: keep_document(store, id_, name, value))

    def _take_back(self) -> None:
        self._again(undo)

    def _do_again(self) -> None:
        self._again(redo)

    def _again(self, act: Act) -> None:
        self.ask(
            lambda store: self._after(store, act(store)), lambda answer: self._show(*answer[1:])
        )

    def _after(
        self, store: Store, changes: Changes
    ) -> tuple[Changes, Job | None, tuple[JobLine, ...]]:
        """Read anew the job on the bench, if it still is there, and the list."""
        jobs = list_jobs(store)
        here = None if self.job is None else self.job.id
        job = job_of(store, here) if any(line.id == here for line in jobs) and here else None
        return changes, job, jobs

    def _show(self, job: Job | None, jobs: tuple[JobLine, ...]) -> None:
        self.jobs = jobs
        self.jobs_changed.emit()
        if self.job is not None:
            self.job = job
            self.job_changed.emit()

    # --- the store -------------------------------------------------------------------------------

    def _open(self) -> Store:
        if self._store is None:
            self._store = open_jobs()
        return self._store

    def idle(self) -> bool:
        """Tell whether nothing is being read or written."""
        return self.workshop.idle()

    def close(self) -> None:
        """End all work and close the store."""
        self.workshop.finish()
        if self._store is not None:
            self._store.close()
            self._store = None
