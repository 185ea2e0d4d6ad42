"""The search as a whole against scipy's minimisers, on random shelves and colours."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import numpy as np
import pytest
import scipy.optimize
from numpy.typing import NDArray
from scipy.optimize import nnls

from swatchwright.colour.difference import VALID_TO, delta_e_2000, far_difference
from swatchwright.mixing.search import find_recipes
from swatchwright.paint.mixture import mix, quick_dry_lab
from swatchwright.paint.paints import PaintStack, stack
from swatchwright.values import Lab
from unit.mixing.composed import composed
from unit.mixing.shelves import made_by

optimize: Any = scipy.optimize

SEEDS = range(8)


def wanted_by(seed: int) -> Lab:
    """Draw a colour that a shelf may or may not reach."""
    rng = np.random.default_rng(100 + seed)
    return Lab(*(float(v) for v in (rng.uniform(25, 85), *rng.uniform(-35, 35, 2))))


def best_by_scipy(each: PaintStack, wanted: Lab) -> tuple[float, float]:
    """Take the best of SLSQP and differential evolution over every triple, by both differences."""
    best = [np.inf, np.inf]
    for which in combinations(range(len(each)), 3):
        for i, measure in enumerate((delta_e_2000, far_difference)):

            def apart(amounts: NDArray[np.float64], which: Any = which, by: Any = measure) -> float:
                inside = np.maximum(amounts, 1e-9)[None]
                labs = quick_dry_lab(each, [which], inside / inside.sum())
                return float(by(wanted.triple, labs)[0])

            whole = optimize.differential_evolution(
                apart, [(0, 1)] * 3, popsize=8, maxiter=40, tol=1e-10, seed=1, polish=False
            )
            fine = optimize.minimize(apart, whole.x, method="SLSQP", bounds=[(0, 1)] * 3)
            best[i] = min(best[i], float(whole.fun), float(fine.fun))
    return best[0], best[1]


@pytest.mark.parametrize("seed", SEEDS)
def test_scipy_is_never_better_by_a_thousandth(seed: int) -> None:
    """Neither minimiser comes closer than the search, and neither undercuts what is proven."""
    shelf, wanted = composed(5, seed=seed), wanted_by(seed)
    result = find_recipes(wanted, shelf, proven=True)
    near, far = best_by_scipy(stack(shelf), wanted)
    theirs = far if result.far else near
    assert result.closest <= theirs + 1e-3
    assert result.proven_gap is not None
    assert result.closest - result.proven_gap <= theirs + 1e-9
    assert result.far == (find_recipes(wanted, shelf).recipes[0].delta_e > VALID_TO)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_known_spectrum_gives_its_shares_back(seed: int) -> None:
    """Shares of a mix by nnls from its whole K/S, and by the search from its colour, agree.

    A mix's K - q S is nothing at every wavelength, q its own K/S: linear in the dry shares.
    """
    rng = np.random.default_rng(seed)
    shelf = composed(3, seed=seed)
    each, shares = stack(shelf), rng.dirichlet([2.0] * 3)
    m = mix(each, [[0, 1, 2]], [shares])
    off = (each.K - m.K / m.S * each.S).T / each.S.mean()
    found, _ = nnls(np.concatenate([off, 1e3 * np.ones((1, 3))]), np.append(np.zeros(36), 1e3))
    wet = found / each.solids
    assert wet / wet.sum() == pytest.approx(shares, abs=1e-3)
    wanted = made_by(shelf, shares.tolist())
    assert find_recipes(wanted, shelf).closest < 1e-3
