"""Finding the unknowns that suit both the readings and what is believed beforehand.

Damped Gauss-Newton steps (Levenberg 1944, Marquardt 1963) on the sum of squares. A film that fits
badly loses weight, as if errors had a Student distribution, so that one bad brush-out cannot pull
the others. The matrix of the last step is the inverse of the posterior covariance (Laplace).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.fit.model import State, colour_slope, mean_of_colorants, slopes, state
from swatchwright.paint.fit.prior import Prior, basis
from swatchwright.paint.fit.problem import BANDS, Problem

__all__ = ["Solution", "cost_of", "information", "posterior", "solve", "start", "walk"]

Floats = NDArray[np.floating[Any]]

# No unknown moves further than this in one step: films saturate, and then slopes mislead.
_LONGEST_STEP = 2.0

# Variance of what colours tell, as a factor on what their likeliest making has: by it 90 % regions
# hold the truth of 90 % of invented paints (tools/judge_round_trip.py).
_OTHER_MAKINGS = 1.7

# Part of the cost below which a step is the last.
_DONE = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class Solution:
    """Unknowns (size,), the inverse of their covariance (size, size), and the cost."""

    x: Floats
    information: Floats
    cost: float


def start(problem: Problem, log_amounts: Floats | None = None) -> Floats:
    """Give the unknowns as they are believed before anything is read.

    Parameters
    ----------
    log_amounts
        (paints, colorants) to start from; those of the prior if None.
    """
    layout, prior = problem.layout, problem.prior
    x = np.zeros(layout.size)
    spectra = x[: layout.spectra].reshape(BANDS, 2 * layout.paints)
    spectra[:, : layout.paints], spectra[:, layout.paints :] = prior.log_K, prior.log_S
    rest = x[layout.spectra :]
    rest[:] = _other_means(problem)
    if prior.colorants:
        amounts = rest[layout.amounts].reshape(layout.paints, layout.colorants)
        if log_amounts is not None:
            amounts[:] = log_amounts
        for i, row in enumerate(amounts):
            spectra[:, [i, layout.paints + i]] = mean_of_colorants(row)[0].reshape(2, BANDS).T
    return x


def _other_means(problem: Problem) -> Floats:
    """Give the prior means (others,) of all but the spectra."""
    layout, prior = problem.layout, problem.prior
    mean = np.zeros(layout.others)
    mean[layout.paint_glare] = problem.surface.glare
    if prior.colorants:
        mean[layout.amounts] = np.tile(_usual_parts(prior), layout.paints)
    return mean


@cache
def _precision(prior: Prior) -> Floats:
    """Give the inverse covariance (72, 72) of departures of log K and log S."""
    whole = np.zeros((2 * BANDS, 2 * BANDS))
    whole[:BANDS, :BANDS] = np.linalg.inv(prior.K.covariance())
    whole[BANDS:, BANDS:] = np.linalg.inv(prior.S.covariance())
    return whole


def _other_spreads(problem: Problem) -> Floats:
    """Give the prior standard deviations (others,) of all but the spectra."""
    layout, prior = problem.layout, problem.prior
    spread = np.empty(layout.others)
    spread[layout.thickness] = problem.thickness_spread
    spread[layout.share] = problem.share_spread
    spread[layout.glare] = problem.surface.glare_spread
    spread[layout.volume] = prior.volume_spread
    spread[layout.paint_glare] = problem.surface.paint_glare_spread
    # Amounts are held by `_making`.
    spread[layout.amounts] = np.inf
    return spread


def _prior_cost(problem: Problem, x: Floats) -> float:
    """Give what the unknowns cost for being unlikely beforehand."""
    layout = problem.layout
    precision = _precision(problem.prior)
    others = (x[layout.spectra :] - _other_means(problem)) / _other_spreads(problem)
    cost = float(others @ others)
    for i in range(layout.paints):
        _, _, away = _departure(problem, x, i)
        made, _ = _making(problem, x, i)
        cost += float(away @ precision @ away) + float(made @ made)
    return cost


def _making(problem: Problem, x: Floats, paint: int) -> tuple[Floats, Floats]:
    """Give what a paint is made of, in deviations (colorants + 1,) from the usual, and its slopes.

    Of what the pigment is made is one thing, and how much of it there is another. Were each amount
    held to a usual one by itself, a pale paint, which has little of all colorants, would cost least
    as one that holds many times as much white as paint can.
    """
    layout, prior = problem.layout, problem.prior
    if not prior.colorants:
        return np.zeros(0), np.zeros((0, 0))
    at = x[layout.amounts_of(paint)]
    whole = float(np.logaddexp.reduce(at))
    away = at - whole - _usual_parts(prior)
    spread = np.where(away > 0, prior.amount_spread, prior.trace_spread)
    total = (whole - np.log(prior.total)) / prior.total_spread
    share = np.exp(at - whole)
    by_parts = (np.eye(at.size) - share) / spread[:, None]
    return np.append(away / spread, total), np.vstack([by_parts, share / prior.total_spread])


def _usual_parts(prior: Prior) -> Floats:
    """Give the logarithms (colorants,) of the usual part of each in the pigment."""
    return np.log([prior.white_amount if n == "white" else prior.amount for n in basis()[0]])


def _departure(problem: Problem, x: Floats, paint: int) -> tuple[NDArray[np.intp], Floats, Floats]:
    """Give a paint's unknowns, how its departure changes with them (72, u), and it (72,)."""
    layout, prior = problem.layout, problem.prior
    places = layout.index()
    at = np.concatenate([places[:, paint], places[:, layout.paints + paint]])
    if not prior.colorants:
        return at, np.eye(2 * BANDS), x[at] - np.repeat([prior.log_K, prior.log_S], BANDS)
    a = layout.amounts_of(paint)
    mean, by_amount = mean_of_colorants(x[a])
    return np.concatenate([at, a]), np.hstack([np.eye(2 * BANDS), -by_amount]), x[at] - mean


