"""Spectra on the one grid we use, the lights a piece may stand in, and reflectance to colour.

Every spectrum inside the program stands on `WAVELENGTHS`: 380 to 730 nm by 10 nm, the natural grid
of handheld instruments. Colour is summed with weighting tables made as ASTM E2022 describes: the
light and the observer at 5 nm, reflectance carried to that step by cubic interpolation, so that
the narrow lines of fluorescent and LED lamps keep their place.

References
----------
CIE 015:2018 (observers, lights; tables as distributed by colour-science 0.4.7);
ASTM E2022-16 (weighting tables); ASTM E308-18. See docs/bibliography.md.
"""

from __future__ import annotations

from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.convert import xyz_to_lab

__all__ = [
    "WAVELENGTHS",
    "Light",
    "interpolation",
    "lab_of",
    "light_weights",
    "light_white",
    "to_grid",
    "xyz_of",
]

Floats = NDArray[np.floating[Any]]

WAVELENGTHS: NDArray[np.float64] = np.arange(380.0, 731.0, 10.0)
"""The one grid of spectra, nm."""

WAVELENGTHS.setflags(write=False)


class Light(StrEnum):
    """A light of the standard, by the name of its column in the table."""

    D65 = "D65"
    D50 = "D50"
    LAMP = "A"
    WARM_LED = "LED-B1"
    COOL_LED = "LED-B3"
    TUBE = "FL11"


# XYZ (Y = 100) of the perfect white under each light, 2 degree observer: CIE 015:2018 where
# it prints them, else the sum of its 5 nm tables, which has the x, y that it prints. A table of
# weights is scaled to end on these.
_WHITES = {
    Light.D65: (95.047, 100.0, 108.883),
    Light.D50: (96.422, 100.0, 82.521),
    Light.LAMP: (109.850, 100.0, 35.585),
    Light.WARM_LED: (111.808, 100.0, 33.411),
    Light.COOL_LED: (100.894, 100.0, 67.715),
    Light.TUBE: (100.961, 100.0, 64.351),
}


def light_white(light: Light = Light.D65) -> tuple[float, float, float]:
    """Give XYZ of the perfect white under a light, with Y = 1."""
    x, y, z = _WHITES[light]
    return (x / 100, y / 100, z / 100)


def interpolation(source: ArrayLike, target: ArrayLike) -> NDArray[np.float64]:
    """Give the matrix that carries values from one set of wavelengths to another.

    Cubic (four-point Lagrange) inside, the nearest end value outside.

    Parameters
    ----------
    source
        (n,) increasing wavelengths, nm, n >= 1.
    target
        (m,) wavelengths, nm.

    Returns
    -------
    (m, n) matrix whose rows sum to 1.
    """
    known = np.asarray(source, dtype=np.float64)
    wanted = np.clip(np.asarray(target, dtype=np.float64), known[0], known[-1])
    points = min(4, known.size)
    first = np.clip(np.searchsorted(known, wanted, side="right") - 2, 0, known.size - points)
    nodes = first[:, None] + np.arange(points)
    matrix = np.zeros((wanted.size, known.size))
    for i in range(points):
        others = [j for j in range(points) if j != i]
        top = np.prod([wanted - known[nodes[:, j]] for j in others], axis=0)
        bottom = np.prod([known[nodes[:, i]] - known[nodes[:, j]] for j in others], axis=0)
        matrix[np.arange(wanted.size), nodes[:, i]] = top / bottom
    return matrix


def to_grid(wavelengths: ArrayLike, values: ArrayLike) -> NDArray[np.float64]:
    """Carry non-negative spectra from their own wavelengths to `WAVELENGTHS`.

    Parameters
    ----------
    wavelengths
        (n,) increasing, nm.
    values
        (..., n), not negative.

    Returns
    -------
    (..., 36), not negative; beyond the ends of the data the end value is held.
    """
    spread = interpolation(wavelengths, WAVELENGTHS)
    return np.maximum(np.asarray(values, dtype=np.float64) @ spread.T, 0.0)


@cache
def _table() -> dict[str, NDArray[np.float64]]:
    """Read the CIE table at 5 nm: lights and the 2 degree observer, 380 to 780 nm."""
    text = files("swatchwright.colour").joinpath("cie_5nm.csv").read_text(encoding="utf-8")
    head, *rows = text.splitlines()
    columns = np.array([[float(cell) for cell in row.split(",")] for row in rows]).T
    return dict(zip(head.split(","), columns, strict=True))


@cache
def light_weights(light: Light = Light.D65) -> NDArray[np.float64]:
    """Give the (36, 3) weights that sum a reflectance on `WAVELENGTHS` to XYZ (white Y = 1)."""
    table = _table()
    observer = np.stack([table["x2"], table["y2"], table["z2"]], axis=1)
    fine = observer * table[light.value][:, None]
    coarse = interpolation(WAVELENGTHS, table["nm"]).T @ fine
    weights = coarse * (np.array(light_white(light)) / coarse.sum(axis=0))
    weights.setflags(write=False)
    return np.asarray(weights)


def xyz_of(reflectance: ArrayLike, light: Light = Light.D65) -> Floats:
    """Sum reflectances (..., 36) in 0-1 to XYZ (..., 3), white Y = 1, 2 degree observer."""
    return np.asarray(np.asarray(reflectance) @ light_weights(light))


def lab_of(reflectance: ArrayLike, light: Light = Light.D65) -> Floats:
    """Give CIELAB (..., 3) of reflectances (..., 36) relative to the light's own white."""
    return xyz_to_lab(xyz_of(reflectance, light), light_white(light))
