"""Fitting one paint, against a general least-squares solver on the same data in the same run."""

from __future__ import annotations

from typing import Any

import numpy as np
from scipy.optimize import least_squares

from judge_round_trip import ERRORS, SURFACE, invent, opaque
from swatchwright.paint.film import reflectance_of_ratio
from swatchwright.paint.fit.fitted import known_paint
from swatchwright.paint.fit.one import fit_paint
from swatchwright.paint.fit.prior import basis
from swatchwright.paint.fit.readings import BrushOut, Reading
from swatchwright.paint.surface import seen_reflectance

SHARES = (1.0, 0.5, 0.1)


def test_fitting_one_paint(benchmark: Any) -> None:
    """A paint from masstone and two let-downs takes under a second."""
    _, K, S = basis()
    truth = invent(np.random.default_rng(1))
    seen = [opaque(truth, c, (K[0], S[0])) for c in SHARES]
    brush_outs = [
        BrushOut({"paint": c, "white": 1 - c}, (Reading(spectrum),))
        for c, spectrum in zip(SHARES, seen, strict=True)
    ]
    known = {"white": known_paint(K[0], S[0])}
    paint = benchmark(lambda: fit_paint(brush_outs, known, surface=SURFACE, errors=ERRORS))
    assert np.all(paint.K > 0)
    if benchmark.stats is not None:
        assert benchmark.stats.stats.median < 1.0


def test_a_general_solver(benchmark: Any) -> None:
    """The baseline: K and S of each band by a general solver, with neither prior nor spread."""
    _, K, S = basis()
    truth = invent(np.random.default_rng(1))
    seen = np.array([opaque(truth, c, (K[0], S[0])) for c in SHARES])
    share = np.array(SHARES)[:, None]

    def residual(x: Any) -> Any:
        k, s = np.exp(x[:36]), np.exp(x[36:])
        inside = reflectance_of_ratio(
            (share * k + (1 - share) * K[0]) / (share * s + (1 - share) * S[0])
        )
        return np.ravel(np.cbrt(seen_reflectance(inside, SURFACE.k1, SURFACE.k2)) - np.cbrt(seen))

    found = benchmark(lambda: least_squares(residual, np.zeros(72)))
    assert found.cost < 1e-3
