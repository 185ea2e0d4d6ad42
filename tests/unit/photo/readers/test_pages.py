"""A TIFF with several pages: the largest is the photo, copies of it are not."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
import tifffile
from PIL import Image

from swatchwright.photo.readers import read_photo
from unit.photo.pictures import refusal

if TYPE_CHECKING:
    from pathlib import Path


def pages(path: Path, *sides: int, copies: tuple[int, ...] = (), bits: int = 8) -> Path:
    """Write square pages, each as bright as its place; those at some places are marked copies."""
    kind = np.uint8 if bits == 8 else np.uint16
    with tifffile.TiffWriter(path) as writer:
        for place, side in enumerate(sides):
            page = np.full(
                (side, side, 3), (place + 1) * 50 * (257 if bits == 16 else 1), dtype=kind
            )
            writer.write(page, photometric="rgb", subfiletype=int(place in copies), metadata=None)
    return path


@pytest.mark.parametrize("bits", [8, 16])
@pytest.mark.parametrize(
    ("sides", "copies", "taken"),
    [((64, 16), (1,), 0), ((16, 64), (0,), 1), ((16, 64, 32), (), 1), ((64, 64), (0,), 1)],
)
def test_the_largest_page_that_is_no_copy_is_taken(
    tmp_path: Path, sides: tuple[int, ...], copies: tuple[int, ...], taken: int, bits: int
) -> None:
    """A thumbnail before or after the photo is left aside, with a note."""
    photo = read_photo(pages(tmp_path / "x.tif", *sides, copies=copies, bits=bits))
    assert photo.width == sides[taken]
    assert photo.encoded[3, 3, 1] == (taken + 1) * 50
    assert photo.facts.bits == bits
    assert f"Of the {len(sides)} pages" in photo.facts.notes[0]


def test_pages_of_one_size_are_refused(tmp_path: Path) -> None:
    """Of two pages alike none is the photo."""
    assert "holds 2 pages" in refusal(pages(tmp_path / "x.tif", 32, 32))


def test_a_page_too_large_is_refused_like_a_picture(tmp_path: Path) -> None:
    """The bound on pixels holds for the page that is taken."""
    small = Image.new("RGB", (4, 4))
    path = tmp_path / "x.tif"
    small.save(path, save_all=True, append_images=[Image.new("RGB", (6, 6))])
    assert "only" in refusal(path)
