"""The page of the piece on a photo, bare or with the sample box."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.acts.repaint_file import SampleBox, sample_box
from swatchwright.desktop.pages.repaint_page import RepaintPage

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(window: Window, settle: Settle) -> RepaintPage:
    """Give the page, in view, with nothing on the bench."""
    window.show_page("repaint")
    settle()
    made = window.page("repaint")
    assert isinstance(made, RepaintPage)
    return made


@pytest.fixture
def sample() -> SampleBox:
    """Give the sample box, which must be there."""
    found = sample_box()
    assert found is not None
    return found


@pytest.fixture
def on_sample(page: RepaintPage, rest: Settle, qtbot: QtBot) -> RepaintPage:
    """Give the page with the sample box and its strokes."""
    qtbot.mouseClick(page.sample, LEFT)
    rest()
    return page


@pytest.fixture
def bare(page: RepaintPage, rest: Settle, sample: SampleBox, tmp_path: Path) -> RepaintPage:
    """Give the page with a photo of the box of one's own, and no stroke on it."""
    page.open_file(Path(shutil.copy(sample.path, tmp_path)))
    rest()
    return page


@pytest.fixture
def rest(page: RepaintPage, settle: Settle, qtbot: QtBot) -> Settle:
    """Give a function that waits until the photo is read, kept, found and painted."""

    def wait() -> None:
        for _ in range(4):
            settle()
            qtbot.waitUntil(lambda: not page.piece.soon.isActive())

    return wait
