"""Reading files: what is sound is read, what cannot be opened is refused in words."""

from __future__ import annotations

import io
import os
import tempfile
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from swatchwright.errors import MendableError
from swatchwright.photo.image import Photo
from swatchwright.photo.readers import read_photo
from unit.photo.pictures import LOSSLESS, SUFFIXES, colourful, p3_profile, refusal, saved


class TestRead:
    """Files that are read."""

    @pytest.mark.parametrize("suffix", SUFFIXES)
    def test_each_format_gives_its_pixels(self, tmp_path: Path, suffix: str) -> None:
        """Lossless formats give the very bytes, JPEG nearly."""
        picture = colourful()
        options = {"webp": LOSSLESS, "jpg": {"quality": 100, "subsampling": 0}}.get(suffix, {})
        photo = read_photo(saved(picture, tmp_path / f"cloth.{suffix}", **options))
        difference = np.abs(photo.encoded.astype(int) - np.asarray(picture))
        assert difference.max() <= (4 if suffix == "jpg" else 0)
        assert (photo.width, photo.height) == (32, 24)
        assert photo.opaque is None

    def test_the_content_counts_and_not_the_suffix(self, tmp_path: Path) -> None:
        """A PNG named .jpg is a PNG, and the facts say so."""
        path = saved(colourful(), tmp_path / "cloth.png")
        facts = read_photo(path.rename(tmp_path / "cloth.jpg")).facts
        assert (facts.name, facts.format) == ("cloth.jpg", "PNG")
        assert (facts.width, facts.height) == (32, 24)
        assert facts.bytes == (tmp_path / "cloth.jpg").stat().st_size

    def test_of_a_phones_several_pictures_the_first_is_taken(self, tmp_path: Path) -> None:
        """A multi-picture JPEG is read, with a note."""
        first, second = Image.new("RGB", (32, 24), "red"), Image.new("RGB", (32, 24), "blue")
        path = tmp_path / "two.mpo"
        first.save(path, save_all=True, append_images=[second])
        photo = read_photo(path.rename(tmp_path / "two.jpg"))
        assert photo.facts.format == "MPO"
        assert photo.encoded[0, 0, 0] > 200
        assert any("holds 2 pictures" in note for note in photo.facts.notes)


class TestRefusedFiles:
    """Files that cannot be opened at all."""

    def test_missing(self, tmp_path: Path) -> None:
        """The path is named."""
        assert "no file" in refusal(tmp_path / "gone.jpg")

    def test_folder(self, tmp_path: Path) -> None:
        """A folder is called a folder."""
        assert "folder" in refusal(tmp_path)

    def test_empty(self, tmp_path: Path) -> None:
        """No bytes at all is not called damaged."""
        (tmp_path / "x.jpg").write_bytes(b"")
        assert "is empty" in refusal(tmp_path / "x.jpg")

    def test_a_name_that_cannot_be(self) -> None:
        """A null in the name is no crash."""
        assert refusal(Path("a\0b.jpg"))

    def test_not_permitted(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """A file of somebody else says so (faked: the superuser may read everything)."""
        path = saved(colourful(), tmp_path / "x.png")

        def deny(*_: object, **__: object) -> None:
            raise PermissionError

        monkeypatch.setattr(Path, "open", deny)
        assert "permissions" in refusal(path)

    @pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="named pipes are a thing of Unix")
    def test_a_pipe_does_not_hang(self, tmp_path: Path) -> None:
        """Something that is no file is refused before it is opened."""
        os.mkfifo(tmp_path / "pipe.jpg")
        assert "device" in refusal(tmp_path / "pipe.jpg")

    def test_far_too_large(self, tmp_path: Path) -> None:
        """A file of a gigabyte is refused by its size alone."""
        with (tmp_path / "x.tif").open("wb") as file:
            file.truncate(2**30)
        assert "1024 MB" in refusal(tmp_path / "x.tif")


def sound_files() -> dict[str, bytes]:
    """Give a sound file of each format, with a profile and camera data in it."""
    exif = Image.Exif()
    exif[0x0112] = 6
    files = {}
    for suffix, kind in zip(SUFFIXES, ("JPEG", "PNG", "TIFF", "WEBP"), strict=True):
        memory = io.BytesIO()
        colourful().save(memory, kind, exif=exif, icc_profile=p3_profile())
        files[suffix] = memory.getvalue()
    return files


SOUND = sound_files()


@settings(max_examples=500, deadline=None, derandomize=True)
@given(
    st.sampled_from(SUFFIXES),
    st.one_of(st.just(1.0), st.floats(0, 1)),
    st.lists(st.tuples(st.floats(0, 1), st.integers(0, 255)), max_size=8),
)
def test_garbled_files_are_read_or_refused(
    suffix: str, end: float, hits: list[tuple[float, int]]
) -> None:
    """Whatever is done to the bytes, a photo or a refusal in words comes out, nothing else."""
    data = bytearray(SOUND[suffix])
    for where, value in hits:
        # The header is where most goes wrong: squaring sends more hits there.
        data[int(where**2 * (len(data) - 1))] = value
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "garbled"
        path.write_bytes(bytes(data[: int(end * len(data))]))
        try:
            photo = read_photo(path)
        except MendableError:
            return
    assert isinstance(photo, Photo)
    assert np.all(np.isfinite(photo.linear()))
