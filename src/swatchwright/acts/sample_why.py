"""Why a fresh sample is better than adding to the pot, where it is."""

from __future__ import annotations

from enum import StrEnum

from swatchwright.acts.sample_rounds import Round
from swatchwright.mixing.mend import Additions, Pot
from swatchwright.mixing.remix import Outlook

__all__ = ["CLEARLY", "Why", "costs_of_adding", "hardly_nearer", "told_nearer", "why_fresh"]

CLEARLY = 0.85
"""What is clearly likelier to come home has at most this share of the other's outlook."""

_LITTLE = 0.5
"""An addition that leaves more than this share of what the sample was off by helps little, where a
fresh mix leaves less."""

_MUCH = 0.25
"""An addition of more than this share of the pot is no putting right; common practice."""

_TOLD = 0.2
"""Outlooks, CIEDE2000, that are told no more apart than this count as equally near."""

_NEARER = 0.9


class Why(StrEnum):
    """Why a fresh sample is better."""

    NOTHING = "nothing to add"
    NEARER = "likelier to come home"
    LITTLE = "adding helps little"
    MUCH = "adding takes much"


def told_nearer(one: Outlook, other: Outlook) -> bool:
    """Tell whether one mix should come nearer than another by the figures that are shown."""
    return round(other.usual, 1) - round(one.usual, 1) > _TOLD + 1e-9


def why_fresh(
    last: Round, pot: Pot, added: Additions, after: Outlook, fresh: Outlook
) -> tuple[Why, ...]:
    """Say why a fresh sample is better than adding; empty where adding does as well.

    Each reason holds for the figures that are told. On simulated jobs (tools/judge_sample_loop.py)
    a fresh mix of as good an outlook comes as near as an addition that takes much, and it leaves
    the pot as it is; a small addition that comes as near is less work.

    Parameters
    ----------
    last
        The sample that is to be put right.
    pot, added
        What is there, and what to add to it.
    after, fresh
        What to expect of the pot after that, and of a fresh mix.
    """
    if not added.steps:
        return (Why.NOTHING,)
    if told_nearer(after, fresh):
        return ()
    costs = costs_of_adding(last, pot, added, after, fresh)
    nearer = told_nearer(fresh, after) and fresh.later < CLEARLY * after.later
    return (*costs, Why.NEARER) if nearer else costs


def costs_of_adding(
    last: Round, pot: Pot, added: Additions, after: Outlook, fresh: Outlook
) -> tuple[Why, ...]:
    """Say what speaks against adding, whether or not a fresh sample is better.

    That it helps little counts only where a fresh mix should help more.
    """
    if not added.steps:
        return ()
    little = told_nearer(fresh, after) and round(after.usual, 1) > _LITTLE * last.delta_e
    much = added.volume - pot.volume > _MUCH * pot.volume
    return tuple(why for why, holds in ((Why.MUCH, much), (Why.LITTLE, little)) if holds)


def hardly_nearer(last: Round, after: Outlook, fresh: Outlook) -> bool:
    """Tell whether neither way is likely to be nearer than the sample already is."""
    return min(after.usual, fresh.usual) > _NEARER * last.delta_e
