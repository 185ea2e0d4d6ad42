"""A sitting as a value: choosing, cards, readings."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.fit_told import Next
from swatchwright.acts.sitting import (
    Sitting,
    measured_cards,
    new_tin,
    next_unread,
    read_now,
    save_cards,
    with_card_more,
    with_cards,
    with_reading,
)
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Document
from swatchwright.shelf.measured import Measurement, Measurements
from swatchwright.values import Lab

if TYPE_CHECKING:
    from pathlib import Path

DEMO = demo_shelf()
PAIR = Sitting(ids=("clay-red-muted", "white-clean"))
NOTHING = np.zeros(0)


def test_cards_of_a_pair() -> None:
    """The white comes first and by itself; the other by itself and let down with it."""
    sitting = with_cards(PAIR, DEMO)
    assert sitting.white == "white-clean"
    assert sitting.ids == ("white-clean", "clay-red-muted")
    mixes = [dict(card.mix) for card in sitting.cards]
    assert mixes[:2] == [{"white-clean": 1.0}, {"clay-red-muted": 1.0}]
    assert all(set(mix) == {"white-clean", "clay-red-muted"} for mix in mixes[2:])
    assert len(mixes) > 2


def test_a_card_of_black_and_white_adds_coats() -> None:
    """With a card its bare grounds come first, and one coat over both for each paint."""
    sitting = with_cards(replace(PAIR, ground=True), DEMO)
    assert [card.over for card in sitting.cards[:2]] == ["black", "white"]
    assert [card.mix for card in sitting.cards[:2]] == [(), ()]
    over = [(card.mix[0][0], card.over) for card in sitting.cards if card.coats]
    assert len(over) == 4


def test_readings_stay_when_the_choice_grows() -> None:
    """A reading stays with its card when other paints are chosen as well."""
    read = with_reading(with_cards(PAIR, DEMO), 1, Lab(40, 20, 15), usually_off=0.5)
    more = with_cards(replace(read, ids=(*read.ids, "soft-black")), DEMO)
    kept = [card for card in more.cards if card.is_read]
    assert [card.mix for card in kept] == [(("clay-red-muted", 1.0),)]
    assert len(more.cards) > len(read.cards)
    fewer = with_cards(replace(more, ids=PAIR.ids), DEMO)
    assert fewer.cards == read.cards


def test_the_most_useful_card_stays() -> None:
    """A card that was wanted besides stays among the cards, unread, and is added once."""
    sitting = with_cards(PAIR, DEMO)
    wanted = Next("", (("clay-red-muted", 1.0), ("white-clean", 4.0)), False, 2.0, 1.0)
    more = with_card_more(with_card_more(sitting, "clay-red-muted", wanted), "x", wanted)
    assert len(more.cards) == len(sitting.cards) + 1
    assert with_cards(more, DEMO) == more


def test_no_paints_no_cards() -> None:
    """Nothing chosen is told."""
    with pytest.raises(MendableError, match="No paint"):
        with_cards(Sitting(), DEMO)


def test_no_invented_white_for_real_paints() -> None:
    """A new paint by itself is not let down with an invented white that nobody has."""
    tin = new_tin("Harbour blue", Family.SATIN)
    sitting = with_cards(Sitting(ids=(tin.id,), new=(tin,)), DEMO)
    assert [card.mix for card in sitting.cards] == [(("harbour-blue", 1.0),)]


def test_a_new_white() -> None:
    """A white that is new itself can be let down with."""
    white, blue = new_tin("My white", Family.EMULSION), new_tin("Blue", Family.EMULSION)
    sitting = with_cards(Sitting(ids=(blue.id, white.id), new=(blue, white), white=white.id), DEMO)
    assert any(dict(card.mix).keys() == {"blue", "my-white"} for card in sitting.cards)


@given(st.text(max_size=60), st.lists(st.text(max_size=5), max_size=3))
def test_ids_are_new_and_short(name: str, taken: list[str]) -> None:
    """Whatever a paint is called, its id has no spaces or equals signs and is not taken."""
    try:
        tin = new_tin(name, Family.SATIN, taken=taken)
    except MendableError:
        return
    again = new_tin(name, Family.SATIN, taken=[*taken, tin.id])
    assert tin.id
    assert not set(tin.id) & set(" =\t")
    assert tin.id not in taken
    assert again.id not in {*taken, tin.id}


@pytest.mark.parametrize(
    "wrong", [{"tin_ml": -1.0}, {"price": 1e9}, {"volume_solids": 1.2}, {"tin_ml": float("nan")}]
)
def test_impossible_tins(wrong: dict[str, float]) -> None:
    """Numbers that no tin has are refused, with what may be given."""
    with pytest.raises(MendableError, match="Give more than 0"):
        new_tin("Blue", Family.SATIN, **wrong)  # type: ignore[arg-type]


def test_readings_in_turn() -> None:
    """The next unread card is the one after, round to the first; none when all are read."""
    sitting = with_cards(PAIR, DEMO)
    count = len(sitting.cards)
    assert next_unread(sitting) == 0
    last = with_reading(sitting, count - 1, Lab(50, 0, 0))
    assert next_unread(last, count - 2) == 0
    for n in range(count):
        last = with_reading(last, n, Lab(50, 0, 0))
    assert next_unread(last) is None
    assert read_now(last) == count
    assert read_now(with_reading(last, 0, None)) == count - 1


def test_no_colour_of_a_surface() -> None:
    """A colour that no surface has is refused."""
    with pytest.raises(MendableError, match="No surface"):
        with_reading(with_cards(PAIR, DEMO), 0, Lab(120, 0, 0))


def test_measurements_by_number_and_by_order() -> None:
    """Samples go by the number of the card or its id; as many without either, by their order."""
    sitting = with_cards(PAIR, DEMO)
    spectrum = Measurement("2", "2", np.arange(400.0, 701.0, 10), np.full(31, 0.4), None)
    read, count = measured_cards(sitting, Measurements("m", (spectrum,)))
    assert count == 1
    assert read.cards[1].spectrum == pytest.approx((0.4,) * 36)
    assert read.cards[1].colour is not None
    rows = tuple(Measurement(f"S{c}", "", NOTHING, None, Lab(c, 0, 0)) for c in range(10, 14))
    read, count = measured_cards(sitting, Measurements("m", rows[: len(sitting.cards)]))
    assert count == len(sitting.cards)
    assert [card.lab for card in read.cards] == [row.lab for row in rows]
    with pytest.raises(MendableError, match="No sample of m"):
        measured_cards(sitting, Measurements("m", rows[:1]))


def test_kept_as_a_document() -> None:
    """A sitting comes back from a job's document just as it was."""
    tin = new_tin("Harbour blue", Family.SATIN, tin_ml=750, price=24, volume_solids=0.4)
    sitting = with_cards(replace(PAIR, ids=(*PAIR.ids, tin.id), new=(tin,)), DEMO)
    read = with_reading(sitting, 0, Lab(93, 0, 2), usually_off=4.8, read_by="cards.jpg")
    assert Document.of(read).read(Sitting) == read


def test_saving_where_one_cannot(tmp_path: Path) -> None:
    """A list that cannot be written is told."""
    with pytest.raises(MendableError, match="could not be written"):
        save_cards("cards", tmp_path / "nowhere" / "cards.txt")
