"""Cups and spoons by country."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.measures.kitchen import Country, in_spoons


@pytest.mark.parametrize(
    ("country", "cup", "tablespoon", "teaspoon"),
    [
        # NIST SP 811 appendix B.8 and Handbook 44 appendix C.
        (Country.UNITED_STATES, 236.5882365, 14.78676478125, 4.92892159375),
        # Common practice, no source: 20 ml tablespoons in Australia, 15 ml elsewhere.
        (Country.AUSTRALIA, 250.0, 20.0, 5.0),
        (Country.NEW_ZEALAND, 250.0, 15.0, 5.0),
        (Country.UNITED_KINGDOM, 250.0, 15.0, 5.0),
        (Country.METRIC, 250.0, 15.0, 5.0),
    ],
)
def test_a_set_holds_what_it_should(
    country: Country, cup: float, tablespoon: float, teaspoon: float
) -> None:
    """One of each is told as one of it, and holds its exact volume."""
    for ml, counts in (
        (cup, (1, 0, 0, 0)),
        (tablespoon, (0, 1, 0, 0)),
        (teaspoon, (0, 0, 1, 0)),
        (teaspoon / 4, (0, 0, 0, 1)),
    ):
        told = in_spoons(ml, country)
        assert (told.cups, told.tablespoons, told.teaspoons, told.quarters) == counts
        assert told.ml == pytest.approx(ml, rel=1e-12)


@given(st.floats(0, 5000), st.sampled_from(Country))
def test_nothing_is_lost_but_the_rounding(ml: float, country: Country) -> None:
    """What is told holds the volume to half a quarter teaspoon, in as few spoons as can be."""
    told = in_spoons(ml, country)
    assert told.ml == pytest.approx(ml, abs=0.63)
    assert 0 <= told.quarters <= 3
    assert 0 <= told.teaspoons <= 3
    assert 0 <= told.cup_quarters <= 3
    # No more spoons than would fill the smallest cup, whatever the country.
    assert told.tablespoons <= 4


@pytest.mark.parametrize(
    ("ml", "country", "cups", "quarters", "tablespoons"),
    [
        # A cup holds 16 tablespoons, so 3/8 of it a quarter and two [NIST811].
        (236.5882365 * 3 / 8, Country.UNITED_STATES, 0, 1, 2),
        (236.5882365 * 1.5, Country.UNITED_STATES, 1, 2, 0),
        (187.5, Country.METRIC, 0, 3, 0),
    ],
)
def test_halves_and_quarters_of_a_cup_are_used(
    ml: float, country: Country, cups: int, quarters: int, tablespoons: int
) -> None:
    """A set of cups holds a half and a quarter, which take the place of many spoons."""
    told = in_spoons(ml, country)
    assert (told.cups, told.cup_quarters, told.tablespoons) == (cups, quarters, tablespoons)
    assert told.ml == pytest.approx(ml, rel=1e-9)


@pytest.mark.parametrize("ml", [-1.0, float("nan"), float("inf")])
def test_no_volume_is_refused(ml: float) -> None:
    """What is no volume is refused."""
    with pytest.raises(MendableError, match="spooned"):
        in_spoons(ml, Country.METRIC)
