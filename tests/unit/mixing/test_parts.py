"""Recipes told in whole parts."""

from __future__ import annotations

from itertools import product
from math import gcd

import numpy as np
import pytest

from swatchwright.colour.difference import delta_e_2000
from swatchwright.measures.shares import rounded_shares
from swatchwright.mixing.parts import EASY_TOTAL, LARGEST_TOTAL, whole_parts
from swatchwright.mixing.recipe import Parts, can_be_counted
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import Paint, stack
from unit.mixing.shelves import made_by, some

NEXT_TO_NOTHING = 0.25
TOO_DEAR = 0.8

PAIR = ("white-clean", "clay-red-muted")
TRACE = ("white-clean", "soft-black")
TRIPLE = ("strong-red-orange", "pale-blue-greyish", "strong-yellow-orange")


def in_parts(paints: tuple[Paint, ...], shares: tuple[float, ...]) -> Parts:
    """Tell the mix of these shares, wanted for its own colour, in parts."""
    which = tuple(range(len(paints)))
    return whole_parts(stack(paints), which, shares, made_by(paints, shares), 0.0)


CASES = [
    (PAIR, (0.5, 0.5)),
    (PAIR, (0.667, 0.333)),
    (PAIR, (0.834, 0.166)),
    (TRACE, (0.9, 0.1)),
    (TRACE, (0.996, 0.004)),
    (TRACE, (0.999, 0.001)),
    (TRIPLE, (0.722, 0.192, 0.086)),
    (TRIPLE, (0.34, 0.33, 0.33)),
    (TRIPLE, (0.05, 0.9, 0.05)),
    (("white-clean", "dark-plum", "deep-green-blue"), (0.9, 0.06, 0.04)),
]


@pytest.mark.parametrize(("ids", "shares"), CASES)
def test_parts_are_whole_and_their_cost_is_true(
    ids: tuple[str, ...], shares: tuple[float, ...]
) -> None:
    """Parts are whole, without a common divisor, and cost what mixing them again shows."""
    paints = some(*ids)
    found = in_parts(paints, shares)
    assert min(found.counts) >= 1
    assert gcd(*found.counts) == 1
    assert sum(found.counts) <= LARGEST_TOTAL
    mixed = made_by(paints, [c / sum(found.counts) for c in found.counts])
    apart = float(delta_e_2000(made_by(paints, shares).triple, mixed.triple))
    assert found.delta_e == pytest.approx(apart, abs=1e-9)
    assert found.cost == pytest.approx(apart, abs=1e-9)


def costs(paints: tuple[Paint, ...], shares: tuple[float, ...], most: int) -> dict[int, float]:
    """Give the least cost of any whole parts at all, of each total up to the most."""
    size = len(shares)
    counts = np.array(list(product(range(1, most + 1), repeat=size)))
    totals = counts.sum(axis=1)
    counts, totals = counts[totals <= most], totals[totals <= most]
    which = np.broadcast_to(np.arange(size), counts.shape)
    labs = dry_lab(mix(stack(paints), which, counts / totals[:, None]))
    apart = delta_e_2000(made_by(paints, shares).triple, labs)
    return {total: float(apart[totals == total].min()) for total in range(size, most + 1)}


def random_cases() -> list[tuple[tuple[str, ...], tuple[float, ...]]]:
    """Draw shares of pairs and triples, to 0.1 %, from halves to traces."""
    rng = np.random.default_rng(20)
    drawn = [(ids, rng.dirichlet(np.full(len(ids), 0.7))) for ids in (PAIR, TRACE, TRIPLE) * 6]
    shares = [(ids, rounded_shares(np.maximum(parts, 0.002).tolist())) for ids, parts in drawn]
    return [case for case in shares if min(case[1]) > 0]


