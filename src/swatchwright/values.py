"""Values that every layer speaks in: a colour, how sure it is, and a rectangle of a photo."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import isfinite, sqrt

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = ["Covariance", "KnownColour", "Lab", "Rect", "isotropic", "usual_distance"]

Triple = tuple[float, float, float]

Covariance = tuple[Triple, Triple, Triple]
"""Covariance of L*, a*, b*, row by row, in squared Lab units."""


_MEDIAN_LENGTH = 1.538
"""Median length of a 3-D normal of unit spread: the root of the chi-square median, 2.366."""


def isotropic(median: float) -> Covariance:
    """Give the covariance, the same in every direction, whose distances have this median."""
    variance = (median / _MEDIAN_LENGTH) ** 2
    return ((variance, 0.0, 0.0), (0.0, variance, 0.0), (0.0, 0.0, variance))


def usual_distance(covariance: Covariance) -> float:
    """Give the median distance of a covariance, from its mean variance."""
    return _MEDIAN_LENGTH * sqrt(sum(covariance[i][i] for i in range(3)) / 3)


@dataclass(frozen=True, slots=True)
class Lab:
    """A colour in CIELAB, for D65 and the 2 degree observer.

    Parameters
    ----------
    L
        Lightness, 0 (black) to 100 (perfect white).
    a
        Green (negative) to red (positive), about -128 to 128.
    b
        Blue (negative) to yellow (positive), about -128 to 128.
    """

    L: float
    a: float
    b: float

    @property
    def triple(self) -> Triple:
        """The three coordinates as a tuple, for array code."""
        return (self.L, self.a, self.b)

    @classmethod
    def of(cls, coordinates: Iterable[float]) -> Lab:
        """Make a colour of three coordinates, such as a row of an array."""
        L, a, b = (float(v) for v in coordinates)
        return cls(L, a, b)

    def moved(self, start: Lab, end: Lab) -> Lab:
        """Give the colour that lies from this one as one lies from another, L* kept to 0-100."""
        L, a, b = (
            here + e - s for here, s, e in zip(self.triple, start.triple, end.triple, strict=True)
        )
        return Lab(min(100.0, max(0.0, L)), a, b)

    @classmethod
    def of_a_surface(cls, L: float, a: float, b: float) -> Lab:
        """Make a colour that somebody typed, refusing what no surface can have.

        Raises
        ------
        MendableError
            If a number is not finite, L* is outside 0-100 or a*, b* outside -150 to 150.
        """
        if not all(isfinite(x) for x in (L, a, b)):
            raise MendableError(
                say("The wanted colour has a coordinate that is not a number."),
                say("Give three plain numbers: L*, a*, b*."),
            )
        if not 0 <= L <= 100 or max(abs(a), abs(b)) > 150:
            raise MendableError(
                say("No surface has the colour L* {L:g}, a* {a:g}, b* {b:g}.", L=L, a=a, b=b),
                say("L* goes from 0 to 100; a* and b* from about -128 to 128."),
            )
        return cls(float(L), float(a), float(b))


@dataclass(frozen=True, slots=True)
class KnownColour:
    """A colour with how far it can be trusted and where it came from.

    Parameters
    ----------
    lab
        The colour.
    covariance
        Its uncertainty, in squared Lab units; None where the colour is exact by definition.
    origin
        Where it came from, in English words, which are kept; the faces say them in her language.
    """

    lab: Lab
    covariance: Covariance | None
    origin: str


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle of the upright photo, in whole pixels from its top left corner."""

    x: int
    y: int
    width: int
    height: int

    @property
    def right(self) -> int:
        """First column that is no longer inside."""
        return self.x + self.width

    @property
    def bottom(self) -> int:
        """First row that is no longer inside."""
        return self.y + self.height

    def inside(self, width: int, height: int) -> bool:
        """Tell whether it lies wholly in a picture of this size and is not empty."""
        return (
            self.width > 0
            and self.height > 0
            and self.x >= 0
            and self.y >= 0
            and self.right <= width
            and self.bottom <= height
        )
