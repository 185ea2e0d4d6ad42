"""Undo and redo, kept in the store: what each edit changed, and the way back.

While an edit runs, triggers write each row down as it was. To undo it these steps are taken back,
the last first, while the same triggers write down what the taking back changes; so an edit always
holds the steps to the other side of it, and undoing and redoing are one act.
"""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.store.schema import WATCHED, columns_of

__all__ = ["MOST_EDITS", "Changes", "EditLine", "begin", "changes_of", "drop_redo", "lines"]
__all__ += ["finish", "last_done", "next_undone", "nothing_to_turn", "turn"]

MOST_EDITS = 500
"""How many edits can be taken back; older ones stay as they are."""


@dataclass(frozen=True, slots=True)
class Changes:
    """What an edit changed.

    Parameters
    ----------
    label
        The edit in plain words.
    jobs
        Ids of jobs that came, went or changed, without repeats.
    paints
        Ids of paints, likewise.
    parts
        Job and part, for each part of a job that changed.
    warnings
        What the painter should know, in sentences.
    """

    label: str
    jobs: tuple[str, ...] = ()
    paints: tuple[str, ...] = ()
    parts: tuple[tuple[str, str], ...] = ()
    warnings: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.jobs or self.paints)


@dataclass(frozen=True, slots=True)
class EditLine:
    """An edit as a line of the history: its number, words, time (UTC), and whether undone."""

    id: int
    label: str
    made: str
    undone: bool


def begin(connection: sqlite3.Connection, label: str, made: str) -> int:
    """Open an edit inside the running transaction and give its number."""
    row = connection.execute("INSERT INTO edits (label, made) VALUES (?, ?)", (label, made))
    edit = row.lastrowid or 0
    connection.execute("UPDATE now SET edit = ?", (edit,))
    return edit


def finish(connection: sqlite3.Connection, edit: int, most: int = MOST_EDITS) -> None:
    """Close the edit: one that changed nothing leaves no trace, one that did ends redoing."""
    if connection.execute("SELECT 1 FROM past WHERE edit = ? LIMIT 1", (edit,)).fetchone():
        drop_redo(connection)
        oldest = connection.execute(
            "SELECT id FROM edits ORDER BY id DESC LIMIT 1 OFFSET ?", (most,)
        ).fetchone()
        if oldest:
            _forget(connection, "id <= ?", oldest)
    else:
        connection.execute("DELETE FROM edits WHERE id = ?", (edit,))
    connection.execute("UPDATE now SET edit = NULL")


def drop_redo(connection: sqlite3.Connection) -> None:
    """Forget what was undone and could have been redone."""
    _forget(connection, "undone = ?", (1,))


def _forget(connection: sqlite3.Connection, where: str, values: tuple[int, ...]) -> None:
    """Forget edits, and the pictures and paints that nothing refers to any more."""
    found = connection.execute(f"SELECT id FROM edits WHERE {where}", values).fetchall()  # noqa: S608
    loose = False
    for (edit,) in found:
        steps = f"SELECT seq FROM past WHERE edit = {int(edit)}"  # noqa: S608 - a number
        for table in WATCHED:
            connection.execute(f"DELETE FROM past_{table} WHERE seq IN ({steps})")  # noqa: S608
        touched = f"{steps} AND \"table\" IN ('photos', 'frozen') LIMIT 1"
        loose = loose or connection.execute(touched).fetchone() is not None
        connection.execute("DELETE FROM past WHERE edit = ?", (edit,))
        connection.execute("DELETE FROM edits WHERE id = ?", (edit,))
    if loose:
        connection.execute(
            "DELETE FROM kept WHERE hash NOT IN (SELECT copy FROM photos UNION SELECT hash FROM "
            "frozen UNION SELECT copy FROM past_photos UNION SELECT hash FROM past_frozen)"
        )


