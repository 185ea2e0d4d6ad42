"""The real program is killed from outside, and started again: what it knows of how it ended."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from contextlib import suppress
from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.last_run import REPORTS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="Windows sends no such signals")

PATIENCE = 120.0

Process = subprocess.Popen[bytes]


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Callable[..., Process]]:
    """Give a function that starts the program, or a script, and waits until it is up."""
    started: list[Process] = []
    variables = {
        **os.environ,
        "QT_QPA_PLATFORM": "offscreen",
        "SWATCHWRIGHT_HOME": str(tmp_path),
        "SWATCHWRIGHT_LANGUAGE": "en",
        "PYTHONPATH": os.pathsep.join(path for path in sys.path if path),
    }

    def begin(script: str = "") -> Process:
        program = ["-c", script] if script else ["-m", "swatchwright", "window"]
        command = [sys.executable, *program]
        process = subprocess.Popen(command, env=variables, stderr=subprocess.DEVNULL)
        started.append(process)
        wait(lambda: any(b"Page: colour" in note for note in running(tmp_path, process)))
        return process

    yield begin
    for process in started:
        with suppress(ProcessLookupError):
            process.kill()
        process.wait()


def wait(done: Callable[[], bool]) -> None:
    """Wait until something holds."""
    end = time.monotonic() + PATIENCE
    while not done():
        assert time.monotonic() < end, "the program did not come up"
        time.sleep(0.05)


def running(home: Path, process: Process) -> list[bytes]:
    """Give the note that a process keeps while it runs."""
    return [path.read_bytes() for path in home.glob(f"{REPORTS}/running-*-{process.pid}.txt")]


def stopped(home: Path) -> list[str]:
    """Give what is kept of runs that did not close."""
    return [path.read_text(encoding="utf-8") for path in home.glob(f"{REPORTS}/stopped-*.txt")]


@pytest.mark.parametrize("how", [signal.SIGSEGV, signal.SIGABRT, signal.SIGKILL])
def test_a_crash_is_known_at_the_next_start(
    start: Callable[..., Process], tmp_path: Path, how: signal.Signals
) -> None:
    """What was known of the run is put by, once; after a close nothing more is."""
    process = start()
    os.kill(process.pid, how)
    ended = process.wait(PATIENCE)
    # Python reads the calls of a thread that is still running, and may fault while it does.
    assert ended == -how or (ended == -signal.SIGSEGV and how is not signal.SIGKILL)
    again = start()
    (told,) = stopped(tmp_path)
    assert told.startswith("Swatchwright ")
    assert "Page: colour" in told
    # Python's own words (faulthandler), with the calls of each thread.
    assert ("Fatal Python error" in told) == (how is not signal.SIGKILL)
    if how is not signal.SIGKILL and ended == -how and told.count("Fatal Python error") == 1:
        assert 'File "swatchwright/desktop/start.py"' in told
    assert str(tmp_path) not in told
    again.terminate()
    assert again.wait(PATIENCE) == 0
    assert running(tmp_path, again) == []
    last = start()
    assert len(stopped(tmp_path)) == 1
    last.terminate()
    assert last.wait(PATIENCE) == 0


NO_WINDOW = """
from swatchwright.desktop.start import open_window
from swatchwright.desktop.window import Window
def no_window(window):
    raise RuntimeError("a pane is out")
Window.show = no_window
open_window([])
"""


def test_a_window_that_never_comes_up_is_known_too(
    start: Callable[..., Process], tmp_path: Path
) -> None:
    """A fault that ends the program before there is a window to tell it in is told next time."""
    failed = start(NO_WINDOW)
    assert failed.wait(PATIENCE) == 1
    again = start()
    (told,) = stopped(tmp_path)
    assert "RuntimeError: a pane is out" in told
    again.terminate()
    assert again.wait(PATIENCE) == 0


def test_a_second_copy_is_not_taken_for_a_crash(
    start: Callable[..., Process], tmp_path: Path
) -> None:
    """While one copy runs another starts and closes, and neither is told of as a crash."""
    first, second = start(), start()
    assert stopped(tmp_path) == []
    second.terminate()
    assert second.wait(PATIENCE) == 0
    assert len(running(tmp_path, first)) == 1
    first.send_signal(signal.SIGINT)
    assert first.wait(PATIENCE) == 0
    assert stopped(tmp_path) == []
