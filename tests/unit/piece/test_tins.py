"""The cheapest tins, against an integer programme solved by HiGHS and against trying everything."""

from __future__ import annotations

from decimal import Decimal
from itertools import product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import LinearConstraint, milp

from swatchwright.errors import MendableError
from swatchwright.piece.tins import TinCount, TinSize, cheapest_tins

SIZES = (TinSize(120, Decimal("7.50")), TinSize(500, Decimal(19)), TinSize(1000, Decimal(32)))


def cost(tins: tuple[TinCount, ...]) -> Decimal:
    """Give what tins cost."""
    return sum((t.count * t.size.price for t in tins if t.size.price is not None), Decimal(0))


def held(tins: tuple[TinCount, ...]) -> float:
    """Give what tins hold."""
    return sum(t.count * t.size.ml for t in tins)


def test_a_worked_purchase() -> None:
    """For 710 ml a litre at 32 beats 500 + 2 x 120 at 34; for 700 ml too; for 620, 500 + 120."""
    assert cheapest_tins(710, SIZES) == (TinCount(SIZES[2], 1),)
    assert cheapest_tins(620, SIZES) == (TinCount(SIZES[0], 1), TinCount(SIZES[1], 1))


@given(
    st.floats(1, 6000),
    st.lists(st.tuples(st.integers(50, 2500), st.integers(100, 9000)), min_size=1, max_size=5),
)
def test_no_integer_programme_is_cheaper(need: float, sold: list[tuple[int, int]]) -> None:
    """HiGHS, a general solver, finds no combination that covers the need for less."""
    sizes = [TinSize(ml, Decimal(cents) / 100) for ml, cents in sold]
    tins = cheapest_tins(need, sizes)
    assert held(tins) >= need
    prices = np.array([cents for _, cents in sold], dtype=float)
    volumes = np.array([[ml for ml, _ in sold]], dtype=float)
    best = milp(
        prices,
        constraints=LinearConstraint(volumes, lb=need),
        integrality=np.ones(len(sold), dtype=int),
    )
    assert best.success
    assert float(cost(tins) * 100) == pytest.approx(best.fun, abs=0.5)


@given(st.integers(1, 900), st.lists(st.integers(60, 500), min_size=1, max_size=3, unique=True))
def test_without_prices_the_least_paint(need: int, volumes: list[int]) -> None:
    """Where no price is known, no choice of tins holds less and still enough."""
    tins = cheapest_tins(need, [TinSize(ml) for ml in volumes])
    counts = product(*[range(need // ml + 2) for ml in volumes])
    totals = (sum(n * ml for n, ml in zip(c, volumes, strict=True)) for c in counts)
    assert held(tins) == min(total for total in totals if total >= need)


def test_nothing_needed() -> None:
    """Of what is not needed nothing is bought."""
    assert cheapest_tins(0, SIZES) == ()
    assert cheapest_tins(-5, SIZES) == ()


@pytest.mark.parametrize(
    ("need", "sizes", "told"),
    [
        (1e9, SIZES, "are needed"),
        (float("nan"), SIZES, "are needed"),
        (100, (), "0 tin sizes"),
        (100, SIZES * 5, "15 tin sizes"),
        (100, (TinSize(0.5),), "cannot be bought"),
        (100, (TinSize(float("inf")),), "cannot be bought"),
        (100, (TinSize(100, Decimal(-1)),), "priced −1"),
        (100, (TinSize(100, Decimal("NaN")),), "priced NaN"),
        (100, (TinSize(100, Decimal("1.23456")),), "priced 1.23456"),
    ],
)
def test_what_cannot_be_bought(need: float, sizes: tuple[TinSize, ...], told: str) -> None:
    """Needs, sizes and prices that cannot be are refused."""
    with pytest.raises(MendableError, match=told):
        cheapest_tins(need, sizes)
