"""Find the recipes for a wanted colour, with what to measure out for a volume."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from math import ceil, isfinite, sqrt

from swatchwright.acts.amounts_whole import pours_told
from swatchwright.acts.confidence import Confidence, confidence_in
from swatchwright.acts.mix import own_colours
from swatchwright.colour.convert import hex_to_lab
from swatchwright.colour.difference import JUST_SEEN, UNSEEN, delta_e_2000, far_difference
from swatchwright.colour.solid import can_be_a_surface
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.pour import Pour, pouring_order
from swatchwright.mixing.ranking import LEAST_TIE, Judged, ranked
from swatchwright.mixing.recipe import Recipe, Shortfall
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.wishes import Wishes
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab, isotropic

__all__ = [
    "DEFAULT_VOLUME",
    "Amount",
    "Confidence",
    "MeasuredRecipe",
    "Order",
    "Recipes",
    "amounts_for",
    "check_volume",
    "colour_by_eye",
    "confidence_in",
    "could_be_closer",
    "measured",
    "proof_text",
    "read_colour",
    "recipes_for",
    "typed_colour",
    "with_volume",
]

DEFAULT_VOLUME = 500.0
"""ml to mix where nothing else is asked: a small piece of furniture in two coats."""

_MOST_VOLUME = 100_000.0


class Order(StrEnum):
    """Which recipe goes first."""

    CLOSEST = "closest"
    PAINTER = "painter"


_IMPOSSIBLE = mark(
    "No surface can have the wanted colour: at its lightness none is so vivid, whatever the paint. "
    "Check the numbers, their signs and their order."
)
_CLOSEST = mark("The first is the one that comes closest.")

TYPED = mark("typed in")
"""The origin of a colour that somebody typed, as it is kept."""


@dataclass(frozen=True, slots=True)
class Amount:
    """What to measure of one paint: ml, and grams where its density is known."""

    ml: float
    grams: float | None


@dataclass(frozen=True, slots=True)
class MeasuredRecipe:
    """A recipe with what to measure, and what a painter would hold against it.

    Parameters
    ----------
    recipe
        The recipe.
    amounts
        What to measure of each paint.
    own_colours
        Each paint's own dry colour.
    confidence
        How far off the dried mix will usually be.
    slip
        Worst CIEDE2000 change when any one measure is 5 % off.
    light_change
        Spread of its CIEDE2000 from the cloth between daylight, lamp, LED and tube.
    price_per_ml
        What a ml of it costs; None where a paint has no price.
    """

    recipe: Recipe
    amounts: tuple[Amount, ...]
    own_colours: tuple[Lab, ...]
    confidence: Confidence
    slip: float
    light_change: float
    price_per_ml: float | None

    @property
    def pours(self) -> tuple[Pour, ...]:
        """In which order to pour: light first, the strong last and in thirds, a tenth held back."""
        return pours_told(pouring_order(self.recipe, [amount.ml for amount in self.amounts]))

    @property
    def price(self) -> float | None:
        """What the measured amounts cost; None where a paint has no price."""
        if self.price_per_ml is None:
            return None
        return self.price_per_ml * sum(amount.ml for amount in self.amounts)


@dataclass(frozen=True, slots=True)
class Recipes:
    """The recipes for a wanted colour, for a volume in ml.

    Parameters
    ----------
    wanted
        The colour, with how sure it is.
    recipes
        In the order that was asked for.
    shortfall
        How far the nearest stays off; None where it is as close as most accept.
    volume
        ml.
    subsets_tried
        How many sets of paints were weighed.
    proven_gap
        How far the closest that was found, at exact shares, can be from the best there is,
        CIEDE2000; None where it was not proven. One that is told here may be a little further.
    why_first
        Why the first is first, in a sentence.
    possible
        Whether any surface at all can have the wanted colour.
    notes
        What was assumed of the shelf.
    nearest_there_is
        No mix that may be mixed comes nearer than this, by the difference for far colours if `far`;
        None where it was not proven.
    far
        Whether that is CIEDE2000 without its rotation, as for a colour out of reach.
    """

    wanted: KnownColour
    recipes: tuple[MeasuredRecipe, ...]
    shortfall: Shortfall | None
    volume: float
    subsets_tried: int
    proven_gap: float | None
    why_first: str
    possible: bool
    notes: tuple[str, ...]
    nearest_there_is: float | None = None
    far: bool = False


def typed_colour(L: float, a: float, b: float) -> KnownColour:
    """Take a colour that somebody typed as exact.

    Raises
    ------
    MendableError
        If no surface can have it.
    """
    return KnownColour(Lab.of_a_surface(L, a, b), None, TYPED)


def colour_by_eye(lab: Lab, origin: str) -> KnownColour:
    """Take a colour that was chosen by eye: it is as sure as the eye that chose it."""
    return KnownColour(lab, isotropic(JUST_SEEN), origin)


def read_colour(text: str) -> KnownColour:
    """Read a colour that somebody typed: ``L, a, b`` or ``#rrggbb``.

    Raises
    ------
    MendableError
        If it is neither, or no surface can have it.
    """
    # What was copied from what is told has a true minus.
    parts = text.replace(";", ",").replace("\N{MINUS SIGN}", "-").split(",")
    try:
        if len(parts) == 3:
            L, a, b = (float(part) for part in parts)
            return typed_colour(L, a, b)
        return typed_colour(*hex_to_lab(text).triple)
    except ValueError as error:
        raise MendableError(
            say("“{text}” is not a colour we can read.", text=text),
            say(
                "Type three numbers, L*, a*, b*, such as 46, 34, 24, or a screen colour such as "
                "#a4503c."
            ),
        ) from error


def recipes_for(
    wanted: KnownColour,
    shelf: Shelf,
    *,
    most_paints: int = 3,
    keep: int = 6,
    volume: float = DEFAULT_VOLUME,
    order: Order = Order.CLOSEST,
    wishes: Wishes | None = None,
    proven: bool = False,
    progress: Callable[[float], None] | None = None,
    stopped: Callable[[], bool] | None = None,
) -> Recipes:
    """Find the mixes of a shelf that come closest to a wanted colour.

    Parameters
    ----------
    wanted
        The colour, with how sure it is.
    shelf
        The paints to choose from.
    most_paints
        2 or 3.
    keep
        How many recipes at the most.
    volume
        ml to mix.
    order
        Which recipe goes first.
    wishes
        What else is asked of the recipes.
    proven
        Whether to prove how near the closest is to the best there is.
    progress, stopped
        Told the share done, and asked whether to give up.

    Raises
    ------
    MendableError
        If the shelf cannot be mixed from or a number is out of range.
    Stopped
        If `stopped` said so.
    """
    check_volume(volume)
    result = find_recipes(
        wanted.lab,
        shelf.paints,
        most_paints=most_paints,
        keep=keep,
        wishes=wishes,
        proven=proven,
        progress=progress,
        stopped=stopped,
    )
    possible = can_be_a_surface(wanted.lab)
    opened = frozenset() if wishes is None else wishes.opened
    first, gap = result.recipes[0], result.proven_gap
    doubt = confidence_in(wanted, first.paints, first.shares).both
    ranking = ranked(result.recipes, wanted.lab, doubt=_tie(doubt), opened=opened)
    judged = ranking.recipes
    if order is Order.CLOSEST:
        judged = tuple(sorted(judged, key=lambda j: result.recipes.index(j.recipe)))
    return Recipes(
        wanted=wanted,
        recipes=tuple(_measured(j, wanted, volume) for j in judged),
        shortfall=result.shortfall,
        volume=volume,
        subsets_tried=result.subsets_tried,
        proven_gap=gap,
        why_first=say(_CLOSEST) if order is Order.CLOSEST else ranking.why_first,
        possible=possible,
        notes=shelf.notes if possible else (say(_IMPOSSIBLE), *shelf.notes),
        nearest_there_is=None if gap is None else result.closest - gap,
        far=result.far,
    )


def _tie(doubt: float) -> float:
    """Give the difference up to which recipes tie, from the usual error of colour and paints.

    The error is the same for all of them, so a recipe further from the colour as read is still
    usually further from the cloth: at the root of the sum of squares. They tie while that differs
    by less than half of what is just seen.
    """
    return sqrt((doubt + LEAST_TIE) ** 2 - doubt**2)


def _measured(judged: Judged, wanted: KnownColour, volume: float) -> MeasuredRecipe:
    recipe = judged.recipe
    return measured(judged, confidence_in(wanted, recipe.paints, recipe.shares), volume)


def measured(judged: Judged, confidence: Confidence, volume: float) -> MeasuredRecipe:
    """Give a recipe that was judged with all that is told of one, measured to a volume in ml."""
    recipe = judged.recipe
    return MeasuredRecipe(
        recipe=recipe,
        amounts=amounts_for(recipe, volume),
        own_colours=own_colours(recipe.paints),
        confidence=confidence,
        slip=judged.slip,
        light_change=judged.light_change,
        price_per_ml=judged.price,
    )


def could_be_closer(told: Recipes, proven: Recipes) -> float | None:
    """Give by how much another mix could at most be closer than the nearest of those told.

    The nearest told is not always the nearest found: shares are rounded, and a further paint is
    left out where it brings little.

    Parameters
    ----------
    told
        The mixes that are told.
    proven
        The same, of a search that was proven.

    Returns
    -------
    CIEDE2000, for a colour out of reach without its rotation; None where it was not proven.
    """
    if proven.nearest_there_is is None:
        return None
    measure = far_difference if proven.far else delta_e_2000
    wanted = told.wanted.lab.triple
    apart = (float(measure(wanted, one.recipe.dry.triple)) for one in told.recipes)
    return max(0.0, min(apart) - proven.nearest_there_is)


def proof_text(closer: float, most_paints: int) -> str:
    """Say that no other mix comes closer, as far as that is true.

    What may be mixed is what wishes and carriers allow. The figure is rounded up, so that no more
    is said than was proven.

    Parameters
    ----------
    closer
        As of `could_be_closer`.
    most_paints
        How many paints a mix may have.
    """
    if closer > UNSEEN:
        return say(
            "A mix up to {closer:.1f} closer than the nearest of these is not ruled out.",
            closer=ceil(10 * closer) / 10,
        )
    return say(
        "Of all that may be mixed from up to {most} of the paints in use, none comes closer than "
        "the nearest of these by more than {closer:.2f}, which no eye can tell.",
        most=most_paints,
        closer=max(ceil(100 * closer) / 100, 0.01),
    )


def with_volume(found: Recipes, volume: float) -> Recipes:
    """Give the same recipes for another volume in ml.

    Raises
    ------
    MendableError
        If the volume is not between 1 ml and 100 litres.
    """
    check_volume(volume)
    measured = tuple(replace(r, amounts=amounts_for(r.recipe, volume)) for r in found.recipes)
    return replace(found, recipes=measured, volume=volume)


def check_volume(volume: float) -> None:
    """Refuse a volume that nobody mixes.

    Raises
    ------
    MendableError
        If it is not between 1 ml and 100 litres.
    """
    if not (isfinite(volume) and 1 <= volume <= _MOST_VOLUME):
        raise MendableError(
            say("A volume of {volume:g} ml was asked for.", volume=volume),
            say("Ask for 1 ml up to 100 000 ml."),
        )


def amounts_for(recipe: Recipe, volume: float) -> tuple[Amount, ...]:
    """Split a volume in ml among the paints of a recipe, to 0.1 ml, adding up to the volume."""
    millilitres = rounded_amounts(recipe.shares, volume)
    return tuple(
        Amount(ml, None if paint.density is None else round(ml * paint.density, 1))
        for ml, paint in zip(millilitres, recipe.paints, strict=True)
    )
