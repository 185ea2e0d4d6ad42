"""Made-up surfaces: colour times light, and gloss over that, in linear light."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from swatchwright.colour.convert import lab_to_linear_srgb
from swatchwright.photo.repaint_strokes import NOT_THIS, Marked, Stroke
from unit.photo.pictures import photo_of_light

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from swatchwright.photo.image import Photo
    from swatchwright.values import Lab

    Floats = NDArray[np.floating[Any]]

__all__ = ["COLUMNS", "ROWS", "STROKES", "Scene", "chest"]

ROWS, COLUMNS = 240, 320

STROKES = Marked(
    (COLUMNS, ROWS),
    (
        Stroke("body", ((60, 110), (150, 112)), 10),
        Stroke("body", ((180, 190), (260, 190)), 10),
        Stroke("top", ((70, 62), (250, 62)), 8),
        Stroke(NOT_THIS, ((10, 20), (310, 20)), 10),
        Stroke(NOT_THIS, ((10, 230), (310, 230)), 8),
    ),
)
"""A handful of strokes, by zone."""


@dataclass(frozen=True, slots=True, eq=False)
class Scene:
    """A chest before a wall, made of parts whose every number is known.

    Parameters
    ----------
    zones
        Where body and top are.
    light
        The light that falls on each pixel, 1 at the most.
    gloss
        The light thrown back unchanged.
    wall
        Linear sRGB of all else.
    """

    zones: dict[str, NDArray[np.bool_]]
    light: Floats
    gloss: Floats
    wall: Floats

    def seen(self, colours: dict[str, Lab], *, noise: float = 0.0) -> Floats:
        """Give the linear light of the scene with its zones in colours."""
        own = self.wall.copy()
        for zone, where in self.zones.items():
            own[where] = lab_to_linear_srgb(colours[zone].triple)
        out = own * self.light[..., None] + self.gloss[..., None]
        draw = np.random.default_rng(5).normal(size=out.shape)
        return np.asarray(np.clip(out * (1 + noise * draw), 0, 1))

    def photo(self, colours: dict[str, Lab], *, noise: float = 0.0) -> Photo:
        """Photograph it."""
        return photo_of_light(self.seen(colours, noise=noise))


def chest(*, gloss: float = 0.0) -> Scene:
    """Make a chest with a lid, two panels behind dark gaps, shade to one side, and gloss."""
    y, x = np.mgrid[:ROWS, :COLUMNS].astype(np.float64)
    body = (x >= 40) & (x < 280) & (y >= 76) & (y < 210)
    top = (x >= 32) & (x < 288) & (y >= 50) & (y < 76)
    light = np.where(body, 1.0 - 0.45 * np.clip((x - 150) / 130, 0, 1), 1.0)
    gap = np.zeros_like(body)
    for left in (55, 170):
        inside = (x >= left) & (x < left + 95) & (y >= 95) & (y < 200)
        deeper = (x >= left + 3) & (x < left + 92) & (y >= 98) & (y < 197)
        gap |= inside & ~deeper
    light = np.where(gap & body, 0.12, light)
    light = np.where(body & (y < 82), 0.4, light)
    spot = np.exp(-(((x - 100) / 14) ** 2 + ((y - 150) / 10) ** 2))
    wall = np.where(
        (y < 170)[..., None], np.array([0.55, 0.53, 0.48]), np.array([0.10, 0.07, 0.05])
    )
    return Scene({"body": body, "top": top}, light, gloss * spot * body, wall)
