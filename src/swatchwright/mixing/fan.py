"""A fan of neighbours about a recipe: mixes to brush out side by side and choose by eye."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.language import mark
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.parts import whole_parts
from swatchwright.mixing.recipe import Parts, Recipe
from swatchwright.mixing.solve import closest_shares
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.values import Lab

__all__ = ["BRUSH_OUT", "SPACING", "Neighbour", "fan"]

Floats = NDArray[np.floating[Any]]

SPACING = 2.0
"""CIEDE2000 between a recipe and its neighbours: seen at a glance, and still a neighbour."""

BRUSH_OUT = 20.0
"""ml that a card is brushed out with."""

_ASTRAY = 1.0
_TRIED = 6

_WAYS: tuple[tuple[str, tuple[float, float, float]], ...] = (
    (mark("lighter"), (1, 0, 0)),
    (mark("darker"), (-1, 0, 0)),
    (mark("redder"), (0, 1, 0)),
    (mark("greener"), (0, -1, 0)),
    (mark("yellower"), (0, 0, 1)),
    (mark("bluer"), (0, 0, -1)),
)


@dataclass(frozen=True, slots=True)
class Neighbour:
    """A mix beside a recipe.

    Parameters
    ----------
    word
        In which direction it lies.
    paints
        Its paints, one to three.
    parts
        Whole parts; `delta_e` is from the place that was aimed at.
    ml
        What to measure for a brush-out, to 0.1 ml.
    dry
        Its dry colour, mixed by these parts.
    apart
        CIEDE2000 from the recipe.
    """

    word: str
    paints: tuple[Paint, ...]
    parts: Parts
    ml: tuple[float, ...]
    dry: Lab
    apart: float


def fan(
    recipe: Recipe, shelf: Sequence[Paint], *, volume: float = BRUSH_OUT
) -> tuple[Neighbour, ...]:
    """Find mixes about 2 CIEDE2000 from a recipe, lighter and darker, redder and greener, ...

    Each keeps the recipe's paints, or all but one with one other from the shelf. Up to six along
    the axes, and up to two between (more vivid, greyer) for a recipe that has a hue. A direction
    in which the shelf does not reach is left out.

    Parameters
    ----------
    recipe
        The recipe at the middle.
    shelf
        Paints that may take part.
    volume
        ml to mix of each.
    """
    here = recipe.dry
    paints = tuple({p.id: p for p in (*recipe.paints, *shelf)}.values())
    stacked = stack(paints)
    found = []
    for word, way in _directions(here):
        aim = _aim(here, np.array(way))
        best = _closest(stacked, len(recipe.paints), aim)
        if best is None:
            continue
        which, parts, dry = best
        apart = float(delta_e_2000(here.triple, dry.triple))
        ml = rounded_amounts([c / sum(parts.counts) for c in parts.counts], volume)
        mixed = tuple(paints[i] for i in which)
        found.append(Neighbour(word, mixed, parts, ml, dry, apart))
    return tuple(found)


def _directions(here: Lab) -> list[tuple[str, tuple[float, float, float]]]:
    ways = list(_WAYS)
    chroma = float(np.hypot(here.a, here.b))
    if chroma > 3 * SPACING:
        ways.append((mark("more vivid"), (0, here.a / chroma, here.b / chroma)))
        ways.append((mark("greyer"), (0, -here.a / chroma, -here.b / chroma)))
    return ways


def _aim(here: Lab, way: Floats) -> Lab:
    """Go that way until the difference is the spacing; it grows all the way there."""
    near, far = 0.0, 12.0
    for _ in range(40):
        middle = (near + far) / 2
        there = np.array(here.triple) + middle * way
        if float(delta_e_2000(here.triple, there)) < SPACING:
            near = middle
        else:
            far = middle
    return Lab.of(np.array(here.triple) + near * way)


def _closest(stacked: PaintStack, own: int, aim: Lab) -> tuple[tuple[int, ...], Parts, Lab] | None:
    """Find the mix in whole parts that comes closest to the place aimed at."""
    found = []
    for rows in _sets(stacked, own):
        shares, apart = closest_shares(stacked, rows, aim.triple)
        for i in np.argsort(apart, kind="stable")[:_TRIED]:
            if shares[i].min() < 1e-3 or apart[i] > _ASTRAY:
                continue
            which = tuple(int(j) for j in rows[i])
            parts = whole_parts(stacked, which, tuple(shares[i].tolist()), aim, float(apart[i]))
            found.append((parts.delta_e, sum(parts.counts), which, parts))
    if not found or min(found)[0] > _ASTRAY:
        return None
    _, total, which, parts = min(found, key=lambda row: (row[0] > SPACING / 8, row[0], row[1]))
    lab = dry_lab(mix(stacked, [which], [np.array(parts.counts) / total]))[0]
    return which, parts, Lab.of(lab)


def _sets(stacked: PaintStack, own: int) -> Iterator[NDArray[np.intp]]:
    """List sets of two and three that hold all of the recipe's paints, or all but one."""
    kind = np.flatnonzero(stacked.waterborne == stacked.waterborne[0])
    for size in (2, 3):
        rows = [
            row
            for row in combinations(kind.tolist(), size)
            if sum(i < own for i in row) >= min(own, size) - 1
        ]
        if rows:
            yield np.array(rows, dtype=np.intp)
