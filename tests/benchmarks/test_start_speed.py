"""How fast the window and the version come up, against the bare things in the same run."""

from __future__ import annotations

import os
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from pytest_benchmark.fixture import BenchmarkFixture

BARE_WINDOW = """
from PySide6.QtWidgets import QApplication, QMainWindow
application = QApplication([])
window = QMainWindow()
window.show()
application.processEvents()
print(window.isVisible())
"""

OUR_WINDOW = """
from PySide6.QtWidgets import QApplication
from swatchwright.desktop.window import Window
application = QApplication([])
window = Window()
window.show()
application.processEvents()
print(window.isVisible())
window.close()
"""

VERSION = "import sys; from swatchwright.__main__ import main; sys.exit(main(['--version']))"


def run(code: str) -> str:
    """Run a program in a new process and give what it prints."""
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    words = [sys.executable, "-c", code]
    done = subprocess.run(words, env=environment, capture_output=True, text=True, check=True)
    return done.stdout


@pytest.mark.benchmark(group="window up")
@pytest.mark.parametrize("code", [OUR_WINDOW, BARE_WINDOW], ids=["ours", "bare"])
def test_window_up(benchmark: BenchmarkFixture, code: str) -> None:
    """The window comes up."""
    assert benchmark.pedantic(run, (code,), rounds=3).strip() == "True"


@pytest.mark.benchmark(group="version")
@pytest.mark.parametrize("code", [VERSION, "print('swatchwright ')"], ids=["ours", "bare"])
def test_version(benchmark: BenchmarkFixture, code: str) -> None:
    """The version is told."""
    assert benchmark.pedantic(run, (code,), rounds=5).startswith("swatchwright ")
