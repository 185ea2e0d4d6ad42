"""The open text that stands in the square code of a sheet or a label, written and read.

It is lines of UTF-8, told in docs/sheet.md: ``SWATCHWRIGHT 1``, then a word and its value on each
line. A reader passes over words it does not know, so that later versions can add some; what changes
the meaning of the old ones counts the number up.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.values import Lab

__all__ = ["MOST_BYTES", "MOST_PAINTS", "CodePaint", "CodeRecipe", "read_code", "write_code"]

MOST_BYTES = 600
"""Bytes of text in a code: a square of 93 modules, which a phone reads from a few centimetres."""

MOST_PAINTS = 8
_MOST_TEXT = 20_000
_MOST_ID = 60
_MOST_NAME = 80
_MOST_PARTS = 1e6
_MOST_ML = 1e6
_HEAD = "SWATCHWRIGHT"
_VERSION = 1
_DAY = re.compile(r"\d{4}-\d\d-\d\d")


@dataclass(frozen=True, slots=True)
class CodePaint:
    """A paint of a recipe: its id, parts above 0 to six digits, and its name, if there was room."""

    id: str
    parts: float
    name: str = ""


@dataclass(frozen=True, slots=True)
class CodeRecipe:
    """A recipe as a code holds it.

    Parameters
    ----------
    paints
        One to eight.
    title, zone
        The piece, and the zone of it; each may be empty.
    wanted, dry
        The colour that was wanted, and that of the dry mix, to a tenth; None where not told.
    day
        As in 2026-03-01; empty where not told.
    batch
        Its number in the job; None where not told.
    ml
        How much was mixed, to a tenth; None where not told.
    """

    paints: tuple[CodePaint, ...]
    title: str = ""
    zone: str = ""
    wanted: Lab | None = None
    dry: Lab | None = None
    day: str = ""
    batch: int | None = None
    ml: float | None = None


# --- writing -------------------------------------------------------------------------------------


def write_code(recipe: CodeRecipe, most: int = MOST_BYTES) -> str:
    """Write a recipe as text of at most so many bytes.

    Where it would be longer, names of paints go first, then the title and the zone. What makes the
    colour always stays, unless even that is too long.

    Raises
    ------
    MendableError
        If it has no paints or too many, an id is none, or it cannot be made short enough.
    """
    _check_paints(recipe.paints)
    bare = tuple(replace(paint, name="") for paint in recipe.paints)
    shorter = (
        recipe,
        replace(recipe, paints=bare),
        replace(recipe, paints=bare, title="", zone=_plain(recipe.zone, 20)),
        replace(recipe, paints=bare, title="", zone=""),
    )
    for tried in shorter:
        text = "\n".join(_lines(tried))
        if len(text.encode()) <= most:
            return text
    raise MendableError(
        say("The recipe does not fit into a code of {most} bytes.", most=most),
        say("Give its paints shorter ids."),
    )


def _lines(recipe: CodeRecipe) -> list[str]:
    told = [
        ("title", _plain(recipe.title, _MOST_NAME)),
        ("zone", _plain(recipe.zone, _MOST_NAME)),
        ("day", recipe.day),
        ("batch", "" if recipe.batch is None else str(recipe.batch)),
        ("ml", "" if recipe.ml is None else f"{recipe.ml:.1f}".removesuffix(".0")),
        ("lab", _lab_text(recipe.wanted)),
        ("dry", _lab_text(recipe.dry)),
    ]
    head = [f"{_HEAD} {_VERSION}"]
    return [*head, *(f"{word} {value}" for word, value in told if value), *_paint_lines(recipe)]


def _paint_lines(recipe: CodeRecipe) -> list[str]:
    return [
        f"mix {p.id}={p.parts:.6g} {_plain(p.name, _MOST_NAME)}".rstrip() for p in recipe.paints
    ]


def _lab_text(lab: Lab | None) -> str:
    return "" if lab is None else " ".join(f"{v:.1f}" for v in lab.triple)


def _plain(text: str, most: int) -> str:
    """Give a text on one line, without what cannot be written, cut to a length."""
    letters = (" " if unicodedata.category(c)[0] in "CZ" else c for c in text)
    return " ".join("".join(letters).split())[:most].strip()


# --- reading -------------------------------------------------------------------------------------


def read_code(text: str) -> CodeRecipe:
    """Read the text of a code.

    Raises
    ------
    MendableError
        If it is none of ours, of a later version, or a value in it cannot be.
    """
    if len(text) > _MOST_TEXT:
        raise _not_ours(say("it is far too long"))
    lines = [line.strip() for line in text.replace("\r", "\n").split("\n") if line.strip()]
    _check_head(lines[0] if lines else "")
    recipe, paints = CodeRecipe(()), []
    for line in lines[1:]:
        word, _, value = line.partition(" ")
        if word == "mix":
            paints.append(_paint(value.strip()))
        elif word in _WORDS:
            recipe = _WORDS[word](recipe, value.strip())
    _check_paints(paints)
    return replace(recipe, paints=tuple(paints))


def _check_head(line: str) -> None:
    word, _, version = line.partition(" ")
    if word != _HEAD or not version.strip().isascii() or not version.strip().isdecimal():
        raise _not_ours(say("its first line is not “{line}”", line=f"{_HEAD} {_VERSION}"))
    if version.strip().lstrip("0") != str(_VERSION):
        raise MendableError(
            say(
                "The code is of version {version}, and this program reads {known}.",
                version=version.strip()[:10],
                known=_VERSION,
            ),
            say("Bring Swatchwright up to date and read it again."),
        )


def _paint(value: str) -> CodePaint:
    amount, _, name = value.partition(" ")
    id_, equals, parts = amount.rpartition("=")
    if not equals:
        told = say("“{text}” is not a paint and its parts", text=f"mix {value[:60]}")
        raise _not_ours(told)
    return CodePaint(id_, _number(parts, "mix", _MOST_PARTS), _plain(name, _MOST_NAME))


def _check_paints(paints: Sequence[CodePaint]) -> None:
    if not 1 <= len(paints) <= MOST_PAINTS:
        raise MendableError(
            say("The recipe has {count} paints.", count=len(paints)),
            say("A code holds from 1 to {most}.", most=MOST_PAINTS),
        )
    ids = [paint.id for paint in paints]
    for paint in paints:
        bad = not paint.id or len(paint.id) > _MOST_ID or _plain(paint.id, _MOST_ID) != paint.id
        if bad or " " in paint.id or ids.count(paint.id) > 1:
            raise MendableError(
                say("A paint of the recipe has the id “{id}”.", id=paint.id[:_MOST_ID]),
                say(
                    "Ids are all different, without spaces, of up to {most} letters.",
                    most=_MOST_ID,
                ),
            )
        if not (isfinite(paint.parts) and 0 < paint.parts <= _MOST_PARTS):
            raise MendableError(
                say("Of {id} there are {parts:g} parts.", id=paint.id, parts=paint.parts),
                say("Parts are above 0."),
            )


def _number(text: str, word: str, most: float) -> float:
    try:
        value = float(text)
    except ValueError as error:
        told = say("“{text}” after “{word}” is not a number", text=text[:30], word=word)
        raise _not_ours(told) from error
    if not abs(value) <= most:
        raise _not_ours(say("{value:g} after “{word}” cannot be", value=value, word=word))
    return value


def _lab(text: str, word: str) -> Lab:
    numbers = text.split()
    if len(numbers) != 3:
        raise _not_ours(say("“{word}” needs three numbers", word=word))
    L, a, b = (_number(number, word, 150.0) for number in numbers)
    if not 0 <= L <= 100:
        raise _not_ours(say("an L* of {L:g} cannot be", L=L))
    return Lab(L, a, b)


def _day(text: str) -> str:
    if not _DAY.fullmatch(text):
        raise _not_ours(say("“{text}” is not a day", text=text[:20]))
    return text


def _batch(text: str) -> int:
    if not (text.isascii() and text.isdecimal() and len(text) <= 6):
        raise _not_ours(say("“{text}” is not the number of a batch", text=text[:20]))
    return int(text)


_WORDS: dict[str, Callable[[CodeRecipe, str], CodeRecipe]] = {
    "title": lambda recipe, text: replace(recipe, title=_plain(text, _MOST_NAME)),
    "zone": lambda recipe, text: replace(recipe, zone=_plain(text, _MOST_NAME)),
    "day": lambda recipe, text: replace(recipe, day=_day(text)),
    "batch": lambda recipe, text: replace(recipe, batch=_batch(text)),
    "ml": lambda recipe, text: replace(recipe, ml=_number(text, "ml", _MOST_ML)),
    "lab": lambda recipe, text: replace(recipe, wanted=_lab(text, "lab")),
    "dry": lambda recipe, text: replace(recipe, dry=_lab(text, "dry")),
}


def _not_ours(why: str) -> MendableError:
    return MendableError(
        say("This is not the text of a recipe's code: {why}.", why=why),
        say(
            "Scan the code of a recipe sheet again, all of it. Its text begins with SWATCHWRIGHT 1 "
            "and names the paints with their parts below."
        ),
    )
