"""Work off the interface thread: started, watched, stopped, and its result brought back."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from threading import Event
from typing import Any

from PySide6.QtCore import QObject, QRunnable, QThreadPool, QTimer, Signal, SignalInstance, Slot

from swatchwright.acts.report import fault_of
from swatchwright.desktop.memory import give_back
from swatchwright.errors import MendableError
from swatchwright.mixing.search import Stopped

__all__ = ["Job", "Workshop"]

_REST = 800
"""ms without work after which memory is given back."""

Work = Callable[["Job"], Any]
Done = Callable[[Any], None]


def _nothing(_: Job) -> None:
    """Do nothing."""


class _Tidings(QObject):
    """What a job tells; a QRunnable is no QObject and cannot have signals of its own.

    Signals
    -------
    returned(Job, object)
        The work's result.
    failed(Job, object)
        The `MendableError`, or a report of our own fault as text.
    moved(Job, float)
        The share done, 0-1.
    """

    returned = Signal(object, object)
    failed = Signal(object, object)
    moved = Signal(object, float)


class Job(QRunnable):
    """One piece of work; it is given itself, to report progress and to ask whether to stop."""

    def __init__(self, work: Work) -> None:
        super().__init__()
        self.setAutoDelete(False)
        self.tidings = _Tidings()
        self._work = work
        self._stop = Event()

    def stop(self) -> None:
        """Ask the work to stop; its result, if it still comes, is dropped."""
        self._stop.set()

    def stopped(self) -> bool:
        """Tell whether it was asked to stop."""
        return self._stop.is_set()

    def progress(self, done: float) -> None:
        """Report the share done."""
        with suppress(RuntimeError):
            self.tidings.moved.emit(self, done)

    def run(self) -> None:
        """Do the work and tell how it ended."""
        # Qt's pool keeps what it has run: the photo in the work's hands must not stay with it.
        work, self._work = self._work, _nothing
        if self.stopped():
            return
        ended, what = self._ended(work)
        # With the window gone while this still ran, there is nobody left to tell.
        with suppress(RuntimeError):
            ended.emit(self, what)

    def _ended(self, work: Work) -> tuple[SignalInstance, object]:
        """Do the work; give the signal that tells how it ended, and with what."""
        try:
            return self.tidings.returned, work(self)
        except Stopped:
            return self.tidings.returned, None
        except MendableError as error:
            return self.tidings.failed, error
        except Exception as error:  # noqa: BLE001 - the last fence of a worker thread
            return self.tidings.failed, fault_of(error, "Off the interface thread:").told


@dataclass(frozen=True, slots=True)
class _Running:
    job: Job
    saying: str
    done: Done
    trouble: Done | None


class Workshop(QObject):
    """Runs jobs by kind: a new job of a kind stops the last one of that kind.

    Signals
    -------
    busy(str)
        What is being done, or an empty text when all is done.
    moved(float)
        The share done of the work that tells it, 0-1.
    failed(object)
        What went wrong, as a job tells it.
    """

    busy = Signal(str)
    moved = Signal(float)
    failed = Signal(object)

    def __init__(self, parent: QObject | None = None, *, threads: int = 2) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(threads)
        self._running: dict[str, _Running] = {}
        self._closed = False
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_REST)
        self._rest.timeout.connect(self._give_back)

    def start(
        self, kind: str, saying: str, work: Work, done: Done, trouble: Done | None = None
    ) -> None:
        """Start work of a kind; `done` gets its result on the interface thread.

        What goes wrong is told to `trouble` where it is given, and else by `failed`.
        """
        self.stop(kind)
        job = Job(work)
        # Bound methods of this object, so that tidings are brought to the interface thread.
        job.tidings.returned.connect(self._returned)
        job.tidings.failed.connect(self._failed)
        job.tidings.moved.connect(self._moved)
        self._running[kind] = _Running(job, saying, done, trouble)
        self._pool.start(job)
        self._say()

    def stop(self, kind: str) -> None:
        """Stop the work of a kind, if there is any."""
        if kind in self._running:
            self._running.pop(kind).job.stop()
            self._say()

    def stop_all(self) -> None:
        """Stop all work."""
        for kind in list(self._running):
            self.stop(kind)

    def close(self) -> None:
        """Stop all work and wait for the threads to end."""
        self._closed = True
        self.stop_all()
        self._rest.stop()
        self._pool.clear()
        self._pool.waitForDone(10_000)

    def finish(self) -> None:
        """Wait until all that was started is done; nothing is stopped."""
        self._pool.waitForDone(10_000)

    def doing(self, kind: str) -> bool:
        """Tell whether work of a kind is under way."""
        return kind in self._running

    def idle(self, *, besides: str = "") -> bool:
        """Tell whether nothing is being done, besides work of one kind."""
        return not set(self._running) - {besides}

    @Slot(object, object)
    def _returned(self, job: Job, result: object) -> None:
        running = self._taken(job)
        if running is None:
            return
        # Work that gave itself up has no result.
        if result is not None:
            running.done(result)
        self._say()

    @Slot(object, object)
    def _failed(self, job: Job, what: object) -> None:
        running = self._taken(job)
        if running is None:
            return
        if running.trouble is None:
            self.failed.emit(what)
        else:
            running.trouble(what)
        self._say()

    @Slot(object, float)
    def _moved(self, job: Job, share: float) -> None:
        if any(running.job is job for running in self._running.values()):
            self.moved.emit(share)

    def _taken(self, job: Job) -> _Running | None:
        """Take a job off the list; None if it was stopped or replaced meanwhile."""
        for kind, running in self._running.items():
            if running.job is job:
                return self._running.pop(kind)
        return None

    @Slot()
    def _give_back(self) -> None:
        if not self._running:
            self._pool.start(Job(lambda _: give_back()))

    def _say(self) -> None:
        sayings = [running.saying for running in self._running.values()]
        self.busy.emit(sayings[-1] if sayings else "")
        # Not while a hand is at work: every photo and search gives back what it took for a moment.
        if sayings or self._closed:
            self._rest.stop()
        else:
            self._rest.start()
