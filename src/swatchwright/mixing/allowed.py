"""Which paints may meet under what the painter asks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations_with_replacement
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.language.money import priced
from swatchwright.mixing.solve import Rules
from swatchwright.mixing.wishes import (
    A_GOOD_PART,
    Wishes,
    check_ids,
    check_wishes,
    is_owned,
    price_per_ml,
)
from swatchwright.paint.paints import Paint

__all__ = ["Allowed", "allowed"]

Floats = NDArray[np.floating[Any]]
Indices = NDArray[np.intp]


@dataclass(frozen=True, eq=False)
class Allowed:
    """Which sets of paints may meet.

    Parameters
    ----------
    pools
        Indices of the paints of each kind: of one carrier, owned or not; a paint that must be in
        is a kind by itself.
    draws
        Kinds of which the paints of a set are taken, rising; every size up to the most.
    rules
        Limits, hiding, and the least of what must be in; None where there are none.
    must
        Indices of the paints that must be in.
    """

    pools: tuple[Indices, ...]
    draws: tuple[tuple[int, ...], ...]
    rules: Rules | None
    must: frozenset[int] = frozenset()

    @cached_property
    def largest_draws(self) -> tuple[tuple[int, ...], ...]:
        """Give the draws that no other draw contains."""
        return tuple(d for d in self.draws if not any(_within(d, e) for e in self.draws))

    def sets(self, size: int) -> Indices:
        """List all sets of a size, (m, size) rising indices in lexical order."""
        parts = [np.concatenate(list(self.blocks(d))) for d in self.draws if len(d) == size]
        rows = np.concatenate([np.empty((0, size), dtype=np.intp), *parts])
        rows.sort(axis=1)
        rows = rows[np.lexsort(rows.T[::-1])]
        if self._limits is not None:
            rows = rows[self._limits[rows].sum(axis=1) >= 1]
        if self.rules is not None and self.rules.prices is not None:
            rows = rows[self.rules.prices[rows].min(axis=1) <= 1]
        return rows

    def count(self, size: int) -> int:
        """Count the sets of a size."""
        return sum(len(block) for d in self.draws if len(d) == size for block in self.blocks(d))

    @property
    def _limits(self) -> Floats | None:
        return None if self.rules is None else self.rules.limits

    def blocks(self, draw: tuple[int, ...]) -> Iterator[Indices]:
        """List the sets of a draw, a block for each choice of its first paint."""
        pools = [self.pools[p] for p in draw]
        for at, first in enumerate(pools[0]):
            rows = np.array([[first]])
            start = [at + 1] if len(draw) > 1 and draw[1] == draw[0] else [0]
            if len(draw) > 1:
                second = pools[1][start[0] :]
                rows = np.stack([np.full(len(second), first), second], axis=1)
            if len(draw) > 2:
                rows = _with_third(rows, pools[1], pools[2], draw, at)
            yield rows.astype(np.intp)


def _with_third(
    rows: Indices, second: Indices, third: Indices, draw: tuple[int, ...], at: int
) -> Indices:
    one, two = np.meshgrid(np.arange(len(second)), np.arange(len(third)), indexing="ij")
    keep = np.ones(one.shape, dtype=np.bool_)
    if draw[1] == draw[0]:
        keep &= one > at
    if draw[2] == draw[1]:
        keep &= two > one
    first = rows[0, 0] if len(rows) else 0
    one, two = one[keep], two[keep]
    return np.stack([np.full(len(one), first), second[one], third[two]], axis=1)


def _within(draw: tuple[int, ...], other: tuple[int, ...]) -> bool:
    return len(other) > len(draw) and all(other.count(p) >= draw.count(p) for p in draw)


def allowed(shelf: Sequence[Paint], wishes: Wishes, most_paints: int) -> Allowed:
    """Work out which sets of paints may meet.

    Raises
    ------
    MendableError
        If a wish names a paint that is not there, or wishes cannot be kept together; it names
        the wish.
    """
    ids = [p.id for p in shelf]
    check_ids(ids, wishes)
    usable = [i for i, p in enumerate(shelf) if _usable(p.id, wishes)]
    if wishes.most_price is not None:
        usable = _priced(shelf, usable, wishes.most_price)
    if not usable:
        raise MendableError(
            say("No paint is left by the wishes."), say("Ask for more paints, or leave out fewer.")
        )
    must = [i for i in usable if ids[i] in wishes.must]
    check_wishes(shelf, must, wishes, most_paints)
    pools, kinds = _pools(shelf, usable, set(must), wishes)
    draws = tuple(
        draw
        for size in range(1, most_paints + 1)
        for draw in combinations_with_replacement(range(len(pools)), size)
        if _may_meet(draw, pools, kinds, len(must), wishes)
    )
    if not draws:
        raise MendableError(
            say(
                "No mix of at most {most} paints needs only {bought} to be bought.",
                most=most_paints,
                bought=wishes.most_to_buy,
            ),
            say("Allow one paint more to be bought."),
        )
    rules = _rules(shelf, wishes)
    found = Allowed(tuple(pools), draws, rules, frozenset(must))
    if rules is not None and rules.limits is not None:
        _check_limits(found, most_paints)
    return found


def _priced(shelf: Sequence[Paint], usable: Sequence[int], most: float) -> list[int]:
    """Leave out paints without a price, and refuse a price that none of the others has."""
    prices = {i: price_per_ml(shelf[i]) for i in usable}
    known = {i: 1000 * price for i, price in prices.items() if price is not None}
    if not known:
        raise MendableError(
            say("A greatest price was asked for, and no paint has a price."),
            say("Give the shelf the prices of its tins, or do without this wish."),
        )
    if min(known.values()) > most:
        raise MendableError(
            say(
                "A litre at {most} at the most was asked for; the cheapest paint costs "
                "{cheapest} a litre.",
                most=priced(most, spec="g"),
                cheapest=priced(min(known.values())),
            ),
            say("Allow a higher price."),
        )
    return list(known)


def _usable(id_: str, wishes: Wishes) -> bool:
    return (wishes.only is None or id_ in wishes.only) and id_ not in wishes.without


_Kind = tuple[bool, bool, bool]
"""Whether it must be in, is water-borne, is owned."""


def _pools(
    shelf: Sequence[Paint], usable: Sequence[int], must: set[int], wishes: Wishes
) -> tuple[list[Indices], list[_Kind]]:
    """Sort the paints into kinds that are alike to the wishes."""
    pools = [np.array([i], dtype=np.intp) for i in sorted(must)]
    kinds = [(True, shelf[i].finish.waterborne, is_owned(shelf[i], wishes)) for i in sorted(must)]
    for water in (True, False):
        for owned in (True, False):
            rows = [
                i
                for i in usable
                if i not in must
                and shelf[i].finish.waterborne is water
                and is_owned(shelf[i], wishes) is owned
            ]
            if rows:
                pools.append(np.array(rows, dtype=np.intp))
                kinds.append((False, water, owned))
    return pools, kinds


def _may_meet(
    draw: tuple[int, ...],
    pools: Sequence[Indices],
    kinds: Sequence[_Kind],
    musts: int,
    wishes: Wishes,
) -> bool:
    one_carrier = len({kinds[p][1] for p in draw}) == 1
    enough = all(draw.count(p) <= len(pools[p]) for p in draw)
    all_musts = len({p for p in draw if kinds[p][0]}) == musts
    bought = sum(not kinds[p][2] for p in draw)
    cheap = wishes.most_to_buy is None or bought <= wishes.most_to_buy
    return one_carrier and enough and all_musts and cheap


def _rules(shelf: Sequence[Paint], wishes: Wishes) -> Rules | None:
    limits = least = prices = None
    if wishes.most_price is not None:
        # Those without a price are not used, so that any number does for them.
        each = [price_per_ml(p) or 0.0 for p in shelf]
        prices = 1000 * np.array(each) / wishes.most_price
    if wishes.must:
        least = np.array([A_GOOD_PART if p.id in wishes.must else 0.0 for p in shelf])
    if wishes.most_share:
        by_id = dict(wishes.most_share)
        # To the step that shares are told in, so that rounding up never breaks a limit.
        limits = np.array([np.floor(1000 * by_id.get(p.id, 1.0) + 1e-9) / 1000 for p in shelf])
    kept = (limits, wishes.most_coats, least, prices)
    return None if all(rule is None for rule in kept) else Rules(*kept)


def _check_limits(found: Allowed, most_paints: int) -> None:
    if not any(len(found.sets(size)) for size in range(1, most_paints + 1)):
        raise MendableError(
            say("The greatest shares that were asked for do not add up to a whole mix."),
            say("Allow more of one of the paints."),
        )
