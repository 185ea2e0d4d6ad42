"""PNG and TIFF with 16 bits a channel, of which Pillow gives 8.

Pillow takes the upper byte of each number; told to take the other one, it gives that as well. So
every number is put together of two passes, and whatever compression, filter or interlacing Pillow
knows is known here.
"""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any, BinaryIO

import numpy as np
from PIL import Image

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.readers.hints import read_hints

if TYPE_CHECKING:
    from numpy.typing import NDArray

__all__ = ["deep_numbers", "refuse_deep"]

_PLANAR = 284
"""TIFF 6.0 PlanarConfiguration; 2 says that red, green and blue lie apart."""

_NATIVE = "L" if sys.byteorder == "little" else "B"
_OTHER = {"L": "B", "B": "L"}
"""How numbers lie: the lower byte first, or the upper; the upper byte of the one order is the lower
byte of the other."""


def refuse_deep(picture: Image.Image, bits: int, name: str) -> None:
    """Refuse depths and layouts of which not all bits could be read.

    Raises
    ------
    MendableError
        If it has neither 8 nor 16 bits, or its channels lie apart.
    """
    mend = say("Export it with 16 bits a channel, as a PNG or an ordinary TIFF, or as a JPEG.")
    if bits != 16:
        raise MendableError(
            say("“{name}” has {bits} bits a channel; 8 and 16 are read.", name=name, bits=bits),
            mend,
        )
    if getattr(picture, "tag_v2", {}).get(_PLANAR, 1) != 1:
        raise MendableError(
            say(
                "“{name}” keeps red, green and blue apart, which is not read with 16 bits.",
                name=name,
            ),
            mend,
        )


def deep_numbers(file: BinaryIO, kind: str, page: int) -> tuple[NDArray[np.uint16], int]:
    """Read all 16 bits of a page of a PNG or TIFF, shape (rows, columns, 3 or 4).

    The second of the two is the orientation that they are in: Pillow turns a TIFF, but not a PNG.
    Alpha that is multiplied in is left so: what is not opaque is not looked at.

    Raises
    ------
    ValueError
        If it has no layout that both passes can be made of; and whatever Pillow throws.
    """
    first, orientation = _pass(file, kind, page, lower=False)
    numbers = first.astype(np.uint16)
    numbers <<= 8
    numbers |= _pass(file, kind, page, lower=True)[0]
    return numbers, orientation


def _pass(file: BinaryIO, kind: str, page: int, *, lower: bool) -> tuple[NDArray[np.uint8], int]:
    """Read the upper or the lower bytes, with the orientation they are in."""
    file.seek(0)
    # Not closed: that would close the file as well.
    picture: Any = Image.open(file, formats=(kind,))
    if page:
        picture.seek(page)
    tiles = []
    for tile in picture.tile:
        whole = tile.args if isinstance(tile.args, tuple) else (tile.args,)
        args = (_raw_mode(str(whole[0]), lower=lower), *whole[1:])
        tiles.append(tile._replace(args=args if isinstance(tile.args, tuple) else args[0]))
    picture.tile = tiles
    picture.load()
    return np.asarray(picture), read_hints(picture.getexif()).orientation


def _raw_mode(mode: str, *, lower: bool) -> str:
    """Give the layout that reads the wanted bytes of the layout that the file has."""
    channels, _, depth = mode.partition(";16")
    if channels not in {"RGB", "RGBA", "RGBa", "RGBX"} or depth not in {"L", "B", "N"}:
        raise ValueError("the layout of the 16 bits is not known")
    channels = "RGBA" if channels == "RGBa" else channels
    order = _NATIVE if depth == "N" else depth
    return f"{channels};16{_OTHER[order] if lower else order}"
