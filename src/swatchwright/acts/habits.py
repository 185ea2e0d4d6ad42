"""How she likes the window, written down beside the store for the next start."""

from __future__ import annotations

import json
import math
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from unicodedata import category

from swatchwright.acts.whole_file import write_whole
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.store.place import usual_place

__all__ = [
    "LARGEST_LETTERS",
    "MOST_MONEY",
    "SMALLEST_LETTERS",
    "Habits",
    "habits",
    "is_money",
    "keep_dark",
    "keep_language",
    "keep_letters",
    "keep_money",
    "may_be_money",
]

SMALLEST_LETTERS, LARGEST_LETTERS = 0.9, 2.0
"""How many times the usual size letters are at the least and at the most."""

MOST_MONEY = 8
"""Letters and signs that the name of her money has at the most."""

_FILE = "habits.json"
_BETWEEN = frozenset(" .'’/-\N{NO-BREAK SPACE}\N{NARROW NO-BREAK SPACE}")
"""What else a name of money may hold: kr., F CFA."""


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
    money
        What she calls her money, which then stands beside every price; empty for nothing.
    """

    language: str = ""
    dark: bool = False
    letters: float = 1.0
    money: str = ""


def habits() -> Habits:
    """Read how the window was last set up; as at the first start where that cannot be read."""
    try:
        told = json.loads(_place().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return Habits()
    if not isinstance(told, dict):
        return Habits()
    language, money = told.get("language"), told.get("money")
    return Habits(
        language if isinstance(language, str) else "",
        told.get("dark") is True,
        _letters(told.get("letters")),
        money if isinstance(money, str) and is_money(money) else "",
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


def keep_money(name: str) -> None:
    """Write down what she calls her money; empty for nothing.

    Raises
    ------
    MendableError
        If it can be no name of money, which `is_money` tells.
    """
    if name and not is_money(name):
        raise MendableError(
            say("Money cannot be called “{name}”.", name=name),
            say("Give a sign or a short word, up to {most} letters.", most=MOST_MONEY),
        )
    _keep(replace(habits(), money=name))


def may_be_money(text: str) -> bool:
    """Tell whether a text may become a name of money as more of it is typed.

    It is short and holds letters, signs of currency and a few marks between: no figures, which
    would run into those of the price.
    """
    return len(text) <= MOST_MONEY and all(
        letter in _BETWEEN or _is_letter_or_sign(letter) or category(letter) == "Mn"
        for letter in text
    )


def is_money(name: str) -> bool:
    """Tell whether money can be called so: it has a letter or a sign, and no space around it."""
    return may_be_money(name) and name == name.strip() and any(_is_letter_or_sign(n) for n in name)


def _is_letter_or_sign(letter: str) -> bool:
    return letter.isalpha() or category(letter) == "Sc"


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
