"""What nobody catches is told in the window, once, with a report to copy that is nobody else's."""

from __future__ import annotations

import faulthandler
import gc
import os
import signal
import sys
import threading
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QPushButton

from swatchwright.acts.jobs import change_job, new_job
from swatchwright.acts.last_run import REPORTS, begin_run
from swatchwright.desktop import words as common
from swatchwright.desktop.asked_to_end import AskedToEnd
from swatchwright.desktop.last_words import LastWords
from swatchwright.desktop.words import report as words
from swatchwright.errors import MendableError

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.samples import SamplePhoto
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def handler(monkeypatch: pytest.MonkeyPatch) -> None:
    """Leave the fault handler to pytest, which has set it up for itself."""
    monkeypatch.setattr(faulthandler, "enable", lambda *_: None)
    monkeypatch.setattr(faulthandler, "disable", lambda: None)


@pytest.fixture
def printed() -> Iterator[list[BaseException]]:
    """Give what would be printed to the terminal; pytest would fail the test for it."""
    found: list[BaseException] = []
    hooks = sys.excepthook, threading.excepthook, sys.unraisablehook

    def note(told: object) -> None:
        error = getattr(told, "exc_value", told)
        assert isinstance(error, BaseException)
        # Without its calls, which would keep alive what the test lets go.
        found.append(error.with_traceback(None))

    sys.excepthook = lambda _, error, __: note(error)
    threading.excepthook = sys.unraisablehook = note
    yield found
    sys.excepthook, threading.excepthook, sys.unraisablehook = hooks


@pytest.fixture
def last_words(
    window: Window, settle: Settle, handler: None, printed: list[BaseException]
) -> Iterator[LastWords]:
    """Give what speaks in the window, as the program has it."""
    del handler, printed
    settle()
    made = LastWords()
    made.watch(window)
    yield made
    made.close()


def button_that_fails(window: Window, error: Exception) -> QPushButton:
    """Put a button on the bench whose slot raises."""
    button = QPushButton("fail", window)

    def fail() -> None:
        raise error

    button.clicked.connect(fail)
    button.show()
    return button


def copied(window: Window, qtbot: QtBot) -> str:
    """Press the button that copies the report, and give what was copied."""
    qtbot.mouseClick(window.faults.copy, LEFT)
    return QGuiApplication.clipboard().text()


