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
    """

    photo: Photo
    balance: Balance
    colours: tuple[DominantColour, ...]

    @property
    def notes(self) -> tuple[str, ...]:
        """What was assumed and what is doubtful, in plain words."""
        return (*self.photo.facts.notes, *self.balance.notes)


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
    return PhotoColours(photo, balance, colours)
