"""Recipes in the order a painter would put them, and why the first is first.

Differences that no eye tells apart are no differences. Among recipes that tie so, fewer paints go
first, then open tins, then fewer coats, then the recipe least upset by a slip of the measure, then
the one whose closeness changes least from light to light, then the cheaper. One that is visibly
further off goes before a closer one only for fewer paints, open tins or fewer coats, only within
what is known of the wanted colour and of the paints, and only while most people would accept it:
where even the nearest is far off, closeness comes first. None goes before one that is better in
everything.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import ACCEPTED, delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.language import mark, say
from swatchwright.mixing.recipe import Recipe
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.mixing.wishes import price_per_ml
from swatchwright.paint.mixture import Mixtures, dry_lab, dry_reflectance, mix
from swatchwright.paint.paints import stack
from swatchwright.values import Lab

__all__ = [
    "FORGIVING",
    "LEAST_TIE",
    "ROOM_LIGHTS",
    "SLIP",
    "TOUCHY",
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

FORGIVING, TOUCHY = 0.5, 1.0
"""CIEDE2000 below which a slip hardly shows, and from which it plainly does."""

# Changes are told apart in steps of this; prices in steps of a twentieth.
_STEP = 0.4
_DEARER = 0.05
_TOO_MANY_COATS = 7


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
        CIEDE2000 up to which two recipes may come equally close to the cloth, as uncertain as the
        wanted colour and the paints are; 0 or more.
    opened
        Ids of tins that are open.

    Raises
    ------
    ValueError
        If there are no recipes.
    """
    if not recipes:
        raise ValueError("there is nothing to rank")
    judged = [_judged(r, wanted, opened) for r in recipes]
    order: list[Judged] = []
    while judged:
        first = _first_of(judged, doubt)
        judged.remove(first)
        order.append(first)
    return Ranking(tuple(order), _why(order))


def _first_of(judged: Sequence[Judged], doubt: float) -> Judged:
    """Choose which a painter would try first."""
    pool = [j for j in judged if not any(_in_all_better(other, j) for other in judged)]
    closest = min(pool, key=_off)
    near = [j for j in pool if _ties(j, closest)]
    least = min(_weighty(j) for j in near)
    edge = min(_off(closest) + max(LEAST_TIE, doubt), ACCEPTED)
    worth = [j for j in pool if _off(j) <= edge and _weighty(j) < least]
    if worth:
        # What is saved by the most; of those that save as much, the closest.
        most = min(_weighty(j) for j in worth)
        worth = [j for j in worth if _weighty(j) == most]
        closest = min(worth, key=_off)
        near = [j for j in worth if _ties(j, closest)]
    return min(near, key=_key)


def _off(judged: Judged) -> float:
    return judged.recipe.delta_e


def _ties(judged: Judged, closest: Judged) -> bool:
    """Tell whether no eye tells which is closer, and the same is said of how close they are."""
    near = _off(judged) <= _off(closest) + LEAST_TIE
    return near and closeness(_off(judged)) == closeness(_off(closest))


def _in_all_better(one: Judged, other: Judged) -> bool:
    """Tell whether a recipe is closer, cheaper, hides sooner, and bears slips and lights better."""
    if one.price is None or other.price is None or one.price >= other.price:
        return False
    return (
        _off(one) < _off(other)
        and _coats(one) < _coats(other)
        and one.slip < other.slip
        and one.light_change < other.light_change
    )


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


def _coats(judged: Judged) -> int:
    coats = judged.recipe.coats
    return _TOO_MANY_COATS if coats is None else coats


def _weighty(judged: Judged) -> tuple[int, int, int]:
    """Give what may be worth a visible difference: paints, tins to open, coats; less is better."""
    size = len(judged.recipe.paints)
    return size, size - judged.opened, _coats(judged)


