"""English by itself, another language by its catalogue, numbers as each writes them.

The catalogue is one of the tests' own, made by Babel, so that no translation of the program is
needed here. How German writes numbers is compared with Babel, whose rules are those of the Unicode
CLDR.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from babel.messages import Catalog
from babel.messages.mofile import write_mo
from babel.numbers import format_decimal, format_percent

import swatchwright.language as spoken
from swatchwright.language import (
    ENGLISH,
    bind_units,
    bound,
    figure,
    language,
    languages,
    listed,
    mark,
    mark_in,
    said_in,
    say,
    say_count,
    say_in,
    use_language,
)

if TYPE_CHECKING:
    from collections.abc import Iterator


@pytest.fixture(autouse=True)
def german_catalogue(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Lay out a small German catalogue, and put English back after each test."""
    words = Catalog(locale="de")
    words.add("Let it dry", "Trocknen lassen")
    words.add("{name} is {off:.1f} off", "{name}: Abstand {off:.1f}")
    words.add("{first} and {last}", "{first} und {last}")
    words.add("light", "leicht")
    words.add("light", "hell", context="of a colour")
    words.add(("{count} part", "{count} parts"), ("{count} Teil", "{count} Teile"))
    words.add("{count:g} of {name}", "{count:g} von {name}")
    with (tmp_path / "de.mo").open("wb") as file:
        write_mo(file, words)
    monkeypatch.setattr(spoken, "_FOLDER", tmp_path)
    yield
    use_language(ENGLISH)


@pytest.fixture
def german() -> None:
    """Speak German."""
    use_language("de")


def test_english_is_spoken_from_the_start() -> None:
    """Nobody has to choose: the first language is English."""
    assert language() == ENGLISH


def test_english_stands_as_it_is_written() -> None:
    """A sentence in English is the one in the code, with its values put in as Python would."""
    assert say("Let it dry") == "Let it dry"
    assert say("{name} is {off:.1f} off", name="Blue 2.5", off=2.5) == "Blue 2.5 is 2.5 off"
    assert say_in("of a colour", "light") == "light"
    assert say_count("{count} part", "{count} parts", 1) == "1 part"
    assert say_count("{count} part", "{count} parts", 3) == "3 parts"


def test_the_languages_are_those_with_a_catalogue() -> None:
    """English comes first, then what was compiled."""
    assert languages() == (ENGLISH, "de")


@pytest.mark.usefixtures("german")
def test_a_sentence_is_said_in_german() -> None:
    """The sentence of the catalogue takes the place of the English one, and so do its values."""
    assert say("Let it dry") == "Trocknen lassen"
    assert say("{name} is {off:.1f} off", name="Blau", off=2.0) == "Blau: Abstand 2,0"


@pytest.mark.usefixtures("german")
def test_what_has_no_translation_stays_english() -> None:
    """A sentence that is not in the catalogue is told as it was written, its numbers in German."""
    assert say("Stir it well") == "Stir it well"
    assert say("{ml:.1f} ml more", ml=2.5) == "2,5 ml more"


@pytest.mark.usefixtures("german")
@pytest.mark.parametrize(("count", "told"), [(0, "0 Teile"), (1, "1 Teil"), (2, "2 Teile")])
def test_the_number_chooses_the_form(count: int, told: str) -> None:
    """One is told in the singular; none and many in the plural (Unicode CLDR, by Babel)."""
    assert say_count("{count} part", "{count} parts", count) == told


@pytest.mark.usefixtures("german")
def test_the_context_tells_two_meanings_apart() -> None:
    """One English word becomes another word in each of its meanings."""
    assert say("light") == "leicht"
    assert say_in("of a colour", "light") == "hell"
    assert say_in("of a lamp", "light") == "light"


@pytest.mark.usefixtures("german")
def test_a_number_gets_a_comma_and_a_space_before_per_cent() -> None:
    """Numbers that are put in are written as German writes them (Unicode CLDR)."""
    share = format_percent(0.455, "#,##0.0\N{NO-BREAK SPACE}%", locale="de")
    assert say("{share:.1%} left", share=0.455) == f"{share} left"
    assert say("{count:g} of {name}", count=0.5, name="Weiß") == "0,5 von Weiß"


@pytest.mark.usefixtures("german")
@pytest.mark.parametrize("text", ["a.jpg", "1.5 mm", "50%", "shelf.v2/mine.csv"])
def test_text_keeps_its_points(text: str) -> None:
    """A name or another text that is put in keeps its points and per cent signs."""
    assert say("There is no file “{path}”.", path=text) == f"There is no file “{text}”."


@pytest.mark.usefixtures("german")
def test_a_path_keeps_its_points() -> None:
    """A path is no number."""
    assert say("no {path}", path=Path("photos") / "a.b.jpg").endswith("a.b.jpg")


@pytest.mark.usefixtures("german")
def test_the_points_of_the_sentence_stay() -> None:
    """Only values are rewritten: a full stop, and a figure written out, stay as translated."""
    assert say("{count} of 2.5.", count=1.5) == "1,5 of 2.5."


def test_an_unknown_language_is_english() -> None:
    """A language without a catalogue falls back to English, also after another was spoken."""
    use_language("de")
    use_language("xx")
    assert language() == ENGLISH
    assert say("Let it dry") == "Let it dry"


@pytest.mark.parametrize("code", ["de", "de_AT", "de-CH", "DE", "de_DE.UTF-8"])
def test_german_of_every_country_is_german(code: str) -> None:
    """A country or a character set behind the language changes nothing."""
    use_language(code)
    assert language() == "de"


