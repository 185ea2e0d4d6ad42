"""What is to be reckoned: which products go on which zones, and what is left of them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from swatchwright.language import mark
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.spreading import Ground, Tool
from swatchwright.piece.tins import TinSize

__all__ = ["AmountsOrder", "Coating", "Ingredient", "Product", "ProductKind", "Terms"]


class ProductKind(StrEnum):
    """What a product is for."""

    PRIMER = mark("primer")
    PAINT = mark("paint")
    WASH = mark("wash")
    CLEAR = mark("clear finish")


@dataclass(frozen=True, slots=True)
class Ingredient:
    """A paint of a product that is mixed, or the product itself as it is bought.

    Parameters
    ----------
    id, name
        Of the paint, as on the shelf.
    share
        Of the mixture's volume; only proportions count.
    tins
        Sizes sold; empty where it is not known.
    left_ml
        What is left of it on the shelf, ml.
    """

    id: str
    name: str
    share: float = 1.0
    tins: tuple[TinSize, ...] = ()
    left_ml: float = 0.0


@dataclass(frozen=True, slots=True)
class Product:
    """Something that is put on, from one tin or mixed of two or three paints.

    Parameters
    ----------
    id
        Short name, different for each.
    kind
        What it is for.
    ingredients
        What it is made of, at least one.
    rate
        m2 per litre and coat, as it is put on.
    solids
        Volume solids, 0-1, before it is thinned.
    thinned
        Volume of water or thinner to one of paint, 0 or more.
    """

    id: str
    kind: ProductKind
    ingredients: tuple[Ingredient, ...]
    rate: float = 12.0
    solids: float = 0.38
    thinned: float = 0.0


@dataclass(frozen=True, slots=True)
class Coating:
    """A product on a zone: how many coats, on what, with what tool."""

    zone: str
    product: str
    coats: int = 2
    ground: Ground = Ground.PAINTED
    tool: Tool = Tool.BRUSH


@dataclass(frozen=True, slots=True)
class Terms:
    """What the painter asks of a client.

    Parameters
    ----------
    hours
        Of work.
    rate
        Money for an hour.
    margin
        Share put on top of work and materials, 0.15 for 15 %.
    currency
        What the money is called, in the painter's own word; it is only printed.
    """

    hours: Decimal = Decimal(0)
    rate: Decimal = Decimal(0)
    margin: Decimal = Decimal(0)
    currency: str = ""


@dataclass(frozen=True, slots=True)
class AmountsOrder:
    """All that amounts are reckoned from.

    Parameters
    ----------
    zones
        Colour zones and their areas, m2.
    products
        What is put on.
    coatings
        On which zone.
    sample_ml
        Mixed on top of each paint and wash for a sample to dry and keep, ml.
    touch_up
        Share of the need that is mixed on top for touching up.
    terms
        For a price to the client.
    """

    zones: tuple[ZoneArea, ...]
    products: tuple[Product, ...]
    coatings: tuple[Coating, ...]
    sample_ml: float = 30.0
    touch_up: float = 0.1
    terms: Terms = Terms()
