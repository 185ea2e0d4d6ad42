"""A recipe that was read from the code of a sheet, tried with the paints of a shelf."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sheet import CodeRecipe
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.language import figure, say, say_count
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.recipe import can_be_counted
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["OnShelf", "measures_told", "on_shelf"]


@dataclass(frozen=True, slots=True)
class OnShelf:
    """A recipe of a code with the paints of a shelf.

    Parameters
    ----------
    dry
        How it dries with them; None where not all of them are there or they do not go together.
    apart
        CIEDE2000 of that from what the code says; None where either is not known.
    missing
        Names of the paints that the shelf does not have.
    """

    dry: Lab | None
    apart: float | None
    missing: tuple[str, ...]


def measures_told(recipe: CodeRecipe) -> list[str]:
    """Say how much of each paint: parts where they can be counted, else ml, else its share."""
    parts = [paint.parts for paint in recipe.paints]
    if can_be_counted(parts):
        return [say_count("{count} part", "{count} parts", int(count)) for count in parts]
    if recipe.ml is not None:
        return [say("{ml:g} ml", ml=ml) for ml in rounded_amounts(parts, recipe.ml)]
    return [figure(part / sum(parts), ".1%") for part in parts]


def on_shelf(recipe: CodeRecipe, shelf: Shelf) -> OnShelf:
    """Say what a recipe that was read from a code gives with the paints of a shelf."""
    ids = {paint.id for paint in shelf.paints}
    missing = tuple(p.name or p.id for p in recipe.paints if p.id not in ids)
    with suppress(MendableError):
        dry = look_of_mix(shelf, [(p.id, p.parts) for p in recipe.paints]).dry
        told = recipe.dry
        apart = None if told is None else float(delta_e_2000(told.triple, dry.triple))
        return OnShelf(dry, apart, missing)
    return OnShelf(None, None, missing)
