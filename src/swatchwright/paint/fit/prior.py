"""What is believed of a paint before anything of it is read.

A paint's log K and log S are a mean and a smooth, random departure from it (a Gaussian process).
The mean is either one level for all wavelengths, for pigments nobody has seen yet, or a
non-negative sum of the measured colorants, for a paint that is likely to be made of such.

The widths of the first were chosen by cross-validation on the oils, those of the second from how
far each measured colorant lies from what the others sum to (tools/learn_bends.py).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.colorants import colorants

__all__ = ["COLORANT_PAINT", "UNSEEN_PIGMENT", "Bend", "Errors", "Prior", "Surface", "basis"]

Floats = NDArray[np.floating[Any]]


@dataclass(frozen=True, slots=True)
class Bend:
    """How far a logarithmic spectrum may depart from its mean.

    Parameters
    ----------
    level
        Standard deviation of the whole spectrum's height.
    shape
        Standard deviation at each wavelength beyond that.
    length
        Distance over which the shape forgets itself, nm.
    rough
        Whether the shape has corners (exponential kernel) or none (Matern, 3/2).
    """

    level: float
    shape: float
    length: float
    rough: bool = False

    def covariance(self) -> Floats:
        """Give the (36, 36) covariance of the departures."""
        apart = np.abs(WAVELENGTHS[:, None] - WAVELENGTHS)
        far = apart / self.length
        if self.rough:
            kernel = np.exp(-far)
        else:
            kernel = (1.0 + np.sqrt(3.0) * far) * np.exp(-np.sqrt(3.0) * far)
        tiny = 1e-6 * np.eye(WAVELENGTHS.size)
        return np.asarray(self.level**2 + self.shape**2 * kernel + tiny)


@dataclass(frozen=True, slots=True)
class Prior:
    """What is believed of a paint.

    Parameters
    ----------
    K, S
        Departures of log K and log S.
    log_K, log_S
        Their mean where there are no colorants.
    colorants
        Whether the mean is a sum of colorants.
    amount, white_amount, amount_spread
        Usual part of a colorant and of the white in all that is pigment, and the standard
        deviation of its logarithm above that: wide, so that most are traces.
    trace_spread
        The same below it: wider, for what a paint lacks it may lack altogether.
    total, total_spread
        Median of the sum of amounts, in units of the white's mean S, and the standard deviation of
        its logarithm: one paint holds about as much pigment as another, whatever its colour.
    volume_spread
        Standard deviation of the logarithm of the volume of a unit of the paint.
    """

    K: Bend
    S: Bend
    log_K: float = 0.0
    log_S: float = 0.0
    colorants: bool = False
    amount: float = 0.01
    white_amount: float = 0.3
    amount_spread: float = 2.0
    trace_spread: float = 4.0
    total: float = 1.0
    total_spread: float = 1.0
    volume_spread: float = 1e-3


UNSEEN_PIGMENT = Prior(
    K=Bend(2.4, 7.2, 115.0, rough=True),
    S=Bend(0.7, 0.68, 700.0, rough=True),
    log_K=3.3,
    log_S=-0.8,
    volume_spread=0.35,
)
"""A pigment in oil of which nothing is known, mixed by mass; unit of S: 1 / film."""

COLORANT_PAINT = Prior(K=Bend(0.2, 0.65, 50.0), S=Bend(0.2, 0.45, 50.0), colorants=True)
"""A paint made of pigments like those measured."""


@dataclass(frozen=True, slots=True)
class Surface:
    """The surface of a brush-out as a fit needs it.

    Parameters
    ----------
    k1, k2
        Share of light reflected by the surface outside, and of diffuse light inside.
    glare
        Share of the outer reflection that was read, 0-1.
    glare_spread
        Standard deviation of the glare from film to film.
    paint_glare_spread
        The same from paint to paint.
    ground_k1
        The k1 of the bare ground, all of which was read.
    """

    k1: float = 0.04
    k2: float = 0.6
    glare: float = 1.0
    glare_spread: float = 0.02
    paint_glare_spread: float = 0.02
    ground_k1: float = 0.0


@dataclass(frozen=True, slots=True)
class Errors:
    """How far readings and formulas are trusted.

    Parameters
    ----------
    reading
        Standard deviation of a read reflectance.
    formula
        Standard deviation of what the formulas get wrong, on the cube root of reflectance.
    colour
        The same in units of CIELAB.
    share
        Standard deviation of the logarithm of a weighed share.
    alike
        Neighbouring bands whose errors are one error, 1 or more; for telling how well a paint is
        known.
    doubt
        Root-mean-square error of a film, in standard deviations, at which it is trusted half.
    """

    reading: float = 0.003
    formula: float = 0.01
    colour: float = 0.5
    share: float = 0.08
    alike: float = 5.0
    doubt: float = 3.0


@cache
def basis() -> tuple[tuple[str, ...], Floats, Floats]:
    """Give the colorants' names, and their K and S (colorants, 36), in the file's order."""
    table = colorants()
    K, S = (np.maximum([pair[i] for pair in table.values()], 1e-5) for i in (0, 1))
    return tuple(table), K, S
