"""A shelf, and finding a paint on it."""

from __future__ import annotations

import pytest

from swatchwright.errors import MendableError
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from unit.paint.made import paint


def test_a_paint_is_found_by_its_id() -> None:
    """Each paint of a shelf is found by its own id."""
    shelf = demo_shelf()
    assert [shelf.paint(p.id) for p in shelf.paints] == list(shelf.paints)


@pytest.mark.parametrize(
    ("asked", "near"),
    [("claired", "clay-red-muted"), ("deep-blu", "deep-blue-red"), ("soft_black", "soft-black")],
)
def test_a_slip_is_answered_with_what_looks_like_it(asked: str, near: str) -> None:
    """An id that is nearly right is refused with the right one among those named."""
    with pytest.raises(MendableError) as caught:
        demo_shelf().paint(asked)
    assert asked in caught.value.what
    assert "the demonstration shelf" in caught.value.what
    assert near in caught.value.mend


def test_nonsense_is_answered_with_some_that_are_there() -> None:
    """An id like none on the shelf is refused with the first few that are there."""
    shelf = Shelf("my shelf", tuple(paint(name) for name in ("one", "two")))
    with pytest.raises(MendableError, match="one, two"):
        shelf.paint("zzzzzz")
