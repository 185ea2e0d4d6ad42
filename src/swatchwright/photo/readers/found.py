"""A file while it is being read, and what was found in it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, BinaryIO

import numpy as np
from numpy.typing import NDArray

from swatchwright.photo.readers.hints import Hints
from swatchwright.photo.readers.meaning import Meaning

if TYPE_CHECKING:
    from collections.abc import Iterable

__all__ = ["Found", "Pixels", "Reading", "upright_pixels"]

_OPAQUE_FROM = 250
"""Alpha, 0-255, from which a pixel counts as opaque: some programs write 254 for all."""

_UPPER = ((np.arange(65536) + 128) // 257).astype(np.uint8)
"""The byte that is nearest to a 257th of each number of 16 bits."""

_ON_ITS_SIDE = frozenset({5, 6, 7, 8})
"""Exif orientations that make columns of what is stored as rows."""

Numbers = NDArray[np.uint8] | NDArray[np.uint16]


@dataclass(frozen=True, slots=True)
class Reading:
    """A file while it is being read: where it is, its content from the start, its first bytes."""

    path: Path
    file: BinaryIO
    head: bytes

    @property
    def name(self) -> str:
        """Its name without its folder."""
        return self.path.name

    def start(self, most: int) -> bytes:
        """Give as many of its first bytes, leaving the place in the file as it was."""
        before = self.file.tell()
        self.file.seek(0)
        data = self.file.read(most)
        self.file.seek(before)
        return data


@dataclass(frozen=True, slots=True, eq=False)
class Pixels:
    """The upright numbers of a picture; fields as in `Photo`."""

    encoded: NDArray[np.uint8]
    opaque: NDArray[np.bool_] | None
    deep: NDArray[np.uint16] | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Found:
    """What was found in a file: its pixels, what they mean, and what is known of them.

    Fields not told of here are those of `FileFacts`.
    """

    pixels: Pixels
    meaning: Meaning
    format: str
    hints: Hints
    bits: int = 8
    tone_mapped: bool | None = None
    gain_map: bool = False
    notes: tuple[str, ...] = ()

    @property
    def is_linear(self) -> bool:
        """Whether the numbers in the file are in proportion to light."""
        return self.tone_mapped is False or self.meaning.decoding.linear

    @property
    def all_notes(self) -> tuple[str, ...]:
        """All that was assumed, and all that a painter should know."""
        return (
            *self.notes,
            *self.hints.notes(tone_mapped=self.tone_mapped),
            *self.meaning.notes,
        )


def upright_pixels(parts: Iterable[Numbers], size: tuple[int, int], orientation: int) -> Pixels:
    """Turn a picture upright.

    Parameters
    ----------
    parts
        The picture from top to bottom as it is stored, each part of shape (rows, columns, 3 or 4),
        all of 8 or all of 16 bits; a fourth channel is how opaque a pixel is. They are taken one
        after another, so that they need not all be there at once.
    size
        Columns and rows as stored.
    orientation
        As in Exif, 1 to 8; anything else is taken as 1.
    """
    shape = size if orientation in _ON_ITS_SIDE else size[::-1]
    encoded = np.empty((*shape, 3), dtype=np.uint8)
    opaque = np.ones(shape, dtype=np.bool_)
    deep: NDArray[np.uint16] | None = None
    top = 0
    for part in parts:
        rows = slice(top, top + len(part))
        top += len(part)
        colours = part[..., :3]
        if part.dtype == np.uint16:
            deep = np.empty((*shape, 3), dtype=np.uint16) if deep is None else deep
            _as_stored(deep, orientation)[rows] = colours
        _as_stored(encoded, orientation)[rows] = _bytes(colours)
        if part.shape[2] == 4:
            _as_stored(opaque, orientation)[rows] = _bytes(part[..., 3]) >= _OPAQUE_FROM
    for array in (encoded, opaque, deep):
        if array is not None:
            array.setflags(write=False)
    return Pixels(encoded, None if opaque.all() else opaque, deep)


def _bytes(numbers: NDArray[Any]) -> NDArray[np.uint8]:
    """Give the nearest bytes of numbers of 8 or 16 bits."""
    return numbers if numbers.dtype == np.uint8 else _UPPER[numbers]


def _as_stored(upright: NDArray[Any], orientation: int) -> NDArray[Any]:
    """View an upright array the way the file has it (Exif 2.32, tag 0x0112)."""
    turned = upright.swapaxes(0, 1) if orientation in _ON_ITS_SIDE else upright
    if orientation in {3, 4, 6, 7}:
        turned = turned[::-1]
    if orientation in {2, 3, 7, 8}:
        turned = turned[:, ::-1]
    return turned
