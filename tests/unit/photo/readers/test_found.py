"""A stored picture turned upright, with its mask and all its bits."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from PIL import Image

from swatchwright.photo.readers import read_photo
from swatchwright.photo.readers.found import upright_pixels
from unit.photo.pictures import LOSSLESS, SUFFIXES, colourful, saved

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


def test_parts_are_joined_from_top_to_bottom() -> None:
    """A picture handed over in parts is the picture, turned, whatever the parts."""
    stored = np.random.default_rng(2).integers(0, 256, (30, 20, 3), dtype=np.uint8)
    whole = upright_pixels((stored,), (20, 30), 6)
    parts = upright_pixels((stored[:7], stored[7:29], stored[29:]), (20, 30), 6)
    assert np.array_equal(parts.encoded, whole.encoded)
    assert np.array_equal(whole.encoded, np.rot90(stored, -1))
    assert whole.deep is None


def test_sixteen_bits_are_kept_and_their_nearest_bytes_beside_them() -> None:
    """A byte is the nearest to a 257th, so that white is 255 and black is 0."""
    stored = np.array([[[0, 128, 129], [32768, 65406, 65535]]], dtype=np.uint16)
    pixels = upright_pixels((stored,), (2, 1), 1)
    assert pixels.encoded.tolist() == [[[0, 0, 1], [128, 254, 255]]]
    assert pixels.deep is not None
    assert np.array_equal(pixels.deep, stored)
    assert not pixels.deep.flags.writeable


def test_a_fourth_channel_is_opacity_at_either_depth() -> None:
    """From 250 of 255 on a pixel counts as opaque."""
    for top, kind in ((255, np.uint8), (65535, np.uint16)):
        alpha = np.array([[0, 0.97 * top, 0.99 * top, top]]).astype(kind)
        stored = np.dstack([np.zeros((1, 4, 3), dtype=kind), alpha])
        opaque = upright_pixels((stored,), (4, 1), 1).opaque
        assert opaque is not None
        assert opaque.tolist() == [[False, False, True, True]]
