"""A paint as a fit leaves it: K, S, and how well they are known; and mixtures of such paints."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS, lab_of
from swatchwright.paint.film import film_reflectance, reflectance_of_ratio
from swatchwright.paint.fit.prior import Surface
from swatchwright.paint.paints import HowKnown
from swatchwright.paint.surface import inner_reflectance, seen_reflectance

__all__ = [
    "FORMULA_SPREAD",
    "FittedPaint",
    "at_its_level",
    "in_unit",
    "known_paint",
    "predict",
    "predict_draws",
    "spread_of_lab",
]

Floats = NDArray[np.floating[Any]]

FORMULA_SPREAD = 2.3
"""What two-constant theory gets wrong in real paint, units of CIELAB: with it, regions of 90 % held
91 % of the measured oil mixtures, each predicted from all others (see docs/accuracy.md)."""


# Of log S that counts as known.
_KNOWN_S = 0.005


@dataclass(frozen=True, slots=True, eq=False)
class FittedPaint:
    """A paint with what is known of it.

    Parameters
    ----------
    K, S
        (36,) per unit of film thickness.
    factor
        (72, r): ``factor @ factor.T`` is the covariance of log K, then log S.
    how_known
        Where K and S come from.
    volume
        Dry volume of a unit of the paint, relative to the others: 1 where shares are by volume.
    glare
        Share of the surface's own reflection that is read from it.
    amounts
        What it would be made of, in units of the white's mean S; only what counts.
    notes
        What was assumed, in plain words.
    """

    K: Floats
    S: Floats
    factor: Floats
    how_known: HowKnown = HowKnown.FITTED
    volume: float = 1.0
    glare: float = 1.0
    amounts: Mapping[str, float] = field(default_factory=dict)
    notes: tuple[str, ...] = ()

    def draw(self, count: int, rng: np.random.Generator) -> tuple[Floats, Floats]:
        """Draw K and S, each (count, 36), as they might be given what is known."""
        steps = rng.standard_normal((count, self.factor.shape[1])) @ self.factor.T
        bands = self.K.size
        return self.K * np.exp(steps[:, :bands]), self.S * np.exp(steps[:, bands:])


def known_paint(K: ArrayLike, S: ArrayLike, *, glare: float = 1.0) -> FittedPaint:
    """Make a paint of which K and S (36,) are taken as exact, such as the white one lets down."""
    k, s = (np.asarray(v, dtype=np.float64) for v in (K, S))
    return FittedPaint(k, s, np.zeros((2 * k.size, 0)), HowKnown.MEASURED, glare=glare)


@dataclass(frozen=True, slots=True, eq=False)
class _Laid:
    """Where a film is laid, and how its surface is read."""

    ground: Floats | None
    thickness: float
    surface: Surface

    def seen(self, K: Floats, S: Floats, glare: float) -> Floats:
        surface = self.surface
        if self.ground is None:
            film = reflectance_of_ratio(K / S)
        else:
            there = np.isfinite(self.ground)
            held = np.interp(WAVELENGTHS, WAVELENGTHS[there], self.ground[there])
            inside = np.clip(inner_reflectance(held, surface.ground_k1, surface.k2), 1e-4, 0.999)
            film = film_reflectance(K, S, self.thickness, inside)
        return seen_reflectance(film, surface.k1, surface.k2, glare)


def predict(
    paints: Mapping[str, FittedPaint],
    shares: Mapping[str, float],
    ground: Floats | None = None,
    thickness: float = 1.0,
    surface: Surface | None = None,
) -> Floats:
    """Predict the reflectance factor (36,) of a mixture, as it would be read.

    Parameters
    ----------
    paints
        Fitted paints by name.
    shares
        Parts of each, of any sum, by what the fit took them by.
    ground
        (36,) reflectance factor of the bare ground, NaN where unknown; None if it is hidden.
    thickness
        Of the film, in the fit's unit.
    surface
        The surface that the fit was told; the ordinary one if None.
    """
    drawn = {name: (paints[name].K[None], paints[name].S[None]) for name in shares}
    laid = _Laid(ground, thickness, surface or Surface())
    return np.asarray(_mixture(paints, drawn, shares, laid)[0])


def predict_draws(
    paints: Mapping[str, FittedPaint],
    shares: Mapping[str, float],
    count: int,
    rng: np.random.Generator,
    *,
    ground: Floats | None = None,
    thickness: float = 1.0,
    surface: Surface | None = None,
) -> Floats:
    """Predict (count, 36) reflectances of a mixture as they might be, as `predict` does one."""
    drawn = {name: paints[name].draw(count, rng) for name in shares}
    laid = _Laid(ground, thickness, surface or Surface())
    return _mixture(paints, drawn, shares, laid)


def _mixture(
    paints: Mapping[str, FittedPaint],
    drawn: Mapping[str, tuple[Floats, Floats]],
    shares: Mapping[str, float],
    laid: _Laid,
) -> Floats:
    total = sum(shares.values())
    volumes = {name: part / total * paints[name].volume for name, part in shares.items()}
    whole = sum(volumes.values())
    K, S = (
        np.sum([volumes[name] / whole * drawn[name][i] for name in shares], axis=0) for i in (0, 1)
    )
    glare = sum(part / total * paints[name].glare for name, part in shares.items())
    return laid.seen(K, S, float(glare))


def spread_of_lab(reflectances: Floats, formula: float = 0.0) -> tuple[Floats, Floats]:
    """Give mean CIELAB (3,) and its covariance (3, 3) of drawn reflectances (n, 36), n > 3.

    Parameters
    ----------
    reflectances
        As `predict_draws` gives them.
    formula
        Standard deviation, in units of CIELAB, of what the theory of mixing itself gets wrong:
        `FORMULA_SPREAD` for real paint, 0 where the theory is the truth.
    """
    lab = lab_of(reflectances)
    return lab.mean(axis=0), np.asarray(np.cov(lab.T) + formula**2 * np.eye(3))


def in_unit(paint: FittedPaint, factor: float) -> FittedPaint:
    """Give the paint with K and S in another unit: both times the factor.

    A shelf's K and S are per mm; a fit's are in units of the white's mean S, which is 1 in the
    colorant basis. So a shelf's white goes into a fit divided by its mean S, films' thicknesses
    times it, and what is fitted comes out times it again.
    """
    return replace(paint, K=paint.K * factor, S=paint.S * factor)


def at_its_level(paint: FittedPaint) -> FittedPaint:
    """Give the paint with its S taken as known: it is the measure of the others' strength.

    At each wavelength K and S of a white that hides may go up and down together and nothing is
    seen of it; paints that were fitted by their let-downs with it go up and down with it too. What
    is left is the covariance of a Gaussian of which all log S are known, to half a percent.
    """
    of_S = paint.factor[paint.S.size :]
    seen = np.linalg.solve(of_S @ of_S.T + _KNOWN_S**2 * np.eye(len(of_S)), of_S)
    left, directions = np.linalg.eigh(np.eye(of_S.shape[1]) - of_S.T @ seen)
    return replace(paint, factor=paint.factor @ directions * np.sqrt(np.maximum(left, 0.0)))
