"""What is said against a way to change a colour, against its own numbers."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.knock_back import Washing, best_washes, film_of_washing
from swatchwright.mixing.mend import Pot, additions, pot_colour
from swatchwright.mixing.wash_risks import (
    Risk,
    RiskKind,
    _turned,
    hue_turn,
    risks_of_stirring,
    risks_of_wash,
)
from swatchwright.paint.clear import AMBER_WAX
from swatchwright.paint.layered import Base, Clear, base_of, look_of
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab
from unit.mixing.shelves import some

DEMO = demo_shelf().paints


def case() -> tuple[Base, Lab, Lab, Washing]:
    """Wash a strong red to half its chroma."""
    base = base_of(mix(stack(some("strong-red-orange")), [[0]], [[1.0]]))
    now = Lab.of(lab_of(look_of(base, []))[0])
    aim = asked_for(now, Asked.LESS_VIVID, 0.5)
    return base, now, aim, best_washes(base, aim, DEMO, keep=1)[0]


def risk(risks: tuple[Risk, ...], kind: RiskKind) -> Risk:
    """Give the one risk of a kind."""
    (found,) = [r for r in risks if r.kind is kind]
    return found


def test_the_sizes_are_those_of_the_reckoning() -> None:
    """Grain, hand and thickening are the differences that the forward reckoning gives."""
    base, now, aim, w = case()
    risks = risks_of_wash(w, base, now, aim)
    between = float(delta_e_2000(w.flat.triple, w.grain.triple))
    assert risk(risks, RiskKind.GRAIN).size == pytest.approx(between)
    film = film_of_washing(w.paints, w.parts, w.water, w.passes, w.left)
    heavy = lab_of(look_of(base, [film], factor=1.5))[0]
    assert risk(risks, RiskKind.WIPING).size == pytest.approx(
        float(delta_e_2000(w.dry.triple, heavy))
    )
    thick = film_of_washing(w.paints, w.parts, 0.75 * w.water, w.passes, w.left)
    dried = lab_of(look_of(base, [thick]))[0]
    assert risk(risks, RiskKind.THICKENING).size == pytest.approx(
        float(delta_e_2000(w.dry.triple, dried))
    )
    assert all(r.words.endswith(".") for r in risks)


def test_under_a_wax_the_sizes_are_those_seen_through_it() -> None:
    """Hand and thickening are told with the wax on; only of the wash is there more."""
    base, over = case()[0], (Clear(AMBER_WAX, grain=1.0),)
    now = Lab.of(lab_of(look_of(base, over))[0])
    aim = asked_for(now, Asked.LESS_VIVID, 0.5)
    w = best_washes(base, aim, DEMO, keep=1, over=over)[0]
    risks = risks_of_wash(w, base, now, aim, over)
    film = film_of_washing(w.paints, w.parts, w.water, w.passes, w.left)
    more = replace(film, thickness=1.5 * np.asarray(film.thickness))
    heavy = lab_of(look_of(base, [more, *over]))[0]
    assert risk(risks, RiskKind.WIPING).size == pytest.approx(
        float(delta_e_2000(w.dry.triple, heavy))
    )


HUE_WORDS = ("redder", "yellower", "greener", "bluer")


@settings(max_examples=60)
@given(
    st.tuples(st.floats(30, 70), st.floats(-45, 45), st.floats(-45, 45)),
    st.tuples(st.floats(-8, 8), st.floats(-8, 8), st.floats(-8, 8)),
)
def test_what_is_said_of_the_hue_agrees(
    start: tuple[float, float, float], off: tuple[float, float, float]
) -> None:
    """That the hue keeps is never said beside an end that is redder, yellower, greener or bluer.

    Nor is a turn told of an end that is said to be where it was asked to be.
    """
    pot = Pot(some("strong-red-orange"), (100.0,))
    now = pot_colour(pot)
    aim = Lab(*start)
    after = Lab(*(a + b for a, b in zip(start, off, strict=True)))
    hue, beside = _turned(now, after, aim)
    if any(word in beside.words for word in HUE_WORDS):
        assert "keeps" not in hue.words
    if "where it was asked" in beside.words:
        assert hue.words == "The hue keeps."


def test_a_batch_that_stood_goes_on_heavier() -> None:
    """Water that has gone moves the colour on, towards the wash (common practice, no source)."""
    base, _, _, w = case()
    start, end = (
        lab_of(look_of(base, [film_of_washing(w.paints, w.parts, water, w.passes, w.left)]))[0]
        for water in (w.water, 0.75 * w.water)
    )
    own = w.own.triple
    assert float(delta_e_2000(end, own)) < float(delta_e_2000(start, own))


@pytest.mark.parametrize(
    ("start", "end", "turn"),
    [
        (Lab(50, 30, 0), Lab(50, 0, 30), 90),
        (Lab(50, 30, -5), Lab(50, 30, 5), 18.9),
        (Lab(50, -30, 1), Lab(50, -30, -1), 3.8),
        (Lab(50, 30, 0), Lab(50, 1, 1), 0),
    ],
)
def test_a_turn_of_hue_goes_the_short_way(start: Lab, end: Lab, turn: float) -> None:
    """It is taken the shorter way round, and is none where there is no hue to speak of."""
    assert hue_turn(start, end) == pytest.approx(turn, abs=0.1)


@pytest.mark.parametrize(
    ("below", "added", "better"),
    [("strong-yellow-green", "white-yellow", True), ("soft-black", "strong-yellow-green", False)],
)
def test_hiding_is_counted_in_coats(below: str, added: str, better: object) -> None:
    """White helps a transparent yellow to hide, and such a yellow weakens a black that hides."""
    one, other = some(below, added)
    pot = Pot((one,), (20.0,))
    aim = pot_colour(Pot((one, other), (20.0, 200.0)))
    risks = risks_of_stirring(pot, additions(pot, aim, (other,), 1000.0), aim)
    hiding = risk(risks, RiskKind.HIDING)
    assert hiding.size is not None
    assert (hiding.size < 0) is better
    assert ("hides better" in hiding.words) is better
    assert ("hides less" in hiding.words) is not better


def test_stirring_is_even_and_for_good() -> None:
    """It leaves no grain, slips with the measure, and stays in the pot."""
    (red,) = some("strong-red-orange")
    pot = Pot((red,), (200.0,))
    aim = asked_for(pot_colour(pot), Asked.LIGHTER, 0.3)
    risks = risks_of_stirring(pot, additions(pot, aim, DEMO, 300.0), aim)
    assert risk(risks, RiskKind.GRAIN).size == 0
    assert "stays in" in risk(risks, RiskKind.UNDOING).words
    measure = risk(risks, RiskKind.MEASURE).size
    assert measure is not None
    assert 0 < measure < 5
