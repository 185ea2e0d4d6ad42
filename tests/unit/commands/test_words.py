"""Text to values and back, at the edge of the command line."""

from __future__ import annotations

import argparse
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.commands.words import (
    chosen_shelf,
    colour_json,
    print_notes,
    rectangle,
    three_numbers,
)
from swatchwright.errors import MendableError
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab, Rect

whole = st.integers(-10_000, 10_000)


@given(whole, whole, whole, whole)
def test_a_rectangle_is_four_whole_numbers(x: int, y: int, width: int, height: int) -> None:
    """Four whole numbers make a rectangle, with or without blanks."""
    assert rectangle(f"{x},{y},{width},{height}", "--grey") == Rect(x, y, width, height)
    assert rectangle(f" {x}, {y}, {width}, {height}", "--grey") == Rect(x, y, width, height)


def test_no_rectangle_is_none() -> None:
    """What was not given stays so."""
    assert rectangle(None, "--grey") is None


@pytest.mark.parametrize("text", ["", "1,2,3", "1,2,3,4,5", "a,b,c,d", "1.5,2,3,4", "1 2 3 4"])
@pytest.mark.parametrize("option", ["--grey", "--area"])
def test_what_is_no_rectangle_is_refused(text: str, option: str) -> None:
    """Anything else is refused by the name of its option and what was given."""
    with pytest.raises(MendableError) as caught:
        rectangle(text, option)
    assert option in caught.value.what
    assert f"“{text}”" in caught.value.what


def test_three_numbers_are_read() -> None:
    """Three numbers, with any signs and decimals."""
    assert three_numbers("46,-34.5, 2e1") == (46, -34.5, 20)


@pytest.mark.parametrize("text", ["", "46", "46,34", "46,34,24,0", "46;34;24", "L,a,b"])
def test_what_is_not_three_numbers_is_refused(text: str) -> None:
    """Anything else is refused."""
    with pytest.raises(MendableError, match="three numbers"):
        three_numbers(text)


@pytest.mark.parametrize(
    ("lab", "expected"),
    [
        (Lab(100, 0, 0), {"lab": [100, 0, 0], "srgb": "#ffffff", "in_srgb": True}),
        (Lab(50.12345, -1.006, 2.0), {"lab": [50.12, -1.01, 2.0], "in_srgb": True}),
        (Lab(50, 110, 0), {"lab": [50, 110, 0], "in_srgb": False}),
    ],
)
def test_a_colour_as_json(lab: Lab, expected: dict[str, Any]) -> None:
    """A colour is its CIELAB to two decimals, its nearest digits, and whether they are true."""
    made = colour_json(lab)
    assert made.keys() == {"lab", "srgb", "in_srgb"}
    assert expected.items() <= made.items()


def test_the_demonstration_is_the_usual_shelf() -> None:
    """Without a file the shelf is the demonstration's."""
    shelf = chosen_shelf(argparse.Namespace(shelf=None))
    assert [p.id for p in shelf.paints] == [p.id for p in demo_shelf().paints]


def test_notes_are_printed_one_a_line(capsys: pytest.CaptureFixture[str]) -> None:
    """Each note has a line of its own, and says that it is one."""
    print_notes(("one.", "two."))
    assert capsys.readouterr().out == "Note: one.\nNote: two.\n"
    print_notes(("one.",), ("off?",))
    assert capsys.readouterr().out == "Check: off?\nNote: one.\n"
