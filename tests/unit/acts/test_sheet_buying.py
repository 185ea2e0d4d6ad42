"""What a sheet tells of the piece: its size, what to buy, what that costs; sums that add up."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from swatchwright.acts.amounts import Coats
from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import keep_document, new_job, open_jobs
from swatchwright.acts.piece_form import PieceForm, form_for
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.sheet import SheetContent, content_of, content_of_mix
from swatchwright.acts.stock import take_demo_shelf
from swatchwright.language.money import use_money
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.order import Terms
from swatchwright.piece.tins import TinSize
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with the demonstration shelf; the money is called by its sign."""
    use_money("€")
    with open_jobs(tmp_path / "store.sqlite") as made:
        take_demo_shelf(made)
        yield made
    use_money("")


def told(store: Store, form: PieceForm) -> SheetContent:
    """Give the sheet of a box in one colour, painted as this form says."""
    id_ = new_job(store, title="Blanket box").jobs[0]
    keep_recipes(store, id_, recipes_for(typed_colour(46, 34, 24), demo_shelf(), keep=1))
    keep_document(store, id_, "piece", common_piece(Kind.BLANKET_BOX))
    keep_document(store, id_, "piece-form", form)
    return content_of(store, id_)


def form(**tins: tuple[TinSize, ...]) -> PieceForm:
    """Give a form of a box with one coat of primer, set by hand."""
    coats = Coats(primer=1)
    return replace(form_for(Kind.BLANKET_BOX), coats=coats, own=("primer",), tins=dict(tins))


def test_the_size(store: Store) -> None:
    """The sizes that were set stand at its head."""
    assert told(store, form()).size == "1000 × 500 × 450 mm"


def test_prices(store: Store) -> None:
    """Each line costs its tins as the shelf prices them; what is not priced is counted."""
    content = told(store, form())
    prices = {
        (paint.name, tin.ml): Decimal(str(tin.price))
        for paint in demo_shelf().paints
        for tin in paint.tins
    }
    total = Decimal(0)
    for line in content.buy:
        tins = re.findall(r"(\d+) × ([\d.]+) (ml|litres?)", line.words)
        sizes = [(int(n), float(ml) * (1 if unit == "ml" else 1000)) for n, ml, unit in tins]
        cost = sum((n * prices[line.name, ml] for n, ml in sizes), Decimal(0))
        assert line.cost == (f"€{cost:.2f}" if sizes else "")
        total += cost
    assert total
    assert content.buy_cost == f"Paint to buy: €{total:.2f}, and 1 whose price is not known"


def test_the_primer(store: Store) -> None:
    """A primer is called by its kind; it is told how large a tin holds it, or which tins are."""
    content = told(store, form())
    line = next(line for line in content.buy if "primer" in line.name)
    assert line.words == f"a tin of {line.ml:.0f} ml or more"
    assert any(f"of {line.name}: " in text for text in content.mixed)
    known = told(store, form(primer=(TinSize(750, Decimal("19.90")),)))
    line = next(line for line in known.buy if "primer" in line.name)
    assert (line.words, line.cost) == ("1 × 750 ml", "€19.90")
    assert "not known" not in known.buy_cost


def test_the_money_of_the_job(store: Store) -> None:
    """A job that was reckoned in a money of its own is told in that."""
    content = told(store, replace(form(), terms=Terms(currency="kr")))
    assert any(line.cost.endswith("kr") for line in content.buy)


def test_without_prices_there_are_none(store: Store) -> None:
    """Where the tins have no price, no line and no sum tells one."""
    kinds: dict[str, tuple[TinSize, ...]]
    kinds = {paint.id: (TinSize(500),) for paint in demo_shelf().paints}
    content = told(store, replace(form(), tins=kinds))
    assert content.buy
    assert not any(line.cost for line in content.buy)
    assert content.buy_cost == ""


def test_sums_as_printed(store: Store) -> None:
    """What a batch is made up of, as it is printed, adds up to the batch."""
    for text in told(store, form()).mixed:
        first, *rest = (float(n) for n in re.findall(r"\d+(?= ml| to | for )", text))
        assert first == sum(rest)


@pytest.mark.parametrize("volume", [11.0, 57.0, 135.0, 280.0, 333.3, 1999.0])
def test_the_pour_as_printed(volume: float) -> None:
    """Three portions and what is held back come to the paint's amount in the table."""
    parts = [("strong-red-orange", 361.0), ("pale-blue-greyish", 96.0)]
    zone = content_of_mix(demo_shelf(), parts, volume=volume).zones[0]
    amounts = [float(n) for text in zone.pour for n in re.findall(r"\d+\.\d", text)]
    first, portion, held = amounts
    assert first + 3 * portion + held == pytest.approx(zone.volume, abs=1e-6)
