"""Amounts for a piece in the paints of a shelf."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import numpy as np
import pytest

from swatchwright.acts.amounts import Coats, amounts_for, mixed_product, order_of
from swatchwright.errors import MendableError
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import stack
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import ProductKind
from swatchwright.piece.spreading import Ground
from swatchwright.piece.tins import TinSize
from swatchwright.shelf.csv_file import demo_shelf

ZONES = (ZoneArea("body", 2.0), ZoneArea("drawers", 0.5))
BLUE = (("white-clean", 8.0), ("deep-blue-red", 2.0))
CLAY = (("clay-red-muted", 1.0), ("white-clean", 1.0))


def test_a_mixture_covers_as_the_film_says() -> None:
    """A mixture's rate and solids are those of the wet and dry film of the paint layer's model."""
    shelf = demo_shelf()
    made = mixed_product(shelf, BLUE, id_="mix", left={"white-clean": 90})
    paints = tuple(shelf.paint(id_) for id_, _ in BLUE)
    film = mix(stack(paints), [[0, 1]], [[0.8, 0.2]])
    assert 1 / made.rate == pytest.approx(float(np.asarray(film.wet_film).item()))
    assert made.solids == pytest.approx(
        0.8 * paints[0].volume_solids + 0.2 * paints[1].volume_solids
    )
    assert [i.left_ml for i in made.ingredients] == [90, 0]
    assert made.ingredients[0].tins[0] == TinSize(120, Decimal("7.5"))


def test_each_zone_has_its_recipe() -> None:
    """Drawers of their own colour are a batch of their own; each paint is told by zone."""
    order = order_of(ZONES, Coats(), shelf=demo_shelf(), recipes={"": BLUE, "drawers": CLAY})
    found = amounts_for(order)
    by_zone = {row.zone: {p.id: p.ml for p in row.paints} for row in found.coatings}
    assert by_zone["body"].keys() == {"white-clean", "deep-blue-red"}
    assert by_zone["drawers"]["clay-red-muted"] == by_zone["drawers"]["white-clean"]
    assert len(found.batches) == 2
    whites = [p for p in found.purchases if p.id == "white-clean"]
    assert len(whites) == 1


def test_zones_of_one_recipe_share_a_batch() -> None:
    """Two zones in the same colour are mixed once, with one sample."""
    found = amounts_for(order_of(ZONES, Coats(), shelf=demo_shelf(), recipes={"": BLUE}))
    (batch,) = found.batches
    assert batch.sample_ml == 30
    assert batch.need_ml == pytest.approx(sum(row.need_ml for row in found.coatings))


def test_only_the_first_meets_the_ground() -> None:
    """On bare wood the primer drinks, and the paint on it does not."""
    order = order_of(ZONES[:1], Coats(primer=1, wash=1, clear=2, ground=Ground.BARE))
    grounds = [(c.product, c.ground) for c in order.coatings]
    assert grounds == [
        ("primer", Ground.BARE),
        ("body", Ground.PRIMED),
        ("wash", Ground.PAINTED),
        ("clear finish", Ground.PAINTED),
    ]


def test_rates_tins_and_rests_are_taken() -> None:
    """A rate, tin sizes and a rest that are given for a kind or a paint are used."""
    coats = Coats(primer=1, rates={ProductKind.PRIMER: 10.0}, solids=0.5)
    order = order_of(
        ZONES[:1],
        coats,
        tins={"primer": [TinSize(750, Decimal(20))]},
        left={"body": 1000.0},
    )
    found = amounts_for(order)
    primer, paint = found.coatings
    assert primer.wet_um == pytest.approx(100)
    assert paint.dry_um == pytest.approx(0.5 * paint.wet_um)
    bought = {p.id: p for p in found.purchases}
    assert bought["primer"].cost == Decimal("20.00")
    assert bought["body"].tins == ()


def test_paint_alone_or_none_of_it() -> None:
    """Without coats of paint there is only what else is put on."""
    order = order_of(ZONES, Coats(paint=0, clear=1))
    assert [c.product for c in order.coatings] == ["clear finish", "clear finish"]


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ({"recipes": {"lid": BLUE}, "shelf": demo_shelf()}, "no zone “lid”"),
        ({"recipes": {"": BLUE}}, "no shelf"),
        ({"recipes": {"": (("nothing", 1.0),)}, "shelf": demo_shelf()}, "no paint “nothing”"),
        ({"tins": {"wax": [TinSize(1)]}}, "Nothing called “wax”"),
        ({"left": {"wax": 1.0}}, "Nothing called “wax”"),
    ],
)
def test_what_cannot_be_put_together(asked: dict[str, Any], told: str) -> None:
    """A recipe, tins or a rest of what is not there are refused by name."""
    with pytest.raises(MendableError, match=told):
        order_of(ZONES, Coats(), **asked)
