"""Two colours of one photo against each other: a brushed sample beside the cloth.

The camera and the light do nearly the same to two colours that are nearly alike, so the difference
of the two is known far better than either. References only give it its scale.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import usual_difference
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.estimate import Correction, estimate, to_covariance
from swatchwright.photo.image import require_inside
from swatchwright.photo.sampling import sample
from swatchwright.photo.weave import Surface, surface_of
from swatchwright.values import Covariance, Lab, Rect

if TYPE_CHECKING:
    from collections.abc import Sequence

    from swatchwright.photo.image import Photo
    from swatchwright.photo.model import LightKind
    from swatchwright.photo.references import Reference

__all__ = ["Difference", "Seeing", "difference_by", "difference_in_photo"]

Seeing = Literal["yarn", "metre"]
"""Which colour of a weave is meant: the yarn's, or that of the cloth from a metre away."""


@dataclass(frozen=True, slots=True)
class Difference:
    """How a sample differs from a cloth in one photo.

    Parameters
    ----------
    vector
        The sample less the cloth: L*, a*, b*.
    delta_e_00
        The same as CIEDE2000.
    covariance
        Uncertainty of the vector, in squared Lab units; what the camera does to both is not in it.
    cloth, sample
        Both colours as the photo shows them, put right by the references; each by itself is known
        less well than the vector.
    cloth_covariance
        Uncertainty of the cloth's colour by itself, in squared Lab units.
    """

    vector: tuple[float, float, float]
    delta_e_00: float
    covariance: Covariance
    cloth: Lab
    sample: Lab
    cloth_covariance: Covariance

    @property
    def give_or_take(self) -> float:
        """Its usual error: the median CIEDE2000 from the true difference."""
        return usual_difference(self.cloth, self.covariance)


def difference_in_photo(
    photo: Photo,
    references: Sequence[Reference],
    cloth_rect: Rect,
    sample_rect: Rect,
    *,
    seeing: Seeing = "yarn",
    light: LightKind | None = None,
) -> Difference:
    """Compare a sample with a cloth within one photo.

    Parameters
    ----------
    photo
        A photo with both in it.
    references
        Greys and chips in it, for the scale only; there may be none.
    cloth_rect
        A part of the cloth of one colour.
    sample_rect
        A part of the sample.
    seeing
        Whether the yarn of the cloth is meant, or the cloth from a metre away.
    light
        Whether it was daylight or a lamp, where that is known.

    Raises
    ------
    MendableError
        If a mark lies outside the photo or holds nothing that can be used, or a reference cannot
        be read.
    """
    correction = estimate(photo, references, light=light)
    return difference_by(correction, cloth_rect, sample_rect, seeing=seeing)


def difference_by(
    correction: Correction, cloth_rect: Rect, sample_rect: Rect, *, seeing: Seeing = "yarn"
) -> Difference:
    """Compare a sample with a cloth by a correction that is already there.

    Arguments and refusals as in `difference_in_photo`.
    """
    if cloth_rect == sample_rect:
        raise MendableError(
            say("The marks of the cloth and of the sample are the same."),
            say("Draw one on the cloth and one on the sample."),
        )
    cloth = _surface(correction.photo, cloth_rect, say("The mark of the cloth"))
    brushed = _surface(correction.photo, sample_rect, say("The mark of the sample"))
    # A brushed sample has a weave no more than a wall has: what is not lit on it is a stroke.
    lights = [cloth.light(seeing), brushed.light(seeing)]
    x, y = zip(cloth.middle, brushed.middle, strict=True)
    vector, covariance = correction.difference(lights, x, y)
    labs = correction.lab_of(lights, x, y)
    noise = np.diag(cloth.noise(seeing) + brushed.noise(seeing))
    return Difference(
        vector=(float(vector[0]), float(vector[1]), float(vector[2])),
        delta_e_00=float(delta_e_2000(labs[0], labs[1])),
        covariance=to_covariance(np.array(covariance) + noise),
        cloth=Lab.of(labs[0]),
        sample=Lab.of(labs[1]),
        cloth_covariance=correction.covariance_at(lights[0], x[0], y[0]),
    )


def _surface(photo: Photo, rect: Rect, what: str) -> Surface:
    """Read a mark, naming it where it cannot be used."""
    require_inside(photo, rect, what)
    return surface_of(photo, sample(photo, rect, ()), what)
