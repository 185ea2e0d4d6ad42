"""The quick score of sets of paints, against solving them."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import nnls

from swatchwright.mixing import hunt
from swatchwright.mixing.allowed import allowed
from swatchwright.mixing.hunt import Hunt, Stopped, Watch
from swatchwright.mixing.screen import best_sets, pulls_about, pulls_about_smoothest
from swatchwright.mixing.solve import closest_shares
from swatchwright.mixing.subsets import subsets
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.paints import stack
from swatchwright.values import Lab
from unit.mixing.composed import composed

Floats = NDArray[np.floating[Any]]

SHELF = composed(30)
EACH = stack(SHELF)
MAY = allowed(SHELF, Wishes(), 3)
WANTED = {"clay red": Lab(45, 32, 24), "grey-green": Lab(70, -8, 10), "blue": Lab(45, 0, -30)}


def silent(_: float) -> None:
    """Listen to no progress."""


def closest_on_triangle(corners: Floats) -> float:
    """Give the distance of the origin from a triangle or segment, by non-negative least squares.

    A heavy row holds the weights to a sum of one.
    """
    heavy = 1e4
    system = np.concatenate([corners.T, np.full((1, len(corners)), heavy)])
    weights, _ = nnls(system, np.append(np.zeros(corners.shape[1]), heavy))
    return float(np.linalg.norm(weights / weights.sum() @ corners))


@pytest.mark.parametrize("size", [2, 3])
def test_the_score_is_the_distance_of_the_triangle(size: int) -> None:
    """The order of all sets is that of the distances that scipy's nnls finds."""
    pulls = pulls_about_smoothest(EACH, WANTED["clay red"], far=False)
    rows = best_sets(pulls, MAY, size, 400, silent)
    apart = [closest_on_triangle(pulls.vectors[row]) for row in rows]
    assert np.all(np.diff(apart) > -1e-3 * (1 + np.array(apart[1:])))
    rest = subsets(EACH, size)[::7]
    told = {tuple(row) for row in rows.tolist()}
    others = [closest_on_triangle(pulls.vectors[r]) for r in rest if tuple(r) not in told]
    assert not others or min(others) > apart[-1] - 1e-3 or len(rows) < 400


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_the_best_sets_are_among_the_first(wanted: Lab) -> None:
    """Of the ten closest triples of a shelf at least nine are in the first quarter by score."""
    rows = subsets(EACH, 3)
    shares, apart = closest_shares(EACH, rows, wanted.triple)
    order = np.argsort(apart)
    about = order[0]
    pulls = pulls_about(EACH, wanted, rows[about], shares[about], far=False)
    first = best_sets(pulls, MAY, 3, len(rows) // 4, silent)
    told = {tuple(row) for row in first.tolist()}
    assert sum(tuple(rows[i].tolist()) in told for i in order[:10]) >= 9


@pytest.mark.parametrize("wanted", WANTED.values(), ids=WANTED)
def test_a_screened_search_is_no_worse_than_a_whole_one(
    wanted: Lab, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Solving only the promising sets of 4,525 finds what solving all of them does."""
    screened, whole = (Hunt(EACH, wanted, MAY, 3, far=False) for _ in range(2))
    screened.run(Watch(None, None))
    monkeypatch.setattr(hunt, "_SMALL", 10_000)
    whole.run(Watch(None, None))
    assert screened.counted == whole.counted == sum(len(subsets(EACH, n)) for n in (1, 2, 3))
    assert len(screened.found) < len(whole.found) / 2
    assert screened.closest <= whole.closest + 1e-3
    best = [
        sorted(f.exact for w, f in each.found.items() if len(w) == 3)[:6]
        for each in (screened, whole)
    ]
    assert best[0] == pytest.approx(best[1], abs=0.02)


def test_all_sets_come_where_all_are_asked_for() -> None:
    """With room for all, each set is given once, its paints rising."""
    pulls = pulls_about_smoothest(EACH, WANTED["blue"], far=False)
    rows = best_sets(pulls, MAY, 3, 10_000, silent)
    assert sorted(map(tuple, rows.tolist())) == list(combinations(range(30), 3))


@pytest.mark.parametrize("turn", [1, 5, 40])
def test_a_large_search_can_be_stopped(turn: int) -> None:
    """It asks often, tells a share that rises, and stops when it is told to."""
    asked: list[int] = []
    told: list[float] = []

    def stopped() -> bool:
        asked.append(1)
        return len(asked) == turn

    with pytest.raises(Stopped):
        Hunt(EACH, WANTED["blue"], MAY, 3, far=False).run(Watch(told.append, stopped))
    assert len(asked) == turn
    assert told == sorted(told)
