"""The colours that a cloth is made of, as light shows them at their best.

k-means in CIELAB with lightness weighted down cuts a sample of the pixels; groups that are one
colour in light and shade are joined; each colour is the densest middle of its group.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Protocol

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import give_or_take
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.clusters import Pixels, group
from swatchwright.photo.image import Photo, require_inside
from swatchwright.photo.middle import middle
from swatchwright.photo.origin import photo_origin
from swatchwright.photo.sampling import Sample, sample
from swatchwright.photo.spots import spots
from swatchwright.photo.weave import metre_light
from swatchwright.values import KnownColour, Lab, Rect

if TYPE_CHECKING:
    from swatchwright.values import Covariance

__all__ = ["MOST_COLOURS", "DominantColour", "PutsRight", "dominant_colours"]

MOST_COLOURS = 12
_LEAST_SHARE = 0.015
_FEWEST_PIXELS = 50

_TYPICAL = 50
"""So many pixels nearest to the middle of a group stand for it."""

Floats = NDArray[np.float64]


class PutsRight(Protocol):
    """What puts the light of a photo right: a balance by one grey, or a whole correction."""

    @property
    def reference(self) -> str:
        """What it was taken from, in English words; `origin_words` says them."""

    def lab_of(self, light: object, x: object, y: object) -> Floats:
        """Read the CIELAB of linear sRGB, shape (n, 3), seen at pixels x, y."""

    def covariance_at(self, light: object, x: object, y: object) -> Covariance:
        """Give the uncertainty of a colour, linear sRGB of shape (3,), seen at a pixel."""


@dataclass(frozen=True, slots=True)
class DominantColour:
    """A colour of a cloth.

    Parameters
    ----------
    colour
        The colour of the yarn, that is of the lit part, with its uncertainty: that of the photo,
        and that of the middle of the group.
    from_a_metre
        The colour of the cloth from a metre away, where the light of the weave adds up.
    share
        Its share of the pixels that can be used, 0-1.
    marks
        One to three spots, x and y in pixels of the upright photo, that lie well inside it.
    spread
        CIEDE2000 from the colour within which half of its pixels lie.
    """

    colour: KnownColour
    from_a_metre: KnownColour
    share: float
    marks: tuple[tuple[int, int], ...]
    spread: float

    @property
    def yarn(self) -> KnownColour:
        """The colour of the yarn, as seen near to: the same as `colour`."""
        return self.colour

    @property
    def give_or_take(self) -> float:
        """Its usual error: the median CIEDE2000 from the truth."""
        return give_or_take(self.colour)

    @property
    def weave(self) -> float:
        """CIEDE2000 between the yarn and the cloth from a metre away."""
        return float(delta_e_2000(self.colour.lab.triple, self.from_a_metre.lab.triple))


def dominant_colours(
    photo: Photo,
    balance: PutsRight,
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
            say("{count} colours cannot be looked for.", count=count),
            say("Ask for 1 to {most}.", most=MOST_COLOURS),
        )
    part = Rect(0, 0, photo.width, photo.height) if area is None else area
    require_inside(photo, part, say("The part to look at"))
    taken = sample(photo, part, exclude)
    _require_usable(taken)
    pixels = _pixels(photo, balance, taken)
    labels = group(pixels, count)
    least = _LEAST_SHARE if count is None else 0.0
    found = [
        _colour(photo, pixels, labels == g, taken, balance)
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
        say(
            "Only {count} pixels of this part can be used: the others are overexposed, black,"
            " transparent or left out.",
            count=count,
        ),
        say("Choose a larger part, or take the photo again with a better exposure."),
    )


def _pixels(photo: Photo, balance: PutsRight, taken: Sample) -> Pixels:
    """Turn a sample into balanced colours."""
    x, y = taken.x[taken.usable], taken.y[taken.usable]
    light = photo.light_at(x, y)
    weight = taken.weight[taken.usable]
    grid = np.full(taken.usable.shape, -1, dtype=np.intp)
    grid[taken.usable] = np.arange(len(light))
    enough = np.count_nonzero(weight) >= _FEWEST_PIXELS
    lab = balance.lab_of(light, x, y)
    return Pixels(lab, weight if enough else np.ones_like(weight), grid)


def _colour(
    photo: Photo, pixels: Pixels, mine: NDArray[np.bool_], taken: Sample, balance: PutsRight
) -> DominantColour:
    """Describe one group."""
    pure = mine & (pixels.weight > 0)
    pure = pure if pure.any() else mine
    centre = middle(pixels.lab[pure])
    distance = np.full(taken.usable.shape, np.inf)
    distance[taken.usable] = np.where(mine, delta_e_2000(pixels.lab, centre), np.inf)
    light, at = _typical(photo, taken, distance)
    covariance = _covariance(balance.covariance_at(light, *at), pixels.lab[pure])
    origin = partial(photo_origin, balance.reference)
    metre = balance.lab_of([_metre(photo, taken, distance)], *at)[0]
    return DominantColour(
        colour=KnownColour(Lab.of(centre), covariance, origin(metre=False)),
        from_a_metre=KnownColour(Lab.of(metre), covariance, origin(metre=True)),
        share=float(np.mean(mine)),
        marks=spots(distance, taken.x, taken.y),
        spread=float(np.median(distance[np.isfinite(distance)])),
    )


def _typical(photo: Photo, taken: Sample, distance: Floats) -> tuple[Floats, tuple[float, float]]:
    """Give the light of the pixels nearest to the middle of a group, and where the group lies."""
    nearest = np.argsort(distance, axis=None)[: min(_TYPICAL, int(np.isfinite(distance).sum()))]
    light = photo.light_at(taken.x.ravel()[nearest], taken.y.ravel()[nearest])
    mine = np.isfinite(distance)
    at = (float(taken.x[mine].mean()), float(taken.y[mine].mean()))
    return np.median(light, axis=0).astype(np.float64), at


def _metre(photo: Photo, taken: Sample, distance: Floats) -> Floats:
    """Give the light of the weave around a colour, added up."""
    light = photo.light_at(taken.x, taken.y).astype(np.float64)
    return metre_light(light, taken.usable, np.isfinite(distance))


def _covariance(photo: Covariance, lab: Floats) -> Covariance:
    """Add the uncertainty of the middle of a group to that of the photo."""
    own = np.cov(lab.T) / len(lab) if len(lab) > 1 else np.zeros((3, 3))
    total = np.array(photo) + own
    rows = [(float(row[0]), float(row[1]), float(row[2])) for row in total]
    return rows[0], rows[1], rows[2]
