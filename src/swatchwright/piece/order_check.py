"""Whether an order of amounts can be, said in words that tell what to mend."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.piece.check import checked_zone
from swatchwright.piece.order import AmountsOrder, Coating, Product, Terms
from swatchwright.piece.spreading import wet_film
from swatchwright.piece.tins import MOST_ML

__all__ = ["checked_order"]

_MOST_AREA = 1000.0
_MOST_COATS = 20
_MOST_ZONES = 40
_MOST_MONEY = Decimal(1_000_000)


def checked_order(order: AmountsOrder) -> AmountsOrder:
    """Give an order back if it can be.

    Raises
    ------
    MendableError
        If a number is out of bounds, a name is missing or comes twice, or nothing is put on.
    """
    if not order.coatings:
        raise MendableError("Nothing is put on.", "Give at least one coat of something.")
    if max(len(order.zones), len(order.products), len(order.coatings)) > 10 * _MOST_ZONES:
        raise MendableError("The order is too long.", f"Keep to {_MOST_ZONES} zones or so.")
    _each_once("zone", [zone.zone for zone in order.zones])
    _each_once("product", [product.id for product in order.products])
    for zone in order.zones:
        checked_zone(zone.zone)
        if not (isfinite(zone.area) and 0 < zone.area <= _MOST_AREA):
            raise MendableError(
                f"The zone “{zone.zone}” measures {zone.area:g} m².",
                f"Give an area above 0, up to {_MOST_AREA:g} m².",
            )
    for product in order.products:
        _check_product(product)
    for coating in order.coatings:
        _check_coating(coating, order)
    _check_margins(order)
    _check_terms(order.terms)
    return order


def _each_once(what: str, names: Sequence[str]) -> None:
    twice = [name for name in names if names.count(name) > 1]
    if twice:
        raise MendableError(f"The {what} “{twice[0]}” is there twice.", "Give each its own name.")


def _check_product(product: Product) -> None:
    wet_film(product.rate)
    if not 0 < product.solids <= 1:
        raise MendableError(
            f"{product.id} has volume solids of {product.solids:g}.",
            "Give a share above 0 and up to 1, as 0.38.",
        )
    if not 0 <= product.thinned <= 50:
        raise MendableError(
            f"{product.id} is thinned with {product.thinned:g} parts to one.",
            "Give parts of water or thinner to one of paint, 0 to 50.",
        )
    if not 1 <= len(product.ingredients) <= 8:
        raise MendableError(f"{product.id} is made of nothing.", "Name from 1 to 8 paints.")
    _each_once("paint", [paint.id for paint in product.ingredients])
    for paint in product.ingredients:
        if not (isfinite(paint.share) and 0 < paint.share <= 1e6):
            raise MendableError(
                f"The share of {paint.id} is {paint.share:g}.", "Give each a share above zero."
            )
        if not 0 <= paint.left_ml <= MOST_ML:
            raise MendableError(
                f"{paint.left_ml:g} ml are left of {paint.id}.", "Give 0 ml or more."
            )


def _check_coating(coating: Coating, order: AmountsOrder) -> None:
    for what, name, there in (
        ("zone", coating.zone, [zone.zone for zone in order.zones]),
        ("product", coating.product, [product.id for product in order.products]),
    ):
        if name not in there:
            raise MendableError(f"There is no {what} “{name}”.", f"Use one of: {', '.join(there)}.")
    if not 1 <= coating.coats <= _MOST_COATS:
        raise MendableError(
            f"{coating.coats} coats of {coating.product} were asked for.",
            f"Ask for 1 to {_MOST_COATS}.",
        )


def _check_margins(order: AmountsOrder) -> None:
    if not 0 <= order.sample_ml <= 1000:
        raise MendableError(
            f"{order.sample_ml:g} ml were asked for a sample.", "30 ml will do; at most 1000."
        )
    if not 0 <= order.touch_up <= 1:
        raise MendableError(
            f"A share of {order.touch_up:g} was asked for touching up.", "Give 0 to 1, as 0.1."
        )


def _check_terms(terms: Terms) -> None:
    for what, value, most in (
        ("hours", terms.hours, Decimal(10_000)),
        ("rate for an hour", terms.rate, _MOST_MONEY),
        ("margin", terms.margin, Decimal(10)),
    ):
        if not (value.is_finite() and 0 <= value <= most):
            raise MendableError(f"The {what} is {value}.", f"Give a number from 0 to {most:,}.")
    if len(terms.currency) > 12 or not terms.currency.isprintable():
        raise MendableError("The currency cannot be read.", "Give a short word or sign for it.")
