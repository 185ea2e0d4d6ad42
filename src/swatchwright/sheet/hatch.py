"""Patterns that tell paints apart where colour cannot: in black and white, or by colour-blind eyes.

The largest share is plain; each other has a pattern of its own, the same in the bar and in the
table.
"""

from __future__ import annotations

from swatchwright.sheet.ink import RGB, ink_on
from swatchwright.sheet.pen import Box, Pen

__all__ = ["PATTERNS", "hatched"]

PATTERNS = 8

_STEP = 1.9
_THICK = 0.22

# Directions in which lines go across, x and y for each step; dots have none.
_LINES: tuple[tuple[tuple[float, float], ...], ...] = (
    (),
    ((1, -1),),
    (),
    ((1, 0),),
    ((1, 1),),
    ((1, -1), (1, 1)),
    ((0, 1),),
    ((1, 0), (0, 1)),
)
_DOTTED = 2


def hatched(pen: Pen, box: Box, *, fill: RGB, pattern: int) -> None:
    """Fill a rectangle with a colour and the pattern of that number."""
    pen.rect(box, fill=fill)
    ink, _ = ink_on(fill)
    with pen.inside(box):
        if pattern % PATTERNS == _DOTTED:
            _dots(pen, box, ink)
        for way in _LINES[pattern % PATTERNS]:
            _strokes(pen, box, way, ink)


def _dots(pen: Pen, box: Box, ink: RGB) -> None:
    for row in range(int(box.height / _STEP) + 2):
        for column in range(int(box.width / _STEP) + 2):
            shift = _STEP / 2 * (row % 2)
            pen.disc(box.x + shift + column * _STEP, box.y + (row + 0.5) * _STEP, 0.3, fill=ink)


def _strokes(pen: Pen, box: Box, way: tuple[float, float], ink: RGB) -> None:
    """Draw lines of one direction all over a box."""
    x, y, width, height = box.x, box.y, box.width, box.height
    dx, dy = way
    if not dy:
        for row in range(int(height / _STEP) + 1):
            at = y + (row + 0.5) * _STEP
            pen.stroke(x, at, x + width, at, ink=ink, thick=_THICK)
        return
    # A slanted line runs as far to the side as it is high.
    begin, step = (-height if dx else 0.0), _STEP * (1.3 if dx else 1.0)
    for column in range(int((width - begin + height) / step) + 1):
        at = x + begin + (column + 0.5) * step
        top, bottom = (y, y + height) if dy > 0 else (y + height, y)
        pen.stroke(at, top, at + dx * height, bottom, ink=ink, thick=_THICK)
