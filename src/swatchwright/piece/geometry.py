"""Areas of the shapes that furniture is made of, in mm2 from sizes in mm.

Sources
-------
The formulas of elementary geometry, as any handbook of mathematics has them ([Bronshtein2015],
chapter 3): frustum of a cone pi (r1 + r2) s with slant height s; trapezoid (a + b)/2 h; sphere
pi d2; and Pappus's first theorem for what is turned. The tests hold them against numerical
integration and the surfaces of convex hulls.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from math import hypot, pi

__all__ = [
    "Points",
    "disc",
    "frame_face",
    "girth",
    "lateral",
    "sphere",
    "tapered_sides",
    "trapezoid",
]

Points = Sequence[tuple[float, float]]


def lateral(profile: Points) -> float:
    """Give the lateral area, mm2, of what is turned: frustums stacked along its axis.

    Parameters
    ----------
    profile
        Pairs of distance along the axis and radius, mm, in their order; two pairs at one distance
        make a flat shoulder. Between pairs the outline is straight, so a curve is measured a
        little short: the error falls with the square of the spacing.

    Examples
    --------
    >>> round(lateral([(0, 30), (700, 15)]), 3)
    98982.886
    """
    return sum(pi * (r1 + r2) * hypot(z2 - z1, r2 - r1) for (z1, r1), (z2, r2) in pairwise(profile))


def girth(profile: Points) -> float:
    """Give the developed length, mm, of a profile: what a tape laid over it would read."""
    return sum(hypot(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(profile))


def tapered_sides(length: float, start: tuple[float, float], end: tuple[float, float]) -> float:
    """Give the area, mm2, of the four sides of a leg that tapers evenly on all sides.

    Parameters
    ----------
    length
        Along its axis, mm.
    start, end
        Width and depth at either end, mm. Each side is a trapezoid, as high as it slants.

    Examples
    --------
    >>> round(tapered_sides(700, (45, 45), (25, 25)), 3)
    98009.999
    """
    (w1, d1), (w2, d2) = start, end
    wide = (w1 + w2) * hypot(length, (d1 - d2) / 2)
    deep = (d1 + d2) * hypot(length, (w1 - w2) / 2)
    return wide + deep


def trapezoid(a: float, b: float, height: float) -> float:
    """Give the area, mm2, of a trapezoid with parallel sides a and b, mm."""
    return (a + b) / 2 * height


def disc(diameter: float) -> float:
    """Give the area, mm2, of a disc."""
    return pi / 4 * diameter**2


def sphere(diameter: float) -> float:
    """Give the area, mm2, of a sphere."""
    return pi * diameter**2


def frame_face(length: float, width: float, stile: float, rail: float) -> float:
    """Give the area, mm2, of one face of a frame: its outline less the opening."""
    return length * width - (length - 2 * rail) * (width - 2 * stile)
