"""Orders of amounts that cannot be are refused, with what would do."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from swatchwright.errors import MendableError
from swatchwright.piece.amounts import amounts_of
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import Coating, Ingredient, Terms
from swatchwright.piece.tins import TinSize
from unit.piece.made import order, paint


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"coatings": ()}, "Nothing is put on"),
        ({"area": 0}, "measures 0"),
        ({"area": float("nan")}, "measures nan"),
        ({"zones": (ZoneArea("body", 1), ZoneArea("body", 2))}, "zone “body” is there twice"),
        ({"products": (paint(), paint())}, "product “paint” is there twice"),
        ({"products": (paint(rate=0),)}, "A litre is said"),
        ({"products": (paint(solids=1.2),)}, "volume solids of 1.2"),
        ({"products": (paint(solids=float("nan")),)}, "volume solids of nan"),
        ({"products": (paint(thinned=-1),)}, "thinned with −1"),
        ({"products": (paint(ingredients=()),)}, "made of nothing"),
        ({"products": (paint(ingredients=(Ingredient("a", "A", 0),)),)}, "share of a"),
        ({"products": (paint(ingredients=(Ingredient("a", "A", left_ml=-1),)),)}, "are left"),
        ({"products": (paint(ingredients=(Ingredient("a", "A"),) * 2),)}, "paint “a”"),
        ({"coatings": (Coating("lid", "paint"),)}, "no zone “lid”"),
        ({"coatings": (Coating("body", "wax"),)}, "no product “wax”"),
        ({"coatings": (Coating("body", "paint", 0),)}, "0 coats"),
        ({"sample_ml": -1}, "for a sample"),
        ({"touch_up": 2}, "touching up"),
        ({"terms": Terms(hours=Decimal(-1))}, "hours are −1"),
        ({"terms": Terms(margin=Decimal("NaN"))}, "margin is NaN"),
        ({"terms": Terms(rate=Decimal("Infinity"))}, "rate for an hour is Infinity"),
        ({"terms": Terms(currency="x" * 20)}, "currency"),
        ({"coatings": (Coating("body", "paint"),) * 500}, "too long"),
    ],
)
def test_what_cannot_be_reckoned(changes: dict[str, Any], told: str) -> None:
    """Each thing that is off is named."""
    with pytest.raises(MendableError, match=told):
        amounts_of(order(**changes))


def test_one_paint_in_two_ways() -> None:
    """A paint that is there twice with other tins is refused rather than guessed at."""
    products = (
        paint("a", ingredients=(Ingredient("white", "White"),)),
        paint("b", ingredients=(Ingredient("white", "White", tins=(TinSize(500),)),)),
    )
    with pytest.raises(MendableError, match="white is there twice"):
        amounts_of(order(products=products, coatings=(Coating("body", "a"), Coating("body", "b"))))
