"""Whole amounts add up to what is told of them."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.amounts import Coats, amounts_for, order_of
from swatchwright.acts.amounts_whole import made_up, needs_told, poured
from swatchwright.piece.areas import ZoneArea
from swatchwright.shelf.csv_file import demo_shelf


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
