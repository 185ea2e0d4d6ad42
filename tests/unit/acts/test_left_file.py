"""What is left beside the store for the next start is bounded, and nothing depends on it."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.file_stamp import stamp_of
from swatchwright.acts.jobs import open_jobs
from swatchwright.acts.left_file import MOST_LEFT, leave, left, left_photo
from swatchwright.acts.samples import sample_photos
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import Marks
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from swatchwright.acts.jobs import Store

NAME = "left.json"
MARKS = Marks((Rect(4, 2, 8, 6),), Rect(1, 1, 20, 20), 0.2)
WORDS = {"other": "{name} is another.", "again": "Open it again."}


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


class TestFile:
    """A small file beside the store."""

    def test_a_value_comes_back(self, store: Store) -> None:
        """What was left is read as the value it was."""
        assert left(store, NAME, Marks) is None
        leave(store, NAME, MARKS)
        assert left(store, NAME, Marks) == MARKS

    @pytest.mark.parametrize("data", [b"", b"{", b"[]", b"\xff", b'{"reflectance": "grey"}'])
    def test_what_cannot_be_understood(self, store: Store, data: bytes) -> None:
        """A spoilt file counts as none."""
        store.path.with_name(NAME).write_bytes(data)
        assert left(store, NAME, Marks) is None

    def test_no_more_is_read_than_it_may_have(self, store: Store) -> None:
        """A value that goes on beyond the bound is none, and the rest of the file is not read."""
        file, text = store.path.with_name(NAME), b'{"reflectance": 0.2'
        file.write_bytes(text + b" " * (MOST_LEFT - len(text) - 1) + b"}")
        assert left(store, NAME, Marks) == Marks(reflectance=0.2)
        file.write_bytes(text + b" " * (MOST_LEFT - len(text)) + b"}")
        assert left(store, NAME, Marks) is None

    def test_it_cannot_be_written(self, store: Store) -> None:
        """Where a folder has its name nothing is written, and nothing fails."""
        store.path.with_name(NAME).mkdir()
        leave(store, NAME, MARKS)
        assert left(store, NAME, Marks) is None


class TestPhoto:
    """Opening a photo that was left."""

    def test_none(self) -> None:
        """Where there was none there is none."""
        assert left_photo("", None, **WORDS) is None

    def test_the_same_file(self, tmp_path: Path) -> None:
        """It is opened with what it is to be known by next time; so is one not known before."""
        file = tmp_path / "settee.jpg"
        shutil.copy(sample_photos()[0].path, file)
        for stamp in (stamp_of(file), None):
            opened = left_photo(str(file), stamp, **WORDS)
            assert opened is not None
            assert (opened.path, opened.stamp) == (file, stamp_of(file))
            assert opened.photo.width > opened.photo.height > 0

    def test_another_file_in_its_place(self, tmp_path: Path) -> None:
        """It is not taken for the one that was left, and she is told which and what to do."""
        file = tmp_path / "settee.jpg"
        shutil.copy(sample_photos()[0].path, file)
        size, written = stamp_of(file) or (0, 0)
        with pytest.raises(MendableError) as told:
            left_photo(str(file), (size + 1, written), **WORDS)
        assert (told.value.what, told.value.mend) == ("settee.jpg is another.", WORDS["again"])

    def test_it_is_gone(self, tmp_path: Path) -> None:
        """A photo that is no longer there cannot be opened, whatever it was."""
        with pytest.raises(MendableError, match=r"gone\.jpg"):
            left_photo(str(tmp_path / "gone.jpg"), (1, 1), **WORDS)
