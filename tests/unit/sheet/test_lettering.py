"""Breaking a text into lines that fit, with nothing lost."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

import swatchwright.sheet
from swatchwright.sheet.lettering import (
    NARROW,
    Style,
    cut,
    fitted,
    missing_letters,
    printed,
    text_width,
    wrapped,
)

BODY = Style(9)
TEXTS = st.text(st.sampled_from("abcdefgWMil -,.δ−–é"), max_size=120)
MM = 25.4 / 72


@given(text=TEXTS, width=st.floats(4, 120))
def test_lines_fit_and_lose_nothing(text: str, width: float) -> None:
    """Each line is within the width, and all letters are there in their order."""
    lines = wrapped(text, BODY, width)
    assert all(text_width(line, BODY) <= width + 1e-9 for line in lines)
    assert "".join(lines).replace(" ", "") == "".join(text.split())


@given(text=TEXTS, width=st.floats(8, 120))
def test_a_cut_text_fits_and_says_so(text: str, width: float) -> None:
    """A text that is cut ends with an ellipsis within the width; another is as it was."""
    found = cut(text, BODY, width)
    assert text_width(found, BODY) <= width + 1e-9
    assert found == printed(text) or found.endswith("…")


@given(text=TEXTS, lines=st.integers(1, 3))
def test_fitted_keeps_to_its_lines(text: str, lines: int) -> None:
    """Whatever the text, it takes no more lines, no more width, and no smaller letters."""
    style, found = fitted(text, Style(12), 40, lines, least=6)
    assert len(found) <= lines
    assert 6 <= style.size <= 12
    assert all(text_width(line, style) <= 40 + 1e-9 for line in found)


def test_widths_are_those_of_the_font() -> None:
    """Widths agree with the same font as read by another library, letters set a tenth narrower."""
    path = swatchwright.sheet.__path__[0] + "/fonts/DejaVuSans.ttf"
    font = ImageFont.truetype(path, 1000, layout_engine=ImageFont.Layout.BASIC)
    text = "Strong red 0123"
    units = sum(font.getlength(letter) for letter in text)
    expected = units / 1000 * 9 * MM * NARROW
    assert text_width(text, BODY) == pytest.approx(expected, rel=2e-3)


def test_a_number_stays_with_its_unit() -> None:
    """A line does not end between a number and its unit."""
    told = "Pour 361.0 ml of it"
    narrow = text_width("Pour 361.0", BODY) + 1
    assert [printed(line) for line in wrapped(told, BODY, narrow)] == ["Pour", "361.0 ml of", "it"]


def test_a_number_stays_with_its_german_unit() -> None:
    """Litres, cups and spoons are tied to their numbers in German too."""
    for told in ("1,25 Liter", "3½ Tassen", "2 EL", "0,75 TL", "18 %", "7 Tage"):
        number = told.split(" ", maxsplit=1)[0]
        narrow = text_width(f"Nehmen Sie {number}", BODY) + 0.5
        lines = wrapped(f"Nehmen Sie {told}", BODY, narrow)
        assert [printed(line) for line in lines] == ["Nehmen Sie", told]


def test_a_long_word_breaks_at_its_hyphens() -> None:
    """A long id breaks after a hyphen where one is near the end of the line."""
    width = text_width("strong-red-oran", BODY)
    assert wrapped("strong-red-orange", BODY, width)[0] == "strong-red-"


def test_letters_that_the_font_has_not_are_named() -> None:
    """Greek, minus and dashes are there; letters of other scripts are named once each."""
    assert missing_letters("Δ − – × µ ² é ß ł Ж") == ""
    assert missing_letters("箱と箱") == "箱と"
    assert missing_letters("äöüÄÖÜß „Lasur“ – …") == ""


def test_control_characters_are_not_printed() -> None:
    """Line breaks and control characters become spaces, and spaces at the ends go."""
    assert printed(" a\n\tb\x00c\u2028 ") == "a b c"
