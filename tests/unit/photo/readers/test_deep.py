"""PNG and TIFF with 16 bits a channel, against files of another writer and by the book."""

from __future__ import annotations

import zlib
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from numpy.typing import NDArray

from swatchwright.photo.readers import read_photo
from unit.photo.pictures import icc, mluc, refusal
from unit.photo.readers.invented import chunk, deep_tiff, png

if TYPE_CHECKING:
    from pathlib import Path

    from swatchwright.photo.image import Photo


def numbers(channels: int = 3) -> NDArray[np.uint16]:
    """Give numbers whose both bytes matter."""
    drawn = np.random.default_rng(4).integers(0, 65536, (21, 34, channels), dtype=np.uint16)
    if channels == 4:
        drawn[..., 3] = 65535
        drawn[:, :9, 3] = 0
    return drawn


def deep_of(photo: Photo) -> NDArray[np.uint16]:
    """Give the 16 bits of a photo that has them."""
    assert photo.deep is not None
    assert photo.facts.bits == 16
    return photo.deep


def test_png_of_every_filter_keeps_all_bits(tmp_path: Path) -> None:
    """Red, green and blue come out as they were written, upper and lower byte."""
    photo = read_photo(png(tmp_path / "x.png", numbers()))
    assert np.array_equal(deep_of(photo), numbers())
    assert np.abs(photo.encoded.astype(float) - numbers() / 257).max() <= 0.5


def test_png_with_alpha_has_a_mask(tmp_path: Path) -> None:
    """A fourth channel masks, and so does a colour that stands for nothing (tRNS)."""
    photo = read_photo(png(tmp_path / "x.png", numbers(4)))
    assert np.array_equal(deep_of(photo), numbers(4)[..., :3])
    assert photo.opaque is not None
    assert photo.opaque[3, 7:11].tolist() == [False, False, True, True]
    clear = chunk(b"tRNS", numbers()[5, 6].astype(">u2").tobytes())
    opaque = read_photo(png(tmp_path / "y.png", numbers(), clear)).opaque
    assert opaque is not None
    assert np.argwhere(~opaque).tolist() == [[5, 6]]


@pytest.mark.parametrize("order", ["<", ">"])
@pytest.mark.parametrize(
    "options",
    [
        {},
        {"rowsperstrip": 5},
        {"tile": (16, 16)},
        {"compression": "zlib"},
        {"compression": "zlib", "predictor": True},
    ],
    ids=str,
)
def test_tiff_of_another_writer_keeps_all_bits(
    tmp_path: Path, order: str, options: dict[str, Any]
) -> None:
    """What tifffile writes comes out as it was, in either order of bytes."""
    photo = read_photo(deep_tiff(tmp_path / "x.tif", numbers(), byteorder=order, **options))
    assert np.array_equal(deep_of(photo), numbers())


def test_tiff_is_turned_upright(tmp_path: Path) -> None:
    """The orientation holds for both bytes (TIFF 6.0, tag 274)."""
    path = deep_tiff(tmp_path / "x.tif", numbers(), extratags=[(274, 3, 1, 6, True)])
    assert np.array_equal(deep_of(read_photo(path)), np.rot90(numbers(), -1))


def test_light_is_made_from_all_bits(tmp_path: Path) -> None:
    """Steps of a tenth of a byte are told apart, by the curve of sRGB as colour-science has it."""
    import colour

    steps = np.repeat(np.arange(8000, 8832, 26, dtype=np.uint16)[None, :, None], 3, axis=2)
    photo = read_photo(png(tmp_path / "x.png", np.repeat(steps, 9, axis=0)))
    expected = colour.models.eotf_sRGB(steps[0, :, 1] / 65535)
    assert photo.linear()[4, :, 1] == pytest.approx(expected, rel=1e-5)
    assert photo.light_at(np.array([3]), np.array([2]))[0, 1] == pytest.approx(expected[3])


def test_layouts_that_lose_bits_are_refused(tmp_path: Path) -> None:
    """Channels that lie apart, other depths, and depth without colour."""
    apart = np.moveaxis(numbers(), 2, 0)
    path = deep_tiff(tmp_path / "apart.tif", apart, planarconfig="separate")
    assert "apart" in refusal(path)
    assert "black-and-white" in refusal(png(tmp_path / "grey.png", numbers(1)))
    assert "black-and-white" in refusal(png(tmp_path / "clear.png", numbers(2)))


def test_tables_are_applied_to_the_upper_bytes(tmp_path: Path) -> None:
    """A profile of tables is worked out on bytes; a damaged one leaves all bits."""
    damaged = icc({"desc": mluc("Tables"), "A2B0": bytes(64)})
    profile = chunk(b"iCCP", b"x\0\0" + zlib.compress(damaged))
    photo = read_photo(png(tmp_path / "x.png", numbers(), profile))
    assert np.array_equal(deep_of(photo), numbers())
    assert "damaged" in photo.facts.notes[0]
