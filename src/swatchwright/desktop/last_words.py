"""What the window says when something of ours goes wrong that nobody catches.

An exception in a slot, an event handler or a thread would only be printed, and nobody who works
at the window reads that. It is told in the window instead, once for each fault and then counted,
with a report to copy. A crash cannot be told when it happens: the note of the run tells of it at
the next start (`acts.last_run`).
"""

from __future__ import annotations

import sys
import threading
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal, qVersion
from PySide6.QtGui import QGuiApplication

from swatchwright.acts.last_run import begin_run
from swatchwright.acts.report import Fault, Scene, fault_of, head_of, report_of, without
from swatchwright.desktop.words import report as words
from swatchwright.errors import MendableError

if TYPE_CHECKING:
    from types import TracebackType

    from swatchwright.desktop.window import Window

__all__ = ["LastWords"]

_MOST_FAULTS = 10
_COUNT_PACE = 1000
"""ms between two showings of a count: a fault in painting would come with each of them."""


class LastWords(QObject):
    """Hears of what nobody catches, from now until it is closed.

    Signals
    -------
    heard(object)
        A `Fault`, or a `MendableError` that nobody caught; sent from any thread.
    """

    heard = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._run, self._left = begin_run()
        self._run.watch()
        self._window: Window | None = None
        self._noted: set[str] = set()
        self._counts: dict[str, int] = {}
        self._told: dict[str, str] = {}
        self._last = ""
        self._count_soon = QTimer(self)
        self._count_soon.setSingleShot(True)
        self._count_soon.setInterval(_COUNT_PACE)
        self._count_soon.timeout.connect(self._show_count)
        self._before = sys.excepthook, threading.excepthook, sys.unraisablehook
        sys.excepthook = self._uncaught
        threading.excepthook = self._uncaught_in_thread
        sys.unraisablehook = self._unraisable
        # Queued, whichever thread it comes from: what is under way is first brought to its end.
        self.heard.connect(self._show, Qt.ConnectionType.QueuedConnection)

    def watch(self, window: Window) -> None:
        """Speak in this window, and say in it if the last run did not close."""
        self._window = window
        window.faults.report = self.report
        window.trouble.report = self.report
        window.session.history.changed.connect(self._note_scene)
        for button in window.rail.buttons.values():
            button.toggled.connect(self._note_scene)
        self._note_scene()
        if self._left:
            window.faults.tell(words.STOPPED, self.report())

    def close(self) -> None:
        """Hear no more, and note that the run has ended well."""
        sys.excepthook, threading.excepthook, sys.unraisablehook = self._before
        self._count_soon.stop()
        self._window = None
        self._run.close()

    # --- hearing ---------------------------------------------------------------------------------

    def _uncaught(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        if not isinstance(error, Exception):
            self._before[0](kind, error, trace)
            return
        if self._note(error.with_traceback(trace), ""):
            self._before[0](kind, error, trace)

    def _uncaught_in_thread(self, told: threading.ExceptHookArgs) -> None:
        error = told.exc_value
        if not isinstance(error, Exception) or self._note(error, "In a thread:"):
            self._before[1](told)

    def _unraisable(self, told: sys.UnraisableHookArgs) -> None:
        error = told.exc_value
        if not isinstance(error, Exception) or self._note(error, "Where none can be raised:"):
            self._before[2](told)

    def _note(self, error: Exception, where: str) -> bool:
        """Pass a fault on to the window; tell whether it is new, and worth printing."""
        try:
            if isinstance(error, MendableError):
                self.heard.emit(error)
                return True
            fault = fault_of(error, where)
            new = fault.mark not in self._noted
            self._noted.add(fault.mark)
            if new:
                # At once: the program may end before it comes to tell of it.
                self._run.add_fault(fault.told)
            self.heard.emit(fault)
        except Exception:  # noqa: BLE001 - a fault in telling of a fault must not hide that
            return True
        return new

    # --- telling ---------------------------------------------------------------------------------

    def _show(self, what: Fault | MendableError) -> None:
        window = self._window
        if isinstance(what, MendableError):
            if window is not None:
                window.faults.say(what)
            return
        count = self._counts.get(what.mark, 0) + 1
        if count == 1 and len(self._counts) >= _MOST_FAULTS:
            return
        self._counts[what.mark], self._last = count, what.mark
        if count > 1:
            if not self._count_soon.isActive():
                self._count_soon.start()
            return
        self._told[what.mark] = what.told
        if window is not None:
            window.faults.tell(words.fault_line(count), self.report())

    def _show_count(self) -> None:
        """Say how often it has come by now, unless that was put away."""
        if self._window is not None:
            told = words.fault_line(self._counts[self._last])
            self._window.faults.tell_anew(told, self.report())

    def report(self, more: str = "") -> str:
        """Make a report of all that was heard, of the last run if it crashed, and of one more."""
        faults = [more] if more else []
        faults += [
            told if self._counts[mark] == 1 else f"{self._counts[mark]} times:\n{told}"
            for mark, told in self._told.items()
        ]
        if self._left:
            faults.append(f"The last run did not close:\n{self._left}")
        return report_of(self._scene(), faults, private=self._private())

    def _scene(self) -> Scene:
        scene = Scene(f"Qt {qVersion()} on {QGuiApplication.platformName()}")
        if self._window is None:
            return scene
        buttons = self._window.rail.buttons.items()
        page = next((key for key, button in buttons if button.isChecked()), "")
        return replace(scene, page=page, deeds=self._window.session.history.kinds())

    def _note_scene(self) -> None:
        """Keep the note of the run up to date: after a crash it is all that is left."""
        self._run.set_scene(without(head_of(self._scene()), self._private()))

    def _private(self) -> tuple[str, ...]:
        """Give what is the painter's or her client's, of the job on the bench and the others."""
        window = self._window
        if window is None:
            return ()
        path, job = window.session.path, window.desk.job
        found = [] if path is None else [str(path), path.name, path.stem]
        found += [text for line in window.desk.jobs for text in (line.id, line.title, line.client)]
        if job is not None:
            found += [job.title, job.client, job.brief, *(note.text for note in job.notes)]
            found += [text for photo in job.photos for text in (photo.name, photo.path)]
        return tuple(found)
