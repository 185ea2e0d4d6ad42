"""Finding words in the guide: whole ones, beginnings, parts of compounds, and what is marked."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts import guide
from swatchwright.acts.guide import guide_pages
from swatchwright.acts.guide_search import find_in_guide, marks_in


@pytest.fixture
def written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """Give a small guide of three pages."""
    folder = tmp_path / "guide"
    for place, text in {
        "en/index.md": "# Begin\n\nSee [the brush](brush.md) and [its care](care.md).\n",
        "en/brush.md": "# The brush\n\nDip **Brush** once; *never* twice. A brush is a brush.\n",
        "en/care.md": "# Care\n\n1. Wash the brush.\n2. Hang it up\n   to dry.\n",
    }.items():
        (folder / place).parent.mkdir(parents=True, exist_ok=True)
        (folder / place).write_text(text, encoding="utf-8")
    guide_pages.cache_clear()
    monkeypatch.setattr(guide, "_folders", lambda: (tmp_path / "nowhere", folder))
    yield folder
    guide_pages.cache_clear()


def names(words: str, language: str = "en") -> list[str]:
    """Give the pages on which words are found, the first first."""
    return [one.page.name for one in find_in_guide(words, language)]


@pytest.mark.usefixtures("written")
def test_the_page_with_most_of_the_words_is_first() -> None:
    """More words count before the title, that before how often; one word found is enough."""
    assert names("brush") == ["brush", "index", "care"]
    assert names("BRUSH wash") == ["care", "brush", "index"]
    assert names("brush zebra") == names("brush")
    assert names("zebra") == names("  ") == names("?!") == []


@pytest.mark.usefixtures("written")
def test_what_is_found_is_shown_as_it_is_read() -> None:
    """How often the words stand on the page is counted, and a line with them shown unmarked."""
    found = find_in_guide("brush")[0]
    assert found.count == 4
    assert found.piece == "Dip Brush once; never twice. A brush is a brush."
    assert names("rush")[0] == "brush"


def test_a_long_line_is_cut_around_the_word() -> None:
    """Of a long line what stands around the first word is shown, cut at spaces."""
    one = next(one for one in find_in_guide("extraction") if one.page.name == "safety")
    assert one.piece.startswith("…")
    assert "extraction" in one.piece
    assert len(one.piece) < 160


@pytest.mark.parametrize(
    ("words", "language"),
    [
        ("alte Bleifarbe", "de"),
        ("Bleifarbe", "de"),
        ("Blei", "de"),
        ("bleihaltigen Lack", "de"),
        ("Lappen brennen", "de"),
        ("lead", "en"),
        ("old lead paint", "en"),
        ("dust mask", "en"),
    ],
)
def test_what_can_hurt_is_found_however_it_is_called(words: str, language: str) -> None:
    """Words of a painter who is afraid of old paint, dust or fire lead to the page on safety."""
    assert names(words, language)[0] == "safety"


def test_dots_are_found_without_them() -> None:
    """Who has no key for ö or ß finds the same pages."""
    assert names("oelige", "de") == names("ölige", "de") != []
    assert names("grosse", "de") == names("große", "de") != []


@pytest.mark.parametrize(
    ("text", "words", "marked"),
    [
        ("Blei bleibt in alter Farbe.", "Blei", ["Blei"]),
        ("Was bleibt, ist bleihaltig.", "Blei", ["blei", "blei"]),
        ("Blei in alter Farbe bleibt.", "Bleifarbe", ["Blei", "Farbe"]),
        ("Die Grundierung", "grundierungen", ["Grundierung"]),
        ("Lead, leading, mislead.", "lead", ["Lead"]),
        ("Straßen und Gassen", "strassen", ["Straßen"]),
        ("Nothing of it.", "lead", []),
    ],
)
def test_only_what_was_searched_is_marked(text: str, words: str, marked: list[str]) -> None:
    """Where a word stands as it is no other is marked; else its beginnings, or its parts."""
    assert [text[start:end] for start, end in marks_in(text, words)] == marked


@given(st.text(max_size=120), st.text(max_size=40))
def test_marks_lie_in_the_text(text: str, words: str) -> None:
    """Whatever is looked for in whatever text, each mark holds letters of the text, in order."""
    marks = marks_in(text, words)
    assert list(marks) == sorted(set(marks))
    assert all(0 <= start < end <= len(text) for start, end in marks)


@given(st.text(alphabet=st.characters(categories=["L"]), min_size=1, max_size=12))
def test_a_word_is_found_in_itself(word: str) -> None:
    """A text of one word is marked from end to end by that word."""
    assert marks_in(f"a {word} b", word)
