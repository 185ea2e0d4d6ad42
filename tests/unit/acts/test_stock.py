"""The shelf of the store: its paints, what is left of each, and invented ones kept apart."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.jobs import open_jobs, undo
from swatchwright.acts.stock import (
    ShelfKind,
    add_stock,
    draw_stock,
    export_shelf,
    import_shelf,
    keep_times,
    kept_shelf,
    put_paints,
    remove_paints,
    set_stock,
    take_demo_shelf,
)
from swatchwright.errors import MendableError
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf, save_demo_shelf
from swatchwright.shelf.store.store import Store
from unit.shelf.files import csv_text, row
from unit.shelf.stores import two_paints
from unit.shelf.test_store_rows import assert_same


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


def ids(store: Store) -> list[str]:
    """Give the ids on the shelf."""
    return [stocked.paint.id for stocked in kept_shelf(store).stocked]


def test_an_empty_shelf_takes_the_demonstration(store: Store) -> None:
    """A new store has no paints; the invented ones are taken on asking and said to be invented."""
    assert kept_shelf(store).kind is ShelfKind.EMPTY
    changes = take_demo_shelf(store)
    assert "invented" in changes.warnings[0]
    kept = kept_shelf(store)
    assert kept.kind is ShelfKind.DEMO
    for one, two in zip(demo_shelf().paints, kept.shelf.paints, strict=True):
        assert_same(one, two)
    with pytest.raises(MendableError, match="already"):
        take_demo_shelf(store)
    undo(store)
    assert kept_shelf(store).kind is ShelfKind.EMPTY


def test_real_paints_put_the_demonstration_away(store: Store) -> None:
    """When real paints come the invented ones go, which is said and can be undone."""
    take_demo_shelf(store)
    changes = put_paints(store, two_paints())
    assert "24 invented paints" in changes.warnings[0]
    assert ids(store) == ["white-clean", "red"]
    assert kept_shelf(store).kind is ShelfKind.OWN
    undo(store)
    assert len(ids(store)) == 24


def test_invented_paints_do_not_come_among_real_ones(store: Store, tmp_path: Path) -> None:
    """The demonstration's file brought in beside real paints is refused, unless it replaces all."""
    put_paints(store, two_paints())
    save_demo_shelf(tmp_path / "demo.csv")
    with pytest.raises(MendableError, match="invented"):
        import_shelf(store, tmp_path / "demo.csv")
    assert ids(store) == ["white-clean", "red"]
    import_shelf(store, tmp_path / "demo.csv", replace_all=True)
    assert kept_shelf(store).kind is ShelfKind.DEMO


def test_a_shelf_file_is_merged(store: Store, tmp_path: Path) -> None:
    """Paints of the same id are replaced and keep their stock; others are added or stay."""
    put_paints(store, two_paints())
    set_stock(store, "red", 300)
    path = tmp_path / "more.csv"
    path.write_text(csv_text([row("red", 9.0), row("blue")]), encoding="utf-8")
    changes = import_shelf(store, path)
    assert changes.paints == ("red", "blue")
    assert ids(store) == ["white-clean", "red", "blue"]
    red = kept_shelf(store).stocked[1]
    assert red.ml_left == 300
    assert red.paint.K[10] == 9.0
    assert not import_shelf(store, path), "the same once more changes nothing"
    assert import_shelf(store, path, replace_all=True).paints == ("white-clean",)


def test_what_was_assumed_of_a_file_is_said(store: Store, tmp_path: Path) -> None:
    """Notes of reading a shelf file come with what was changed."""
    path = tmp_path / "odd.csv"
    path.write_text(csv_text([row("red", family="velvet")]), encoding="utf-8")
    assert "velvet" in import_shelf(store, path).warnings[0]


def test_the_shelf_goes_out_and_comes_back(store: Store, tmp_path: Path) -> None:
    """A shelf file written from the store brings the same paints into another."""
    put_paints(store, two_paints())
    written = export_shelf(store, tmp_path / "mine.csv")
    assert written[0] == tmp_path / "mine.csv"
    with open_jobs(tmp_path / "other.sqlite") as other:
        import_shelf(other, written[0])
        for one, two in zip(two_paints(), kept_shelf(other).shelf.paints, strict=True):
            assert_same(one, two)


def test_an_empty_shelf_is_not_written(store: Store, tmp_path: Path) -> None:
    """There is nothing to write, and that is said."""
    with pytest.raises(MendableError, match="no paints"):
        export_shelf(store, tmp_path / "mine.csv")


def test_stock_is_set_added_to_and_drawn(store: Store) -> None:
    """What is left is what was set, plus what was added, less what was drawn."""
    put_paints(store, two_paints())
    set_stock(store, "red", 100)
    assert add_stock(store, "red", 750).paints == ("red",)
    draw_stock(store, "red", 0.5)
    assert kept_shelf(store).stocked[1].ml_left == 849.5
    add_stock(store, "white-clean", 500)
    assert kept_shelf(store).stocked[0].ml_left == 500
    set_stock(store, "red", None)
    assert kept_shelf(store).stocked[1].ml_left is None


def test_stock_that_cannot_be(store: Store) -> None:
    """More than is left, less than nothing, and a paint that is not there are refused."""
    with pytest.raises(MendableError, match="empty"):
        set_stock(store, "red", 1)
    put_paints(store, two_paints())
    with pytest.raises(MendableError, match="not known how much"):
        draw_stock(store, "red", 1)
    set_stock(store, "red", 10)
    with pytest.raises(MendableError, match="Only 10 ml"):
        draw_stock(store, "red", 11)
    for act, ml in ((set_stock, -1), (set_stock, float("nan")), (set_stock, 1e9)):
        with pytest.raises(MendableError, match="cannot be"):
            act(store, "red", ml)
    for ml in (0, -1, float("inf")):
        with pytest.raises(MendableError, match="cannot be"):
            add_stock(store, "red", ml)
    with pytest.raises(MendableError, match="such as"):
        set_stock(store, "rde", 1)
    assert kept_shelf(store).stocked[1].ml_left == 10


def test_paints_are_taken_off(store: Store) -> None:
    """A paint goes from the shelf and comes back by undo, in its place."""
    put_paints(store, two_paints())
    remove_paints(store, ("white-clean",))
    assert ids(store) == ["red"]
    undo(store)
    assert ids(store) == ["white-clean", "red"]
    with pytest.raises(MendableError, match="nowhere"):
        remove_paints(store, ("red", "nowhere"))
    assert ids(store) == ["white-clean", "red"]


def test_times_from_the_tin_are_kept(store: Store) -> None:
    """What the tin says of times is kept with the paint, and survives the paint's replacement."""
    put_paints(store, two_paints())
    keep_times(store, "red", {"recoat_hours": 4}, schema=2)
    put_paints(store, (replace(two_paints()[1], how_known=HowKnown.MEASURED),))
    times = kept_shelf(store).stocked[1].times
    assert times is not None
    assert (times.schema, times.read(dict[str, int])) == (2, {"recoat_hours": 4})


def test_a_paint_that_cannot_be_is_refused(store: Store) -> None:
    """A paint of impossible numbers does not come onto the shelf."""
    white, red = two_paints()
    with pytest.raises(MendableError, match="Red"):
        put_paints(store, (white, replace(red, K=red.K * -1)))
    assert ids(store) == []
