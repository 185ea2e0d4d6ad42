"""The words of the guide as they are looked through: each by the pages and lines that hold it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from swatchwright.acts.guide import GuidePage
from swatchwright.acts.guide_text import plain_lines

__all__ = ["WORD", "PageWords", "Tokens", "fold", "page_words", "tokens_of"]

WORD = re.compile(r"\w+")
_HEADINGS = re.compile(r"^##+ +(.+)$", re.MULTILINE)
_PLAIN = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue"})
_BETWEEN = "\n"
"""Stands before and behind each word; no word holds it."""


def fold(word: str) -> str:
    """Give a word as it is compared: small, and without dots."""
    return word.casefold().translate(_PLAIN)


class Tokens:
    """Folded words, all in one string: so a piece of a word is found in all of them at once."""

    def __init__(self, tokens: Iterable[str]) -> None:
        self._tokens = frozenset(tokens)
        self._joined = _BETWEEN.join(["", *sorted(self._tokens), ""])

    def __contains__(self, token: str) -> bool:
        return token in self._tokens

    def with_inside(self, piece: str) -> Iterator[str]:
        """Give the words that hold a piece, wherever in them."""
        joined = self._joined
        at = joined.find(piece)
        while at >= 0:
            end = joined.index(_BETWEEN, at)
            yield joined[joined.rindex(_BETWEEN, 0, at) + 1 : end]
            at = joined.find(piece, end)

    def with_beginning(self, piece: str) -> Iterator[str]:
        """Give the words that begin with a piece."""
        joined = self._joined
        at = joined.find(_BETWEEN + piece)
        while at >= 0:
            end = joined.index(_BETWEEN, at + 1)
            yield joined[at + 1 : end]
            at = joined.find(_BETWEEN + piece, end)


@dataclass(frozen=True, slots=True, eq=False)
class PageWords:
    """A page as it is searched.

    Parameters
    ----------
    lines
        Its lines as they are read.
    words
        The words of each, in their order, with the letter at which each begins.
    places
        The numbers of the lines that hold a word.
    counted
        How often it holds a word.
    title, headings
        The words of its title and of its other headings.
    """

    lines: tuple[str, ...]
    words: tuple[tuple[tuple[str, int], ...], ...]
    places: Mapping[str, tuple[int, ...]]
    counted: Mapping[str, int]
    title: frozenset[str]
    headings: frozenset[str]


@cache
def page_words(page: GuidePage) -> PageWords:
    """Give the words of a page; once that was done, at once."""
    lines = plain_lines(page.text)
    words = tuple(tuple(_placed(line)) for line in lines)
    folded = [[token for token, _ in told] for told in words]
    places: dict[str, list[int]] = {}
    for number, told in enumerate(folded):
        for token in set(told):
            places.setdefault(token, []).append(number)
    return PageWords(
        lines,
        words,
        {token: tuple(numbers) for token, numbers in places.items()},
        Counter(token for told in folded for token in told),
        _folded(page.title),
        frozenset(token for line in _HEADINGS.findall(page.text) for token in _folded(line)),
    )


@cache
def tokens_of(pages: tuple[GuidePage, ...]) -> Tokens:
    """Give the words of all these pages; once that was done, at once."""
    return Tokens(token for page in pages for token in page_words(page).counted)


def _placed(line: str) -> Iterator[tuple[str, int]]:
    return ((fold(found[0]), found.start()) for found in WORD.finditer(line))


def _folded(line: str) -> frozenset[str]:
    return frozenset(token for token, _ in _placed(line))
