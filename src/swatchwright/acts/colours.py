"""Read the colours of a photo."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from swatchwright.photo.dominant import DominantColour, dominant_colours
from swatchwright.photo.image import Photo
from swatchwright.photo.readers import read_photo
from swatchwright.photo.reference import GREY_CARD, Balance, balance_from_grey, no_reference
from swatchwright.values import Rect

__all__ = ["PhotoColours", "balance_photo", "colours_of", "open_photo"]


@dataclass(frozen=True, slots=True)
class PhotoColours:
    """The colours of a photo, and the light they were read in.

    Parameters
    ----------
    photo
        The photo.
    balance
        What put its light right.
    colours
        The dominant colours, the largest share first.
    area
        Where they were looked for; None for the whole photo.
    """

    photo: Photo
    balance: Balance
    colours: tuple[DominantColour, ...]
    area: Rect | None

    @property
    def notes(self) -> tuple[str, ...]:
        """What was assumed, in plain words."""
        return (*self.photo.facts.notes, *self.balance.notes)

    @property
    def warnings(self) -> tuple[str, ...]:
        """Signs that a mark or the light is not what it should be, in plain words."""
        return (*self.balance.warnings, *_signs(self.colours, self.area))


# A cloth whiter than the whitest paper (about L* 97) is a sign of a wrong reference.
_WHITEST = 98.0
_FEW_PIXELS = 400


def _signs(colours: tuple[DominantColour, ...], area: Rect | None) -> tuple[str, ...]:
    """Say what of the colours themselves shows that something is off."""
    signs = []
    if any(colour.colour.lab.L > _WHITEST for colour in colours):
        signs.append(
            "Part of the cloth comes out whiter than white paper: is the grey reference marked "
            "where it lies, and does it reflect what was entered?"
        )
    if area is not None and area.width * area.height < _FEW_PIXELS:
        signs.append(
            f"The marked cloth is only {area.width} × {area.height} pixels: draw it larger, or "
            "photograph the cloth from nearer."
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


def colours_of(
    photo: Photo,
    *,
    grey: Rect | None = None,
    reflectance: float = GREY_CARD,
    area: Rect | None = None,
    count: int | None = None,
) -> PhotoColours:
    """Find the dominant colours of a photo, or of an area of it.

    Parameters
    ----------
    photo
        The photo.
    grey
        Where the grey reference is; it is not counted among the colours.
    reflectance
        Its reflectance, 0-1.
    area
        Where the cloth is; the whole photo if None.
    count
        How many colours; as many as can be told apart if None.

    Raises
    ------
    MendableError
        If a rectangle is off or holds nothing that can be used.
    """
    balance = balance_photo(photo, grey, reflectance)
    left_out = () if grey is None else (grey,)
    colours = dominant_colours(photo, balance, area=area, count=count, exclude=left_out)
    return PhotoColours(photo, balance, colours, area)
