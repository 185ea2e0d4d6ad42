"""Reading files: what is read comes out as it was meant, what is not is refused in words."""

from __future__ import annotations

import io
import os
import struct
import tempfile
import zlib
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image, ImageFile

from swatchwright.errors import MendableError
from swatchwright.photo.image import Photo
from swatchwright.photo.readers import read_photo
from swatchwright.photo.readers.picture import MOST_PIXELS
from unit.photo.pictures import colourful, icc, mluc, p3_profile, saved, srgb_profile

SUFFIXES = ("jpg", "png", "tif", "webp")
LOSSLESS: dict[str, Any] = {"lossless": True}


def refusal(path: Path) -> str:
    """Give the words with which a file is refused."""
    with pytest.raises(MendableError) as caught:
        read_photo(path)
    assert caught.value.mend
    return str(caught.value)


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

    def test_of_a_phones_several_pictures_the_first_is_taken(self, tmp_path: Path) -> None:
        """A multi-picture JPEG is read, with a note."""
        first, second = Image.new("RGB", (32, 24), "red"), Image.new("RGB", (32, 24), "blue")
        path = tmp_path / "two.mpo"
        first.save(path, save_all=True, append_images=[second])
        photo = read_photo(path.rename(tmp_path / "two.jpg"))
        assert photo.facts.format == "MPO"
        assert photo.encoded[0, 0, 0] > 200
        assert any("holds 2 pictures" in note for note in photo.facts.notes)


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


class TestRefusedPictures:
    """Files that hold no usable picture."""

    @pytest.mark.parametrize("data", [b"hello painter", b"\0" * 100, b"<svg></svg>", b"x"])
    def test_not_a_picture(self, tmp_path: Path, data: bytes) -> None:
        """It is called no picture, and what can be read is listed."""
        (tmp_path / "x.jpg").write_bytes(data)
        words = refusal(tmp_path / "x.jpg")
        assert "is not a picture" in words
        assert "HEIC, raw files, GIF and BMP" in words

    @pytest.mark.parametrize(
        ("head", "kind"),
        [
            (b"GIF89a", "GIF"),
            (b"BM\x36\0", "BMP"),
            (b"\0\0\0\x18ftypheic", "HEIC"),
            (b"\0\0\0\x18ftypmif1", "HEIC"),
            (b"\0\0\0\x18ftypavif", "AVIF"),
            (b"\0\0\0\x18ftypmp42", "film"),
            (b"II*\0\x10\0\0\0CR\x02\0", "raw file"),
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

    def test_sixteen_bits(self, tmp_path: Path) -> None:
        """16-bit PNG and TIFF are refused rather than silently cut to 8."""
        (tmp_path / "x.png").write_bytes(png_of_16_bits())
        (tmp_path / "x.tif").write_bytes(tiff_of_16_bits())
        for name in ("x.png", "x.tif"):
            # Pillow would read it, which is what the refusal guards against.
            with Image.open(tmp_path / name) as picture:
                assert picture.mode == "RGB"
            assert "16 bits" in refusal(tmp_path / name)

    def test_a_raw_file_built_as_a_tiff(self, tmp_path: Path) -> None:
        """A TIFF whose first picture is a thumbnail, or a digital negative, is a raw file."""
        assert "raw file" in refusal(saved(colourful(), tmp_path / "a.tif", tiffinfo={254: 1}))
        negative = {50706: b"\x01\x04\0\0"}
        assert "raw file" in refusal(saved(colourful(), tmp_path / "b.tif", tiffinfo=negative))

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


def png_of_16_bits() -> bytes:
    """Write a PNG of 16 x 16 pixels with 16 bits a channel."""
    rows = (b"\0" + b"\x40\x01" * 48) * 16
    head = png_head(16, 16, depth=16, colour=2)
    return head[:33] + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def tiff_of_16_bits() -> bytes:
    """Write a TIFF of 16 x 16 pixels with 16 bits a channel (TIFF 6.0, section 6)."""
    pixels = b"\x01\x40" * 16 * 16 * 3
    entries = [
        (256, 3, 1, 16), (257, 3, 1, 16), (258, 3, 3, 0), (259, 3, 1, 1), (262, 3, 1, 2),
        (273, 4, 1, 0), (277, 3, 1, 3), (278, 3, 1, 16), (279, 4, 1, len(pixels)),
    ]  # fmt: skip
    bits_at = 8 + 2 + 12 * len(entries) + 4
    places = {258: bits_at, 273: bits_at + 6}
    table = b"".join(struct.pack("<HHII", t, k, n, places.get(t, v)) for t, k, n, v in entries)
    head = b"II*\0" + struct.pack("<IH", 8, len(entries)) + table + bytes(4)
    return head + struct.pack("<3H", 16, 16, 16) + pixels


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
