"""Amounts as JSON and as lines to read."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from typing import Any

from swatchwright.commands.words import price_text, print_notes
from swatchwright.piece.amounts import Amounts, Batch, PaintMl, Purchase

__all__ = ["amounts_json", "print_amounts"]


def amounts_json(found: Amounts) -> dict[str, Any]:
    """Give amounts as JSON: ml to a tenth, films to a um, money as text."""
    return {
        "coatings": [
            {
                "zone": row.zone,
                "product": row.product,
                "coats": row.coats,
                "area_m2": round(row.area, 4),
                "laid_ml": round(row.laid_ml, 1),
                "need_ml": round(row.need_ml, 1),
                "thinner_ml": round(row.thinner_ml, 1),
                "paints": _paints_json(row.paints),
                "wet_um": round(row.wet_um, 1),
                "dry_um": round(row.dry_um, 1),
            }
            for row in found.coatings
        ],
        "batches": [_batch_json(batch) for batch in found.batches],
        "purchases": [_purchase_json(purchase) for purchase in found.purchases],
        "price": None
        if found.price is None
        else {
            "labour": str(found.price.labour),
            "materials": str(found.price.materials),
            "margin": str(found.price.margin),
            "total": str(found.price.total),
            "currency": found.price.currency,
        },
        "notes": list(found.notes),
    }


def _paints_json(paints: Iterable[PaintMl]) -> list[dict[str, Any]]:
    return [{"id": paint.id, "ml": round(paint.ml, 1)} for paint in paints]


def _batch_json(batch: Batch) -> dict[str, Any]:
    return {
        "product": batch.product,
        "kind": batch.kind.value,
        "need_ml": round(batch.need_ml, 1),
        "sample_ml": round(batch.sample_ml, 1),
        "touch_up_ml": round(batch.touch_up_ml, 1),
        "rounding_ml": round(batch.rounding_ml, 1),
        "mix_ml": round(batch.mix_ml, 1),
        "thinner_ml": round(batch.thinner_ml, 1),
        "paints": _paints_json(batch.paints),
    }


def _purchase_json(purchase: Purchase) -> dict[str, Any]:
    return {
        "id": purchase.id,
        "name": purchase.name,
        "need_ml": round(purchase.need_ml, 1),
        "left_ml": round(purchase.left_ml, 1),
        "short_ml": round(purchase.short_ml, 1),
        "tins": [
            {"ml": tin.size.ml, "count": tin.count, "price": _told(tin.size.price)}
            for tin in purchase.tins
        ],
        "cost": _told(purchase.cost),
    }


def _told(money: Decimal | None) -> str | None:
    return None if money is None else str(money)


def print_amounts(found: Amounts, currency: str = "") -> None:
    """Print amounts as tables, and prices in a currency."""
    print("zone         what            coats     m²   need ml   wet µm  dry µm")
    for row in found.coatings:
        print(
            f"{row.zone:12} {row.product:15} {row.coats:5} {row.area:6.2f} {row.need_ml:9.0f} "
            f"{row.wet_um:8.0f} {row.dry_um:7.0f}"
        )
        if len(row.paints) > 1:
            print(f"{'':13}of that {_paints_text(row.paints)}")
    print()
    for batch in found.batches:
        _print_batch(batch)
    print()
    for purchase in found.purchases:
        print(_purchase_text(purchase, currency))
    if found.price is not None:
        price = found.price
        print(
            f"Price: work {price.labour} + materials {price.materials} + margin {price.margin} = "
            f"{price_text(price.total, currency)}"
        )
    print_notes(found.notes)


def _print_batch(batch: Batch) -> None:
    coloured = batch.sample_ml or batch.touch_up_ml
    does = "Mix at once" if coloured else "Have ready"
    told = [f"{batch.need_ml:.0f} to put on"]
    if batch.sample_ml:
        told.append(f"{batch.sample_ml:.0f} for a sample")
    if batch.touch_up_ml:
        told.append(f"{batch.touch_up_ml:.0f} to touch up")
    if batch.rounding_ml >= 0.5:
        told.append(f"{batch.rounding_ml:.0f} to round up")
    print(f"{does} {batch.mix_ml:.0f} ml of {batch.product}: {', '.join(told)}.")
    parts = [_paints_text(batch.paints)] if len(batch.paints) > 1 else []
    if batch.thinner_ml >= 0.5:
        paint = sum(p.ml for p in batch.paints)
        parts = [*(parts or [f"{paint:.0f} ml paint"]), f"{batch.thinner_ml:.0f} ml water"]
    if parts:
        print(f"  Pour {', '.join(parts)}.")


def _paints_text(paints: Iterable[PaintMl]) -> str:
    return ", ".join(f"{paint.ml:.1f} ml {paint.id}" for paint in paints)


def _purchase_text(purchase: Purchase, currency: str) -> str:
    head = f"{purchase.name}: {purchase.need_ml:.0f} ml"
    if purchase.left_ml:
        head += f", {purchase.left_ml:.0f} left"
    if purchase.short_ml:
        return f"{head}; {purchase.short_ml:.0f} ml to get"
    if not purchase.tins:
        return f"{head}; nothing to buy"
    tins = " + ".join(f"{tin.count} × {tin.size.ml:g} ml" for tin in purchase.tins)
    cost = "" if purchase.cost is None else f" for {price_text(purchase.cost, currency)}"
    return f"{head}; buy {tins}{cost}"
