"""The shelf as lines, and a paint whole."""

from __future__ import annotations

import pytest

from swatchwright.acts.shelf_view import shelf_lines, whole_look
from swatchwright.acts.stock import StockedPaint
from swatchwright.errors import MendableError
from swatchwright.paint.hiding import HIDDEN
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf

DEMO = demo_shelf()
BLUE = DEMO.paint("deep-blue-red")


def test_a_line_for_each_paint() -> None:
    """Lines are in the order of the shelf, with what is left and the least price of a litre."""
    lines = shelf_lines(DEMO, [StockedPaint(BLUE, 340.0)])
    assert [line.paint for line in lines] == list(DEMO.paints)
    line = next(line for line in lines if line.paint is BLUE)
    assert line.ml_left == 340.0
    assert line.price == pytest.approx(min(1000 * (t.price or 0) / t.ml for t in BLUE.tins))
    assert {line.ml_left for line in lines if line.paint is not BLUE} == {None}
    assert [line.paint.id for line in lines if line.is_white] == ["white-clean", "white-yellow"]


def test_whole_look() -> None:
    """All of a paint: coats over a card up to where it hides, and what to brush."""
    whole = whole_look(DEMO, BLUE.id)
    assert [card.coats for card in whole.card] == [1, 2, 3, 4]
    assert whole.look.coats == 3
    gaps = [card.over_white.L - card.over_black.L for card in whole.card]
    assert gaps == sorted(gaps, reverse=True)
    assert gaps[2] < (1 - HIDDEN) * 100
    assert [strip.mix[0][0] for strip in whole.wanted] == [BLUE.id] * len(whole.wanted)


def test_a_paint_that_is_not_there() -> None:
    """An unknown id is refused with those that are like it."""
    with pytest.raises(MendableError, match="deep-blue-red"):
        whole_look(DEMO, "deep-blue")


def test_a_lone_paint_waits_for_a_white() -> None:
    """Where there is no white to let it down with, nothing is asked for, and that is told."""
    lone = whole_look(Shelf("mine", (BLUE,)), BLUE.id)
    assert lone.let_down_with is None
    white = whole_look(DEMO, BLUE.id).let_down_with
    assert white is not None
    assert white.id == "white-clean"
