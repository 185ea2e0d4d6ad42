"""The text of a file, with what is said when it cannot be had; and text into a file."""

from __future__ import annotations

from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import mark_in, say, say_in

__all__ = ["LARGEST_FILE", "read_text", "write_text"]

LARGEST_FILE = 20_000_000

_KIND = "kind of file"
_KINDS = (
    *(mark_in("kind of file", "a shelf"), mark_in("kind of file", "shelf")),
    *(mark_in("kind of file", "a sheet"), mark_in("kind of file", "sheet")),
    *(mark_in("kind of file", "a file of doubts"), mark_in("kind of file", "file of doubts")),
    *(mark_in("kind of file", "a doubt"), mark_in("kind of file", "doubt")),
    *(mark_in("kind of file", "the list of cards"), mark_in("kind of file", "list of cards")),
)
"""What kinds of file there are, with an article and without; other texts are told as they are."""


def read_text(path: Path, kind: str, mend: str) -> str:
    """Read a file as UTF-8, with or without its mark.

    Parameters
    ----------
    path
        The file.
    kind
        What it should be, with its article, in English: “a shelf”.
    mend
        What to do if it is something else, as it is said.

    Raises
    ------
    MendableError
        If it cannot be opened, is larger than 20 MB or is not text.
    """
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except OSError as error:
        raise MendableError(
            say("The {kind} file {path} could not be opened.", kind=_plain(kind), path=path),
            say("Check its name and place."),
        ) from error
    if len(data) > LARGEST_FILE:
        told = say_in(_KIND, kind)
        raise MendableError(
            say("{name} is larger than 20 MB, too large for {kind}.", name=path.name, kind=told),
            mend,
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        told = say_in(_KIND, kind)
        raise MendableError(
            say("{name} is not {kind}: it is not plain text.", name=path.name, kind=told), mend
        ) from error


def write_text(path: Path, text: str, kind: str) -> None:
    """Write a file as UTF-8, whole or not at all.

    Raises
    ------
    MendableError
        If it cannot be written there.
    """
    try:
        beside = path.with_name(f"{path.name}.part")
        beside.write_text(text, encoding="utf-8", newline="\n")
        beside.replace(path)
    except (OSError, ValueError) as error:
        raise MendableError(
            say("The {kind} file {path} could not be written.", kind=_plain(kind), path=path),
            say("Choose another place for it."),
        ) from error


def _plain(kind: str) -> str:
    """Say a kind of file without its article."""
    return say_in(_KIND, kind.split(" ", 1)[1])
