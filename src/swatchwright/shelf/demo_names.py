"""The names of the invented paints, marked for translation: their file holds them in English.

They are told in the language in use wherever they are shown, also where a job or a shelf was kept
in another one. A name that the painter gave stays as she wrote it.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from swatchwright.language import languages, mark, said_in, say
from swatchwright.paint.paints import Paint

__all__ = ["DEMO_NAMES", "DEMO_NOTE", "name_in_use", "named_in_use"]

_NAMES = {
    "white-clean": mark("White, clean"),
    "white-yellow": mark("White, slightly yellow"),
    "cream-pale-yellow": mark("Cream, pale yellow"),
    "straw-yellow-muted": mark("Straw yellow, muted"),
    "strong-yellow-orange": mark("Strong yellow, slightly orange"),
    "strong-yellow-green": mark("Strong yellow, slightly green"),
    "strong-orange": mark("Strong orange"),
    "clay-red-muted": mark("Clay red, muted"),
    "strong-red-orange": mark("Strong red, slightly orange"),
    "deep-red-blue": mark("Deep red, slightly blue"),
    "pale-pink-greyish": mark("Pale pink, greyish"),
    "dark-plum": mark("Dark plum"),
    "deep-blue-red": mark("Deep blue, slightly red"),
    "mid-blue-clear": mark("Mid blue, clear"),
    "ink-blue-dark": mark("Ink blue, dark"),
    "pale-blue-greyish": mark("Pale blue, greyish"),
    "green-blue-mid": mark("Green-blue, mid"),
    "deep-green-blue": mark("Deep green, slightly blue"),
    "leaf-green-mid": mark("Leaf green, mid"),
    "sage-green-pale": mark("Sage green, pale"),
    "olive-dark": mark("Olive, dark"),
    "earth-brown-mid": mark("Earth brown, mid"),
    "stone-grey-warm": mark("Stone grey, warm"),
    "soft-black": mark("Soft black"),
}
"""By their ids."""

DEMO_NAMES = tuple(_NAMES.values())
DEMO_NOTE = mark("Invented for demonstration. No such paint is sold.")


def name_in_use(id_: str, name: str) -> str:
    """Give the name of a kept paint in the language in use, if it is that of an invented one.

    >>> name_in_use("soft-black", "Soft black"), name_in_use("soft-black", "My black")
    ('Soft black', 'My black')
    """
    english = _NAMES.get(id_)
    return name if english is None else _in_use(name, english)


def named_in_use(paint: Paint) -> Paint:
    """Give a kept paint with its name and note in the language in use, if it is an invented one."""
    if paint.id not in _NAMES:
        return paint
    name, note = name_in_use(paint.id, paint.name), _in_use(paint.note, DEMO_NOTE)
    same = (name, note) == (paint.name, paint.note)
    return paint if same else replace(paint, name=name, note=note)


def _in_use(kept: str, english: str) -> str:
    told = say(english)
    return told if kept in {told, english} or kept in _in_all(english) else kept


@cache
def _in_all(english: str) -> frozenset[str]:
    return frozenset(said_in(code, english) for code in languages())
