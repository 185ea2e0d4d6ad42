"""Wishes on a shelf: which hold, how many, and whether they go together."""

from __future__ import annotations

import pytest

from swatchwright.acts.wish import (
    by_name,
    check_together,
    how_many_wishes,
    most_share_of,
    wishes_on,
    with_most_share,
)
from swatchwright.errors import MendableError
from swatchwright.mixing.wishes import Wishes
from swatchwright.shelf.csv_file import demo_shelf

DEMO = demo_shelf()
ALL = frozenset(paint.id for paint in DEMO.paints)
BLACK = frozenset({"soft-black"})
GONE = frozenset({"a-paint-of-another-shelf"})


def test_wishes_for_other_paints_wait() -> None:
    """What is asked of paints that are not there is left out, all else stays."""
    asked = Wishes(
        without=BLACK | GONE, must=GONE, opened=GONE, owned=ALL | GONE, most_coats=2,
        most_share=(("a-paint-of-another-shelf", 0.5), ("soft-black", 0.1)),
    )  # fmt: skip
    assert wishes_on(DEMO, asked) == Wishes(
        without=BLACK, owned=ALL, most_coats=2, most_share=(("soft-black", 0.1),)
    )


def test_wishes_are_counted() -> None:
    """Each paint that is named counts, and each number; what is not there does not."""
    assert how_many_wishes(DEMO, Wishes()) == 0
    assert how_many_wishes(DEMO, Wishes(without=GONE)) == 0
    assert how_many_wishes(DEMO, Wishes(without=BLACK, most_price=20, most_coats=2)) == 3
    assert how_many_wishes(DEMO, Wishes(owned=ALL - BLACK)) == 1


def test_contradictions_are_refused_by_name() -> None:
    """A paint that must be in and is left out is named as the tin does, not by its id."""
    with pytest.raises(MendableError) as caught:
        check_together(DEMO, Wishes(without=BLACK, must=BLACK))
    told = by_name(caught.value, DEMO)
    assert f"“{DEMO.paint('soft-black').name}”" in told.what
    assert "soft-black" not in str(told)
    assert told.mend == caught.value.mend


def test_good_wishes_pass() -> None:
    """What can be kept together is given back as it holds on the shelf."""
    assert check_together(DEMO, Wishes(must=BLACK | GONE)) == Wishes(must=BLACK)
    assert check_together(DEMO, Wishes(must=BLACK)) == Wishes(must=BLACK)


def test_share_of_one_paint() -> None:
    """A greatest share is set, changed and taken away without touching that of others."""
    asked = with_most_share(with_most_share(Wishes(), "a", 0.2), "b", 0.3)
    assert most_share_of(asked, "a") == 0.2
    again = with_most_share(asked, "a", 0.5)
    assert (most_share_of(again, "a"), most_share_of(again, "b")) == (0.5, 0.3)
    assert with_most_share(again, "a", None).most_share == (("b", 0.3),)
