"""Amounts and days as they are printed."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.measures.kitchen import Spoons

__all__ = ["amount_text", "and_list", "ml_text", "parts_text", "spoons_text", "tins_text"]


def amount_text(value: float) -> str:
    """Give an amount to a tenth, as it is measured."""
    return f"{value:.1f}"


def parts_text(parts: float) -> str:
    """Give parts, whole where they are."""
    return f"{parts:.6g}"


def ml_text(ml: float) -> str:
    """Give a volume: litres from 1000 ml on, whole ml where it is whole."""
    if ml >= 1000:
        litres = f"{ml / 1000:.2f}".rstrip("0").rstrip(".")
        return f"{litres} litre{'' if litres == '1' else 's'}"
    return f"{ml:.1f}".removesuffix(".0") + " ml"


def tins_text(tins: Sequence[float]) -> str:
    """Say in what tins a paint is sold; empty where that is not known."""
    return f"tins of {and_list([ml_text(ml) for ml in tins])}" if tins else ""


def and_list(words: Sequence[str]) -> str:
    """Give words as a list to read.

    >>> and_list(["a", "b", "c"])
    'a, b and c'
    """
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def spoons_text(spoons: Spoons) -> str:
    """Give a volume in cups and spoons in words."""
    teaspoons = spoons.teaspoons + spoons.quarters / 4
    part = ("", "¼", "½", "¾")[spoons.cup_quarters]
    cups = f"{spoons.cups or ''}{part}"
    many = spoons.cups + spoons.cup_quarters / 4 > 1
    told = [
        f"{cups} cup{'s' if many else ''}" if cups else "",
        f"{spoons.tablespoons} tbsp" if spoons.tablespoons else "",
        f"{teaspoons:g} tsp" if teaspoons else "",
    ]
    return " ".join(text for text in told if text) or "less than a quarter tsp"
