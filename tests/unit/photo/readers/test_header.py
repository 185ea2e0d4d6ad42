"""Pictures that are no use are refused by their heads, each in its own words."""

from __future__ import annotations

import struct
import zlib
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image, ImageFile

from swatchwright.photo.readers.header import Kind, kind_of
from swatchwright.photo.readers.picture import MOST_PIXELS
from unit.photo.pictures import SUFFIXES, colourful, refusal, saved

if TYPE_CHECKING:
    from pathlib import Path


@pytest.mark.parametrize(
    ("head", "kind"),
    [
        (b"\xff\xd8\xff\xe0", Kind.STILL),
        (b"\x89PNG\r\n\x1a\n", Kind.STILL),
        (b"RIFF\0\0\0\0WEBPVP8 ", Kind.STILL),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", Kind.HEIC),
        (b"\0\0\0\x18ftypmif1\0\0\0\0mif1heic", Kind.HEIC),
        (b"\0\0\0\x18ftypmif1\0\0\0\0mif1avif", Kind.AVIF),
        (b"\0\0\0\x10ftypmif1\0\0\0\0????avif", Kind.HEIC),
        (b"\0\0\0\x18ftypavif\0\0\0\0avifmif1", Kind.AVIF),
        (b"\0\0\0\x18ftypcrx \0\0\0\1crx isom", Kind.RAW),
        (b"II*\0\x10\0\0\0CR\x02\0", Kind.RAW),
        (b"hello painter", Kind.UNKNOWN),
        (b"", Kind.UNKNOWN),
    ],
)
def test_kinds_are_told_by_their_first_bytes(head: bytes, kind: Kind) -> None:
    """What is read is told apart; a general brand is told by the brands listed beside it."""
    assert kind_of(head, "x") is kind


