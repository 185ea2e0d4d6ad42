"""Whole amounts add up to what is told of them."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.amounts import Coats, amounts_for, order_of
from swatchwright.acts.amounts_whole import bought_told, made_up, needs_told, poured, pours_told
from swatchwright.acts.recipes import amounts_for as ml_of
from swatchwright.acts.recipes import recipes_for, typed_colour, with_volume
from swatchwright.acts.sheet_form import BenchMix, SheetForm, sheet_of_mix
from swatchwright.mixing.pour import Pour
from swatchwright.piece.areas import ZoneArea
from swatchwright.shelf.csv_file import demo_shelf

FOUND = recipes_for(typed_colour(46, 34, 24), demo_shelf(), keep=1)


@given(
    st.lists(st.floats(0.01, 12), min_size=1, max_size=4),
    st.floats(0, 200),
    st.floats(0, 1),
    st.floats(0.05, 0.95),
)
def test_they_add_up(areas: list[float], sample: float, touch_up: float, share: float) -> None:
    """Of any piece, what is told of a batch adds up to it, none a whole ml from what it is."""
    zones = [ZoneArea(f"zone {i}", area) for i, area in enumerate(areas)]
    recipe = (("strong-red-orange", share), ("white-clean", 1 - share))
    order = order_of(
        zones,
        Coats(primer=1, wash=1),
        shelf=demo_shelf(),
        recipes={"": recipe},
        sample_ml=sample,
        touch_up=touch_up,
    )
    found = amounts_for(order)
    needs = needs_told(found)
    bought = bought_told(found)
    assert set(bought) == {purchase.id for purchase in found.purchases}
    all_poured = [ml for batch in found.batches for ml in poured(batch)[: len(batch.paints)]]
    assert sum(bought.values()) == sum(all_poured)
    for batch in found.batches:
        told, rest = made_up(batch), poured(batch)
        assert told.need + told.sample + told.touch_up + told.rounding == batch.mix_ml
        assert sum(rest) == batch.mix_ml
        assert abs(told.need - batch.need_ml) < 1
        assert all(abs(a - p.ml) < 1.1 for a, p in zip(rest, batch.paints, strict=False))
        rows = [i for i, row in enumerate(found.coatings) if row.product == batch.product]
        assert sum(needs[i] for i in rows) == told.need
        assert all(abs(needs[i] - found.coatings[i].need_ml) < 2 for i in rows)
        assert all(ml == round(ml) for ml in (*rest, *needs))


@given(st.integers(10, 20_000), st.integers(0, 20_000))
def test_what_is_poured_in_turn_adds_up_to_the_tenth(last: int, first: int) -> None:
    """Three like portions and what is held back are all there is, each a tenth of a ml or more."""
    red, white = demo_shelf().paint("strong-red-orange"), demo_shelf().paint("white-clean")
    ml = last / 10
    pours = [Pour(white, first / 10), *[Pour(red, 0.3 * ml)] * 3, Pour(red, 0.1 * ml, True)]
    told = pours_told(pours)
    assert [p.paint for p in told] == [p.paint for p in pours]
    tenths = [round(10 * p.ml) for p in told]
    assert all(abs(10 * p.ml - n) < 1e-9 for p, n in zip(told, tenths, strict=True))
    assert tenths[0] == first
    assert tenths[1] == tenths[2] == tenths[3] <= 3 * last / 10
    assert sum(tenths[1:]) == last
    assert tenths[4] >= last / 10 - 1e-9


@given(st.integers(200, 20_000))
def test_bench_and_sheet_pour_alike(tenths: int) -> None:
    """What the card of a mix says to pour is what its sheet says, at any volume."""
    found = with_volume(FOUND, tenths / 10)
    card = found.recipes[0].pours
    sheet = sheet_of_mix(BenchMix(found, demo_shelf()), SheetForm()).zones[0]
    numbers = [float(n) for n in re.findall(r"\d+\.\d(?= ml)", " ".join(sheet.pour))]
    assert numbers == [p.ml for p in (*card[:-4], *card[-2:])]
    assert [a.ml for a in ml_of(found.recipes[0].recipe, tenths / 10)] == [
        paint.ml for paint in sheet.paints
    ]
