"""Which shelf was worked with is remembered, and is taken again or told of."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.bench_shelf import shelf_in_use
from swatchwright.acts.file_stamp import stamp_of
from swatchwright.acts.job_bench import BENCH, Laid, keep_mix, settings_of
from swatchwright.acts.job_files import export_job, import_job
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.shelf_used import ShelfFrom, UsedShelf, taken_again, worked_with
from swatchwright.acts.stock import put_paints
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from swatchwright.shelf.job_file import JobFile, read_job_file, write_job_file
from swatchwright.shelf.jobs import Document
from swatchwright.shelf.store.store import Store

DEMO = UsedShelf(ShelfFrom.DEMO)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


def fill(store: Store) -> None:
    """Put two paints of her own on the shelf."""
    put_paints(
        store, tuple(replace(p, how_known=HowKnown.GUESSED) for p in demo_shelf().paints[:2])
    )


def of_file(path: Path) -> UsedShelf:
    """Remember a shelf file."""
    save_demo_shelf(path)
    return UsedShelf(ShelfFrom.FILE, str(path), stamp_of(path))


def test_the_demonstration(store: Store) -> None:
    """It is taken beside kept paints; where none are kept it is what stands in their place."""
    assert taken_again(store, DEMO).kept
    fill(store)
    taken = taken_again(store, DEMO)
    assert (taken.kept, len(taken.shelf.paints), taken.trouble) == (False, 24, None)
    assert len(taken_again(store, UsedShelf()).shelf.paints) == 2


def test_a_file(store: Store, tmp_path: Path) -> None:
    """It is read again; changed it is used and told of; gone, the kept paints come instead."""
    fill(store)
    used = of_file(tmp_path / "mine.csv")
    taken = taken_again(store, used)
    assert (taken.kept, len(taken.shelf.paints), taken.trouble) == (False, 24, None)
    lines = (tmp_path / "mine.csv").read_text(encoding="utf-8").splitlines()
    (tmp_path / "mine.csv").write_text("\n".join(lines[:5]) + "\n", encoding="utf-8")
    taken = taken_again(store, used)
    assert (taken.kept, len(taken.shelf.paints)) == (False, 4)
    assert taken.trouble is not None
    assert "changed" in taken.trouble.what
    (tmp_path / "mine.csv").unlink()
    taken = taken_again(store, used)
    assert (taken.kept, len(taken.shelf.paints)) == (True, 2)
    assert taken.trouble is not None
    assert "mine.csv" in taken.trouble.what


def test_it_is_kept_with_a_mix(store: Store) -> None:
    """Made before any paint was kept, a job is of the demonstration, also once some are."""
    id_ = new_job(store, title="Box").jobs[0]
    found = recipes_for(typed_colour(46, 34, 24), demo_shelf(), keep=1)
    keep_mix(store, id_, found, choose=1, shelf=UsedShelf())
    fill(store)
    assert settings_of(job_of(store, id_)).shelf == DEMO
    assert worked_with(store, UsedShelf()) == UsedShelf()


def test_a_job_of_before(store: Store) -> None:
    """A bench that was kept without its shelf says of none, and the rest is read."""
    id_ = new_job(store, title="Box").jobs[0]
    keep_document(store, id_, BENCH, {"volume": 750.0, "most_paints": 2, "zone": "all"})
    laid = settings_of(job_of(store, id_))
    assert (laid.volume, laid.shelf) == (750, None)


def test_no_place_goes_out_or_comes_in(store: Store, tmp_path: Path) -> None:
    """Where a shelf file lay stays here, and a job from elsewhere has none opened here."""
    id_ = new_job(store, title="Box").jobs[0]
    keep_document(store, id_, BENCH, Laid(shelf=of_file(tmp_path / "mine.csv")))
    path = export_job(store, id_, tmp_path / "box.swatchjob")
    assert settings_of(read_job_file(path).job).shelf is None
    told = Document.of(Laid(shelf=UsedShelf(ShelfFrom.FILE, "/elsewhere/x.csv")))
    strange = replace(job_of(store, id_), documents=((BENCH, told),))
    write_job_file(JobFile(strange, {}, {}), path)
    assert settings_of(job_of(store, import_job(store, path).jobs[0])).shelf is None


def test_the_rule(store: Store) -> None:
    """What lies on the bench is in use; without one what is kept, or the demonstration."""
    assert shelf_in_use(store).name == demo_shelf().name
    fill(store)
    assert len(shelf_in_use(store).paints) == 2
    assert len(shelf_in_use(store, demo_shelf()).paints) == 24
