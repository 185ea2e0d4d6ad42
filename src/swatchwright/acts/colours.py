"""Read the colours of a photo."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.advise import Advice, next_references
from swatchwright.photo.dominant import DominantColour, dominant_colours
from swatchwright.photo.estimate import Correction, estimate
from swatchwright.photo.greys import likely_greys
from swatchwright.photo.image import Photo
from swatchwright.photo.model import LightKind
from swatchwright.photo.quality import Finding, findings
from swatchwright.photo.readers import read_photo
from swatchwright.photo.reference import GREY_CARD, Balance, balance_from_grey, no_reference
from swatchwright.photo.references import Reference
from swatchwright.values import Rect

__all__ = [
    "PhotoColours",
    "balance_photo",
    "colours_of",
    "helpful_references",
    "open_photo",
    "propose_greys",
]


@dataclass(frozen=True, slots=True)
class PhotoColours:
    """The colours of a photo, and the light they were read in.

    Parameters
    ----------
    photo
        The photo.
    correction
        What put its light right, with how sure that is.
    colours
        The dominant colours, the largest share first; each has its yarn and the cloth from a metre.
    area
        Where they were looked for; None for the whole photo.
    findings
        What is wrong with the photo, and what to do about it.
    """

    photo: Photo
    correction: Correction
    colours: tuple[DominantColour, ...]
    area: Rect | None
    findings: tuple[Finding, ...]

    @property
    def balance(self) -> Balance:
        """The plain white balance, for showing the picture."""
        return self.correction.balance

    @property
    def notes(self) -> tuple[str, ...]:
        """What was assumed, in plain words."""
        return (*self.photo.facts.notes, *self.balance.notes)

    @property
    def warnings(self) -> tuple[str, ...]:
        """Signs that a mark or the light is not what it should be, in plain words."""
        told = (f"{f.text} {f.mend}" for f in self.findings if f.kind not in _TOLD_BY_BALANCE)
        return (*self.balance.warnings, *_signs(self.colours, self.area), *told)


_TOLD_BY_BALANCE = {"warm light", "odd light"}

# A cloth whiter than the whitest paper (about L* 97) is a sign of a wrong reference.
_WHITEST = 98.0
_FEW_PIXELS = 400

# Beyond these no colour of a surface is, even where the exposure is told wrongly.
_LIGHTEST, _MOST_VIVID = 150.0, 150.0

_TORN = 20.0
"""Standard deviations from what the others say beyond which a reference is not what it is said to
be; what would be made of it is worth nothing."""


def _signs(colours: tuple[DominantColour, ...], area: Rect | None) -> tuple[str, ...]:
    """Say what of the colours themselves shows that something is off."""
    signs = []
    if any(colour.colour.lab.L > _WHITEST for colour in colours):
        signs.append(
            say(
                "Part of the cloth comes out whiter than white paper: is the grey reference marked "
                "where it lies, and does it reflect what was entered?"
            )
        )
    if area is not None and area.width * area.height < _FEW_PIXELS:
        signs.append(
            say(
                "The marked cloth is only {width} × {height} pixels: draw it larger, or "
                "photograph the cloth from nearer.",
                width=area.width,
                height=area.height,
            )
        )
    return tuple(signs)


def open_photo(path: Path) -> Photo:
    """Read a photo file by its content.

    Raises
    ------
    MendableError
        If it is not a photo that can be used; the message says what to do.
    """
    return read_photo(path)


def balance_photo(photo: Photo, grey: Rect | None, reflectance: float = GREY_CARD) -> Balance:
    """Put the light right by a grey in the photo, or take it as it is where there is none.

    Raises
    ------
    MendableError
        If the grey cannot serve.
    """
    return no_reference() if grey is None else balance_from_grey(photo, grey, reflectance)


def propose_greys(photo: Photo) -> tuple[Rect, ...]:
    """Propose where a grey card may lie, the likeliest first; to be agreed to before it is used."""
    return likely_greys(photo)


def colours_of(
    photo: Photo,
    *,
    grey: Rect | None = None,
    reflectance: float = GREY_CARD,
    references: Sequence[Reference] = (),
    light: LightKind | None = None,
    area: Rect | None = None,
    count: int | None = None,
) -> PhotoColours:
    """Find the dominant colours of a photo, or of an area of it.

    Parameters
    ----------
    photo
        The photo.
    grey
        Where a grey reference is; none of the references is counted among the colours.
    reflectance
        Its reflectance, 0-1.
    references
        Greys and chips of known colour in the photo, beside that grey or instead of it.
    light
        Whether it was daylight or a lamp, if that is known.
    area
        Where the cloth is; the whole photo if None.
    count
        How many colours; as many as can be told apart if None.

    Raises
    ------
    MendableError
        If a rectangle is off or holds nothing that can be used, or the references contradict one
        another so far that colours come out which nothing has.
    """
    first = () if grey is None else (Reference.grey(grey, reflectance),)
    given = (*first, *references)
    correction = estimate(photo, given, light=light)
    left_out = tuple(reference.rect for reference in given)
    colours = dominant_colours(photo, correction, area=area, count=count, exclude=left_out)
    _require_possible(correction, colours)
    labs = tuple(colour.colour.lab for colour in colours)
    return PhotoColours(photo, correction, colours, area, findings(correction, area, labs))


def _require_possible(correction: Correction, colours: tuple[DominantColour, ...]) -> None:
    """Refuse references that are bent to agree only at the price of impossible colours."""
    labs = [lab for c in colours for lab in (c.colour.lab, c.from_a_metre.lab)]
    fine = all(lab.L <= _LIGHTEST and max(abs(lab.a), abs(lab.b)) <= _MOST_VIVID for lab in labs)
    if len(correction.references) < 2:
        return
    if fine and float(correction.misfits.max()) <= _TORN:
        return
    raise MendableError(
        say(
            "The references contradict one another: no light makes all of them what they are said "
            "to be."
        ),
        say(
            "See that each lies where it is marked and is what was said of it, or take the last "
            "away."
        ),
    )


def helpful_references(found: PhotoColours, colour: DominantColour) -> tuple[Advice, ...]:
    """Rank what could be added to the photo by how much it would narrow the doubt of a colour."""
    x, y = colour.marks[0]
    return next_references(found.correction, found.photo.linear(Rect(x, y, 1, 1))[0, 0], x, y)
