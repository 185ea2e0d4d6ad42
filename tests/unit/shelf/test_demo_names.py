"""The invented paints have their names in every language."""

from __future__ import annotations

import csv
from importlib.resources import files

from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.demo_names import DEMO_NAMES, DEMO_NOTE


def test_all_that_the_file_says_is_marked() -> None:
    """Every name and note of the demonstration's file is there to be translated."""
    text = files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")
    rows = list(csv.DictReader(text.splitlines()))
    assert {row["name"] for row in rows} == set(DEMO_NAMES)
    assert {row["note"] for row in rows} == {DEMO_NOTE}


def test_the_shelf_is_as_its_file_in_english() -> None:
    """In English the paints are named as in the file."""
    assert tuple(paint.name for paint in demo_shelf().paints) == DEMO_NAMES
