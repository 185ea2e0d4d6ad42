"""Opening the store: made if it is not there, looked over, and brought up to date.

Nothing is ever thrown away: a damaged file is put aside under another name, and a copy is made
before the tables are changed.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.store.place import usual_place
from swatchwright.shelf.store.schema import (
    APPLICATION_ID,
    MIGRATIONS,
    WATCHED,
    lay_triggers,
    lift_triggers,
    triggers_are_laid,
)
from swatchwright.shelf.store.store import Store, utc_now
from swatchwright.shelf.store.trouble import in_plain_words, is_damage

__all__ = ["open_store"]

_MAGIC = b"SQLite format 3\x00"
_PATIENCE = 5.0
_LOOKED_OVER_WHOLE = 64 * 2**20
"""Bytes up to which the whole file is looked over at opening; of a larger one all but pictures."""

Migrations = Sequence[Sequence[str]]


def open_store(
    path: Path | None = None,
    *,
    clock: Callable[[], datetime] = utc_now,
    patience: float = _PATIENCE,
    migrations: Migrations = MIGRATIONS,
) -> Store:
    """Open the store, making it if it is not there.

    Parameters
    ----------
    path
        The file; None for the usual place.
    clock
        Gives the time in UTC.
    patience
        Seconds to wait for another program that is writing.
    migrations
        What takes the file from version to version.

    Raises
    ------
    MendableError
        If it cannot be opened or written, is not a store, comes from a newer Swatchwright, or is
        damaged; a damaged one is put aside first.
    """
    path = usual_place() if path is None else path
    _prepare(path)
    with in_plain_words(path):
        connection = sqlite3.connect(
            path, timeout=patience, isolation_level=None, check_same_thread=False
        )
        try:
            _set_up(connection, path, clock, migrations)
        except BaseException:
            connection.close()
            raise
        return Store(path, connection, clock)


def _prepare(path: Path) -> None:
    """Make the folder, and refuse what is there and is not a store."""
    if "\0" in str(path):
        raise MendableError(say("No file can have that name."), say("Choose another with --store."))
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        if path.exists() and not path.is_file():
            raise MendableError(
                say("{path} is not a file.", path=path), say("Name a file for the store.")
            )
        if path.exists() and path.stat().st_size > 0:
            with path.open("rb") as file:
                head = file.read(len(_MAGIC))
            if head != _MAGIC:
                raise MendableError(
                    say(
                        "{path} is not a store of Swatchwright, or its beginning is damaged.",
                        path=path,
                    ),
                    say(
                        "It was left as it is. Choose another with --store, or move it away to "
                        "begin an empty one."
                    ),
                )
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or error
        raise MendableError(
            say("The store {path} cannot be opened ({reason}).", path=path, reason=reason),
            say(
                "Check its name and place and that you may write there, or choose another with "
                "--store."
            ),
        ) from error


def _set_up(
    connection: sqlite3.Connection,
    path: Path,
    clock: Callable[[], datetime],
    migrations: Migrations,
) -> None:
    try:
        fresh = _refuse_strangers(connection, path, len(migrations))
        sound = fresh or _sound(connection)
    except sqlite3.DatabaseError as error:
        if not is_damage(error):
            raise
        sound = False
    if not sound:
        connection.close()
        raise _put_aside(path, clock)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    connection.execute("PRAGMA recursive_triggers = ON")
    connection.execute("PRAGMA trusted_schema = OFF")
    _bring_up_to_date(connection, path, migrations)
    connection.execute("PRAGMA query_only = ON")


def _refuse_strangers(connection: sqlite3.Connection, path: Path, newest: int) -> bool:
    """Refuse other programs' files and newer ones; tell whether the file is empty."""
    # In one transaction: another program may be making the store just now.
    connection.execute("BEGIN")
    tables = connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
    owner = connection.execute("PRAGMA application_id").fetchone()[0]
    version = connection.execute("PRAGMA user_version").fetchone()[0]
    connection.execute("COMMIT")
    if tables == owner == version == 0:
        return True
    if owner != APPLICATION_ID:
        raise MendableError(
            say("{path} belongs to another program.", path=path),
            say("It was left as it is. Choose another file with --store."),
        )
    if version > newest:
        raise MendableError(
            say(
                "{path} was written by a newer Swatchwright (its layout is {version}, this one "
                "knows up to {newest}).",
                path=path,
                version=version,
                newest=newest,
            ),
            say("It was left as it is. Bring this Swatchwright up to date to open it."),
        )
    return False


