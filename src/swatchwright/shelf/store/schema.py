"""The tables of the store, and the triggers by which no change can be missed.

Tables in `WATCHED` are under undo. For each there is a table ``past_…`` of the same columns, and
triggers that write down every row as it was before a change; a change outside an edit is refused by
the file itself, whoever attempts it. The triggers are laid from the columns that are there, after
each migration, so a migration that adds a column has only to add it to both tables.
"""

from __future__ import annotations

import sqlite3

__all__ = [
    "APPLICATION_ID",
    "MIGRATIONS",
    "WATCHED",
    "columns_of",
    "lay_triggers",
    "lift_triggers",
    "triggers_are_laid",
]

APPLICATION_ID = 0x53574157
"""“SWAW”: by it a file is told to be ours."""

# The column that says which job, paint and part a row belongs to; NULL where it belongs to none.
WATCHED: dict[str, tuple[str, str, str]] = {
    "jobs": ("id", "NULL", "NULL"),
    "parts": ("job", "NULL", "part"),
    "photos": ("job", "NULL", "'photos'"),
    "colours": ("job", "NULL", "'colours'"),
    "frozen": ("job", "NULL", "'recipes'"),
    "paints": ("NULL", "id", "NULL"),
}

_OF_JOB = "TEXT NOT NULL REFERENCES jobs(id) DEFERRABLE INITIALLY DEFERRED"
_OF_KEPT = "TEXT NOT NULL REFERENCES kept(hash) DEFERRABLE INITIALLY DEFERRED"
_TEXT, _REAL = "TEXT NOT NULL", "REAL NOT NULL"

_COLUMNS: dict[str, dict[str, str]] = {
    "jobs": {
        "id": f"{_TEXT} UNIQUE",
        "title": _TEXT,
        "client": _TEXT,
        "brief": _TEXT,
        "room_light": _TEXT,
        "status": _TEXT,
        "created": _TEXT,
        "changed": _TEXT,
        "words": _TEXT,
        "L": "REAL",
        "a": "REAL",
        "b": "REAL",
    },
    "parts": {"job": _OF_JOB, "part": _TEXT, "layout": "INTEGER NOT NULL", "document": _TEXT},
    "photos": {"job": _OF_JOB, "hash": _TEXT, "copy": _OF_KEPT, "facts": _TEXT},
    "colours": {"job": _OF_JOB, "kind": _TEXT, "zone": _TEXT, "L": _REAL, "a": _REAL, "b": _REAL},
    "frozen": {"job": _OF_JOB, "hash": _OF_KEPT},
    "paints": {
        "id": f"{_TEXT} UNIQUE",
        "place": "INTEGER NOT NULL",
        "name": _TEXT,
        "facts": _TEXT,
        "K": "BLOB NOT NULL",
        "S": "BLOB NOT NULL",
        "spread": "BLOB",
        "ml_left": "REAL",
        "times": "TEXT",
    },
}
_UNIQUE = {"parts": "job, part", "photos": "job, hash", "frozen": "job, hash"}


def _table(name: str) -> str:
    columns = ", ".join(f"{column} {rule}" for column, rule in _COLUMNS[name].items())
    unique = f", UNIQUE({_UNIQUE[name]})" if name in _UNIQUE else ""
    return f"CREATE TABLE {name} (row INTEGER PRIMARY KEY, {columns}{unique})"


def _past_table(name: str) -> str:
    """Give the same columns without their rules: what is past was in order once."""
    return f"CREATE TABLE past_{name} (seq INTEGER PRIMARY KEY, row, {', '.join(_COLUMNS[name])})"


