"""Say whether a shelf reaches a colour, and which paint more would bring it there."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.mixing.reach import OneMore, one_more
from swatchwright.mixing.recipe import Shortfall
from swatchwright.mixing.search import find_recipes
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["Reach", "reach_of"]


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
