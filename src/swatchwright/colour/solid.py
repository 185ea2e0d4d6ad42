"""The solid of object colours: which colours a surface that does not glow can have.

A reflectance lies between 0 and 1 at every wavelength, so in any direction of XYZ no surface goes
further than the one that reflects all where that direction gains and nothing where it loses: the
optimal colours. A colour further out than these in some direction belongs to no surface.

References
----------
Schroedinger 1920, Ann. Phys. 62:603; MacAdam 1935, J. Opt. Soc. Am. 25:361 (optimal colours).
See docs/bibliography.md.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_xyz
from swatchwright.colour.spectrum import light_weights
from swatchwright.values import Lab

__all__ = ["can_be_a_surface"]

Floats = NDArray[np.floating[Any]]

_DIRECTIONS = 4000
_SLACK = 0.005
"""XYZ (white Y = 1): directions are finite, and 10 nm bands cut the optimal colours a little."""


@cache
def _planes() -> tuple[Floats, Floats]:
    """Give directions (n, 3), evenly over a sphere, and how far the solid goes in each (n,)."""
    steps = np.arange(_DIRECTIONS) + 0.5
    height = 1 - 2 * steps / _DIRECTIONS
    turn = np.pi * (1 + np.sqrt(5)) * steps
    across = np.sqrt(1 - height**2)
    ways = np.stack([across * np.cos(turn), across * np.sin(turn), height], axis=1)
    return ways, np.maximum(ways @ light_weights().T, 0).sum(axis=1)


def can_be_a_surface(lab: Lab) -> bool:
    """Tell whether a surface can have a colour, D65; where it is hard to say, it can.

    >>> can_be_a_surface(Lab(60, 98, -60)), can_be_a_surface(Lab(95, 80, 0))
    (True, False)
    """
    ways, furthest = _planes()
    return bool(np.all(ways @ lab_to_xyz(lab.triple) <= furthest + _SLACK))
