"""The job of the demonstration: whole, invented, and taken back in one step."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.batches import make_batch
from swatchwright.acts.demo_job import DemoFindings, begin_demo_job, demo_findings
from swatchwright.acts.job_bench import settings_of, wanted_to_lay, zones_of
from swatchwright.acts.jobs import edits, job_of, list_jobs, open_jobs, undo
from swatchwright.acts.kept_recipe import Changed, shelf_of_recipe, what_has_changed
from swatchwright.acts.samples import sample_photos
from swatchwright.acts.sheet_form import SheetForm, sheet_of_job
from swatchwright.acts.shelf_used import ShelfFrom, taken_again
from swatchwright.acts.stock import ShelfKind, kept_shelf, put_paints
from swatchwright.colour.difference import delta_e_2000
from swatchwright.language import use_language
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture(scope="module")
def told() -> list[float]:
    """Give a list for the progress that is told."""
    return []


@pytest.fixture(scope="module")
def findings(told: list[float]) -> DemoFindings:
    """Read the sample photo and find the recipes."""
    return demo_findings(progress=told.append)


def test_clay_red_body_and_ink_blue_top(store: Store, findings: DemoFindings) -> None:
    """Body and top want the colours that the sample was rendered from, each with a chosen mix."""
    job = job_of(store, begin_demo_job(store, findings).jobs[0])
    rows = json.loads((sample_photos()[0].path.parent / "truth.json").read_text(encoding="utf-8"))
    truth = {c["name"]: c["lab_d65_2deg"] for c in rows["images"][0]["colours"]}
    for wanted, name in zip(job.wanted, ("clay red", "ink blue"), strict=True):
        assert float(delta_e_2000(truth[name], wanted.colour.lab.triple)) < 6
        assert job.chosen(wanted.zone) is not None
    assert set(zones_of(job)) == {"body", "top"}
    first = wanted_to_lay(job)
    assert first is not None
    assert first.zone == "body"
    assert settings_of(job).photo == job.photos[0].hash


def test_it_says_that_it_is_invented(store: Store, findings: DemoFindings) -> None:
    """Client, brief and note all say so, and so do the paints."""
    job = job_of(store, begin_demo_job(store, findings).jobs[0])
    for text in (job.client, job.brief, job.notes[0].text):
        assert "invented" in text.lower()
    assert kept_shelf(store).kind is ShelfKind.DEMO


def test_a_batch_draws_on_its_stock(store: Store, findings: DemoFindings) -> None:
    """A batch can be made at once, with nothing to warn of."""
    id_ = begin_demo_job(store, findings).jobs[0]
    assert not make_batch(store, id_, volume=300, zone="top").warnings
    poured = job_of(store, id_).batches[0].poured
    assert all(p.drawn == p.ml for p in poured)


def test_one_step_takes_it_back(store: Store, findings: DemoFindings) -> None:
    """Undone once, neither the job nor the invented paints are left."""
    begin_demo_job(store, findings)
    assert len(edits(store)) == 1
    undo(store)
    assert not list_jobs(store)
    assert kept_shelf(store).kind is ShelfKind.EMPTY


def test_her_own_shelf_is_left_alone(store: Store, findings: DemoFindings) -> None:
    """Where her own paints stand on the shelf the invented ones are not put among them."""
    own = replace(demo_shelf().paints[0], id="own", how_known=HowKnown.GUESSED)
    put_paints(store, (own,))
    begin_demo_job(store, findings)
    assert [s.paint.id for s in kept_shelf(store).stocked] == ["own"]


def test_it_names_its_shelf(store: Store, findings: DemoFindings) -> None:
    """Over her own paints the job is worked with the demonstration's, and none is said to lack.

    Without paints of hers it is the kept shelf, so that batches draw on its stock.
    """
    job = job_of(store, begin_demo_job(store, findings).jobs[0])
    used = settings_of(job).shelf
    assert used is not None
    assert used.source is ShelfFrom.DEMO
    assert taken_again(store, used).kept
    own = replace(demo_shelf().paints[0], id="own", how_known=HowKnown.GUESSED)
    put_paints(store, (own,), replace_all=True)
    taken = taken_again(store, used)
    assert not taken.kept
    assert taken.trouble is None
    for recipe in job.recipes:
        assert what_has_changed(store, recipe, in_use=taken.shelf) == Changed()


def test_progress_goes_on_over_both_searches(findings: DemoFindings, told: list[float]) -> None:
    """The share done never falls, and comes to the whole."""
    assert findings.recipes
    assert told == sorted(told)
    assert told[-1] == pytest.approx(1)


@pytest.mark.parametrize(("kept", "shown"), [("en", "de"), ("de", "en")])
def test_its_paints_are_named_in_the_language_in_use(
    store: Store, findings: DemoFindings, kept: str, shown: str
) -> None:
    """Kept in one language, mixes, batches, shelf and paper name the paints in another."""
    try:
        use_language(kept)
        id_ = begin_demo_job(store, findings).jobs[0]
        make_batch(store, id_, volume=200.0, zone="top")
        use_language(shown)
        job = job_of(store, id_)
        names = {paint.id: paint.name for paint in demo_shelf().paints}
        assert {s.paint.id: s.paint.name for s in kept_shelf(store).stocked} == names
        mixed = [paint for recipe in job.recipes for paint in recipe.paints]
        poured = [paint for batch in job.batches for paint in batch.poured]
        assert poured
        assert all(paint.name == names[paint.paint] for paint in mixed)
        assert all(paint.name == names[paint.paint] for paint in poured)
        for recipe in job.recipes:
            were = shelf_of_recipe(store, recipe).paints
            assert [paint.name for paint in were] == [names[paint.id] for paint in were]
        sheet = sheet_of_job(store, id_, SheetForm())
        lines = [line for zone in sheet.zones for line in zone.paints]
        assert lines
        assert all(line.name == names[line.id] for line in lines)
    finally:
        use_language("en")
