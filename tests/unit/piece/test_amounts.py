"""Amounts by zone, by batch and by tin, against arithmetic worked by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.piece.amounts import amounts_of
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import Coating, Ingredient, ProductKind, Terms
from swatchwright.piece.spreading import Ground, Tool, loss
from swatchwright.piece.tins import TinSize
from unit.piece.made import full_order, order, paint


def test_a_worked_amount() -> None:
    """2.4 m2 twice at 12 m2 a litre are 400 ml; a brush that keeps 5 % makes 421.05 ml."""
    (row,) = amounts_of(order()).coatings
    assert row.laid_ml == pytest.approx(400)
    assert row.need_ml == pytest.approx(400 / 0.95)
    assert (row.wet_um, row.dry_um) == pytest.approx((83.333, 31.667), abs=1e-3)


def test_a_loss_is_a_share_of_what_is_used() -> None:
    """A loss of 20 % of what leaves the tin makes 400 ml 500, not 480; here a spray's 35 %."""
    (row,) = amounts_of(order(coatings=(Coating("body", "paint", tool=Tool.SPRAY),))).coatings
    assert row.need_ml * (1 - loss(Tool.SPRAY)) == pytest.approx(row.laid_ml)
    assert row.need_ml == pytest.approx(400 / 0.65)


def test_bare_wood_drinks_once() -> None:
    """On bare wood the first of two coats goes 0.8 as far: 200/0.8 + 200 ml."""
    coatings = (Coating("body", "paint", ground=Ground.BARE),)
    assert amounts_of(order(coatings=coatings)).coatings[0].laid_ml == pytest.approx(450)


def test_a_batch_is_told_in_its_parts() -> None:
    """A batch is the need, 30 ml for a sample, a tenth to touch up, up to the next 5 ml."""
    (batch,) = amounts_of(order()).batches
    assert (batch.sample_ml, batch.touch_up_ml) == pytest.approx((30, 42.105), abs=1e-3)
    told = batch.need_ml + batch.sample_ml + batch.touch_up_ml + batch.rounding_ml
    assert batch.mix_ml == pytest.approx(told) == 495


def test_primer_is_not_sampled() -> None:
    """Of what has no colour to keep, nothing is added for a sample or to touch up."""
    primer = paint(kind=ProductKind.PRIMER)
    (batch,) = amounts_of(order(products=(primer,))).batches
    assert (batch.sample_ml, batch.touch_up_ml) == (0, 0)


def test_water_of_a_wash_is_not_bought() -> None:
    """Of a wash of three parts water a quarter is paint."""
    wash = paint(kind=ProductKind.WASH, thinned=3.0)
    found = amounts_of(order(products=(wash,)))
    (batch,), (purchase,) = found.batches, found.purchases
    assert batch.thinner_ml == pytest.approx(0.75 * batch.mix_ml)
    assert purchase.need_ml == pytest.approx(0.25 * batch.mix_ml, abs=0.05)


@given(st.lists(st.floats(0.05, 20), min_size=1, max_size=4), st.integers(1, 4))
def test_nothing_is_lost_between_zone_and_tin(areas: list[float], coats: int) -> None:
    """Zones add up to batches and ingredients to their mixture, to a tenth of a ml each."""
    made = full_order()
    zones = tuple(ZoneArea(f"z{i}", area) for i, area in enumerate(areas))
    coatings = tuple(Coating(zone.zone, "mix", coats) for zone in zones)
    found = amounts_of(replace(made, zones=zones, coatings=coatings))
    (batch,) = found.batches
    assert batch.need_ml == pytest.approx(sum(row.need_ml for row in found.coatings))
    for row in found.coatings:
        total = sum(p.ml for p in row.paints)
        assert total == pytest.approx(row.need_ml - row.thinner_ml, abs=0.051)
        assert row.paints[0].ml == pytest.approx(total * 2 / 3, abs=0.11)
    assert sum(p.ml for p in batch.paints) == pytest.approx(batch.mix_ml, abs=0.051)
    for purchase in found.purchases:
        bought = sum(t.count * t.size.ml for t in purchase.tins)
        assert purchase.left_ml + bought + purchase.short_ml >= purchase.need_ml - 1e-6


def test_what_is_left_is_used_first() -> None:
    """With 500 ml on the shelf nothing is bought, and it costs nothing."""
    stocked = paint(
        ingredients=(Ingredient("paint", "Paint", 1, (TinSize(500, Decimal(9)),), 500),)
    )
    (purchase,) = amounts_of(order(products=(stocked,))).purchases
    assert (purchase.tins, purchase.cost) == ((), Decimal(0))


def priced(price: Decimal | None) -> Ingredient:
    """Give the paint in tins of half a litre."""
    return Ingredient("paint", "Paint", 1, (TinSize(500, price),))


def test_a_worked_price() -> None:
    """8 h at 31.50 are 252.00; with 19.00 of paint and 20 % on both, 325.20."""
    terms = Terms(Decimal(8), Decimal("31.5"), Decimal("0.2"), "crowns")
    found = amounts_of(order(products=(paint(ingredients=(priced(Decimal(19)),)),), terms=terms))
    assert found.price is not None
    assert (found.price.labour, found.price.materials) == (Decimal("252.00"), Decimal("19.00"))
    assert found.price.total == Decimal("325.20")
    assert found.price.currency == "crowns"


def test_no_price_is_made_up() -> None:
    """Without the price of a tin there is none for the client, and a note says why."""
    terms = Terms(Decimal(8), Decimal(30))
    found = amounts_of(order(products=(paint(ingredients=(priced(None),)),), terms=terms))
    assert found.price is None
    assert found.purchases[0].cost is None
    assert any("no price for the client" in note for note in found.notes)


def test_money_is_exact() -> None:
    """Three tins at 0.10 cost 0.30, which binary fractions would not give."""
    stock = Ingredient("paint", "Paint", 1, (TinSize(200, Decimal("0.1")),))
    (purchase,) = amounts_of(order(products=(paint(ingredients=(stock,)),))).purchases
    assert purchase.cost == Decimal("0.30")


def test_a_paint_in_two_mixtures_is_bought_once() -> None:
    """White in two mixtures is one row, with the need of both."""
    white = Ingredient("white", "White", 1, (TinSize(500),))
    mixtures = (
        paint("a", ingredients=(white, Ingredient("red", "Red"))),
        paint("b", ingredients=(white,)),
    )
    coatings = (Coating("body", "a"), Coating("body", "b"))
    found = amounts_of(order(products=mixtures, coatings=coatings))
    bought = {purchase.id: purchase.need_ml for purchase in found.purchases}
    assert bought["white"] == pytest.approx(495 / 2 + 495, abs=0.1)
    assert list(bought) == ["white", "red"]
