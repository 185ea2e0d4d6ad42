"""What lay on the bench is written down beside the store, and read back if it is sound."""

from __future__ import annotations

import base64
import shutil
import zlib
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import pytest

from swatchwright.acts.file_stamp import stamp_of
from swatchwright.acts.job_photos import add_photo
from swatchwright.acts.jobs import job_of, new_job, open_jobs
from swatchwright.acts.last_bench import (
    LastBench,
    last_bench,
    photo_of_bench,
    remember_bench,
)
from swatchwright.acts.last_job import remember_job
from swatchwright.acts.left_file import MOST_LEFT
from swatchwright.acts.sample_lessons import learnt_since
from swatchwright.acts.samples import sample_photos
from swatchwright.errors import MendableError
from swatchwright.mixing.wishes import Wishes
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Marks
from swatchwright.values import KnownColour, Lab, Rect

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from swatchwright.acts.jobs import Store

SIZE = 1600, 1200
DEMO = demo_shelf()
TAUGHT = learnt_since(
    DEMO,
    replace(DEMO, paints=(replace(DEMO.paints[0], K=1.1 * DEMO.paints[0].K), *DEMO.paints[1:])),
)
MARKS = Marks((Rect(400, 200, 80, 60),), Rect(100, 100, 200, 200), 0.2, light="lamp", metre=True)
WANTED = KnownColour(Lab(46, 34, 24), ((4.0, 0.0, 0.0), (0.0, 5.0, 0.0), (0.0, 0.0, 6.0)), "photo")


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """Give a photo of hers."""
    made = tmp_path / "settee.jpg"
    shutil.copy(sample_photos()[0].path, made)
    return made


def test_all_of_it_comes_back(store: Store, photo: Path) -> None:
    """Each field is read as it was written, to the last digit."""
    bench = LastBench(
        path=str(photo),
        stamp=stamp_of(photo),
        size=SIZE,
        marks=MARKS,
        wanted=WANTED,
        volume=755.5,
        most_paints=2,
        zone="drawers",
        wishes=Wishes(without=frozenset({"soft-black"})),
        page="finish",
        taught=TAUGHT,
    )
    remember_bench(store, bench)
    assert last_bench(store) == bench


def test_one_of_before_samples_were_written_down(store: Store) -> None:
    """It is read, and what the paints had learnt is not known from it."""
    remember_bench(store, LastBench(volume=300.0))
    place = store.path.with_name("last-bench.json")
    place.write_text(place.read_text().replace(',"taught":null', ""))
    assert "taught" not in place.read_text()
    assert last_bench(store) == LastBench(volume=300.0)


def test_very_many_lessons(store: Store) -> None:
    """More than are read of the file are left out, and the rest of the bench comes back."""
    (lesson,) = TAUGHT
    count = MOST_LEFT // len(lesson.now)
    remember_bench(store, LastBench(volume=300.0, taught=(lesson,) * count))
    assert last_bench(store) == LastBench(volume=300.0)


@pytest.mark.parametrize(
    "packed",
    [
        "",
        "not packed",
        base64.b85encode(zlib.compress(bytes(9))).decode(),
        base64.b85encode(zlib.compress(b"\1" + np.full(73, 0.5).tobytes())).decode(),
        base64.b85encode(zlib.compress(b"\0" + np.full(72, np.nan).tobytes())).decode(),
        base64.b85encode(zlib.compress(bytes(50_000_000))).decode(),
    ],
    ids=["empty", "text", "short", "odd", "no numbers", "far too long"],
)
def test_spoilt_lessons(store: Store, packed: str) -> None:
    """What cannot be taught makes the whole of it count as none."""
    (lesson,) = TAUGHT
    remember_bench(store, LastBench(taught=(replace(lesson, now=packed),)))
    assert last_bench(store) is None


def test_nothing_was_written(store: Store) -> None:
    """At the first start there is none."""
    assert last_bench(store) is None


def test_a_bench_of_another_job(store: Store) -> None:
    """A bench counts only with the job that is to be laid on it."""
    for title in ("Chest", "Chair"):
        new_job(store, title=title)
    remember_job(store, "chest")
    remember_bench(store, LastBench(job="chest"))
    assert last_bench(store) == LastBench(job="chest")
    remember_job(store, "chair")
    assert last_bench(store) is None


@pytest.mark.parametrize(
    "text",
    [
        *("", "{", "[]", "null", '{"volume": 0}', '{"volume": 1e300}', '{"most_paints": 9}'),
        *('{"path": "settee.jpg"}', '{"kept": "c0ffee"}', f'{{"page": "{"plan" * 20}"}}'),
        *('{"volume": "a lot"}', '{"marks": {"reflectance": []}}', '{"wanted": 3}', "\udcff"),
    ],
)
def test_what_cannot_be_read_counts_as_none(store: Store, text: str) -> None:
    """A spoilt file is no bench, and nothing fails for it."""
    file = store.path.with_name("last-bench.json")
    file.write_bytes(text.encode(errors="surrogateescape"))
    assert last_bench(store) is None


def test_it_cannot_be_written(store: Store) -> None:
    """Where a folder has its name nothing is written, and nothing fails."""
    store.path.with_name("last-bench.json").mkdir()
    remember_bench(store, LastBench())
    assert last_bench(store) is None


class TestItsPhoto:
    """Opening the photo anew."""

    def test_none(self, store: Store) -> None:
        """A bench without a photo has none."""
        assert photo_of_bench(store, LastBench(), None) is None

    def test_with_its_marks(self, store: Store, photo: Path) -> None:
        """The photo comes with its marks, in its own pixels."""
        bench = LastBench(path=str(photo), stamp=stamp_of(photo), size=SIZE, marks=MARKS)
        found = photo_of_bench(store, bench, None)
        assert found is not None
        assert (found.photo.width, found.photo.height) == SIZE
        assert found.marks == MARKS
        assert found.path == photo

    def test_gone_or_another(self, store: Store, photo: Path) -> None:
        """A file that has gone, or is another now, is told of and not laid."""
        bench = LastBench(path=str(photo), stamp=stamp_of(photo), size=SIZE)
        photo.write_bytes(photo.read_bytes() + b"\0")
        with pytest.raises(MendableError, match=r"settee\.jpg is not the photo"):
            photo_of_bench(store, bench, None)
        photo.unlink()
        with pytest.raises(MendableError, match=r"settee\.jpg"):
            photo_of_bench(store, bench, None)

    def test_kept_by_the_job(self, store: Store, photo: Path) -> None:
        """With the file gone its copy is laid, and the marks fit it whatever its size is."""
        new_job(store, title="Chest")
        add_photo(store, "chest", photo, marks=Marks())
        job = job_of(store, "chest")
        half = SIZE[0] // 2, SIZE[1] // 2
        bench = LastBench("chest", str(photo), None, job.photos[0].hash, half, MARKS)
        photo.unlink()
        found = photo_of_bench(store, bench, job)
        assert found is not None
        assert found.path is None
        scale = found.photo.width / half[0]
        assert scale > 1
        assert found.marks.grey[0].x == pytest.approx(MARKS.grey[0].x * scale, abs=1)
