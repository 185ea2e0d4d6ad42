"""What is left beside the store for the next start: small files, and the photos they name.

Nobody waits for such a file and nothing depends on it: one that cannot be written, read or
understood counts as none.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

from swatchwright.acts.colours import open_photo
from swatchwright.acts.file_stamp import Stamp, stamp_of
from swatchwright.acts.whole_file import write_whole
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.image import Photo
from swatchwright.shelf.jobs import Document
from swatchwright.shelf.store.store import Store

__all__ = ["MOST_LEFT", "LeftPhoto", "leave", "left", "left_photo"]

T = TypeVar("T")

MOST_LEFT = 2**20
"""Bytes that are read of such a file."""


@dataclass(frozen=True, slots=True, eq=False)
class LeftPhoto:
    """A photo that was left, opened anew: its file, and how that is to be known again."""

    photo: Photo
    path: Path
    stamp: Stamp | None


def leave(store: Store, name: str, value: object) -> None:
    """Write a value to a file of this name beside the store, if that can be done."""
    with suppress(MendableError):
        write_whole(store.path.with_name(name), Document.of(value).json.encode())


def left(store: Store, name: str, kind: type[T]) -> T | None:
    """Read a value of a type from a file of this name beside the store; None where it is none."""
    try:
        with store.path.with_name(name).open("rb") as opened:
            text = opened.read(MOST_LEFT).decode()
        return Document(1, text).read(kind)
    except (OSError, ValueError, MendableError):
        return None


def left_photo(path: str, stamp: Stamp | None, *, other: str, again: str) -> LeftPhoto | None:
    """Open a photo that was left; None where there was none.

    Parameters
    ----------
    path, stamp
        Its file, empty for none, and how that was; None where that was not known.
    other, again
        What is said where the file is another by now, with a place for its ``{name}``, and how to
        mend that; marked.

    Raises
    ------
    MendableError
        If it cannot be opened, or the file is another by now.
    """
    if not path:
        return None
    file = Path(path)
    now = stamp_of(file)
    if stamp is not None and now not in {None, stamp}:
        raise MendableError(say(other, name=file.name), say(again))
    return LeftPhoto(open_photo(file), file, now)
