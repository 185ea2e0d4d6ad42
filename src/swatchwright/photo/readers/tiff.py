"""The directories of a TIFF, to tell a raw file from a picture and a thumbnail from a page.

References
----------
TIFF 6.0, section 2 (directories) and the tags named; TIFF Technical Note 1 (sub-directories); the
digital negative specification, version 1.7 (its version, and the photometric interpretations of
sensors).
"""

from __future__ import annotations

import struct
from typing import TYPE_CHECKING, BinaryIO

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

__all__ = ["is_raw_tiff"]

_SUBFILE, _PHOTOMETRIC, _SUB_DIRECTORIES, _DNG_VERSION = 254, 262, 330, 50706
_OF_A_SENSOR = frozenset({32803, 34892})
"""Photometric interpretations of a colour filter array, and of what was made of one."""

_SIZES = {1: 1, 3: 2, 4: 4, 13: 4}
"""Bytes of one value of the types that whole numbers come in."""

_MOST_DIRECTORIES = 32
_MOST_ENTRIES = 1024
_MOST_VALUES = 16


def is_raw_tiff(file: BinaryIO, head: bytes) -> bool:
    """Tell whether a TIFF holds what a camera's sensor saw, not a picture made of it.

    Raises
    ------
    OSError
        If the file cannot be read.
    """
    order = {b"II*\0": "<", b"MM\0*": ">"}.get(head[:4])
    if order is None:
        return False
    directories = list(_directories(file, order))
    if any(_DNG_VERSION in tags for tags in directories):
        return True
    return any(_OF_A_SENSOR & set(tags.get(_PHOTOMETRIC, ())) for tags in directories)


def _directories(file: BinaryIO, order: str) -> Iterator[Mapping[int, tuple[int, ...]]]:
    """Give the tags of each directory, those below the main ones too; damage ends the list."""
    waiting, seen = [_number_at(file, 4, order)], set[int]()
    while waiting and len(seen) < _MOST_DIRECTORIES:
        at = waiting.pop(0)
        if at < 8 or at in seen:
            continue
        seen.add(at)
        tags, following = _directory(file, at, order)
        yield tags
        waiting += [following, *tags.get(_SUB_DIRECTORIES, ())]


def _directory(file: BinaryIO, at: int, order: str) -> tuple[Mapping[int, tuple[int, ...]], int]:
    """Read the whole numbers of one directory, and where the following one is."""
    file.seek(at)
    count = int.from_bytes(file.read(2), "little" if order == "<" else "big")
    if count > _MOST_ENTRIES:
        return {}, 0
    table = file.read(12 * count)
    end = file.read(4)
    following = struct.unpack(f"{order}I", end)[0] if len(end) == 4 else 0
    tags = {}
    for start in range(0, len(table) - 11, 12):
        tag, kind, number = struct.unpack_from(f"{order}HHI", table, start)
        if tag in {_SUBFILE, _PHOTOMETRIC, _SUB_DIRECTORIES, _DNG_VERSION}:
            tags[tag] = _values(file, table[start + 8 : start + 12], kind, number, order)
    return tags, following


def _values(file: BinaryIO, field: bytes, kind: int, number: int, order: str) -> tuple[int, ...]:
    """Read the values of an entry: in its field if they fit there, else where it points to."""
    size = _SIZES.get(kind, 0)
    number = min(number, _MOST_VALUES)
    if size * number > 4:
        file.seek(struct.unpack(f"{order}I", field)[0])
        field = file.read(size * number)
    if size == 0 or len(field) < size * number:
        return ()
    letter = {1: "B", 2: "H", 4: "I"}[size]
    return struct.unpack_from(f"{order}{number}{letter}", field)


def _number_at(file: BinaryIO, at: int, order: str) -> int:
    """Read one number of 32 bits; 0 beyond the end."""
    file.seek(at)
    data = file.read(4)
    return int(struct.unpack(f"{order}I", data)[0]) if len(data) == 4 else 0
