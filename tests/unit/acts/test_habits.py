"""How the window is set up, kept for the next start."""

from __future__ import annotations

from pathlib import Path

import pytest

from swatchwright.acts.habits import Habits, habits, keep_dark, keep_language, keep_letters


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give a home of its own, not yet made."""
    folder = tmp_path / "home"
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(folder))
    return folder


def test_the_first_start_is_light_and_in_the_computers_language() -> None:
    """Where nothing was kept, the bench is light and no language is named."""
    assert habits() == Habits(language="", dark=False)


def test_what_is_kept_comes_back() -> None:
    """One habit is kept without the loss of the other."""
    keep_language("de")
    keep_dark(dark=True)
    assert habits() == Habits("de", dark=True)
    keep_dark(dark=False)
    assert habits() == Habits("de", dark=False)


@pytest.mark.parametrize(
    "told", ["", "[1]", '{"language": 7, "dark": "yes", "letters": "big"}', "\x00", '{"a": {}}']
)
def test_a_spoilt_file_is_as_none(home: Path, told: str) -> None:
    """Whatever stands in the file, the window opens."""
    home.mkdir()
    (home / "habits.json").write_text(told)
    assert habits() == Habits()


def test_where_nothing_can_be_written_it_goes_on(home: Path) -> None:
    """A home that is a file keeps nothing and stops nothing."""
    home.write_text("in the way")
    keep_language("de")
    assert habits() == Habits()


@pytest.mark.parametrize(
    ("told", "kept"), [(1.2, 1.2), (0.1, 0.9), (7, 1.5), (float("nan"), 1.0), (float("inf"), 1.0)]
)
def test_letters_are_kept_in_bounds(told: float, kept: float) -> None:
    """A size is brought to what the window can show; no number is the usual size."""
    keep_letters(told)
    assert habits().letters == kept