class TestRefusedPictures:
    """Files that hold no usable picture."""

    @pytest.mark.parametrize("data", [b"hello painter", b"\0" * 100, b"<svg></svg>", b"x"])
    def test_not_a_picture(self, tmp_path: Path, data: bytes) -> None:
        """It is called no picture, and what can be read is listed."""
        (tmp_path / "x.jpg").write_bytes(data)
        words = refusal(tmp_path / "x.jpg")
        assert "is not a picture" in words
        assert "HEIC, PNG, TIFF, WebP, AVIF or raw file" in words

    @pytest.mark.parametrize(
        ("head", "kind"),
        [
            (b"GIF89a", "GIF"),
            (b"BM\x36\0", "BMP"),
            (b"\0\0\0\x18ftypmp42", "film"),
            (b"\0\0\0\x0cJXL \r\n\x87\n", "JPEG XL"),
            (b"%PDF-1.7", "PDF"),
        ],
    )
    def test_known_kinds_that_are_not_read(self, tmp_path: Path, head: bytes, kind: str) -> None:
        """They are named, whatever the suffix says."""
        (tmp_path / "x.jpg").write_bytes(head + bytes(200))
        words = refusal(tmp_path / "x.jpg")
        assert kind in words
        assert "which is not read" in words

    def test_real_gif_and_bmp(self, tmp_path: Path) -> None:
        """Pillow's own files of these kinds are named."""
        assert "a GIF" in refusal(saved(colourful(), tmp_path / "x.gif"))
        assert "a BMP" in refusal(saved(colourful(), tmp_path / "x.bmp"))

    @pytest.mark.parametrize("suffix", SUFFIXES)
    def test_cut_short(self, tmp_path: Path, suffix: str) -> None:
        """Half a file is called damaged, and Pillow's tolerance stays off."""
        noise = np.random.default_rng(6).integers(0, 256, (64, 64, 3), dtype=np.uint8)
        path = saved(Image.fromarray(noise), tmp_path / f"x.{suffix}")
        path.write_bytes(path.read_bytes()[: path.stat().st_size // 2])
        assert "damaged or cut short" in refusal(path)
        assert ImageFile.LOAD_TRUNCATED_IMAGES is False

    @pytest.mark.parametrize(("side", "words"), [(10_001, "100 million"), (20_000, "100 million")])
    def test_a_bomb_of_a_png(self, tmp_path: Path, side: int, words: str) -> None:
        """The header alone is enough, on both sides of Pillow's own limits."""
        assert side**2 > MOST_PIXELS
        path = tmp_path / "bomb.png"
        path.write_bytes(png_head(side, side, depth=8, colour=2))
        before = Image.MAX_IMAGE_PIXELS
        assert words in refusal(path)
        assert before == Image.MAX_IMAGE_PIXELS

    def test_a_bomb_of_a_webp(self, tmp_path: Path) -> None:
        """Each kind of WebP head is measured before the decoder sees it (RFC 9649)."""
        heads = {
            b"VP8X": bytes(4) + (16382).to_bytes(3, "little") * 2,
            b"VP8L": b"\x2f" + (16382 | 16382 << 14).to_bytes(4, "little"),
            b"VP8 ": b"\0\0\0\x9d\x01\x2a" + (16382).to_bytes(2, "little") * 2,
        }
        for kind, body in heads.items():
            path = tmp_path / "bomb.webp"
            path.write_bytes(
                b"RIFF\xff\0\0\0WEBP" + kind + struct.pack("<I", 100) + body + bytes(99)
            )
            assert "100 million" in refusal(path)

    @pytest.mark.parametrize("suffix", ["jpg", "tif"])
    def test_inks(self, tmp_path: Path, suffix: str) -> None:
        """CMYK is refused as printing inks."""
        assert "CMYK" in refusal(saved(colourful().convert("CMYK"), tmp_path / f"x.{suffix}"))

    def test_cielab(self, tmp_path: Path) -> None:
        """A CIELAB TIFF is refused as such."""
        assert "CIELAB" in refusal(saved(Image.new("LAB", (16, 16)), tmp_path / "x.tif"))

    @pytest.mark.parametrize("mode", ["1", "L", "LA", "I;16"])
    def test_black_and_white(self, tmp_path: Path, mode: str) -> None:
        """A picture without colour is refused, whatever its depth."""
        words = refusal(saved(Image.new(mode, (16, 16)), tmp_path / "x.png"))
        assert "black-and-white" in words

    @pytest.mark.parametrize("mode", ["I", "F"])
    def test_black_and_white_numbers(self, tmp_path: Path, mode: str) -> None:
        """TIFFs of whole or real numbers hold no colour either."""
        assert "black-and-white" in refusal(saved(Image.new(mode, (16, 16)), tmp_path / "x.tif"))

    @pytest.mark.parametrize("suffix", ["png", "webp", "tif"])
    def test_several_pictures(self, tmp_path: Path, suffix: str) -> None:
        """Films and pages are counted and refused."""
        other = Image.new("RGB", (32, 24), "blue")
        path = saved(colourful(), tmp_path / f"x.{suffix}", save_all=True, append_images=[other])
        assert f"holds 2 {'pages' if suffix == 'tif' else 'moving pictures'}" in refusal(path)

    @pytest.mark.parametrize("size", [(1, 1), (7, 300), (300, 7)])
    def test_too_small(self, tmp_path: Path, size: tuple[int, int]) -> None:
        """A picture narrower than 8 pixels is refused with its size."""
        path = saved(Image.new("RGB", size, "red"), tmp_path / "x.png")
        assert f"{size[0]} × {size[1]}" in refusal(path)

    def test_out_of_memory(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        """Running out of memory is told as that."""
        path = saved(colourful(), tmp_path / "x.png")

        def starve(*_: object, **__: object) -> None:
            raise MemoryError

        monkeypatch.setattr(ImageFile.ImageFile, "load", starve)
        assert "memory" in refusal(path)


def chunk(name: bytes, body: bytes) -> bytes:
    """Write a chunk of a PNG."""
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def png_head(width: int, height: int, *, depth: int, colour: int) -> bytes:
    """Write a PNG up to an empty picture."""
    head = struct.pack(">IIBBBBB", width, height, depth, colour, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b""))
