"""Clear finishes: wax, oil and varnish over a painted surface, with their tint and sheen.

A clear coat does three things: it fills pores, so that a chalky film scatters less; its own tint
takes blue from the light on the way in and out; and its surface replaces the paint's, with the
sheen it is rubbed or brushed to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.slabs import clear_slab, on_ground, stacked, step_slab

__all__ = ["AMBER_WAX", "CLEAR_VARNISH", "CLEAR_WAX", "OIL", "ClearFinish", "finished", "soaked"]

Floats = NDArray[np.floating[Any]]


@dataclass(frozen=True, slots=True)
class ClearFinish:
    """A clear finish.

    Parameters
    ----------
    index
        Refractive index, above 1.
    tint
        Absorption times thickness of one coat at 450 nm, 0 or more.
    fade
        Distance over which the tint falls to 1/e towards the red, nm.
    glare
        Share of its surface's reflection that is seen: 1 matte, 0 gloss off its glint.
    fills
        Share of the paint's open pores that it fills, 0-1.
    """

    index: float
    tint: float = 0.0
    fade: float = 70.0
    glare: float = 0.3
    fills: float = 1.0

    def depth(self, coats: float = 1.0) -> Floats:
        """Give absorption times thickness (36,) of that many coats."""
        return np.asarray(coats * self.tint * np.exp((450.0 - WAVELENGTHS) / self.fade))


# Indices of the substances are of the trade's handbooks, from memory; tints, sheen and filling
# are common practice, no source, and are to be learnt from a photo of a finished sample.
CLEAR_WAX = ClearFinish(1.44, glare=0.5, fills=0.8)
AMBER_WAX = ClearFinish(1.44, tint=0.06, glare=0.5, fills=0.8)
OIL = ClearFinish(1.48, tint=0.04, glare=0.3)
CLEAR_VARNISH = ClearFinish(1.5, tint=0.005, glare=0.3)


def soaked(S: ArrayLike, wet_scattering: ArrayLike, finish: ClearFinish) -> Floats:
    """Give S of a paint whose pores a finish has filled.

    Parameters
    ----------
    S
        (..., 36) dry.
    wet_scattering
        (...) the family's factor on S when water fills the pores; above 1, where there are none,
        nothing changes.
    finish
        What fills them; it is nearer to the binder's index than water is, which is not counted.
    """
    fall = 1.0 - np.minimum(np.asarray(wet_scattering, dtype=np.float64), 1.0)
    return np.asarray(np.asarray(S) * (1.0 - finish.fills * fall)[..., None])


def finished(
    inside: ArrayLike, finish: ClearFinish, coats: float = 1.0, paint_index: float = 1.5
) -> Floats:
    """Give the reflectance factor of a painted surface under a clear finish.

    Parameters
    ----------
    inside
        (..., 36) reflectance inside the paint, its pores filled already.
    finish, coats
        The finish and how many coats of it, 0 or more.
    paint_index
        Refractive index of the paint's binder.
    """
    stack = stacked(
        step_slab(1.0, finish.index, beam=True, glare=finish.glare),
        clear_slab(finish.depth(coats)),
        step_slab(finish.index, paint_index),
    )
    return on_ground(stack, inside)
