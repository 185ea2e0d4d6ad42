"""Fitting one paint from its brush-outs, alone and with paints that are known.

The same estimator serves spectra and colours, films over grounds and films that hide, many
brush-outs and one: the less there is, the more of the answer is what paints usually are.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations, product
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.paint.fit.fitted import FittedPaint
from swatchwright.paint.fit.prior import COLORANT_PAINT, Errors, Prior, Surface, basis
from swatchwright.paint.fit.problem import Problem, build
from swatchwright.paint.fit.readings import BrushOut
from swatchwright.paint.fit.shelf import paints_of
from swatchwright.paint.fit.solve import Solution, cost_of, solve, start, walk
from swatchwright.paint.paints import HowKnown

__all__ = ["ORDINARY", "fit_paint", "paint_of", "solve_one"]

Floats = NDArray[np.floating[Any]]

ORDINARY = Surface()
"""A matte dry surface, all of whose outer reflection is read."""

# How many of the likeliest makings are followed.
_FOLLOWED = 3

# After so many steps the likeliest of them is plain.
_FIRST_STEPS = 15

_LEVELS = (0.02, 0.1, 0.4, 1.5)


def fit_paint(
    brush_outs: Sequence[BrushOut],
    known: Mapping[str, FittedPaint] | None = None,
    *,
    prior: Prior = COLORANT_PAINT,
    surface: Surface = ORDINARY,
    errors: Errors | None = None,
) -> FittedPaint:
    """Fit the one paint of the brush-outs that is not known.

    Parameters
    ----------
    brush_outs
        Of the paint and of its mixtures with known paints: over black and over white, masstone
        and let-downs, as spectra or as colours, or one colour only. Shares by dry volume.
    known
        The white, the black and whatever else it was mixed with.
    prior, surface, errors
        What is believed beforehand, how surfaces were read, and how far all is trusted.

    Returns
    -------
    The paint, measured if any spectrum was read, guessed if all there was is one colour.

    Raises
    ------
    ValueError
        If the brush-outs hold no paint or more than one that is not known.
    """
    solved = solve_one(brush_outs, known or {}, prior, surface, errors or Errors())
    return paint_of(brush_outs, *solved)


def paint_of(brush_outs: Sequence[BrushOut], problem: Problem, solution: Solution) -> FittedPaint:
    """Read the one fitted paint off a solution, as `fit_paint` does."""
    return paints_of(problem, solution, _how_known(brush_outs))[problem.names[0]]


def solve_one(
    brush_outs: Sequence[BrushOut],
    known: Mapping[str, FittedPaint],
    prior: Prior,
    surface: Surface,
    errors: Errors,
) -> tuple[Problem, Solution]:
    """Fit one paint and give the whole solution, as `fit_paint` does."""
    problem = build(brush_outs, known, prior=prior, surface=surface, errors=errors)
    if problem.layout.paints != 1:
        raise ValueError("exactly one paint of the brush-outs must be unknown")
    starts = _starts(problem) if prior.colorants else [start(problem)]
    found = [walk(problem, x, steps=_FIRST_STEPS) for x in starts]
    return problem, solve(problem, min(found, key=lambda one: one[1])[0])


def _starts(problem: Problem) -> list[Floats]:
    """Give the likeliest makings of one or two colorants with and without white."""
    names = basis()[0]
    usual = problem.prior.amount
    others = [i for i, name in enumerate(names) if name != "white"]
    makings: list[dict[int, float]] = [{}, *({i: level} for i in others for level in _LEVELS)]
    makings += [{i: p, j: q} for i, j in combinations(others, 2) for p, q in ((0.1, 0.1), (1, 0.3))]
    tried: list[tuple[float, int, Floats]] = []
    for making in makings:
        for white, strength in product((0.01, 1.0), (0.3, 1.0, 3.0)):
            amounts = np.full((1, len(names)), usual / 4)
            amounts[0, names.index("white")] = white
            for i, amount in making.items():
                amounts[0, i] = amount
            scale = strength * problem.prior.total / amounts.sum()
            x = start(problem, np.log(scale * amounts))
            tried.append((cost_of(problem, x), len(tried), x))
    tried.sort(key=lambda row: row[:2])
    return [x for _, _, x in tried[:_FOLLOWED]]


def _how_known(brush_outs: Sequence[BrushOut]) -> HowKnown:
    readings = [reading for b in brush_outs for reading in b.readings]
    if any(reading.reflectance is not None for reading in readings):
        return HowKnown.MEASURED
    return HowKnown.FITTED if len(readings) > 1 else HowKnown.GUESSED
