"""What a shelf can make: its reach as a body of colours, and which paint would widen it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.search import find_recipes
from swatchwright.mixing.subsets import subsets
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.mixture import quick_dry_lab
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.values import Lab

__all__ = ["NEAR", "Hull", "OneMore", "hull_of", "one_more"]

Floats = NDArray[np.floating[Any]]

NEAR = 1.0
"""CIEDE2000 within which a colour counts as reached."""

_RATIOS = np.array([0.003, 0.01, 0.03, 0.1, 0.3, 0.5, 0.7, 0.9, 0.97, 0.99, 0.997])
_MOST_SETS = 2000


@dataclass(frozen=True, slots=True, eq=False)
class Hull:
    """The body about the colours of sampled mixes, to look at.

    It is a little too small between the samples and too large where the true body is hollow:
    whether a colour is reached is for the search to say.

    Parameters
    ----------
    points
        (n, 3) CIELAB of its corners.
    faces
        (m, 3) indices of the corners of each triangle.
    """

    points: Floats
    faces: NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class OneMore:
    """A candidate paint, and how near the wanted colour comes with it, CIEDE2000."""

    paint: Paint
    delta_e: float


def hull_of(shelf: Sequence[Paint]) -> Hull:
    """Give the body of colours that a shelf's pairs and triples make.

    Raises
    ------
    MendableError
        If the shelf's mixes do not fill a body: fewer than three paints, or all of one hue.
    """
    from scipy.spatial import ConvexHull

    labs = _sampled(stack(shelf))
    spread = np.linalg.svd(labs - labs.mean(axis=0), compute_uv=False)
    if len(labs) < 4 or spread[-1] < 1e-3 * spread[0]:
        raise MendableError(
            say("The mixes of this shelf lie on a line or a surface and fill no body of colours."),
            say("Add a paint of another hue."),
        )
    hull = ConvexHull(labs)
    corners = hull.vertices
    place = np.zeros(len(labs), dtype=np.intp)
    place[corners] = np.arange(len(corners))
    return Hull(labs[corners], place[hull.simplices])


def _sampled(paints: PaintStack) -> Floats:
    """Mix every paint alone, pairs in eleven ratios, triples in equal scattering; all evenly."""
    count = len(paints)
    labs = [quick_dry_lab(paints, np.arange(count)[:, None], np.ones((count, 1)))]
    for size in (2, 3):
        rows = subsets(paints, size)
        rows = rows[:: max(1, len(rows) // _MOST_SETS)]
        for ratio in _RATIOS if len(rows) else ():
            first = np.full((len(rows), 1), ratio)
            rest = np.full((len(rows), size - 1), (1 - ratio) / (size - 1))
            labs.append(quick_dry_lab(paints, rows, np.concatenate([first, rest], axis=1)))
    return np.concatenate(labs)


def one_more(
    wanted: Lab, shelf: Sequence[Paint], candidates: Sequence[Paint], *, near: float = NEAR
) -> tuple[OneMore, ...]:
    """Say which one paint more would bring a wanted colour within reach, the best first.

    Parameters
    ----------
    wanted
        The colour, D65.
    shelf
        What is there, at least one paint.
    candidates
        Paints that could be bought; those already there are passed over.
    near
        CIEDE2000 that counts as reached.
    """
    there = {p.id for p in shelf}
    found = []
    for paint in candidates:
        if paint.id in there or not any(
            p.finish.waterborne is paint.finish.waterborne for p in shelf
        ):
            continue
        wishes = Wishes(must=frozenset({paint.id}))
        best = find_recipes(wanted, [*shelf, paint], keep=1, wishes=wishes).recipes[0]
        if best.delta_e <= near:
            found.append(OneMore(paint, best.delta_e))
    return tuple(sorted(found, key=lambda row: row.delta_e))
