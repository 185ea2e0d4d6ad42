"""A widget that is part of Python's garbage is destroyed by the interface thread alone."""

from __future__ import annotations

import gc
from threading import get_ident
from typing import TYPE_CHECKING

import pytest

from swatchwright.desktop.collecting import Collecting, due
from swatchwright.desktop.workers import Job, Workshop

if TYPE_CHECKING:
    from collections.abc import Iterator

    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot


class _Ring:
    """Garbage that only a collection finds, and that says who collected it."""

    def __init__(self, heard: list[int]) -> None:
        self._itself = self
        self._heard = heard

    def __del__(self) -> None:
        self._heard.append(get_ident())


class _Link:
    """One of many rings that say nothing."""

    def __init__(self) -> None:
        self.itself = self


def _much_is_left_lying(_: Job) -> str:
    """Make more garbage than Python lets lie before it collects."""
    for _i in range(20 * gc.get_threshold()[0]):
        _Link()
    return "done"


@pytest.fixture
def workshop(qapp: QApplication) -> Iterator[Workshop]:
    """Give a workshop with one thread, and close it."""
    made = Workshop(qapp, threads=1)
    yield made
    made.close()


def _who_collects(workshop: Workshop, qtbot: QtBot) -> list[int]:
    heard: list[int] = []
    gc.collect()
    _Ring(heard)
    workshop.start("search", "", _much_is_left_lying, lambda _: None)
    qtbot.waitUntil(workshop.idle)
    return heard


def test_a_worker_collects_nothing(workshop: Workshop, qtbot: QtBot) -> None:
    """However much a search leaves lying, what it meets is destroyed by the interface thread."""
    heard = _who_collects(workshop, qtbot)
    qtbot.waitUntil(lambda: bool(heard))
    assert heard == [get_ident()]


def test_left_to_python_a_worker_collects(
    workshop: Workshop, qtbot: QtBot, collecting: Collecting
) -> None:
    """The danger is real: as Python does it, what a window left is destroyed by a worker."""
    collecting.close()
    heard = _who_collects(workshop, qtbot)
    assert heard
    assert heard != [get_ident()]


class TestDue:
    """Generations are collected when Python itself would, as the module `gc` documents it."""

    @pytest.mark.parametrize(
        ("counts", "age"),
        [
            ((700, 10, 10), None),
            ((701, 0, 0), 0),
            ((701, 11, 0), 1),
            ((0, 11, 0), 1),
            ((0, 0, 11), 2),
        ],
    )
    def test_limits_of_python_3_11(self, counts: tuple[int, int, int], age: int | None) -> None:
        """A generation is due when its count passes its limit, and takes the younger with it."""
        assert due(counts, (700, 10, 10)) == age

    def test_a_limit_of_nothing(self) -> None:
        """A limit of 0 turns a generation off."""
        assert due((5000, 5000, 5000), (0, 0, 0)) is None


def test_python_collects_again(qapp: QApplication, collecting: Collecting) -> None:
    """Closed, it leaves Python as it was."""
    collecting.close()
    assert gc.isenabled()
    inner = Collecting(qapp)
    assert not gc.isenabled()
    inner.close()
    assert gc.isenabled()
