"""The smoothest reflectance that has a given colour, for a cloth whose spectrum nobody knows.

Of all reflectances between 0 and 1 with the wanted XYZ, the one whose steps from band to band are
least, counted in the inverse hyperbolic tangent so that it never leaves 0-1.

References
----------
Burns 2020, Color Res. Appl. 45(1):33-48 (least hyperbolic tangent slope squared); Levenberg 1944,
Q. Appl. Math. 2:164 (damping). See docs/bibliography.md.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_xyz
from swatchwright.colour.spectrum import WAVELENGTHS, light_weights
from swatchwright.values import Lab

__all__ = ["smoothest_reflectance"]

Floats = NDArray[np.floating[Any]]

_CLOSE = 3e4
"""How much more a miss in XYZ counts than a step between bands."""

_TURNS = 60
_ENDS = 4.5


@lru_cache(maxsize=256)
def smoothest_reflectance(wanted: Lab) -> Floats:
    """Give the smoothest reflectance (36,) of a colour under D65, 0-1.

    For a colour that no surface can have it is the nearest that one can.
    """
    weights, target = light_weights(), lab_to_xyz(wanted.triple)
    grey = np.clip(target[1], 0.01, 0.99)
    z = np.full(WAVELENGTHS.size, np.arctanh(2 * grey - 1))
    # A miss counts relative to the colour: a dark one is wanted as exactly as a pale one.
    task = _Task(weights, target, _CLOSE / (np.maximum(target, 0) + 0.02))
    damping, cost = 1e-3, np.inf
    for _ in range(_TURNS):
        now = float(task.off(z) @ task.off(z))
        if abs(cost - now) < 1e-9 * (1 + now):
            break
        cost = now
        z, damping = _moved(task, z, damping)
    found = (np.tanh(z) + 1) / 2
    found.setflags(write=False)
    return np.asarray(found)


@dataclass(frozen=True, slots=True, eq=False)
class _Task:
    """The XYZ to reach, and how much a miss in it counts."""

    weights: Floats
    target: Floats
    scale: Floats

    def off(self, z: Floats) -> Floats:
        """Give the steps from band to band, and the misses in XYZ."""
        R = (np.tanh(z) + 1) / 2
        return np.concatenate([np.diff(z), self.scale * (R @ self.weights - self.target)])

    def slopes(self, z: Floats) -> Floats:
        """Give how these change with each band."""
        R = (np.tanh(z) + 1) / 2
        steps = np.diff(np.eye(z.size), axis=0)
        return np.concatenate([steps, (self.scale[:, None] * self.weights.T) * (2 * R * (1 - R))])


def _moved(task: _Task, z: Floats, damping: float) -> tuple[Floats, float]:
    """Take one damped step that lowers the cost, if there is one; give the new damping too."""
    off, slopes = task.off(z), task.slopes(z)
    normal, gradient = slopes.T @ slopes, slopes.T @ off
    for _ in range(12):
        step = np.linalg.solve(normal + damping * np.eye(z.size), gradient)
        moved = np.clip(z - step, -_ENDS, _ENDS)
        new = task.off(moved)
        if float(new @ new) < float(off @ off):
            return moved, max(damping / 10, 1e-12)
        damping *= 10
    return z, damping
