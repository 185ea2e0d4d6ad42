"""Any way of editing, undoing, redoing and reopening: the state is always one that was before."""

from __future__ import annotations

import tempfile
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from swatchwright.acts.batches import choose_recipe, make_batch, take_back_batch
from swatchwright.acts.jobs import (
    change_job,
    copy_job,
    job_of,
    keep_document,
    list_jobs,
    new_job,
    note_job,
    remove_job,
    want_colours,
)
from swatchwright.acts.stock import add_stock, draw_stock, kept_shelf, remove_paints, set_stock
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import Status, WantedColour
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab
from unit.shelf.stores import add_full_job, add_two_paints, dump, opened

texts = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=20)
amounts = st.floats(1, 1000).map(lambda ml: round(ml, 1))


class Edits(RuleBasedStateMachine):
    """A store, beside it every state that it has been in."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.store: Store = opened(Path(self.folder.name) / "s.sqlite")
        self.states: list[dict[str, Any]] = [dump(self.store)]
        self.at = 0

    def teardown(self) -> None:
        """Close the store."""
        self.store.close()
        self.folder.cleanup()

    def done(self, changes: Changes) -> None:
        """Note the state after an edit; what was undone before it is gone."""
        state = dump(self.store)
        assert bool(changes) == (state != self.states[self.at])
        if changes:
            del self.states[self.at + 1 :]
            self.states.append(state)
            self.at += 1

    def some_job(self, pick: int) -> str:
        """Give the id of one of the jobs."""
        lines = list_jobs(self.store)
        return lines[pick % len(lines)].id

    @property
    def has_jobs(self) -> bool:
        """Whether there are any."""
        return bool(self.states[self.at]["jobs"])

    @property
    def has_paints(self) -> bool:
        """Whether there are any."""
        return bool(self.states[self.at]["paints"])

    # --- edits -----------------------------------------------------------------------------------

    @rule(title=texts)
    def begin(self, title: str) -> None:
        """Begin a job."""
        if title.strip():
            self.done(new_job(self.store, title=title))

    @precondition(lambda self: len(self.states[self.at]["jobs"]) < 6)
    @rule()
    def begin_full(self) -> None:
        """Add a job with everything in it, as one that was brought in."""
        before = len(self.states[self.at]["jobs"])
        with self.store.editing("Full") as edit:
            id_ = f"full-{edit.id}"
            add_full_job(self.store, id_)
            changes = edit.changes
        assert changes.jobs == (id_,)
        self.done(changes)
        assert len(self.states[self.at]["jobs"]) == before + 1

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9), text=texts, status=st.sampled_from(Status))
    def change(self, pick: int, text: str, status: Status) -> None:
        """Change the head of a job, to something else or to the same."""
        self.done(change_job(self.store, self.some_job(pick), brief=text, status=status))

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9), value=st.one_of(st.none(), st.lists(st.integers(), max_size=3)))
    def document(self, pick: int, value: list[int] | None) -> None:
        """Keep a document, another, or none."""
        self.done(keep_document(self.store, self.some_job(pick), "piece", value))

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9), L=st.floats(0, 100), text=texts)
    def want(self, pick: int, L: float, text: str) -> None:
        """Want a colour and note why, in one edit."""
        id_ = self.some_job(pick)
        with self.store.editing("Want and note") as edit:
            wanted = (WantedColour("body", KnownColour(Lab(L, 1, 2), None, "typed in")),)
            want_colours(self.store, id_, wanted)
            if text.strip():
                note_job(self.store, id_, text)
            changes = edit.changes
        self.done(changes)

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9))
    def copy(self, pick: int) -> None:
        """Copy a job."""
        if len(list_jobs(self.store)) < 8:
            self.done(copy_job(self.store, self.some_job(pick)))

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9))
    def remove(self, pick: int) -> None:
        """Remove a job."""
        self.done(remove_job(self.store, self.some_job(pick)))

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9), volume=amounts)
    def mix(self, pick: int, volume: float) -> None:
        """Mix a batch, drawing stock, where a recipe is chosen."""
        id_ = self.some_job(pick)
        if job_of(self.store, id_).chosen():
            self.done(make_batch(self.store, id_, volume=volume))

    @precondition(lambda self: self.has_jobs)
    @rule(pick=st.integers(0, 9))
    def unmix(self, pick: int) -> None:
        """Take the last batch back, and choose another recipe."""
        job = job_of(self.store, self.some_job(pick))
        if job.batches:
            self.done(take_back_batch(self.store, job.id, job.batches[-1].number))
        if job.recipes:
            self.done(choose_recipe(self.store, job.id, job.recipes[-1]))

    @rule()
    def paints(self) -> None:
        """Put two paints on the shelf, or write them once more."""
        with self.store.editing("Paints") as edit:
            add_two_paints(self.store)
            touched = bool(edit.changes)
        state = dump(self.store)
        assert touched
        del self.states[self.at + 1 :]
        self.states.append(state)
        self.at += 1

    @precondition(lambda self: self.has_paints)
    @rule(ml=amounts)
    def stock(self, ml: float) -> None:
        """Set a stock, add to it, and draw from it."""
        id_ = kept_shelf(self.store).stocked[0].paint.id
        with self.store.editing("Stock") as edit:
            set_stock(self.store, id_, ml)
            add_stock(self.store, id_, 2 * ml)
            draw_stock(self.store, id_, 1)
            changes = edit.changes
        assert changes.paints == (id_,)
        state = dump(self.store)
        del self.states[self.at + 1 :]
        self.states.append(state)
        self.at += 1

    @precondition(lambda self: self.has_paints)
    @rule()
    def take_off(self) -> None:
        """Take a paint off the shelf."""
        id_ = kept_shelf(self.store).stocked[-1].paint.id
        self.done(remove_paints(self.store, (id_,)))

    @rule()
    def fail(self) -> None:
        """Begin an edit that ends with an error."""
        with pytest.raises(ZeroDivisionError), self.store.editing("Fail"):  # noqa: PT012
            add_full_job(self.store, "fail")
            raise ZeroDivisionError

    # --- undo, redo, reopen ----------------------------------------------------------------------

    @rule()
    def undo(self) -> None:
        """Undo, if there is anything to undo."""
        if self.at == 0:
            with pytest.raises(MendableError):
                self.store.undo()
            return
        self.store.undo()
        self.at -= 1

    @rule()
    def redo(self) -> None:
        """Redo, if there is anything to redo."""
        if self.at == len(self.states) - 1:
            with pytest.raises(MendableError):
                self.store.redo()
            return
        self.store.redo()
        self.at += 1

    @rule()
    def reopen(self) -> None:
        """Close the store and open it again."""
        self.store.close()
        self.store = opened(self.store.path)

    @invariant()
    def the_state_is_known(self) -> None:
        """Compare with the state that the store was in at this point of its history."""
        assert dump(self.store) == self.states[self.at]

    @invariant()
    def it_is_sound(self) -> None:
        """Every job can be read, and no row refers to what is not there."""
        with self.store.reading() as connection:
            assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        for line in list_jobs(self.store):
            job = job_of(self.store, line.id)
            assert replace(job, id=line.id) == job


TestEdits = Edits.TestCase
TestEdits.settings = settings(
    max_examples=25,
    stateful_step_count=25,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
)
