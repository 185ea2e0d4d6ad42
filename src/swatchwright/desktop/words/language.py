"""The words of choosing a language; those of the offer are said in the language that was chosen."""

from __future__ import annotations

from swatchwright.language import mark, said_in, say

LANGUAGE = say("Language")
LANGUAGE_TIP = say("The language of the window, the sheet and the guide")
OWN_NAMES = {"en": "English", "de": "Deutsch"}
"""Each language by its own name, which is not translated."""
_FROM_NEXT_START = mark(
    "{language} is spoken from the next start on. Your job is kept and comes back."
)
_START_AGAIN = mark("Start again now")
_LATER = mark("Later")


def from_next_start(code: str) -> str:
    """Say in a chosen language when it is spoken."""
    return said_in(code, _FROM_NEXT_START, language=OWN_NAMES.get(code, code))


def start_again(code: str) -> str:
    """Name in a chosen language the button that starts again."""
    return said_in(code, _START_AGAIN)


def later(code: str) -> str:
    """Name in a chosen language the button that puts it off."""
    return said_in(code, _LATER)