_EDITS = (
    f"CREATE TABLE edits (id INTEGER PRIMARY KEY AUTOINCREMENT, label {_TEXT}, made {_TEXT}, "
    "undone INTEGER NOT NULL DEFAULT 0)"
)
_PAST = (
    "CREATE TABLE past (seq INTEGER PRIMARY KEY AUTOINCREMENT, edit INTEGER NOT NULL, "
    f'"table" {_TEXT}, did {_TEXT}, row INTEGER NOT NULL, job TEXT, paint TEXT, part TEXT)'
)
_FIRST = (
    _EDITS,
    "CREATE TABLE now (one INTEGER PRIMARY KEY CHECK (one = 1), edit INTEGER)",
    "INSERT INTO now VALUES (1, NULL)",
    _PAST,
    "CREATE INDEX past_by_edit ON past(edit)",
    "CREATE TABLE kept (hash TEXT PRIMARY KEY, kind TEXT NOT NULL, bytes BLOB NOT NULL)",
    *(_table(name) for name in _COLUMNS),
    *(_past_table(name) for name in _COLUMNS),
    "CREATE INDEX colours_by_job ON colours(job)",
    "CREATE INDEX colours_by_lightness ON colours(L, a, b)",
    "CREATE INDEX jobs_by_change ON jobs(changed)",
)

MIGRATIONS: tuple[tuple[str, ...], ...] = (_FIRST,)
"""What takes the file from each version to the next; the first makes it."""


def columns_of(connection: sqlite3.Connection, table: str) -> tuple[str, ...]:
    """Give the columns of a table, `row` first."""
    rows = connection.execute("SELECT name FROM pragma_table_info(?) ORDER BY cid", (table,))
    return tuple(name for (name,) in rows)


def lift_triggers(connection: sqlite3.Connection) -> None:
    """Take the triggers away, for a migration."""
    names = connection.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall()
    for (name,) in names:
        connection.execute(f'DROP TRIGGER "{name}"')


def lay_triggers(connection: sqlite3.Connection) -> None:
    """Lay the triggers over every watched table, by the columns that it has."""
    for sql in _triggers(connection):
        connection.execute(sql)


def triggers_are_laid(connection: sqlite3.Connection) -> bool:
    """Tell whether the file has just the triggers that it should have."""
    rows = connection.execute("SELECT sql FROM sqlite_master WHERE type = 'trigger'")
    return {sql for (sql,) in rows} == set(_triggers(connection))


def _triggers(connection: sqlite3.Connection) -> list[str]:
    made = [_guard("kept", did) for did in _DID]
    for table, belongs in WATCHED.items():
        columns = columns_of(connection, table)
        for did in _DID:
            made += [_guard(table, did), _recorder(table, did, columns, belongs)]
    return made


_DID = ("INSERT", "UPDATE", "DELETE")


# Tables and columns below are our own names; nothing that a user types comes into these texts.


def _guard(table: str, did: str) -> str:
    when = "(SELECT edit FROM now) IS NULL"
    refuse = "SELECT RAISE(ABORT, 'written outside an edit');"
    return _trigger(f"{table}_guard", "BEFORE", did, table, f"WHEN {when} BEGIN {refuse}")


def _recorder(table: str, did: str, columns: tuple[str, ...], belongs: tuple[str, str, str]) -> str:
    row = "new" if did == "INSERT" else "old"
    owner = [name if name == "NULL" or "'" in name else f"{row}.{name}" for name in belongs]
    steps = (
        'INSERT INTO past (edit, "table", did, row, job, paint, part) '  # noqa: S608
        f"SELECT edit, '{table}', '{did}', {row}.row, {', '.join(owner)} FROM now;"
    )
    if did != "INSERT":
        old = ", ".join(f'old."{column}"' for column in columns)
        names = ", ".join(f'"{column}"' for column in columns)
        last = "(SELECT max(seq) FROM past)"
        steps += f" INSERT INTO past_{table} (seq, {names}) VALUES ({last}, {old});"  # noqa: S608
    return _trigger(f"{table}_past", "AFTER", did, table, f"BEGIN {steps}")


def _trigger(name: str, when: str, did: str, table: str, does: str) -> str:
    return f"CREATE TRIGGER {name}_{did.lower()} {when} {did} ON {table} {does} END"