@pytest.mark.parametrize(("ids", "shares"), [*CASES, *random_cases()])
def test_the_smallest_total_that_will_do(ids: tuple[str, ...], shares: tuple[float, ...]) -> None:
    """No smaller total costs next to nothing, however it is parted, and 20 is passed at need."""
    paints = some(*ids)
    found = in_parts(paints, shares)
    total = sum(found.counts)
    by_total = costs(paints, shares, EASY_TOTAL)
    easy = min(by_total.values())
    assert total <= EASY_TOTAL or easy > TOO_DEAR
    if total <= EASY_TOTAL and found.cost <= NEXT_TO_NOTHING:
        assert all(cost > NEXT_TO_NOTHING for t, cost in by_total.items() if t < total)
    elif total <= EASY_TOTAL:
        assert found.cost == pytest.approx(easy, abs=1e-9)


@pytest.mark.parametrize("shares", [(0.991, 0.009), (0.986, 0.014), (0.976, 0.024)])
def test_the_smallest_of_many_parts_that_will_do(shares: tuple[float, ...]) -> None:
    """Beyond 20 too no smaller total of a pair would do."""
    paints = some(*TRACE)
    found = in_parts(paints, shares)
    by_total = costs(paints, shares, LARGEST_TOTAL)
    total = sum(found.counts)
    assert total > EASY_TOTAL
    assert by_total[total] == pytest.approx(found.cost, abs=1e-9)
    assert found.cost <= NEXT_TO_NOTHING
    assert all(by_total[t] > NEXT_TO_NOTHING for t in range(2, total))


def test_half_and_half() -> None:
    """Half and half is one part and one part."""
    assert in_parts(some(*PAIR), (0.5, 0.5)) == Parts((1, 1), 0.0, 0.0)


def test_one_paint_is_one_part() -> None:
    """A single paint is one part at no cost, and as far off as it was."""
    (white,) = some("white-clean")
    found = whole_parts(stack([white]), (0,), (1.0,), made_by([white], [1]), 3.5)
    assert found == Parts((1,), 3.5, 0.0)


def test_a_happy_rounding_costs_nothing() -> None:
    """Parts that come closer than the exact shares cost 0, not less."""
    paints = some(*PAIR)
    wanted = made_by(paints, (2 / 3, 1 / 3))
    exact = float(delta_e_2000(wanted.triple, made_by(paints, (0.66, 0.34)).triple))
    found = whole_parts(stack(paints), (0, 1), (0.66, 0.34), wanted, exact)
    assert found.counts == (2, 1)
    assert found.delta_e < exact
    assert found.cost == 0


def test_a_strong_paint_may_need_many_parts() -> None:
    """A trace of black in white cannot be told in twenty parts and is told in up to 200."""
    found = in_parts(some(*TRACE), (0.994, 0.006))
    assert EASY_TOTAL < sum(found.counts) <= LARGEST_TOTAL
    assert found.cost <= NEXT_TO_NOTHING


@pytest.mark.parametrize(
    ("parts", "counted"),
    [((1,), True), ((3, 1), True), ((38, 2), True), ((38, 22, 1), False), ((1.5, 1), False)],
)
def test_parts_are_told_where_one_can_count_them(
    parts: tuple[float, ...], *, counted: bool
) -> None:
    """Up to forty whole parts are counted (common practice, no source); more or broken ones not."""
    assert can_be_counted(parts) is counted


@pytest.mark.parametrize(
    ("parts", "shares", "counted"),
    [
        ((1, 1), (0.5, 0.5), True),
        ((3, 1, 1), (0.6, 0.24, 0.16), True),
        ((1, 1), (0.6, 0.4), True),
        ((1, 1), (0.6875, 0.3125), False),
        ((8, 1, 1), (0.75, 0.172, 0.078), False),
        ((8, 1, 1), (75.0, 12.5, 12.5), True),
        ((38, 22, 1), (0.62, 0.36, 0.02), False),
    ],
)
def test_parts_are_not_told_where_the_ml_say_something_else(
    parts: tuple[float, ...], shares: tuple[float, ...], *, counted: bool
) -> None:
    """One part beside 44 ml and one part beside 20 ml are no one recipe (our own bound)."""
    assert can_be_counted(parts, shares) is counted
