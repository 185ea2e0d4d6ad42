"""How well a paint is known: one rule, by what its mixes are off by and which cards there are."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from swatchwright.acts.known import (
    GOOD,
    Grade,
    Hiding,
    grade_of,
    hiding_of,
    known_of,
    likely_errors,
)
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sitting import Sitting, with_cards, with_reading
from swatchwright.acts.sitting_fit import fit_sitting
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf

DEMO = demo_shelf()
BLUE, WHITE = DEMO.paint("deep-blue-red"), DEMO.paint("white-clean")
# Median CIEDE2000 of mixes predicted on open data, where let-downs were in the fit and where not
# (docs/accuracy.md).
LET_DOWNS, SINGLE = 3.4, 10.5
# From a photo with one grey card, and from an instrument (docs/accuracy.md).
PHOTO, INSTRUMENT = 5.5, 0.5


def fitted(
    ids: tuple[str, ...], off: float, *, white: str = "", ground: bool = False, alone: bool = False
) -> Shelf:
    """Fit paints of the demonstration from their cards, or only from those of single paints."""
    sitting = with_cards(Sitting(ids=ids, white=white, ground=ground), DEMO)
    for n, card in enumerate(sitting.cards):
        if card.mix and not card.over and (len(card.mix) == 1 or not alone):
            sitting = with_reading(sitting, n, look_of_mix(DEMO, card.mix).dry, usually_off=off)
        elif card.mix and card.over:
            # What matters here is which card it is, not how it hides: it is taken to hide.
            sitting = with_reading(sitting, n, look_of_mix(DEMO, card.mix).dry, usually_off=off)
    return Shelf("mine", tuple(fit.paint for fit in fit_sitting(sitting, DEMO).fits))


def test_words_follow_the_figure() -> None:
    """A wider doubt is never told in better words, and what is hardly known is off by much."""
    grades = [grade_of(off) for off in np.arange(0.0, 20.0, 0.1)]
    order = list(Grade)
    assert [order.index(one) for one in grades] == sorted(order.index(one) for one in grades)
    assert grade_of(LET_DOWNS) is Grade.WELL
    assert grade_of(GOOD) is Grade.WELL
    assert grade_of(9.0) is grade_of(SINGLE) is grade_of(12.0) is Grade.HARDLY


@pytest.mark.parametrize(
    ("how", "off", "grade"),
    [
        (HowKnown.MEASURED, LET_DOWNS, Grade.WELL),
        (HowKnown.FITTED, LET_DOWNS, Grade.WELL),
        (HowKnown.GUESSED, SINGLE, Grade.HARDLY),
        (HowKnown.INVENTED, None, None),
    ],
)
def test_by_kind(how: HowKnown, off: float | None, grade: Grade | None) -> None:
    """Where only the kind of knowledge is told, the usual error is that of the kind."""
    known = known_of(DEMO, replace(BLUE, how_known=how))
    assert (known.off, known.grade) == (off, grade)
    assert bool(known.words) is (grade is not None)


def test_by_spread() -> None:
    """A paint whose spread is told is off by more, the wider it is."""
    offs = []
    for width in (0.02, 0.2):
        paint = replace(BLUE, how_known=HowKnown.FITTED, spread=width * np.eye(72))
        off = known_of(Shelf("mine", (paint, WHITE)), paint).off
        assert off is not None
        offs.append(off)
    assert offs[0] < offs[1]


@pytest.mark.parametrize("off", [INSTRUMENT, PHOTO])
@pytest.mark.parametrize("ids", [("deep-blue-red",), ("deep-blue-red", "clay-red-muted")])
def test_one_colour_is_hardly_known(ids: tuple[str, ...], off: float) -> None:
    """A paint entered from one colour is hardly known, with others on the shelf or alone."""
    shelf = fitted(ids, off)
    for paint in shelf.paints:
        known = known_of(shelf, paint)
        assert known.grade is Grade.HARDLY
        assert known.off is not None
        # Single drawdowns left 9 to 12 on the open data; the spread of a paint may say a bit less.
        assert known.off > 7.5
        assert known.words == likely_errors(shelf, paint).words == "hardly known"


def test_let_downs_make_a_paint_known() -> None:
    """With let-downs read by an instrument mixes are off as on the open data, and told so."""
    shelf = fitted(("white-clean", "deep-blue-red"), INSTRUMENT, white="white-clean")
    known = known_of(shelf, shelf.paint("deep-blue-red"))
    assert known.off is not None
    assert known.off == pytest.approx(LET_DOWNS, abs=1.0)
    assert known.grade is Grade.WELL


def test_hiding_by_cards() -> None:
    """How a paint hides is a guess until a coat of it over black was read."""
    ids = ("white-clean", "clay-red-muted")
    for ground in (False, True):
        shelf = fitted(ids, INSTRUMENT, white=ids[0], ground=ground)
        wanted = Hiding.READ if ground else Hiding.GUESSED
        assert {hiding_of(paint) for paint in shelf.paints} == {wanted}


@pytest.mark.parametrize(
    ("how", "read", "hiding"),
    [
        (HowKnown.INVENTED, None, Hiding.STATED),
        (HowKnown.MEASURED, None, Hiding.STATED),
        (HowKnown.FITTED, None, Hiding.GUESSED),
        (HowKnown.GUESSED, None, Hiding.GUESSED),
        (HowKnown.FITTED, True, Hiding.READ),
        (HowKnown.MEASURED, False, Hiding.GUESSED),
    ],
)
def test_hiding_by_kind(how: HowKnown, read: bool | None, hiding: Hiding) -> None:  # noqa: FBT001
    """Where no card is told of, the kind of knowledge decides."""
    assert hiding_of(replace(BLUE, how_known=how, hiding_read=read)) is hiding


def test_a_mix_hides_as_surely_as_its_least_known_paint() -> None:
    """One guess makes a guess of the whole."""
    read: Paint = replace(BLUE, hiding_read=True)
    assert hiding_of(read, WHITE) is Hiding.STATED
    assert hiding_of(read, replace(WHITE, hiding_read=False)) is Hiding.GUESSED


def test_a_paint_of_the_same_colour_tells_nothing() -> None:
    """Where another of its own colour is all there is beside it, a paint is as if it stood alone.

    Whatever is not known of two paints of one colour, half and half they have that colour.
    """
    paint = fitted((BLUE.id,), PHOTO, alone=True).paints[0]
    twin = replace(paint, id="twin")
    alone = likely_errors(Shelf("mine", (paint,)), paint)
    beside = likely_errors(Shelf("mine", (paint, twin)), paint)
    assert beside.crossing is None
    assert beside.off == alone.off
