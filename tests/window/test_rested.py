"""What is set on a page waits for the hand to rest, and is kept all the same if that never comes.

It is kept when another page is shown, another job is laid, or the window is closed. A power cut in
that moment takes what was set last, and nothing else.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from house.tree import run
from swatchwright.acts.jobs import job_of, list_jobs, new_job, open_jobs
from window.known import known_findings
from window.set_on_pages import SET, is_kept

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

SCRIPT = Path(__file__).with_name("killed_pages.py")
PATIENCE = 60_000


@pytest.fixture
def job(window: Window, settle: Settle, qtbot: QtBot) -> str:
    """Give the id of a job with mixes that is on the bench."""
    with known_findings():
        settle()
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        qtbot.mouseClick(window.mix_side.columns()[0].keep, Qt.MouseButton.LeftButton)
        settle()
        assert window.desk.job is not None
    return window.desk.job.id


def kept(window: Window, job: str, page: str) -> bool:
    """Tell whether what is set on a page is kept with a job in the store."""
    store = window.desk._store
    assert store is not None
    return is_kept(job_of(store, job), page)


@pytest.fixture(params=list(SET))
def page(request: pytest.FixtureRequest, window: Window, settle: Settle, job: str) -> str:
    """Give the key of a page that is in view, on which something has just been set."""
    key = str(request.param)
    window.show_page(key)
    settle()
    assert not kept(window, job, key)
    SET[key](window)
    return key


def press(window: Window) -> None:
    """Take the focus out of a field, as a button that is pressed does."""
    window.open_photo.setFocus()


def test_another_page(window: Window, settle: Settle, job: str, page: str) -> None:
    """It is kept once another page is shown."""
    window.show_page("colour")
    settle()
    assert kept(window, job, page)


def test_put_away(window: Window, settle: Settle, job: str, page: str) -> None:
    """It is kept with the job it was set for when that is taken off the bench, page in view."""
    press(window)
    window.desk.put_away()
    settle()
    assert window.desk.job is None
    assert kept(window, job, page)


def test_another_job(window: Window, settle: Settle, job: str, page: str) -> None:
    """It is kept with the job it was set for, and not with the one that is laid then."""
    press(window)
    window.desk.begin(lambda store: new_job(store, title="Chair"))
    settle()
    other = window.desk.job
    assert other is not None
    assert other.id != job
    assert not is_kept(other, page)
    assert kept(window, job, page)


def test_closed(window: Window, job: str, page: str, tmp_path: Path) -> None:
    """It is kept when the window is closed."""
    window.close()
    with open_jobs(tmp_path / "store" / "swatchwright.sqlite") as store:
        assert is_kept(job_of(store, job), page)


@pytest.mark.parametrize("last", ["finish", "shelf"])
def test_killed(last: str, tmp_path: Path) -> None:
    """A power cut before the hand has rested takes what was set last, and nothing else."""
    done = run(
        *(sys.executable, SCRIPT, last),
        QT_QPA_PLATFORM="offscreen",
        SWATCHWRIGHT_HOME=str(tmp_path / "store"),
        PYTHONPATH=os.pathsep.join(path for path in sys.path if path),
    )
    assert done.stdout == "killed now", done.stderr
    assert done.returncode != 0
    with open_jobs(tmp_path / "store" / "swatchwright.sqlite") as store:
        job = job_of(store, list_jobs(store)[0].id)
    assert {key for key in SET if is_kept(job, key)} == set(SET) - {last}


@pytest.mark.parametrize("key", [key for key in SET if key != "brief"])
def test_rested(window: Window, settle: Settle, qtbot: QtBot, job: str, key: str) -> None:
    """It is kept a moment after the hand rests, with the page still in view."""
    window.show_page(key)
    settle()
    SET[key](window)
    assert not kept(window, job, key)
    qtbot.waitUntil(lambda: kept(window, job, key), timeout=PATIENCE)
