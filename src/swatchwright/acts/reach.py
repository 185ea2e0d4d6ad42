"""Say whether a shelf reaches a colour, and which paint more would bring it there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.mixing.reach import OneMore, hull_of, one_more
from swatchwright.mixing.recipe import Shortfall
from swatchwright.mixing.search import find_recipes
from swatchwright.shelf.csv_file import read_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["Body", "Reach", "body_of", "candidates_from", "reach_of"]

Floats = NDArray[np.floating[Any]]


@dataclass(frozen=True, slots=True)
class Reach:
    """How near a shelf comes to a colour.

    Parameters
    ----------
    delta_e
        CIEDE2000 of the nearest mix.
    shortfall
        How far it stays off and which way; None where it is as close as most accept.
    one_more
        Paints of the other shelf that would, one more, bring it within 1; the best first.
    """

    delta_e: float
    shortfall: Shortfall | None
    one_more: tuple[OneMore, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """The body of colours that a shelf's mixes fill, to look at.

    Parameters
    ----------
    points
        (n, 3) CIELAB of its corners.
    corners
        The same as colours.
    faces
        (m, 3) indices of the corners of each triangle.
    """

    points: Floats
    corners: tuple[Lab, ...]
    faces: NDArray[np.intp]

    def outline(self, seen: Callable[[Floats], Floats]) -> Floats:
        """Give the corners (m, 3) that make its outline seen from a side, in turn.

        Parameters
        ----------
        seen
            Takes CIELAB (n, 3) to the plane (n, 2).
        """
        from scipy.spatial import ConvexHull

        # Along its edges too, for a side on which straight lines do not stay straight.
        ends = self.points[self.faces]
        steps = np.linspace(0, 1, 8)[:, None]
        pairs = ((0, 1), (1, 2), (2, 0))
        along = [ends[:, i, None, :] * (1 - steps) + ends[:, j, None, :] * steps for i, j in pairs]
        labs = np.concatenate([part.reshape(-1, 3) for part in along])
        return np.asarray(labs[ConvexHull(seen(labs)).vertices])


def body_of(shelf: Shelf) -> Body:
    """Give the body of colours that a shelf's mixes fill.

    Raises
    ------
    MendableError
        If they fill none.
    """
    hull = hull_of(shelf.paints)
    corners = tuple(Lab.of(point) for point in hull.points)
    return Body(hull.points, corners, hull.faces)


def candidates_from(path: Path) -> Shelf:
    """Read the shelf of paints that could be bought.

    Raises
    ------
    MendableError
        As `read_shelf` does.
    """
    return read_shelf(path)


def reach_of(wanted: Lab, shelf: Shelf, candidates: Shelf | None = None) -> Reach:
    """Say how near a shelf comes to a colour, and what one paint more would do.

    Parameters
    ----------
    wanted
        The colour, D65.
    shelf
        The paints that are there.
    candidates
        Paints that could be bought.

    Raises
    ------
    MendableError
        If the shelf cannot be mixed from.
    """
    found = find_recipes(wanted, shelf.paints, keep=1)
    more = () if candidates is None else one_more(wanted, shelf.paints, candidates.paints)
    return Reach(found.recipes[0].delta_e, found.shortfall, more)
