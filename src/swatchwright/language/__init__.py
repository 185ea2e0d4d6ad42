"""What the painter reads, in her language.

The program is written in British English, and every sentence stands where it arises, as an
argument of `say`. Catalogues beside this module give the same sentences in other languages, in
the format of GNU gettext; ``tools/catalogue.py`` gathers what is new and compiles them.

The language is chosen once, before the window is made (`use_language`); the commands never
choose one, so that a script reads the same words everywhere. What is kept in a store or a file is
the English word or a key, and is translated when it is shown.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from gettext import GNUTranslations, NullTranslations
from numbers import Number
from pathlib import Path
from string import Formatter

__all__ = [
    "ENGLISH",
    "bind_units",
    "bound",
    "figure",
    "language",
    "languages",
    "listed",
    "mark",
    "mark_in",
    "said_in",
    "say",
    "say_count",
    "say_in",
    "use_language",
]

ENGLISH = "en"

_FOLDER = Path(__file__).parent
_COMMA = frozenset({"de"})
"""Languages that write 2,5 and 45 % where English writes 2.5 and 45%."""


_GERMAN = str.maketrans({".": ",", ",": ".", "%": "\N{NO-BREAK SPACE}%"})


_BEFORE_UNIT = re.compile(r"(?<=\d) (?=(?:ml|l|g|kg|m²|m2|mm|cm|m|h|min|%|K|°C)(?![\w²]))")
_MINUS = "\N{MINUS SIGN}"
"""As wide as a plus and never broken off its number, as a hyphen may be."""


class _Numbers(Formatter):
    """Puts values into a sentence, numbers as the language writes them."""

    def __init__(self, *, comma: bool) -> None:
        self._comma = comma

    def format_field(self, value: object, format_spec: str) -> str:
        """Format a value; a number that is not whole gets the language's decimal mark."""
        told = format(value, format_spec)
        if not isinstance(value, Number):
            return told
        if told.startswith("-"):
            told = _below_zero(told)
        return told.translate(_GERMAN) if self._comma else told


def _below_zero(told: str) -> str:
    """Write a number with a true minus; one that rounds to nothing has none."""
    return f"{_MINUS}{told[1:]}" if any(digit in told for digit in "123456789") else told[1:]


class _Tongue:
    """The language in use: its code, its catalogue and how it writes numbers."""

    def __init__(self, code: str) -> None:
        self.code = code
        self.catalogue: NullTranslations = NullTranslations()
        if code != ENGLISH:
            with (_FOLDER / f"{code}.mo").open("rb") as file:
                self.catalogue = GNUTranslations(file)
        self.numbers = _Numbers(comma=code in _COMMA)


_in_use = [_Tongue(ENGLISH)]
_bound = [False]


def languages() -> tuple[str, ...]:
    """List the languages there are by their ISO 639-1 codes, English first."""
    return (ENGLISH, *sorted(path.stem for path in _FOLDER.glob("*.mo")))


def language() -> str:
    """Give the ISO 639-1 code of the language in use."""
    return _in_use[0].code


def use_language(code: str) -> None:
    """Choose the language, before anything is said in it; one that is not there is English.

    Parameters
    ----------
    code
        An ISO 639-1 code, which may go on with a country: ``de`` or ``de_AT``.
    """
    _in_use[0] = _Tongue(_spoken(code))


def say(text: str, /, **values: object) -> str:
    """Say a sentence, with values in the places that are named in it.

    Parameters
    ----------
    text
        The English sentence, written out where it is said so that it can be gathered:
        ``say("{name} is {off:.1f} off", name=..., off=...)``. Also a text that was marked.
    values
        What goes into the places. Without any, braces in the text stand for themselves.
    """
    return _filled(_in_use[0].catalogue.gettext(text) if text else text, values)


def say_in(context: str, text: str, /, **values: object) -> str:
    """Say a word that has two meanings; the context tells the translator which.

    >>> say_in("of a colour", "light")
    'light'
    """
    return _filled(_in_use[0].catalogue.pgettext(context, text), values)


def say_count(one: str, many: str, count: int, /, **values: object) -> str:
    """Say a sentence that depends on a number, which is put in as ``{count}``.

    >>> say_count("{count} part", "{count} parts", 2)
    '2 parts'
    """
    found = _in_use[0].catalogue.ngettext(one, many, count)
    return _filled(found, {"count": count, **values})


def said_in(code: str, text: str, /, **values: object) -> str:
    """Say a marked sentence in another language, while the one in use stays in use.

    Parameters
    ----------
    code
        An ISO 639-1 code, as for `use_language`; one that is not there is English.
    text
        The English sentence, marked where it is written.
    values
        What goes into its places, numbers as that language writes them.
    """
    tongue = _Tongue(_spoken(code))
    return _filled(tongue.catalogue.gettext(text) if text else text, values, tongue)


def mark(text: str) -> str:
    """Mark a text for translation where it cannot be said yet; `say` it when it is shown."""
    return text


def mark_in(context: str, text: str) -> str:  # noqa: ARG001 - the translator reads it
    """Mark a word that has two meanings; `say_in` it with the same context when it is shown."""
    return text


def figure(value: float, spec: str) -> str:
    """Write a number that stands alone, as the language writes it.

    >>> figure(2.5, ".1f")
    '2.5'
    """
    return _in_use[0].numbers.format_field(value, spec)


def listed(words: Iterable[str]) -> str:
    """List words as a sentence does.

    >>> listed(["a jar", "a spoon", "a rag"])
    'a jar, a spoon and a rag'
    """
    *first, last = tuple(words) or ("",)
    return say("{first} and {last}", first=", ".join(first), last=last) if first else last


def bind_units(*, bind: bool = True) -> None:
    """Keep numbers and their units on one line from now on, or no longer.

    The window does, whose lines break where they must; the commands do not, whose words are read
    by scripts.
    """
    _bound[0] = bind


def bound(text: str) -> str:
    """Put a no-break space between a number and its unit, where units are bound.

    The unit follows its number after a space that does not end a line (ISO 80000-1, 7.2.1).
    """
    return _BEFORE_UNIT.sub("\N{NO-BREAK SPACE}", text) if _bound[0] else text


def _spoken(code: str) -> str:
    """Give the language there is for a code that may go on with a country; English for none."""
    short = code.replace("-", "_").partition("_")[0].lower()
    return short if short in languages() else ENGLISH


def _filled(text: str, values: dict[str, object], tongue: _Tongue | None = None) -> str:
    return bound((tongue or _in_use[0]).numbers.vformat(text, (), values)) if values else text
