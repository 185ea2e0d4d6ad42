"""What is kept under its fingerprint: reduced photos, and paints as they were.

The same bytes are kept once, whatever refers to them, and never change. They stay while a job or an
edit that can be undone refers to them.
"""

from __future__ import annotations

import hashlib
import sqlite3

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.store.store import Edit

__all__ = ["fingerprint", "keep", "take"]


def fingerprint(data: bytes) -> str:
    """Give the SHA-256 of bytes in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def keep(edit: Edit, kind: str, data: bytes) -> str:
    """Keep bytes, if they are not there yet, and give their fingerprint."""
    hash_ = fingerprint(data)
    edit.connection.execute(
        "INSERT INTO kept VALUES (?, ?, ?) ON CONFLICT DO NOTHING", (hash_, kind, data)
    )
    return hash_


def take(connection: sqlite3.Connection, hash_: str) -> bytes:
    """Give the bytes that have a fingerprint.

    Raises
    ------
    MendableError
        If they are not there, or are no longer what they were.
    """
    row = connection.execute("SELECT bytes FROM kept WHERE hash = ?", (hash_,)).fetchone()
    if row is None or fingerprint(row[0]) != hash_:
        raise MendableError(
            say("A photo or a paint that a job refers to is missing or damaged in the store."),
            say(
                "The rest of the job can be read. Put back your last backup of the store to have "
                "it."
            ),
        )
    return bytes(row[0])
