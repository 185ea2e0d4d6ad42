"""The shelf as lines, and a paint whole."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.acts.shelf_view import shelf_lines, usual_off, whole_look
from swatchwright.acts.stock import StockedPaint
from swatchwright.errors import MendableError
from swatchwright.paint.hiding import HIDDEN
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf

DEMO = demo_shelf()
BLUE = DEMO.paint("deep-blue-red")
# Median CIEDE2000 of mixes predicted on open data, where let-downs were in the fit and where not.
LET_DOWNS, SINGLE = 3.4, 10.5


def test_a_line_for_each_paint() -> None:
    """Lines are in the order of the shelf, with what is left and the least price of a litre."""
    lines = shelf_lines(DEMO, [StockedPaint(BLUE, 340.0)])
    assert [line.paint for line in lines] == list(DEMO.paints)
    line = next(line for line in lines if line.paint is BLUE)
    assert line.ml_left == 340.0
    assert line.price == pytest.approx(min(1000 * (t.price or 0) / t.ml for t in BLUE.tins))
    assert {line.ml_left for line in lines if line.paint is not BLUE} == {None}
    assert [line.paint.id for line in lines if line.is_white] == ["white-clean", "white-yellow"]


@pytest.mark.parametrize(
    ("how", "off"),
    [
        (HowKnown.MEASURED, LET_DOWNS),
        (HowKnown.FITTED, LET_DOWNS),
        (HowKnown.GUESSED, SINGLE),
        (HowKnown.INVENTED, None),
    ],
)
def test_usual_error_by_kind(how: HowKnown, off: float | None) -> None:
    """Where only the kind of knowledge is told, the usual error is that of the kind."""
    assert usual_off(DEMO, replace(BLUE, how_known=how)) == (off, "")


def test_usual_error_by_spread() -> None:
    """A paint whose spread is told is off by more, the wider it is."""
    offs = []
    for width in (0.02, 0.2):
        paint = replace(BLUE, how_known=HowKnown.FITTED, spread=width * np.eye(72))
        off, words = usual_off(Shelf("mine", (paint, DEMO.paint("white-clean"))), paint)
        assert off is not None
        assert words
        offs.append(off)
    assert offs[0] < offs[1]


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
