"""Starting is quick because nothing heavy is loaded before it is needed."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from house.tree import python

if TYPE_CHECKING:
    from collections.abc import Iterable

NUMERIC = frozenset({"numpy", "scipy", "sklearn", "skimage", "colour", "matplotlib"})
SLOW = frozenset(
    {"scipy", "sklearn", "skimage", "colour", "matplotlib", "colour_cxf", "xsdata", "defusedxml"}
)
PICTURES = frozenset({"PIL", "PySide6", "shiboken6"})


def loaded(*arguments: str) -> set[str]:
    """Run Python with these arguments and give the top names of all that it imported."""
    written = python("-X", "importtime", *arguments)
    rows = [line.rsplit("|", 1)[1] for line in written.splitlines() if "import time:" in line]
    return {row.strip().split(".")[0] for row in rows}


@pytest.mark.parametrize(
    ("arguments", "forbidden"),
    [
        (("-m", "swatchwright", "--version"), NUMERIC | PICTURES),
        (("-m", "swatchwright", "--help"), NUMERIC | PICTURES),
        (("-c", "import swatchwright.desktop.start"), SLOW),
        (("-c", "import swatchwright.commands.run"), SLOW | PICTURES),
        (("-c", "import swatchwright.acts"), SLOW | {"PySide6", "shiboken6"}),
    ],
    ids=["the version", "the help", "the window", "the command line", "the acts"],
)
def test_nothing_heavy_on_the_way_in(arguments: tuple[str, ...], forbidden: Iterable[str]) -> None:
    """The way in loads the program and none of the libraries that are for later."""
    names = loaded(*arguments)
    assert "swatchwright" in names
    assert not names & set(forbidden)


def test_a_heavy_import_would_be_seen() -> None:
    """The list of loaded modules does hold numpy where numpy is loaded."""
    assert "numpy" in loaded("-c", "import swatchwright.colour.convert")
