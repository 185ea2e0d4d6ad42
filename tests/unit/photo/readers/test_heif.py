"""HEIC with all its bits, its colours, and what its extras tell."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

from swatchwright.photo.readers import read_photo
from unit.photo.pictures import colourful, p3_profile, refusal
from unit.photo.readers.invented import avif, heic

if TYPE_CHECKING:
    from pathlib import Path

    from swatchwright.photo.image import Photo

BYTES = np.asarray(colourful())


def read(path: Path, numbers: NDArray[Any], **options: Any) -> Photo:
    """Read a HEIC of these numbers."""
    path.write_bytes(heic(numbers, **options))
    return read_photo(path)


def test_eight_bits_come_back(tmp_path: Path) -> None:
    """What was written without loss is read, and the facts name it."""
    photo = read(tmp_path / "x.heic", BYTES)
    assert np.array_equal(photo.encoded, BYTES)
    assert photo.facts.words == "HEIC, 32 × 24, 8 bits, sRGB"
    assert photo.deep is None


def test_ten_bits_come_back(tmp_path: Path) -> None:
    """White is white and not 65472 of 65535; between, each is the nearest of 1023 steps."""
    wanted = np.linspace(0, 65535, 24 * 32 * 3).reshape(24, 32, 3)
    photo = read(tmp_path / "x.heic", wanted.astype(np.uint16))
    assert photo.deep is not None
    assert photo.facts.bits == 10
    assert int(photo.deep.max()) == 65535
    # The encoder cuts to ten bits, so that a number may lose one whole step.
    assert np.abs(photo.deep - wanted).max() <= 65536 / 1023 + 1
    assert len(np.unique(photo.deep)) == 1024


def test_the_decoder_turns_it_upright_once(tmp_path: Path) -> None:
    """The orientation in the camera's data is not applied a second time."""
    exif = Image.Exif()
    exif[0x0112] = 6
    path = tmp_path / "x.heic"
    import pillow_heif

    picture = pillow_heif.from_pillow(colourful())
    picture.info["exif"] = exif.tobytes()
    picture.save(path, quality=95)
    photo = read_photo(path)
    plain = np.asarray(pillow_heif.open_heif(path).to_pillow().convert("RGB"))
    assert np.array_equal(photo.encoded, plain)


@pytest.mark.parametrize("suffix", ["heic", "avif"])
def test_code_points_say_display_p3(tmp_path: Path, suffix: str) -> None:
    """A full red of Display P3, labelled by code points, lies outside sRGB where it should."""
    import colour

    red = np.full((64, 64, 3), (255, 0, 0), dtype=np.uint8)
    path = tmp_path / f"x.{suffix}"
    if suffix == "heic":
        path.write_bytes(heic(red, color_primaries=12, transfer_characteristics=13))
    else:
        path.write_bytes(labelled(avif(red), 12, 13))
    photo = read_photo(path)
    expected = colour.RGB_to_RGB(
        [1, 0, 0], "Display P3", "sRGB", chromatic_adaptation_transform=None
    )
    assert photo.facts.profile == "Display P3"
    assert photo.linear()[30, 30] == pytest.approx(expected, abs=0.02)


def labelled(data: bytes, primaries: int, transfer: int) -> bytes:
    """Change the code points that an AVIF carries in its property."""
    at = data.index(b"nclx") + 4
    return data[:at] + bytes([0, primaries, 0, transfer]) + data[at + 4 :]


def test_a_profile_goes_before_code_points(tmp_path: Path) -> None:
    """An embedded profile of Display P3 is read as such."""
    photo = read(tmp_path / "x.heic", BYTES, icc_profile=p3_profile())
    assert photo.facts.profile == "Display P3"


def test_hdr_is_read_with_paper_as_white(tmp_path: Path) -> None:
    """A signal of 75 % of HLG is white paper, and a note says what was done (ITU-R BT.2408)."""
    grey = np.full((64, 64, 3), round(0.75 * 65535), dtype=np.uint16)
    photo = read(tmp_path / "x.heic", grey, color_primaries=9, transfer_characteristics=18)
    assert photo.linear()[9, 9] == pytest.approx([1, 1, 1], abs=0.01)
    assert any("HDR screens" in note for note in photo.facts.notes)


def test_what_a_camera_saved_is_called_shaped(tmp_path: Path) -> None:
    """With an exposure in the camera's data the tones are taken to be shaped, else unknown."""
    exif = Image.Exif()
    exif.get_ifd(0x8769)[0x829A] = (1, 60)
    assert read(tmp_path / "x.heic", BYTES, exif=exif.tobytes()).facts.tone_mapped is True
    assert read(tmp_path / "y.heic", BYTES).facts.tone_mapped is None


def test_lightness_alone_is_refused(tmp_path: Path) -> None:
    """A HEIC without colour is black and white."""
    import pillow_heif

    picture = pillow_heif.from_pillow(colourful().convert("L"))
    picture.save(tmp_path / "x.heic")
    assert "black-and-white" in refusal(tmp_path / "x.heic")


def test_without_its_package_it_says_how_to_install_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The extra is named, and the way round it."""
    (tmp_path / "x.heic").write_bytes(heic(BYTES))
    monkeypatch.setitem(sys.modules, "pillow_heif", None)
    words = refusal(tmp_path / "x.heic")
    assert "swatchwright[heif]" in words
    assert "JPEG" in words


def test_half_a_file_is_damaged(tmp_path: Path) -> None:
    """It is called damaged, as with other kinds."""
    data = heic(np.random.default_rng(1).integers(0, 256, (64, 64, 3), dtype=np.uint8))
    (tmp_path / "x.heic").write_bytes(data[: len(data) // 2])
    assert "damaged" in refusal(tmp_path / "x.heic")
