"""What a new start offers to take back: the last edits that are of the job on the bench."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.jobs import change_job, job_of, new_job, note_job, open_jobs, redo, undo
from swatchwright.acts.last_edits import MOST_RECALLED, LastEdits, last_edits
from swatchwright.acts.stock import put_paints
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from swatchwright.acts.jobs import Store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with a chest and a chair."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        for title in ("Chest", "Chair"):
            new_job(made, title=title)
        yield made


def set_client(store: Store, job: str, name: str) -> str:
    """Edit a job; give the words of the edit."""
    return change_job(store, job, client=name).label


def test_that_a_job_was_begun_is_not_offered(store: Store) -> None:
    """A new start takes no job away."""
    assert last_edits(store, "chair") == LastEdits()
    assert last_edits(store, "no such job") == LastEdits()


def test_the_last_ones_in_the_order_of_undoing(store: Store) -> None:
    """What is offered is what undo of the store does, one after another."""
    made = [set_client(store, "chair", "Ann"), note_job(store, "chair", "Two legs").label]
    assert made[0] != made[1]
    offered = last_edits(store, "chair")
    assert offered == LastEdits((made[1], made[0]))
    assert [undo(store).label for _ in offered.undo] == list(offered.undo)
    assert job_of(store, "chair").client == ""
    assert last_edits(store, "chair") == LastEdits((), (made[0], made[1]))


def test_what_was_taken_back_can_be_done_again(store: Store) -> None:
    """Undone edits are offered to be redone, the next first, as redo of the store does."""
    made = [set_client(store, "chair", "Ann"), note_job(store, "chair", "Two legs").label]
    made.append(set_client(store, "chair", "Bea"))
    for _ in range(2):
        undo(store)
    offered = last_edits(store, "chair")
    assert offered == LastEdits((made[0],), tuple(made[1:]))
    assert [redo(store).label for _ in offered.redo] == list(offered.redo)


def test_no_further_than_another_job(store: Store) -> None:
    """Nothing is taken back that is not seen on the bench: it ends where another job was edited."""
    set_client(store, "chair", "Ann")
    set_client(store, "chest", "Bea")
    last = set_client(store, "chair", "Cleo")
    assert last_edits(store, "chair").undo == (last,)
    assert last_edits(store, "chest") == LastEdits()


def test_no_further_than_an_edit_of_the_shelf(store: Store) -> None:
    """Paints that were kept are not taken off the shelf either."""
    set_client(store, "chair", "Ann")
    put_paints(store, demo_shelf().paints, source="paints.csv", notes=())
    assert last_edits(store, "chair") == LastEdits()


def test_a_bounded_number(store: Store) -> None:
    """After a long day only so many are offered."""
    for number in range(MOST_RECALLED + 3):
        set_client(store, "chair", f"Client {number}")
    assert len(last_edits(store, "chair").undo) == MOST_RECALLED
