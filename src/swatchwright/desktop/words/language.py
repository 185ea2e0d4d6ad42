"""The words of choosing a language."""

from __future__ import annotations

from swatchwright.language import say

LANGUAGE = say("Language")
LANGUAGE_TIP = say("The language of the window, the sheet and the guide")
OWN_NAMES = {"en": "English", "de": "Deutsch"}
"""Each language by its own name, which is not translated."""
START_AGAIN = say("Start again now")
LATER = say("Later")


def from_next_start(name: str) -> str:
    """Say when a chosen language is spoken."""
    return say(
        "{language} is spoken from the next start on. Your job is kept and comes back.",
        language=name,
    )
