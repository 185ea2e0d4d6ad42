"""A recipe: which paints, in what shares and parts, and how close that comes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.paint.paints import Paint
from swatchwright.values import Lab

__all__ = [
    "MOST_COUNTED",
    "MOST_ROUNDED",
    "Parts",
    "Recipe",
    "SearchResult",
    "Shortfall",
    "can_be_counted",
]

MOST_COUNTED = 40
"""Parts, all paints together, that a person still counts out; common practice, no source."""


MOST_ROUNDED = 1.35
"""How many times as much, or as little, of a paint parts may say as the exact share says.

Parts are rounded so that the colour stays near; where one says a third more of a paint than the ml
beside it, nobody would take the two for one recipe. Our own bound, no source.
"""


def can_be_counted(parts: Sequence[float], shares: Sequence[float] | None = None) -> bool:
    """Tell whether a mix can be told in parts: whole ones, and no more than one can count.

    Millilitres and grams always follow from the exact shares; parts are a second way beside them,
    and are not told where they say something else.

    Parameters
    ----------
    parts
        Parts of each paint.
    shares
        The exact shares of the same paints, of any sum; None where the parts are all that is known.
    """
    if sum(parts) > MOST_COUNTED or any(count != int(count) for count in parts):
        return False
    if shares is None:
        return True
    unit = sum(parts) / sum(shares)
    times = [count / (share * unit) for count, share in zip(parts, shares, strict=True)]
    return all(1 / MOST_ROUNDED <= ratio <= MOST_ROUNDED for ratio in times)


@dataclass(frozen=True, slots=True)
class Parts:
    """Shares told in whole parts.

    Parameters
    ----------
    counts
        Whole parts of each paint, at least 1 each, with no common divisor.
    delta_e
        CIEDE2000 from the wanted colour when mixed by these parts.
    cost
        What it costs against the exact shares, in CIEDE2000; 0 if it costs nothing.
    """

    counts: tuple[int, ...]
    delta_e: float
    cost: float


@dataclass(frozen=True, slots=True)
class Recipe:
    """One way to make the wanted colour.

    Parameters
    ----------
    paints
        One, two or three paints, the largest share first.
    shares
        Share of the wet volume, to 0.1 %, summing to 1.
    delta_e
        CIEDE2000 of the dry, opaque film from the wanted colour, at these shares.
    dry, wet
        The colour dry, and wet in the pot or just brushed, away from the glint.
    parts
        The same in whole parts.
    coats
        Coats that hide black and white alike (98 %) at the paints' spreading rates; None if
        more than six.
    """

    paints: tuple[Paint, ...]
    shares: tuple[float, ...]
    delta_e: float
    dry: Lab
    wet: Lab
    parts: Parts
    coats: int | None


@dataclass(frozen=True, slots=True)
class Shortfall:
    """How far the nearest recipe stays from the wanted colour.

    Parameters
    ----------
    delta_e
        CIEDE2000 that is left.
    towards
        What the mix would have to be more of, the largest first: "lighter", "greener", ...
    """

    delta_e: float
    towards: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SearchResult:
    """What a search found.

    Parameters
    ----------
    wanted
        The colour that was wanted.
    recipes
        The closest first; never empty.
    shortfall
        How far the nearest stays off; None if it is as close as most people accept.
    subsets_tried
        How many sets of paints were weighed.
    closest
        The least difference found at exact shares, before they are rounded and before paints that
        bring little are left out.
    proven_gap
        How far `closest` can be above the best there is, by bounds; None where it was not proven.
    far
        Whether `closest` and `proven_gap` are by the difference for far colours, CIEDE2000 without
        its rotation, as for a colour out of reach.
    """

    wanted: Lab
    recipes: tuple[Recipe, ...]
    shortfall: Shortfall | None
    subsets_tried: int
    closest: float = float("nan")
    proven_gap: float | None = None
    far: bool = False
