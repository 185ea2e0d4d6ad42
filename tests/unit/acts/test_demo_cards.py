"""The cards of the demonstration: read off their photo and fitted, they tell of their paints."""

from __future__ import annotations

import json

import numpy as np
import pytest

from swatchwright.acts.card_photo import read_card
from swatchwright.acts.colours import open_photo
from swatchwright.acts.demo_cards import NO_SHELF, DemoCards, demo_cards
from swatchwright.acts.known import Grade, Hiding, hiding_of
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sitting import Sitting, next_unread, with_reading
from swatchwright.acts.sitting_fit import doubts_of, fit_sitting, most_helpful
from swatchwright.colour.difference import delta_e_2000
from swatchwright.shelf.csv_file import demo_shelf


@pytest.fixture(scope="module")
def ours() -> DemoCards:
    """Give the cards."""
    found = demo_cards()
    assert found is not None
    return found


@pytest.fixture(scope="module")
def read(ours: DemoCards) -> Sitting:
    """Give the sitting with each card read off the photo in its box, as she does it."""
    photo, sitting = open_photo(ours.path), ours.sitting
    for number, card in enumerate(sitting.cards):
        box = ours.boxes[card.key]
        colour = read_card(photo, box, grey=ours.grey, reflectance=ours.reflectance)
        sitting = with_reading(sitting, number, colour.lab, usually_off=colour.usually_off)
    return sitting


def test_nothing_is_read_yet(ours: DemoCards) -> None:
    """The sitting holds a white, other paints and a card of black and white, all still to read."""
    assert ours.sitting.white == ours.sitting.ids[0]
    assert len(ours.sitting.new) == len(ours.sitting.ids) == 3
    assert ours.sitting.ground
    assert next_unread(ours.sitting) == 0
    assert set(ours.boxes) == {card.key for card in ours.sitting.cards}


def test_cards_are_numbered_as_in_the_photo(ours: DemoCards) -> None:
    """The order of the sitting is that of the file of facts, whose numbers are on the cards."""
    rows = json.loads((ours.path.parent / "truth.json").read_text("utf-8"))["cards"][0]["cards"]
    told = [(tuple((id_, parts) for id_, parts in row["mix"]), row["over"]) for row in rows]
    assert told == [(card.mix, card.over) for card in ours.sitting.cards]


def test_read_off_the_photo(ours: DemoCards, read: Sitting) -> None:
    """Half of the cards are read within the usual error of a photo with a grey card, 5.5.

    Their true colours were worked out by colour-science (docs/accuracy.md has the 5.5).
    """
    rows = json.loads((ours.path.parent / "truth.json").read_text("utf-8"))["cards"][0]["cards"]
    offs = [
        delta_e_2000(card.lab.triple, row["lab_d65_2deg"])
        for card, row in zip(read.cards, rows, strict=True)
        if card.lab is not None
    ]
    assert len(offs) == len(rows)
    assert np.median(offs) < 5.5
    assert max(offs) < 12


def test_fit_tells_of_the_paints(read: Sitting) -> None:
    """The fitted paints mix as the invented ones do, within what is said, and hiding is read."""
    found = fit_sitting(read, NO_SHELF)
    assert {fit.paint.id for fit in found.fits} == set(read.ids)
    assert {hiding_of(fit.paint) for fit in found.fits} == {Hiding.READ}
    for doubt in doubts_of(found, NO_SHELF):
        assert doubt.before is None
        assert doubt.after is not None
    for fit in found.fits:
        assert fit.likely.grade is not Grade.HARDLY
        if fit.paint.id == read.white:
            continue
        mix = [(fit.paint.id, 1.0), (read.white, 3.0)]
        true, made = look_of_mix(demo_shelf(), mix).dry, look_of_mix(found.shelf, mix).dry
        assert delta_e_2000(true.triple, made.triple) < 2 * fit.likely.off.whole


def test_no_card_is_asked_for_twice(read: Sitting) -> None:
    """What would help most is none of the cards that were read; of a white nothing else is left."""
    found = fit_sitting(read, NO_SHELF)
    helpful = most_helpful(found)
    assert helpful is not None
    made = {(card.mix, bool(card.over)) for card in read.cards}
    assert (helpful.next.mix, helpful.next.over_black) not in made
    assert [fit.paint.id for fit in found.fits if fit.next.again] == [read.white]


def test_none_where_they_were_not_installed(monkeypatch: pytest.MonkeyPatch) -> None:
    """Without the sample images there is nothing to try it with, and nothing breaks."""
    monkeypatch.setattr("swatchwright.acts.samples._folders", lambda: ())
    assert demo_cards() is None
