"""Amounts by the measures a person has: a syringe, a scale, cups and spoons."""

from __future__ import annotations

import argparse
from typing import Any

from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.errors import MendableError
from swatchwright.measures.kitchen import Country, Spoons, in_spoons
from swatchwright.mixing.pour import Measured, measured
from swatchwright.sheet.told import spoons_text
from swatchwright.values import Lab

__all__ = ["measures_json", "measures_text"]


def measures_json(
    recipe: MeasuredRecipe, wanted: Lab, arguments: argparse.Namespace
) -> dict[str, Any]:
    """Give the amounts by the measures that were asked for; empty where none was."""
    told: dict[str, Any] = {}
    country = _country(arguments)
    if country is not None:
        told["spoons"] = [_spoons_json(in_spoons(a.ml, country)) for a in recipe.amounts]
    if _step(arguments) is not None:
        found = _measured(recipe, wanted, arguments)
        told["measured"] = {
            "ml": [round(v, 3) for v in found.ml],
            "g": None if found.grams is None else list(found.grams),
            "delta_e_00": round(found.delta_e, 3),
            "cost_delta_e_00": round(found.cost, 3),
        }
    return told


def measures_text(recipe: MeasuredRecipe, wanted: Lab, arguments: argparse.Namespace) -> list[str]:
    """Give the same as lines to print."""
    lines = []
    country = _country(arguments)
    if country is not None:
        told = [
            f"{spoons_text(in_spoons(a.ml, country))} {p.id}"
            for p, a in zip(recipe.recipe.paints, recipe.amounts, strict=True)
        ]
        lines.append(f"in spoons ({country}): {'; '.join(told)}")
    if _step(arguments) is not None:
        found = _measured(recipe, wanted, arguments)
        amounts, unit = (found.ml, "ml") if found.grams is None else (found.grams, "g")
        told = [f"{v:g} {unit} {p.id}" for v, p in zip(amounts, recipe.recipe.paints, strict=True)]
        lines.append(f"as you measure: {', '.join(told)}; that costs {found.cost:.1f}")
    return lines


def _step(arguments: argparse.Namespace) -> float | None:
    if arguments.syringe is not None and arguments.scale is not None:
        raise MendableError(
            "Both --syringe and --scale were given.", "Measure by volume or by weight, not both."
        )
    return arguments.scale if arguments.syringe is None else float(arguments.syringe)


def _measured(recipe: MeasuredRecipe, wanted: Lab, arguments: argparse.Namespace) -> Measured:
    weighed = arguments.scale is not None
    step = _step(arguments)
    assert step is not None  # noqa: S101 - asked for by the callers
    volume = sum(amount.ml for amount in recipe.amounts)
    return measured(recipe.recipe, volume, wanted, step=step, weighed=weighed)


def _country(arguments: argparse.Namespace) -> Country | None:
    if arguments.spoons is None:
        return None
    wanted = arguments.spoons.strip().lower()
    for country in Country:
        if country.value.lower() == wanted:
            return country
    raise MendableError(
        f"--spoons was given “{arguments.spoons}”.", f"Use one of: {', '.join(Country)}."
    )


def _spoons_json(spoons: Spoons) -> dict[str, float]:
    return {
        "cups": spoons.cups + spoons.cup_quarters / 4,
        "tablespoons": spoons.tablespoons,
        "teaspoons": spoons.teaspoons + spoons.quarters / 4,
        "ml": round(spoons.ml, 2),
    }
