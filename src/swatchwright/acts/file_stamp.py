"""Telling a file from another that takes its place."""

from __future__ import annotations

from contextlib import suppress
from pathlib import Path

__all__ = ["Stamp", "stamp_of"]

Stamp = tuple[int, int]
"""Bytes of a file and when it was written, in ns."""


def stamp_of(path: Path | None) -> Stamp | None:
    """Tell a file from another that takes its place: its size and when it was written."""
    with suppress(OSError, ValueError):
        if path is not None:
            told = path.stat()
            return told.st_size, told.st_mtime_ns
    return None
