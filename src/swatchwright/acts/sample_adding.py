"""What to add to the pot that a sample was brushed from."""

from __future__ import annotations

import numpy as np

from swatchwright.acts.recipes import check_volume
from swatchwright.acts.sample_mixes import shares_of
from swatchwright.acts.sample_rounds import Round
from swatchwright.acts.sample_why import CLEARLY
from swatchwright.mixing.learnt import Learnt
from swatchwright.mixing.mend import Additions, additions
from swatchwright.mixing.pot import Pot
from swatchwright.mixing.remix import Outlook, outlook
from swatchwright.values import Lab

__all__ = ["pot_of", "to_add"]


def pot_of(learnt: Learnt, last: Round, volume: float | None) -> Pot:
    """Give the pot of the last mix, of the paints as they are believed to be."""
    place = {paint.id: i for i, paint in enumerate(learnt.ground.paints)}
    paints = learnt.paints()
    total = sum(ml for _, ml in last.mixed)
    if volume is not None:
        check_volume(volume)
    factor = 1.0 if volume is None else volume / total
    return Pot(
        tuple(paints[place[id_]] for id_, _ in last.mixed),
        tuple(ml * factor for _, ml in last.mixed),
    )


def to_add(
    learnt: Learnt, pot: Pot, tub: float, without: frozenset[str]
) -> tuple[Additions, Outlook]:
    """Find what to add: of the pot's own paints, unless another is well worth it."""
    aim = _aim(learnt, pot)
    inside = {paint.id for paint in pot.paints}
    may = [p for p in learnt.paints() if p.id not in without]
    own = [p for p in may if p.id in inside] or list(pot.paints)
    by_own = additions(pot, aim, own, tub)
    by_any = additions(pot, aim, may or own, tub)
    one, other = (_outlook_after(learnt, pot, added) for added in (by_own, by_any))
    return (by_any, other) if other.later < CLEARLY * one.later else (by_own, one)


def _aim(learnt: Learnt, pot: Pot) -> Lab:
    """Give the computed colour to aim at: the cloth's, less what computing gets wrong here."""
    place = {paint.id: i for i, paint in enumerate(learnt.ground.paints)}
    which = np.array([[place[p.id] for p in pot.paints]], dtype=np.intp)
    bias = learnt.bias(which, np.array([pot.volumes]) / pot.volume)[0]
    L, a, b = np.array(learnt.cloth.triple) - bias
    return Lab(float(np.clip(L, 0.0, 100.0)), float(a), float(b))


def _outlook_after(learnt: Learnt, pot: Pot, added: Additions) -> Outlook:
    amounts = {p.id: ml for p, ml in zip(pot.paints, pot.volumes, strict=True)}
    for step in added.steps:
        amounts[step.paint.id] = amounts.get(step.paint.id, 0.0) + step.ml
    return outlook(learnt, shares_of(list(amounts.items())))
