"""Strokes as values, and drawn."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.errors import MendableError
from swatchwright.photo.repaint_strokes import (
    NOT_THIS,
    UNMARKED,
    Marked,
    Stroke,
    check_marked,
    drawn,
)

SIZE = (200, 100)
BODY = Stroke("body", ((20, 50), (180, 50)), 10)


def test_a_line_is_as_wide_as_its_brush() -> None:
    """A stroke covers its length and half the brush at each end, in whatever size it is drawn."""
    for times in (1, 2):
        labels = drawn(Marked(SIZE, (BODY,)), ("body",), (100 * times, 200 * times))
        rows, columns = np.nonzero(labels == 0)
        assert np.ptp(rows) + 1 == pytest.approx(10 * times, abs=2)
        assert np.ptp(columns) + 1 == pytest.approx(170 * times, abs=2)
        assert set(np.unique(labels)) == {0, UNMARKED}


def test_a_filled_stroke_covers_what_it_encloses() -> None:
    """A box marks all of its inside."""
    box = Stroke("body", ((10, 10), (59, 10), (59, 39), (10, 39)), 1, filled=True)
    assert np.sum(drawn(Marked(SIZE, (box,)), ("body",), (100, 200)) == 0) == 50 * 30


def test_a_later_stroke_covers_an_earlier() -> None:
    """Where two strokes cross, the later counts; a dot is a stroke too."""
    dot = Stroke(NOT_THIS, ((100, 50),), 20)
    labels = drawn(Marked(SIZE, (BODY, dot)), ("body",), (100, 200))
    assert labels[50, 100] == 1
    assert labels[50, 30] == 0


def test_zones_stand_in_the_order_of_their_strokes() -> None:
    """What is not the piece is no zone."""
    strokes = (Stroke(NOT_THIS, ((1, 1),)), replace(BODY, zone="top"), BODY, BODY)
    assert Marked(SIZE, strokes).zones == ("top", "body")


@pytest.mark.parametrize(
    ("marked", "words"),
    [
        (Marked(SIZE), "No surface"),
        (Marked(SIZE, (replace(BODY, zone=NOT_THIS),)), "No surface"),
        (Marked((0, 5), (BODY,)), "0 × 5"),
        (Marked(SIZE, (BODY,) * 401), "401"),
        (Marked(SIZE, (replace(BODY, width=0.0),)), "0 pixels wide"),
        (Marked(SIZE, (replace(BODY, width=float("nan")),)), "nan"),
        (Marked(SIZE, (replace(BODY, points=()),)), "0 points"),
        (Marked(SIZE, (replace(BODY, points=((5, 5), (9, 9)), filled=True),)), "2 points"),
        (Marked(SIZE, (replace(BODY, points=((5, 500),)),)), "outside"),
        (Marked(SIZE, (replace(BODY, points=((float("inf"), 5),)),)), "outside"),
        (Marked(SIZE, (replace(BODY, zone=" "),)), "says no zone"),
        (Marked(SIZE, tuple(replace(BODY, zone=f"z{i}") for i in range(9))), "9 parts"),
    ],
)
def test_what_cannot_be_is_refused(marked: Marked, words: str) -> None:
    """Each refusal says what is wrong, with the value."""
    with pytest.raises(MendableError, match=words):
        check_marked(marked)
