"""The window on its bench, for tests that press and drag as a person does."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.samples import SamplePhoto, sample_photos
from swatchwright.desktop.window import Window

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from pytestqt.qtbot import QtBot


PATIENCE = 60_000
"""ms to wait for work at the most: shared machines are slow, and the first k-means is slower."""


@pytest.fixture
def window(qtbot: QtBot) -> Iterator[Window]:
    """Give a window that is shown, and end its work afterwards."""
    made = Window()
    made.resize(1280, 720)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    yield made
    made.session.close()


@pytest.fixture
def settle(window: Window, qtbot: QtBot) -> Callable[[], None]:
    """Give a function that waits until all work is done, but for a proof in the background."""

    def wait() -> None:
        qtbot.waitUntil(lambda: window.session.workshop.idle(besides="proof"), timeout=PATIENCE)

    return wait


@pytest.fixture
def cushion() -> SamplePhoto:
    """Give the sample cushion in window light."""
    return sample_photos()[0]


@pytest.fixture
def with_cushion(window: Window, settle: Callable[[], None], cushion: SamplePhoto) -> Window:
    """Give the window with the sample cushion open, marked and mixed."""
    window.open_sample(cushion)
    settle()
    return window
