"""What the numbers of a picture mean: profiles, code points, and what is assumed without."""

from __future__ import annotations

import struct
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image

from swatchwright.photo.readers import read_photo
from swatchwright.photo.readers.cicp import CodePoints
from swatchwright.photo.readers.meaning import Labels, meaning_of
from unit.photo.pictures import (
    LOSSLESS,
    P3_COLORANTS,
    SRGB_CURVE,
    SUFFIXES,
    colourful,
    icc,
    matrix_tags,
    mluc,
    p3_profile,
    para,
    saved,
    srgb_profile,
)

if TYPE_CHECKING:
    from pathlib import Path


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


class TestLabels:
    """Other labels than a profile."""

    def test_code_points_go_before_custom_and_after_a_profile(self) -> None:
        """Display P3 by code points is read where there is no profile, and not where there is."""
        points = CodePoints(12, 13)
        assert meaning_of(Labels(code_points=points)).profile == "Display P3"
        both = Labels(icc=srgb_profile(), code_points=points)
        assert meaning_of(both).profile == "sRGB"

    @pytest.mark.parametrize("points", [CodePoints(2, 2), CodePoints(99, 13), CodePoints(1, 99)])
    def test_code_points_that_say_nothing_are_passed_over(self, points: CodePoints) -> None:
        """What is open or unknown is read as a file without any label."""
        assert meaning_of(Labels(code_points=points)).profile == "none, read as sRGB"

    def test_hdr_code_points_win_over_a_profile(self) -> None:
        """A profile cannot say PQ; where the points do, they are heard, with a note."""
        meaning = meaning_of(Labels(icc=p3_profile(), code_points=CodePoints(9, 16)))
        assert meaning.profile == "BT.2020, PQ curve"
        assert "HDR" in meaning.notes[0]

    def test_code_points_inside_a_profile_are_heard_for_hdr(self) -> None:
        """A profile with a cicpTag of PQ is one for HDR screens (ICC.1:2022, 10.3)."""
        tags = matrix_tags(P3_COLORANTS, para(3, *SRGB_CURVE), "Bright")
        tags["cicp"] = b"cicp\0\0\0\0\x09\x10\0\x01"
        assert meaning_of(Labels(icc=icc(tags))).profile == "BT.2020, PQ curve"

    def test_a_gamma_other_than_that_of_srgb_is_applied(self) -> None:
        """A PNG may say that its numbers are linear; 0.45455 stands for sRGB."""
        assert meaning_of(Labels(gamma=1.0)).decoding.linear
        assert "power of 1.00" in meaning_of(Labels(gamma=1.0)).notes[0]
        for gamma in (0.45455, 0.0, 1e9):
            assert meaning_of(Labels(gamma=gamma)).profile == "none, read as sRGB"

    def test_sixteen_bits_get_as_many_levels(self) -> None:
        """Each way to a meaning gives the depth that is asked for, and the same curve."""
        for labels in (Labels(), Labels(icc=p3_profile()), Labels(code_points=CodePoints(9, 1))):
            deep, plain = meaning_of(labels, 65536), meaning_of(labels)
            assert deep.decoding.curves.shape == (3, 65536)
            assert deep.decoding.curves[:, ::257] == pytest.approx(plain.decoding.curves, abs=1e-6)
