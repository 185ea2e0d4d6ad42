"""Writing a file whole or not at all."""

from __future__ import annotations

from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = ["write_whole"]


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
