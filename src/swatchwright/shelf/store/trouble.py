"""What SQLite may complain of, in a painter's words."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import mark, say

__all__ = ["DAMAGE", "in_plain_words", "is_damage"]

DAMAGE = frozenset({sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB})


@contextmanager
def in_plain_words(path: Path) -> Iterator[None]:
    """Turn what can be mended of SQLite's errors into words; the rest is our fault and passes.

    Raises
    ------
    MendableError
        If the store is in use, cannot be written, the disk is full or fails, or it is damaged.
    """
    try:
        yield
    except sqlite3.Error as error:
        told = _told(error, path)
        if told is None:
            raise
        raise told from error


def is_damage(error: sqlite3.Error) -> bool:
    """Tell whether an error means that the file itself is damaged."""
    return _code(error) in DAMAGE


def _code(error: sqlite3.Error) -> int:
    """Give the primary code; the bytes above it say more than a painter wants to know."""
    return int(getattr(error, "sqlite_errorcode", None) or 0) & 0xFF


def _told(error: sqlite3.Error, path: Path) -> MendableError | None:
    code = _code(error)
    for codes, what, mend in _WORDS:
        if code in codes:
            return MendableError(say(what, path=path), say(mend))
    return None


_WORDS = (
    (
        {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_PROTOCOL},
        mark("Another window or program is writing to {path} and did not finish in time."),
        mark("Nothing was changed. Wait a moment and try again, or close the other one."),
    ),
    (
        {sqlite3.SQLITE_FULL},
        mark("The disk that holds {path} is full."),
        mark(
            "The last edit was not kept, everything before it was. Free some space and try again."
        ),
    ),
    (
        {
            *(sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN),
            *(sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH),
        },
        mark("{path} cannot be opened or written."),
        mark(
            "Check its name and place and that you may write there, or choose another with --store."
        ),
    ),
    (
        {sqlite3.SQLITE_IOERR, sqlite3.SQLITE_NOLFS},
        mark("The disk did not take or give what {path} needed."),
        mark("The last edit was not kept. See whether the disk is still there, full or failing."),
    ),
    (
        {sqlite3.SQLITE_TOOBIG, sqlite3.SQLITE_NOMEM},
        mark("That is too large to be kept in {path}."),
        mark("Nothing was changed. Make it smaller."),
    ),
    (
        DAMAGE,
        mark("{path} is damaged."),
        mark("Nothing was changed. Close and open again: the damaged file will be put aside."),
    ),
)
"""Codes, what is wrong, and how to mend it."""
