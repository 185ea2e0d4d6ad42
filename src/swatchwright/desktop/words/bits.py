"""Small words that many pages use."""

from __future__ import annotations

from swatchwright.colour.names import SCALE
from swatchwright.language import ENGLISH, bound, figure, language, say, say_count

__all__ = [
    "SCALE_TIP",
    "about",
    "adding",
    "amount",
    "first_low",
    "first_up",
    "millilitres",
    "parts_word",
]


SCALE_TIP = f"<p>{say(SCALE)}</p>"
"""Explains every figure of a difference, in the same words wherever one is told."""


def first_up(text: str) -> str:
    """Begin with a capital."""
    return f"{text[:1].upper()}{text[1:]}"


def first_low(text: str) -> str:
    """Begin with a small letter, where the language does not give nouns a capital."""
    return f"{text[:1].lower()}{text[1:]}" if language() == ENGLISH else text


def about(word: str) -> str:
    """Name a field whose colour no screen shows as it is."""
    return say("{word}, about", word=word)


def adding(what: str) -> str:
    """Name a button that adds something, for a screen reader."""
    return say("Add {what}", what=what)


def parts_word(count: int) -> str:
    """Say how many parts."""
    return say_count("{count} part", "{count} parts", count)


def millilitres(ml: float) -> str:
    """Say a volume."""
    return bound(f"{amount(ml)} ml")


def amount(value: float) -> str:
    """Write an amount, to what can be measured of it."""
    return figure(value, ".1f" if value < 20 else ".0f")
