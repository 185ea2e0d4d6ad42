"""Cups and spoons of a country, and volumes told in them.

Sources
-------
United States: NIST Handbook 44 appendix C (1 teaspoon = 1/768 gallon of 231 cubic inches).
Metric, Australian and New Zealand cups and spoons: common practice, no source that binds; the
Australian tablespoon holds four teaspoons, the others three.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, say

__all__ = ["LEAST", "Country", "Spoons", "in_spoons"]


class Country(StrEnum):
    """Whose cups and spoons are meant."""

    AUSTRALIA = mark("Australia")
    METRIC = mark("metric")
    NEW_ZEALAND = mark("New Zealand")
    UNITED_KINGDOM = mark("United Kingdom")
    UNITED_STATES = mark("United States")


_US_TEASPOON = 231 * 16.387064 / 768
"""ml; a cubic inch is 16.387064 ml."""

# Teaspoon in ml, teaspoons in a tablespoon, teaspoons in a cup.
_SETS = {
    Country.AUSTRALIA: (5.0, 4, 50),
    Country.METRIC: (5.0, 3, 50),
    Country.NEW_ZEALAND: (5.0, 3, 50),
    Country.UNITED_KINGDOM: (5.0, 3, 50),
    Country.UNITED_STATES: (_US_TEASPOON, 3, 48),
}

LEAST = 0.25
"""Teaspoons in the smallest spoon of a set."""


@dataclass(frozen=True, slots=True)
class Spoons:
    """A volume in cups and spoons, with the halves and quarters that their sets hold.

    Parameters
    ----------
    cups, tablespoons, teaspoons
        How many, whole.
    quarters
        Quarter teaspoons on top, 0 to 3.
    ml
        What they hold together.
    cup_quarters
        Quarter cups beside the whole ones, 0 to 3: a half cup is two.
    """

    cups: int
    tablespoons: int
    teaspoons: int
    quarters: int
    ml: float
    cup_quarters: int = 0


def in_spoons(ml: float, country: Country) -> Spoons:
    """Tell a volume in the cups and spoons of a country, to the nearest quarter teaspoon.

    Raises
    ------
    MendableError
        If it is not a volume of 0 or more.

    Examples
    --------
    >>> in_spoons(30, Country.AUSTRALIA)
    Spoons(cups=0, tablespoons=1, teaspoons=2, quarters=0, ml=30.0, cup_quarters=0)
    """
    if not (isfinite(ml) and ml >= 0):
        raise MendableError(
            say("{ml:g} ml cannot be spooned.", ml=ml), say("Give a volume of 0 ml or more.")
        )
    teaspoon, in_tablespoon, in_cup = _SETS[country]
    quarters = round(ml / teaspoon / LEAST)
    # A quarter cup is as many quarter teaspoons as a cup holds teaspoons.
    cup_quarters, rest = divmod(quarters, in_cup)
    tablespoons, rest = divmod(rest, 4 * in_tablespoon)
    teaspoons, left = divmod(rest, 4)
    held = quarters * LEAST * teaspoon
    return Spoons(
        cup_quarters // 4, tablespoons, teaspoons, left, held, cup_quarters=cup_quarters % 4
    )
