"""The cheapest tins that hold what is needed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import reduce
from math import ceil, floor, gcd, isfinite

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = ["MOST_ML", "TinCount", "TinSize", "cheapest_tins"]

MOST_ML = 100_000.0
"""ml; more than any piece of furniture takes."""

_MOST_SIZES = 12
_DEAREST = Decimal(1_000_000)
_PLACES = 4


@dataclass(frozen=True, slots=True)
class TinSize:
    """A size that is sold, ml, and its price; None where it is not known."""

    ml: float
    price: Decimal | None = None


@dataclass(frozen=True, slots=True)
class TinCount:
    """So many tins of one size."""

    size: TinSize
    count: int


def cheapest_tins(need: float, sizes: Sequence[TinSize]) -> tuple[TinCount, ...]:
    """Choose tins that hold at least what is needed, for the least money.

    Every combination is weighed, by dynamic programming over whole millilitres (a tin is taken to
    hold no more than its whole ml). Of equal cost the one with less paint is chosen, then that of
    fewer tins. Where a price is not known, it is the least paint, then the fewest tins.

    Parameters
    ----------
    need
        ml, 0 to 100 000; of 0 or less no tin is needed.
    sizes
        What is sold; from 1 to 12 sizes.

    Raises
    ------
    MendableError
        If a size or a price cannot be, none is given, or more is needed than can be reckoned.
    """
    _check(need, sizes)
    if need <= 0:
        return ()
    whole = [floor(size.ml) for size in sizes]
    step = reduce(gcd, whole)
    counts = _fewest(ceil(need / step), [ml // step for ml in whole], _costs(sizes))
    chosen = zip(sizes, counts, strict=True)
    return tuple(TinCount(size, n) for size, n in chosen if n)


def _fewest(need: int, volumes: Sequence[int], costs: Sequence[int]) -> list[int]:
    """Fill volumes of 1 to the need, each by the tin that costs least on top of what is below.

    A bounded-below form of the unbounded knapsack problem ([Kellerer2004], chapter 8).
    """
    best: list[tuple[int, int, int]] = [(0, 0, 0)]
    last = [0]
    for volume in range(1, need + 1):
        found = min(
            (cost + below[0], ml + below[1], 1 + below[2], i)
            for i, (ml, cost) in enumerate(zip(volumes, costs, strict=True))
            for below in (best[max(0, volume - ml)],)
        )
        best.append(found[:3])
        last.append(found[3])
    counts, volume = [0] * len(volumes), need
    while volume > 0:
        counts[last[volume]] += 1
        volume -= volumes[last[volume]]
    return counts


def _costs(sizes: Sequence[TinSize]) -> list[int]:
    prices = [size.price for size in sizes]
    known = [p for p in prices if p is not None]
    if len(known) < len(prices):
        return [0] * len(prices)
    return [int(p.scaleb(_PLACES)) for p in known]


def _check(need: float, sizes: Sequence[TinSize]) -> None:
    if not (isfinite(need) and need <= MOST_ML):
        raise MendableError(
            say("{need:g} ml are needed of one paint.", need=need),
            say("Up to 100 litres can be reckoned; look again."),
        )
    if not 1 <= len(sizes) <= _MOST_SIZES:
        raise MendableError(
            say("{count} tin sizes were given.", count=len(sizes)),
            say("Give from 1 to {most} of them.", most=_MOST_SIZES),
        )
    for size in sizes:
        if not (isfinite(size.ml) and 1 <= size.ml <= MOST_ML):
            raise MendableError(
                say("A tin of {ml:g} ml cannot be bought.", ml=size.ml),
                say("Give sizes of 1 ml to 100 litres."),
            )
        if size.price is not None:
            _check_price(size.ml, size.price)


def _check_price(ml: float, price: Decimal) -> None:
    if not (price.is_finite() and 0 <= price <= _DEAREST):
        raise MendableError(
            say("The tin of {ml:g} ml is priced {price}.", ml=ml, price=price),
            say("Give a price from 0 to a million."),
        )
    if int(price.as_tuple().exponent) < -_PLACES:
        raise MendableError(
            say("The tin of {ml:g} ml is priced {price}.", ml=ml, price=price),
            say("Give a price with at most four decimals."),
        )
