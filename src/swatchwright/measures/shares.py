"""Shares that stay whole when they are rounded."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

__all__ = ["rounded_amounts", "rounded_shares"]


def rounded_shares(shares: Sequence[float], steps: int = 1000) -> tuple[float, ...]:
    """Round shares to whole steps that still sum to one.

    The largest remainders get the steps left over, so none is off by a whole step.

    Parameters
    ----------
    shares
        Not negative, with a positive sum (it need not be 1).
    steps
        How many steps make one: 1000 for shares to 0.1 %.

    Examples
    --------
    >>> rounded_shares([1, 1, 1])
    (0.334, 0.333, 0.333)
    """
    total = sum(shares)
    exact = [share / total * steps for share in shares]
    whole = [floor(x) for x in exact]
    order = sorted(range(len(exact)), key=lambda i: (whole[i] - exact[i], i))
    for i in order[: steps - sum(whole)]:
        whole[i] += 1
    return tuple(w / steps for w in whole)


def rounded_amounts(shares: Sequence[float], total: float, step: float = 0.1) -> tuple[float, ...]:
    """Split an amount by shares into multiples of a step that sum to the amount.

    The amount itself is first taken to the nearest step.

    >>> rounded_amounts([0.665, 0.335], 500)
    (332.5, 167.5)
    """
    steps = round(total / step)
    decimals = max(0, len(f"{step:.6f}".rstrip("0").split(".")[1]))
    return tuple(round(s * steps * step, decimals) for s in rounded_shares(shares, steps))
