"""Opening the store: made, looked over, brought up to date, refused; and what nothing may lose."""

from __future__ import annotations

import sqlite3
import threading
from pathlib import Path

import pytest

from swatchwright.errors import MendableError
from swatchwright.shelf.store import opening, schema
from swatchwright.shelf.store.place import FILE_NAME, usual_place
from swatchwright.shelf.store.trouble import in_plain_words
from unit.shelf.stores import add_full_job, add_two_paints, dump, opened

FURTHER = (
    *schema.MIGRATIONS,
    (
        "ALTER TABLE paints ADD COLUMN shelf_mark TEXT NOT NULL DEFAULT 'left'",
        "ALTER TABLE past_paints ADD COLUMN shelf_mark TEXT",
    ),
)
"""A migration as a later release may have it."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Give the place of a store with a job and two paints in it."""
    place = tmp_path / "store.sqlite"
    with opened(place) as store:
        add_full_job(store)
        add_two_paints(store)
    return place


def pragma(path: Path, what: str) -> int:
    """Ask SQLite itself about a file."""
    connection = sqlite3.connect(path)
    value = connection.execute(f"PRAGMA {what}").fetchone()[0]
    connection.close()
    return int(value)


# --- where it is ---------------------------------------------------------------------------------


def test_it_lives_where_the_environment_says(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """SWATCHWRIGHT_HOME names the folder; without it, it is the user's folder for data."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path / "deep" / "home"))
    assert usual_place() == tmp_path / "deep" / "home" / FILE_NAME
    with opening.open_store() as store:
        assert store.path.exists()
    monkeypatch.delenv("SWATCHWRIGHT_HOME")
    assert usual_place().name == FILE_NAME
    assert "swatchwright" in usual_place().parts


def test_a_new_file_says_what_it_is(path: Path) -> None:
    """A file has our mark (application_id), the number of its layout, and is in WAL."""
    assert pragma(path, "application_id") == 0x53574157
    assert pragma(path, "user_version") == len(schema.MIGRATIONS)
    with sqlite3.connect(path) as connection:
        assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    connection.close()


def test_an_empty_file_becomes_a_store(tmp_path: Path) -> None:
    """A file of no bytes, as a mistaken touch leaves it, is taken."""
    place = tmp_path / "s.sqlite"
    place.touch()
    with opened(place) as store:
        add_two_paints(store)
    assert place.stat().st_size > 0


# --- refused -------------------------------------------------------------------------------------


def refused(path: Path, *, patience: float = 5.0) -> str:
    """Open what must be refused, and give what is said."""
    with pytest.raises(MendableError) as error:
        opened(path, patience=patience)
    assert error.value.mend
    return str(error.value)


def test_a_newer_file_is_refused_and_left(path: Path) -> None:
    """A layout of the future is refused with its number, and not a byte of it changes."""
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA user_version = 7")
    connection.close()
    before = path.read_bytes()
    told = refused(path)
    assert "newer" in told
    assert "7" in told
    assert path.read_bytes() == before


def test_another_programs_file_is_refused_and_left(tmp_path: Path) -> None:
    """A database of another program, with a mark of its own or none, is left alone."""
    for mark in (0, 77):
        place = tmp_path / f"other-{mark}.sqlite"
        connection = sqlite3.connect(place)
        connection.execute("CREATE TABLE t (x)")
        connection.execute(f"PRAGMA application_id = {mark}")
        connection.close()
        before = place.read_bytes()
        assert "another program" in refused(place)
        assert place.read_bytes() == before


@pytest.mark.parametrize("data", [b"id,name,family\n", b"\xff\xd8\xff\xe0" * 50, b"\0" * 9000])
def test_a_file_that_is_no_store_is_refused_and_left(tmp_path: Path, data: bytes) -> None:
    """A table, a photo or zeros named by mistake are left as they are."""
    place = tmp_path / "mine.csv"
    place.write_bytes(data)
    assert "not a store" in refused(place)
    assert place.read_bytes() == data


def test_a_place_that_cannot_be_is_said(tmp_path: Path) -> None:
    """A folder, a file as folder, and a name that no file can have are refused in words."""
    (tmp_path / "file").touch()
    for place in (tmp_path, tmp_path / "file" / "s.sqlite", Path("a\0b")):
        assert "file" in refused(place)


# --- damaged -------------------------------------------------------------------------------------


def damage(path: Path, how: str) -> None:
    """Damage a store as a failing disk does."""
    data = bytearray(path.read_bytes())
    if how == "cut":
        path.write_bytes(data[: len(data) // 2 // 4096 * 4096 + 1000])
        return
    for page in range(1, len(data) // 4096):
        data[page * 4096 : page * 4096 + 64] = b"\xa5" * 64
    path.write_bytes(data)


@pytest.mark.parametrize("how", ["cut", "overwritten"])
def test_a_damaged_store_is_put_aside(path: Path, how: str) -> None:
    """It is kept under another name, byte for byte; what to do is said; then work can go on."""
    damage(path, how)
    damaged = path.read_bytes()
    told = refused(path)
    aside = [p for p in path.parent.iterdir() if "damaged" in p.name and p.suffix == ".sqlite"]
    assert len(aside) == 1
    assert aside[0].name in told
    assert "backup" in told
    assert aside[0].read_bytes() == damaged
    with opened(path) as store:
        assert not any(dump(store).values())


def test_a_second_damaged_store_does_not_replace_the_first(path: Path) -> None:
    """Each is put aside under a name of its own, even within a second."""
    kept = set()
    for _ in range(2):
        damage(path, "cut")
        kept.add(path.read_bytes())
        refused(path)
        with opened(path) as store:
            add_full_job(store)
    aside = {p.read_bytes() for p in path.parent.glob("*damaged*.sqlite")}
    assert aside == kept


def test_a_large_store_is_looked_over_without_its_pictures(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Above a size each table is looked over by itself, and damage is found as well."""
    monkeypatch.setattr(opening, "_LOOKED_OVER_WHOLE", 0)
    with opened(path) as store:
        assert dump(store)["jobs"]
    damage(path, "overwritten")
    assert "damaged" in refused(path)


# --- brought up to date --------------------------------------------------------------------------


def test_an_older_store_is_brought_up_to_date_after_a_copy(path: Path) -> None:
    """The new layout holds what the old one held; a copy in the old layout stands beside it."""
    with opened(path) as store:
        before = dump(store)
    with opened(path, migrations=FURTHER) as store:
        after = dump(store)
        assert [row[:-1] for row in after["paints"]] == before["paints"]
        assert all(row[-1] == "left" for row in after["paints"])
        store.undo()
        store.redo()
        assert dump(store) == after, "history goes on across a migration"
    assert pragma(path, "user_version") == 2
    (copy,) = path.parent.glob("*.before-2.sqlite")
    with opened(copy) as store:
        assert dump(store) == before


def test_a_migration_that_fails_changes_nothing(path: Path) -> None:
    """If a step of it fails the store stays as it was, and opens as before."""
    with opened(path) as store:
        before = dump(store)
    broken = (*FURTHER, ("ALTER TABLE paints ADD COLUMN x", "THIS IS NO SQL"))
    with pytest.raises(sqlite3.OperationalError):
        opened(path, migrations=broken)
    assert pragma(path, "user_version") == 1
    with opened(path) as store:
        assert dump(store) == before


def test_triggers_that_were_taken_away_are_laid_again(path: Path) -> None:
    """A file whose triggers somebody dropped has them again after opening."""
    connection = sqlite3.connect(path, isolation_level=None)
    schema.lift_triggers(connection)
    connection.close()
    with opened(path) as store, store.reading() as connection:
        assert schema.triggers_are_laid(connection)


# --- with others ---------------------------------------------------------------------------------


def test_a_store_in_use_is_said_to_be(path: Path) -> None:
    """While another program writes, an edit waits, then says so; nothing is changed."""
    with opened(path, patience=0.05) as store:
        before = dump(store)
        other = sqlite3.connect(path, isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(MendableError, match="Another window or program"):
            store.undo()
        assert dump(store) == before, "reading goes on"
        other.execute("ROLLBACK")
        other.close()
        assert store.undo().label == "Two paints"


def test_a_full_disk_is_said_and_loses_nothing(path: Path) -> None:
    """When there is no room left the edit is not kept, and everything before it is."""
    with opened(path) as store:
        before = dump(store)
        pages = store._connection.execute("PRAGMA page_count").fetchone()[0]
        store._connection.execute(f"PRAGMA max_page_count = {pages}")
        with pytest.raises(MendableError, match="full"), store.editing("Large") as edit:
            edit.connection.execute("INSERT INTO kept VALUES ('h', 'photo', zeroblob(1000000))")
        assert dump(store) == before
    with opened(path) as store:
        assert dump(store) == before


def test_a_file_that_may_not_be_written_is_said(path: Path) -> None:
    """SQLite's refusal to write a read-only file comes out in words."""
    connection = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    with pytest.raises(MendableError, match="cannot be opened or written"), in_plain_words(path):
        connection.execute("DELETE FROM edits")
    connection.close()


def test_what_is_our_own_fault_stays_one(path: Path) -> None:
    """A mistake in our own SQL is not passed off as the painter's."""
    with opened(path) as store, store.reading() as connection, pytest.raises(sqlite3.Error):
        connection.execute("SELECT nonsense")
    connection = sqlite3.connect(path)
    with pytest.raises(sqlite3.OperationalError), in_plain_words(path):
        connection.execute("SELECT nonsense")
    connection.close()


def test_threads_share_a_store(path: Path) -> None:
    """Edits and readings of several threads come one after another, none lost, none mixed."""
    wrong: list[BaseException] = []

    def work(name: int) -> None:
        try:
            for i in range(20):
                with store.editing(f"{name}") as edit:
                    edit.connection.execute(
                        "UPDATE paints SET ml_left = coalesce(ml_left, 0) + 1 WHERE id = 'red'"
                    )
                    seen = edit.changes
                assert seen.paints == ("red",)
                if i % 5 == 0:
                    dump(store)
        except BaseException as error:  # noqa: BLE001 - told to the test's own thread
            wrong.append(error)

    with opened(path) as store:
        threads = [threading.Thread(target=work, args=(name,)) for name in range(5)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
        assert not wrong
        with store.reading() as connection:
            assert connection.execute("SELECT ml_left FROM paints WHERE id = 'red'").fetchone() == (
                100.0,
            )
