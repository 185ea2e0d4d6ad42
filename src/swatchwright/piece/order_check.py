"""Whether an order of amounts can be, said in words that tell what to mend."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.piece.check import checked_zone
from swatchwright.piece.names import zone_word
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
        raise MendableError(say("Nothing is put on."), say("Give at least one coat of something."))
    if max(len(order.zones), len(order.products), len(order.coatings)) > 10 * _MOST_ZONES:
        raise MendableError(
            say("The order is too long."), say("Keep to {most} zones or so.", most=_MOST_ZONES)
        )
    _each_once(mark("The zone “{name}” is there twice."), [zone.zone for zone in order.zones])
    _each_once(
        mark("The product “{name}” is there twice."), [product.id for product in order.products]
    )
    for zone in order.zones:
        checked_zone(zone.zone)
        if not (isfinite(zone.area) and 0 < zone.area <= _MOST_AREA):
            raise MendableError(
                say(
                    "The zone “{zone}” measures {area:g} m².",
                    zone=zone_word(zone.zone),
                    area=zone.area,
                ),
                say("Give an area above 0, up to {most:g} m².", most=_MOST_AREA),
            )
    for product in order.products:
        _check_product(product)
    for coating in order.coatings:
        _check_coating(coating, order)
    _check_margins(order)
    _check_terms(order.terms)
    return order


def _each_once(trouble: str, names: Sequence[str]) -> None:
    twice = [name for name in names if names.count(name) > 1]
    if twice:
        raise MendableError(say(trouble, name=twice[0]), say("Give each its own name."))


def _check_product(product: Product) -> None:
    wet_film(product.rate)
    if not 0 < product.solids <= 1:
        raise MendableError(
            say(
                "{product} has volume solids of {solids:g}.",
                product=product.id,
                solids=product.solids,
            ),
            say("Give a share above 0 and up to 1, as 0.38."),
        )
    if not 0 <= product.thinned <= 50:
        raise MendableError(
            say(
                "{product} is thinned with {parts:g} parts to one.",
                product=product.id,
                parts=product.thinned,
            ),
            say("Give parts of water or thinner to one of paint, 0 to 50."),
        )
    if not 1 <= len(product.ingredients) <= 8:
        raise MendableError(
            say("{product} is made of nothing.", product=product.id),
            say("Name from 1 to 8 paints."),
        )
    _each_once(
        mark("The paint “{name}” is there twice."), [paint.id for paint in product.ingredients]
    )
    for paint in product.ingredients:
        if not (isfinite(paint.share) and 0 < paint.share <= 1e6):
            raise MendableError(
                say("The share of {paint} is {share:g}.", paint=paint.id, share=paint.share),
                say("Give each a share above zero."),
            )
        if not 0 <= paint.left_ml <= MOST_ML:
            raise MendableError(
                say("{ml:g} ml are left of {paint}.", ml=paint.left_ml, paint=paint.id),
                say("Give 0 ml or more."),
            )


def _check_coating(coating: Coating, order: AmountsOrder) -> None:
    for trouble, name, there in (
        (
            mark("There is no zone “{name}”."),
            coating.zone,
            [zone.zone for zone in order.zones],
        ),
        (
            mark("There is no product “{name}”."),
            coating.product,
            [product.id for product in order.products],
        ),
    ):
        if name not in there:
            raise MendableError(
                say(trouble, name=name), say("Use one of: {words}.", words=", ".join(there))
            )
    if not 1 <= coating.coats <= _MOST_COATS:
        raise MendableError(
            say(
                "{coats} coats of {product} were asked for.",
                coats=coating.coats,
                product=coating.product,
            ),
            say("Ask for {least} to {most}.", least=1, most=_MOST_COATS),
        )


def _check_margins(order: AmountsOrder) -> None:
    if not 0 <= order.sample_ml <= 1000:
        raise MendableError(
            say("{ml:g} ml were asked for a sample.", ml=order.sample_ml),
            say("30 ml will do; at most 1000."),
        )
    if not 0 <= order.touch_up <= 1:
        raise MendableError(
            say("A share of {share:g} was asked for touching up.", share=order.touch_up),
            say("Give 0 to 1, as 0.1."),
        )


def _check_terms(terms: Terms) -> None:
    for trouble, value, most in (
        (mark("The hours are {value}."), terms.hours, Decimal(10_000)),
        (mark("The rate for an hour is {value}."), terms.rate, _MOST_MONEY),
        (mark("The margin is {value}."), terms.margin, Decimal(10)),
    ):
        if not (value.is_finite() and 0 <= value <= most):
            raise MendableError(
                say(trouble, value=value), say("Give a number from 0 to {most:,}.", most=most)
            )
    if len(terms.currency) > 12 or not terms.currency.isprintable():
        raise MendableError(
            say("The currency cannot be read."), say("Give a short word or sign for it.")
        )
