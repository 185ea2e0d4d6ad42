"""Strokes on a photo of a piece: which surface is which, marked with a few lines of a brush."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, isfinite

import numpy as np
from numpy.typing import NDArray

from swatchwright.errors import MendableError

__all__ = ["MOST_ZONES", "NOT_THIS", "UNMARKED", "Marked", "Stroke", "check_marked", "drawn"]

NOT_THIS = "not this"
"""The zone of what is not to be painted: wall, floor, handles."""

MOST_ZONES = 8
UNMARKED = 255
"""Label of a pixel that no stroke covers."""

_MOST_STROKES, _MOST_POINTS, _MOST_NAME = 400, 5000, 60
_WIDEST = 2000.0
_OVER = 0.05

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Stroke:
    """One stroke.

    Parameters
    ----------
    zone
        The zone of the piece that it lies on (“body”, “top”), or `NOT_THIS`.
    points
        Where the brush went, x and y in pixels.
    width
        Width of the brush in pixels, above 0.
    filled
        Whether all that the points enclose is meant, as by a box, and not only the line.
    """

    zone: str
    points: tuple[Point, ...]
    width: float = 24.0
    filled: bool = False


@dataclass(frozen=True, slots=True)
class Marked:
    """Strokes on a picture of a size (width, height) in pixels; a later stroke covers an earlier.

    The same strokes serve for the photo in any size: they grow and shrink with it.
    """

    size: tuple[int, int]
    strokes: tuple[Stroke, ...] = ()

    @property
    def zones(self) -> tuple[str, ...]:
        """The zones that are marked, in the order of their first strokes."""
        return tuple(dict.fromkeys(s.zone for s in self.strokes if s.zone != NOT_THIS))


def check_marked(marked: Marked) -> None:
    """Refuse strokes that cannot be drawn, or that mark no surface.

    Raises
    ------
    MendableError
        It says which stroke, and what of it.
    """
    if not all(0 < side <= 100_000 for side in marked.size):
        width, height = marked.size
        raise MendableError(
            f"The strokes are said to be on a photo of {width} × {height} pixels.",
            "Give the width and height of the photo they were made on.",
        )
    if len(marked.strokes) > _MOST_STROKES:
        raise MendableError(
            f"There are {len(marked.strokes)} strokes.",
            f"A few for each surface are enough; {_MOST_STROKES} are the most.",
        )
    for number, stroke in enumerate(marked.strokes, start=1):
        _check_stroke(number, stroke, marked.size)
    if not marked.zones:
        raise MendableError(
            "No surface of the piece is marked.",
            "Draw a stroke or two on each surface that is to be painted.",
        )
    if len(marked.zones) > MOST_ZONES:
        raise MendableError(
            f"{len(marked.zones)} zones are marked.", f"Mark {MOST_ZONES} at the most."
        )


def _check_stroke(number: int, stroke: Stroke, size: tuple[int, int]) -> None:
    if not stroke.zone.strip() or len(stroke.zone) > _MOST_NAME:
        raise MendableError(
            f"Stroke {number} says no zone, or one of a very long name.",
            f"Name a zone as “body”, or “{NOT_THIS}”.",
        )
    fewest = 3 if stroke.filled else 1
    if not fewest <= len(stroke.points) <= _MOST_POINTS:
        raise MendableError(
            f"Stroke {number} has {len(stroke.points)} points.",
            f"It takes {fewest} to {_MOST_POINTS}.",
        )
    if not (isfinite(stroke.width) and 0 < stroke.width <= _WIDEST):
        raise MendableError(
            f"The brush of stroke {number} is {stroke.width:g} pixels wide.",
            f"Take one above 0 and up to {_WIDEST:g}.",
        )
    for point in stroke.points:
        for at, side in zip(point, size, strict=True):
            if not (isfinite(at) and -_OVER * side <= at <= (1 + _OVER) * side):
                raise MendableError(
                    f"Stroke {number} goes to {point[0]:g}, {point[1]:g}, outside the photo of "
                    f"{size[0]} × {size[1]} pixels.",
                    "Draw it inside the photo.",
                )


def drawn(marked: Marked, zones: Sequence[str], shape: tuple[int, int]) -> NDArray[np.uint8]:
    """Draw strokes on a picture of another size.

    Parameters
    ----------
    marked
        The strokes.
    zones
        The zone of each label, from 0; what is none of them gets the label after the last.
    shape
        Rows and columns of the picture.

    Returns
    -------
    The label of each pixel, or `UNMARKED`, shape (rows, columns).
    """
    from PIL import Image, ImageDraw

    rows, columns = shape
    label = {zone: place for place, zone in enumerate(zones)}
    across, down = columns / marked.size[0], rows / marked.size[1]
    picture = Image.new("L", (columns, rows), UNMARKED)
    pen = ImageDraw.Draw(picture)
    for stroke in marked.strokes:
        points = [(x * across, y * down) for x, y in stroke.points]
        ink = label.get(stroke.zone, len(zones))
        if stroke.filled:
            pen.polygon(points, fill=ink, outline=ink)
        else:
            _line(pen, points, max(1.0, stroke.width * (across + down) / 2), ink)
    return np.asarray(picture)


def _line(pen: object, points: Sequence[Point], width: float, ink: int) -> None:
    """Draw a line with round ends and joints."""
    from PIL import ImageDraw

    assert isinstance(pen, ImageDraw.ImageDraw)  # noqa: S101 - PIL's type, imported late
    if len(points) > 1:
        pen.line(points, fill=ink, width=max(1, ceil(width)), joint="curve")
    half = width / 2
    for x, y in (points[0], points[-1]):
        pen.ellipse((x - half, y - half, x + half, y + half), fill=ink)
