"""All mixtures that are allowed, laid out as cells for the proof."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import light_weights
from swatchwright.mixing.cells import Cells, Corners
from swatchwright.mixing.groups import K1, K2, Groups, gathered
from swatchwright.mixing.solve import Rules
from swatchwright.paint.film import film_reflectance
from swatchwright.paint.hiding import HIDDEN
from swatchwright.paint.paints import PaintStack
from swatchwright.paint.surface import seen_reflectance

__all__ = ["Ground", "broken_at_corners", "ground_of", "may_hide", "may_keep_rules"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

# What rounding, and the few weights of lightness below 0, may add to Y.
_SLACK = 1e-6


@dataclass(frozen=True, slots=True, eq=False)
class Ground:
    """All mixtures that are allowed: groups of paints, the cells to begin with, the rules.

    Parameters
    ----------
    paints
        The shelf.
    groups
        Its paints as a tree.
    start
        Cells that hold every allowed mixture.
    rules
        What a mixture must keep to.
    """

    paints: PaintStack
    groups: Groups
    start: Cells
    rules: Rules | None = None


def ground_of(
    paints: PaintStack,
    pools: Sequence[Indices],
    draws: Sequence[tuple[int, ...]],
    rules: Rules | None = None,
) -> Ground:
    """Lay out the cells that hold all mixtures.

    Parameters
    ----------
    paints
        The shelf.
    pools
        Paints by kind, none empty.
    draws
        What a mixture takes: for each of up to three paints the pool it comes from, rising.
    rules
        What a mixture must keep to.
    """
    groups, roots = gathered(paints, pools)
    begin: list[tuple[int, ...]] = []
    for draw in draws:
        begin += _begin(groups.halves, [roots[pool] for pool in draw])
    # Two paints are a triangle with two corners in one place.
    first = np.array([(*row, *[row[-1]] * (3 - len(row))) for row in begin], dtype=np.intp)
    sizes = np.array([len(row) for row in begin])
    corners = np.eye(3)[np.minimum(np.arange(3), sizes[:, None] - 1)]
    count = len(begin)
    start = Cells(first, corners, np.full(count, 1 / count), np.zeros(count))
    return Ground(paints, groups, start, rules)


def _begin(halves: Indices, roots: list[int]) -> list[tuple[int, ...]]:
    """Give rows of groups that never hold the same paint twice, for one draw."""
    if len(roots) == 3 and roots[0] == roots[1] == roots[2]:
        return _threes(halves, roots[0])
    if len(roots) >= 2 and roots[0] == roots[1]:
        return _twos(halves, roots[0], tuple(roots[2:]))
    if len(roots) == 3 and roots[1] == roots[2]:
        return _twos(halves, roots[1], (roots[0],))
    return [tuple(roots)]


def _twos(halves: Indices, root: int, rest: tuple[int, ...]) -> list[tuple[int, ...]]:
    """Draw two paints of one group, and the rest."""
    rows, waiting = [], [root]
    while waiting:
        one, two = (int(g) for g in halves[waiting.pop()])
        if one >= 0:
            rows.append((*rest, one, two))
            waiting += [one, two]
    return rows


def _threes(halves: Indices, root: int) -> list[tuple[int, ...]]:
    """Draw three paints of one group."""
    rows, waiting = [], [root]
    while waiting:
        one, two = (int(g) for g in halves[waiting.pop()])
        if one >= 0:
            rows += _twos(halves, one, (two,)) + _twos(halves, two, (one,))
            waiting += [one, two]
    return rows


def _shares(cells: Cells, groups: Groups) -> Floats:
    """Give the shares of wet volume (m, 3, 3) at the corners of cells of single paints."""
    amounts = cells.corners / groups.scattering[groups.paint[cells.groups]][:, None, :]
    return np.asarray(amounts / amounts.sum(axis=2, keepdims=True))


def broken_at_corners(cells: Cells, ground: Ground) -> NDArray[np.bool_]:
    """Tell which corners (m, 3) of cells of single paints break the rules."""
    if ground.rules is None:
        return np.zeros((len(cells), 3), dtype=np.bool_)
    which = np.repeat(ground.groups.paint[cells.groups], 3, axis=0)
    shares = _shares(cells, ground.groups).reshape(-1, 3)
    return np.asarray(ground.rules.breach(ground.paints, which, shares).reshape(-1, 3) > 1e-6)


def may_keep_rules(cells: Cells, ground: Ground) -> NDArray[np.bool_]:
    """Tell which cells of single paints may hold a mixture within the share limits.

    A share above its limit at all corners is above it everywhere between, and so below its least.
    """
    kept = np.ones(len(cells), dtype=np.bool_)
    if ground.rules is None:
        return kept
    paint, shares = ground.groups.paint[cells.groups], _shares(cells, ground.groups)
    if ground.rules.limits is not None:
        over = shares > ground.rules.limits[paint][:, None, :] + 1e-12
        kept &= ~np.any(np.all(over, axis=1), axis=1)
    if ground.rules.least is not None:
        under = shares < ground.rules.least[paint][:, None, :] - 1e-12
        kept &= ~np.any(np.all(under, axis=1), axis=1)
    if ground.rules.prices is not None:
        # The price of a mixture lies between those at the corners.
        price = (shares * ground.rules.prices[paint][:, None, :]).sum(axis=2)
        kept &= ~np.all(price > 1 + 1e-9, axis=1)
    return kept


def may_hide(cells: Cells, at: Corners, ground: Ground) -> NDArray[np.bool_]:
    """Tell which cells of single paints may hold a mixture that hides within the coats.

    K, S and the film's thickness are bounded by the corners. Over black a film is lightest with
    the least K, the most S and the thickest; over white it is darkest with the most K and the
    least S, thin or thick.
    """
    if ground.rules is None or ground.rules.coats is None:
        return np.ones(len(cells), dtype=np.bool_)
    paint = ground.groups.paint[cells.groups]
    shares = _shares(cells, ground.groups)
    dry = at.S[..., -1:]
    K, S = at.K[..., :-1] / dry, at.S[..., :-1] / dry
    wet = (shares @ (1 / ground.paints.spreading_rate[paint])[..., None])[..., 0]
    solids = (shares @ ground.paints.solids[paint][..., None])[..., 0]
    thick = [ground.rules.coats * end(wet, 1) * end(solids, 1) for end in (np.min, np.max)]
    glare = (at.K[..., -1] / at.S[..., -1]).max(axis=1)[:, None]

    def light(K: Floats, S: Floats, thickness: Floats, under: float) -> Floats:
        film = film_reflectance(K, S, thickness[:, None], under)
        return np.asarray(seen_reflectance(film, K1, K2, glare) @ light_weights()[:, 1])

    most = light(K.min(axis=1), S.max(axis=1), thick[1], 0.0)
    least = np.minimum(*(light(K.max(axis=1), S.min(axis=1), x, 0.8) for x in thick))
    return np.asarray(most + _SLACK >= HIDDEN * least)
