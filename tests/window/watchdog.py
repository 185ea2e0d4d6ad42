"""A watchdog over the interface thread: no call may hold it for long.

What counts is the processor time that the thread itself takes for one event, so that other work on
the machine does not; and it is compared with a piece of plain work timed at that very moment, so
that a slow machine, or a processor shared with another thread, is not blamed on the program.
"""

from __future__ import annotations

import gc
import os
from threading import get_ident
from time import thread_time
from typing import Any

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication

__all__ = ["LIMIT", "HeldUpError", "WatchedApplication", "slowness"]

LIMIT = 0.05
"""Seconds of processor time that one event may take on a machine that is as fast as ours."""

_OURS = get_ident()
"""The thread that the tests, and so the window, run in."""

_PLAIN = 0.0075
"""Seconds that the plain work takes on a quiet machine of 2025."""


_PASSING = 3e-6
"""Seconds of the watchdog's own in an event inside another, on that machine.

To dress a page of 251 parts, some 3,000 such events, took 30 ms without a watchdog and 41 with it:
3.5 microseconds each, most of it for telling Python whose event it is.
"""


class HeldUpError(AssertionError):
    """An event held the interface thread for too long."""


def slowness() -> float:
    """Give how many times slower this machine is now than a quiet one; 1 at the least."""
    start = thread_time()
    total = 0
    for i in range(100_000):
        total += i * i
    plain = (thread_time() - start) / _PLAIN
    # Where more wants to run than can, the caches are shared too, which plain work does not feel.
    crowded = os.getloadavg()[0] / (os.cpu_count() or 1) if hasattr(os, "getloadavg") else 1.0
    return max(1.0, plain) * min(max(1.0, crowded), 3.0)


class _Collections:
    """Counts the time that Python's own collector of garbage takes, which strikes anywhere.

    It is long in a test process, which holds the garbage of hundreds of windows.
    """

    def __init__(self) -> None:
        self.total = 0.0
        self._start = 0.0
        gc.callbacks.append(self._heard)

    def _heard(self, phase: str, _: dict[str, Any]) -> None:
        if get_ident() != _OURS:
            return
        if phase == "start":
            self._start = thread_time()
        else:
            self.total += thread_time() - self._start


class WatchedApplication(QApplication):
    """An application that notes each event which holds the interface thread too long.

    Events of other threads come through it as well: they hold nobody up, and are not counted.
    """

    slow: tuple[str, ...] = ()
    _under_way = False
    _inside = 0
    _collections = _Collections()

    @classmethod
    def begin(cls) -> None:
        """Forget what was noted before a test, in which no event is under way yet."""
        cls.slow, cls._under_way = (), False

    def notify(self, receiver: QObject, event: QEvent) -> bool:
        """Deliver an event and time it; an event inside another counts as part of that."""
        cls = type(self)
        # What comes inside another is timed with it: a page that is dressed has thousands of such.
        if get_ident() != _OURS:
            return bool(super().notify(receiver, event))
        if cls._under_way:
            cls._inside += 1
            return bool(super().notify(receiver, event))
        kind = event.type()
        name = type(receiver).__name__
        cls._under_way, cls._inside = True, 0
        start, collected = thread_time(), cls._collections.total
        try:
            return bool(super().notify(receiver, event))
        finally:
            took = thread_time() - start - (cls._collections.total - collected)
            took -= cls._inside * _PASSING
            cls._under_way = False
            # The program takes no window apart while it is used: that is the end of a test.
            ends = kind is QEvent.Type.DeferredDelete and name == "Window"
            if took > LIMIT and not ends:
                times = slowness()
                if took > LIMIT * times:
                    note = (
                        f"{name}, {kind.name}: {took * 1000:.0f} ms on a machine {times:.1f} slow"
                    )
                    cls.slow = (*cls.slow, note)
