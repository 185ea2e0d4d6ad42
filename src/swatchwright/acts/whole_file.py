"""Reading a file whole if it is not too large; writing one whole or not at all."""

from __future__ import annotations

from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = ["read_whole", "write_whole"]


def read_whole(path: Path, most: int, too_large: tuple[str, str]) -> bytes:
    """Read a file of up to so many bytes; no more is read of a larger one.

    Parameters
    ----------
    path
        The file.
    most
        Bytes it may have.
    too_large
        What is said of a larger one, with a place for its ``{file}``, and how to mend that; marked.

    Raises
    ------
    MendableError
        If it cannot be read, or is larger.
    """
    try:
        with path.open("rb") as file:
            data = file.read(most + 1)
    except OSError as error:
        raise MendableError(
            say("{file} cannot be read: {why}.", file=path, why=error.strerror),
            say("Check its name and where it is."),
        ) from error
    if len(data) > most:
        what, mend = too_large
        raise MendableError(say(what, file=path.name), say(mend))
    return data


def write_whole(path: Path, data: bytes) -> None:
    """Write a file, whole or not at all; what was there before goes only when all is written.

    Raises
    ------
    MendableError
        If it cannot be written there.
    """
    try:
        beside = path.with_name(f"{path.name}.part")
        beside.write_bytes(data)
        beside.replace(path)
    except (OSError, ValueError) as error:
        raise MendableError(
            say("{file} could not be written.", file=path),
            say("Name a file in a folder of yours."),
        ) from error
