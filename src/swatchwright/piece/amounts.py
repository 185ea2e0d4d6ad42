"""Paint for a piece: by zone, by batch, by tin, and what that comes to.

A batch is mixed once: mixed again by the same measures it comes out a little different, and the
difference is seen where the two meet. So the batch holds all coats of all zones of that product,
what stays in the tools, a sample to keep, and something for touching up, each shown.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from math import ceil

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.measures.shares import rounded_amounts
from swatchwright.piece.amounts_notes import notes_of
from swatchwright.piece.order import AmountsOrder, Coating, Ingredient, Product, ProductKind
from swatchwright.piece.order_check import checked_order
from swatchwright.piece.price import Price, money, price_of
from swatchwright.piece.spreading import coat_rate, dry_film, loss, wet_film
from swatchwright.piece.tins import TinCount, cheapest_tins

__all__ = [
    "Amounts",
    "Batch",
    "CoatingAmount",
    "PaintMl",
    "Purchase",
    "amounts_of",
    "purchases_of",
]

_STEP = 5
"""ml; what a batch is rounded up to."""


@dataclass(frozen=True, slots=True)
class PaintMl:
    """So many ml of one paint."""

    id: str
    ml: float


@dataclass(frozen=True, slots=True)
class CoatingAmount:
    """What one product takes on one zone, all coats together.

    Parameters
    ----------
    zone, product, coats
        What is put where.
    area
        m2.
    laid_ml
        What ends on the piece, thinner included.
    need_ml
        The same with what the tools keep or miss: laid / (1 - loss).
    thinner_ml
        How much of the need is water or thinner.
    paints
        What the rest is made of.
    wet_um, dry_um
        Thickness of one coat after the first, um, wet and dry.
    """

    zone: str
    product: str
    coats: int
    area: float
    laid_ml: float
    need_ml: float
    thinner_ml: float
    paints: tuple[PaintMl, ...]
    wet_um: float
    dry_um: float


@dataclass(frozen=True, slots=True)
class Batch:
    """What to mix or pour of one product at once.

    Parameters
    ----------
    product, kind
        What it is.
    need_ml
        For all zones.
    sample_ml, touch_up_ml
        On top of that.
    rounding_ml
        On top of that, up to the next 5 ml.
    mix_ml
        All together.
    thinner_ml
        How much of it is water or thinner.
    paints
        What the rest is made of.
    """

    product: str
    kind: ProductKind
    need_ml: float
    sample_ml: float
    touch_up_ml: float
    rounding_ml: float
    mix_ml: float
    thinner_ml: float
    paints: tuple[PaintMl, ...]


@dataclass(frozen=True, slots=True)
class Purchase:
    """What to buy of one paint.

    Parameters
    ----------
    id, name
        Of the paint.
    need_ml, left_ml
        What the batches take, and what is on the shelf.
    tins
        What to buy; empty where enough is left or no size is known.
    short_ml
        What is missing and cannot be bought, as no size is known.
    cost
        Of the tins; None where a price is not known.
    """

    id: str
    name: str
    need_ml: float
    left_ml: float
    tins: tuple[TinCount, ...]
    short_ml: float
    cost: Decimal | None


@dataclass(frozen=True, slots=True)
class Amounts:
    """All amounts of an order.

    Parameters
    ----------
    coatings
        By zone and product.
    batches
        By product.
    purchases
        By paint.
    price
        For the client; None where no hours or rate were given, or the cost of materials is not
        known.
    notes
        What was assumed, in plain words.
    """

    coatings: tuple[CoatingAmount, ...]
    batches: tuple[Batch, ...]
    purchases: tuple[Purchase, ...]
    price: Price | None
    notes: tuple[str, ...]


def amounts_of(order: AmountsOrder) -> Amounts:
    """Reckon all amounts of an order.

    Raises
    ------
    MendableError
        If the order cannot be; see `order_check`.
    """
    checked_order(order)
    products = {product.id: product for product in order.products}
    areas = {zone.zone: zone.area for zone in order.zones}
    rows = tuple(_coating(c, areas[c.zone], products[c.product]) for c in order.coatings)
    used = dict.fromkeys(c.product for c in order.coatings)
    batches = tuple(_batch(products[id_], rows, order) for id_ in used)
    purchases = tuple(_purchases(batches, products))
    notes = notes_of(order, purchases)
    return Amounts(
        rows, batches, purchases, price_of(order.terms, [p.cost for p in purchases]), notes
    )


def _coating(coating: Coating, area: float, product: Product) -> CoatingAmount:
    rates = [
        coat_rate(product.rate, coating.ground, coating.tool, coat)
        for coat in range(1, coating.coats + 1)
    ]
    laid = sum(1000.0 * area / rate for rate in rates)
    need = laid / (1.0 - loss(coating.tool))
    wet = wet_film(coat_rate(product.rate, coating.ground, coating.tool, 2))
    paint = need / (1.0 + product.thinned)
    return CoatingAmount(
        coating.zone,
        product.id,
        coating.coats,
        area,
        laid,
        need,
        need - paint,
        _split(product, paint),
        wet,
        dry_film(wet, product.solids, product.thinned),
    )


def _split(product: Product, ml: float) -> tuple[PaintMl, ...]:
    shares = [paint.share for paint in product.ingredients]
    amounts = rounded_amounts(shares, ml, 0.1)
    return tuple(PaintMl(p.id, v) for p, v in zip(product.ingredients, amounts, strict=True))


def _batch(product: Product, rows: Iterable[CoatingAmount], order: AmountsOrder) -> Batch:
    need = sum(row.need_ml for row in rows if row.product == product.id)
    coloured = product.kind in {ProductKind.PAINT, ProductKind.WASH}
    sample = order.sample_ml if coloured else 0.0
    touch_up = order.touch_up * need if coloured else 0.0
    whole = need + sample + touch_up
    # A hair off a whole step is not another step.
    mix = float(_STEP * ceil(whole / _STEP - 1e-9))
    paint = mix / (1.0 + product.thinned)
    return Batch(
        product.id,
        product.kind,
        need,
        sample,
        touch_up,
        max(0.0, mix - whole),
        mix,
        mix - paint,
        _split(product, paint),
    )


def _purchases(batches: Iterable[Batch], products: dict[str, Product]) -> Iterable[Purchase]:
    needs: dict[str, float] = {}
    for batch in batches:
        for paint in batch.paints:
            needs[paint.id] = needs.get(paint.id, 0.0) + paint.ml
    return purchases_of(needs, _ingredients(products.values()))


def _ingredients(products: Iterable[Product]) -> dict[str, Ingredient]:
    """Give what the products are made of by its id."""
    there: dict[str, Ingredient] = {}
    for product in products:
        for ingredient in product.ingredients:
            _check_same(there.setdefault(ingredient.id, ingredient), ingredient)
    return there


def purchases_of(
    needs: Mapping[str, float], there: Mapping[str, Ingredient]
) -> tuple[Purchase, ...]:
    """Give what to buy where so many ml of some paints are used.

    Parameters
    ----------
    needs
        ml of each paint, by its id.
    there
        The tins and the rest of each of them, by its id.

    Raises
    ------
    MendableError
        If no tins can be chosen for so much.
    """
    return tuple(_purchase(there[id_], need) for id_, need in needs.items())


def _check_same(first: Ingredient, other: Ingredient) -> None:
    if (first.tins, first.left_ml) != (other.tins, other.left_ml):
        raise MendableError(
            say("{paint} is there twice, with other tins or another amount left.", paint=first.id),
            say("Give its tins and what is left of it the same each time."),
        )


def _purchase(paint: Ingredient, need: float) -> Purchase:
    missing = max(0.0, round(need - paint.left_ml, 6))
    if not paint.tins:
        cost = None if missing else Decimal(0)
        return Purchase(paint.id, paint.name, need, paint.left_ml, (), missing, cost)
    tins = cheapest_tins(missing, paint.tins)
    return Purchase(paint.id, paint.name, need, paint.left_ml, tins, 0.0, _cost(tins))


def _cost(tins: Iterable[TinCount]) -> Decimal | None:
    total = Decimal(0)
    for tin in tins:
        if tin.size.price is None:
            return None
        total += tin.count * tin.size.price
    return money(total)
