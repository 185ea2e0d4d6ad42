"""Read the colour of a painted card off a photo, in the light of the grey beside it."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.acts.colours import colours_of
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD
from swatchwright.values import Lab, Rect

__all__ = ["CardColour", "read_card"]


@dataclass(frozen=True, slots=True)
class CardColour:
    """The colour of a card, and the median CIEDE2000 by which such a reading is off."""

    lab: Lab
    usually_off: float


def read_card(
    photo: Photo, card: Rect, *, grey: Rect, reflectance: float = GREY_CARD
) -> CardColour:
    """Read the one colour of a card.

    Parameters
    ----------
    photo
        The photo.
    card
        A part of the photo well inside the painted card.
    grey
        Where the grey reference is.
    reflectance
        What it reflects, 0-1.

    Raises
    ------
    MendableError
        If a rectangle is off or holds nothing that can be used.
    """
    found = colours_of(photo, grey=grey, reflectance=reflectance, area=card, count=1)
    return CardColour(found.colours[0].colour.lab, found.colours[0].give_or_take)
