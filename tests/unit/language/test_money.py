"""Prices as they are told: the figure, and what the painter calls her money.

References
----------
Unicode CLDR, number patterns of currencies and of their names, by way of Babel.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

import pytest
from babel.numbers import format_currency, get_currency_symbol
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.language import ENGLISH, use_language
from swatchwright.language.money import beside_figure, money_in_use, priced, use_money

CENTS = st.integers(0, 99_999).map(lambda cents: cents / 100)


@pytest.fixture(autouse=True)
def nothing_named() -> Iterator[None]:
    """Begin and end in English, with money that nobody has named."""
    use_money("")
    yield
    use_money("")
    use_language(ENGLISH)


def in_cldr(value: float, code: str, place: str, kind: str = "standard") -> str:
    """Give a price as CLDR has it, of less than a thousand."""
    return format_currency(value, code, locale=place, format_type=kind)  # type: ignore[arg-type]


@pytest.mark.parametrize("code", ["GBP", "EUR", "USD"])
@given(value=CENTS)
def test_a_sign_stands_where_the_language_has_it(code: str, value: float) -> None:
    """In English a sign is close before the figure, in German after it, as in CLDR."""
    for spoken, place in (("en", "en_GB"), ("de", "de_DE")):
        sign = get_currency_symbol(code, locale="en_US")
        use_language(spoken)
        told = in_cldr(value, code, place).replace(get_currency_symbol(code, locale=place), sign)
        assert priced(value, sign) == told


@given(value=CENTS)
def test_a_word_follows_the_figure(value: float) -> None:
    """A word follows in both languages, as names of money do in CLDR; no line parts them."""
    for spoken, place in (("en", "en_GB"), ("de", "de_DE")):
        use_language(spoken)
        told = in_cldr(value, "CHF", place, "name")
        figure, name = told.split(" ", maxsplit=1)
        assert priced(value, name) == f"{figure}\N{NO-BREAK SPACE}{name}"
    assert priced(value, "CHF") == in_cldr(value, "CHF", "de_DE")


@pytest.mark.parametrize(("name", "told"), [("A$", "A$5.00"), ("kr.", "5.00\xa0kr."), ("", "5.00")])
def test_what_ends_in_a_sign_is_one(name: str, told: str) -> None:
    """A name counts as a sign by its end; where nothing is named the figure stands alone."""
    assert priced(5, name) == told


def test_the_money_in_use_is_told_until_it_is_named_anew() -> None:
    """What it is called counts at once; a job's own word for it goes before."""
    use_money("kr")
    assert money_in_use() == "kr"
    assert priced(Decimal("12.75")) == "12.75\xa0kr"
    assert priced(12.75, "£") == "£12.75"
    assert priced(1200.0, spec="g") == "1200\xa0kr"
    assert beside_figure() == ("", "\xa0kr")
    use_money("€")
    assert beside_figure() == ("€", "")
