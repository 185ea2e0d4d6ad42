"""Edits: whole or not at all, undone and redone, whatever they touch."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.errors import MendableError
from swatchwright.shelf.store import history, job_rows, paint_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.kept import keep, take
from swatchwright.shelf.store.schema import WATCHED
from swatchwright.shelf.store.store import OutsideAnEditError, Store
from unit.shelf.stores import add_full_job, add_two_paints, dump, opened, two_paints


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with opened(tmp_path / "store.sqlite") as made:
        yield made


def kept_hashes(store: Store) -> set[str]:
    """Give the fingerprints of what is kept."""
    with store.reading() as connection:
        return {hash_ for (hash_,) in connection.execute("SELECT hash FROM kept")}


def note(store: Store, text: str) -> Changes:
    """Change the brief of the one job."""
    with store.editing(f"Brief {text}") as edit:
        job = job_rows.read_job(edit.connection, "blanket-box")
        job_rows.write_job(edit, job, replace(job, brief=text))
        return edit.changes


# --- writing only in edits -----------------------------------------------------------------------


def test_nothing_is_written_outside_an_edit(store: Store) -> None:
    """The store's own connection does not write while no edit runs."""
    add_full_job(store)
    with store.reading() as connection, pytest.raises(sqlite3.OperationalError, match="readonly"):
        connection.execute("DELETE FROM jobs")


@pytest.mark.parametrize("table", [*WATCHED, "kept"])
def test_the_file_itself_refuses_a_write_outside_an_edit(store: Store, table: str) -> None:
    """Another program that writes past the history is refused by the file."""
    add_full_job(store)
    add_two_paints(store)
    before = dump(store)
    other = sqlite3.connect(store.path)
    column = "hash" if table == "kept" else "row"
    for deed in (f"DELETE FROM {table}", f"UPDATE {table} SET {column} = {column}"):  # noqa: S608
        with pytest.raises(sqlite3.IntegrityError, match="outside an edit"):
            other.execute(deed)
    other.close()
    assert dump(store) == before


def test_an_edit_that_has_ended_writes_no_more(store: Store) -> None:
    """An edit held on to after its end raises."""
    with store.editing("One") as edit:
        pass
    with pytest.raises(OutsideAnEditError):
        keep(edit, "photo", b"late")


def test_an_edit_that_fails_leaves_nothing(store: Store) -> None:
    """When an edit ends with an error all it wrote is gone, and its label with it."""
    add_full_job(store)
    before = dump(store), store.history()
    with pytest.raises(ZeroDivisionError), store.editing("Half") as edit:  # noqa: PT012
        job_rows.delete_job(edit, "blanket-box")
        keep(edit, "photo", b"half")
        raise ZeroDivisionError
    assert (dump(store), store.history()) == before
    assert len(kept_hashes(store)) == 3


def test_an_edit_within_an_edit_is_part_of_it(store: Store) -> None:
    """Acts within an edit are undone together; each tells its own changes."""
    with store.editing("Both") as outer:
        inner = add_two_paints(store)
        add_full_job(store)
        both = outer.changes
    assert inner.paints == ("white-clean", "red")
    assert inner.jobs == ()
    assert both.paints == inner.paints
    assert both.jobs == ("blanket-box",)
    assert [line.label for line in store.history()] == ["Both"]
    store.undo()
    assert not any(dump(store).values())


def test_a_part_that_fails_takes_only_itself_back(store: Store) -> None:
    """An inner act that fails and is caught leaves the rest of the edit."""
    with store.editing("Both"):
        add_two_paints(store)
        with pytest.raises(ZeroDivisionError), store.editing("Inner") as inner:  # noqa: PT012
            paint_rows.remove_paints(inner, ("red",))
            raise ZeroDivisionError
    assert len(dump(store)["paints"]) == 2


# --- undo and redo -------------------------------------------------------------------------------


def test_undo_brings_back_what_was(store: Store) -> None:
    """A removed job comes back to the last byte, with photos, colours and paints."""
    job = add_full_job(store)
    before = dump(store)
    with store.editing("Remove") as edit:
        job_rows.delete_job(edit, "blanket-box")
        removed = edit.changes
    assert not any(dump(store).values())
    undone = store.undo()
    assert dump(store) == before
    assert undone.label == "Remove"
    assert set(undone.parts) == set(removed.parts)
    with store.reading() as connection:
        assert job_rows.read_job(connection, "blanket-box") == job
        assert take(connection, job.photos[0].copy)


