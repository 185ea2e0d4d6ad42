"""How much of each paint as a sheet tells it: for the piece, to mix at once, and to buy.

What to buy follows what the sheet says is mixed. That is what the piece takes, unless another
amount was asked for or mixed last.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import ceil

from swatchwright.acts.amounts_whole import made_up, needs_told, poured
from swatchwright.language import listed, mark, say, say_count
from swatchwright.language.money import priced
from swatchwright.piece.amounts import Amounts, Batch, Purchase, purchases_of
from swatchwright.piece.names import paint_word, zone_word
from swatchwright.piece.order import AmountsOrder, Ingredient, ProductKind
from swatchwright.piece.tins import TinSize
from swatchwright.sheet.content import BuyLine, PaintLine, PieceLine
from swatchwright.sheet.told import ml_text

__all__ = [
    "Buying",
    "MixedHere",
    "Reckoned",
    "batch_of_zone",
    "bought_line",
    "buying",
    "mixed_lines",
    "piece_lines",
]

_MOST_TIN = 2500.0
"""ml; about the largest tin that furniture paint is sold in: common practice, no source."""

_SAME = 0.05
"""ml below which two amounts are the same."""


@dataclass(frozen=True, slots=True)
class Reckoned:
    """The amounts of a piece, what they were reckoned from, and what is left of each paint, ml."""

    order: AmountsOrder
    amounts: Amounts
    left: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class MixedHere:
    """What the sheet says is mixed for a zone.

    Parameters
    ----------
    volume
        Of the mix, ml.
    paints
        What it is mixed of.
    batch
        What the piece takes of it; None where that is not known.
    """

    volume: float
    paints: tuple[PaintLine, ...]
    batch: Batch | None

    @property
    def as_the_piece_takes(self) -> bool:
        """Whether just that is mixed which the piece takes."""
        return self.batch is not None and abs(self.batch.mix_ml - self.volume) < _SAME


@dataclass(frozen=True, slots=True)
class Buying:
    """What to buy, line by line, and what all of it costs, in a sentence; see `SheetContent`."""

    lines: tuple[BuyLine, ...] = ()
    cost: str = ""


def piece_lines(amounts: Amounts) -> tuple[PieceLine, ...]:
    """Tell what each zone takes."""
    return tuple(
        PieceLine(
            zone=zone_word(row.zone),
            product=_called(amounts, row.product),
            area=row.area,
            coats=row.coats,
            ml=row.need_ml,
            told=told,
        )
        for row, told in zip(amounts.coatings, needs_told(amounts), strict=True)
    )


def _called(amounts: Amounts, product: str) -> str:
    """Give what a product is called: a mix by the zones that it is for, a primer by its kind."""
    kinds = {batch.product: batch.kind for batch in amounts.batches}
    if kinds.get(product) is not ProductKind.PAINT:
        bought = {purchase.id: purchase.name for purchase in amounts.purchases}
        return paint_word(bought.get(product, product))
    zones = [zone_word(row.zone) for row in amounts.coatings if row.product == product]
    return say("mix for {zones}", zones=listed(zones))


# --- to mix --------------------------------------------------------------------------------------


def batch_of_zone(amounts: Amounts | None, zone: str, zones: Sequence[str]) -> Batch | None:
    """Give what the piece takes of the mix for a zone of the sheet; None where it is not known.

    Parameters
    ----------
    amounts
        Of the piece.
    zone
        The zone; the whole piece if it is not one of the piece's.
    zones
        All zones of the sheet: the whole piece is what none of them is.
    """
    if amounts is None:
        return None
    paints = {b.product: b for b in amounts.batches if b.kind is ProductKind.PAINT}
    here = [row for row in amounts.coatings if row.product in paints]
    named = [row.product for row in here if row.zone == zone]
    others = [row.product for row in here if row.zone not in zones]
    found = named or others
    return paints[found[0]] if found else None


def mixed_lines(amounts: Amounts, here: Sequence[MixedHere]) -> tuple[str, ...]:
    """Say of each product how much of it the piece takes, and why so much."""
    others = {m.batch.product for m in here if m.batch is not None and not m.as_the_piece_takes}
    return tuple(
        _mixed(batch, _called_for(amounts, batch), otherwise=batch.product in others)
        for batch in amounts.batches
    )


def _called_for(amounts: Amounts, batch: Batch) -> str:
    """Give what a product is called, and of one that goes on some zones alone for which it is."""
    called = _called(amounts, batch.product)
    zones = [row.zone for row in amounts.coatings if row.product == batch.product]
    if batch.kind is ProductKind.PAINT or {row.zone for row in amounts.coatings} == set(zones):
        return called
    return say("{product} for {parts}", product=called, parts=listed(map(zone_word, zones)))


def _mixed(batch: Batch, called: str, *, otherwise: bool) -> str:
    """Say how much to mix of a product, or, where the sheet mixes another amount, what it takes."""
    parts = made_up(batch)
    told = [
        say(words, ml=ml)
        for words, ml, there in (
            (mark("{ml:.0f} to put on"), parts.need, True),
            (mark("{ml:.0f} for a sample"), parts.sample, bool(batch.sample_ml)),
            (mark("{ml:.0f} to touch up"), parts.touch_up, bool(batch.touch_up_ml)),
            (mark("{ml:.0f} to round up"), parts.rounding, bool(parts.rounding)),
        )
        if there
    ]
    if (thinner := poured(batch)[-1]) >= 1:
        told.append(say("{ml:.0f} of it water or thinner", ml=thinner))
    if otherwise:
        words = mark("The piece takes {amount} of {what}: {told}.")
    elif batch.sample_ml or batch.touch_up_ml:
        words = mark("Mix at once {amount} of {what}: {told}.")
    else:
        words = mark("Have ready {amount} of {what}: {told}.")
    return say(words, amount=ml_text(batch.mix_ml), what=called, told=", ".join(told))


# --- to buy --------------------------------------------------------------------------------------


def buying(reckoned: Reckoned, here: Sequence[MixedHere]) -> Buying:
    """Tell what is needed of each paint for what the sheet says is mixed, and what to buy.

    Primers, washes and whatever else is not mixed by the sheet are told as the piece takes them.

    Raises
    ------
    MendableError
        If no tins can be chosen for so much.
    """
    there = {
        line.id: Ingredient(
            line.id,
            line.name,
            tins=tuple(TinSize(ml, None) for ml in line.tins),
            left_ml=reckoned.left.get(line.id, 0.0),
        )
        for mixed in here
        for line in mixed.paints
    }
    there |= {i.id: i for product in reckoned.order.products for i in product.ingredients}
    bought = purchases_of(_needs(reckoned, here), there)
    own = reckoned.order.terms.currency
    lines = tuple(BuyLine(paint_word(p.name), p.need_ml, _buy(p), _cost(p, own)) for p in bought)
    return Buying(lines, bought_line(bought, own) if any(line.cost for line in lines) else "")


def _needs(reckoned: Reckoned, here: Sequence[MixedHere]) -> dict[str, float]:
    """Give ml of each paint, by its id."""
    needs: dict[str, float] = {}
    whole: set[str] = set()
    for mixed in here:
        # Zones of one recipe share the batch of the piece, which each of them tells of.
        if mixed.batch is not None and mixed.as_the_piece_takes:
            if mixed.batch.product in whole:
                continue
            whole.add(mixed.batch.product)
        for line in mixed.paints:
            needs[line.id] = needs.get(line.id, 0.0) + line.ml
    by_recipe = {
        product.id
        for product in reckoned.order.products
        if product.kind is ProductKind.PAINT
        and product.id not in {i.id for i in product.ingredients}
    }
    for batch in reckoned.amounts.batches:
        for paint in () if batch.product in by_recipe else batch.paints:
            needs[paint.id] = needs.get(paint.id, 0.0) + paint.ml
    return needs


def _buy(purchase: Purchase) -> str:
    to_buy = _to_buy(purchase)
    if not purchase.left_ml:
        return to_buy
    left = ml_text(round(purchase.left_ml))
    return say("{amount} left; {to_buy}", amount=left, to_buy=to_buy)


def _to_buy(purchase: Purchase) -> str:
    if purchase.short_ml:
        amount = ml_text(ceil(purchase.short_ml))
        if purchase.short_ml > _MOST_TIN:
            return say("{amount} to get", amount=amount)
        return say("a tin of {amount} or more", amount=amount)
    if not purchase.tins:
        return say("nothing to buy")
    return listed(f"{tin.count} × {ml_text(tin.size.ml)}" for tin in purchase.tins)


def _cost(purchase: Purchase, own: str) -> str:
    """Say what the tins cost, in the job's own word for money or hers."""
    return priced(purchase.cost, own) if purchase.tins and purchase.cost is not None else ""


def bought_line(bought: Sequence[Purchase], own: str) -> str:
    """Say what all that is to buy costs, as far as prices are known."""
    known = priced(sum((p.cost for p in bought if p.cost is not None), Decimal(0)), own)
    if not (missing := sum(p.cost is None for p in bought)):
        return say("Paint to buy: {money}", money=known)
    return say_count(
        "Paint to buy: {money}, and {count} whose price is not known",
        "Paint to buy: {money}, and {count} whose price is not known",
        missing,
        money=known,
    )
