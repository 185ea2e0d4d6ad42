"""The real program on a screen of its own, for tests that only press, click and look."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from contextlib import suppress
from typing import TYPE_CHECKING

import pytest

from end_to_end.eyes import Eyes
from end_to_end.screen import PATIENCE, Hand, Screen, missing, until
from swatchwright.desktop import words
from swatchwright.desktop.words import compare

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path
    from typing import Any

    from PIL import Image

    from end_to_end.eyes import Thing


@pytest.fixture(scope="session")
def screen() -> Iterator[Screen]:
    """Give a screen; where what it needs is not installed, say what to type."""
    lacking = missing()
    if lacking:
        pytest.fail(f"{', '.join(lacking)} not found. Type:  make setup-checks", pytrace=False)
    with Screen() as made:
        yield made


class Painter:
    """Somebody who works with the program at a screen, and what her store holds.

    Parameters
    ----------
    screen, home
        Where the program shows itself, and where it keeps what is hers.
    """

    def __init__(self, screen: Screen, home: Path) -> None:
        self._screen, self.home = screen, home
        self._variables = {
            **screen.variables,
            "QT_QPA_PLATFORM": "xcb",
            "QT_LINUX_ACCESSIBILITY_ALWAYS_ON": "1",
            "SWATCHWRIGHT_HOME": str(home),
            "PYTHONPATH": os.pathsep.join(path for path in sys.path if path),
        }
        self._process: subprocess.Popen[bytes] | None = None
        self.hand, self.eyes = Hand(screen), Eyes(screen)
        self.window = ""

    def start(self, *arguments: str) -> None:
        """Open the window, and wait until it can be used."""
        self._process = subprocess.Popen(self._command("window", *arguments), env=self._variables)
        self.window = self.hand.window(self._process.pid)
        self.eyes.wait_for("Open a photo")

    def _command(self, *arguments: str) -> list[str]:
        return [sys.executable, "-m", "swatchwright", *arguments]

    def rest(self) -> None:
        """Wait until the program has found what it was asked for."""
        busy = {words.READING, words.FINDING_COLOURS, words.FINDING_MIXES, compare.RECKONING}

        def idle() -> bool:
            # Between two works it seems idle for a moment.
            for _ in range(3):
                if any(thing.name in busy for thing in self.eyes.things()):
                    return False
                time.sleep(0.1)
            return True

        until(idle, "an end of the work")

    def tab_to(self, name: str) -> None:
        """Press Tab until the keys go to a thing whose name begins like this."""
        self.eyes.wait_for(name)
        seen: list[str] = []
        for _ in range(80):
            before = self.eyes.focus()
            if before is not None and before.name.startswith(name):
                return
            seen.append("nothing" if before is None else before.name)
            self.hand.press("Tab")
            self._wait_for_another(before)
        raise AssertionError(f"Tab does not lead to {name}, but to {seen}")

    def _wait_for_another(self, before: Thing | None) -> None:
        """Wait until the keys go to another thing than before."""
        until(lambda: self.eyes.focus() != before, f"a step on from {before}")

    def wait_for_keys_in(self, name: str) -> None:
        """Wait until the keys go to a thing whose name begins like this."""

        def there() -> bool:
            focused = self.eyes.focus()
            return focused is not None and focused.name.startswith(name)

        until(there, f"the keys in {name}")

    def press_button(self, name: str) -> None:
        """Reach a button by Tab and press it by key."""
        self.tab_to(name)
        self.hand.press("space")

    def click(self, name: str) -> None:
        """Click on a thing by its name."""
        self.hand.click(*self.eyes.wait_for(name).middle)

    def picture(self) -> Image.Image:
        """Give what is on the screen."""
        return self._screen.picture()

    def told(self, *arguments: str) -> Any:
        """Ask by command what is kept."""
        done = subprocess.run(
            self._command(*arguments, "--json"),
            env=self._variables,
            capture_output=True,
            check=False,
            timeout=PATIENCE,
        )
        assert done.returncode == 0, done.stderr.decode()
        return json.loads(done.stdout)

    def job(self) -> dict[str, Any]:
        """Give the one job that is kept."""
        (line,) = self.told("job", "list")["jobs"]
        found: dict[str, Any] = self.told("job", "show", line["id"])
        return found

    def ended(self) -> int:
        """Wait for the program to end, and give its exit code."""
        assert self._process is not None
        code = self._process.wait(PATIENCE)
        self._process = None
        return code

    def kill(self) -> None:
        """Take the program away as a power cut does."""
        assert self._process is not None
        os.kill(self._process.pid, signal.SIGKILL)
        assert self.ended() == -signal.SIGKILL

    def leave(self) -> None:
        """End what still runs."""
        self.eyes.close()
        if self._process is not None:
            with suppress(ProcessLookupError):
                self._process.kill()
            self._process.wait(PATIENCE)


@pytest.fixture
def painter(screen: Screen, tmp_path: Path) -> Iterator[Painter]:
    """Give somebody with a home of her own, in which nothing is kept yet."""
    made = Painter(screen, tmp_path / "home")
    yield made
    with suppress(OSError):
        made.picture().save(tmp_path / "at_the_end.png")
    made.leave()
