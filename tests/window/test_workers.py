"""Work off the interface thread lets go of what it had in its hands."""

from __future__ import annotations

import gc
from typing import TYPE_CHECKING
from weakref import ref

import pytest

from swatchwright.desktop.workers import Job, Workshop

if TYPE_CHECKING:
    from collections.abc import Iterator

    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot


class _Photo:
    """Stands for something large."""


@pytest.fixture
def workshop(qapp: QApplication) -> Iterator[Workshop]:
    """Give a workshop with one thread, and close it."""
    made = Workshop(qapp, threads=1)
    yield made
    made.close()


def _looked_at(workshop: Workshop, photo: _Photo) -> None:
    def work(_: Job) -> str:
        return repr(photo)

    workshop.start("photo", "", work, lambda _: None)


def test_work_that_is_done_is_let_go_of(workshop: Workshop, qtbot: QtBot) -> None:
    """Photo after photo may be opened: none stays in memory once the work on it is done."""
    photo = _Photo()
    _looked_at(workshop, photo)
    qtbot.waitUntil(workshop.idle)
    gone = ref(photo)
    del photo
    gc.collect()
    assert gone() is None


def test_work_that_was_stopped_before_it_began_is_let_go_of(
    workshop: Workshop, qtbot: QtBot
) -> None:
    """What is replaced by other work while it waits for a thread stays in memory no more."""
    photo, other = _Photo(), _Photo()
    _looked_at(workshop, photo)
    _looked_at(workshop, other)
    _looked_at(workshop, other)
    qtbot.waitUntil(workshop.idle)
    gone = ref(photo)
    del photo
    gc.collect()
    assert gone() is None
