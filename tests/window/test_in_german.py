"""The same window in German: its names, keys, room and sayings, in a process that speaks it."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from house.tree import ROOT

WHOLE = ("test_everyone.py", "test_language_choice.py", "test_pages_abreast.py")
"""Files of window tests that compare words through their modules, and so hold in any language."""


@pytest.mark.skipif("SWATCHWRIGHT_LANGUAGE" in os.environ, reason="this run is that process")
@pytest.mark.timeout(900)
def test_the_window_in_german() -> None:
    """Every page has names, keys and room for its words in German too, at 1280 x 720."""
    run = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-n", "0"]
        + [f"tests/window/{name}" for name in WHOLE],
        cwd=ROOT,
        env={**os.environ, "SWATCHWRIGHT_LANGUAGE": "de"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stdout[-4000:]
    assert " passed" in run.stdout
