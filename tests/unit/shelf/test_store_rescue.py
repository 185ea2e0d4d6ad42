"""What can still be read of a damaged store comes over, and the damaged file stays as it is."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from swatchwright.acts.job_files import rescue_store
from swatchwright.acts.jobs import job_of, list_jobs, new_job
from swatchwright.acts.stock import kept_shelf, put_paints, set_stock
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import Job
from unit.shelf.stores import add_full_job, dump, opened, two_paints

PAGE = 4096


@pytest.fixture
def whole(tmp_path: Path) -> Path:
    """Give a store of many jobs and two paints."""
    path = tmp_path / "whole.sqlite"
    with opened(path) as store:
        put_paints(store, two_paints())
        set_stock(store, "red", 300)
        add_full_job(store)
        with store.editing("Many"):
            for i in range(120):
                new_job(store, title=f"Chair {i}", brief="A chair. " * 60)
    return path


def test_a_sound_store_comes_over_whole(whole: Path, tmp_path: Path) -> None:
    """Of a store without damage every job and paint comes, in one edit."""
    with opened(whole) as store:
        jobs = {line.id: job_of(store, line.id) for line in list_jobs(store)}
    before = whole.read_bytes()
    with opened(tmp_path / "new.sqlite") as store:
        changes = rescue_store(store, whole)
        assert "121 jobs and 2 paints" in changes.warnings[0]
        assert {line.id: job_of(store, line.id) for line in list_jobs(store)} == jobs
        assert kept_shelf(store).stocked[1].ml_left == 300
        store.undo()
        assert not any(dump(store).values())
    assert whole.read_bytes() == before


def rescued(damaged: Path, into: Path, originals: dict[str, Job]) -> int:
    """Give how many jobs came over; each must be what it was, and a refusal leaves nothing."""
    with opened(into) as store:
        try:
            rescue_store(store, damaged)
        except MendableError:
            assert not any(dump(store).values())
            return 0
        lines = list_jobs(store)
        for line in lines:
            job, was = job_of(store, line.id), originals.get(line.id)
            assert was is None or (job.title, job.brief) == (was.title, was.brief)
        return len(lines)


def test_of_a_damaged_store_what_is_readable_comes(whole: Path, tmp_path: Path) -> None:
    """With three pages overwritten most jobs mostly come, each sound; else it is said in words."""
    with opened(whole) as store:
        originals = {line.id: job_of(store, line.id) for line in list_jobs(store)}
    data = whole.read_bytes()
    came = []
    for seed in range(12):
        rng = np.random.default_rng(seed)
        harmed = bytearray(data)
        for page in rng.choice(np.arange(30, len(data) // PAGE), 3, replace=False).tolist():
            harmed[page * PAGE : (page + 1) * PAGE] = rng.bytes(PAGE)
        damaged = tmp_path / f"damaged-{seed}.sqlite"
        damaged.write_bytes(harmed)
        came.append(rescued(damaged, tmp_path / f"new-{seed}.sqlite", originals))
        assert damaged.read_bytes() == harmed
    assert sum(number > 60 for number in came) >= 9, came


@pytest.mark.parametrize("data", [b"", b"no store at all", b"\0" * 9000])
def test_what_is_no_store_gives_nothing(tmp_path: Path, data: bytes) -> None:
    """A file of another kind, or none, is refused in words."""
    path = tmp_path / "x.sqlite"
    path.write_bytes(data)
    with opened(tmp_path / "new.sqlite") as store:
        for place in (path, tmp_path / "none.sqlite"):
            with pytest.raises(MendableError):
                rescue_store(store, place)
        assert store.history() == ()
