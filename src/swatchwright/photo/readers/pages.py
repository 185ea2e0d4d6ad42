"""Which page of a TIFF is the photo: thumbnails and smaller copies are pages as well."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL import Image

__all__ = ["choose_page"]

_SUBFILE, _REDUCED, _MASK = 254, 1, 4
"""TIFF 6.0 NewSubfileType, and its bits for a smaller copy and for a mask."""

_MOST_PAGES = 64


def choose_page(picture: Image.Image, count: int) -> int | None:
    """Go to the largest page of a TIFF that is no smaller copy.

    Returns
    -------
    The number of the page, from 0; None if several are as large, so that none is the photo.

    Pillow may throw whatever it throws at a malformed file.
    """
    areas = []
    for page in range(min(count, _MOST_PAGES)):
        picture.seek(page)
        kind = int(getattr(picture, "tag_v2", {}).get(_SUBFILE, 0))
        copy = bool(kind & (_REDUCED | _MASK))
        areas.append((not copy, picture.width * picture.height))
    largest = max(areas)
    if areas.count(largest) > 1:
        return None
    page = areas.index(largest)
    picture.seek(page)
    return page
