"""Lights as spectral power on one grid, from the tables of CIE 015:2018 in colour-science."""

from functools import cache
from typing import Any

import colour
import numpy as np
from numpy.typing import NDArray

__all__ = ["GRID", "Array", "daylight", "light", "on_grid"]

Array = NDArray[np.float64]

GRID: Array = np.arange(380.0, 781.0, 5.0)
"""The wavelengths of every spectrum here, in nm: 380 to 780 by 5, 81 of them."""


def on_grid(table: Any) -> Array:  # noqa: ANN401 - colour-science is not typed
    """Bring a table of colour-science to the grid.

    Returns
    -------
    Array
        Values at 380 to 780 nm by 5, shape (81,) or (81, n); held flat outside the table.
    """
    shape = colour.SpectralShape(GRID[0], GRID[-1], GRID[1] - GRID[0])
    return np.asarray(table.copy().align(shape).values, dtype=np.float64)


@cache
def light(name: str) -> Array:
    """Give a light of the CIE tables by its name there: D65, D50, A, FL11, LED-B1 and so on.

    Returns
    -------
    Array
        Relative spectral power, shape (81,), one on the average of the grid.
    """
    power = on_grid(colour.SDS_ILLUMINANTS[name])
    return _unit(power)


@cache
def daylight(kelvin: float) -> Array:
    """Give the CIE daylight of a colour temperature (CIE 015:2018, section 4.1.2).

    Parameters
    ----------
    kelvin
        Correlated colour temperature, 4000 to 25 000 K.

    Returns
    -------
    Array
        Relative spectral power, shape (81,), one on the average of the grid.
    """
    xy = colour.temperature.CCT_to_xy_CIE_D(kelvin)
    return _unit(on_grid(colour.sd_CIE_illuminant_D_series(xy)))


def _unit(power: Array) -> Array:
    unit: Array = power / power.mean()
    unit.flags.writeable = False
    return unit
