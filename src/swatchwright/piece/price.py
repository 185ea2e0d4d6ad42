"""A price for the client."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from swatchwright.piece.order import Terms

__all__ = ["Price", "money", "price_of"]

_CENT = Decimal("0.01")


@dataclass(frozen=True, slots=True)
class Price:
    """A price for the client: work and materials, and a margin on both."""

    labour: Decimal
    materials: Decimal
    margin: Decimal
    total: Decimal
    currency: str


def money(value: Decimal) -> Decimal:
    """Round money to hundredths, halves up."""
    return value.quantize(_CENT, ROUND_HALF_UP)


def price_of(terms: Terms, costs: Sequence[Decimal | None]) -> Price | None:
    """Give the price for work and materials.

    Parameters
    ----------
    terms
        What the painter asks.
    costs
        Of each paint; with one that is not known there is no price.

    Returns
    -------
    Price or None
        None as well where no hours or no rate were given.
    """
    known = [cost for cost in costs if cost is not None]
    if not (terms.hours and terms.rate) or len(known) < len(costs):
        return None
    labour, materials = money(terms.hours * terms.rate), money(sum(known, Decimal(0)))
    margin = money((labour + materials) * terms.margin)
    return Price(labour, materials, margin, labour + materials + margin, terms.currency)
