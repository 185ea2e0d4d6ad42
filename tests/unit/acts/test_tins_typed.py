"""Tins are read as painters write them, in either language, and what could be two things is not."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.tins_typed import tins_told, tins_written
from swatchwright.errors import MendableError
from swatchwright.language import ENGLISH, use_language
from swatchwright.language.money import use_money
from swatchwright.piece.tins import MOST_ML, TinSize


@pytest.fixture(autouse=True)
def english_again() -> Iterator[None]:
    """Speak English again, and call money nothing."""
    yield
    use_language(ENGLISH)
    use_money("")


def tins(*told: tuple[float, str | None]) -> tuple[TinSize, ...]:
    """Give tins by ml and price."""
    return tuple(TinSize(ml, None if price is None else Decimal(price)) for ml, price in told)


IN_BOTH = [
    ("  ", ()),
    ("400: 15", tins((400, "15"))),
    (" 120 ml: 7.50; 500:19 ,1000", tins((120, "7.50"), (500, "19"), (1000, None))),
    ("400ml 15", tins((400, "15"))),
    ("400 ml 15.50", tins((400, "15.50"))),
    ("400 ml for 15; 1 l at 32", tins((400, "15"), (1000, "32"))),
    ("400 ml für 15; 1 Liter zu 32", tins((400, "15"), (1000, "32"))),
    ("400 = 15", tins((400, "15"))),
    ("0.5 l: 9; 2.5 L", tins((500, "9"), (2500, None))),
    ("75 cl: 9; 1 litre: 20", tins((750, "9"), (1000, "20"))),
    ("400: 15,-", tins((400, "15"))),
    ("400:", tins((400, None))),
    ("9 ml: 3", tins((9, "3"))),
    ("400: 15, 50", tins((400, "15"), (50, None))),
    # As commands have always been given them.
    ("120:7.50,500:19,1000:32", tins((120, "7.50"), (500, "19"), (1000, "32"))),
    ("750:22,2500:58", tins((750, "22"), (2500, "58"))),
    ("120:7.50,500", tins((120, "7.50"), (500, None))),
]


@pytest.mark.parametrize("code", ["en", "de"])
@pytest.mark.parametrize(("text", "meant"), IN_BOTH)
def test_read_in_both_languages(code: str, text: str, meant: tuple[TinSize, ...]) -> None:
    """Points, units, prices after a colon or a word, and tins parted by ; or comma and space."""
    use_language(code)
    assert tins_told(text) == meant


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("400: 15,50", tins((400, "15.50"))),
        ("400: 15,50; 1000: 32", tins((400, "15.50"), (1000, "32"))),
        ("400: 15,50, 1000: 32,5", tins((400, "15.50"), (1000, "32.5"))),
        ("400 ml 15,50", tins((400, "15.50"))),
        ("0,5 l: 9,80", tins((500, "9.80"))),
        ("0,75 l", tins((750, None))),
        ("400: 15,500 ml: 19", tins((400, "15"), (500, "19"))),
    ],
)
def test_the_decimal_comma(text: str, meant: tuple[TinSize, ...]) -> None:
    """Where decimals have a comma, one within a price or before a unit is that."""
    use_language("de")
    assert tins_told(text) == meant


@pytest.mark.parametrize(
    ("code", "text"),
    [
        ("en", "400: 15,50"),
        ("en", "400: 15,500"),
        ("en", "12,500: 90"),
        ("en", "12,5 l"),
        ("de", "400: 15,500"),
        ("de", "400,500"),
        ("de", "0,5: 9"),
        ("de", "1.500: 30"),
        ("de", "1.500 ml: 30"),
        ("de", "400: 1.500"),
        ("en", "400 15"),
        ("de", "400 15"),
        ("en", "9"),
        ("de", "9"),
        ("en", "2.5: 58"),
    ],
)
def test_what_could_be_two_things(code: str, text: str) -> None:
    """It is refused, with what was written and how to write it."""
    use_language(code)
    with pytest.raises(MendableError) as caught:
        tins_told(text)
    assert text.partition(":")[0] in caught.value.what
    assert caught.value.mend


@pytest.mark.parametrize("code", ["en", "de"])
@pytest.mark.parametrize(
    "text",
    [
        "large",
        "500: cheap",
        "0: 3",
        "-5",
        "500: -3",
        "nan",
        "1:2:3",
        "500: 19: 3",
        "50 for",
        "5 kg: 30",
    ],
)
def test_what_is_no_tin(code: str, text: str) -> None:
    """What is no size or no price is refused with how to write it."""
    use_language(code)
    with pytest.raises(MendableError) as caught:
        tins_told(text)
    assert caught.value.mend


@pytest.mark.parametrize("code", ["en", "de"])
def test_how_to_write_it_can_be_read(code: str) -> None:
    """The example that a refusal gives is read as two tins."""
    use_language(code)
    with pytest.raises(MendableError) as caught:
        tins_told("large")
    example = caught.value.mend.rsplit(" as ")[-1].rsplit(" etwa ")[-1].removesuffix(".")
    assert tins_told(example) == tins((500, "19.50"), (1000, "32"))


def test_money_may_be_typed_with_its_name() -> None:
    """What she calls her money may stand before or after a price, and another word may not."""
    use_money("kr")
    told = "120 ml: 7.50 kr; 500:kr19 ,1000"
    assert [tin.price for tin in tins_told(told)] == [Decimal("7.50"), Decimal(19), None]
    with pytest.raises(MendableError):
        tins_told("500: 19 CHF")
    assert tins_told("500: 19 chf", "CHF") == tins((500, "19"))
    use_language("de")
    assert tins_told("400 ml 15,50 €", "€") == tins((400, "15.50"))


SIZES = st.one_of(
    st.integers(1, int(MOST_ML)).map(float),
    st.floats(1, MOST_ML).map(lambda ml: round(ml, 4)),
)
PRICES = st.one_of(st.none(), st.decimals(0, 1_000_000, places=2), st.decimals(0, 9999, places=4))


@pytest.mark.parametrize("code", ["en", "de"])
@given(told=st.lists(st.builds(TinSize, SIZES, PRICES), min_size=1, max_size=12))
def test_what_is_shown_is_read_back(code: str, told: list[TinSize]) -> None:
    """Tins that are written are the same when they are read, in each language."""
    use_language(code)
    try:
        assert tins_told(tins_written(told)) == tuple(told)
    finally:
        use_language(ENGLISH)


def test_written_as_the_language_writes() -> None:
    """Prices have the mark of their language, and small or broken sizes their unit."""
    told = tins((5, None), (473.2, "9"), (400, "14"), (1000, "32.5"))
    assert tins_written(told) == "5 ml, 473.2 ml: 9.00, 400: 14.00, 1000: 32.50"
    use_language("de")
    assert tins_written(told) == "5 ml; 473,2 ml: 9,00; 400: 14,00; 1000: 32,50"
