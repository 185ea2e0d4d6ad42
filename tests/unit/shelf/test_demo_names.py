"""The invented paints have their names in every language."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from dataclasses import replace
from importlib.resources import files

import pytest

from swatchwright.language import ENGLISH, said_in, say, use_language
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.demo_names import DEMO_NAMES, DEMO_NOTE, name_in_use, named_in_use


@pytest.fixture(autouse=True)
def english_again() -> Iterator[None]:
    """Speak English again."""
    yield
    use_language(ENGLISH)


def test_all_that_the_file_says_is_marked() -> None:
    """Every name and note of the demonstration's file is there to be translated."""
    text = files("swatchwright.shelf").joinpath("demo_shelf.csv").read_text(encoding="utf-8")
    rows = list(csv.DictReader(text.splitlines()))
    assert {row["name"] for row in rows} == set(DEMO_NAMES)
    assert {row["note"] for row in rows} == {DEMO_NOTE}


def test_the_shelf_is_as_its_file_in_english() -> None:
    """In English the paints are named as in the file."""
    assert tuple(paint.name for paint in demo_shelf().paints) == DEMO_NAMES


@pytest.mark.parametrize(("kept", "shown"), [("en", "de"), ("de", "en"), ("de", "de")])
def test_a_kept_name_is_told_in_the_language_in_use(kept: str, shown: str) -> None:
    """Invented paints that were kept in one language are named in another as they are there."""
    use_language(kept)
    were = demo_shelf().paints
    use_language(shown)
    now = demo_shelf().paints
    assert [name_in_use(paint.id, paint.name) for paint in were] == [p.name for p in now]
    assert [(p.name, p.note) for p in map(named_in_use, were)] == [(p.name, p.note) for p in now]


def test_a_name_of_hers_stays() -> None:
    """A name that the painter gave, or of a paint of hers, is told as she wrote it."""
    use_language("de")
    paint = demo_shelf().paints[0]
    own = replace(paint, name="Mine", note="from the harbour")
    assert named_in_use(own) == own
    english = DEMO_NAMES[0]
    assert name_in_use(paint.id, english) == say(english) == said_in("de", english) != english
    assert name_in_use("a-paint-of-hers", english) == english