@pytest.mark.usefixtures("last_words")
class TestFaults:
    """Exceptions that nobody catches."""

    def test_in_a_slot(self, window: Window, qtbot: QtBot, printed: list[BaseException]) -> None:
        """A click that fails is owned up to, with a report of where; it is printed as before."""
        assert not window.faults.isVisible()
        qtbot.mouseClick(button_that_fails(window, RuntimeError("a loose screw")), LEFT)
        qtbot.waitUntil(window.faults.isVisible)
        assert window.faults.text() == common.OUR_FAULT
        report = copied(window, qtbot)
        assert "RuntimeError: a loose screw" in report
        assert " fail: raise error" in report
        assert "Page: colour" in report
        assert [str(error) for error in printed] == ["a loose screw"]

    def test_once_and_counted(
        self, window: Window, qtbot: QtBot, printed: list[BaseException]
    ) -> None:
        """The same fault again is counted, not told again; put away, it stays away."""
        button = button_that_fails(window, RuntimeError("a loose screw"))
        qtbot.mouseClick(button, LEFT)
        qtbot.waitUntil(window.faults.isVisible)
        for _ in range(4):
            qtbot.mouseClick(button, LEFT)
        qtbot.waitUntil(lambda: window.faults.text() == words.fault_line(5))
        assert copied(window, qtbot).count("a loose screw") == 1
        assert "5 times" in copied(window, qtbot)
        qtbot.mouseClick(window.faults.put_away, LEFT)
        qtbot.mouseClick(button, LEFT)
        qtbot.waitUntil(lambda: window.faults.text() == words.fault_line(6))
        assert not window.faults.isVisible()
        assert len(printed) == 1

    def test_a_flood(self, window: Window, qtbot: QtBot, printed: list[BaseException]) -> None:
        """What fails a hundred times a second, as painting may, is told and printed once."""
        failed: list[int] = []

        def fail() -> None:
            failed.append(1)
            raise RuntimeError("no brush")

        timer = QTimer(window)
        timer.timeout.connect(fail)
        timer.start(5)
        qtbot.waitUntil(lambda: len(failed) > 100)
        timer.stop()
        qtbot.waitUntil(lambda: window.faults.text() == words.fault_line(len(failed)))
        assert copied(window, qtbot).count("RuntimeError: no brush") == 1
        assert len(printed) == 1

    def test_another_fault_joins(self, window: Window, qtbot: QtBot) -> None:
        """Different faults are told in one report, of so many as one can read."""
        for error in (RuntimeError("a loose screw"), ValueError("a bent nail")):
            button = button_that_fails(window, error)
            qtbot.mouseClick(button, LEFT)
            qtbot.waitUntil(window.faults.isVisible)
        qtbot.waitUntil(lambda: "a bent nail" in copied(window, qtbot))
        assert "a loose screw" in copied(window, qtbot)

    def test_in_a_thread(self, window: Window, qtbot: QtBot) -> None:
        """A thread that fails is told of in the window, on the interface's own thread."""

        def fail() -> None:
            raise RuntimeError("a loose thread")

        thread = threading.Thread(target=fail)
        thread.start()
        thread.join()
        qtbot.waitUntil(window.faults.isVisible)
        assert "In a thread:" in copied(window, qtbot)

    def test_where_nothing_can_be_raised(self, window: Window, qtbot: QtBot) -> None:
        """An object that fails as it is thrown away is told of too."""

        class Bad:
            def __del__(self) -> None:
                raise RuntimeError("would not go")

        bad = Bad()
        del bad
        gc.collect()
        qtbot.waitUntil(window.faults.isVisible)
        assert "would not go" in copied(window, qtbot)

    def test_what_can_be_mended_is_said_so(self, window: Window, qtbot: QtBot) -> None:
        """An error she can mend is told in its own words, whoever forgot to catch it."""
        error = MendableError("The tin is empty.", "Open another.")
        qtbot.mouseClick(button_that_fails(window, error), LEFT)
        qtbot.waitUntil(window.faults.isVisible)
        assert window.faults.text() == "The tin is empty.\nOpen another."
        assert not window.faults.copy.isVisible()

    def test_going_on_does_not_hide_it(
        self, window: Window, qtbot: QtBot, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """What she does next, which clears other messages, leaves it there."""
        qtbot.mouseClick(button_that_fails(window, RuntimeError("a loose screw")), LEFT)
        qtbot.waitUntil(window.faults.isVisible)
        window.open_sample(cushion)
        settle()
        assert window.faults.isVisible()

    def test_a_report_is_nobody_elses(
        self,
        window: Window,
        qtbot: QtBot,
        settle: Settle,
        cushion: SamplePhoto,
    ) -> None:
        """Acts are told by their kind; titles, clients, briefs and photos are not in a report."""
        window.open_sample(cushion)
        settle()
        window.desk.begin(lambda store: new_job(store, title="Dower chest", client="Ada Whitcombe"))
        settle()
        window.desk.edit(lambda store: change_job(store, "dower-chest", brief="red\nas her hat"))
        window.open_sample(cushion)
        settle()
        window.session.choose(1)
        window.session.history.undo()
        window.keeping.keep(1)
        settle()
        said = f"Ada Whitcombe, dower-chest, Dower chest, as her hat, {cushion.path}"
        qtbot.mouseClick(button_that_fails(window, RuntimeError(said)), LEFT)
        qtbot.waitUntil(window.faults.isVisible)
        report = copied(window, qtbot)
        for hers in ("Ada", "dower", "Dower", "her hat", cushion.path.name, str(cushion.path)):
            assert hers not in report
        for kind in ("Session._want_instead", "undo Session._want_instead", "Keeping.keep"):
            assert kind in report

    def test_a_worker_that_fails_has_the_same_report(
        self, window: Window, qtbot: QtBot, settle: Settle
    ) -> None:
        """What fails off the interface thread is told with the page and without folders."""

        def broken(_: object) -> None:
            raise RuntimeError("a loose screw")

        window.session.workshop.start("test", "", broken, lambda _: None)
        settle()
        qtbot.waitUntil(window.trouble.isVisible)
        qtbot.mouseClick(window.trouble.copy, LEFT)
        report = QGuiApplication.clipboard().text()
        assert "RuntimeError: a loose screw" in report
        assert "Page: colour" in report
        assert os.getcwd() not in report  # noqa: PTH109 - as text


class TestLastTime:
    """How the last run ended."""

    @pytest.fixture
    def home(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
        """Give a home in which a run did not close."""
        monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path / "store"))
        folder = tmp_path / "store" / REPORTS
        folder.mkdir(parents=True)
        note = folder / "running-20260301-090000-1.txt"
        note.write_text("Page: finish\nFatal Python error: Aborted\n", encoding="utf-8")
        return folder

    def test_a_crash_is_told_at_the_next_start(
        self, home: Path, window: Window, qtbot: QtBot, last_words: LastWords
    ) -> None:
        """It is said in the window, with a report of it, and can be put away by key."""
        del last_words
        assert window.faults.isVisible()
        assert window.faults.text() == words.STOPPED
        report = copied(window, qtbot)
        assert "The last run did not close:\nPage: finish\nFatal Python error: Aborted" in report
        window.faults.put_away.setFocus()
        qtbot.keyClick(window.faults.put_away, Qt.Key.Key_Space)
        assert not window.faults.isVisible()
        assert [path.name[:7] for path in sorted(home.glob("*.txt"))] == ["running", "stopped"]

    def test_a_close_is_not(self, window: Window, last_words: LastWords, tmp_path: Path) -> None:
        """Closed, the next start has nothing to say."""
        assert not window.faults.isVisible()
        last_words.close()
        run, left = begin_run(tmp_path / "store" / REPORTS)
        run.close()
        assert left == ""

    def test_the_note_follows_her(
        self, window: Window, last_words: LastWords, tmp_path: Path, settle: Settle
    ) -> None:
        """The page in view and what was done are in the note while the program runs."""
        del last_words
        note = next((tmp_path / "store" / REPORTS).glob("running-*.txt"))
        window.show_page("shelf")
        settle()
        assert "Page: shelf" in note.read_text(encoding="utf-8")
        window.desk.keep_part("plan", {"days": 3})
        settle()
        assert "Last done: Desk.keep_part plan" in note.read_text(encoding="utf-8")


@pytest.mark.skipif(sys.platform == "win32", reason="Windows sends no such signals")
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT, signal.SIGHUP])
def test_asked_to_end_the_window_closes(
    window: Window, settle: Settle, qtbot: QtBot, number: signal.Signals
) -> None:
    """Ctrl-C, logging out and a lost terminal close the window as its own button does."""
    settle()
    before = signal.getsignal(number)
    asked = AskedToEnd()
    # From a timer, as when nothing of Python is running.
    QTimer.singleShot(0, window, lambda: os.kill(os.getpid(), number))
    qtbot.waitUntil(lambda: not window.isVisible())
    asked.close()
    assert signal.getsignal(number) is before
