"""From a loaded picture to upright bytes: orientation, transparency, profiles."""

from __future__ import annotations

import struct
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from PIL import Image

from swatchwright.photo.readers import read_photo
from unit.photo.pictures import (
    LOSSLESS,
    SUFFIXES,
    colourful,
    icc,
    mluc,
    p3_profile,
    saved,
    srgb_profile,
)

if TYPE_CHECKING:
    from pathlib import Path


class TestUpright:
    """Which way up, and where there is anything at all."""

    @pytest.mark.parametrize("suffix", SUFFIXES)
    @pytest.mark.parametrize("orientation", range(1, 9))
    def test_every_orientation_comes_out_upright(
        self, tmp_path: Path, suffix: str, orientation: int
    ) -> None:
        """Red stays top left and green top right, whichever way the camera was held.

        The stored pixels are laid out by the table of Exif 2.32, tag 0x0112: where row 0 and
        column 0 of the stored picture lie in the upright one.
        """
        upright = np.zeros((32, 48, 3), dtype=np.uint8)
        upright[:16, :24], upright[:16, 24:], upright[16:, :24] = (
            (200, 0, 0), (0, 200, 0), (0, 0, 200)
        )  # fmt: skip
        rows_first = {1: upright, 2: upright[:, ::-1], 3: upright[::-1, ::-1], 4: upright[::-1]}
        columns_first = {
            5: upright.swapaxes(0, 1),
            6: upright[:, ::1].swapaxes(0, 1)[::-1],
            7: upright[::-1, ::-1].swapaxes(0, 1),
            8: upright.swapaxes(0, 1)[:, ::-1],
        }
        stored = {**rows_first, **columns_first}[orientation]
        exif = Image.Exif()
        exif[0x0112] = orientation
        options: dict[str, Any] = {"webp": LOSSLESS, "jpg": {"quality": 95}}.get(suffix, {})
        path = tmp_path / f"turned.{suffix}"
        photo = read_photo(
            saved(Image.fromarray(np.ascontiguousarray(stored)), path, exif=exif, **options)
        )
        assert (photo.width, photo.height) == (48, 32)
        assert (photo.facts.width, photo.facts.height) == (48, 32)
        inner = photo.encoded[4:12, 4:20], photo.encoded[4:12, 28:44], photo.encoded[20:28, 4:20]
        assert [int(part.mean(axis=(0, 1)).argmax()) for part in inner] == [0, 1, 2]
        assert photo.encoded[20:28, 28:44].max() < 40

    def test_damaged_camera_data_are_no_reason_to_refuse(self, tmp_path: Path) -> None:
        """A garbled Exif block is passed over."""
        path = saved(colourful(), tmp_path / "x.jpg", exif=b"Exif\0\0II*\0\xff\xff\xff\x7fgarbage")
        assert read_photo(path).width == 32

    def test_transparency_becomes_a_mask(self, tmp_path: Path) -> None:
        """Pixels that are not opaque are masked, upright; a wholly opaque RGBA has no mask."""
        picture = colourful().convert("RGBA")
        assert read_photo(saved(picture, tmp_path / "full.png")).opaque is None
        alpha = Image.new("L", (32, 24), 255)
        alpha.paste(0, (0, 0, 10, 24))
        picture.putalpha(alpha)
        exif = Image.Exif()
        exif[0x0112] = 3
        photo = read_photo(saved(picture, tmp_path / "part.png", exif=exif))
        assert photo.opaque is not None
        assert photo.opaque[:, :22].all()
        assert not photo.opaque[:, 22:].any()
        assert photo.encoded.shape == (24, 32, 3)

    def test_palettes_are_looked_up(self, tmp_path: Path) -> None:
        """A palette PNG gives its colours, one with a clear entry a mask as well."""
        picture = Image.new("P", (16, 16), 1)
        picture.putpalette([0, 0, 0, 180, 60, 40, 20, 40, 160])
        picture.paste(2, (8, 0, 16, 16))
        photo = read_photo(saved(picture, tmp_path / "p.png"))
        assert photo.encoded[0, 0].tolist() == [180, 60, 40]
        assert photo.encoded[0, 15].tolist() == [20, 40, 160]
        photo = read_photo(saved(picture, tmp_path / "q.png", transparency=2))
        assert photo.opaque is not None
        assert photo.opaque[0].tolist() == [True] * 8 + [False] * 8
        assert photo.encoded[0, 0].tolist() == [180, 60, 40]


