"""The small words that many pages use."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from swatchwright.desktop import words
from swatchwright.language import ENGLISH, use_language


@pytest.fixture
def german() -> Iterator[None]:
    """Speak German for a test."""
    use_language("de")
    yield
    use_language(ENGLISH)


def test_a_sentence_begins_small_after_a_colon() -> None:
    """In English a sentence that follows a colon begins with a small letter."""
    assert words.first_low("It is the closest.") == "it is the closest."
    assert words.first_up("mix 1") == "Mix 1"


@pytest.mark.usefixtures("german")
def test_german_keeps_its_capitals() -> None:
    """In German a whole sentence after a colon begins with a capital, and so do nouns."""
    assert words.first_low("Es ist am nächsten.") == "Es ist am nächsten."


@pytest.mark.usefixtures("german")
def test_numbers_have_the_mark_of_the_language() -> None:
    """A volume is written with a decimal comma in German."""
    assert words.millilitres(2.5) == "2,5 ml"


def test_a_kept_label_is_told() -> None:
    """What was done is told with the button that takes it back; of nothing, nothing is told."""
    assert words.undo_told("Note on “Box”") == "Undo: Note on “Box”"
    assert words.redo_told("") == ""
