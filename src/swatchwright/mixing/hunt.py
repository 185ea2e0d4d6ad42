"""Solving the sets of paints that matter: all of a small shelf, the promising of a large one."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000, far_difference
from swatchwright.measures.shares import rounded_shares
from swatchwright.mixing.allowed import Allowed
from swatchwright.mixing.screen import best_sets, pulls_about, pulls_about_smoothest
from swatchwright.mixing.solve import closest_shares
from swatchwright.paint.mixture import quick_dry_lab
from swatchwright.paint.paints import PaintStack
from swatchwright.values import Lab

__all__ = ["Found", "Hunt", "Stopped", "Watch", "Which"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]

Which = tuple[int, ...]
"""Paints of a set, as rising indices into the shelf."""

_CHUNK = 4096
_SMALL = 3000
_PAIRS, _TRIPLES = 200, 900
_BATCH = 450
_WORKERS = 2


class Stopped(Exception):  # noqa: N818 - not an error: the person asked for it
    """The search was stopped from outside before it was done."""


@dataclass(frozen=True, slots=True)
class Found:
    """A set's best shares, rounded, how far that is off, and how far unrounded."""

    shares: tuple[float, ...]
    apart: float
    exact: float


@dataclass(frozen=True, slots=True)
class Watch:
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

    def part(self, begin: float, end: float) -> Watch:
        """Give a watch over a part of this stretch."""
        size = self.end - self.begin
        return Watch(
            self.progress, self.stopped, self.begin + begin * size, self.begin + end * size
        )


@dataclass(slots=True, eq=False)
class Hunt:
    """One search by one difference, and what it has found so far.

    Parameters
    ----------
    paints, wanted
        The shelf and the colour.
    allowed
        Which sets may meet, and the rules they keep to.
    most_paints
        Paints in a set at the most.
    far
        Whether by the difference for far colours.
    """

    paints: PaintStack
    wanted: Lab
    allowed: Allowed
    most_paints: int
    far: bool
    found: dict[Which, Found] = field(default_factory=dict)
    closest: float = np.inf
    counted: int = 0

    def run(self, watch: Watch) -> None:
        """Find the best of all sets."""
        self.counted = sum(self.allowed.count(n) for n in range(1, self.most_paints + 1))
        if self.counted <= _SMALL:
            self._solve_all(watch)
        else:
            self._solve_promising(watch)

    def solve(self, rows: Indices) -> float:
        """Solve sets (m, k), keep what they come to, and give the closest of all so far.

        Where a share rounds to nothing, a smaller set holds the mixture, and it is left out.
        """
        if not len(rows):
            return self.closest
        rules = self.allowed.rules
        shares, exact = closest_shares(
            self.paints, rows, self.wanted.triple, far=self.far, rules=rules
        )
        self.closest = min(self.closest, float(exact.min()))
        rounded = np.array([rounded_shares(row) for row in shares.tolist()])
        kept = (rounded > 0).all(axis=1) & np.isfinite(exact)
        if not kept.any():
            return self.closest
        rows, rounded, exact = rows[kept], rounded[kept], exact[kept]
        if rules is not None:
            kept = rules.breach(self.paints, rows, rounded) < 1e-6
            # The margin that the solver leaves for hiding is wider than rounding, as a rule.
            rows, rounded, exact = rows[kept], rounded[kept], exact[kept]
        measure = far_difference if self.far else delta_e_2000
        apart = measure(self.wanted.triple, quick_dry_lab(self.paints, rows, rounded))
        each = zip(rows.tolist(), rounded.tolist(), apart.tolist(), exact.tolist(), strict=True)
        self.found |= {tuple(w): Found(tuple(s), d, e) for w, s, d, e in each}
        return self.closest

    def solve_mixed(self, rows: Indices) -> float:
        """Solve sets in which a paint may stand twice, as two paints do in a row of three."""
        sets = {tuple(sorted(set(row))) for row in rows.tolist()}
        for size in range(1, self.most_paints + 1):
            some = [s for s in sets if len(s) == size]
            if some:
                self.solve(np.array(some, dtype=np.intp))
        return self.closest

    def solve_faces(self, sets: Iterable[Which]) -> None:
        """Solve the smaller sets that are part of these."""
        faces = {
            part
            for which in sets
            for size in range(1, len(which))
            for part in combinations(which, size)
            if part not in self.found and self.allowed.must <= set(part)
        }
        for size in range(1, self.most_paints):
            self.solve(np.array([f for f in faces if len(f) == size], dtype=np.intp))

    def _solve_all(self, watch: Watch) -> None:
        batches = [self.allowed.sets(size) for size in range(1, self.most_paints + 1)]
        total, done = sum(map(len, batches)), 0
        for batch in batches:
            for start in range(0, len(batch), _CHUNK):
                rows = batch[start : start + _CHUNK]
                self.solve(rows)
                done += len(rows)
                watch.tell(done / total)

    def _solve_promising(self, watch: Watch) -> None:
        """Score all sets and solve those that promise most."""
        self.solve(self.allowed.sets(1))
        watch.tell(0.01)
        pulls = pulls_about_smoothest(self.paints, self.wanted, far=self.far)
        first = watch.part(0.01, 0.1)
        self._solve_in_batches(best_sets(pulls, self.allowed, 2, _PAIRS, first.tell), first)
        if self.most_paints < 3:
            return
        for begin, count in ((0.1, _TRIPLES // 3), (0.5, _TRIPLES)):
            # The second time about the nearest mixture of the first, which is nearer the truth.
            if self.found:
                which = min(self.found, key=lambda w: self.found[w].exact)
                shares = np.array(self.found[which].shares)
                pulls = pulls_about(self.paints, self.wanted, np.array(which), shares, far=self.far)
            scoring, solving = watch.part(begin, begin + 0.2), watch.part(begin + 0.2, begin + 0.4)
            rows = best_sets(pulls, self.allowed, 3, count, scoring.tell)
            new = [row for row in rows.tolist() if tuple(row) not in self.found]
            self._solve_in_batches(np.array(new, dtype=np.intp).reshape(-1, 3), solving)
        watch.tell(1.0)

    def _solve_in_batches(self, rows: Indices, watch: Watch) -> None:
        starts = range(0, len(rows), _BATCH)
        with ThreadPoolExecutor(_WORKERS) as pool:
            batches = [rows[start : start + _BATCH] for start in starts]
            for done, _ in enumerate(pool.map(self.solve, batches), 1):
                watch.tell(done / len(batches))
