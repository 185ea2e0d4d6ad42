"""Measurements: what an instrument read off samples, as spectra, colours or both."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import to_grid
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.values import Lab

__all__ = ["Measurement", "Measurements", "on_grid"]

Floats = NDArray[np.floating[Any]]


@dataclass(frozen=True, slots=True, eq=False)
class Measurement:
    """What was read off one sample: a spectrum, a colour or both.

    Parameters
    ----------
    id
        What tells it from the others of its file.
    name
        What a person calls it; its id where the file gives no name.
    nm
        (n,) wavelengths of the instrument, increasing by even steps, nm; empty without a spectrum.
    reflectance
        (n,) reflectance factor 0-1 at these wavelengths; None without a spectrum.
    lab
        CIELAB for D65 and the 2 degree observer; None where the file gives none of use.
    notes
        What was corrected or passed over in this sample, in plain words.
    """

    id: str
    name: str
    nm: Floats
    reflectance: Floats | None
    lab: Lab | None
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Measurements:
    """The samples of one file, in its order, with what was assumed or corrected in all of them."""

    name: str
    rows: tuple[Measurement, ...]
    notes: tuple[str, ...] = ()


def on_grid(measurement: Measurement) -> NDArray[np.float64]:
    """Carry the spectrum of a measurement to the program's grid.

    Returns
    -------
    (36,) reflectance factor 0-1 on `colour.spectrum.WAVELENGTHS`; beyond what was measured the
    end value is held.

    Raises
    ------
    MendableError
        If it has no spectrum.
    """
    if measurement.reflectance is None:
        raise MendableError(
            say("Sample “{id}” has a colour and no spectrum.", id=measurement.id),
            say("Export the measurements with spectral reflectance, if the instrument reads it."),
        )
    # Cubic interpolation may swing past a steep edge next to white by a little.
    return np.minimum(to_grid(measurement.nm, measurement.reflectance), 1.0)
