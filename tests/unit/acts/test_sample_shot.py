"""The photo of a sample as it is kept with a job."""

from __future__ import annotations

import shutil
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.colours import open_photo
from swatchwright.acts.job_bench import photo_to_lay
from swatchwright.acts.job_photos import add_photo, hash_of
from swatchwright.acts.jobs import job_of, new_job, open_jobs, redo, undo
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.sample_shot import SHOT_PART, keep_shot, photo_of_shot, shot_of
from swatchwright.acts.samples import sample_of_a_sample, sample_photos
from swatchwright.shelf.jobs import Document, Job
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from swatchwright.shelf.store.store import Store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def box(store: Store) -> str:
    """Give the id of a job in it."""
    return new_job(store, title="Blanket box").jobs[0]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """Give a photo of a sample that may be moved away."""
    found = sample_of_a_sample()
    assert found is not None
    file = tmp_path / "sample.jpg"
    shutil.copy(found.path, file)
    return file


def shot_on(path: Path) -> SampleShot:
    """Give a shot with a grey marked."""
    return SampleShot(hash_of(path), (1600, 1200), grey=Rect(1248, 400, 180, 240))


def test_photo_and_marks_are_one_edit(store: Store, box: str, file: Path) -> None:
    """They come and go together, and come back as they were."""
    shot = shot_on(file)
    keep_shot(store, box, shot, path=file, photo=open_photo(file))
    job = job_of(store, box)
    assert shot_of(job) == shot
    assert photo_of_shot(job, shot) == job.photos[0]
    undo(store)
    assert not job_of(store, box).photos
    assert shot_of(job_of(store, box)) is None
    redo(store)
    assert job_of(store, box) == job


def test_marks_add_no_photo(store: Store, box: str, file: Path) -> None:
    """Once it is kept only the marks change, even where the file has gone."""
    shot = shot_on(file)
    keep_shot(store, box, shot, path=file, photo=None)
    file.unlink()
    more = replace(shot, cloth=Rect(560, 440, 140, 120))
    keep_shot(store, box, more, path=None, photo=None)
    assert len(job_of(store, box).photos) == 1
    assert shot_of(job_of(store, box)) == more


def test_the_next_takes_its_place(store: Store, box: str, file: Path) -> None:
    """A job has one photo of a sample; that of the cloth stays, and is what is laid."""
    cloth, other = sample_photos()[0].path, sample_photos()[1].path
    add_photo(store, box, cloth)
    keep_shot(store, box, shot_on(file), path=file, photo=None)
    keep_shot(store, box, shot_on(other), path=other, photo=None)
    job = job_of(store, box)
    assert [photo.hash for photo in job.photos] == [hash_of(cloth), hash_of(other)]
    laid = photo_to_lay(job)
    assert laid is not None
    assert laid.hash == hash_of(cloth)


def test_marks_follow_the_size(file: Path) -> None:
    """On a copy of half the size they lie where they lay, inside it."""
    photo = open_photo(file)
    shot = replace(shot_on(file), size=(3200, 2400), cloth=Rect(3190, 2390, 10, 10))
    on = shot.on(photo)
    assert on["grey"] == Rect(624, 200, 90, 120)
    assert on["cloth"].right <= photo.width
    assert "sample" not in on


def test_what_cannot_be_read_counts_as_none() -> None:
    """A part of another layout is no shot."""
    job = Job("a", "A box", documents=((SHOT_PART, Document.of({"photo": 3})),))
    assert shot_of(job) is None
    assert shot_of(None) is None
