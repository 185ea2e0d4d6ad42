"""The text of a file, with what is said when it cannot be had; and text into a file."""

from __future__ import annotations

from pathlib import Path

from swatchwright.errors import MendableError

__all__ = ["LARGEST_FILE", "read_text", "write_text"]

LARGEST_FILE = 20_000_000


def read_text(path: Path, kind: str, mend: str) -> str:
    """Read a file as UTF-8, with or without its mark.

    Parameters
    ----------
    path
        The file.
    kind
        What it should be, with an article and without: “a shelf”.
    mend
        What to do if it is something else.

    Raises
    ------
    MendableError
        If it cannot be opened, is larger than 20 MB or is not text.
    """
    plain = kind.split(" ", 1)[1]
    try:
        with path.open("rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except OSError as error:
        raise MendableError(
            f"The {plain} file {path} could not be opened.", "Check its name and place."
        ) from error
    if len(data) > LARGEST_FILE:
        raise MendableError(f"{path.name} is larger than 20 MB, too large for {kind}.", mend)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise MendableError(f"{path.name} is not {kind}: it is not plain text.", mend) from error


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
            f"The {kind.split(' ', 1)[1]} file {path} could not be written.",
            "Choose another place for it.",
        ) from error
