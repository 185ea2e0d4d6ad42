"""Mark the cards of a sitting, then be killed as by a power cut; run as a process of its own.

``python tests/window/killed_sitting.py WHAT PHOTO`` with the store in ``SWATCHWRIGHT_HOME``.
"""

from __future__ import annotations

import os
import signal
import sys
import time
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING, cast

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from hands import drag
from swatchwright.acts.jobs import open_jobs
from swatchwright.acts.last_sitting import last_sitting
from swatchwright.desktop.window import Window
from window.killed_bench import settle, wait
from window.shelf_hands import WHITE, to_reading

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.shelf_page import ShelfPage

RESTED, HASTY = "rested", "hasty"
PAINTS = (WHITE, "clay-red-muted")
GREY = (20, 20), (180, 180)
_CARDS = 2


def box_of(number: int) -> tuple[tuple[int, int], tuple[int, int]]:
    """Give the corners of the box on a card, from 0, of the painted photo."""
    left = 200 * (number + 1)
    return (left + 30, 30), (left + 170, 170)


def work(window: Window, what: str, photo: Path) -> None:
    """Choose paints, open the photo of their cards, mark the grey and two cards."""
    window.show_page("shelf")
    settle(window)
    page = cast("ShelfPage", window.page("shelf"))
    to_reading(page, cast("QtBot", QTest), PAINTS)
    page.sitting.reading.open_file(photo)
    # The cards themselves are kept before they are marked, as they are by any hand.
    end = time.monotonic() + 1
    wait(lambda: time.monotonic() > end)
    settle(window)
    drag(page.sitting.reading.view, *GREY)
    settle(window)
    for number in range(_CARDS):
        drag(page.sitting.reading.view, *box_of(number))
    # Killed in haste, marks are written down and what was read by them is hardly kept yet.
    wait(lambda: are_written(window))
    if what == RESTED:
        end = time.monotonic() + 1.2
        wait(lambda: time.monotonic() > end)
        settle(window)


def are_written(window: Window) -> bool:
    """Tell whether the boxes of all cards are in the store, as another process reads it."""
    job = window.desk.job
    with closing(open_jobs()) as store:
        left = last_sitting(store, None if job is None else job.id)
    return left is not None and len(left.boxes) == _CARDS


if __name__ == "__main__":
    application = QApplication([])
    bench = Window()
    bench.resize(1280, 720)
    bench.show()
    settle(bench)
    work(bench, sys.argv[1], Path(sys.argv[2]))
    sys.stdout.write("killed now")
    sys.stdout.flush()
    os.kill(os.getpid(), signal.SIGKILL if hasattr(signal, "SIGKILL") else signal.SIGTERM)