def _add_prior(problem: Problem, x: Floats, matrix: Floats, gradient: Floats) -> None:
    """Add what is believed beforehand to the matrix and the gradient."""
    layout = problem.layout
    precision, inverse = _precision(problem.prior), _other_spreads(problem) ** -2.0
    gradient[layout.spectra :] += (x[layout.spectra :] - _other_means(problem)) * inverse
    rows = np.arange(layout.spectra, layout.size)
    matrix[rows, rows] += inverse
    for i in range(layout.paints):
        at, join, away = _departure(problem, x, i)
        matrix[np.ix_(at, at)] += join.T @ precision @ join
        gradient[at] += join.T @ (precision @ away)
        (made, by), a = _making(problem, x, i), layout.amounts_of(i)
        matrix[np.ix_(a, a)] += by.T @ by
        gradient[a] += by.T @ made


def _errors(problem: Problem, now: State) -> tuple[Floats, Floats]:
    """Give errors of spectra (m, 36) and of colours (c, 3) in standard deviations."""
    root = np.cbrt(np.maximum(now.seen, 1e-6))
    colour = lab_of(now.seen[problem.coloured]) - problem.lab
    return (root - problem.cube_root) * problem.weight, np.einsum(
        "cij,cj->ci", problem.whiten, colour
    )


def _trust(problem: Problem, spectral: Floats, colour: Floats) -> tuple[Floats, float]:
    """Give each film's weight (n,), and the cost of all errors."""
    films, doubt = problem.layout.films, problem.errors.doubt
    square, count = np.zeros(films), np.zeros(films)
    np.add.at(square, problem.film, (spectral**2).sum(axis=1))
    np.add.at(count, problem.film, (problem.weight > 0).sum(axis=1))
    np.add.at(square, problem.film[problem.coloured], (colour**2).sum(axis=1))
    np.add.at(count, problem.film[problem.coloured], 3)
    mean = square / np.maximum(count, 1)
    cost = float((count * doubt**2 * np.log1p(mean / doubt**2)).sum())
    return 1.0 / (1.0 + mean / doubt**2), cost


def cost_of(problem: Problem, x: Floats) -> float:
    """Give what is least for the best unknowns: squared errors, and unlikeliness beforehand."""
    spectral, colour = _errors(problem, state(problem, x))
    return _trust(problem, spectral, colour)[1] + _prior_cost(problem, x)


