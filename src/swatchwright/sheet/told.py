"""Amounts and days as they are printed."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.language import figure, listed, say
from swatchwright.language.dates import date_text
from swatchwright.measures.kitchen import Spoons

__all__ = [
    "amount_text",
    "date_text",
    "ml_text",
    "parts_text",
    "spoons_text",
    "tins_text",
]


def amount_text(value: float) -> str:
    """Give an amount to a tenth, as it is measured."""
    return figure(value, ".1f")


def parts_text(parts: float) -> str:
    """Give parts, whole where they are."""
    return figure(parts, ".6g")


def ml_text(ml: float) -> str:
    """Give a volume: litres from 1000 ml on, whole ml where it is whole."""
    if ml >= 1000:
        litres = figure(ml / 1000, ".2f").rstrip("0").rstrip(".,")
        one = litres == "1"
        return (
            say("{litres} litre", litres=litres) if one else say("{litres} litres", litres=litres)
        )
    return f"{figure(ml, '.0f' if f'{ml:.1f}'.endswith('.0') else '.1f')} ml"


def tins_text(tins: Sequence[float]) -> str:
    """Say in what tins a paint is sold; empty where that is not known."""
    return say("tins of {sizes}", sizes=listed([ml_text(ml) for ml in tins])) if tins else ""


def spoons_text(spoons: Spoons) -> str:
    """Give a volume in cups and spoons in words."""
    teaspoons = spoons.teaspoons + spoons.quarters / 4
    part = ("", "¼", "½", "¾")[spoons.cup_quarters]
    cups = f"{spoons.cups or ''}{part}"
    many = spoons.cups + spoons.cup_quarters / 4 > 1
    told = []
    if cups:
        told.append(say("{cups} cups", cups=cups) if many else say("{cups} cup", cups=cups))
    if spoons.tablespoons:
        told.append(say("{count} tbsp", count=spoons.tablespoons))
    if teaspoons:
        told.append(say("{count:g} tsp", count=teaspoons))
    return " ".join(told) or say("less than a quarter tsp")
