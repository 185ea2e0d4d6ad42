"""A paint put on the shelf by hand, changed there, and taken off again."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from swatchwright.acts.jobs import open_jobs, undo
from swatchwright.acts.known import Grade, Hiding, known_of
from swatchwright.acts.own_paint import (
    MOST_TINS,
    ColourFrom,
    add_paint,
    change_paint,
    paint_by_hand,
)
from swatchwright.acts.sitting import Card, Sitting, new_tin, with_reading
from swatchwright.acts.sitting_fit import fit_sitting
from swatchwright.acts.stock import kept_shelf, put_paints, set_stock, take_demo_shelf
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.paints import Paint, Tin
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab
from unit.shelf.stores import two_paints
from unit.shelf.test_store_rows import assert_same

BLUE = Lab(30, 5, -30)
TINS = (Tin(750, 24.0), Tin(125, 6.5))


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


def blue(**told: object) -> Paint:
    """Make a blue paint by hand, beside the demonstration."""
    asked: dict[str, object] = {"shelf": demo_shelf(), "tins": TINS} | told
    return paint_by_hand("Harbour blue", Family.CHALKY, BLUE, **asked)  # type: ignore[arg-type]


def ids(store: Store) -> list[str]:
    """Give the ids on the shelf."""
    return [stocked.paint.id for stocked in kept_shelf(store).stocked]


def test_it_is_fitted_as_one_card_is() -> None:
    """The paint is the one that a sitting with a single card of this colour gives."""
    tin = new_tin("Harbour blue", Family.CHALKY)
    card = Card("one", ((tin.id, 1.0),))
    read = with_reading(
        Sitting((tin.id,), (tin,), cards=(card,)), 0, BLUE, usually_off=ColourFrom.PHOTO.usually_off
    )
    by_card = fit_sitting(read, demo_shelf()).shelf.paint(tin.id)
    assert_same(blue(usually_off=ColourFrom.PHOTO.usually_off, tins=()), by_card)


def test_the_doubt_is_that_of_how_it_is_known() -> None:
    """By eye is less sure than by a photo, and that than measured; one colour is hardly known."""
    offs = [how.usually_off for how in ColourFrom]
    assert offs == sorted(offs, reverse=True)
    known = []
    for how in ColourFrom:
        paint = blue(usually_off=how.usually_off)
        known.append(known_of(Shelf("mine", (paint,)), paint))
    assert all(one.off is not None for one in known)
    assert [one.off for one in known] == sorted((one.off or 0.0 for one in known), reverse=True)
    assert {one.grade for one in known} == {Grade.HARDLY}
    assert {one.hiding for one in known} == {Hiding.GUESSED}


def test_sizes_stand_in_order() -> None:
    """Several sizes are kept, each with its price, the smallest first."""
    assert blue().tins == (Tin(125, 6.5), Tin(750, 24.0))


@pytest.mark.parametrize(
    ("tins", "says"),
    [
        ((Tin(0.0),), "tin of 0"),
        ((Tin(float("nan")),), "tin of nan"),
        ((Tin(125, -1.0),), "price of \N{MINUS SIGN}1"),
        ((Tin(125), Tin(125, 6.0)), "twice"),
        (tuple(Tin(float(n)) for n in range(1, MOST_TINS + 2)), "too many"),
    ],
)
def test_tins_that_cannot_be(tins: tuple[Tin, ...], says: str) -> None:
    """A size or a price that no tin has, or a size told twice, is refused."""
    with pytest.raises(MendableError, match=says):
        blue(tins=tins)


def test_a_paint_needs_a_name() -> None:
    """A paint of blanks is refused."""
    with pytest.raises(MendableError, match="no name"):
        paint_by_hand("  ", Family.CHALKY, BLUE, shelf=demo_shelf())


def test_it_begins_a_shelf_of_her_own(store: Store) -> None:
    """Beside the demonstration in use, only her paint is kept; undo leaves nothing."""
    changes = add_paint(store, blue(), beside=demo_shelf().paints)
    assert changes.label == "Add “Harbour blue” to the shelf"
    assert ids(store) == ["harbour-blue"]
    undo(store)
    assert ids(store) == []


def test_a_kept_demonstration_is_put_away_and_told(store: Store) -> None:
    """Invented paints that are kept give way, with a word, and one undo brings them back."""
    take_demo_shelf(store)
    changes = add_paint(store, blue())
    assert "24 invented paints" in changes.warnings[0]
    assert ids(store) == ["harbour-blue"]
    undo(store)
    assert len(ids(store)) == 24


def test_paints_of_a_file_stay_beside_it(store: Store) -> None:
    """Paints that are in use from a file are kept with the new one; kept ones stay as they are."""
    add_paint(store, blue(), beside=two_paints())
    assert ids(store) == ["white-clean", "red", "harbour-blue"]
    with pytest.raises(MendableError, match="already"):
        add_paint(store, blue())


def test_name_tins_and_prices_are_changed(store: Store) -> None:
    """Another name and other tins take the place of the old; colour and stock stay; undo works."""
    put_paints(store, two_paints())
    set_stock(store, "red", 340)
    before = kept_shelf(store).stocked[1]
    changes = change_paint(store, "red", name=" Barn  red ", tins=TINS)
    assert changes.label == f"Change “{before.paint.name}” on the shelf"
    after = kept_shelf(store).stocked[1]
    assert (after.paint.name, after.ml_left) == ("Barn red", 340)
    assert after.paint.tins == (Tin(125, 6.5), Tin(750, 24.0))
    assert after.paint.K.tolist() == before.paint.K.tolist()
    assert not change_paint(store, "red", name="Barn red", tins=TINS)
    undo(store)
    assert kept_shelf(store).stocked[1].paint.name == before.paint.name


def test_a_paint_that_is_gone_cannot_be_changed(store: Store) -> None:
    """A paint that is not there, or a name of nothing, is refused."""
    with pytest.raises(MendableError, match="no longer"):
        change_paint(store, "red", name="Red", tins=())
    put_paints(store, two_paints())
    with pytest.raises(MendableError, match="no name"):
        change_paint(store, "red", name="", tins=())