class TestProfiles:
    """What the bytes mean."""

    def test_none_is_read_as_srgb_with_a_note(self, tmp_path: Path) -> None:
        """A file without a profile says what was assumed."""
        facts = read_photo(saved(colourful(), tmp_path / "x.jpg")).facts
        assert facts.profile == "none, read as sRGB"
        assert facts.notes == (
            "No colour profile in the file: read as sRGB, as most phones mean it.",
        )

    def test_a_camera_that_says_not_srgb_is_heard(self, tmp_path: Path) -> None:
        """Exif ColorSpace 65535 with no profile gets its own note (Exif 2.32, tag 0xA001)."""
        exif = Image.Exif()
        exif.get_ifd(0x8769)[0xA001] = 0xFFFF
        facts = read_photo(saved(colourful(), tmp_path / "x.jpg", exif=exif)).facts
        assert "too dull" in facts.notes[0]

    @pytest.mark.parametrize("suffix", SUFFIXES)
    def test_display_p3_survives_outside_srgb(self, tmp_path: Path, suffix: str) -> None:
        """The full red of Display P3 is above 1 in red and below 0 in green, as it should be."""
        import colour

        picture = Image.new("RGB", (16, 16), (255, 0, 0))
        options = {"webp": LOSSLESS, "jpg": {"quality": 100}}.get(suffix, {})
        path = saved(picture, tmp_path / f"x.{suffix}", icc_profile=p3_profile(), **options)
        photo = read_photo(path)
        expected = colour.RGB_to_RGB(
            [1, 0, 0],
            colour.models.RGB_COLOURSPACE_DISPLAY_P3,
            colour.models.RGB_COLOURSPACE_sRGB,
            chromatic_adaptation_transform=None,
        )
        assert photo.linear()[3, 3] == pytest.approx(expected, abs=0.012)  # a JPEG byte
        assert photo.facts.profile == "Display P3"
        assert photo.facts.notes == ()

    def test_an_srgb_profile_changes_nothing(self, tmp_path: Path) -> None:
        """Light is that of a file without a profile, within 1e-3."""
        bare = read_photo(saved(colourful(), tmp_path / "a.png"))
        named = read_photo(saved(colourful(), tmp_path / "b.png", icc_profile=srgb_profile()))
        assert named.linear() == pytest.approx(bare.linear(), abs=1e-3)

    @pytest.mark.parametrize("junk", [b"junk", icc({}), p3_profile()[:300]])
    def test_a_damaged_profile_is_passed_over_with_a_note(
        self, tmp_path: Path, junk: bytes
    ) -> None:
        """The picture is read as sRGB."""
        photo = read_photo(saved(colourful(), tmp_path / "x.jpg", icc_profile=junk))
        assert "damaged" in photo.facts.notes[0]
        assert photo.decoding.matrix == pytest.approx(np.eye(3))

    def test_a_profile_of_tables_is_applied_by_littlecms(self, tmp_path: Path) -> None:
        """A table that swaps red and blue does so, and the note tells of clipping."""
        photo = read_photo(saved(colourful(), tmp_path / "x.png", icc_profile=swapping_profile()))
        plain = np.asarray(colourful()).astype(int)
        assert np.abs(photo.encoded.astype(int) - plain[..., ::-1]).max() <= 6
        assert "tables only" in photo.facts.notes[0]

    def test_damaged_tables_are_passed_over(self, tmp_path: Path) -> None:
        """Tables that LittleCMS cannot use lead to sRGB with a note."""
        data = icc({"desc": mluc("Tables"), "A2B0": bytes(64)})
        photo = read_photo(saved(colourful(), tmp_path / "x.png", icc_profile=data))
        assert np.array_equal(photo.encoded, np.asarray(colourful()))
        assert "damaged" in photo.facts.notes[0]


def swapping_profile() -> bytes:
    """Write a profile of tables only: sRGB with red and blue exchanged (lutAToBType, 10.12)."""
    curves = b"".join(
        b"para\0\0\0\0" + struct.pack(">HH5i", 3, 0, *(round(v * 65536) for v in values))
        for values in [(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045)] * 3
    )
    line = b"curv\0\0\0\0\0\0\0\0"
    columns = (
        (0.14307, 0.06061, 0.71410),
        (0.38515, 0.71687, 0.09708),
        (0.43607, 0.22249, 0.01392),
    )
    # XYZ in the tables is coded with 1 + 32767/32768 as the largest number.
    rows = [columns[j][i] * 32768 / 65535 for i in range(3) for j in range(3)]
    matrix = b"".join(struct.pack(">i", round(v * 65536)) for v in [*rows, 0, 0, 0])
    b_at, matrix_at = 32, 32 + 3 * len(line)
    m_at = matrix_at + len(matrix)
    head = b"mAB \0\0\0\0\x03\x03\0\0" + struct.pack(">5I", b_at, matrix_at, m_at, 0, 0)
    return icc({"desc": mluc("Swapped"), "A2B0": head + 3 * line + matrix + curves})
