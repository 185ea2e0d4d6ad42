"""The open store: reading, edits that are whole or not at all, undo and redo."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path
from threading import RLock
from typing import Self

from swatchwright.shelf.store import history
from swatchwright.shelf.store.history import Changes, EditLine
from swatchwright.shelf.store.trouble import in_plain_words

__all__ = ["Edit", "OutsideAnEditError", "Store", "utc_now"]

_LABEL = 200


class OutsideAnEditError(RuntimeError):
    """Something was to be written outside an edit, or after it had ended: our own fault."""


def utc_now() -> datetime:
    """Give the time."""
    return datetime.now(UTC)


def _short(label: str) -> str:
    return label if len(label) <= _LABEL else f"{label[: _LABEL - 1]}…"


@contextmanager
def _kept_or_not(connection: sqlite3.Connection) -> Iterator[None]:
    """Keep all that is written inside, or none of it, within a running edit."""
    connection.execute("SAVEPOINT inside")
    try:
        yield
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK TO inside")
            connection.execute("RELEASE inside")
        raise
    connection.execute("RELEASE inside")


class Edit:
    """A running edit, through which rows are written.

    Parameters
    ----------
    connection
        The store's connection.
    id
        Its number.
    label
        Its plain words.
    made
        When it began, UTC, as in 2026-03-01T09:30:00Z.
    outermost
        Whether it is not a part of another.
    """

    def __init__(
        self,
        connection: sqlite3.Connection,
        id_: int,
        label: str,
        made: str,
        *,
        outermost: bool = True,
    ) -> None:
        self._connection: sqlite3.Connection | None = connection
        self._outermost = outermost
        self._after = self._newest()
        self._warnings: list[str] = []
        self.id = id_
        self.label = label
        self.made = made

    @property
    def connection(self) -> sqlite3.Connection:
        """The connection to write through, while the edit runs."""
        if self._connection is None:
            raise OutsideAnEditError("the edit has ended")
        return self._connection

    def call(self, label: str) -> None:
        """Give it other words, now that more is known; within another edit only for its own."""
        self.label = _short(label)
        if self._outermost:
            self.connection.execute(
                "UPDATE edits SET label = ? WHERE id = ?", (self.label, self.id)
            )

    def warn(self, sentence: str) -> None:
        """Note something that the painter should know of this edit."""
        self._warnings.append(sentence)

    @property
    def changes(self) -> Changes:
        """What it has changed so far."""
        made = history.changes_of(self.connection, self.id, self.label, self._after)
        return Changes(made.label, made.jobs, made.paints, made.parts, tuple(self._warnings))

    def part(self, label: str) -> Edit:
        """Give the same edit as an act within it sees it: with its own words and changes."""
        return Edit(self.connection, self.id, label, self.made, outermost=False)

    def end(self) -> None:
        """Let nothing more be written through it."""
        self._connection = None

    def _newest(self) -> int:
        row = self.connection.execute("SELECT max(seq) FROM past").fetchone()
        return int(row[0] or 0)


class Store:
    """An open store; made by `opening.open_store`.

    Several threads may use it: each reading or edit has it to itself for its time. Other processes
    may have the same file open.

    Parameters
    ----------
    path
        The file.
    connection
        Its connection, in autocommit.
    clock
        Gives the time in UTC.
    """

    def __init__(
        self,
        path: Path,
        connection: sqlite3.Connection,
        clock: Callable[[], datetime] = utc_now,
    ) -> None:
        self.path = path
        self._connection = connection
        self._clock = clock
        self._lock = RLock()
        self._edit: Edit | None = None
        self._seen = self._version()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Close the file."""
        with self._lock:
            self._connection.close()

    def now(self) -> str:
        """Give the time as it is written down."""
        return self._clock().strftime("%Y-%m-%dT%H:%M:%SZ")

    def today(self) -> str:
        """Give the day as it is written down."""
        return self._clock().strftime("%Y-%m-%d")

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """Give the connection to read through; what is read in one go belongs together.

        Raises
        ------
        MendableError
            If the store is locked, damaged or its disk fails.
        """
        with self._lock, in_plain_words(self.path):
            if self._busy():
                yield self._connection
                return
            self._connection.execute("BEGIN")
            try:
                yield self._connection
            finally:
                if self._busy():
                    self._connection.execute("COMMIT")

    @contextmanager
    def editing(self, label: str) -> Iterator[Edit]:
        """Open an edit: all of it is kept, or none if it ends with an error.

        An edit inside another is a part of it.

        Parameters
        ----------
        label
            What it does, in plain words, as undo will call it.

        Raises
        ------
        MendableError
            If the store is locked, damaged, read-only or its disk is full or fails.
        """
        label = _short(label)
        with self._lock, in_plain_words(self.path):
            if self._edit is not None:
                with _kept_or_not(self._connection):
                    yield self._edit.part(label)
                return
            with self._writing() as connection:
                made = self.now()
                edit = Edit(connection, history.begin(connection, label, made), label, made)
                self._edit = edit
                try:
                    yield edit
                    history.finish(connection, edit.id)
                finally:
                    self._edit = None
                    edit.end()

    @contextmanager
    def _writing(self) -> Iterator[sqlite3.Connection]:
        """Open a transaction that writes; only inside one does the connection write at all."""
        connection = self._connection
        connection.execute("PRAGMA query_only = OFF")
        try:
            connection.execute("BEGIN IMMEDIATE")
            yield connection
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                with suppress(sqlite3.Error):
                    connection.execute("ROLLBACK")
            raise
        finally:
            connection.execute("PRAGMA query_only = ON")

    def undo(self) -> Changes:
        """Take the last edit back.

        Raises
        ------
        MendableError
            If there is nothing to undo.
        """
        return self._turned(redo=False)

    def redo(self) -> Changes:
        """Bring the edit back that was undone last.

        Raises
        ------
        MendableError
            If there is nothing to redo.
        """
        return self._turned(redo=True)

    def _turned(self, *, redo: bool) -> Changes:
        if self._edit is not None:
            raise OutsideAnEditError("undo or redo inside an edit")
        with self._lock, in_plain_words(self.path), self._writing() as connection:
            edit = (history.next_undone if redo else history.last_done)(connection)
            if edit is None:
                raise history.nothing_to_turn(redo=redo)
            history.turn(connection, edit)
            return history.changes_of(connection, edit.id, edit.label)

    def history(self, most: int = 50) -> tuple[EditLine, ...]:
        """Give the edits, the newest first."""
        with self.reading() as connection:
            return history.lines(connection, most)

    def next_undo(self) -> EditLine | None:
        """Give the edit that `undo` would take back."""
        with self.reading() as connection:
            return history.last_done(connection)

    def next_redo(self) -> EditLine | None:
        """Give the edit that `redo` would bring back."""
        with self.reading() as connection:
            return history.next_undone(connection)

    def changed_elsewhere(self) -> bool:
        """Tell whether another program has changed the file since this was last asked."""
        with self._lock, in_plain_words(self.path):
            seen, self._seen = self._seen, self._version()
            return seen != self._seen

    def _busy(self) -> bool:
        return self._connection.in_transaction

    def _version(self) -> int:
        return int(self._connection.execute("PRAGMA data_version").fetchone()[0])
