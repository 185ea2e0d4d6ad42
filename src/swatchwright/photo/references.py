"""Things of known colour in a photo: greys, and chips of paint that have been measured."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_xyz, linear_srgb_to_lab
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.image import require_inside
from swatchwright.photo.reference import (
    GREY_CARD,
    WHITE_PAPER,
    require_light,
    require_one_colour,
    require_reflectance,
    require_unclipped,
    usable_pixels,
)
from swatchwright.values import Lab, Rect

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo

__all__ = ["MOST_REFERENCES", "Kind", "Reference", "Seen", "as_reference", "see"]

Kind = Literal["grey", "chip"]

MOST_REFERENCES = 60
"""More than any chart has; beyond it the time for a dragged mark would grow."""

_SPREAD_OF_GREY = 0.7
_SPREAD_OF_PAPER = 2.0
_SPREAD_OF_CHIP = 0.8
"""How well the colour of a reference is known, in Lab units along each axis: a grey card whose
figure may be 3 % off, paper that may be brightened, a chip that was measured (common practice, no
source)."""

_DARKEST_CHIP = 0.0005
_GREY_CHROMA = 5.0


@dataclass(frozen=True, slots=True)
class Reference:
    """Something of known colour in a photo.

    Parameters
    ----------
    rect
        Where it is.
    lab
        Its colour.
    kind
        A grey, or a chip of any colour.
    spread
        How well the colour is known: standard deviation along each axis of Lab, above 0.
    """

    rect: Rect
    lab: Lab
    kind: Kind
    spread: float

    @classmethod
    def grey(
        cls, rect: Rect, reflectance: float = GREY_CARD, spread: float | None = None
    ) -> Reference:
        """Name a grey by its reflectance, 0.02 to 1.

        Raises
        ------
        MendableError
            If no grey reflects so much or so little.
        """
        require_reflectance(reflectance)
        lab = Lab.of(linear_srgb_to_lab([reflectance] * 3))
        paper = abs(reflectance - WHITE_PAPER) < 0.05
        usual = _SPREAD_OF_PAPER if paper else _SPREAD_OF_GREY
        return cls(rect, lab, "grey", usual if spread is None else spread)

    @classmethod
    def chip(cls, rect: Rect, lab: Lab, spread: float = _SPREAD_OF_CHIP) -> Reference:
        """Name a chip by its colour.

        Raises
        ------
        MendableError
            If no surface has that colour.
        """
        return cls(rect, Lab.of_a_surface(*lab.triple), "chip", spread)

    @property
    def reflectance(self) -> float | None:
        """Reflectance of a grey, 0-1; None for a chip."""
        # Rounded, so that what was entered comes back as it was.
        return round(float(lab_to_xyz(self.lab.triple)[1]), 9) if self.kind == "grey" else None

    @property
    def neutral(self) -> bool:
        """Whether it is grey by its colour, whatever it was called."""
        return self.kind == "grey" or bool(np.hypot(self.lab.a, self.lab.b) < _GREY_CHROMA)

    @property
    def words(self) -> str:
        """What it is and where, for a painter."""
        rect = self.rect
        where = {"x": rect.x, "y": rect.y, "width": rect.width, "height": rect.height}
        if self.kind == "grey":
            return say(
                "a grey of {percent:.3g} % at {x}, {y} ({width} × {height} pixels)",
                percent=100 * (self.reflectance or 0),
                **where,
            )
        L, a, b = self.lab.triple
        return say(
            "a chip of L* {L:.3g}, a* {a:.3g}, b* {b:.3g} at {x}, {y} ({width} × {height} pixels)",
            L=L,
            a=a,
            b=b,
            **where,
        )

    @property
    def subject(self) -> str:
        """What a sentence about it begins with, for a painter."""
        return say("The reference at {x}, {y}", x=self.rect.x, y=self.rect.y)


@dataclass(frozen=True, slots=True, eq=False)
class Seen:
    """Light and where it was seen.

    Parameters
    ----------
    light
        Shape (n, 3): linear sRGB.
    place
        Shape (n, 2): across and down the frame, -1 to 1 from edge to edge.
    """

    light: NDArray[np.float64]
    place: NDArray[np.float64]

    @classmethod
    def at(cls, photo: Photo, light: object, x: object, y: object) -> Seen:
        """Bring light, shape (n, 3) or (3,), and its pixels, shape (n,) or a number, together."""
        rows = np.atleast_2d(np.asarray(light, dtype=np.float64))
        across = 2 * (np.asarray(x, dtype=np.float64) + 0.5) / photo.width - 1
        down = 2 * (np.asarray(y, dtype=np.float64) + 0.5) / photo.height - 1
        place = np.empty((len(rows), 2))
        place[:, 0], place[:, 1] = across, down
        return cls(rows, place)


def as_reference(given: Reference | tuple[Rect, float]) -> Reference:
    """Take a reference as it is, or a mark and the reflectance of a grey."""
    return given if isinstance(given, Reference) else Reference.grey(*given)


def see(photo: Photo, references: tuple[Reference, ...]) -> Seen:
    """Read what the photo shows of each reference: the median light of its mark.

    Raises
    ------
    MendableError
        If there are too many, or one lies outside, is clipped, too dark, or not of one colour.
    """
    if len(references) > MOST_REFERENCES:
        raise MendableError(
            say("{count} references were marked.", count=len(references)),
            say("Mark at most {most}.", most=MOST_REFERENCES),
        )
    light = [_median(photo, reference) for reference in references]
    x = [reference.rect.x + (reference.rect.width - 1) / 2 for reference in references]
    y = [reference.rect.y + (reference.rect.height - 1) / 2 for reference in references]
    return Seen.at(photo, np.reshape(light, (-1, 3)), x, y)


def _median(photo: Photo, reference: Reference) -> NDArray[np.float64]:
    """Give the median light of one reference."""
    x, y = reference.rect.x, reference.rect.y
    if reference.kind == "grey":
        where = say("The grey reference at {x}, {y}", x=x, y=y)
    else:
        where = say("The chip at {x}, {y}", x=x, y=y)
    require_inside(photo, reference.rect, where)
    light = usable_pixels(photo, reference.rect, where)
    require_unclipped(photo, reference.rect, where)
    low, middle, high = np.percentile(light, (25, 50, 75), axis=0)
    # A strong colour may lack one channel altogether; a grey may not, and neither may be black.
    if reference.kind == "grey":
        require_light(middle, where, least=0.2 * min(0.05, reference.reflectance or 1.0))
    elif middle.max() < _DARKEST_CHIP:
        require_light(middle, where)
    floor = max(0.03, float(middle.max()) * 0.4)
    require_one_colour(float(np.max((high - low) / np.maximum(middle, floor))), where)
    return np.asarray(middle, dtype=np.float64)