def _sound(connection: sqlite3.Connection) -> bool:
    """Look the file over. Pictures of a large one are told by their fingerprint when read."""
    size = 1
    for what in ("page_count", "page_size"):
        size *= connection.execute(f"PRAGMA {what}").fetchone()[0]
    if size <= _LOOKED_OVER_WHOLE:
        checks = ["PRAGMA quick_check(1)"]
    else:
        tables = [*WATCHED, "edits", "past", *(f"past_{table}" for table in WATCHED)]
        checks = [f"PRAGMA quick_check({table})" for table in tables]
    return all(connection.execute(check).fetchone()[0] == "ok" for check in checks)


def _put_aside(path: Path, clock: Callable[[], datetime]) -> MendableError:
    """Move a damaged store and what belongs to it aside, and say how to go on."""
    stamp = clock().strftime("%Y%m%d-%H%M%S")
    aside = _free(path.with_name(f"{path.stem}.damaged-{stamp}{path.suffix}"))
    try:
        for tail in ("", "-wal", "-shm"):
            part = path.with_name(path.name + tail)
            if part.exists():
                part.rename(aside.with_name(aside.name + tail))
    except OSError:
        return MendableError(
            say("The store {path} is damaged and could not be put aside.", path=path),
            say("Nothing was thrown away. Move it to another folder yourself; then open again."),
        )
    return MendableError(
        _now_aside(path, aside),
        say(
            "Put your last backup in its place; or open again to begin with an empty store, and "
            "bring over what can still be read with: {command}",
            command=f'swatchwright job rescue "{aside}"',
        ),
    )


def _now_aside(path: Path, aside: Path) -> str:
    told = say(
        "The store {path} is damaged. Nothing was thrown away: it is now {aside}.",
        path=path,
        aside=aside,
    )
    copies = sorted(path.parent.glob(f"{path.stem}.before-*{path.suffix}"))
    if not copies:
        return told
    copy = say("A copy from before the last update is {copy}.", copy=copies[-1])
    return f"{told} {copy}"


def _free(path: Path) -> Path:
    """Give the path, or the first like it that is not taken."""
    count, found = 2, path
    while found.exists():
        found = path.with_name(f"{path.stem}-{count}{path.suffix}")
        count += 1
    return found


def _bring_up_to_date(connection: sqlite3.Connection, path: Path, migrations: Migrations) -> None:
    """Take the file to the newest layout, each step whole or not at all, and lay the triggers."""
    version = _version(connection)
    if version == len(migrations) and triggers_are_laid(connection):
        return
    if 0 < version < len(migrations):
        _copy(connection, _free(path.with_name(f"{path.stem}.before-{version + 1}{path.suffix}")))
    connection.execute("BEGIN IMMEDIATE")
    try:
        # Another program may have done it while this one waited.
        for number in range(_version(connection), len(migrations)):
            lift_triggers(connection)
            for statement in migrations[number]:
                connection.execute(statement)
            connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
            connection.execute(f"PRAGMA user_version = {number + 1}")
        if not triggers_are_laid(connection):
            lift_triggers(connection)
            lay_triggers(connection)
        connection.execute("COMMIT")
    except BaseException:
        connection.execute("ROLLBACK")
        raise


def _version(connection: sqlite3.Connection) -> int:
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def _copy(connection: sqlite3.Connection, path: Path) -> None:
    """Copy the whole store to another file."""
    with in_plain_words(path):
        copy = sqlite3.connect(path)
        try:
            connection.backup(copy)
        finally:
            copy.close()
