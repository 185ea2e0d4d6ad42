"""What is known of a paint before it is fitted: brush-outs, and what was read off them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS, interpolation

__all__ = ["BrushOut", "Reading", "on_grid"]

Floats = NDArray[np.floating[Any]]


@dataclass(frozen=True, slots=True, eq=False)
class Reading:
    """One reading of a brush-out: a spectrum or a colour, over one ground.

    Parameters
    ----------
    reflectance
        (36,) reflectance factor 0-1 on `WAVELENGTHS`, NaN where it was not measured.
    lab, covariance
        (3,) CIELAB, D65, and its (3, 3) covariance; used where there is no spectrum.
    ground
        (36,) reflectance factor of the bare ground; None where the paint hides what is below.
    """

    reflectance: Floats | None = None
    lab: Floats | None = None
    covariance: Floats | None = None
    ground: Floats | None = None


@dataclass(frozen=True, slots=True, eq=False)
class BrushOut:
    """A film of one paint or of a mixture, laid once and read over one or more grounds.

    Parameters
    ----------
    shares
        Parts of each paint by name, 0 or more, of any sum: by dry volume, or by mass where
        the whole fit is told so.
    readings
        What was read off it; may be empty for a brush-out that is only thought of.
    thickness
        In the unit that K and S are to be in the inverse of, above 0.
    thickness_spread
        Standard deviation of the logarithm of the thickness, above 0.
    name
        What to call it in messages.
    """

    shares: Mapping[str, float]
    readings: tuple[Reading, ...] = ()
    thickness: float = 1.0
    thickness_spread: float = 0.15
    name: str = ""


def on_grid(wavelengths: ArrayLike, values: ArrayLike) -> Floats:
    """Carry measured reflectances to `WAVELENGTHS`, NaN beyond what was measured.

    Parameters
    ----------
    wavelengths
        (n,) increasing, nm.
    values
        (..., n).

    Returns
    -------
    (..., 36).
    """
    nm = np.asarray(wavelengths, dtype=np.float64)
    spread = interpolation(nm, WAVELENGTHS)
    spectra = np.asarray(values, dtype=np.float64) @ spread.T
    inside = np.clip(WAVELENGTHS, nm[0] - 1e-6, nm[-1] + 1e-6) == WAVELENGTHS
    return np.asarray(np.where(inside, spectra, np.nan))
