"""Pouring a recipe: in which order, and what rounding the measures costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.values import Lab

__all__ = ["Measured", "Pour", "least_volume", "measured", "pouring_order", "strongest"]

Floats = NDArray[np.floating[Any]]

_HELD_BACK = 0.1
_PORTIONS = 3
_TOUCH = 0.01


@dataclass(frozen=True, slots=True)
class Pour:
    """One thing to pour: the paint, how much, ml, and whether it is held back to the end."""

    paint: Paint
    ml: float
    held_back: bool = False


@dataclass(frozen=True, slots=True)
class Measured:
    """A recipe in amounts that can be measured.

    Parameters
    ----------
    ml
        Of each paint, multiples of what the measure can tell.
    grams
        The same in grams, where it was weighed; None where it was measured by volume.
    delta_e
        CIEDE2000 from the wanted colour at these amounts.
    cost
        What rounding to them costs, CIEDE2000; 0 if nothing.
    """

    ml: tuple[float, ...]
    grams: tuple[float, ...] | None
    delta_e: float
    cost: float


def _lab(recipe: Recipe, amounts: Floats) -> Floats:
    rows = np.atleast_2d(amounts)
    which = np.broadcast_to(np.arange(rows.shape[1]), rows.shape)
    return dry_lab(mix(stack(recipe.paints), which, rows / rows.sum(axis=1, keepdims=True)))


def strongest(recipe: Recipe) -> int:
    """Give the place of the paint of which a little more changes the mix most.

    Hundredths of the whole, not of the paint: a drop of black against a drop of white.
    """
    shares = np.array(recipe.shares)
    more = shares + _TOUCH * np.eye(len(shares))
    return int(delta_e_2000(recipe.dry.triple, _lab(recipe, more)).argmax())


def pouring_order(recipe: Recipe, amounts: Sequence[float]) -> tuple[Pour, ...]:
    """Say in which order to pour the amounts (ml, one a paint).

    The lightest first, as it is easier to darken than to lighten; the strongest last and in
    thirds, with a tenth of it held back until a sample has dried. Common practice, no source.
    """
    if len(recipe.paints) == 1:
        return (Pour(recipe.paints[0], amounts[0]),)
    strong = strongest(recipe)
    lightness = _lab(recipe, np.eye(len(recipe.paints)))[:, 0]
    rest = sorted((i for i in range(len(amounts)) if i != strong), key=lambda i: -lightness[i])
    pours = [Pour(recipe.paints[i], amounts[i]) for i in rest]
    paint, ml = recipe.paints[strong], amounts[strong]
    portion = ml * (1 - _HELD_BACK) / _PORTIONS
    pours += [Pour(paint, portion)] * _PORTIONS
    return (*pours, Pour(paint, ml * _HELD_BACK, held_back=True))


def measured(
    recipe: Recipe, volume: float, wanted: Lab, *, step: float, weighed: bool = False
) -> Measured:
    """Round a recipe to what a syringe or a scale can tell.

    Parameters
    ----------
    recipe
        The recipe.
    volume
        ml to mix, above 0.
    wanted
        The colour it is for.
    step
        What the measure can tell: ml, or g where `weighed`.
    weighed
        Whether the amounts are weighed.

    Raises
    ------
    MendableError
        If a paint would be less than half a step, or is to be weighed and has no density.
    """
    if not (isfinite(volume) and volume > 0 and isfinite(step) and step > 0):
        raise MendableError(
            say("{volume:g} ml in steps of {step:g} cannot be measured.", volume=volume, step=step),
            say("Give numbers above 0."),
        )
    density = np.array([_density(p) if weighed else 1.0 for p in recipe.paints])
    steps = np.round(np.array(recipe.shares) * volume * density / step)
    if steps.min() < 1:
        least = least_volume(recipe, step, weighed=weighed)
        name = recipe.paints[int(steps.argmin())].name
        unit = "g" if weighed else "ml"
        raise MendableError(
            say(
                "For {volume:g} ml there would be less of {paint} than {step:g} {unit} can tell.",
                volume=volume,
                paint=name,
                step=step,
                unit=unit,
            ),
            say("Mix at least {least:.0f} ml, or measure more finely.", least=least),
        )
    amounts = steps * step
    ml = amounts / density
    delta_e = float(delta_e_2000(wanted.triple, _lab(recipe, ml))[0])
    told = tuple(float(round(v, 4)) for v in amounts)
    return Measured(
        tuple(float(v) for v in ml),
        told if weighed else None,
        delta_e,
        max(0.0, delta_e - recipe.delta_e),
    )


def _density(paint: Paint) -> float:
    if paint.density is None:
        raise MendableError(
            say("The density of {paint} is not known, so it cannot be weighed.", paint=paint.name),
            say("Measure by volume, or weigh 100 ml of it and enter its density."),
        )
    return paint.density


def least_volume(recipe: Recipe, least: float, *, weighed: bool = False) -> float:
    """Give the smallest volume, ml, of which no paint is less than can be measured.

    Parameters
    ----------
    recipe
        The recipe.
    least
        The least that can be measured: ml, or g where `weighed`.
    weighed
        Whether it is weighed.

    Raises
    ------
    MendableError
        If a paint is to be weighed and has no density.
    """
    each = zip(recipe.paints, recipe.shares, strict=True)
    return max(least / (share * (_density(p) if weighed else 1.0)) for p, share in each)
