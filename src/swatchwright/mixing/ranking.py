"""Recipes in the order a painter would put them, and why the first is first.

Differences smaller than what is known of the wanted colour and of the paints are no differences.
Among recipes that tie, fewer paints go first, then open tins, then the recipe least upset by a
slip of the measure, then the one whose closeness changes least from light to light, then the
cheaper.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.language import mark, say
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.mixing.wishes import price_per_ml
from swatchwright.paint.mixture import Mixtures, dry_lab, dry_reflectance, mix
from swatchwright.paint.paints import stack
from swatchwright.values import Lab

__all__ = [
    "LEAST_TIE",
    "ROOM_LIGHTS",
    "SLIP",
    "Judged",
    "Ranking",
    "change_between_lights",
    "ranked",
    "upset_by_slip",
]

Floats = NDArray[np.floating[Any]]

SLIP = 0.05
"""How far off a measure may be: one part in twenty. Common practice, no source."""

LEAST_TIE = 0.4
"""Differences below this, half of what is just seen, are never told apart."""

ROOM_LIGHTS = (Light.D65, Light.LAMP, Light.WARM_LED, Light.TUBE)
"""Lights a piece may stand in: daylight, a filament lamp, a warm LED, a three-band tube."""

# Slips and changes are told apart in steps of this; prices in steps of a twentieth.
_STEP = 0.4
_DEARER = 0.05


@dataclass(frozen=True, slots=True)
class Judged:
    """A recipe with what a painter would hold against it.

    Parameters
    ----------
    recipe
        The recipe.
    slip
        Worst CIEDE2000 change when any one measure is 5 % too much or too little.
    light_change
        Spread of its CIEDE2000 from the cloth between the room's lights.
    price
        Price of a ml; None where a paint's price is not known.
    opened
        How many of its paints are open.
    """

    recipe: Recipe
    slip: float
    light_change: float
    price: float | None
    opened: int


@dataclass(frozen=True, slots=True)
class Ranking:
    """Judged recipes, the first first, and one sentence on why it is."""

    recipes: tuple[Judged, ...]
    why_first: str


def upset_by_slip(recipe: Recipe) -> float:
    """Give the worst CIEDE2000 change when any one measure is 5 % off; 0 for one paint."""
    size = len(recipe.paints)
    if size == 1:
        return 0.0
    moves = np.concatenate([1 + SLIP * np.eye(size), 1 - SLIP * np.eye(size)])
    amounts = np.array(recipe.shares) * moves
    mixture = _mixed(recipe, amounts / amounts.sum(axis=1, keepdims=True))
    return float(delta_e_2000(recipe.dry.triple, dry_lab(mixture)).max())


def change_between_lights(
    recipe: Recipe, wanted: Lab, lights: Sequence[Light] = ROOM_LIGHTS
) -> float:
    """Give the spread of the CIEDE2000 between mix and cloth over the lights.

    Nobody knows the cloth's spectrum: it is taken to be the smoothest that has its colour.
    """
    cloth = smoothest_reflectance(wanted)
    paint = dry_reflectance(_mixed(recipe, np.array([recipe.shares])))[0]
    apart = [float(delta_e_2000(lab_of(cloth, light), lab_of(paint, light))) for light in lights]
    return max(apart) - min(apart)


def _mixed(recipe: Recipe, shares: Floats) -> Mixtures:
    which = np.broadcast_to(np.arange(len(recipe.paints)), shares.shape)
    return mix(stack(recipe.paints), which, shares)


def ranked(
    recipes: Sequence[Recipe],
    wanted: Lab,
    *,
    doubt: float = 0.0,
    opened: frozenset[str] = frozenset(),
) -> Ranking:
    """Put recipes in a painter's order.

    Parameters
    ----------
    recipes
        At least one.
    wanted
        The colour they are for, D65.
    doubt
        Usual CIEDE2000 by which the wanted colour and the paints are uncertain, 0 or more.
    opened
        Ids of tins that are open.

    Raises
    ------
    ValueError
        If there are no recipes.
    """
    if not recipes:
        raise ValueError("there is nothing to rank")
    tie = max(LEAST_TIE, doubt)
    judged = [_judged(r, wanted, opened) for r in recipes]
    judged.sort(key=lambda j: j.recipe.delta_e)
    order: list[Judged] = []
    while judged:
        edge = judged[0].recipe.delta_e + tie
        tied = [j for j in judged if j.recipe.delta_e <= edge]
        judged = judged[len(tied) :]
        order += sorted(tied, key=_key)
    return Ranking(tuple(order), _why(order, tie))


def _judged(recipe: Recipe, wanted: Lab, opened: frozenset[str]) -> Judged:
    prices = [price_per_ml(p) for p in recipe.paints]
    known = [p for p in prices if p is not None]
    price = None
    if len(known) == len(prices):
        price = sum(s * p for s, p in zip(recipe.shares, known, strict=True))
    return Judged(
        recipe,
        upset_by_slip(recipe),
        change_between_lights(recipe, wanted),
        price,
        sum(p.id in opened for p in recipe.paints),
    )


def _steps(judged: Judged) -> tuple[int, float, int, int]:
    """Give what is compared before the price: less is better."""
    return (
        len(judged.recipe.paints),
        len(judged.recipe.paints) - judged.opened,
        int(judged.slip // _STEP),
        int(judged.light_change // _STEP),
    )


def _key(judged: Judged) -> tuple[tuple[int, float, int, int], bool, float, float]:
    unknown = judged.price is None
    price = 0.0 if judged.price is None else float(np.log(max(judged.price, 1e-9)) // _DEARER)
    return _steps(judged), unknown, price, judged.recipe.delta_e


_REASONS = (
    mark("needs fewer paints"),
    mark("uses more of what is open"),
    mark("is less upset by a slip of the measure"),
    mark("changes less from one light to another"),
)


def _why(order: Sequence[Judged], tie: float) -> str:
    """Say in a sentence what sets the first apart from the next that ties with it."""
    first = order[0]
    if len(order) == 1:
        return say("It is the only recipe that was found.")
    closest = min(j.recipe.delta_e for j in order)
    tied = [j for j in order[1:] if j.recipe.delta_e <= closest + tie]
    if not tied:
        gap = order[1].recipe.delta_e - first.recipe.delta_e
        return say(
            "It is the closest: the next is {gap:.1f} further off, more than the doubt.", gap=gap
        )
    # The next may do as well in all but closeness; then one further down tells.
    reason = next((why for other in tied if (why := _better_in(first, other))), None)
    return say(
        "It is as close as any as far as can be known, and {reason}.",
        reason=say(reason or mark("of those that do equally well it is the closest")),
    )


def _better_in(first: Judged, other: Judged) -> str | None:
    """Say in what the first is better, by the first thing that they differ in."""
    for mine, its, reason in zip(_steps(first), _steps(other), _REASONS, strict=True):
        if mine < its:
            return reason
    if first.price is not None and other.price is None:
        return mark("its price is known")
    return mark("is cheaper") if _key(first)[2] < _key(other)[2] else None