def last_done(connection: sqlite3.Connection) -> EditLine | None:
    """Give the edit that undoing would take back; None where there is none."""
    return _one(connection, "WHERE undone = 0 ORDER BY id DESC")


def next_undone(connection: sqlite3.Connection) -> EditLine | None:
    """Give the edit that redoing would bring back; None where there is none."""
    return _one(connection, "WHERE undone = 1 ORDER BY id")


def lines(connection: sqlite3.Connection, most: int) -> tuple[EditLine, ...]:
    """Give the history, the newest first."""
    rows = connection.execute(f"{_LINE} ORDER BY id DESC LIMIT ?", (most,))
    return tuple(EditLine(i, label, made, bool(undone)) for i, label, made, undone in rows)


_LINE = "SELECT id, label, made, undone FROM edits"


def _one(connection: sqlite3.Connection, which: str) -> EditLine | None:
    row = connection.execute(f"{_LINE} {which} LIMIT 1").fetchone()
    return None if row is None else EditLine(row[0], row[1], row[2], bool(row[3]))


def turn(connection: sqlite3.Connection, edit: EditLine) -> None:
    """Take an edit back, or bring it back if it was undone, inside the running transaction."""
    connection.execute("UPDATE now SET edit = ?", (edit.id,))
    steps = connection.execute(
        'SELECT seq, "table", did, row FROM past WHERE edit = ? ORDER BY seq DESC', (edit.id,)
    ).fetchall()
    names = {
        table: ", ".join(f'"{column}"' for column in columns_of(connection, table))
        for table in WATCHED
    }
    for seq, table, did, row in steps:
        sql, values = _way_back(table, names[table], did, seq, row)
        connection.execute(sql, values)
    newest = steps[0][0] if steps else 0
    old = f"SELECT seq FROM past WHERE edit = {int(edit.id)} AND seq <= {int(newest)}"  # noqa: S608
    for table in WATCHED:
        connection.execute(f"DELETE FROM past_{table} WHERE seq IN ({old})")  # noqa: S608
    connection.execute("DELETE FROM past WHERE edit = ? AND seq <= ?", (edit.id, newest))
    connection.execute("UPDATE edits SET undone = ? WHERE id = ?", (not edit.undone, edit.id))
    connection.execute("UPDATE now SET edit = NULL")


def _way_back(table: str, names: str, did: str, seq: int, row: int) -> tuple[str, tuple[int, ...]]:
    """Give what takes one step back; tables and columns are our own names, never a user's."""
    old = f"SELECT {names} FROM past_{table} WHERE seq = ?"  # noqa: S608
    if did == "INSERT":
        return f"DELETE FROM {table} WHERE row = ?", (row,)  # noqa: S608
    if did == "DELETE":
        return f"INSERT INTO {table} ({names}) {old}", (seq,)
    return f"UPDATE {table} SET ({names}) = ({old}) WHERE row = ?", (seq, row)  # noqa: S608


def changes_of(connection: sqlite3.Connection, edit: int, label: str, after: int = 0) -> Changes:
    """Tell what the steps of an edit touched, those after a step only."""
    rows = connection.execute(
        "SELECT DISTINCT job, paint, part FROM past WHERE edit = ? AND seq > ? ORDER BY seq",
        (edit, after),
    ).fetchall()
    return Changes(
        label,
        tuple(dict.fromkeys(job for job, _, _ in rows if job)),
        tuple(dict.fromkeys(paint for _, paint, _ in rows if paint)),
        tuple(dict.fromkeys((job, part) for job, _, part in rows if job and part)),
    )


def nothing_to_turn(*, redo: bool) -> MendableError:
    """Say that there is nothing to undo, or to redo."""
    if redo:
        return MendableError(
            say("There is nothing to redo."),
            say("What was undone can be redone until something else is changed."),
        )
    return MendableError(
        say("There is nothing to undo."),
        say("The last {count} edits can be undone.", count=MOST_EDITS),
    )
