"""A dried sample beside the cloth in one photo, and a stroke in a photo."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.sample_grey import doubts_of_grey, plainly_wrong
from swatchwright.acts.sample_judged import How, Judged
from swatchwright.language import say
from swatchwright.photo.compare import Seeing, difference_by
from swatchwright.photo.estimate import Correction, estimate
from swatchwright.photo.image import Photo
from swatchwright.photo.model import LightKind
from swatchwright.photo.quality import Finding, findings
from swatchwright.photo.references import Reference
from swatchwright.photo.sampling import sample
from swatchwright.photo.weave import surface_of
from swatchwright.values import Lab, Rect

__all__ = ["colour_in_photo", "judged_by_photo"]


def judged_by_photo(
    photo: Photo,
    references: Sequence[Reference],
    cloth: Rect,
    brushed: Rect,
    *,
    seeing: Seeing = "yarn",
    light: LightKind | None = None,
) -> Judged:
    """Compare a dried sample with the cloth in one photo.

    Parameters
    ----------
    photo, references, light
        The photo, greys and chips in it, and its light if that is known.
    cloth, brushed
        Where the cloth and the sample are in it.
    seeing
        Whether the yarn of the cloth is meant, or the cloth from a metre away.

    Raises
    ------
    MendableError
        If a mark is off or cannot be read.
    """
    correction = estimate(photo, references, light=light)
    found = difference_by(correction, cloth, brushed, seeing=seeing)
    return Judged(
        how=How.PHOTO,
        vector=found.vector,
        covariance=found.covariance,
        delta_e=found.delta_e_00,
        give_or_take=found.give_or_take,
        cloth=found.cloth,
        sample=found.sample,
        findings=_weaknesses(correction, cloth, found.cloth),
        cloth_covariance=found.cloth_covariance,
    )


def _weaknesses(correction: Correction, cloth: Rect, colour: Lab) -> tuple[Finding, ...]:
    """Look the photo over, and say so where nothing in it tells how strong its colours are.

    What else is found by a grey that is none has no other cause, and is not told.
    """
    of_grey = doubts_of_grey(correction)
    if plainly_wrong(of_grey):
        return of_grey
    found = findings(correction, cloth, (colour,))
    if correction.references:
        return (*of_grey, *(one for one in found if one not in of_grey))
    none = Finding(
        "card not grey",
        "note",
        say("No grey is marked: the difference is only as good as the camera's own colours."),
        say("Lay a grey card or white paper beside cloth and sample, and mark it."),
    )
    return (*found, none)


def colour_in_photo(
    photo: Photo, references: Sequence[Reference], rect: Rect, *, light: LightKind | None = None
) -> Lab:
    """Read one colour of a photo, such as a stroke while it is wet and again when it is dry.

    Raises
    ------
    MendableError
        If a mark is off or cannot be read.
    """
    correction = estimate(photo, references, light=light)
    surface = surface_of(photo, sample(photo, rect, ()), say("The mark of the stroke"))
    x, y = surface.middle
    return correction.apply(surface.yarn, x, y)[0]