def information(problem: Problem, x: Floats) -> tuple[Floats, Floats, float]:
    """Give the Gauss-Newton matrix (size, size), the gradient (size,) and the cost at x."""
    layout = problem.layout
    now = state(problem, x)
    by = slopes(problem, now)
    spectral, colour = _errors(problem, now)
    trust, cost = _trust(problem, spectral, colour)
    matrix = np.zeros((layout.size, layout.size))
    gradient = np.zeros(layout.size)
    _add_prior(problem, x, matrix, gradient)
    root = np.sqrt(trust[problem.film])[:, None]
    scale = root * problem.weight / (3.0 * np.cbrt(np.maximum(now.seen, 1e-6)) ** 2)
    by_errors = (by.spectra * scale[..., None], by.others * scale[..., None])
    _add_spectra(problem, by_errors, spectral * root, matrix, gradient)
    if problem.coloured.size:
        c = problem.coloured
        to_lab = problem.whiten @ colour_slope(now.seen[c]) * root[c][..., None]
        own = np.einsum("cib,cbp->cibp", to_lab, by.spectra[c]).reshape(3 * c.size, -1)
        rest = np.einsum("cib,cbg->cig", to_lab, by.others[c]).reshape(3 * c.size, -1)
        full = np.hstack([own, rest])
        matrix += full.T @ full
        gradient += full.T @ (colour * root[c]).ravel()
    return matrix, gradient, cost + _prior_cost(problem, x)


def _add_spectra(
    problem: Problem, by: tuple[Floats, Floats], error: Floats, matrix: Floats, gradient: Floats
) -> None:
    """Add the spectra's part, band by band: a band knows nothing of the other bands' K and S."""
    layout = problem.layout
    (own, rest), n = by, layout.spectra
    matrix[n:, n:] += np.tensordot(rest, rest, axes=((0, 1), (0, 1)))
    gradient[n:] += np.tensordot(rest, error, axes=((0, 1), (0, 1)))
    for band, at in enumerate(layout.index()):
        mine, others = own[:, band], rest[:, band]
        cross = mine.T @ others
        matrix[np.ix_(at, at)] += mine.T @ mine
        matrix[at, n:] += cross
        matrix[n:, at] += cross.T
        gradient[at] += mine.T @ error[:, band]


def posterior(problem: Problem, x: Floats) -> Floats:
    """Give the inverse covariance (size, size) of the unknowns at the best x (Laplace).

    Errors of the formulas are alike at neighbouring wavelengths, so that there are fewer of them
    than bands; counted as many, they would make the answer look better known than it is. And
    colours can be made of other colorants than the likeliest, which alone is seen here.
    """
    fewer = replace(
        problem,
        weight=problem.weight / np.sqrt(problem.errors.alike),
        whiten=problem.whiten / np.sqrt(_OTHER_MAKINGS),
    )
    return information(fewer, x)[0]


def solve(problem: Problem, x: Floats) -> Solution:
    """Walk downhill from x until the cost hardly changes, and see how well it is known there."""
    best, cost = walk(problem, x)
    return Solution(best, posterior(problem, best), cost)


def walk(problem: Problem, x: Floats, *, steps: int = 60) -> tuple[Floats, float]:
    """Walk downhill from x by some steps at most; give where that leads, and the cost there."""
    from scipy.linalg import cho_factor, cho_solve

    damping, worse = 1e-3, 2.0
    matrix, gradient, cost = information(problem, x)
    for _ in range(steps):
        damped = matrix + np.diag(damping * np.diag(matrix))
        step = -cho_solve(cho_factor(damped, check_finite=False), gradient, check_finite=False)
        step = np.clip(step, -_LONGEST_STEP, _LONGEST_STEP)
        gain = float(cost - cost_of(problem, x + step))
        if gain > 0:
            hoped = -step @ (2.0 * gradient + matrix @ step)
            x = x + step
            # Nielsen 1999: less damping the better the step kept its promise.
            damping *= max(0.2, 1.0 - (2.0 * gain / max(float(hoped), gain) - 1.0) ** 3)
            worse = 2.0
            matrix, gradient, cost = information(problem, x)
        else:
            damping *= worse
            worse *= 2.0
        if abs(gain) < _DONE * cost or damping > 1e8:
            break
    return x, cost
