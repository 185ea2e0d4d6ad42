"""Strokes on a photo of a piece: which surface is which, marked with a few lines of a brush."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, isfinite

import numpy as np
from numpy.typing import NDArray

from swatchwright.errors import MendableError
from swatchwright.language import mark, say

__all__ = ["MOST_ZONES", "NOT_THIS", "UNMARKED", "Marked", "Stroke", "check_marked", "drawn"]

NOT_THIS = mark("not this")
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
            say(
                "The strokes are said to be on a photo of {width} × {height} pixels.",
                width=width,
                height=height,
            ),
            say("Give the width and height of the photo they were made on."),
        )
    if len(marked.strokes) > _MOST_STROKES:
        raise MendableError(
            say("There are {count} strokes.", count=len(marked.strokes)),
            say("A few for each surface are enough; {most} are the most.", most=_MOST_STROKES),
        )
    for number, stroke in enumerate(marked.strokes, start=1):
        _check_stroke(number, stroke, marked.size)
    if not marked.zones:
        raise MendableError(
            say("No surface of the piece is marked."),
            say("Draw a stroke or two on each surface that is to be painted."),
        )
    if len(marked.zones) > MOST_ZONES:
        raise MendableError(
            say("{count} parts are marked.", count=len(marked.zones)),
            say("Mark {most} at the most.", most=MOST_ZONES),
        )


def _check_stroke(number: int, stroke: Stroke, size: tuple[int, int]) -> None:
    if not stroke.zone.strip() or len(stroke.zone) > _MOST_NAME:
        raise MendableError(
            say("Stroke {number} says no zone, or one of a very long name.", number=number),
            say("Name a zone as “body”, or “{not_this}”.", not_this=say(NOT_THIS)),
        )
    fewest = 3 if stroke.filled else 1
    if not fewest <= len(stroke.points) <= _MOST_POINTS:
        raise MendableError(
            say("Stroke {number} has {count} points.", number=number, count=len(stroke.points)),
            say("It takes {fewest} to {most}.", fewest=fewest, most=_MOST_POINTS),
        )
    if not (isfinite(stroke.width) and 0 < stroke.width <= _WIDEST):
        raise MendableError(
            say(
                "The brush of stroke {number} is {width:g} pixels wide.",
                number=number,
                width=stroke.width,
            ),
            say("Take one above 0 and up to {widest:g}.", widest=_WIDEST),
        )
    for point in stroke.points:
        for at, side in zip(point, size, strict=True):
            if not (isfinite(at) and -_OVER * side <= at <= (1 + _OVER) * side):
                raise MendableError(
                    say(
                        "Stroke {number} goes to {x:g}, {y:g}, outside the photo of"
                        " {width} × {height} pixels.",
                        number=number,
                        x=point[0],
                        y=point[1],
                        width=size[0],
                        height=size[1],
                    ),
                    say("Draw it inside the photo."),
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