def _steps(judged: Judged) -> tuple[int, int, int, int, int]:
    """Give what is compared before the price: less is better."""
    slip = (judged.slip >= FORGIVING) + (judged.slip >= TOUCHY)
    return (*_weighty(judged), slip, int(judged.light_change // _STEP))


def _key(judged: Judged) -> tuple[tuple[int, int, int, int, int], bool, float, float]:
    unknown = judged.price is None
    price = 0.0 if judged.price is None else float(np.log(max(judged.price, 1e-9)) // _DEARER)
    return _steps(judged), unknown, price, _off(judged)


_REASONS = (
    mark("needs fewer paints than mix {number}"),
    mark("uses more of what is open than mix {number}"),
    mark("hides in fewer coats than mix {number}"),
    mark("is less upset by a slip of the measure than mix {number}"),
    mark("changes less from one light to another than mix {number}"),
)
_KNOWN_PRICE = mark("its price is known, that of mix {number} is not")
_CHEAPER = mark("is cheaper than mix {number}")


def _why(order: Sequence[Judged]) -> str:
    """Say in a sentence why the first is first."""
    first = order[0]
    if len(order) == 1:
        return say("It is the only recipe that was found.")
    at = min(range(len(order)), key=lambda i: _off(order[i]))
    if not _ties(first, order[at]):
        return _why_further(first, order[at], at + 1)
    tied = [(n, j) for n, j in enumerate(order[1:], start=2) if _ties(j, first)]
    if not tied:
        return _why_closest(first, min(order[1:], key=_off))
    # The next may do as well in all but closeness; then one further down tells.
    reasons = (_better_in(first, other, number) for number, other in tied)
    reason = next((why for why in reasons if why), "")
    if reason:
        return say("It is as close as any to the eye, and {reason}.", reason=reason)
    return say("It is the closest.") if at == 0 else say("It is as close as any to the eye.")


def _why_closest(first: Judged, next_: Judged) -> str:
    gap = _as_told(next_) - _as_told(first)
    if gap < 0.05:
        return say("It is the closest.")
    return say("It is the closest: the next is {gap:.1f} further off.", gap=gap)


def _why_further(first: Judged, closest: Judged, number: int) -> str:
    """Say for what a recipe goes before one that is visibly closer."""
    gap = max(0.1, _as_told(first) - _as_told(closest))
    mine, its = _weighty(first), _weighty(closest)
    if mine[0] < its[0]:
        return say(
            "It needs fewer paints: {mine}. Mix {number} is {gap:.1f} closer and needs {its}.",
            mine=mine[0],
            number=number,
            gap=gap,
            its=its[0],
        )
    if mine[1] < its[1]:
        return say(
            "It uses more of what is open. Mix {number} is {gap:.1f} closer.",
            number=number,
            gap=gap,
        )
    if closest.recipe.coats is None:
        return say(
            "It hides in {mine} coats. Mix {number} is {gap:.1f} closer and needs more than 6.",
            mine=mine[2],
            number=number,
            gap=gap,
        )
    return say(
        "It hides in fewer coats: {mine}. Mix {number} is {gap:.1f} closer and needs {its}.",
        mine=mine[2],
        number=number,
        gap=gap,
        its=its[2],
    )


def _as_told(judged: Judged) -> float:
    """Give how far off a recipe is as it is told, so that a gap agrees with what is read."""
    return round(_off(judged), 1)


def _better_in(first: Judged, other: Judged, number: int) -> str:
    """Say in what the first is better, by the first thing that they differ in; empty for none."""
    for mine, its, reason in zip(_steps(first), _steps(other), _REASONS, strict=True):
        if mine != its:
            return say(reason, number=number) if mine < its else ""
    if first.price is not None and other.price is None:
        return say(_KNOWN_PRICE, number=number)
    if first.price is None or other.price is None:
        return ""
    cheaper = first.price <= (1 - _DEARER) * other.price
    return say(_CHEAPER, number=number) if cheaper else ""
