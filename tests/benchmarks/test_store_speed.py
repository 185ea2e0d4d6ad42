"""A store of 5,000 jobs and 1,000 paints against the bare thing in the same run."""

from __future__ import annotations

import sqlite3
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture
from skimage import color

from benchmarks.stores import large_store, some_labs
from swatchwright.acts.jobs import find_jobs, list_jobs, open_jobs
from swatchwright.acts.stock import kept_shelf
from swatchwright.values import Lab

JOBS, PAINTS = 5000, 1000
WANTED = Lab(46, 34, 24)

skimage_difference: Any = color.deltaE_ciede2000


@pytest.fixture(scope="module")
def sizes(request: pytest.FixtureRequest) -> tuple[int, int]:
    """Give how many jobs and paints: all of them where speed is measured, else a few."""
    measured = request.config.getoption("benchmark_enable", default=False)
    return (JOBS, PAINTS) if measured else (60, 20)


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory, sizes: tuple[int, int]) -> Path:
    """Give the large store."""
    return large_store(tmp_path_factory.mktemp("large") / "store.sqlite", *sizes)


@pytest.mark.benchmark(group="open the store")
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_opening(benchmark: BenchmarkFixture, path: Path, way: str) -> None:
    """Opening costs little more than SQLite's own look over the file."""

    def ours() -> str:
        with open_jobs(path) as store:
            return "ok" if store.path == path else ""

    def bare() -> str:
        connection = sqlite3.connect(path)
        found = connection.execute("PRAGMA quick_check").fetchone()[0]
        connection.close()
        return str(found)

    assert benchmark(ours if way == "ours" else bare) == "ok"


@pytest.mark.benchmark(group="list the jobs")
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_listing(benchmark: BenchmarkFixture, path: Path, sizes: tuple[int, int], way: str) -> None:
    """Listing all jobs, against reading their rows."""
    with open_jobs(path) as store, store.reading() as connection:

        def ours() -> int:
            return len(list_jobs(store))

        def bare() -> int:
            return len(connection.execute("SELECT * FROM jobs ORDER BY changed").fetchall())

        assert benchmark(ours if way == "ours" else bare) == sizes[0] + 1


@pytest.mark.benchmark(group="find jobs by words")
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_finding_words(benchmark: BenchmarkFixture, path: Path, way: str) -> None:
    """Finding by words, against looking through the same texts in Python."""
    with open_jobs(path) as store, store.reading() as connection:

        def ours() -> int:
            return len(find_jobs(store, text="oak wax"))

        def bare() -> int:
            rows = connection.execute("SELECT words FROM jobs").fetchall()
            return sum("oak" in words and "wax" in words for (words,) in rows)

        expected = bare()
        assert expected > 0
        assert benchmark(ours if way == "ours" else bare) == expected


@pytest.mark.benchmark(group="find jobs by colour")
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_finding_colours(
    benchmark: BenchmarkFixture, path: Path, sizes: tuple[int, int], way: str
) -> None:
    """Finding by a colour, against scikit-image's differences of the bare colours."""
    labs = np.array([lab.triple for lab in some_labs(3 * sizes[0])])
    middle = np.tile(WANTED.triple, (len(labs), 1))

    def bare() -> int:
        near = skimage_difference(middle, labs).reshape(-1, 3).min(axis=1) <= 12
        return int(near.sum()) + 1

    with open_jobs(path) as store:

        def ours() -> int:
            return len(find_jobs(store, like=WANTED, within=12))

        assert benchmark(ours if way == "ours" else bare) == bare()


@pytest.mark.benchmark(group="read the shelf")
@pytest.mark.parametrize("way", ["ours", "bare"])
def test_reading_the_shelf(
    benchmark: BenchmarkFixture, path: Path, sizes: tuple[int, int], way: str
) -> None:
    """Reading all paints with their curves, against reading their rows."""
    with open_jobs(path) as store, store.reading() as connection:

        def ours() -> int:
            return len(kept_shelf(store).stocked)

        def bare() -> int:
            return len(connection.execute("SELECT * FROM paints").fetchall())

        assert benchmark(ours if way == "ours" else bare) == sizes[1]
