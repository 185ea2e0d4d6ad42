"""Fitting many paints at once from brush-outs of them and of their mixtures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.paint.fit.fitted import FittedPaint
from swatchwright.paint.fit.prior import UNSEEN_PIGMENT, Errors, Prior, Surface, basis
from swatchwright.paint.fit.problem import BANDS, Problem, build
from swatchwright.paint.fit.readings import BrushOut
from swatchwright.paint.fit.solve import Solution, solve, start, walk
from swatchwright.paint.paints import HowKnown

__all__ = ["OIL_ERRORS", "OIL_SURFACE", "OIL_THICKNESS_SPREAD", "fit_shelf", "paints_of"]

Floats = NDArray[np.floating[Any]]

# Readings are first trusted little, and each film as much as another, then more and more: straight
# from the prior, a film of a strong pigment in white looks like a spoilt one and loses its say.
_COOLING = ((0.2, 30.0), (0.06, 10.0))
_COOLING_STEPS = 30

# Part of a paint's variance that its low-rank root leaves out.
_LEFT_OUT = 1e-3

OIL_SURFACE = Surface(k2=0.62, glare=0.856, glare_spread=0.134, paint_glare_spread=0.066)
"""The surface of artists' oils as drawdowns: from matte to glossy, chosen by cross-validation."""

OIL_THICKNESS_SPREAD = 0.226
"""Standard deviation of the logarithm of the thickness of drawdowns."""

OIL_ERRORS = Errors(formula=0.015, share=0.037)
"""How far two-constant theory is trusted with artists' oils, chosen in the same way."""


def fit_shelf(
    samples: Sequence[BrushOut],
    known: Mapping[str, FittedPaint] | None = None,
    *,
    prior: Prior = UNSEEN_PIGMENT,
    surface: Surface = OIL_SURFACE,
    errors: Errors | None = None,
) -> dict[str, FittedPaint]:
    """Fit all paints in the samples that are not known, together.

    Parameters
    ----------
    samples
        Brush-outs of paints and mixtures over any grounds, shares by mass unless the prior says
        that volumes are alike.
    known
        Paints that are not to be fitted.
    prior, surface, errors
        What is believed beforehand, how surfaces were read, and how far all is trusted.

    Returns
    -------
    The fitted paints by name, without the known ones.
    """
    trust = errors or OIL_ERRORS

    def with_errors(one: Errors) -> Problem:
        return build(samples, known or {}, prior=prior, surface=surface, errors=one)

    x = start(with_errors(trust))
    for formula, doubt in _COOLING:
        warm = replace(trust, formula=max(formula, trust.formula), doubt=doubt)
        x = walk(with_errors(warm), x, steps=_COOLING_STEPS)[0]
    problem = with_errors(trust)
    return paints_of(problem, solve(problem, x))


def paints_of(
    problem: Problem,
    solution: Solution,
    how_known: HowKnown = HowKnown.FITTED,
    notes: tuple[str, ...] = (),
) -> dict[str, FittedPaint]:
    """Read the fitted paints off a solution, with what is known of each."""
    from scipy.linalg import cho_factor

    layout = problem.layout
    spectra = np.exp(solution.x[: layout.spectra].reshape(BANDS, 2, layout.paints))
    rest = solution.x[layout.spectra :]
    amounts = np.exp(rest[layout.amounts]).reshape(layout.paints, layout.colorants)
    root = cho_factor(solution.information, check_finite=False)
    found = {}
    for i, name in enumerate(problem.names[: layout.paints]):
        made_of = amounts[i] if layout.colorants else np.zeros(0)
        found[name] = FittedPaint(
            K=spectra[:, 0, i],
            S=spectra[:, 1, i],
            factor=_factor(problem, root, i),
            how_known=how_known,
            volume=float(np.exp(rest[layout.volume][i])),
            glare=float(rest[layout.paint_glare][i]),
            amounts={
                colorant: float(amount)
                for colorant, amount in zip(basis()[0], made_of, strict=False)
                if amount > 0.02 * made_of.sum()
            },
            notes=notes,
        )
    return found


def _factor(problem: Problem, root: tuple[Floats, bool], paint: int) -> Floats:
    """Give a low-rank root (72, r) of a paint's covariance of log K and log S.

    Its volume's spread is counted in, for in a mixture it acts as strength does.
    """
    from scipy.linalg import cho_solve, eigh

    layout = problem.layout
    places = layout.index()
    at = np.concatenate([places[:, paint], places[:, layout.paints + paint]])
    pick = np.zeros((layout.size, at.size))
    pick[at, np.arange(at.size)] = 1.0
    pick[layout.spectra + layout.volume.start + paint] = 1.0
    covariance = pick.T @ cho_solve(root, pick, check_finite=False)
    values, vectors = eigh((covariance + covariance.T) / 2)
    kept = np.cumsum(np.maximum(values, 0.0)) > _LEFT_OUT * values.sum()
    return np.asarray(vectors[:, kept] * np.sqrt(values[kept]))
