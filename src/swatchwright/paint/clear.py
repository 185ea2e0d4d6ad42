"""Clear finishes: wax, oil and varnish over a painted surface, with their tint and sheen.

A clear coat does three things: it fills pores, so that a chalky film scatters less; its own tint
takes blue from the light on the way in and out; and its surface replaces the paint's, with the
sheen it is rubbed or brushed to.

It does not turn light about, so light keeps its direction through any number of clear coats, bent
by each step in refractive index. Light from outside comes as a beam and crosses them straight;
light from the paint comes from all directions, and what is too flat to leave is turned back, by a
long way through the tint. Both are summed over angles, with Fresnel's formulas at each step.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.slabs import Slab, on_ground

__all__ = [
    "AMBER_WAX",
    "CLEAR_VARNISH",
    "CLEAR_WAX",
    "OIL",
    "ClearFinish",
    "clear_coats",
    "finished",
    "soaked",
]

Floats = NDArray[np.floating[Any]]

_NODES = 16


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
# are common practice, no source, and are to be learnt from a photo of a finished sample. A wax
# that has been rubbed up lies between eggshell (0.55) and satin (0.3), nearer to satin.
CLEAR_WAX = ClearFinish(1.44, glare=0.4, fills=0.8)
AMBER_WAX = ClearFinish(1.44, tint=0.06, glare=0.4, fills=0.8)
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


def clear_coats(
    indices: Sequence[float],
    depths: Sequence[ArrayLike],
    *,
    above: float = 1.0,
    below: float = 1.5,
    glare: ArrayLike = 1.0,
) -> Slab:
    """Make the slab of clear coats on each other, the uppermost first.

    Parameters
    ----------
    indices
        Refractive index of each, above 1.
    depths
        (..., 36) absorption times thickness of each, 0 or more, for light straight through.
    above
        Index of what lies on them: 1 for air, from which light comes as a beam straight down;
        more for paint, from which it comes from everywhere.
    below
        Index of the paint under them.
    glare
        Share of what they throw back into the air that is seen.
    """
    media = (above, *indices, below)
    taus = [np.asarray(depth, dtype=np.float64)[..., None] for depth in depths]
    if above == 1.0:
        back, through = (v[..., 0] for v in _crossed(media, taus, np.zeros(1)))
        top, down = np.asarray(glare) * back, through
    else:
        top, down = _diffuse(media, taus)
    under, up = _diffuse(media[::-1], taus[::-1])
    return Slab(top, under, down, up)


def _diffuse(media: Sequence[float], taus: Sequence[Floats]) -> tuple[Floats, Floats]:
    """Give reflectance and transmittance for perfectly diffuse light from the first medium."""
    sines, weights = _angles(min(1.0, min(media) / media[0]))
    back, through = _crossed(media, taus, sines * media[0] ** 2)
    return back @ weights, through @ weights


@cache
def _angles(critical: float) -> tuple[Floats, Floats]:
    """Give squared sines of angles and weights that sum diffuse light, on both sides of a kink.

    Diffuse light is even in the squared sine of its angle. At the critical angle what passes goes
    to nothing as a square root, which a squared step takes out.
    """
    x, w = np.polynomial.legendre.leggauss(_NODES)
    x, w = (x + 1.0) / 2.0, w / 2.0
    kink = critical**2
    below, above = kink * (1.0 - x**2), kink + (1.0 - kink) * (1.0 - (1.0 - x) ** 2)
    weights = np.concatenate([kink * 2.0 * x * w, (1.0 - kink) * 2.0 * (1.0 - x) * w])
    return np.concatenate([below, above]), weights


def _crossed(
    media: Sequence[float], taus: Sequence[Floats], invariant: Floats
) -> tuple[Floats, Floats]:
    """Give reflectance and transmittance (..., angles) of plane layers, many passes included.

    Parameters
    ----------
    media
        Index of each, the one that light comes from first.
    taus
        (..., 1) depth of each but the first and the last.
    invariant
        (angles,) squared index times squared sine, which every medium keeps (Snell).
    """
    cosines = [np.sqrt(np.maximum(1.0 - invariant / n**2, 0.0)) for n in media]
    back, back_up, through = _step(media, cosines, 0)
    for i, tau in enumerate(taus, 1):
        # A layer that light cannot enter lets none through, whatever it absorbs.
        pass_ = np.exp(-tau / np.maximum(cosines[i], 1e-9))
        next_back, next_up, next_through = _step(media, cosines, i)
        round_ = 1.0 / (1.0 - np.minimum(back_up * next_back * pass_**2, 1.0 - 1e-12))
        back_up, back, through = (
            next_up + next_through**2 * pass_**2 * back_up * round_,
            back + through**2 * pass_**2 * next_back * round_,
            through * pass_ * next_through * round_,
        )
    return back, through


def _step(
    media: Sequence[float], cosines: Sequence[Floats], i: int
) -> tuple[Floats, Floats, Floats]:
    """Give what a step turns back on either side and lets through, unpolarised (Fresnel)."""
    n1, n2, c1, c2 = media[i], media[i + 1], cosines[i], cosines[i + 1]
    across = ((n1 * c1 - n2 * c2) / np.maximum(n1 * c1 + n2 * c2, 1e-12)) ** 2
    along = ((n1 * c2 - n2 * c1) / np.maximum(n1 * c2 + n2 * c1, 1e-12)) ** 2
    back = np.where((c1 > 0) & (c2 > 0), (across + along) / 2.0, 1.0)
    return back, back, 1.0 - back


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
    coat = clear_coats([finish.index], [finish.depth(coats)], below=paint_index, glare=finish.glare)
    return on_ground(coat, inside)
