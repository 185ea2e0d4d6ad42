"""Invented reflectance curves, smooth as those of dyes and woods are, with plain names."""

import numpy as np

from studio.lights import GRID, Array

__all__ = ["CURVES", "GREY_CARD", "curve"]

GREY_CARD = 0.18
"""Reflectance of the grey card at every wavelength: flat, as a good card nearly is."""

Term = tuple[float, float, float]


def curve(base: float, steps: tuple[Term, ...] = (), bumps: tuple[Term, ...] = ()) -> Array:
    """Build a reflectance from a floor, soft steps up and soft bumps.

    Parameters
    ----------
    base
        Reflectance of the floor, 0-1.
    steps
        Height, centre in nm and width in nm of each logistic step.
    bumps
        Height, centre in nm and standard deviation in nm of each Gaussian bump.

    Returns
    -------
    Array
        Reflectance on the grid, shape (81,).
    """
    total = np.full(GRID.size, base)
    for height, centre, width in steps:
        total += height / (1.0 + np.exp((centre - GRID) / width))
    for height, centre, width in bumps:
        total += height * np.exp(-0.5 * ((GRID - centre) / width) ** 2)
    return total


CURVES: dict[str, Array] = {
    "clay red": curve(0.067, ((0.34, 594, 16), (0.06, 690, 25))),
    "ink blue": curve(0.029, ((0.2, 705, 14),), ((0.098, 440, 58.8),)),
    "natural linen": curve(0.299, ((0.2, 455, 45), (0.173, 590, 40))),
    "sea green": curve(0.133, ((0.25, 720, 20),), ((0.191, 520, 48), (0.025, 440, 40))),
    "straw yellow": curve(0.173, ((0.297, 490, 18), (0.325, 575, 30))),
    "off-white": curve(0.503, ((0.204, 420, 22), (0.12, 560, 50))),
    "pale wood": curve(0.171, ((0.064, 470, 45), (0.102, 590, 45))),
    "dark wood": curve(0.032, ((0.009, 470, 45), (0.032, 590, 45))),
    "old sea paint": curve(0.215, (), ((0.12, 500, 50), (0.038, 430, 40))),
    "grey card": np.full(GRID.size, GREY_CARD),
    "light": np.ones(GRID.size),
}
"""Invented for the samples; each of cloth is a plausible dye, none is a measurement."""
