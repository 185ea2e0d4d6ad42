"""Finding words in the guide: whole ones first, then beginnings, parts of compounds, and the rest.

A painter asks for "Bleifarbe", and the page says "Blei" and "alte Farbe": a word that stands
nowhere is looked for by its parts, and one in another form by its stem.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from swatchwright.acts.guide import GuidePage, guide_pages
from swatchwright.acts.guide_text import plain_lines
from swatchwright.language import ENGLISH

__all__ = ["GuideFound", "find_in_guide", "marks_in"]

_WHOLE, _BEGINS, _COMPOUND, _PART, _INSIDE = 5, 4, 3, 2, 1
"""How well a word is found: as it is, as a beginning, by all its parts, by one, inside another."""

_TITLE, _HEADED = 2, 1
"""What it is worth that the title holds a word or begins one with it; and another heading."""

_SHORTEST_PART, _SHORTEST_INSIDE = 4, 3
_JOINT, _ENDING = 2, 2
"""Letters that may stand between the parts of a compound; and of an ending that is left aside."""

_MOST_WORDS = 12
_SHORT = 5
"""Words that a heading has at the most, as a rule."""
_BEFORE, _AFTER = 40, 90
"""Letters of a line that are shown before and after what was found in it."""

_WORD = re.compile(r"\w+")
_HEADINGS = re.compile(r"^##+ +(.+)$", re.MULTILINE)
_PLAIN = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue"})


@dataclass(frozen=True, slots=True)
class GuideFound:
    """A page on which words were found: how often, and a piece of the line that tells most."""

    page: GuidePage
    count: int
    piece: str


def find_in_guide(words: str, language: str = ENGLISH) -> tuple[GuideFound, ...]:
    """Find the pages that hold any of these words, those that tell most of them first.

    A page with more of the words comes first; of pages with as many, the one that holds them as
    they are or in its title, and then the one that holds them more often.

    Parameters
    ----------
    words
        Words or pieces of words, in any order, large or small.
    language
        An ISO 639-1 code.
    """
    pages = guide_pages(language)
    levels = [_levels_in(word, pages) for word in _wanted(words)]
    ranked = [(_rank(page, levels), page) for page in pages]
    hits = sorted((one for one in ranked if one[0][0]), key=lambda one: one[0], reverse=True)
    return tuple(GuideFound(page, rank[2], _piece(page, levels)) for rank, page in hits)


def marks_in(text: str, words: str) -> tuple[tuple[int, int], ...]:
    """Give where in a text the words stand, each from its first letter to behind its last.

    Each word is given as well as it is found: where it stands as it is, no beginnings of others.
    """
    tokens = [(found.start(), _fold(found[0]), found[0]) for found in _WORD.finditer(text)]
    marks: set[tuple[int, int]] = set()
    for word in _wanted(words):
        best = _best(_levels(word, {folded for _, folded, _ in tokens}))
        for start, folded, told in tokens:
            if folded in best:
                marks.add(_mark(start, folded, told, word))
    return tuple(sorted(marks))


def _mark(start: int, folded: str, told: str, word: str) -> tuple[int, int]:
    """Give what of a word is marked: the letters that were looked for, or all of it."""
    at = folded.find(word)
    if at < 0 or len(folded) != len(told):
        return start, start + len(told)
    return start + at, start + at + len(word)


# --- one word ------------------------------------------------------------------------------------


def _wanted(words: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(_fold(word) for word in _WORD.findall(words)))[:_MOST_WORDS]


def _fold(word: str) -> str:
    """Give a word as it is compared: small, and without dots."""
    return word.casefold().translate(_PLAIN)


@lru_cache(maxsize=200)
def _levels_in(word: str, pages: tuple[GuidePage, ...]) -> Mapping[str, int]:
    """Give the words of these pages by which a word is found; the same while she types the next."""
    return _levels(word, {token for page in pages for token in _read(page).counted})


def _levels(word: str, tokens: Iterable[str]) -> Mapping[str, int]:
    """Give the words of a text by which a word is found, and how well by each."""
    found = {token: level for token in tokens if (level := _level(word, token))}
    if any(level >= _BEGINS for level in found.values()):
        return found
    heads = {token for token in found if found[token] == _PART and word.startswith(token)}
    tails = {token for token in found if found[token] == _PART and word.endswith(token)}
    whole = {
        token
        for head in heads
        for tail in tails
        if 0 <= len(word) - len(head) - len(tail) <= _JOINT
        for token in (head, tail)
    }
    return {token: level for token, level in found.items() if not whole or token in whole}


def _level(word: str, token: str) -> int:
    """Give how well a word is found by another; 0 where it is not."""
    if token == word:
        return _WHOLE
    if token.startswith(word):
        return _BEGINS
    if len(word) >= _SHORTEST_INSIDE and word in token:
        return _INSIDE
    if len(token) >= _SHORTEST_PART and (word.startswith(token) or word.endswith(token)):
        return _PART
    stem = word[: max(len(word) - _ENDING, _SHORTEST_PART + 1)]
    return _PART if len(stem) > _SHORTEST_PART and token.startswith(stem) else 0


def _best(levels: Mapping[str, int]) -> set[str]:
    """Give those by which a word is found best."""
    most = max(levels.values(), default=0)
    return {token for token, level in levels.items() if level == most}


# --- one page ------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Read:
    """A page as it is searched: its lines with their words, and the words of page and headings."""

    lines: tuple[tuple[str, tuple[str, ...]], ...]
    counted: Mapping[str, int]
    title: frozenset[str]
    headings: frozenset[str]


@cache
def _read(page: GuidePage) -> _Read:
    lines = tuple((line, _folded(line)) for line in plain_lines(page.text))
    return _Read(
        lines,
        Counter(word for _, words in lines for word in words),
        frozenset(_folded(page.title)),
        frozenset(word for line in _HEADINGS.findall(page.text) for word in _folded(line)),
    )


def _folded(line: str) -> tuple[str, ...]:
    return tuple(_fold(word) for word in _WORD.findall(line))


def _rank(page: GuidePage, levels: list[Mapping[str, int]]) -> tuple[int, int, int]:
    """Give how many of the words a page holds, how well, and how often."""
    read = _read(page)
    held, well, often = 0, 0, 0
    for one in levels:
        here = {token: level for token, level in one.items() if token in read.counted}
        if not here:
            continue
        best = _best(here)
        level = max(here.values())
        held += 1
        # Both parts of a compound tell far more than the one that is everywhere.
        well += _COMPOUND if level == _PART and len(best) > 1 else level
        heads = {token for token in here if here[token] >= _BEGINS}
        well += _TITLE if heads & read.title else _HEADED if heads & read.headings else 0
        often += sum(read.counted[token] for token in best)
    return held, well, often


def _piece(page: GuidePage, levels: list[Mapping[str, int]]) -> str:
    """Cut out of the line that tells most of the words what stands around the first of them."""
    lines = _read(page).lines
    # A line below the title: the title stands over it anyhow.
    line, _ = max(lines[1:] or lines, key=lambda one: _tells(one[1], levels))
    places = [
        (level, -found.start())
        for found in _WORD.finditer(line)
        for one in levels
        if (level := one.get(_fold(found[0]), 0))
    ]
    return _cut(line, -max(places)[1] if places else 0)


def _tells(told: tuple[str, ...], levels: list[Mapping[str, int]]) -> tuple[int, bool]:
    """Say how much a line tells of words: how well it holds them, and whether it is a sentence."""
    held = sum(max((one.get(token, 0) for token in told), default=0) for one in levels)
    return held, len(told) > _SHORT


def _cut(line: str, at: int) -> str:
    first = line.rfind(" ", 0, max(at - _BEFORE, 0) + 1) + 1 if at > _BEFORE else 0
    last = line.find(" ", at + _AFTER)
    end = len(line) if last < 0 else last
    return f"{'…' if first else ''}{line[first:end]}{'…' if end < len(line) else ''}"
