"""What Pillow decodes: depth, several pictures, gain maps, and what the facts say."""

from __future__ import annotations

import io
import struct
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image, features

from swatchwright.photo.image import FileFacts
from swatchwright.photo.readers import read_photo
from unit.photo.pictures import SRGB_COLORANTS, colourful, icc, matrix_tags, para, refusal, saved
from unit.photo.readers.invented import avif, deep_tiff

if TYPE_CHECKING:
    from pathlib import Path


def jpeg(picture: Image.Image, xmp: bytes = b"") -> bytes:
    """Write a JPEG, with a packet of XMP if there is one."""
    memory = io.BytesIO()
    picture.save(memory, "JPEG", **({"xmp": xmp} if xmp else {}))
    return memory.getvalue()


def several(first: bytes, second: bytes) -> bytes:
    """Join two JPEGs as a multi-picture file (CIPA DC-007, clause 5): its index is in the first."""
    entries = struct.pack(">IIIHH", 0x030000, 0, 0, 0, 0) + struct.pack(
        ">IIIHH", 0, len(second), 0, 0, 0
    )
    index = b"MM\0*" + struct.pack(">I", 8) + struct.pack(">H", 3)
    index += struct.pack(">HHI4s", 0xB000, 7, 4, b"0100")
    index += struct.pack(">HHII", 0xB001, 4, 1, 2)
    index += struct.pack(">HHII", 0xB002, 7, 32, 50) + bytes(4)
    # Where the second lies is counted from the index, which begins 10 bytes into the file.
    length = 2 + 2 + 2 + 4 + len(index) + 32
    at = len(first) + length - 2 - 10
    entries = entries[:16] + struct.pack(">IIIHH", 0, len(second), at, 0, 0)
    body = b"MPF\0" + index + entries
    return first[:2] + b"\xff\xe2" + struct.pack(">H", 2 + len(body)) + body + first[2:] + second


def facts_of(data: bytes, path: Path) -> FileFacts:
    """Read a file of these bytes."""
    path.write_bytes(data)
    return read_photo(path).facts


class TestGainMaps:
    """What brightens a picture on HDR screens is left aside, and said."""

    @pytest.mark.parametrize(
        "mark", [b"<x hdrgm:Version='1.0'/>", b"<x>urn:photo:aux:HDRGainMap</x>"]
    )
    def test_it_is_told_by_the_head_of_either_picture(self, tmp_path: Path, mark: bytes) -> None:
        """In the first picture or in the second, the mark is seen."""
        plain, marked = jpeg(colourful()), jpeg(colourful(), mark)
        for data in (marked, several(plain, marked)):
            facts = facts_of(data, tmp_path / "x.jpg")
            assert facts.gain_map
            assert "HDR screens" in facts.notes[0]

    def test_without_a_mark_there_is_none(self, tmp_path: Path) -> None:
        """Several pictures are told as that, one as nothing."""
        plain = jpeg(colourful())
        facts = facts_of(several(plain, plain), tmp_path / "x.jpg")
        assert (facts.format, facts.gain_map) == ("MPO", False)
        assert "holds 2 pictures" in facts.notes[0]
        assert not facts_of(plain, tmp_path / "y.jpg").gain_map

    def test_the_ordinary_picture_is_what_is_read(self, tmp_path: Path) -> None:
        """The first picture is taken, not the map."""
        data = several(jpeg(colourful()), jpeg(Image.new("RGB", (16, 12)), b"hdrgm:Version"))
        (tmp_path / "x.jpg").write_bytes(data)
        photo = read_photo(tmp_path / "x.jpg")
        assert np.abs(photo.encoded.astype(int) - np.asarray(colourful())).mean() < 5


class TestFacts:
    """What is shown of a file."""

    def test_a_camera_has_shaped_what_it_saved(self, tmp_path: Path) -> None:
        """With an exposure written beside it, a JPEG is taken to be shaped, and a note says so."""
        exif = Image.Exif()
        exif.get_ifd(0x8769)[0x829D] = (2, 1)
        facts = read_photo(saved(colourful(), tmp_path / "x.jpg", exif=exif)).facts
        assert facts.tone_mapped is True
        assert any("shaped light and dark" in note for note in facts.notes)
        assert facts.words.endswith("tones shaped by the camera")

    def test_a_portrait_mode_is_passed_on(self, tmp_path: Path) -> None:
        """The hint reaches the facts."""
        exif = Image.Exif()
        exif.get_ifd(0x8769)[0xA406] = 2
        facts = read_photo(saved(colourful(), tmp_path / "x.jpg", exif=exif)).facts
        assert facts.portrait

    def test_a_linear_profile_makes_linear_light(self, tmp_path: Path) -> None:
        """A TIFF that was developed without a curve says so and is not called shaped."""
        linear = icc(matrix_tags(SRGB_COLORANTS, para(0, 1.0), "Straight"))
        numbers = np.full((12, 12, 3), 20000, dtype=np.uint16)
        path = deep_tiff(tmp_path / "x.tif", numbers, iccprofile=linear)
        photo = read_photo(path)
        assert photo.facts.linear
        assert photo.facts.tone_mapped is None
        assert photo.linear()[3, 3] == pytest.approx([20000 / 65535] * 3, abs=1e-3)


class TestAvif:
    """AVIF, of which Pillow gives 8 bits."""

    def test_it_is_read_upright(self, tmp_path: Path) -> None:
        """Its pixels come back nearly, and it is turned as its camera data say."""
        exif = Image.Exif()
        exif[0x0112] = 6
        (tmp_path / "x.avif").write_bytes(avif(np.asarray(colourful()), exif=exif))
        photo = read_photo(tmp_path / "x.avif")
        upright = np.rot90(np.asarray(colourful()), -1).astype(int)
        assert np.abs(photo.encoded - upright).mean() < 3
        assert photo.facts.format == "AVIF"

    def test_moving_pictures_are_refused(self, tmp_path: Path) -> None:
        """A film is counted."""
        path = tmp_path / "x.avif"
        colourful().save(path, save_all=True, append_images=[Image.new("RGB", (32, 24))])
        assert "2 moving pictures" in refusal(path)

    def test_a_pillow_without_it_is_told(
        self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """The refusal says what to install."""
        (tmp_path / "x.avif").write_bytes(avif(np.asarray(colourful())))
        monkeypatch.setattr(features, "check", lambda _: False)
        assert "newer Pillow" in refusal(tmp_path / "x.avif")
