"""Small shelves of the demonstration's paints, and searches without cleverness to judge by."""

from __future__ import annotations

from functools import cache
from itertools import combinations
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Sequence

Floats = NDArray[np.floating[Any]]
Which = tuple[int, ...]

WARM = ("white-clean", "strong-yellow-orange", "clay-red-muted", "soft-black", "earth-brown-mid")
COOL = ("white-clean", "deep-blue-red", "deep-green-blue", "pale-blue-greyish")
STRONG = ("white-yellow", "strong-red-orange", "deep-blue-red", "strong-yellow-green", "soft-black")
MUTED = ("cream-pale-yellow", "sage-green-pale", "stone-grey-warm")
SIX = (*STRONG, "leaf-green-mid")
SHELVES = {"warm": WARM, "cool": COOL, "muted": MUTED, "six": SIX}

# Reached by a triple, by a pair with traces, by one paint nearly, and not at all.
WANTED = {
    "clay red": Lab(45, 32, 24),
    "grey-green": Lab(70, -8, 10),
    "near-white": Lab(90, 1, 6),
    "mid blue": Lab(45, 0, -30),
    "too vivid": Lab(50, 80, 40),
}


def some(*ids: str) -> tuple[Paint, ...]:
    """Take paints from the demonstration shelf."""
    return tuple(demo_shelf().paint(id_) for id_ in ids)


def made_by(paints: Sequence[Paint], shares: Sequence[float]) -> Lab:
    """Give the dry colour of a mix."""
    lab = dry_lab(mix(stack(paints), [range(len(paints))], [shares]))[0]
    return Lab(*(float(v) for v in lab))


@cache
def grid(size: int) -> Floats:
    """List the shares of a grid over the whole simplex: 1 % steps for pairs, 2 % for triples."""
    if size == 1:
        return np.ones((1, 1))
    steps = {2: 100, 3: 50}[size]
    counts = np.array(list(np.ndindex(*[steps + 1] * (size - 1)))).reshape(-1, size - 1)
    last = steps - counts.sum(axis=1)
    return np.asarray(np.concatenate([counts, last[:, None]], axis=1)[last >= 0] / steps)


def closest_on_grid(paints: PaintStack, which: Which, wanted: Lab) -> float:
    """Try all mixes of a grid and give the CIEDE2000 of the closest."""
    shares = grid(len(which))
    rows = np.broadcast_to(which, shares.shape)
    return float(delta_e_2000(wanted.triple, dry_lab(mix(paints, rows, shares))).min())


def all_subsets(paints: Sequence[Paint] | PaintStack) -> list[Which]:
    """List every subset of one to three paints."""
    return [w for size in (1, 2, 3) for w in combinations(range(len(paints)), size)]


def ids(recipe: Recipe) -> frozenset[str]:
    """Give the ids of a recipe's paints."""
    return frozenset(p.id for p in recipe.paints)
