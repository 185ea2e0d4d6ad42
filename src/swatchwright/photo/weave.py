"""The two colours of a weave: its yarn's, and that of the cloth from a metre away.

Near to, a weave is lit crowns of thread, flanks in shade and dark gaps; the yarn's colour is that
of the crowns. From a metre the eye no longer parts threads (it parts about a minute of arc, 0.3 mm
at that distance) and adds up their light, so the cloth looks darker than its yarn, and mixed where
warp and weft differ. The same holds for a pile. Light is therefore averaged as light, not as
stored numbers, over windows of several threads; folds, which an eye does see, stay apart.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.middle import middle

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo
    from swatchwright.photo.sampling import Sample

__all__ = ["Surface", "metre_light", "surface_of"]

Floats = NDArray[np.float64]

_WINDOW = 5
"""Side of the window over which light is averaged, in cells of the sample: a few threads
wide, for cells are wider the finer the photo shows them."""

_COVERED = 0.5
_WELL_INSIDE = 0.9
"""Windows count that hold this share of usable cells, and this part of the largest share of the
colour that any window holds."""

_FLAT = 0.7
"""Difference in L* of the lit part from the whole up to which a surface counts as flat; from twice
as much on it is a weave."""

_FEWEST = 25
_ALIKE = 25.0
"""So many neighbouring pixels count as one: demosaicing and compression make them alike."""


@dataclass(frozen=True, slots=True, eq=False)
class Surface:
    """A marked part of a photo that is of one colour.

    Parameters
    ----------
    yarn
        Linear sRGB of its lit part, as the photo shows it, shape (3,).
    metre
        That of the whole weave added up, shape (3,).
    middle
        x and y of its middle, in pixels.
    variance
        Of the middle of its pixels, along L*, a*, b*.
    """

    yarn: Floats
    metre: Floats
    middle: tuple[float, float]
    variance: Floats

    def light(self, seeing: str) -> Floats:
        """Give its light as seen near to ("yarn") or from a metre ("metre")."""
        return self.metre if seeing == "metre" else self.yarn

    def noise(self, seeing: str) -> Floats:
        """Give the variance of that; the mean over a weave is surer than its lit part."""
        return self.variance if seeing == "yarn" else self.variance / 2


def surface_of(photo: Photo, taken: Sample, what: str) -> Surface:
    """Read both colours of a part that is of one colour.

    Raises
    ------
    MendableError
        If it holds hardly a pixel that can be used.
    """
    light = photo.light_at(taken.x, taken.y).astype(np.float64)
    usable = light[taken.usable]
    if len(usable) < _FEWEST:
        raise MendableError(
            say("{what} holds only {count} pixels that can be used.", what=what, count=len(usable)),
            say("Draw it larger, where it is neither overexposed nor black."),
        )
    labs = np.asarray(linear_srgb_to_lab(usable), dtype=np.float64)
    metre = metre_light(light, taken.usable, taken.usable)
    return Surface(
        yarn=_yarn(labs, metre),
        metre=metre,
        middle=(float(taken.x[taken.usable].mean()), float(taken.y[taken.usable].mean())),
        variance=np.var(labs, axis=0) / max(1.0, len(labs) / _ALIKE),
    )


def _yarn(labs: Floats, metre: Floats) -> Floats:
    """Give the light of the lit part, shape (3,).

    On a flat surface there is nothing but noise between the lit part and the whole, and the whole
    is read with less of it.
    """
    lit = middle(labs)
    whole = np.asarray(linear_srgb_to_lab(metre), dtype=np.float64)
    relief = np.clip((abs(lit[0] - whole[0]) - _FLAT) / _FLAT, 0.0, 1.0)
    return np.asarray(lab_to_linear_srgb(whole + relief * (lit - whole)))


def metre_light(light: Floats, usable: NDArray[np.bool_], mine: NDArray[np.bool_]) -> Floats:
    """Add up the light of a weave where a colour of it prevails.

    Parameters
    ----------
    light
        Linear light of each cell of a sample, shape (rows, columns, 3).
    usable
        Which cells count, shape (rows, columns).
    mine
        Which are of the colour; at least one of them is usable.

    Returns
    -------
    Linear light, shape (3,): the median of windows well inside the colour.
    """
    from scipy.ndimage import uniform_filter

    size = max(1, min(_WINDOW, *(side // 2 for side in usable.shape)))

    def averaged(values: Floats) -> Floats:
        return np.asarray(uniform_filter(values, size, mode="constant"))

    cover = averaged(usable.astype(np.float64))
    share = averaged((mine & usable).astype(np.float64)) / np.maximum(cover, 1e-9)
    counts = mine & usable & (cover >= _COVERED * cover.max())
    best = float(share[counts].max()) if counts.any() else 0.0
    inside = counts & (share >= _WELL_INSIDE * best)
    if not inside.any():
        inside = mine & usable
    planes = [averaged(np.where(usable, light[..., c], 0.0))[inside] for c in range(3)]
    means = np.stack(planes, axis=-1) / cover[inside][:, np.newaxis]
    return np.asarray(np.median(means, axis=0))