def test_undo_and_redo_go_back_and_forth(store: Store) -> None:
    """Undoing everything and redoing everything passes the same states both ways."""
    states = [dump(store)]
    add_full_job(store)
    states.append(dump(store))
    for text in ("a", "b", "c"):
        note(store, text)
        states.append(dump(store))
    for _ in range(2):
        for state in reversed(states[:-1]):
            store.undo()
            assert dump(store) == state
        for state in states[1:]:
            store.redo()
            assert dump(store) == state


def test_undo_survives_a_restart(tmp_path: Path) -> None:
    """What one session did another takes back and brings back."""
    path = tmp_path / "s.sqlite"
    with opened(path) as store:
        add_full_job(store)
        full = dump(store)
    with opened(path) as store:
        assert store.undo().label == "Add a full job"
        assert not any(dump(store).values())
    with opened(path) as store:
        store.redo()
        assert dump(store) == full


def test_a_new_edit_ends_redoing(store: Store) -> None:
    """After something else is done, what was undone is gone, and its pictures with it."""
    add_full_job(store)
    kept = kept_hashes(store)
    store.undo()
    assert kept_hashes(store) == kept
    add_two_paints(store)
    with pytest.raises(MendableError, match="nothing to redo"):
        store.redo()
    assert kept_hashes(store) == set()
    assert [line.label for line in store.history()] == ["Two paints"]


def test_nothing_to_undo_is_said(store: Store) -> None:
    """In an empty store there is nothing to undo and nothing to redo."""
    assert store.next_undo() is None
    assert store.next_redo() is None
    with pytest.raises(MendableError, match="nothing to undo"):
        store.undo()
    with pytest.raises(MendableError, match="nothing to redo"):
        store.redo()


def test_an_edit_that_changes_nothing_leaves_no_trace(store: Store) -> None:
    """It is no step of the history and does not end redoing."""
    add_two_paints(store)
    store.undo()
    with store.editing("Nothing") as edit:
        assert not edit.changes
    assert store.redo().label == "Two paints"
    assert len(store.history()) == 1


def test_the_history_is_bounded(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    """The oldest edits stay done and can no longer be undone; nothing of them is kept."""
    add_full_job(store)
    with store.editing("Remove") as edit:
        job_rows.delete_job(edit, "blanket-box")
    assert len(kept_hashes(store)) == 3
    add_full_job(store, "other")
    monkeypatch.setattr(history.finish, "__defaults__", (4,))
    for i in range(6):
        with store.editing(f"Edit {i}") as edit:
            job = job_rows.read_job(edit.connection, "other")
            job_rows.write_job(edit, job, replace(job, brief=f"{i}", photos=()))
    assert [line.label for line in store.history()] == [f"Edit {i}" for i in (5, 4, 3, 2)]
    for _ in range(4):
        store.undo()
    with pytest.raises(MendableError, match="nothing to undo"):
        store.undo()
    with store.reading() as connection:
        assert job_rows.read_job(connection, "other").brief == "1"
        strays = connection.execute(
            "SELECT count(*) FROM past WHERE edit NOT IN (SELECT id FROM edits)"
        ).fetchone()
    assert strays == (0,)
    assert len(kept_hashes(store)) == 2, "the paints are used, the photo is not any more"


def test_changes_name_jobs_paints_and_parts(store: Store) -> None:
    """What is told of an edit is what it touched, with its words."""
    add_full_job(store)
    assert note(store, "matt") == Changes("Brief matt", ("blanket-box",))
    with store.editing("Document") as edit:
        job = job_rows.read_job(edit.connection, "blanket-box")
        job_rows.write_document(edit, job, "piece", None)
        assert edit.changes.parts == (("blanket-box", "piece"),)


def test_labels_are_short(store: Store) -> None:
    """A label of any length is cut to what a menu can show."""
    with store.editing("x" * 1000) as edit:
        paint_rows.write_paint(edit, paint_rows.StockedPaint(two_paints()[0], None))
    assert len(store.history()[0].label) == 200


def test_another_program_is_noticed(store: Store) -> None:
    """What another program writes is seen, and that it wrote is told once."""
    assert not store.changed_elsewhere()
    with opened(store.path) as other:
        add_two_paints(other)
    assert store.changed_elsewhere()
    assert not store.changed_elsewhere()
    assert len(dump(store)["paints"]) == 2
    assert store.undo().label == "Two paints"
