"""The watchdog itself: it bites who holds the interface thread, and nobody else."""

from __future__ import annotations

from threading import Thread
from time import sleep, thread_time
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication

from window import watchdog
from window.watchdog import LIMIT, WatchedApplication

if TYPE_CHECKING:
    from collections.abc import Callable

KIND = QEvent.Type(QEvent.registerEventType())


class _Doing(QObject):
    """Does something when it gets an event."""

    def __init__(self, what: Callable[[], object]) -> None:
        super().__init__()
        self._what = what

    def event(self, event: QEvent) -> bool:
        """Do it."""
        if event.type() == KIND:
            self._what()
            return True
        return super().event(event)


def _bitten_by(qapp: WatchedApplication, what: Callable[[], object]) -> tuple[str, ...]:
    """Give what the watchdog says of an event in which something is done, and forget it."""
    QApplication.sendEvent(_Doing(what), QEvent(KIND))
    kind = type(qapp)
    told, kind.slow = kind.slow, ()
    return told


def _work(seconds: float) -> None:
    end = thread_time() + seconds
    while thread_time() < end:
        pass


@pytest.fixture(autouse=True)
def as_fast_as_ours(monkeypatch: pytest.MonkeyPatch) -> None:
    """Take the machine for one as fast as ours: how slow it is changes from moment to moment."""
    monkeypatch.setattr(watchdog, "slowness", lambda: 1.0)


def test_who_holds_the_thread_is_told(qapp: WatchedApplication) -> None:
    """Work of more than the limit in one event is noted, by the name of who did it."""
    (told,) = _bitten_by(qapp, lambda: _work(2 * LIMIT))
    assert "_Doing" in told


def test_who_only_waits_for_the_machine_is_not(qapp: WatchedApplication) -> None:
    """Time in which the thread does not run, as on a busy machine, is not the program's."""
    assert not _bitten_by(qapp, lambda: sleep(3 * LIMIT))


def test_an_event_inside_another_is_part_of_it(qapp: WatchedApplication) -> None:
    """Two events in one, each within the limit, hold the thread for the sum of both."""
    half = 0.8 * LIMIT
    inner = _Doing(lambda: _work(half))

    def twice() -> None:
        for _ in range(2):
            QApplication.sendEvent(inner, QEvent(KIND))

    assert len(_bitten_by(qapp, twice)) == 1


def test_its_own_time_is_taken_off(qapp: WatchedApplication) -> None:
    """What it takes to pass an event on is not the program's; what that event does, is."""
    inner = _Doing(lambda: _work(1e-5))

    def many() -> None:
        for _ in range(4_000):
            QApplication.sendEvent(inner, QEvent(KIND))
        _work(0.9 * LIMIT)

    (told,) = _bitten_by(qapp, many)
    assert "_Doing" in told
    assert type(qapp)._inside == 4_000


def test_events_of_other_threads_are_not_its_business(qapp: WatchedApplication) -> None:
    """Threads that deliver events of their own leave it as watchful as it was.

    They come through the same application, many at once.
    """

    def deliver() -> None:
        here = _Doing(lambda: None)
        for _ in range(3_000):
            QApplication.sendEvent(here, QEvent(KIND))

    threads = [Thread(target=deliver) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(_bitten_by(qapp, lambda: _work(2 * LIMIT))) == 1
