"""The job on the bench: which it is, what is kept of it, and edits of it that can be undone.

The store is read and written by one thread of its own, one edit after another, so that the window
never waits for a disk. Every edit is noted in the session's history.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
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
from swatchwright.acts.last_edits import LastEdits, last_edits
from swatchwright.acts.last_job import remember_job
from swatchwright.desktop import words
from swatchwright.desktop.history import History, kind_of
from swatchwright.desktop.workers import Workshop
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import Job

__all__ = ["Desk"]

T = TypeVar("T")
Act = Callable[[Store], Changes]
Then = Callable[[Changes], None]


@dataclass(frozen=True, slots=True)
class _After:
    """What an edit changed, the job on the bench after it, and the list of all."""

    changes: Changes
    job: Job | None
    jobs: tuple[JobLine, ...]


class Desk(QObject):
    """The job that is worked on, kept as it grows.

    Signals
    -------
    job_changed()
        Another job is on the bench, or something of this one was changed.
    job_laid()
        A job was opened: its photo and its wanted colour belong on the bench.
    jobs_changed()
        Some job was begun, changed or removed.
    paints_changed()
        Something of the kept shelf was changed.
    page_wanted(str)
        Another page is to be shown, by its key.
    photo_wanted(KeptPhoto)
        A photo of the job belongs on the bench.
    colour_wanted(str)
        The wanted colour of a zone of the job belongs on the bench.
    failed(object)
        An act on the store could not be done, as a worker tells it.
    """

    job_changed = Signal()
    job_laid = Signal()
    jobs_changed = Signal()
    paints_changed = Signal()
    page_wanted = Signal(str)
    photo_wanted = Signal(object)
    colour_wanted = Signal(str)
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
        self._gone: str | None = None
        self._begun: list[str] = []

    # --- reading ---------------------------------------------------------------------------------

    def ask(self, act: Callable[[Store], T], done: Callable[[T], None]) -> None:
        """Ask something of the store; `done` gets the answer on the interface thread."""
        self.workshop.start(
            f"store-{next(self._number)}", words.KEEPING, lambda _: act(self._open()), done
        )

    def settled(self, act: Callable[[], None]) -> None:
        """Do something once all is read and written that was asked for before."""
        if self.idle():
            act()
        else:
            self.ask(lambda _: True, lambda _: self.settled(act))

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

        def work(store: Store) -> Job:
            job = job_of(store, id_)
            remember_job(store, id_)
            return job

        def done(job: Job) -> None:
            self.job, self._gone, self._begun = job, None, []
            self.job_changed.emit()
            self.job_laid.emit()
            if then is not None:
                then()

        self.ask(work, done)

    def put_away(self) -> None:
        """Take the job off the bench; it stays kept."""

        def work(store: Store) -> None:
            remember_job(store, None)

        self.job, self._gone, self._begun = None, None, []
        self.ask(work, lambda _: None)
        self.job_changed.emit()

    # --- writing ---------------------------------------------------------------------------------

    def edit(self, act: Act, then: Then | None = None, *, kind: str = "") -> None:
        """Do an act that writes, and note it so that it can be undone; of a kind as in history."""
        here, kind = self._here(), kind or kind_of(act)

        def work(store: Store) -> _After:
            return _after(store, act(store), here)

        self.ask(work, lambda after: self._edited(after, here, then, kind))

    def begin(self, act: Act, then: Then | None = None) -> None:
        """Do an act that begins a job, and lay that on the bench."""

        def begun(changes: Changes) -> None:
            self.open_job(changes.jobs[0], None if then is None else lambda: then(changes))

        self.edit(act, begun)

    def edit_job(
        self, act: Callable[[Store, str], Changes], then: Then | None = None, *, kind: str = ""
    ) -> None:
        """Do an act on the job on the bench; where there is none, one is begun for it.

        Both are then one edit, and undone as one.
        """
        job, kind = self.job, kind or kind_of(act)
        if job is not None:
            self.edit(lambda store: act(store, job.id), then, kind=kind)
            return

        # Several acts may come before the job that the first of them begins is shown.
        begun = self._begun

        def work(store: Store) -> _After:
            if begun and any(line.id == begun[0] for line in list_jobs(store)):
                return _after(store, act(store, begun[0]), begun[0])
            changes = _begun_with(store, act)
            begun[:] = changes.jobs
            remember_job(store, begun[0])
            return _after(store, changes, begun[0])

        def done(after: _After) -> None:
            if self.job is None and begun is self._begun:
                self._gone = begun[0]
            self._edited(after, begun[0], then, kind)

        self.ask(work, done)

    def keep_part(self, name: str, value: object | None) -> None:
        """Keep a part of the job as a document; None takes it away."""
        self.edit_job(
            lambda store, id_: keep_document(store, id_, name, value), kind=f"Desk.keep_part {name}"
        )

    def _edited(self, after: _After, here: str | None, then: Then | None, kind: str) -> None:
        changes = after.changes
        if changes:
            self.history.add(
                changes.label, self._take_back, self._do_again, lasting=True, kind=kind
            )
        self.warnings = changes.warnings
        self._show(after, here)
        if then is not None:
            then(changes)

    def recall(self) -> None:
        """Let the last edits of the job on the bench, made before a new start, be undone."""
        job = self.job
        if job is None:
            return

        def done(edits: LastEdits) -> None:
            if self.job is not None and self.job.id == job.id:
                self.history.recall(edits.undo, edits.redo, self._take_back, self._do_again)

        self.ask(lambda store: last_edits(store, job.id), done)

    def _take_back(self) -> None:
        self._again(undo)

    def _do_again(self) -> None:
        self._again(redo)

    def _again(self, act: Act) -> None:
        here = self._here()
        self.ask(
            lambda store: _after(store, act(store), here), lambda after: self._show(after, here)
        )

    def _here(self) -> str | None:
        """Give the job on the bench, or the one that was there until it was removed."""
        return self._gone if self.job is None else self.job.id

    def _show(self, after: _After, here: str | None) -> None:
        """Show the bench after an edit, unless another job has been laid on it meanwhile."""
        self.jobs = after.jobs
        self.jobs_changed.emit()
        if self._here() == here and (self.job is not None or after.job is not None):
            self.job = after.job
            if after.job is None:
                self._gone, self._begun = here, []
            else:
                self._gone = None
            self.job_changed.emit()
        if after.changes.paints:
            self.paints_changed.emit()

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


def _after(store: Store, changes: Changes, here: str | None) -> _After:
    """Read anew the job on the bench, if it still is there, and the list."""
    jobs = list_jobs(store)
    kept = here is not None and any(line.id == here for line in jobs)
    return _After(changes, job_of(store, here) if kept and here is not None else None, jobs)


def _begun_with(store: Store, act: Callable[[Store, str], Changes]) -> Changes:
    """Begin a job with an act on it, as one edit."""
    with store.editing(words.UNTITLED) as edit:
        id_ = new_job(store, title=words.UNTITLED).jobs[0]
        done = act(store, id_)
        edit.call(done.label)
        return replace(edit.changes, jobs=(id_,), warnings=done.warnings)
