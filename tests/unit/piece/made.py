"""Pieces and orders to test with."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import (
    AmountsOrder,
    Coating,
    Ingredient,
    Product,
    ProductKind,
    Terms,
)
from swatchwright.piece.part import Axes, Face, Part, Piece, Shape, Spot
from swatchwright.piece.tins import TinSize
from swatchwright.piece.work.order import Age, FinishKind, PlanOrder, Surface, Which

ALL_ROUND = (Which.UNDERSIDE, Which.FRONT, Which.SIDES, Which.TOP)


def panel(name: str = "panel", **changes: Any) -> Part:
    """Give a panel of 500 by 300 by 20 mm, its outside painted."""
    return replace(Part(name, Shape.PANEL, 500, 300, 20, painted=(Face.OUTSIDE,)), **changes)


def cube(name: str, x: float, y: float, z: float, size: float = 100) -> Part:
    """Give a painted block with its left, lower, front corner at a place."""
    return Part(
        name,
        Shape.RAIL,
        size,
        size,
        size,
        painted=(Face.ROUND, Face.HEAD),
        spots=(Spot(x, y, z, Axes.XYZ),),
    )


def piece(*parts: Part) -> Piece:
    """Give a piece of these parts."""
    return Piece("test piece", parts)


def paint(id_: str = "paint", **changes: Any) -> Product:
    """Give a paint of one tin: 12 m2 a litre."""
    return replace(Product(id_, ProductKind.PAINT, (Ingredient(id_, id_),)), **changes)


def order(area: float = 2.4, **changes: Any) -> AmountsOrder:
    """Give an order of two coats of one paint on one zone."""
    made = AmountsOrder((ZoneArea("body", area),), (paint(),), (Coating("body", "paint"),))
    return replace(made, **changes)


def full_order() -> AmountsOrder:
    """Give an order in which every field says something."""
    tins = (TinSize(120, Decimal("7.50")), TinSize(500, Decimal(19)), TinSize(1000))
    mixed = Product(
        "mix",
        ProductKind.PAINT,
        (Ingredient("white", "White", 2, tins, 100), Ingredient("blue", "Blue", 1, tins[:2])),
        13.0,
        0.4,
    )
    wash = Product("wash", ProductKind.WASH, (Ingredient("grey", "Grey"),), 14, 0.35, 3.0)
    return AmountsOrder(
        (ZoneArea("body", 2.4), ZoneArea("top", 0.6)),
        (mixed, wash),
        (Coating("body", "mix"), Coating("top", "mix", 3), Coating("top", "wash", 1)),
        terms=Terms(Decimal(8), Decimal("31.5"), Decimal("0.2"), "crowns"),
    )


def work(**changes: Any) -> PlanOrder:
    """Give the order of a plan for a table of bare wood, from a Tuesday on."""
    made = PlanOrder("table", "2026-12-01", surface=Surface.RAW, age=Age.RECENT)
    return replace(made, **changes)


def full_work() -> PlanOrder:
    """Give the order of a plan in which every kind of thing is done."""
    return work(
        repairs=True,
        stain_block=True,
        washes=1,
        finish=FinishKind.WAX,
        faces=ALL_ROUND,
    )
