"""The closest mixes of a shelf: every pair and triple solved, ranked, told in parts."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import ACCEPTED, VALID_TO, delta_e_2000, far_difference
from swatchwright.colour.names import difference_words
from swatchwright.errors import MendableError
from swatchwright.measures.shares import rounded_shares
from swatchwright.mixing.parts import whole_parts
from swatchwright.mixing.recipe import Recipe, SearchResult, Shortfall
from swatchwright.mixing.solve import closest_shares
from swatchwright.mixing.subsets import subsets
from swatchwright.paint.mixture import contrast_ratio, dry_lab, mix, quick_dry_lab, wet_lab
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.values import Lab

__all__ = ["NO_BETTER", "Stopped", "find_recipes"]

Floats = NDArray[np.floating[Any]]

NO_BETTER = 0.1
"""A further paint must bring the mix closer by more than this (CIEDE2000), or it is left out.

An eighth of what is just seen: far below any measuring of paint, far above the solver's error.
"""

_CHUNK = 4096
_MOST_COATS = 6
_HIDDEN = 0.98


class Stopped(Exception):  # noqa: N818 - not an error: the person asked for it
    """The search was stopped from outside before it was done."""


Which = tuple[int, ...]
"""Paints of a subset, as rising indices into the shelf."""


@dataclass(frozen=True, slots=True)
class _Found:
    """A subset's best shares, rounded, and how far that is from the wanted colour."""

    shares: tuple[float, ...]
    apart: float


@dataclass(frozen=True, slots=True)
class _Watch:
    """Who is told of the progress of a stretch of the work, and who may stop it."""

    progress: Callable[[float], None] | None
    stopped: Callable[[], bool] | None
    begin: float = 0.0
    end: float = 1.0

    def tell(self, done: float) -> None:
        """Tell the share of this stretch that is done, 0-1."""
        if self.progress is not None:
            self.progress(self.begin + (self.end - self.begin) * done)
        if self.stopped is not None and self.stopped():
            raise Stopped


def find_recipes(
    wanted: Lab,
    shelf: Sequence[Paint],
    *,
    most_paints: int = 3,
    keep: int = 6,
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
    progress
        Called with the share done, rising to 1.
    stopped
        Asked between chunks of work whether to give up.

    Raises
    ------
    MendableError
        If the shelf has fewer than two paints, or a count is out of range.
    Stopped
        If `stopped` said so.
    """
    _check(shelf, most_paints, keep)
    paints = stack(shelf)
    # Whether the second half is needed shows after the first.
    first, second = (_Watch(progress, stopped, *ends) for ends in ((0.0, 0.5), (0.5, 1.0)))
    found = _all_solved(paints, wanted, most_paints, first, far=False)
    if min(f.apart for f in found.values()) > VALID_TO:
        # CIEDE2000 misleads between colours far apart, see `far_difference`.
        found = _all_solved(paints, wanted, most_paints, second, far=True)
    else:
        second.tell(1.0)
    recipes = _ranked(found, paints, shelf, wanted, keep)
    tried = sum(len(subsets(paints, size)) for size in range(1, most_paints + 1))
    return SearchResult(wanted, recipes, _shortfall(recipes[0], wanted), tried)


def _check(shelf: Sequence[Paint], most_paints: int, keep: int) -> None:
    if len(shelf) < 2:
        raise MendableError(
            f"The shelf has {len(shelf)} paint{'' if len(shelf) == 1 else 's'}: "
            "nothing can be mixed from that.",
            "Put at least two paints on it.",
        )
    if most_paints not in (2, 3):
        raise MendableError(
            f"A recipe of at most {most_paints} paints was asked for.", "Ask for 2 or 3."
        )
    if keep < 1:
        raise MendableError(f"{keep} recipes were asked for.", "Ask for at least 1.")


def _all_solved(
    paints: PaintStack, wanted: Lab, most_paints: int, watch: _Watch, *, far: bool
) -> dict[Which, _Found]:
    """Solve every subset of one paint up to the most."""
    batches = [subsets(paints, size) for size in range(1, most_paints + 1)]
    total = sum(len(batch) for batch in batches)
    found: dict[Which, _Found] = {}
    done = 0
    for batch in batches:
        for start in range(0, len(batch), _CHUNK):
            rows = batch[start : start + _CHUNK]
            found |= _solved(paints, rows, wanted, far=far)
            done += len(rows)
            watch.tell(done / total)
    return found


def _solved(
    paints: PaintStack, rows: NDArray[np.intp], wanted: Lab, *, far: bool
) -> dict[Which, _Found]:
    """Solve subsets and round their shares to 0.1 %.

    Where a share rounds to nothing, a smaller subset holds the mixture, and it is left out.
    """
    shares, _ = closest_shares(paints, rows, wanted.triple, far=far)
    rounded = np.array([rounded_shares(row) for row in shares.tolist()])
    full = (rounded > 0).all(axis=1)
    labs = quick_dry_lab(paints, rows[full], rounded[full])
    apart = (far_difference if far else delta_e_2000)(wanted.triple, labs)
    solutions = zip(rows[full].tolist(), rounded[full].tolist(), apart.tolist(), strict=True)
    return {tuple(which): _Found(tuple(share), d) for which, share, d in solutions}


def _ranked(
    found: dict[Which, _Found],
    paints: PaintStack,
    shelf: Sequence[Paint],
    wanted: Lab,
    keep: int,
) -> tuple[Recipe, ...]:
    """Rank by closeness, leaving out mixes that do as well without one of their paints.

    A paint earns its place by the exact shares and again by the parts it is measured in: a trace
    that whole parts cannot hold brings nothing.
    """
    recipes: list[Recipe] = []
    for which in sorted(found, key=lambda w: (found[w].apart, len(w), w)):
        fewer = _with_fewer(found, which)
        if found[which].apart >= fewer - NO_BETTER:
            continue
        recipe = _recipe(paints, shelf, which, found[which].shares, wanted)
        if recipe.parts.cost > max(0.0, fewer - NO_BETTER - found[which].apart):
            continue
        recipes.append(recipe)
        if len(recipes) == keep:
            break
    return tuple(recipes)


def _with_fewer(found: dict[Which, _Found], which: Which) -> float:
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
    dry = Lab(*(float(v) for v in dry_lab(mixture)[0]))
    delta_e = float(delta_e_2000(wanted.triple, dry.triple))
    hiding = (float(contrast_ratio(mixture, n)[0]) for n in range(1, _MOST_COATS + 1))
    coats = next((n for n, ratio in enumerate(hiding, start=1) if ratio >= _HIDDEN), None)
    return Recipe(
        paints=tuple(shelf[i] for i in which),
        shares=shares,
        delta_e=delta_e,
        dry=dry,
        wet=Lab(*(float(v) for v in wet_lab(mixture)[0])),
        parts=whole_parts(paints, which, shares, wanted, delta_e),
        coats=coats,
    )


def _shortfall(best: Recipe, wanted: Lab) -> Shortfall | None:
    if best.delta_e <= ACCEPTED:
        return None
    return Shortfall(best.delta_e, difference_words(best.dry, wanted))
