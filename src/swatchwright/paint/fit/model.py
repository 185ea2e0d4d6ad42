"""What a fit's unknowns make one see, and how that changes with each of them.

The film and surface are those of `paint.film` and `paint.surface`. A reading changes with log K
and log S of its film alone; from there to the unknowns it is the chain rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import light_weights, light_white
from swatchwright.paint.film import film_reflectance
from swatchwright.paint.fit.prior import basis
from swatchwright.paint.fit.problem import BANDS, Problem
from swatchwright.paint.surface import seen_reflectance

__all__ = ["Slopes", "State", "colour_slope", "mean_of_colorants", "slopes", "state"]

Floats = NDArray[np.floating[Any]]

# Half a step of the central differences in log K and log S: errors go as its square.
_STEP = 1e-4


@dataclass(frozen=True, slots=True, eq=False)
class State:
    """What the unknowns make of the n films and m readings.

    Parameters
    ----------
    log_k, log_s
        (n, 36) logarithms of the films' absorption and scattering over their whole thickness.
    part_k, part_s
        (n, 36, p) what each paint gives of them.
    volume
        (n, p) share of each paint in the film's volume.
    seen
        (m, 36) reflectance factor.
    """

    log_k: Floats
    log_s: Floats
    part_k: Floats
    part_s: Floats
    volume: Floats
    glare: Floats
    seen: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Slopes:
    """Derivatives of seen reflectance: (m, 36, 2 paints) by spectra, (m, 36, others) by others."""

    spectra: Floats
    others: Floats


def _see(problem: Problem, log_k: Floats, log_s: Floats, glare: Floats) -> Floats:
    """Give reflectance factors (m, 36) of films that were read."""
    surface, film = problem.surface, problem.film
    inside = film_reflectance(np.exp(log_k[film]), np.exp(log_s[film]), 1.0, problem.ground)
    return seen_reflectance(inside, surface.k1, surface.k2, glare[film, None])


def state(problem: Problem, x: Floats) -> State:
    """Work out films and readings from the unknowns (size,)."""
    layout = problem.layout
    own, rest = x[: layout.spectra].reshape(BANDS, -1), x[layout.spectra :]
    p = layout.paints
    K = np.exp(np.concatenate([own[:, :p], problem.log_K.T], axis=1))
    S = np.exp(np.concatenate([own[:, p:], problem.log_S.T], axis=1))
    parts = problem.shares * np.exp(np.concatenate([rest[layout.volume], problem.log_volume]))
    parts[np.arange(layout.films), problem.minor] *= np.exp(rest[layout.share])
    volume = parts / parts.sum(axis=1, keepdims=True)
    k, s = volume @ K.T, volume @ S.T
    log_x = (np.log(problem.thickness) + rest[layout.thickness])[:, None]
    glares = np.concatenate([rest[layout.paint_glare], problem.known_glare])
    glare = rest[layout.glare] + problem.shares @ glares
    log_k, log_s = np.log(k) + log_x, np.log(s) + log_x
    return State(
        log_k=log_k,
        log_s=log_s,
        part_k=volume[:, None, :] * K / k[..., None],
        part_s=volume[:, None, :] * S / s[..., None],
        volume=volume,
        glare=glare,
        seen=_see(problem, log_k, log_s, glare),
    )


def slopes(problem: Problem, now: State) -> Slopes:
    """Differentiate what is seen by the unknowns."""
    layout, film = problem.layout, problem.film
    k, s, glare = now.log_k, now.log_s, now.glare
    by_k = (_see(problem, k + _STEP, s, glare) - _see(problem, k - _STEP, s, glare)) / (2 * _STEP)
    by_s = (_see(problem, k, s + _STEP, glare) - _see(problem, k, s - _STEP, glare)) / (2 * _STEP)
    p, readings = layout.paints, np.arange(film.size)
    part_k, part_s, volume = now.part_k[film], now.part_s[film], now.volume[film, None, :]
    spectra = np.concatenate(
        [by_k[..., None] * part_k[..., :p], by_s[..., None] * part_s[..., :p]], axis=-1
    )
    # A paint's amount works by what it adds to K and S less the room it takes.
    by_part = by_k[..., None] * (part_k - volume) + by_s[..., None] * (part_s - volume)
    others = np.zeros((film.size, BANDS, layout.others))
    others[readings, :, layout.thickness.start + film] = by_k + by_s
    others[readings, :, layout.share.start + film] = by_part[readings, :, problem.minor[film]]
    others[readings, :, layout.glare.start + film] = problem.surface.k1
    others[..., layout.volume] = by_part[..., :p]
    others[..., layout.paint_glare] = problem.surface.k1 * problem.shares[film, None, :p]
    return Slopes(spectra, others)


def mean_of_colorants(log_amounts: Floats) -> tuple[Floats, Floats]:
    """Give log K, then log S (72,), of a sum of colorants, and its slopes (72, colorants)."""
    means, by_amount = [], []
    for spectra in basis()[1:]:
        parts = np.exp(log_amounts)[:, None] * spectra
        whole = parts.sum(axis=0)
        means.append(np.log(whole))
        by_amount.append((parts / whole).T)
    return np.concatenate(means), np.concatenate(by_amount)


def colour_slope(reflectance: Floats) -> Floats:
    """Give the derivative (..., 3, 36) of CIELAB, D65, by reflectance (..., 36)."""
    weights, white = light_weights(), np.array(light_white())
    t = np.asarray(reflectance @ weights) / white
    by_t = np.where(t > (6 / 29) ** 3, 1 / (3 * np.cbrt(np.maximum(t, 1e-9)) ** 2), 841 / 108)
    f = by_t[..., None] * (weights / white).T
    x, y, z = f[..., 0, :], f[..., 1, :], f[..., 2, :]
    return np.stack([116 * y, 500 * (x - y), 200 * (y - z)], axis=-2)
