"""How the window is set up, kept for the next start."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from babel.numbers import get_currency_symbol, list_currencies

from swatchwright.acts.habits import (
    MOST_MONEY,
    Habits,
    habits,
    is_money,
    keep_dark,
    keep_language,
    keep_letters,
    keep_money,
    may_be_money,
)
from swatchwright.errors import MendableError


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
    "told",
    [
        "",
        "[1]",
        '{"language": 7, "dark": "yes", "letters": "big", "money": 5}',
        "\x00",
        '{"a": {}}',
    ],
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
    ("told", "kept"), [(1.2, 1.2), (0.1, 0.9), (7, 2.0), (float("nan"), 1.0), (float("inf"), 1.0)]
)
def test_letters_are_kept_in_bounds(told: float, kept: float) -> None:
    """A size is brought to what the window can show; no number is the usual size."""
    keep_letters(told)
    assert habits().letters == kept


@pytest.mark.parametrize("name", ["€", "kr", "CHF", "A$", "kr.", "Lt/ct", "zł", "रु", "crowns"])
def test_money_is_called_as_she_says(name: str) -> None:
    """A sign or a short word is kept beside the other habits, and can be taken back."""
    keep_dark(dark=True)
    keep_money(name)
    assert habits() == Habits(dark=True, money=name)
    keep_money("")
    assert habits() == Habits(dark=True)


def test_every_currency_has_a_name_that_is_taken() -> None:
    """Each code of ISO 4217, and each sign that CLDR has in English or German, is one."""
    codes = list_currencies()
    signs = {get_currency_symbol(code, locale=place) for code in codes for place in ("en", "de")}
    assert len(codes) > 200
    assert [name for name in (codes | signs) if not is_money(name)] == []


@pytest.mark.parametrize("name", ["5", "kr 5", "a" * (MOST_MONEY + 1), ".", " ", " kr", "<b>", "٣"])
def test_what_is_no_name_of_money_is_refused(home: Path, name: str) -> None:
    """Figures, long words, marks alone and what is no letter are refused, and nothing is lost."""
    keep_money("kr")
    with pytest.raises(MendableError, match="Money cannot be called"):
        keep_money(name)
    assert habits().money == "kr"
    (home / "habits.json").write_text(json.dumps({"money": name, "dark": True}))
    assert habits() == Habits(dark=True)


def test_what_is_typed_on_the_way_to_a_name_is_let_pass() -> None:
    """A mark or a space may come before the letters; a figure may not come at all."""
    assert may_be_money("")
    assert may_be_money("kr ")
    assert not may_be_money("k5")
    assert all(may_be_money("Lt/ct"[:end]) for end in range(6))
