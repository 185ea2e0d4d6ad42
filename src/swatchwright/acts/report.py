"""What is told of a fault of ours: enough to find it by, and nothing of the painter's.

A report is meant to be passed on, so it names no client, no photo, no folder of hers and no user.
Of a traceback it keeps files below the program's own folders and our lines of code; of an error's
message it leaves out what stands in quotes, unless our own code says it, and every path.
"""

from __future__ import annotations

import builtins
import getpass
import os
import platform
import re
import sys
from collections.abc import Iterable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from traceback import FrameSummary, TracebackException

from swatchwright import __version__
from swatchwright.language import language
from swatchwright.shelf.store.place import HOME

__all__ = [
    "LEFT_OUT",
    "MOST_LETTERS",
    "Fault",
    "Scene",
    "fault_of",
    "head_of",
    "report_of",
    "shorter",
    "without",
    "without_folders",
]

LEFT_OUT = "[…]"
"""Stands where something was left out."""

MOST_LETTERS = 20_000
"""How long a report may be."""

_MOST_OF_ONE = 6_000
_MOST_OF_MESSAGE = 400
_FRAMES = 15, 25
"""Of a long traceback, how many calls are told from its beginning and from its end."""

_QUOTED = re.compile(r"(?<!\w)(['\"])(.*?)\1(?!\w)|(“)(.*?)”", re.DOTALL)
_PATH = re.compile(r"(?<![\w.])(~|[A-Za-z]:|file:)?[\\/]+\w.*")
_FILE_IN_QUOTES = re.compile(r'"((?:[A-Za-z]:)?[\\/][^"\n]*)"')
_NAMES = frozenset({*dir(builtins), "NoneType", "function", "method", "module"})


@dataclass(frozen=True, slots=True)
class Scene:
    """Where in the program something happened.

    Parameters
    ----------
    qt
        Version and platform of Qt, where there is a window.
    page
        The key of the page in view.
    deeds
        What was done last, the newest last, by the names that the program has for it.
    """

    qt: str = ""
    page: str = ""
    deeds: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault: what tells it from others, and what is told of it."""

    mark: str
    told: str


# --- a fault -------------------------------------------------------------------------------------


def fault_of(error: BaseException, where: str = "") -> Fault:
    """Tell of an exception and of those that led to it.

    Parameters
    ----------
    error
        The exception, with its traceback.
    where
        What was under way, in the program's own words; empty where that is not known.
    """
    chain = _chain(TracebackException.from_exception(error, lookup_lines=True))
    told = [where] if where else []
    told += [line for one in chain for line in _lines_of(one)]
    last = [f"{_short(f.filename)}:{f.lineno}" for one in chain for f in one.stack[-1:]]
    return Fault(" ".join([type(error).__name__, *last]), shorter("\n".join(told), _MOST_OF_ONE))


def _chain(last: TracebackException) -> list[TracebackException]:
    """Give the exceptions that led to one, the first first, and itself."""
    chain: list[TracebackException] = []
    one: TracebackException | None = last
    while one is not None and len(chain) < 5:
        chain.insert(0, one)
        one = one.__cause__ or (None if one.__suppress_context__ else one.__context__)
    return chain


def _lines_of(one: TracebackException) -> list[str]:
    frames, (first, end) = list(one.stack), _FRAMES
    told = [_frame(frame) for frame in frames]
    if len(told) > first + end:
        told[first:-end] = [f"  {LEFT_OUT} {len(told) - first - end} more calls"]
    # Python 3.13 has the name and warns of the type.
    name = getattr(one, "exc_type_str", None) or one.exc_type.__qualname__
    code = "\n".join(frame.line or "" for frame in frames)
    return [*told, f"{name}: {_message(str(one), code)}"]


def _frame(frame: FrameSummary) -> str:
    return f"  {_short(frame.filename)}:{frame.lineno} {frame.name}: {frame.line or ''}".rstrip()


def _message(text: str, code: str) -> str:
    """Leave out of an error's message what may be the painter's."""

    def kept(found: re.Match[str]) -> str:
        inside = found[2] if found[1] else found[4]
        ours = inside in _NAMES or inside.startswith("PySide6.")
        ours = ours or (inside.isidentifier() and re.search(rf"\b{inside}\b", code) is not None)
        quote = found[1] or found[3]
        return f"{quote}{inside if ours else LEFT_OUT}{'”' if quote == '“' else quote}"

    return shorter(_PATH.sub(LEFT_OUT, _QUOTED.sub(kept, text)), _MOST_OF_MESSAGE)


def _short(file: str) -> str:
    """Give a file of code below the folder that Python found it in."""
    if file.startswith("<"):
        return file
    roots = sorted((root for root in sys.path if len(root) > 1), key=len, reverse=True)
    for root in roots:
        with suppress(ValueError):
            return Path(file).relative_to(root).as_posix()
    return re.split(r"[\\/]", file)[-1]


# --- a report ------------------------------------------------------------------------------------


def head_of(scene: Scene) -> str:
    """Tell what runs on what, and where in the program she was."""
    python = f"Python {platform.python_version()}"
    told = [
        f"Swatchwright {__version__}, {python}, {scene.qt or 'no window'}",
        f"{platform.platform()}, language {language()}",
    ]
    if scene.page:
        told.append(f"Page: {scene.page}")
    if scene.deeds:
        told.append(f"Last done: {', '.join(scene.deeds)}")
    return "\n".join(told)


def report_of(scene: Scene, faults: Sequence[str], *, private: Iterable[str] = ()) -> str:
    """Put a report together, without what is the painter's, and not too long to pass on.

    Parameters
    ----------
    scene
        Where in the program she is.
    faults
        What is told of each.
    private
        Names, titles and texts that must not be in it, besides her user name and her folders.
    """
    told = "\n\n".join([head_of(scene), *faults])
    return shorter(without(told, [*private, *_of_this_computer()]), MOST_LETTERS) + "\n"


def without(text: str, private: Iterable[str]) -> str:
    """Leave out of a text each of these words and sentences, however they are written."""
    known = {part.strip() for whole in private for part in (whole, *whole.splitlines())}
    longest = sorted((part for part in known if len(part) > 1), key=len, reverse=True)
    if not longest:
        return text
    any_of = "|".join(re.escape(part) for part in longest)
    return re.sub(rf"(?<!\w)(?:{any_of})(?!\w)", LEFT_OUT, text, flags=re.IGNORECASE)


def without_folders(text: str) -> str:
    """Shorten the files that a text names in double quotes, as Python's fault handler does."""
    return _FILE_IN_QUOTES.sub(lambda found: f'"{_short(found[1])}"', text)


def shorter(text: str, most: int) -> str:
    """Cut a text in its middle where it is too long: how it began and ended tells most."""
    if len(text) <= most:
        return text
    cut = f"\n{LEFT_OUT} {len(text) - most} letters\n"
    half = (most - len(cut)) // 2
    return text[:half] + cut + text[-half:]


def _of_this_computer() -> list[str]:
    """Give her home folder, her user name and the name of her computer."""
    found = [platform.node(), os.environ.get(HOME, "")]
    with suppress(RuntimeError):
        found.append(str(Path.home()))
    # On a computer that knows no name for its user there is none to leave out.
    with suppress(Exception):
        found.append(getpass.getuser())
    return found
