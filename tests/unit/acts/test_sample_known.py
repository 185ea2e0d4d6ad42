"""A paint that the samples of a job taught is the same tin; another paint of its name is not."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.batches import keep_recipes, make_batch
from swatchwright.acts.jobs import Store, job_of, keep_document, new_job, open_jobs
from swatchwright.acts.kept_recipe import Changed, what_has_changed
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.sample import learnt_shelf
from swatchwright.acts.sample_judged import judged_by_eye
from swatchwright.acts.sample_learnt import knows, learn_from
from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop, new_loop, take_round
from swatchwright.acts.sample_tried import taught_in
from swatchwright.acts.sheet import content_of
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf

CLOTH = typed_colour(46, 34, 24)
SHELF = demo_shelf()


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "jobs.db") as made:
        yield made


@pytest.fixture
def job(store: Store) -> str:
    """Give the id of a job with a mix for its body."""
    id_ = new_job(store, title="A box").jobs[0]
    keep_recipes(store, id_, recipes_for(CLOTH, SHELF, keep=1), zone="body")
    return id_


def sampled(store: Store, job: str, said: str, loop: SampleLoop | None = None) -> SampleLoop:
    """Give the samples with one more of the mix of the job, told by eye."""
    mix = job_of(store, job).recipes[0]
    mixed = [(paint.paint, 30 * paint.share) for paint in mix.paints]
    begun = new_loop(CLOTH) if loop is None else loop
    return take_round(SHELF, begun, mixed, judged_by_eye(said, CLOTH.lab), day="2026-03-01")


def changed(store: Store, job: str, shelf: Shelf) -> Changed:
    """Say what has changed of the paints of the job's mix on a shelf."""
    kept = job_of(store, job)
    return what_has_changed(store, kept.recipes[0], in_use=shelf, taught=taught_in(kept))


def test_what_a_sample_taught_is_the_same_tin(store: Store, job: str) -> None:
    """After teaching once and again, each paint is said to be better known, and none to be other.

    Neither a batch nor the sheet warns of it.
    """
    shelf, loop = learnt_shelf(SHELF, sampled(store, job, "clearly too light"))
    shelf, loop = learnt_shelf(shelf, sampled(store, job, "a touch too red", loop))
    assert len(changed(store, job, shelf).others) == len(job_of(store, job).recipes[0].paints)
    keep_document(store, job, SAMPLES_PART, loop)
    told = changed(store, job, shelf)
    assert told.others == ()
    (line,) = told.taught
    assert "the same tins, better known since sample 2" in line
    assert all(f"“{paint.name}”" in line for paint in job_of(store, job).recipes[0].paints)
    assert make_batch(store, job, zone="body", volume=100, in_use=shelf).warnings == ()
    notes = [paint.note for paint in content_of(store, job, in_use=shelf).zones[0].paints]
    assert not any(notes)


def test_another_paint_of_that_name_is_warned_of(store: Store, job: str) -> None:
    """A paint that was made anew after it was taught is another one, and is said to be."""
    shelf, loop = learnt_shelf(SHELF, sampled(store, job, "clearly too light"))
    keep_document(store, job, SAMPLES_PART, loop)
    first = job_of(store, job).recipes[0].paints[0].paint
    paints = tuple(replace(p, K=2 * p.K) if p.id == first else p for p in shelf.paints)
    told = changed(store, job, Shelf("mine", paints))
    assert len(told.others) == 1
    assert "not the paint of the recipe" in told.others[0]
    assert len(told.taught) == 1
    assert demo_shelf().paint(first).name not in told.taught[0]


def test_a_mix_of_taught_paints_on_the_shelf_as_it_was(store: Store, job: str) -> None:
    """A mix found with what was learnt is of the same tins, though the shelf has not learnt it."""
    shelf, loop = learnt_shelf(SHELF, sampled(store, job, "clearly too light"))
    brushed = Shelf("brushed", tuple(shelf.paint(id_) for id_, _ in loop.rounds[0].mixed))
    keep_recipes(store, job, recipes_for(CLOTH, brushed, keep=1), zone="body")
    keep_document(store, job, SAMPLES_PART, loop)
    told = changed(store, job, SHELF)
    assert told.others == ()
    (line,) = told.taught
    assert "has not learnt" in line


def test_what_the_shelf_has_lost_is_learnt_again(store: Store, job: str) -> None:
    """All samples count, each once, with the paints as they were and with the taught ones.

    The outcome is as had they never been taught.
    """
    first = sampled(store, job, "clearly too light")
    shelf, loop = learnt_shelf(SHELF, first)
    again = sampled(store, job, "a touch too dark", loop)
    fresh = sampled(store, job, "a touch too dark", first)
    lost = learn_from(SHELF, again)
    assert lost.shares.tolist() == learn_from(SHELF, fresh).shares.tolist()
    # The taught ones are freed first of what they learnt, so that nothing counts twice.
    assert learn_from(shelf, again).shares.tolist() == lost.shares.tolist()
    assert knows(shelf, loop)
    assert not knows(SHELF, loop)
    assert not knows(shelf, again)
