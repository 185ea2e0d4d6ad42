"""The catalogues of other languages hold what the program says, all of it and nothing else."""

from __future__ import annotations

import ast
from gettext import GNUTranslations
from io import BytesIO
from typing import TYPE_CHECKING

import pytest
from babel.messages import Catalog
from babel.messages.pofile import read_po

import catalogue
from house.sayings import Saying, sayings
from house.tree import PACKAGE, modules

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

OF_THE_PACKAGE = {"{first} and {last}"}
"""What the package of languages says itself, whose code is not looked at."""

every_catalogue = pytest.mark.parametrize("path", catalogue.catalogues(), ids=lambda p: p.name)


def kept(path: Path) -> Catalog:
    """Read a catalogue as it is kept."""
    with path.open("rb") as file:
        return read_po(file, locale=path.stem)


def content(of: Catalog) -> dict[tuple[object, ...], object]:
    """Give what a catalogue holds: each sentence by itself and where it is said."""
    return {
        (message.context, message.id): (
            catalogue.texts(message.string),
            sorted({file for file, _ in message.locations}),
        )
        for message in catalogue.messages(of)
    }


def spoken() -> Iterator[tuple[str, Saying]]:
    """Give each place where the program says something, and what."""
    for path, tree in modules(PACKAGE):
        if path != catalogue.FOLDER / "__init__.py":
            for saying in sayings(tree):
                yield f"{path.relative_to(PACKAGE)}:{saying.line}", saying


def is_gathered(saying: Saying, gathered: Catalog) -> bool:
    """Tell whether a catalogue holds what is said, or there is nothing to hold."""
    match saying.texts:
        case () | ("",):
            return True
        case (context, text) if saying.function.endswith("_in"):
            return gathered.get(text, context) is not None
        case (text, *more):
            found = gathered.get(text)
            return found is not None and (not more or catalogue.texts(found.id)[1:] == (*more,))
    return False


# --- the catalogues ------------------------------------------------------------------------------


def test_there_is_german() -> None:
    """The tests below have a catalogue to look at."""
    assert "de.po" in [path.name for path in catalogue.catalogues()]


@every_catalogue
def test_a_catalogue_is_up_to_date(path: Path) -> None:
    """It holds what the program says now: `python tools/catalogue.py` would change nothing."""
    assert content(kept(path)) == content(catalogue.renewed(path))


@every_catalogue
def test_nothing_lacks_a_translation(path: Path) -> None:
    """Each sentence is translated, in each of its forms."""
    assert [message.id for message in catalogue.lacking(kept(path))] == []


@every_catalogue
def test_no_translation_is_unsure(path: Path) -> None:
    """None is marked as fuzzy: gettext would leave it out."""
    assert [message.id for message in catalogue.messages(kept(path)) if message.fuzzy] == []


@every_catalogue
def test_no_translation_is_spoilt(path: Path) -> None:
    """Each translation has the places and the tags of its sentence."""
    translated = (m for m in catalogue.messages(kept(path)) if all(catalogue.texts(m.string)))
    trouble = {message.id: catalogue.spoilt(message) for message in translated}
    assert {id_: what for id_, what in trouble.items() if what} == {}


@every_catalogue
def test_the_compiled_catalogue_is_of_the_same_words(path: Path) -> None:
    """What the program reads is what the catalogue beside it compiles to."""
    with path.with_suffix(".mo").open("rb") as file:
        in_use = read_mo(file.read())
    assert in_use == read_mo(catalogue.compiled(kept(path)))


def read_mo(data: bytes) -> dict[object, str]:
    """Read a compiled catalogue as the program does, without its head, which names its maker."""
    words: dict[object, str] = dict(vars(GNUTranslations(BytesIO(data)))["_catalog"])
    words.pop("", None)
    return words


# --- what the program says -----------------------------------------------------------------------


