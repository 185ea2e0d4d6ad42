"""What a picture shows, told for whoever does not see it, or not in its colours."""

from __future__ import annotations

from collections.abc import Iterable

from swatchwright.colour.convert import lab_to_hex
from swatchwright.colour.names import colour_name
from swatchwright.desktop.words.bits import parts_word
from swatchwright.language import figure, say
from swatchwright.values import Lab

__all__ = ["NOTHING_MARKED", "colour_told", "fields_told", "mark_told", "part_told", "share_told"]

NOTHING_MARKED = say("Nothing is marked yet.")


def colour_told(word: str, lab: Lab) -> str:
    """Tell a field: its word, the name of its colour, and what the screen shows."""
    return say("{word}: {name}, {code}", word=word, name=colour_name(lab), code=lab_to_hex(lab))


def fields_told(fields: Iterable[tuple[str, Lab]]) -> str:
    """Tell fields that touch; those without a word are told by the one that has it."""
    return "; ".join(colour_told(word, lab) for word, lab in fields if word)


def part_told(count: int, paint: str) -> str:
    """Tell a piece of a bar of parts."""
    return say("{parts} of {paint}", parts=parts_word(count), paint=paint)


def share_told(share: float, paint: str) -> str:
    """Tell a piece of a bar of shares."""
    return say("{share} of {paint}", share=figure(share, ".1%"), paint=paint)


def mark_told(word: str, left: float, top: float, wide: float, high: float) -> str:
    """Tell where a box lies in a photo, each number a share of the photo."""
    return say(
        "{word}: {left:.0%} from the left, {top:.0%} down, {wide:.0%} wide, {high:.0%} high",
        word=word,
        left=left,
        top=top,
        wide=wide,
        high=high,
    )
