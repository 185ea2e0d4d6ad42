"""Keeps with the job what is set on a page, a moment after she is done, and takes up what is kept.

What comes back from the store is what was sent to it, or what an undo or another job brought. Only
the latter is shown: what she has set since is never overwritten by its own echo.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

from PySide6.QtCore import QObject, QTimer

from swatchwright.acts.jobs import Changes, Store, list_jobs
from swatchwright.desktop.desk import Desk

__all__ = ["PAUSE", "Keeper", "keep_behind"]

PAUSE = 800
"""ms without a change until what is set is kept."""

T = TypeVar("T")


class Keeper(Generic[T]):
    """Holds what is set on a page, and keeps it with the job.

    Parameters
    ----------
    parent
        Whose child its timer is.
    desk
        Where jobs are.
    read
        Gives what is kept with the job on the bench; None where nothing is.
    act
        Makes of a value the act that keeps it.
    show
        Shows a value that came from the job; None where the job has none.
    """

    def __init__(
        self,
        parent: QObject,
        desk: Desk,
        *,
        read: Callable[[], T | None],
        act: Callable[[T], Callable[[Store, str], Changes]],
        show: Callable[[T | None], None],
    ) -> None:
        self._desk, self._read, self._act, self._show = desk, read, act, show
        self.value: T | None = None
        self._job = None if desk.job is None else desk.job.id
        self._unsent = False
        self._sent: list[T] = []
        self._timer = QTimer(parent)
        self._timer.setSingleShot(True)
        self._timer.setInterval(PAUSE)
        self._timer.timeout.connect(self.keep)
        desk.job_changed.connect(self._job_changed)

    def begin(self) -> None:
        """Show what is kept with the job on the bench."""
        self.value = self._read()
        self._show(self.value)

    def set(self, value: T) -> None:
        """Take what she has set; it is kept a moment later."""
        if value == self.value:
            return
        self.value, self._unsent = value, True
        self._timer.start()

    def keep(self) -> None:
        """Keep at once what is not kept yet."""
        self._timer.stop()
        if not self._unsent or self.value is None:
            return
        self._unsent = False
        self._sent.append(self.value)
        act = self._act(self.value)
        job, there = self._job, self._desk.job
        if job is None or (there is not None and there.id == job):
            self._desk.edit_job(act)
        else:
            keep_behind(self._desk, job, act)

    def _job_changed(self) -> None:
        job = None if self._desk.job is None else self._desk.job.id
        if job == self._job:
            self._take(self._read())
            return
        begun = self._job is None and (self._unsent or self._sent)
        if not begun:
            self.keep()
            self._sent.clear()
        self._job = job
        if begun:
            self._take(self._read())
        else:
            self.begin()

    def _take(self, kept: T | None) -> None:
        """Take up what is kept, unless it is an echo or older than what she has set."""
        if kept in self._sent:
            del self._sent[: self._sent.index(kept) + 1]
            return
        if self._unsent or self._sent or kept == self.value:
            return
        self.value = kept
        self._show(kept)


def keep_behind(desk: Desk, job: str, act: Callable[[Store, str], Changes]) -> None:
    """Keep something with a job that has left the bench before the hand had rested."""
    desk.edit(lambda store: _if_there(store, job, act))


def _if_there(store: Store, job: str, act: Callable[[Store, str], Changes]) -> Changes:
    """Keep something with a job that has left the bench, unless it was taken back meanwhile."""
    there = any(line.id == job for line in list_jobs(store))
    return act(store, job) if there else Changes("")
