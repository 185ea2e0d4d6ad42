"""The window on its bench, for tests that press and drag as a person does."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from swatchwright.language import ENGLISH, use_language

# The words are said when they are imported: a run in another language begins here.
use_language(os.environ.get("SWATCHWRIGHT_LANGUAGE", ENGLISH))

from swatchwright.acts.samples import SamplePhoto, sample_photos  # noqa: E402
from swatchwright.desktop.collecting import Collecting  # noqa: E402
from swatchwright.desktop.pages.brief_page import BriefPage  # noqa: E402
from swatchwright.desktop.window import Window  # noqa: E402
from swatchwright.language.money import use_money  # noqa: E402
from window.known import known_findings  # noqa: E402
from window.scenes import LAID, PLAN  # noqa: E402
from window.watchdog import HeldUpError  # noqa: E402

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from pytestqt.qtbot import QtBot

    from window.watchdog import WatchedApplication


PATIENCE = 60_000
"""ms to wait for work at the most: shared machines are slow, and the first k-means is slower."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Run a test in which an event took too long again, and let it fail if that is so each time.

    Machines are shared: what the program itself does slowly is slow each time it does it.
    """
    ours = (item for item in items if item.path.is_relative_to(Path(__file__).parent))
    for item in ours:
        item.add_marker(pytest.mark.flaky(reruns=2, only_rerun=[HeldUpError.__name__]))


@pytest.fixture(autouse=True)
def collecting(qapp: WatchedApplication) -> Iterator[Collecting]:
    """Collect garbage as the program does, or a worker may destroy a widget of an earlier test."""
    collects = Collecting(qapp)
    yield collects
    collects.close()
    collects.deleteLater()


@pytest.fixture(autouse=True)
def never_held_up(qapp: WatchedApplication) -> Iterator[None]:
    """Fail a test in which one event held the interface thread for more than 50 ms."""
    kind = type(qapp)
    kind.begin()
    yield
    if kind.slow:
        raise HeldUpError("; ".join(kind.slow))


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Window]:
    """Give a window that is shown, with a store of its own, and end its work afterwards."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path / "store"))
    made = Window()
    made.resize(1280, 720)
    qtbot.addWidget(made)
    made.show()
    qtbot.waitExposed(made)
    yield made
    made.session.close()
    made.desk.close()
    # What a test called the money is nothing to the next.
    use_money("")


@pytest.fixture
def settle(window: Window, qtbot: QtBot) -> Callable[[], None]:
    """Give a function that waits until all work is done, but for a proof in the background."""

    def wait() -> None:
        qtbot.waitUntil(window.at_rest, timeout=PATIENCE)

    return wait


@pytest.fixture
def opened(qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[], Window]:
    """Give a function that opens a window on the store of the test and lets it come to rest."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path / "store"))

    def make() -> Window:
        made = Window()
        made.resize(1280, 720)
        qtbot.addWidget(made)
        made.show()
        qtbot.waitExposed(made)
        qtbot.waitUntil(lambda: made.desk._store is not None and made.at_rest(), timeout=PATIENCE)
        return made

    return make


@pytest.fixture
def mixed(window: Window, settle: Callable[[], None]) -> Window:
    """Give the window with mixes of two paints for a typed clay red."""
    with known_findings():
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
    return window


@pytest.fixture
def cushion() -> SamplePhoto:
    """Give the sample cushion in window light."""
    return sample_photos()[0]


@pytest.fixture
def with_cushion(window: Window, settle: Callable[[], None], cushion: SamplePhoto) -> Window:
    """Give the window with the sample cushion open, marked and mixed."""
    with known_findings():
        window.open_sample(cushion)
        settle()
    return window


@pytest.fixture
def with_job(window: Window, settle: Callable[[], None]) -> Window:
    """Give the window with the job of the demonstration on the bench, layers and a plan with it."""
    with known_findings():
        window.open_sample(sample_photos()[0])
        settle()
        brief = window.page("brief")
        assert isinstance(brief, BriefPage)
        brief.play()
        settle()
    window.desk.keep_part("finish", LAID)
    window.desk.keep_part("plan", PLAN)
    settle()
    return window
