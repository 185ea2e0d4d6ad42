"""Stores as earlier releases wrote them open, one for each layout (tools/make_sample_store.py)."""

from __future__ import annotations

import re
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.jobs import find_jobs, job_of, list_jobs
from swatchwright.acts.stock import kept_shelf
from swatchwright.shelf.jobs import Batch, Poured
from swatchwright.shelf.store.kept import take
from swatchwright.shelf.store.schema import MIGRATIONS
from unit.shelf.stores import RED, full_job, opened, two_paints
from unit.shelf.test_store_rows import assert_same

DATA = Path(__file__).parents[2] / "data"
SAMPLES = sorted(DATA.glob("store_layout_*.sqlite"))


def test_there_is_a_sample_of_each_layout() -> None:
    """A release that changes the layout keeps a store of its own as a sample."""
    numbers = {int(re.findall(r"\d+", path.stem)[0]) for path in SAMPLES}
    assert numbers == set(range(1, len(MIGRATIONS) + 1))


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_a_sample_opens_with_all_that_is_in_it(sample: Path, tmp_path: Path) -> None:
    """Paints, stock, a job with everything, batches, undo and redo are what they were."""
    path = Path(shutil.copy(sample, tmp_path))
    with opened(path) as store:
        stocked = kept_shelf(store).stocked
        for one, kept in zip(two_paints(), stocked, strict=True):
            assert_same(one, kept.paint)
        assert [kept.ml_left for kept in stocked] == [None, 850.0]
        assert [line.id for line in list_jobs(store)] == ["chair", "blanket-box"]
        job = job_of(store, "blanket-box")
        white, red = job.recipes[0].paints[1].frozen, job.recipes[0].paints[0].frozen
        expected = full_job(white=white, red=red, copy=job.photos[0].copy)
        second = Batch(
            2,
            "2026-03-01",
            200.0,
            "drawers",
            (Poured("red", "Red", 150.0, 150.0), Poured("white-clean", "White, clean", 50.0)),
        )
        batches = (*expected.batches, second)
        assert job == replace(expected, batches=batches, changed=job.changed)
        with store.reading() as connection:
            assert all(take(connection, h) for h in (white, red, job.photos[0].copy))
        assert find_jobs(store, like=RED, text="cushion")[0].line.id == "blanket-box"
        assert store.redo().label == "Note on “Chair”"
        for _ in range(6):
            store.undo()
        assert list_jobs(store) == ()
        assert kept_shelf(store).stocked == ()
