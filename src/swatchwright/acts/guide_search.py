"""Finding words in the guide: whole ones first, then beginnings, parts of compounds, and the rest.

A painter asks for "Bleifarbe", and the page says "Blei" and "alte Farbe": a word that stands
nowhere is looked for by its parts, and one in another form by its stem.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from swatchwright.acts.guide import GuidePage, guide_pages
from swatchwright.acts.guide_index import WORD, PageWords, Tokens, fold, page_words, tokens_of
from swatchwright.language import ENGLISH

__all__ = ["GuideFound", "find_in_guide", "marks_in", "read_guide"]

_WHOLE, _BEGINS, _COMPOUND, _PART, _INSIDE = 5, 4, 3, 2, 1
"""How well a word is found: as it is, as a beginning, by all its parts, by one, inside another."""

_TITLE, _HEADED = 2, 1
"""What it is worth that the title holds a word or begins one with it; and another heading."""

_SHORTEST_PART, _SHORTEST_INSIDE = 4, 3
_JOINT, _ENDING = 2, 2
"""Letters that may stand between the parts of a compound; and of an ending that is left aside."""

_MOST_WORDS, _MOST_LETTERS = 12, 500
_SHORT = 5
"""Words that a heading has at the most, as a rule."""
_BEFORE, _AFTER = 40, 90
"""Letters of a line that are shown before and after what was found in it."""

_Levels = Mapping[str, int]
"""The words by which a word is found, and how well by each."""


@dataclass(frozen=True, slots=True)
class GuideFound:
    """A page on which words were found: how often, and a piece of the line that tells most."""

    page: GuidePage
    count: int
    piece: str


def read_guide(language: str = ENGLISH) -> int:
    """Read the guide, so that words are found in it at once; give how many pages it has."""
    pages = guide_pages(language)
    tokens_of(pages)
    return len(pages)


def find_in_guide(words: str, language: str = ENGLISH) -> tuple[GuideFound, ...]:
    """Find the pages that hold any of these words, those that tell most of them first.

    A page with more of the words comes first; of pages with as many, the one that holds them as
    they are or in its title, and then the one that holds them more often.

    Parameters
    ----------
    words
        Words or pieces of words, in any order, large or small; the first 12 are looked for.
    language
        An ISO 639-1 code.
    """
    pages = guide_pages(language)
    levels = [_levels_in(word, pages) for word in _wanted(words)]
    ranked = [(_rank(page, levels), page) for page in pages]
    hits = sorted((one for one in ranked if one[0][0]), key=lambda one: one[0], reverse=True)
    best = _together(levels)
    return tuple(GuideFound(page, rank[2], _piece(page, levels, best)) for rank, page in hits)


def marks_in(text: str, words: str) -> tuple[tuple[int, int], ...]:
    """Give where in a text the words stand, each from its first letter to behind its last.

    Each word is given as well as it is found: where it stands as it is, no beginnings of others.
    """
    told = [(found.start(), fold(found[0]), found[0]) for found in WORD.finditer(text)]
    tokens = Tokens(folded for _, folded, _ in told)
    marks: set[tuple[int, int]] = set()
    for word in _wanted(words):
        best = _best(_levels(word, tokens))
        marks.update(_mark(at, folded, one, word) for at, folded, one in told if folded in best)
    return tuple(sorted(marks))


def _mark(start: int, folded: str, told: str, word: str) -> tuple[int, int]:
    """Give what of a word is marked: the letters that were looked for, or all of it."""
    at = folded.find(word)
    if at < 0 or len(folded) != len(told):
        return start, start + len(told)
    return start + at, start + at + len(word)


# --- one word ------------------------------------------------------------------------------------


def _wanted(words: str) -> tuple[str, ...]:
    told = WORD.findall(words[:_MOST_LETTERS])
    return tuple(dict.fromkeys(fold(word) for word in told))[:_MOST_WORDS]


@lru_cache(maxsize=200)
def _levels_in(word: str, pages: tuple[GuidePage, ...]) -> _Levels:
    """Give the words of these pages by which a word is found; the same while she types the next."""
    return _levels(word, tokens_of(pages))


def _levels(word: str, tokens: Tokens) -> _Levels:
    """Give the words of a text by which a word is found, and how well by each."""
    found = _found(word, tokens)
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


def _found(word: str, tokens: Tokens) -> dict[str, int]:
    """Give how well a word is found by each other that it has to do with.

    By those of which it is the beginning rather than by those that it is inside, and so on.
    """
    stem = word[: max(len(word) - _ENDING, _SHORTEST_PART + 1)]
    parts = {word[:end] for end in range(_SHORTEST_PART, len(word))}
    parts |= {word[start:] for start in range(1, len(word) - _SHORTEST_PART + 1)}
    found = dict.fromkeys((part for part in parts if part in tokens), _PART)
    if len(stem) > _SHORTEST_PART:
        found.update(dict.fromkeys(tokens.with_beginning(stem), _PART))
    if len(word) >= _SHORTEST_INSIDE:
        found.update(dict.fromkeys(tokens.with_inside(word), _INSIDE))
    found.update(dict.fromkeys(tokens.with_beginning(word), _BEGINS))
    if word in tokens:
        found[word] = _WHOLE
    return found


def _best(levels: _Levels) -> set[str]:
    """Give those by which a word is found best."""
    most = max(levels.values(), default=0)
    return {token for token, level in levels.items() if level == most}


# --- one page ------------------------------------------------------------------------------------


def _rank(page: GuidePage, levels: Sequence[_Levels]) -> tuple[int, int, int]:
    """Give how many of the words a page holds, how well, and how often."""
    read = page_words(page)
    held, well, often = 0, 0, 0
    for one in levels:
        here = {token: one[token] for token in one.keys() & read.counted.keys()}
        if not here:
            continue
        level = max(here.values())
        best = [token for token in here if here[token] == level]
        held += 1
        # Both parts of a compound tell far more than the one that is everywhere.
        well += _COMPOUND if level == _PART and len(best) > 1 else level
        titled = any(here[token] >= _BEGINS for token in here.keys() & read.title)
        headed = any(here[token] >= _BEGINS for token in here.keys() & read.headings)
        well += _TITLE if titled else _HEADED if headed else 0
        often += sum(read.counted[token] for token in best)
    return held, well, often


def _together(levels: Sequence[_Levels]) -> _Levels:
    """Give how well each word of the guide answers to any of those that are looked for."""
    best: dict[str, int] = {}
    for one in levels:
        best.update({token: max(level, best.get(token, 0)) for token, level in one.items()})
    return best


def _piece(page: GuidePage, levels: Sequence[_Levels], best: _Levels) -> str:
    """Cut out of the line that tells most of the words what stands around the first of them."""
    read = page_words(page)
    number = _telling(read, levels)
    places = [(best[token], -start) for token, start in read.words[number] if token in best]
    return _cut(read.lines[number], -max(places)[1] if places else 0)


def _telling(read: PageWords, levels: Sequence[_Levels]) -> int:
    """Give the line that tells most of words: holds them best, and is a sentence.

    It is one below the title, if there is one: the title stands over it anyhow.
    """
    told = [0] * len(read.lines)
    for one in levels:
        best: dict[int, int] = {}
        for token, level in one.items():
            for number in read.places.get(token, ()):
                if level > best.get(number, 0):
                    best[number] = level
        for number, level in best.items():
            told[number] += level
    below = range(1, len(told)) or range(len(told))
    return max(below, key=lambda number: (told[number], len(read.words[number]) > _SHORT))


def _cut(line: str, at: int) -> str:
    first = line.rfind(" ", 0, max(at - _BEFORE, 0) + 1) + 1 if at > _BEFORE else 0
    last = line.find(" ", at + _AFTER)
    end = len(line) if last < 0 else last
    return f"{'…' if first else ''}{line[first:end]}{'…' if end < len(line) else ''}"
