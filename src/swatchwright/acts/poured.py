"""The recipe of a mix that was poured and not found: its shares are what they are."""

from __future__ import annotations

from swatchwright.acts.confidence import Confidence, confidence_in
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.recipes import MeasuredRecipe, measured
from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.parts import whole_parts
from swatchwright.mixing.ranking import ranked
from swatchwright.mixing.recipe import Parts, Recipe
from swatchwright.mixing.search import coats_that_hide
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab

__all__ = ["poured_recipe", "recipe_as_told"]

_MOST_IN_PARTS = 4
"""Of more paints than that parts are not weighed one against the other: hundredths serve."""


def poured_recipe(
    paints: tuple[Paint, ...],
    shares: tuple[float, ...],
    *,
    dry: Lab,
    wet: Lab,
    wanted: KnownColour,
    volume: float,
) -> MeasuredRecipe:
    """Make the recipe of what was poured, with all that is told of a recipe that was found.

    Parameters
    ----------
    paints, shares
        What it is of, the most first, and the volume fraction of each.
    dry, wet
        The colours to expect of it.
    wanted
        The colour that it is for.
    volume
        ml to measure out.
    """
    return recipe_as_told(
        paints,
        shares,
        dry=dry,
        wet=wet,
        wanted=wanted.lab,
        delta_e=float(delta_e_2000(dry.triple, wanted.lab.triple)),
        parts=_parts_told(paints, shares),
        confidence=confidence_in(wanted, paints, shares),
        volume=volume,
    )


def recipe_as_told(
    paints: tuple[Paint, ...],
    shares: tuple[float, ...],
    *,
    dry: Lab,
    wet: Lab,
    wanted: Lab,
    delta_e: float,
    parts: Parts,
    confidence: Confidence,
    volume: float,
) -> MeasuredRecipe:
    """Make a recipe of which it is already told how far off it is, in which parts, and how surely.

    Parameters
    ----------
    paints, shares, dry, wet, volume
        As of what was poured.
    wanted
        The colour that it is for.
    delta_e
        CIEDE2000 of `dry` from that.
    parts
        Its whole parts.
    confidence
        What is not known of it.
    """
    mixture = mix(stack(paints), [tuple(range(len(paints)))], [shares])
    recipe = Recipe(
        paints=paints,
        shares=shares,
        delta_e=delta_e,
        dry=dry,
        wet=wet,
        parts=parts,
        coats=coats_that_hide(mixture),
    )
    return measured(ranked((recipe,), wanted).recipes[0], confidence, volume)


def _parts_told(paints: tuple[Paint, ...], shares: tuple[float, ...]) -> Parts:
    """Tell it in whole parts, as near to the mix itself as can be seen."""
    if len(paints) > _MOST_IN_PARTS:
        return Parts(tuple(max(1, round(100 * share)) for share in shares), 0.0, 0.0)
    own = look_of_mix(Shelf("", paints), [(p.id, s) for p, s in zip(paints, shares, strict=True)])
    return whole_parts(stack(paints), tuple(range(len(paints))), shares, own.dry, 0.0)
