"""What is marked in a photo of a sample beside its cloth."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD
from swatchwright.values import Rect

__all__ = ["SampleShot"]


@dataclass(frozen=True, slots=True)
class SampleShot:
    """A photo of a sample beside its cloth, with what is marked in it.

    Parameters
    ----------
    photo
        SHA-256 of the photo.
    size
        Pixels that the marks are for, across and down.
    grey, cloth, sample
        What is marked in it; None for what is not.
    reflectance
        What the grey reflects.
    """

    photo: str
    size: tuple[int, int]
    grey: Rect | None = None
    cloth: Rect | None = None
    sample: Rect | None = None
    reflectance: float = GREY_CARD

    def on(self, photo: Photo) -> dict[str, Rect]:
        """Give what is marked, by its word, on the photo in the size it has now."""
        across, down = photo.width / self.size[0], photo.height / self.size[1]
        named = {"grey": self.grey, "cloth": self.cloth, "sample": self.sample}
        found = {}
        for name, rect in named.items():
            if rect is not None:
                x = min(round(rect.x * across), photo.width - 1)
                y = min(round(rect.y * down), photo.height - 1)
                width = max(1, min(round(rect.width * across), photo.width - x))
                height = max(1, min(round(rect.height * down), photo.height - y))
                found[name] = Rect(x, y, width, height)
        return found
