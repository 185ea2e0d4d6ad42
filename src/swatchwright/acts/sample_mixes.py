"""Mixes to brush out as samples, in ml and in the order of pouring."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.acts.amounts_whole import pours_told
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.learnt import Learnt
from swatchwright.mixing.pour import Pour, pouring_order
from swatchwright.mixing.recipe import Parts, Recipe
from swatchwright.mixing.remix import Outlook, Remix, least_sure, outlook, remix

__all__ = ["SAMPLE_VOLUME", "NextMix", "mixes_beside", "next_mix", "shares_of"]

SAMPLE_VOLUME = 30.0
"""ml that a sample is mixed of; common practice, no source."""


@dataclass(frozen=True, slots=True)
class NextMix:
    """A mix to brush out next.

    Parameters
    ----------
    mixed
        Ids and ml, to 0.1 ml.
    pours
        In which order to pour them.
    outlook
        What to expect of it.
    """

    mixed: tuple[tuple[str, float], ...]
    pours: tuple[Pour, ...]
    outlook: Outlook


def shares_of(mixed: Sequence[tuple[str, float]]) -> dict[str, float]:
    """Give the shares of ids and ml."""
    total = sum(ml for _, ml in mixed)
    return {id_: ml / total for id_, ml in mixed}


def next_mix(learnt: Learnt, found: Remix, volume: float) -> NextMix:
    """Tell a mix in ml, with the order of pouring."""
    order = sorted(found.shares, key=lambda id_: -found.shares[id_])
    place = {paint.id: i for i, paint in enumerate(learnt.ground.paints)}
    paints = learnt.paints()
    ml = rounded_amounts([found.shares[id_] for id_ in order], volume)
    kept = [(id_, amount) for id_, amount in zip(order, ml, strict=True) if amount > 0]
    recipe = Recipe(
        paints=tuple(paints[place[id_]] for id_, _ in kept),
        shares=tuple(amount / volume for _, amount in kept),
        delta_e=found.outlook.delta_e,
        dry=found.outlook.dry,
        wet=found.outlook.dry,
        parts=Parts((1,) * len(kept), 0.0, 0.0),
        coats=None,
    )
    pours = pours_told(pouring_order(recipe, [amount for _, amount in kept]))
    return NextMix(tuple(kept), pours, outlook(learnt, shares_of(kept)))


def mixes_beside(learnt: Learnt, found: Remix, volume: float) -> tuple[NextMix, ...]:
    """Give a mix to either side of where the fresh one is least sure, of the same paints."""
    ids = list(found.shares)
    if len(ids) < 2:
        return ()
    way = least_sure(learnt, found.shares)
    sides = (tuple(sign * step for step in way) for sign in (1.0, -1.0))
    return tuple(next_mix(learnt, remix(learnt, ids, ids, aside=side), volume) for side in sides)
