"""Recipes as JSON."""

from __future__ import annotations

from typing import Any

from swatchwright.acts.known import hiding_of
from swatchwright.acts.recipes import MeasuredRecipe, Recipes
from swatchwright.commands.words import colour_json

__all__ = ["recipes_json"]


def recipes_json(
    found: Recipes, notes: tuple[str, ...] = (), warnings: tuple[str, ...] = ()
) -> dict[str, Any]:
    """Give the recipes for a colour as JSON, as docs/files.md tells."""
    short = found.shortfall
    return {
        "wanted": {**colour_json(found.wanted.lab), "origin": found.wanted.origin},
        "volume_ml": found.volume,
        "recipes": [_recipe_json(r) for r in found.recipes],
        "shortfall": None
        if short is None
        else {"delta_e_00": round(short.delta_e, 2), "towards": list(short.towards)},
        "possible": found.possible,
        "subsets_tried": found.subsets_tried,
        "proven_gap": None if found.proven_gap is None else round(found.proven_gap, 4),
        "why_first": found.why_first,
        "notes": [*notes, *found.notes],
        "warnings": list(warnings),
    }


def _recipe_json(measured: MeasuredRecipe) -> dict[str, Any]:
    r = measured.recipe
    rows = zip(r.paints, r.shares, r.parts.counts, measured.amounts, strict=True)
    return {
        "paints": [
            {
                "id": paint.id,
                "name": paint.name,
                "share": share,
                "parts": parts,
                "ml": amount.ml,
                "g": amount.grams,
                "how_known": paint.how_known.value,
            }
            for paint, share, parts, amount in rows
        ],
        "delta_e_00": round(r.delta_e, 3),
        "parts_delta_e_00": round(r.parts.delta_e, 3),
        "parts_cost_delta_e_00": round(r.parts.cost, 3),
        "dry": colour_json(r.dry),
        "wet": colour_json(r.wet),
        "coats_to_hide": r.coats,
        "hiding": hiding_of(*r.paints).value,
        "pour": [
            {"id": p.paint.id, "ml": round(p.ml, 1), "held_back": p.held_back}
            for p in measured.pours
        ],
        "slip_delta_e_00": round(measured.slip, 2),
        "light_change_delta_e_00": round(measured.light_change, 2),
        "price": None if measured.price is None else round(measured.price, 2),
        "usual_error_delta_e_00": {
            "photo": round(measured.confidence.photo, 1),
            "paints": round(measured.confidence.paints, 1),
            "both": round(measured.confidence.both, 1),
            "covariance_lab": [
                [round(value, 3) for value in row] for row in measured.confidence.covariance
            ],
            "by_spread": measured.confidence.by_spread,
        },
    }
