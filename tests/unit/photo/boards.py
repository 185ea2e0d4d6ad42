"""Boards of flat patches for the tests of references: their light, their photo, their marks."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from swatchwright.colour.convert import lab_to_linear_srgb, srgb_encode
from swatchwright.photo.references import Reference
from swatchwright.values import Lab, Rect
from unit.photo.pictures import photo_of

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from numpy.typing import NDArray

    from swatchwright.photo.image import Photo

SIDE = 40
GREYS = (0.9, 0.18, 0.035)

COLOURS = (
    (45, 50, 25), (60, -35, 30), (35, 10, -45), (75, 5, 60), (50, 40, -10), (65, -30, -10),
    (40, 20, 20), (70, 20, 40),
)  # fmt: skip
"""CIELAB of eight colours that sRGB holds; invented."""


def board(
    labs: Sequence[Sequence[float]],
    light: Callable[[NDArray[np.float64]], NDArray[np.float64]] | None = None,
    tone: Callable[[NDArray[np.float64]], NDArray[np.float64]] | None = None,
    *,
    linear: bool = False,
) -> Photo:
    """Lay patches in a row, change their light, bend the stored value, and photograph them."""
    row = np.repeat(np.asarray(lab_to_linear_srgb(labs)), SIDE, axis=0)
    picture = np.array(np.broadcast_to(row, (SIDE, *row.shape)), dtype=np.float64)
    if light is not None:
        picture = light(picture)
    stored = np.asarray(srgb_encode(picture), dtype=np.float64)
    photo = photo_of(np.rint(255 * (stored if tone is None else tone(stored))))
    return replace(photo, facts=replace(photo.facts, linear=linear, tone_mapped=not linear))


def lively(stored: NDArray[np.float64]) -> NDArray[np.float64]:
    """Bend stored values as a camera does that wants to please: darker darks, lighter lights."""
    lifted = stored + 0.12 * stored * (1 - stored)
    return np.asarray(lifted + 0.35 * lifted * (1 - lifted) * (2 * lifted - 1))


def mark(index: int) -> Rect:
    """Give a mark well inside a patch."""
    return Rect(index * SIDE + 8, 8, SIDE - 16, SIDE - 16)


def middle(index: int) -> tuple[float, float]:
    """Give the middle of a patch in pixels."""
    return index * SIDE + SIDE / 2 - 0.5, SIDE / 2 - 0.5


def grey_lab(reflectance: float) -> tuple[float, float, float]:
    """Give the CIELAB of a grey."""
    return Reference.grey(mark(0), reflectance).lab.triple


def chip(index: int, lab: Sequence[float]) -> Reference:
    """Name a patch as a chip of that colour."""
    return Reference.chip(mark(index), Lab.of(lab))


def seen_at(photo: Photo, index: int) -> NDArray[np.float64]:
    """Give the light that the photo shows of a patch."""
    return np.asarray(photo.linear(mark(index)).mean(axis=(0, 1)), dtype=np.float64)
