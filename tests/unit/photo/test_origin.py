"""Where a colour came from, kept in English and said in the painter's language."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from babel.messages import Catalog
from babel.messages.mofile import write_mo
from hypothesis import given
from hypothesis import strategies as st

import swatchwright.language as spoken
from swatchwright.photo.origin import (
    NO_REFERENCE,
    chips_origin,
    grey_origin,
    origin_words,
    photo_origin,
    references_origin,
)
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

WORDS = {
    NO_REFERENCE: "keine",
    "a colour of the photo; reference: {reference}; {seen}": "Foto ({reference}), {seen}",
    "seen from a metre": "von fern",
    "the yarn, seen near to": "von nah",
    "a grey of {percent:g} % at {x}, {y} ({width} × {height} pixels)": "{percent:g} %, {x}, {y}",
    "{count} chips of known colour": "{count} Muster",
    "a measured chip": "ein Muster",
    "{first} and {last}": "{first} und {last}",
    "typed in": "getippt",
}
COUNTED = {
    ("{count} grey", "{count} greys"): ("{count} Graufeld", "{count} Graufelder"),
    ("{count} measured chip", "{count} measured chips"): ("{count} Muster", "{count} Muster"),
}

SIDES = st.integers(0, 20_000)
RECTS = st.builds(Rect, SIDES, SIDES, SIDES, SIDES)
REFERENCES = st.one_of(
    st.just(NO_REFERENCE),
    st.builds(grey_origin, RECTS, st.floats(0.02, 1.0)),
    st.builds(chips_origin, st.integers(1, 60)),
    st.builds(references_origin, st.integers(1, 60), st.integers(0, 60)),
    st.builds(references_origin, st.integers(0, 60), st.integers(1, 60)),
)


@pytest.fixture
def german(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Speak a German of a few words, and English again after the test."""
    words = Catalog(locale="de")
    for text, told in WORDS.items():
        words.add(text, told)
    for forms, said in COUNTED.items():
        words.add(forms, said)
    with (tmp_path / "de.mo").open("wb") as file:
        write_mo(file, words)
    monkeypatch.setattr(spoken, "_FOLDER", tmp_path)
    spoken.use_language("de")
    yield
    spoken.use_language(spoken.ENGLISH)


@given(REFERENCES, st.booleans())
def test_what_is_kept_is_said_as_it_is_in_english(reference: str, metre: bool) -> None:  # noqa: FBT001
    """In English the words of every origin are the origin itself, figure for figure."""
    assert origin_words(reference) == reference
    kept = photo_origin(reference, metre=metre)
    assert origin_words(kept) == kept


@pytest.mark.usefixtures("german")
@pytest.mark.parametrize(
    ("kept", "said"),
    [
        (NO_REFERENCE, "keine"),
        (grey_origin(Rect(10, 20, 30, 25), 0.185), "18,5 %, 10, 20"),
        (chips_origin(3), "3 Muster"),
        (chips_origin(1), "ein Muster"),
        (references_origin(1, 0), "1 Graufeld"),
        (references_origin(2, 1), "2 Graufelder und 1 Muster"),
        (references_origin(0, 2), "2 Muster"),
    ],
)
def test_a_reference_is_said_in_her_language(kept: str, said: str) -> None:
    """Each way of putting the light right is known again, with its numbers."""
    assert origin_words(kept) == said


@pytest.mark.usefixtures("german")
def test_a_colour_of_a_photo_is_said_in_her_language() -> None:
    """The whole is put together as her language has it, the reference within."""
    near = photo_origin(references_origin(2, 1), metre=False)
    assert origin_words(near) == "Foto (2 Graufelder und 1 Muster), von nah"
    far = photo_origin(grey_origin(Rect(1, 2, 3, 4), 0.9), metre=True)
    assert origin_words(far) == "Foto (90 %, 1, 2), von fern"


@pytest.mark.usefixtures("german")
def test_an_origin_of_one_word_is_said_like_any_text() -> None:
    """What another part of the program marked is said by its catalogue."""
    assert origin_words("typed in") == "getippt"


@pytest.mark.usefixtures("german")
@pytest.mark.parametrize(
    "kept",
    [
        "",
        "by hand; from memory",
        "a grey of ten % at 1, 2 (3 × 4 pixels)",
        "greys",
        "½ grey",
        "{x}",
    ],
)
def test_what_was_written_by_hand_stands(kept: str) -> None:
    """A text of somebody's own is told as it is, however near to one of ours it comes."""
    assert origin_words(kept) == kept
