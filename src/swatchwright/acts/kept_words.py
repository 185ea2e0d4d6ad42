"""Words that are kept in English, told in the painter's language when they are shown.

A label of an edit, the name of a reference or a note that a copy of a job begins with is kept with
what it is about filled in, so that no catalogue has it. It is told by the sentence it was made of.
"""

from __future__ import annotations

import re
from functools import cache

from swatchwright.acts.labels import LABELS
from swatchwright.language import figure, mark, say
from swatchwright.piece.names import zone_word

__all__ = ["A_GREY", "COPIED_FROM", "kept_words"]

COPIED_FROM = mark("Copied from “{job}” ({id}).")
A_GREY = mark("a grey of {percent} %")

_SENTENCES = (*LABELS, COPIED_FROM, A_GREY)
_FIGURES = frozenset({"ml", "percent"})


def kept_words(text: str, *more: str) -> str:
    """Tell words that were kept in English, or give them as they are where they are her own.

    Parameters
    ----------
    text
        What was kept.
    more
        Further sentences with named places that it may have been made of.

    Examples
    --------
    >>> kept_words("Keep recipes for “Blanket box”")
    'Keep recipes for “Blanket box”'
    """
    said = say(text)
    if said != text:
        return said
    for sentence in (*more, *_SENTENCES):
        found = _pattern(sentence).fullmatch(text)
        if found is not None:
            told = {place: _told(place, word) for place, word in found.groupdict().items()}
            return say(sentence, **told)
    return text


def _told(place: str, word: str) -> str:
    if place in _FIGURES:
        return figure(float(word), "g")
    return zone_word(word) if place == "zone" else word


@cache
def _pattern(sentence: str) -> re.Pattern[str]:
    """Give what finds again what was filled into a sentence."""
    parts = re.split(r"\{(\w+)\}", sentence)
    found = "".join(
        (f"(?P<{part}>{_of(part)})" if at % 2 else re.escape(part)) for at, part in enumerate(parts)
    )
    return re.compile(found, re.DOTALL)


def _of(place: str) -> str:
    if place in _FIGURES:
        return r"\d+(?:\.\d+)?(?:e[+-]\d+)?"
    return r"\d+" if place == "number" else r".*"
