"""Work at the window as told, then be killed as by a power cut; run as a process of its own.

``python tests/window/killed_bench.py WHAT PHOTO`` with the store in ``SWATCHWRIGHT_HOME``.
"""

from __future__ import annotations

import os
import signal
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from swatchwright.acts.samples import sample_photos
from swatchwright.desktop.marks import Marks
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.pages.sample_page import SamplePage
from swatchwright.desktop.window import Window
from swatchwright.shelf.store.paint_rows import paint_bytes

if TYPE_CHECKING:
    from collections.abc import Callable

MARKED, KEPT, HALF, SAMPLED, TAUGHT = "marked", "kept", "half", "sampled", "taught"
VOLUME = 750.0
CLIENT = "Harbour workshop"
_PATIENCE = 120.0
_REST = 0.4
"""Seconds after which what was done on the bench is written down."""


def wait(done: Callable[[], bool]) -> None:
    """Let the window work until something holds."""
    end = time.monotonic() + _PATIENCE
    while not done():
        if time.monotonic() > end:
            raise TimeoutError("the window did not come to rest")
        QApplication.processEvents()
        time.sleep(0.005)


def settle(window: Window) -> None:
    """Wait until all is done that was begun, and what rests for a moment has rested."""
    wait(window.at_rest)
    end = time.monotonic() + _REST
    wait(lambda: time.monotonic() > end)
    wait(window.at_rest)


def work(window: Window, what: str, photo: Path) -> None:
    """Do on the bench what is told."""
    sample = sample_photos()[0]
    window.session.open(photo, Marks(sample.grey, sample.cloth, sample.reflectance))
    settle(window)
    if what == HALF:
        # The mark is set and its colours are not found yet.
        window.session.set_cloth(None)
        end = time.monotonic() + _REST
        while time.monotonic() < end:
            QApplication.processEvents()
        return
    window.session.choose(1)
    settle(window)
    if what == SAMPLED:
        sample_the_mix(window)
        return
    if what == TAUGHT:
        take_and_teach(window, photo.with_suffix(".paints"))
        return
    window.mix_side.volume.setValue(VOLUME)
    QTest.mouseClick(window.mix_side.counts[2], Qt.MouseButton.LeftButton)
    settle(window)
    if what == KEPT:
        QTest.mouseClick(window.mix_side.columns()[1].keep, Qt.MouseButton.LeftButton)
        settle(window)
        window.show_page("brief")
        page = window.page("brief")
        assert isinstance(page, BriefPage)
        page.head.client.setFocus()
        QTest.keyClicks(page.head.client, CLIENT)
        QTest.keyClick(page.head.client, Qt.Key.Key_Tab)
        wait(window.desk.idle)


def take_and_teach(window: Window, paints: Path) -> None:
    """Take the pot of a sample, let the paints learn from it, and leave a note of them.

    Killed as soon as that is kept: nothing rests before.
    """
    window.keeping.keep(1)
    settle(window)
    sample_the_mix(window)
    page = window.page("sample")
    assert isinstance(page, SamplePage)
    QTest.mouseClick(page.next.takes[True], Qt.MouseButton.LeftButton)
    settle(window)
    QTest.mouseClick(page.teach, Qt.MouseButton.LeftButton)
    wait(lambda: page.samples.known and window.desk.idle())
    paints.write_bytes(b"\n".join(paint_bytes(paint) for paint in window.session.shelf.paints))


def sample_the_mix(window: Window) -> None:
    """Open the photo of a sample with its marks, and ask what to add."""
    window.show_page("sample")
    page = window.page("sample")
    assert isinstance(page, SamplePage)
    QTest.mouseClick(page.photo_side.try_it, Qt.MouseButton.LeftButton)
    settle(window)
    QTest.mouseClick(page.told.ask, Qt.MouseButton.LeftButton)
    settle(window)


if __name__ == "__main__":
    application = QApplication([])
    bench = Window()
    bench.show()
    settle(bench)
    work(bench, sys.argv[1], Path(sys.argv[2]))
    sys.stdout.write("killed now")
    sys.stdout.flush()
    os.kill(os.getpid(), signal.SIGKILL if hasattr(signal, "SIGKILL") else signal.SIGTERM)
