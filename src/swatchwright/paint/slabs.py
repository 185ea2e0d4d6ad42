"""Films, surfaces and clear coats stacked on each other, in any order.

A slab is what diffuse light meets: what it throws back above and below, and what it lets through
down and up. A film of paint is one, and so is the step from one refractive index to another: with
that, Saunderson's correction is a step over a film, and a varnished glaze over a painted board is
a stack of five. The light that enters from outside may be a beam: the first step then has the
reflectance of a beam. All broadcast.

References
----------
Stokes 1862, Proc. R. Soc. 11:545 (piles of plates); Kubelka 1954, J. Opt. Soc. Am. 44:330
(layers that differ); Saunderson 1942, J. Opt. Soc. Am. 32:727. See docs/bibliography.md.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import reduce
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.paint.film import film_reflectance, film_transmittance
from swatchwright.paint.surface import normal_reflectance, outer_diffuse

__all__ = ["Slab", "clear_slab", "film_slab", "on_ground", "over", "stacked", "step_slab"]

Floats = NDArray[np.floating[Any]]

# So near to no step at all the closed form of diffuse reflection loses its digits.
_NO_STEP = 0.02


@dataclass(frozen=True, slots=True, eq=False)
class Slab:
    """What a layer does to diffuse light, each 0-1.

    Parameters
    ----------
    above, below
        Reflectance to light from above, and from below.
    down, up
        Transmittance.
    """

    above: Floats
    below: Floats
    down: Floats
    up: Floats


def film_slab(K: ArrayLike, S: ArrayLike, thickness: ArrayLike) -> Slab:
    """Make the slab of a paint film without its surface (see `film.film_reflectance`)."""
    back = film_reflectance(K, S, thickness, 0.0)
    through = film_transmittance(K, S, thickness)
    return Slab(back, back, through, through)


def clear_slab(optical_depth: ArrayLike) -> Slab:
    """Make the slab of a clear, tinted layer.

    Parameters
    ----------
    optical_depth
        Absorption times thickness, 0 or more, for light straight through; diffuse light goes
        twice as far, as in a Kubelka-Munk film of no scattering.
    """
    through = np.exp(-2.0 * np.asarray(optical_depth, dtype=np.float64))
    none = np.zeros_like(through)
    return Slab(none, none, through, through)


def _diffuse_from_thin(ratio: Floats) -> Floats:
    """Give the diffuse reflectance of a step up in index by a ratio of 1 or more."""
    far = outer_diffuse(np.maximum(ratio, 1.0 + _NO_STEP))
    # From 0 at no step, about as the square root of Fresnel's normal value: to 1e-3 here.
    near = outer_diffuse(1.0 + _NO_STEP) * (ratio - 1.0) / _NO_STEP
    return np.asarray(np.where(ratio > 1.0 + _NO_STEP, far, near))


def step_slab(
    index_above: ArrayLike, index_below: ArrayLike, *, beam: bool = False, glare: ArrayLike = 1.0
) -> Slab:
    """Make the slab of a smooth step in refractive index: air, water, binder, oil, wax, varnish.

    Parameters
    ----------
    index_above, index_below
        Refractive indices, 1 or more.
    beam
        Whether light comes from above as a beam straight down, as in an instrument, and not from
        everywhere.
    glare
        Share of what the step throws back above that is seen (0 for a gloss seen off its glint).
    """
    above, below = (np.asarray(n, dtype=np.float64) for n in (index_above, index_below))
    ratio = np.maximum(above, below) / np.minimum(above, below)
    thin = _diffuse_from_thin(ratio)
    dense = 1.0 - (1.0 - thin) / ratio**2
    rising = below >= above
    diffuse = np.where(rising, thin, dense)
    back = np.where(rising, dense, thin)
    front = normal_reflectance(ratio) if beam else diffuse
    return Slab(np.asarray(glare) * front, back, 1.0 - front, 1.0 - back)


def over(top: Slab, bottom: Slab) -> Slab:
    """Lay one slab on another."""
    between = 1.0 / (1.0 - top.below * bottom.above)
    return Slab(
        above=top.above + top.down * top.up * bottom.above * between,
        below=bottom.below + bottom.down * bottom.up * top.below * between,
        down=top.down * bottom.down * between,
        up=top.up * bottom.up * between,
    )


def stacked(*slabs: Slab) -> Slab:
    """Lay slabs on each other, the uppermost first; at least one."""
    return reduce(over, slabs)


def on_ground(slab: Slab, ground: ArrayLike) -> Floats:
    """Give the reflectance of a slab on a ground of that reflectance, 0-1."""
    g = np.asarray(ground, dtype=np.float64)
    return np.asarray(slab.above + slab.down * slab.up * g / (1.0 - slab.below * g))
