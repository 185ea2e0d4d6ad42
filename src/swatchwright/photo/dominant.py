"""The colours that a cloth is made of, as light shows them at their best.

k-means in CIELAB with lightness weighted down cuts a sample of the pixels; groups that are one
colour in light and shade are joined; each colour is the densest middle of its group.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import linear_srgb_to_lab
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.photo.clusters import Pixels, group
from swatchwright.photo.image import Photo, require_inside
from swatchwright.photo.middle import middle
from swatchwright.photo.reference import Balance, apply
from swatchwright.photo.sampling import Sample, sample
from swatchwright.photo.spots import spots
from swatchwright.values import KnownColour, Lab, Rect

if TYPE_CHECKING:
    from swatchwright.values import Covariance

__all__ = ["MOST_COLOURS", "DominantColour", "dominant_colours"]

MOST_COLOURS = 12
_LEAST_SHARE = 0.015
_FEWEST_PIXELS = 50

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class DominantColour:
    """A colour of a cloth.

    Parameters
    ----------
    colour
        The colour with its uncertainty: that of the photo, and that of the middle of the group.
    share
        Its share of the pixels that can be used, 0-1.
    marks
        One to three spots, x and y in pixels of the upright photo, that lie well inside it.
    spread
        CIEDE2000 from the colour within which half of its pixels lie.
    """

    colour: KnownColour
    share: float
    marks: tuple[tuple[int, int], ...]
    spread: float


def dominant_colours(
    photo: Photo,
    balance: Balance,
    area: Rect | None = None,
    count: int | None = None,
    exclude: tuple[Rect, ...] = (),
) -> tuple[DominantColour, ...]:
    """Find the colours of a part of a photo, the largest share first.

    Parameters
    ----------
    photo
        The photo.
    balance
        What puts its light right.
    area
        The part; the whole photo if None.
    count
        How many colours, 1 to 12; None to find out, six at most.
    exclude
        Parts that do not count, such as the grey card.

    Returns
    -------
    The colours. Fewer than `count` if the part holds fewer that differ.

    Raises
    ------
    MendableError
        If the part does not lie in the photo or holds too few usable pixels, or `count` is out of
        range.
    """
    if count is not None and not 1 <= count <= MOST_COLOURS:
        raise MendableError(
            f"{count} colours cannot be looked for.", f"Ask for 1 to {MOST_COLOURS}."
        )
    part = Rect(0, 0, photo.width, photo.height) if area is None else area
    require_inside(photo, part, "The part to look at")
    taken = sample(photo, part, exclude)
    _require_usable(taken)
    pixels = _pixels(photo, balance, taken)
    labels = group(pixels, count)
    least = _LEAST_SHARE if count is None else 0.0
    found = [
        _colour(pixels, labels == g, taken, balance)
        for g in range(int(labels.max()) + 1)
        if np.mean(labels == g) >= least
    ]
    return tuple(sorted(found, key=lambda colour: -colour.share))


def _require_usable(taken: Sample) -> None:
    """Refuse a part with hardly a pixel to look at."""
    count = int(taken.usable.sum())
    if count >= _FEWEST_PIXELS:
        return
    raise MendableError(
        f"Only {count} pixels of this part can be used: the others are overexposed, black,"
        " transparent or left out.",
        "Choose a larger part, or take the photo again with a better exposure.",
    )


def _pixels(photo: Photo, balance: Balance, taken: Sample) -> Pixels:
    """Turn a sample into balanced colours."""
    light = apply(balance, photo.light_of(taken.encoded[taken.usable]))
    weight = taken.weight[taken.usable]
    grid = np.full(taken.usable.shape, -1, dtype=np.intp)
    grid[taken.usable] = np.arange(len(light))
    enough = np.count_nonzero(weight) >= _FEWEST_PIXELS
    lab = linear_srgb_to_lab(light.astype(np.float64))
    return Pixels(np.asarray(lab), weight if enough else np.ones_like(weight), grid)


def _colour(
    pixels: Pixels, mine: NDArray[np.bool_], taken: Sample, balance: Balance
) -> DominantColour:
    """Describe one group."""
    pure = mine & (pixels.weight > 0)
    lab = pixels.lab[pure if pure.any() else mine]
    centre = middle(lab)
    distance = np.full(taken.usable.shape, np.inf)
    distance[taken.usable] = np.where(mine, delta_e_2000(pixels.lab, centre), np.inf)
    covariance = _covariance(balance, lab)
    return DominantColour(
        colour=KnownColour(
            Lab.of(centre),
            covariance,
            f"a colour of the photo; reference: {balance.reference}",
        ),
        share=float(np.mean(mine)),
        marks=spots(distance, taken.x, taken.y),
        spread=float(np.median(distance[np.isfinite(distance)])),
    )


def _covariance(balance: Balance, lab: Floats) -> Covariance:
    """Add the uncertainty of the middle of a group to that of the photo."""
    own = np.cov(lab.T) / len(lab) if len(lab) > 1 else np.zeros((3, 3))
    total = np.array(balance.covariance) + own
    rows = [(float(row[0]), float(row[1]), float(row[2])) for row in total]
    return rows[0], rows[1], rows[2]
