"""The words for a difference stand in the glossary and in the guide as the program says them."""

from __future__ import annotations

import re

import pytest

from house.tree import ROOT
from swatchwright.colour.difference import ACCEPTED, ANOTHER, JUST_SEEN, PLAIN, UNSEEN
from swatchwright.colour.names import closeness
from swatchwright.language import ENGLISH, said_in

LIMITS = (UNSEEN, JUST_SEEN, ACCEPTED, PLAIN, ANOTHER)
WORDS = tuple(closeness(limit) for limit in (*LIMITS, 2 * ANOTHER))


def test_the_glossary_has_the_scale() -> None:
    """Its table has each limit with its word, and what the limit rests on."""
    text = (ROOT / "docs" / "glossary.md").read_text(encoding="utf-8")
    rows = re.findall(r"^\| (\S+) \| ([^|]+) \| ([^|]*)\|$", text, re.MULTILINE)
    scale = [(limit, word) for limit, word, _ in rows if word in WORDS]
    assert scale == [*((f"{x:g}", closeness(x)) for x in LIMITS), ("more", WORDS[-1])]
    assert all(why.strip() for limit, word, why in rows if word in WORDS and limit != "more")


@pytest.mark.parametrize("code", [ENGLISH, "de"])
def test_the_guide_has_the_scale_in_one_place(code: str) -> None:
    """The page of the mixes tells all limits and words, in their order, in a single paragraph."""
    text = (ROOT / "docs" / "guide" / code / "mix.md").read_text(encoding="utf-8")
    words = [word if code == ENGLISH else said_in(code, word) for word in WORDS]
    (told,) = (line for line in text.splitlines() if f"*{words[0]}*" in line)
    point = "." if code == ENGLISH else ","
    place = 0
    for limit, word in zip((*LIMITS, None), words, strict=True):
        if limit is not None:
            place = told.index(f"{limit:g}".replace(".", point), place)
        # That every word has a translation, the tests of the catalogues say.
        if code == ENGLISH or word not in WORDS:
            place = told.index(f"*{word}*", place)
