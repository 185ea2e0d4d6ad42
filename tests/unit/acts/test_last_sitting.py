"""Sittings as they were left are written down beside the store, and read back if sound."""

from __future__ import annotations

import shutil
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.file_stamp import stamp_of
from swatchwright.acts.jobs import new_job, open_jobs
from swatchwright.acts.last_job import remember_job
from swatchwright.acts.last_sitting import (
    LastSitting,
    forget_sitting,
    last_sitting,
    photo_of_sitting,
    remember_sitting,
)
from swatchwright.acts.samples import sample_photos
from swatchwright.errors import MendableError
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Iterator

    from swatchwright.acts.jobs import Store

SIZE = 1600, 1200
GREY = Rect(400, 200, 80, 60)
BOXES = (("red//1 red", Rect(100, 100, 200, 200)), ("white//1 white", Rect(900, 700, 50, 40)))


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def left(tmp_path: Path) -> LastSitting:
    """Give a sitting with a photo of hers."""
    photo = tmp_path / "cards.jpg"
    shutil.copy(sample_photos()[0].path, photo)
    return LastSitting(
        "chest", str(photo), stamp_of(photo), SIZE, GREY, 0.2, BOXES, 2, in_view=True
    )


def test_all_of_it_comes_back(store: Store, left: LastSitting) -> None:
    """Each field is read as it was written, and of each job the last one."""
    remember_sitting(store, replace(left, grey=None))
    remember_sitting(store, replace(left, job="chair"))
    remember_sitting(store, left)
    assert last_sitting(store, "chest") == left
    assert last_sitting(store, "chair") == replace(left, job="chair")
    assert last_sitting(store, None) is None


def test_forgotten(store: Store, left: LastSitting) -> None:
    """One is forgotten and the other stays; to forget what is not there changes nothing."""
    remember_sitting(store, left)
    remember_sitting(store, replace(left, job="chair"))
    forget_sitting(store, "chest")
    forget_sitting(store, "stool")
    assert last_sitting(store, "chest") is None
    assert last_sitting(store, "chair") is not None


def test_of_a_job_that_is_begun_for_it(store: Store, left: LastSitting) -> None:
    """A sitting of no job is that of the job that was begun meanwhile, and of no other then."""
    remember_sitting(store, replace(left, job=None))
    assert last_sitting(store, None) == replace(left, job=None)
    new_job(store, title="Chest")
    remember_job(store, "chest")
    remember_sitting(store, replace(left, job=None))
    assert last_sitting(store, None) is None
    assert last_sitting(store, "chest") == left


def test_only_the_last_dozen(store: Store) -> None:
    """However many jobs have a sitting, the file does not grow for ever."""
    for number in range(30):
        remember_sitting(store, LastSitting(f"job-{number}"))
    there = [n for n in range(30) if last_sitting(store, f"job-{n}") is not None]
    assert there == list(range(18, 30))


@pytest.mark.parametrize(
    "text",
    [
        *("", "{", "[]", "null", '{"all": 1}', '{"all": [1]}', "\udcff"),
        *(
            f'{{"all": [{{"job": "chest", {wrong}}}]}}'
            for wrong in (
                *('"step": 4', '"step": -1', '"reflectance": 0', '"reflectance": 1e9'),
                *('"path": "x"', '"path": "x", "size": [0, 5]', '"boxes": [[1, 2]]'),
            )
        ),
    ],
)
def test_what_cannot_be_read_counts_as_none(store: Store, text: str) -> None:
    """A spoilt file holds no sitting, and nothing fails for it."""
    file = store.path.with_name("last-sittings.json")
    file.write_bytes(text.encode(errors="surrogateescape"))
    assert last_sitting(store, "chest") is None


def test_it_cannot_be_written(store: Store, left: LastSitting) -> None:
    """Where a folder has its name nothing is written, and nothing fails."""
    store.path.with_name("last-sittings.json").mkdir()
    remember_sitting(store, left)
    assert last_sitting(store, "chest") is None


class TestItsPhoto:
    """Opening the photo anew."""

    def test_none(self) -> None:
        """A sitting without a photo has none."""
        assert photo_of_sitting(LastSitting()) is None

    def test_with_its_marks(self, left: LastSitting) -> None:
        """The photo comes with its marks where they were."""
        found = photo_of_sitting(left)
        assert found is not None
        assert (found.photo.width, found.photo.height) == SIZE
        assert found.grey == GREY
        assert dict(found.boxes) == dict(BOXES)
        assert str(found.path) == left.path
        assert found.stamp == left.stamp

    def test_read_in_another_size(self, left: LastSitting) -> None:
        """Marks follow a photo that is read in another size."""
        found = photo_of_sitting(replace(left, size=(800, 600)))
        assert found is not None
        assert found.grey == Rect(800, 400, 160, 120)

    def test_marks_beside_it(self, left: LastSitting) -> None:
        """What is not in the photo is no mark in it."""
        off = Rect(1590, 0, 20, 20)
        found = photo_of_sitting(replace(left, grey=off, boxes=(("a", off), *BOXES)))
        assert found is not None
        assert found.grey is None
        assert dict(found.boxes) == dict(BOXES)

    def test_gone_or_another(self, left: LastSitting) -> None:
        """A file that has gone, or is another now, is told of and not laid."""
        photo = Path(left.path)
        photo.write_bytes(photo.read_bytes() + b"\0")
        with pytest.raises(MendableError, match=r"cards\.jpg is not the photo"):
            photo_of_sitting(left)
        photo.unlink()
        with pytest.raises(MendableError, match=r"cards\.jpg"):
            photo_of_sitting(left)
