"""The uncertainty of a colour as one figure that an eye would agree with.

A step of CIELAB is one of CIEDE2000 only near grey: of a strong colour it is half as much or less.
"""

from __future__ import annotations

from math import sqrt
from typing import TYPE_CHECKING

import numpy as np

from swatchwright.colour.difference import delta_e_2000

if TYPE_CHECKING:
    from swatchwright.values import Covariance, KnownColour, Lab

__all__ = ["give_or_take", "usual_difference"]


def usual_difference(lab: Lab, covariance: Covariance) -> float:
    """Give the median CIEDE2000 of a colour from what it is taken for.

    Parameters
    ----------
    lab
        The colour.
    covariance
        Its uncertainty, in squared Lab units.

    Notes
    -----
    CIEDE2000 is taken along the three axes of the uncertainty, a standard deviation to either
    side. The median of the sum of squares is that of a gamma distribution of the same mean and
    variance (Wilson and Hilferty 1931).
    """
    variances, axes = np.linalg.eigh(np.array(covariance))
    steps = (np.sqrt(np.maximum(variances, 0.0)) * axes).T
    here = np.array(lab.triple)
    seen = (delta_e_2000(here, here + steps) + delta_e_2000(here, here - steps)) / 2
    parts = np.asarray(seen, dtype=np.float64) ** 2
    total = float(parts.sum())
    if total <= 0:
        return 0.0
    freedom = total**2 / float(np.sum(parts**2))
    return sqrt(total * (1 - 2 / (9 * freedom)) ** 3)


def give_or_take(colour: KnownColour) -> float:
    """Give the same of a colour that carries its uncertainty; 0 for one that is exact."""
    return 0.0 if colour.covariance is None else usual_difference(colour.lab, colour.covariance)
