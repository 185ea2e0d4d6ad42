"""The proof: no mixture of the shelf comes nearer to the wanted colour than this.

Branch and bound. The shelf is split into cells of groups of paints and shares; a cell that lies
outside the colours near enough is dropped, any other is cut in two. Where a corner turns out
nearer than the best found so far, its paints are solved and the best is better.
"""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import xyz_to_lab
from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.mixing.ball import Ball, ball_about
from swatchwright.mixing.bounds import least_difference
from swatchwright.mixing.cells import Cells, Corners, corners_of, cut, lab_boxes, outside
from swatchwright.mixing.ground import Ground, broken_at_corners, may_hide, may_keep_rules
from swatchwright.mixing.groups import Groups, band_weights

__all__ = ["PROVEN", "Proof", "prove"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

PROVEN = 0.02
"""How near to the best there is, in CIEDE2000, a result counts as proven."""

_AIM = 0.95 * PROVEN
_CHUNK = 1536
_MOST = 4_000_000
_MOST_HIDING = 500_000
_WORKERS = 2
_TINY = 1e-4
_CLOSER = 1e-4


@dataclass(frozen=True, slots=True)
class Proof:
    """What is proven.

    Parameters
    ----------
    least
        No mixture allowed comes nearer than this.
    cells
        How many cells were looked at.
    """

    least: float
    cells: int


@dataclass(frozen=True, slots=True, eq=False)
class _Hunt:
    """One radius for which no mixture is to be left."""

    ground: Ground
    wanted: Floats
    radius: float
    far: bool
    ball: Ball


def prove(
    ground: Ground,
    wanted: Floats,
    best: float,
    solve: Callable[[Indices], float],
    tell: Callable[[float], None],
    *,
    far: bool = False,
    most_cells: int | None = None,
) -> Proof:
    """Prove how near any mixture can come.

    Parameters
    ----------
    ground
        All mixtures allowed.
    wanted
        (3,) CIELAB.
    best
        The difference of the best found so far.
    solve
        Solves sets of paints (m, 3) and gives the best found by then.
    tell
        Told the share done, and raises to stop.
    far
        Whether by the difference for far colours.
    most_cells
        How many cells to look at before giving up; the proof then is weaker, and says so. None
        for as many as take half a minute on a quiet machine.
    """
    if most_cells is None:
        hides = ground.rules is not None and ground.rules.coats is not None
        most_cells = _MOST_HIDING if hides else _MOST
    least, cells = 0.0, 0
    # A part first: should the last step prove too long, that much is known. Where the first took
    # long, a further step goes between.
    for share in (0.5, 0.75, 1.0):
        radius = min(share * best, best - _AIM)
        if best - least <= PROVEN or radius <= max(least, 0.0):
            continue
        if share == 0.75 and cells < most_cells / 100:
            continue
        hunt = _Hunt(ground, wanted, radius, far, ball_about(wanted, radius, far=far))
        reached, looked, best = _run(hunt, best, solve, tell, most_cells - cells)
        least, cells = max(least, min(reached, best)), cells + looked
        if cells > most_cells:
            break
    return Proof(least, cells)


def _run(
    hunt: _Hunt,
    best: float,
    solve: Callable[[Indices], float],
    tell: Callable[[float], None],
    most: int,
) -> tuple[float, int, float]:
    """Drop and cut cells until none is left; give what is proven, cells looked at, the best."""
    waiting: dict[bool, list[Cells]] = {True: [], False: []}
    _sort_in(waiting, hunt.ground.start, hunt.ground.groups)
    least, looked, open_ = hunt.radius, 0, 1.0
    from threadpoolctl import threadpool_limits

    with threadpool_limits(1), ThreadPoolExecutor(_WORKERS) as pool:
        while batches := _next(waiting):
            looked += sum(len(cells) for _, cells in batches)
            done = list(pool.map(partial(_step, hunt, best), batches))
            for (_, before), after in zip(batches, done, strict=True):
                open_ -= float(before.weight.sum()) - float(after.left.weight.sum())
                least = min(least, after.stuck)
                _sort_in(waiting, after.left, hunt.ground.groups)
            nearer = [row for after in done for row in after.nearer.tolist()]
            if nearer:
                best = solve(np.unique(nearer, axis=0).astype(np.intp))
                # What is proven cannot be more than what is found; the ball stays, if too large.
                least = min(least, best - _AIM)
                hunt = replace(hunt, radius=min(hunt.radius, best - _AIM))
            tell(max(0.0, 1.0 - open_))
            if looked > most:
                rest = [c.least.min() for part in waiting.values() for c in part if len(c)]
                return min([least, *map(float, rest)]), looked, best
    return least, looked, best


def _next(waiting: dict[bool, list[Cells]]) -> list[tuple[bool, Cells]]:
    """Take the next batches, the latest first, so that few wait; single paints before groups."""
    batches: list[tuple[bool, Cells]] = []
    for single in (True, False):
        stack = waiting[single]
        while stack and len(batches) < 2 * _WORKERS:
            parts, size = [], 0
            while stack and size < _CHUNK:
                parts.append(stack.pop())
                size += len(parts[-1])
            joined = Cells.joined(parts)
            if size > _CHUNK:
                stack.append(joined.pick(slice(_CHUNK, None)))
            if size:
                batches.append((single, joined.pick(slice(0, _CHUNK))))
    return batches


def _sort_in(waiting: dict[bool, list[Cells]], cells: Cells, groups: Groups) -> None:
    if not len(cells):
        return
    single = np.asarray(np.all(groups.paint[cells.groups] >= 0, axis=1))
    for kind in (True, False):
        rows = single if kind else ~single
        if rows.any():
            waiting[kind].append(cells.pick(rows))


@dataclass(frozen=True, slots=True, eq=False)
class _After:
    """What is left of a batch: halves, sets of paints that come nearer, bound of what is stuck."""

    left: Cells
    nearer: Indices
    stuck: float


def _step(hunt: _Hunt, best: float, batch: tuple[bool, Cells]) -> _After:
    """Drop the cells that lie too far off and cut the others."""
    single, cells = batch
    groups = hunt.ground.groups
    none = np.empty((0, 3), dtype=np.intp)
    if single:
        cells = cells.pick(may_keep_rules(cells, hunt.ground))
    at = corners_of(cells, groups, single=single)
    live = ~outside(at, hunt.ball)
    if single:
        live = live & may_hide(cells, at, hunt.ground)
    cells, at = cells.pick(live), at.pick(live)
    if len(cells):
        bound = least_difference(*lab_boxes(at), hunt.wanted, far=hunt.far)
        cells = Cells(cells.groups, cells.corners, cells.weight, np.maximum(bound, cells.least))
        live = np.asarray(bound < hunt.radius)
        cells, at = cells.pick(live), at.pick(live)
    if not len(cells):
        return _After(cells, none, np.inf)
    halves, longest = cut(cells, at, groups)
    stuck, nearer = np.inf, none
    if single:
        tiny = np.asarray(longest < _TINY)
        stuck = float(cells.least[tiny].min()) if tiny.any() else np.inf
        halves = halves.pick(np.tile(~tiny, 2))
        nearer = groups.paint[cells.groups[_nearer(hunt, cells, at, best)]]
    return _After(halves, nearer, stuck)


def _nearer(hunt: _Hunt, cells: Cells, at: Corners, best: float) -> NDArray[np.bool_]:
    """Tell which cells have an allowed corner nearer than the best found."""
    measure = far_difference if hunt.far else delta_e_2000
    apart = measure(hunt.wanted, xyz_to_lab(at.seen_low @ band_weights()))
    closer = apart < best - _CLOSER
    rows = np.asarray(closer.any(axis=1))
    closer[rows] &= ~broken_at_corners(cells.pick(rows), hunt.ground)
    return np.asarray(closer.any(axis=1))
