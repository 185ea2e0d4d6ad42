"""Fitting the paints of a sitting whose truth is known."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sitting import Card, Sitting, new_tin, with_cards, with_reading
from swatchwright.acts.sitting_fit import doubts_of, fit_sitting, kept_paints, most_helpful
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.mixing.hunt import Stopped
from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

DEMO = demo_shelf()
BLUE, WHITE = "deep-blue-red", "white-clean"


def read_all(sitting: Sitting, *, true: dict[str, str] | None = None) -> Sitting:
    """Read every card without error, by the optics of the demonstration's paints."""
    names = true or {}
    for n, card in enumerate(sitting.cards):
        mix = [(names.get(id_, id_), part) for id_, part in card.mix]
        sitting = with_reading(sitting, n, look_of_mix(DEMO, mix).dry, usually_off=0.5)
    return sitting


def test_new_paints_come_out_right() -> None:
    """A new blue and a new white predict a let-down that was not read, and have their tins."""
    white = new_tin("My white", Family.CHALKY, tin_ml=1000, price=30)
    blue = new_tin("My blue", Family.SATIN, tin_ml=250)
    ids = (white.id, blue.id)
    sitting = with_cards(Sitting(ids=ids, new=(white, blue), white=white.id), DEMO)
    found = fit_sitting(read_all(sitting, true={ids[0]: WHITE, ids[1]: BLUE}), DEMO)
    assert {paint.id for paint in kept_paints(found)} == set(ids)
    mine = look_of_mix(found.shelf, [(ids[1], 1), (ids[0], 4)]).dry
    right = look_of_mix(DEMO, [(BLUE, 1), (WHITE, 4)]).dry
    assert delta_e_2000(mine.triple, right.triple) < 2
    tins = {paint.id: paint.tins for paint in found.shelf.paints}
    assert [(tin.ml, tin.price) for tin in tins[white.id]] == [(1000, 30)]
    assert [(tin.ml, tin.price) for tin in tins[blue.id]] == [(250, None)]


def test_a_guessed_paint_is_known_better() -> None:
    """The doubt of a guessed paint shrinks, and the card that helps most is a new one."""
    shelf = Shelf(
        "mine", tuple(replace(DEMO.paint(i), how_known=HowKnown.GUESSED) for i in (WHITE, BLUE))
    )
    sitting = read_all(with_cards(Sitting(ids=(WHITE, BLUE)), shelf))
    found = fit_sitting(sitting, shelf)
    for doubt in doubts_of(found, shelf):
        assert doubt.before is not None
        assert doubt.after is not None
        assert doubt.after < doubt.before
    helpful = most_helpful(found)
    assert helpful is not None
    assert helpful.next.mix not in [card.mix for card in sitting.cards] or helpful.next.over_black


def test_cards_are_counted_as_they_were_brushed() -> None:
    """Each card that was read and holds a paint counts for it.

    The blue is alone, 1 : 1 and 1 : 10 with the white, and in a coat over black and one over white;
    the white too is alone, twice let down with, and in two coats.
    """
    sitting = with_cards(Sitting(ids=(WHITE, BLUE), white=WHITE, ground=True), DEMO)
    for n, card in enumerate(sitting.cards):
        if card.mix:
            sitting = with_reading(sitting, n, look_of_mix(DEMO, card.mix).dry, usually_off=0.5)
    cards = {fit.paint.id: fit.cards for fit in fit_sitting(sitting, DEMO).fits}
    assert cards == {WHITE: 5, BLUE: 5}


def test_a_plain_card_read_wrongly_is_not_told_of_parts() -> None:
    """Of a card of one paint no parts are spoken of; it is named by its number, with how far."""
    tin = new_tin("Off white", Family.CHALKY)
    card = Card("one", ((tin.id, 1.0),))
    read = with_reading(
        Sitting((tin.id,), (tin,), cards=(card,)), 0, Lab(95, 0, 2), usually_off=10.0
    )
    notes = " ".join(fit_sitting(read, Shelf("mine", ())).notes)
    assert "the paint on it gives: card 1 (off by " in notes
    assert "parts" not in notes


def test_nothing_read() -> None:
    """With no card read it is said what is needed."""
    with pytest.raises(MendableError, match="No card"):
        fit_sitting(with_cards(Sitting(ids=(WHITE,)), DEMO), DEMO)


def test_contradiction_names_the_card() -> None:
    """Cards that contradict each other are named by their numbers, not by ids."""
    sitting = read_all(with_cards(Sitting(ids=(WHITE, BLUE)), DEMO))
    wrong = with_reading(sitting, len(sitting.cards) - 1, Lab(12, 0, 0), usually_off=0.5)
    with pytest.raises(MendableError) as caught:
        fit_sitting(wrong, DEMO)
    assert f"card {len(sitting.cards)}" in str(caught.value)
    assert BLUE not in str(caught.value)


def test_progress_and_stop() -> None:
    """The share done rises to its end, and asked to stop the fit gives up."""
    sitting = read_all(with_cards(Sitting(ids=(WHITE, BLUE)), DEMO))
    told: list[float] = []
    fit_sitting(sitting, DEMO, progress=told.append)
    assert told == sorted(told)
    assert 0 <= told[0] < 0.5 <= told[-1] <= 1
    with pytest.raises(Stopped):
        fit_sitting(sitting, DEMO, stopped=lambda: True)
