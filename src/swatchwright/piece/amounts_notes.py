"""What was assumed where amounts were reckoned, in plain words."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from swatchwright.language import mark, say
from swatchwright.piece.names import paint_word
from swatchwright.piece.order import AmountsOrder, Product, ProductKind
from swatchwright.piece.spreading import CLEAR_RATES

if TYPE_CHECKING:
    from swatchwright.piece.amounts import Purchase

__all__ = ["notes_of"]

_PRACTICE = mark(
    "How much a bare ground drinks and a tool keeps is common practice, no source; what the tin "
    "and your own trial say comes first."
)


def notes_of(order: AmountsOrder, purchases: Iterable[Purchase]) -> tuple[str, ...]:
    """Say what was assumed for an order and what is bought for it."""
    notes = [say(_PRACTICE)]
    notes += [_rate_note(p) for p in order.products if _usual_clear(p)]
    short = [paint_word(p.name) for p in purchases if p.short_ml]
    if short:
        told = ", ".join(short)
        notes.append(say("No tin size is known of {paints}, so none is chosen.", paints=told))
    if order.terms.hours and any(p.cost is None for p in purchases):
        notes.append(say("There is no price for the client, as the cost of a paint is not known."))
    if any(p.left_ml for p in purchases):
        notes.append(say("What is left on the shelf is counted at no cost."))
    return tuple(notes)


def _usual_clear(product: Product) -> bool:
    """Tell whether a clear finish goes as far as is usual, as its tin was not asked."""
    return (
        product.kind is ProductKind.CLEAR
        and CLEAR_RATES.get(product.id.split(" ")[0]) == product.rate
    )


def _rate_note(product: Product) -> str:
    return say(
        "For {name} a litre is taken to go {rate:g} m² (common practice, no source); what its tin "
        "says comes first.",
        name=paint_word(product.id),
        rate=product.rate,
    )
