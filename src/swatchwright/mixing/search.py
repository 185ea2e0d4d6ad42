"""The closest mixes of a shelf: found, proven where that is asked, ranked, told in parts."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import combinations

import numpy as np

from swatchwright.colour.difference import ACCEPTED, VALID_TO, delta_e_2000
from swatchwright.colour.names import difference_words
from swatchwright.errors import MendableError
from swatchwright.language import say, say_count
from swatchwright.language.money import priced
from swatchwright.mixing.allowed import allowed
from swatchwright.mixing.ground import ground_of
from swatchwright.mixing.hunt import Found, Hunt, Stopped, Watch, Which
from swatchwright.mixing.parts import whole_parts
from swatchwright.mixing.proof import PROVEN, prove
from swatchwright.mixing.recipe import Recipe, SearchResult, Shortfall
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.hiding import HIDDEN
from swatchwright.paint.mixture import Mixtures, contrast_ratio, dry_lab, mix, wet_lab
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.values import Lab

__all__ = ["NO_BETTER", "Stopped", "coats_that_hide", "find_recipes"]

NO_BETTER = 0.1
"""A further paint must bring the mix closer by more than this (CIEDE2000), or it is left out.

An eighth of what is just seen: far below any measuring of paint, far above the solver's error.
"""

_MOST_COATS = 6
_BLOCK = 64


def find_recipes(
    wanted: Lab,
    shelf: Sequence[Paint],
    *,
    most_paints: int = 3,
    keep: int = 6,
    wishes: Wishes | None = None,
    proven: bool = False,
    progress: Callable[[float], None] | None = None,
    stopped: Callable[[], bool] | None = None,
) -> SearchResult:
    """Find the mixes that come closest to a wanted colour when dry.

    Parameters
    ----------
    wanted
        The colour, D65.
    shelf
        Paints to choose from, at least two.
    most_paints
        2 or 3 paints in a recipe at the most.
    keep
        How many recipes to give at the most, at least 1.
    wishes
        What else is asked of the recipes.
    proven
        Whether to prove how near the closest is to the best there is. Without it that is said
        only where the closest is as good as exact, which needs no proof.
    progress
        Called with the share done, rising to 1.
    stopped
        Asked between chunks of work whether to give up.

    Raises
    ------
    MendableError
        If the shelf has fewer than two paints, a count is out of range, or the wishes cannot be
        kept together.
    Stopped
        If `stopped` said so.
    """
    _check(shelf, most_paints, keep)
    paints = stack(shelf)
    may = allowed(shelf, wishes or Wishes(), most_paints)
    whole = Watch(progress, stopped)
    searching, proving = (whole.part(0, 0.5), whole.part(0.5, 1)) if proven else (whole, None)
    # Whether the second half is needed shows after the first.
    first, second = searching.part(0, 0.5), searching.part(0.5, 1)
    hunt = Hunt(paints, wanted, may, most_paints, far=False)
    hunt.run(first)
    if hunt.found and min(f.apart for f in hunt.found.values()) > VALID_TO:
        # CIEDE2000 misleads between colours far apart, see `far_difference`.
        hunt = Hunt(paints, wanted, may, most_paints, far=True)
        hunt.run(second)
    else:
        second.tell(1.0)
    if not hunt.found:
        _refuse(wishes or Wishes())
    gap = hunt.closest if hunt.closest <= PROVEN else None
    if proving is not None:
        gap = _gap(hunt, proving)
        proving.tell(1.0)
    recipes = _ranked(hunt, shelf, keep)
    return SearchResult(
        wanted,
        recipes,
        _shortfall(recipes[0], wanted),
        hunt.counted,
        closest=hunt.closest,
        proven_gap=gap,
        far=hunt.far,
    )


def _gap(hunt: Hunt, watch: Watch) -> float:
    """Prove how far the closest can be from the best there is, improving it on the way."""
    if hunt.closest <= PROVEN:
        return hunt.closest
    may = hunt.allowed
    ground = ground_of(hunt.paints, may.pools, may.largest_draws, may.rules)
    target = np.array(hunt.wanted.triple)
    proof = prove(ground, target, hunt.closest, hunt.solve_mixed, watch.tell, far=hunt.far)
    return max(0.0, hunt.closest - proof.least)


def _refuse(wishes: Wishes) -> None:
    """Say that the rules leave no mix."""
    if wishes.most_coats is not None:
        raise MendableError(
            _none_hides(wishes.most_coats, limited=bool(wishes.most_share)),
            say("Allow another coat, or more paints."),
        )
    if wishes.most_price is not None:
        raise MendableError(
            _none_costs(wishes.most_price, limited=bool(wishes.most_share)),
            say("Allow a higher price, or more paints."),
        )
    raise MendableError(
        say("No mix of these paints keeps to the greatest shares that were asked for."),
        say("Allow more of one of the paints."),
    )


def _none_hides(coats: int, *, limited: bool) -> str:
    if limited:
        return say(
            "No mix of these paints hides within {coats} coats at these greatest shares.",
            coats=coats,
        )
    return say("No mix of these paints hides within {coats} coats.", coats=coats)


def _none_costs(price: float, *, limited: bool) -> str:
    told = priced(price, spec="g")
    if limited:
        return say(
            "No mix of these paints costs at most {price} a litre at these greatest shares.",
            price=told,
        )
    return say("No mix of these paints costs at most {price} a litre.", price=told)


def _check(shelf: Sequence[Paint], most_paints: int, keep: int) -> None:
    if len(shelf) < 2:
        raise MendableError(
            say_count(
                "The shelf has {count} paint: nothing can be mixed from that.",
                "The shelf has {count} paints: nothing can be mixed from that.",
                len(shelf),
            ),
            say("Put at least two paints on it."),
        )
    if most_paints not in (2, 3):
        raise MendableError(
            say("A recipe of at most {most} paints was asked for.", most=most_paints),
            say("Ask for 2 or 3."),
        )
    if keep < 1:
        raise MendableError(
            say("{keep} recipes were asked for.", keep=keep), say("Ask for at least 1.")
        )


def _ranked(hunt: Hunt, shelf: Sequence[Paint], keep: int) -> tuple[Recipe, ...]:
    """Rank by closeness, leaving out mixes that do as well without one of their paints.

    A paint earns its place by the exact shares and again by the parts it is measured in: a trace
    that whole parts cannot hold brings nothing.
    """
    found, recipes = hunt.found, list[Recipe]()
    order = sorted(found, key=lambda w: (found[w].apart, len(w), w))
    for at, which in enumerate(order):
        if at % _BLOCK == 0:
            hunt.solve_faces(order[at : at + _BLOCK])
        fewer = _with_fewer(found, which)
        if found[which].apart >= fewer - NO_BETTER:
            continue
        recipe = _recipe(hunt.paints, shelf, which, found[which].shares, hunt.wanted)
        if recipe.parts.cost > max(0.0, fewer - NO_BETTER - found[which].apart):
            continue
        recipes.append(recipe)
        if len(recipes) == keep:
            break
    if not recipes:
        which = order[0]
        recipes = [_recipe(hunt.paints, shelf, which, found[which].shares, hunt.wanted)]
    return tuple(recipes)


def _with_fewer(found: dict[Which, Found], which: Which) -> float:
    """Give the closest that a mix comes which leaves out at least one of the paints.

    Every smaller subset counts: a pair is missing from `found` where one paint is all of it.
    """
    smaller = (part for size in range(1, len(which)) for part in combinations(which, size))
    return min((found[part].apart for part in smaller if part in found), default=np.inf)


def _recipe(
    paints: PaintStack,
    shelf: Sequence[Paint],
    found: Which,
    found_shares: tuple[float, ...],
    wanted: Lab,
) -> Recipe:
    order = sorted(range(len(found)), key=lambda i: -found_shares[i])
    which = tuple(found[i] for i in order)
    shares = tuple(found_shares[i] for i in order)
    mixture = mix(paints, [which], [shares])
    dry = Lab.of(dry_lab(mixture)[0])
    delta_e = float(delta_e_2000(wanted.triple, dry.triple))
    return Recipe(
        paints=tuple(shelf[i] for i in which),
        shares=shares,
        delta_e=delta_e,
        dry=dry,
        wet=Lab.of(wet_lab(mixture)[0]),
        parts=whole_parts(paints, which, shares, wanted, delta_e),
        coats=coats_that_hide(mixture),
    )


def coats_that_hide(mixture: Mixtures) -> int | None:
    """Give how many coats of a mix, the first of a batch, hide; None if more than six."""
    hiding = (float(contrast_ratio(mixture, n)[0]) for n in range(1, _MOST_COATS + 1))
    return next((n for n, ratio in enumerate(hiding, start=1) if ratio >= HIDDEN), None)


def _shortfall(best: Recipe, wanted: Lab) -> Shortfall | None:
    if best.delta_e <= ACCEPTED:
        return None
    return Shortfall(best.delta_e, difference_words(best.dry, wanted))