@pytest.mark.parametrize("code", ["", "C", "../de", "deu"])
def test_what_is_no_code_is_english(code: str) -> None:
    """Whatever a system calls its language, nothing breaks."""
    use_language(code)
    assert language() == ENGLISH


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), ""),
        (("a jar",), "a jar"),
        (("a jar", "a rag"), "a jar and a rag"),
        (("a jar", "a spoon", "a rag"), "a jar, a spoon and a rag"),
    ],
)
def test_words_are_listed_as_in_a_sentence(words: tuple[str, ...], told: str) -> None:
    """Commas between words, “and” before the last, nothing around a single one."""
    assert listed(words) == told


def test_any_words_that_come_one_by_one_are_listed() -> None:
    """A list may come from a generator."""
    assert listed(word for word in ("red", "blue")) == "red and blue"


@pytest.mark.usefixtures("german")
def test_words_are_listed_in_german() -> None:
    """The word between the last two is that of the language."""
    assert listed(["Rot", "Grün", "Blau"]) == "Rot, Grün und Blau"


def test_a_figure_is_written_as_python_does_in_english() -> None:
    """A number that stands alone has a point in English."""
    assert figure(2.5, ".1f") == "2.5"
    assert figure(0.45, ".0%") == "45%"


@pytest.mark.usefixtures("german")
def test_a_figure_has_a_comma_in_german() -> None:
    """A number that stands alone is written as within a sentence (Unicode CLDR)."""
    assert figure(2.5, ".1f") == format_decimal(2.5, locale="de")
    # CLDR has a hyphen; a true minus is what print has.
    assert figure(-0.25, ".2f") == format_decimal(-0.25, locale="de").replace("-", "\N{MINUS SIGN}")
    assert figure(0.45, ".0%") == format_percent(0.45, locale="de")
    assert figure(12, "d") == format_decimal(12, locale="de")


@pytest.mark.parametrize("code", ["en", "de"])
def test_braces_without_values_stand(code: str) -> None:
    """Where nothing is to be put in, braces are letters like any other."""
    use_language(code)
    assert say("Type {name} here, or {0}") == "Type {name} here, or {0}"
    assert say("half a brace {") == "half a brace {"


@pytest.mark.parametrize("code", ["en", "de"])
def test_nothing_says_nothing(code: str) -> None:
    """An empty text stays empty: gettext would give the head of its catalogue for it."""
    use_language(code)
    assert not say("")


@pytest.mark.usefixtures("german")
def test_what_is_marked_stays_english_until_it_is_said() -> None:
    """Marking changes nothing, so that a key may be marked; saying it later translates it."""
    assert mark("Let it dry") == "Let it dry"
    assert say(mark("Let it dry")) == "Trocknen lassen"
    assert mark_in("of a colour", "light") == "light"
    assert say_in("of a colour", mark_in("of a colour", "light")) == "hell"


def test_a_sentence_is_said_in_another_language_than_the_one_in_use() -> None:
    """It comes from the other catalogue, with that language's numbers; nothing else changes."""
    assert said_in("de", "{name} is {off:.1f} off", name="Blau", off=2.5) == "Blau: Abstand 2,5"
    assert language() == ENGLISH
    assert say("Let it dry") == "Let it dry"


@pytest.mark.usefixtures("german")
def test_english_is_said_while_german_is_in_use() -> None:
    """The source language can be said too, with a point in its numbers."""
    assert said_in("en", "{name} is {off:.1f} off", name="Blue", off=2.5) == "Blue is 2.5 off"
    assert say("Let it dry") == "Trocknen lassen"


def test_what_is_said_in_no_known_language_is_english() -> None:
    """A code without a catalogue gives English, a country goes with its language, nothing stays."""
    assert said_in("xx", "Let it dry") == "Let it dry"
    assert said_in("de_AT", "Let it dry") == "Trocknen lassen"
    assert not said_in("de", "")


def test_a_number_below_zero_has_a_true_minus() -> None:
    """What is told has U+2212, not a hyphen; what rounds to nothing has no sign at all."""
    assert say("a* {a:.1f}", a=-2.94) == "a* \N{MINUS SIGN}2.9"
    assert figure(-4, "d") == "\N{MINUS SIGN}4"
    assert figure(-0.04, ".1f") == "0.0"
    assert figure(2.5, "+.1f") == "+2.5"
    assert say("{name}", name="-x") == "-x"


@pytest.fixture
def units_bound() -> Iterator[None]:
    """Bind units to their numbers for a test, as the window does."""
    bind_units()
    yield
    bind_units(bind=False)


@pytest.mark.usefixtures("units_bound")
@pytest.mark.parametrize("unit", ["ml", "l", "g", "m²", "mm", "h", "min", "%"])
def test_a_unit_stays_on_the_line_of_its_number(unit: str) -> None:
    """Between them is a space that ends no line (ISO 80000-1), in a sentence as alone."""
    told = say("{ml:.1f} " + unit + " of it", ml=3.7)
    assert told == f"3.7\N{NO-BREAK SPACE}{unit} of it"
    assert bound(f"3.7 {unit}") == f"3.7\N{NO-BREAK SPACE}{unit}"


@pytest.mark.usefixtures("units_bound")
def test_a_word_that_begins_as_a_unit_does_is_none() -> None:
    """A line may end before any other word: 2 layers, 3 grey cards."""
    for told in ("2 layers", "3 grey cards", "1 minute", "2 mm2x"):
        assert bound(told) == told


def test_a_script_reads_usual_spaces() -> None:
    """Nobody asked for it: the commands print what they printed."""
    assert say("{ml} ml", ml=3) == bound("3 ml") == "3 ml"
