"""How she likes the window, written down beside the store for the next start."""

from __future__ import annotations

import json
import math
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from pathlib import Path

from swatchwright.acts.whole_file import write_whole
from swatchwright.errors import MendableError
from swatchwright.shelf.store.place import usual_place

__all__ = [
    "LARGEST_LETTERS",
    "SMALLEST_LETTERS",
    "Habits",
    "habits",
    "keep_dark",
    "keep_language",
    "keep_letters",
]

SMALLEST_LETTERS, LARGEST_LETTERS = 0.9, 1.5
"""How many times the usual size letters are at the least and at the most."""

_FILE = "habits.json"


@dataclass(frozen=True, slots=True)
class Habits:
    """How the window is set up.

    Parameters
    ----------
    language
        An ISO 639-1 code; empty for the language of the computer.
    dark
        Whether the bench is dark.
    letters
        How many times the usual size the letters are, 0.9 to 1.5.
    """

    language: str = ""
    dark: bool = False
    letters: float = 1.0


def habits() -> Habits:
    """Read how the window was last set up; as at the first start where that cannot be read."""
    try:
        told = json.loads(_place().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return Habits()
    if not isinstance(told, dict):
        return Habits()
    language, dark = told.get("language"), told.get("dark")
    return Habits(
        language if isinstance(language, str) else "", dark is True, _letters(told.get("letters"))
    )


def keep_language(code: str) -> None:
    """Write down which language is spoken from the next start on, an ISO 639-1 code."""
    _keep(replace(habits(), language=code))


def keep_dark(*, dark: bool) -> None:
    """Write down whether the bench is dark."""
    _keep(replace(habits(), dark=dark))


def keep_letters(size: float) -> None:
    """Write down how many times the usual size the letters are; it is brought to 0.9 to 1.5."""
    _keep(replace(habits(), letters=_letters(size)))


def _letters(told: object) -> float:
    """Give a size that was told in its bounds; the usual one where none was."""
    if isinstance(told, bool) or not isinstance(told, int | float) or not math.isfinite(told):
        return 1.0
    return round(min(max(told, SMALLEST_LETTERS), LARGEST_LETTERS), 2)


def _keep(kept: Habits) -> None:
    """Write it down; where that cannot be done, the next start is as the last one."""
    place = _place()
    with suppress(OSError, MendableError):
        place.parent.mkdir(parents=True, exist_ok=True)
        write_whole(place, json.dumps(asdict(kept)).encode())


def _place() -> Path:
    return usual_place().with_name(_FILE)
