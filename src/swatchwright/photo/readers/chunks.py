"""The code points of colour that a PNG may hold.

References
----------
W3C Portable Network Graphics, third edition (2025), section 11.3.2.6 (cICP).
"""

from __future__ import annotations

from typing import BinaryIO

from swatchwright.photo.readers.cicp import CodePoints

__all__ = ["png_code_points"]

_MOST_CHUNKS = 256


def png_code_points(file: BinaryIO, head: bytes) -> CodePoints | None:
    """Look for code points before the pixels of a PNG; None without, or for another file.

    The place in the file is left as it was.
    """
    if not head.startswith(b"\x89PNG"):
        return None
    before = file.tell()
    try:
        return _search(file)
    finally:
        file.seek(before)


def _search(file: BinaryIO) -> CodePoints | None:
    """Go through the chunks."""
    at = 8
    for _ in range(_MOST_CHUNKS):
        file.seek(at)
        start = file.read(12)
        length, kind = int.from_bytes(start[:4], "big"), start[4:8]
        if len(start) < 12 or kind == b"IDAT":
            return None
        if kind == b"cICP":
            return CodePoints(start[8], start[9]) if length == 4 else None
        at += 12 + length
    return None
