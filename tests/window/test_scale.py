"""Twice the size, and the larger letters of the system: nothing is cut, nothing out of view.

References
----------
[WCAG22], 1.4.4: text can be made twice as large without loss. That system fonts of 25 % more are
in use is common practice, no source.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from house.tree import ROOT
from swatchwright.desktop.pages import PAGES

WALK = Path(__file__).parent / "walk.py"
PATIENCE = 240
USUAL = 14
"""Pixels of our plain text."""


@dataclass(frozen=True, slots=True)
class Screen:
    """A screen in its own pixels, how many of them are one of ours, and its letters.

    Those that the system asks for in pixels, and how many times larger she likes them.
    """

    width: int
    height: int
    scale: int = 1
    letters: int = 0
    times: float = 1


SCREENS = {
    "twice": Screen(2560, 1440, scale=2),
    "larger letters": Screen(1600, 900, letters=round(1.25 * USUAL)),
    "larger letters, small screen": Screen(1280, 720, letters=round(1.25 * USUAL)),
    "letters twice as large": Screen(1280, 720, times=2),
}


def begin(screen: Screen, folder: Path) -> subprocess.Popen[str]:
    """Begin a walk on a screen."""
    about = {"name": "one", "x": 0, "y": 0, "logicalDpi": 96, "logicalBaseDpi": 96, "dpr": 1}
    told = {"screens": [{**about, "width": screen.width, "height": screen.height}]}
    file = folder / "screen.json"
    file.write_text(json.dumps(told), encoding="utf-8")
    surroundings = {
        **os.environ,
        "PYTHONPATH": str(ROOT / "src"),
        "QT_QPA_PLATFORM": f"offscreen:configfile={file}",
        "QT_SCALE_FACTOR": str(screen.scale),
    }
    return subprocess.Popen(
        [sys.executable, str(WALK), str(folder / "store"), str(screen.letters), str(screen.times)],
        env=surroundings,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


@pytest.fixture(scope="module")
def walks(tmp_path_factory: pytest.TempPathFactory) -> dict[str, dict[str, Any]]:
    """Walk on all screens side by side, and give what was found."""
    begun = {
        name: begin(screen, tmp_path_factory.mktemp("walk")) for name, screen in SCREENS.items()
    }
    # All of them are waited for before any is judged: none is left running.
    told = {name: process.communicate(timeout=PATIENCE) for name, process in begun.items()}
    for name, process in begun.items():
        assert process.returncode == 0, f"{name}: {told[name][1]}"
    return {name: json.loads(out.splitlines()[-1]) for name, (out, _) in told.items()}


@pytest.mark.parametrize("name", SCREENS)
def test_no_text_is_cut(walks: dict[str, dict[str, Any]], name: str) -> None:
    """Every label and button of every page has room for its words."""
    assert walks[name]["seen"] > 200
    assert not walks[name]["cut"]


@pytest.mark.parametrize("name", SCREENS)
def test_nothing_is_out_of_view(walks: dict[str, dict[str, Any]], name: str) -> None:
    """All is in the window or brought in by a scroll bar, and the window is on the screen."""
    found = walks[name]
    assert not found["lost"]
    for asked, there in zip(found["asks"], found["screen"], strict=True):
        assert asked <= there


@pytest.mark.parametrize("name", [name for name, screen in SCREENS.items() if screen.times == 1])
def test_no_scrolling_of_the_bench(walks: dict[str, dict[str, Any]], name: str) -> None:
    """Only letters that she chose so large make the whole bench wider or higher than the screen."""
    found = walks[name]
    for needed, there in zip(found["needs"], found["screen"], strict=True):
        assert needed <= there


def test_twice_is_twice(walks: dict[str, dict[str, Any]]) -> None:
    """The walk at twice the size was drawn so, on a screen of 1280 by 720 of our pixels."""
    assert walks["twice"]["ratio"] == 2
    assert walks["twice"]["screen"] == [1280, 720]
    assert walks["twice"]["size"] == [1280, 720]


def test_letters_twice_as_large(walks: dict[str, dict[str, Any]]) -> None:
    """Text is twice as large on a screen of 1280 by 720 too, where the bench is scrolled then."""
    assert walks["letters twice as large"]["letters"] == 2 * USUAL
    assert walks["letters twice as large"]["needs"][1] > 720


@pytest.mark.parametrize("name", SCREENS)
@pytest.mark.parametrize("page", [kind.key for kind in PAGES])
def test_scrolled_one_way(walks: dict[str, dict[str, Any]], name: str, page: str) -> None:
    """What is read on these pages is never scrolled sideways ([WCAG22], 1.4.10)."""
    assert page not in walks[name]["sideways"]


def test_letters_follow_the_system(walks: dict[str, dict[str, Any]]) -> None:
    """Letters are as large as the system asks, so far as all stays in view; never smaller."""
    assert walks["larger letters"]["letters"] == round(1.25 * USUAL)
    assert USUAL <= walks["larger letters, small screen"]["letters"] < round(1.25 * USUAL)
    assert walks["twice"]["letters"] == USUAL
