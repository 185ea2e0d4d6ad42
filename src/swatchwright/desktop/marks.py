"""What is marked in the photo on the bench, and what is told of it."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.photo.model import LightKind
from swatchwright.photo.reference import GREY_CARD
from swatchwright.shelf.jobs import MarkedReference
from swatchwright.shelf.jobs import Marks as KeptMarks
from swatchwright.values import Rect

__all__ = ["Marks"]


@dataclass(frozen=True, slots=True)
class Marks:
    """What is marked in the photo, and what is told of it.

    Parameters
    ----------
    grey, cloth
        Where the grey card and the cloth are.
    reflectance
        What the card reflects, 0-1.
    references
        What else of known colour is in the photo.
    light
        What the light was; None if that is not known.
    metre
        Whether the colours are wanted as seen from a metre away, not as those of the yarn.
    """

    grey: Rect | None = None
    cloth: Rect | None = None
    reflectance: float = GREY_CARD
    references: tuple[MarkedReference, ...] = ()
    light: LightKind | None = None
    metre: bool = False

    def kept(self) -> KeptMarks:
        """Give them as a job keeps them."""
        grey = () if self.grey is None else (self.grey,)
        return KeptMarks(
            grey, self.cloth, self.reflectance, self.references, self.light, self.metre
        )