def test_all_that_is_said_is_gathered() -> None:
    """No sentence stands where the gathering does not see it, as within other braces."""
    gathered = catalogue.said()
    said = list(spoken())
    assert len(said) > 300
    assert [f"{at} {s.texts}" for at, s in said if not is_gathered(s, gathered)] == []


def test_nothing_else_is_gathered() -> None:
    """Only what is said gets to the translator, and not the key of a table it is looked up in."""
    texts = {text for _, saying in spoken() for text in saying.texts} | OF_THE_PACKAGE
    gathered = {catalogue.texts(m.id)[0] for m in catalogue.messages(catalogue.said())}
    assert gathered - texts == set()


def test_no_sentence_is_glued() -> None:
    """What is said is a whole literal, so that another language can order its words anew."""
    assert [at for at, saying in spoken() if saying.glued] == []


def test_every_place_gets_its_value() -> None:
    """A sentence is given a value for each place, and none that it has no place for."""
    wrong = []
    for at, saying in spoken():
        counted = frozenset({"count"}) if saying.function == "say_count" else frozenset[str]()
        # Without any value a sentence is a form, to be filled in elsewhere.
        if saying.texts and saying.given and saying.wanted - counted != saying.given - counted:
            wrong.append(f"{at} {saying.texts}: {sorted(saying.given)}")
    assert wrong == []


# --- these tests see what they look for ----------------------------------------------------------


def said_in(source: str) -> Saying:
    """Read the one call in a line of a program."""
    return next(sayings(ast.parse(source)))


def test_what_is_not_gathered_would_be_seen() -> None:
    """A sentence that no catalogue has is found, also if only its context or plural is new."""
    gathered = Catalog()
    gathered.add("dry")
    gathered.add(("{count} jar", "{count} jars"))
    assert is_gathered(said_in('say("dry")'), gathered)
    assert is_gathered(said_in("say(kind.value)"), gathered)
    assert is_gathered(said_in('say_count("{count} jar", "{count} jars", n)'), gathered)
    assert not is_gathered(said_in('mark("wet")'), gathered)
    assert not is_gathered(said_in('say_in("a verb", "dry")'), gathered)
    assert not is_gathered(said_in('say_count("{count} jar", "{count} pots", n)'), gathered)


@pytest.mark.parametrize("text", ['f"{n} ml"', '"a " + word', '"%s" % n'])
def test_a_glued_sentence_would_be_seen(text: str) -> None:
    """Braces filled in beforehand and added pieces are found."""
    assert said_in(f"say({text})").glued
    assert not said_in('say("a" "b", n=f"{n}")').glued


def test_a_missing_value_would_be_seen() -> None:
    """The places of a sentence and the values given to it are read."""
    saying = said_in('say("{a:.1f} of {b}", a=1, c=2)')
    assert saying.wanted == {"a", "b"}
    assert saying.given == frozenset({"a", "c"})
    assert said_in('say("{a}", **values)').given is None


def test_a_spoilt_translation_would_be_seen() -> None:
    """A place that got lost or was renamed is found, and one that a form may leave out is not."""
    of = Catalog(locale="de")
    assert catalogue.spoilt(of.add("{ml:.1f} ml of {name}", "{ml:.1f} ml"))
    assert catalogue.spoilt(of.add("by {name}", "von {nam}"))
    assert catalogue.spoilt(of.add("<p>{tip}</p>", "{tip}"))
    assert not catalogue.spoilt(of.add("{a} or {b}", "{b} oder {a}"))
    assert not catalogue.spoilt(of.add(("one jar", "{count} jars"), ("ein Glas", "{count} Gläser")))


def test_a_missing_translation_would_be_seen() -> None:
    """A sentence counts as translated when all of its forms are."""
    of = Catalog(locale="de")
    of.add("dry", "trocken")
    of.add("wet", "")
    of.add(("{count} jar", "{count} jars"), ("{count} Glas", ""))
    assert {catalogue.texts(m.id)[0] for m in catalogue.lacking(of)} == {"wet", "{count} jar"}
