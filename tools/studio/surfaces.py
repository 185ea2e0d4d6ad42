"""Published reflectances: a chart's patches, and surfaces of many kinds, textiles among them."""

from functools import cache

import colour
import numpy as np
from colour.quality.cfi2017 import load_TCS_CIE2017

from studio.chart import chart_reflectances
from studio.curves import CURVES
from studio.lights import GRID, Array, on_grid

__all__ = ["CLOTHS", "chart_patches", "cie_samples", "cloths", "flat", "matt_paint"]

CLOTHS = ("clay red", "ink blue", "natural linen", "sea green", "straw yellow", "off-white")


def chart_patches() -> Array:
    """Give the 24 patches of a chart, shape (24, 81)."""
    return chart_reflectances()


@cache
def cie_samples() -> Array:
    """Give the 99 colour samples of CIE 224:2017, shape (99, 81), 0-1.

    They were chosen from textiles, paints, plastics, prints, skin and plants.
    """
    samples: Array = on_grid(load_TCS_CIE2017(colour.SpectralShape(380, 780, 5))).T
    return np.clip(samples, 0.0, 1.0)


def cloths() -> Array:
    """Give the invented cloths of the sample images, shape (6, 81)."""
    return np.stack([CURVES[name] for name in CLOTHS])


def flat(*reflectances: float) -> Array:
    """Give greys of these reflectances at every wavelength, shape (n, 81)."""
    return np.asarray(reflectances, dtype=np.float64)[:, None] * np.ones(GRID.size)


def matt_paint(reflectance: Array, shift: tuple[float, float, float], tilt: float) -> Array:
    """Give what a painter brushes out for a cloth: near to it in colour, of other colorants.

    Parameters
    ----------
    reflectance
        Of the cloth, shape (81,).
    shift
        Factors less one on the short, middle and long third of the spectrum.
    tilt
        How far its spectrum wavers about the cloth's, as other colorants do: height of a ripple
        that has two and a half waves over the grid.
    """
    centres = np.array([440.0, 540.0, 640.0])
    bands = np.exp(-0.5 * ((GRID[:, None] - centres) / 50.0) ** 2)
    bands /= bands.sum(axis=1, keepdims=True)
    ripple = tilt * np.sin(2 * np.pi * 2.5 * (GRID - GRID[0]) / (GRID[-1] - GRID[0]))
    made: Array = np.clip(reflectance * (1 + bands @ np.asarray(shift) + ripple), 0.005, 0.98)
    return made
