"""Putting a pot right: what to add to what is there, and never to take away.

Where something will lie over the paint, such as a wax, all colours are those seen with it on.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.pot import Pot, check_pot, check_room, may_be_added
from swatchwright.mixing.solve import Rules, closest_shares
from swatchwright.mixing.under import lab_under
from swatchwright.paint.layered import Coat
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import Paint, PaintStack, stack
from swatchwright.values import Lab

__all__ = ["Addition", "Additions", "Pot", "additions", "aim_by_sample", "pot_colour"]

Floats = NDArray[np.floating[Any]]

_STEP = 0.1
_TIE = 0.4
_SOLVED = 12
_ROUNDS = 3


@dataclass(frozen=True, slots=True)
class Addition:
    """One thing to add, ml, and the colour of the pot after it, with how far that is off."""

    paint: Paint
    ml: float
    after: Lab
    delta_e: float


@dataclass(frozen=True, slots=True)
class Additions:
    """What to add, the least first.

    Parameters
    ----------
    before
        CIEDE2000 of the pot as it is.
    steps
        What to add in turn; empty where nothing brings it nearer.
    delta_e
        CIEDE2000 after all steps.
    volume
        What is in the pot then, ml.
    """

    before: float
    steps: tuple[Addition, ...]
    delta_e: float
    volume: float


def pot_colour(pot: Pot, over: Sequence[Coat] = ()) -> Lab:
    """Give the computed dry colour of what is in a pot, under what will lie over it.

    Raises
    ------
    MendableError
        If the pot is empty or a volume is not above 0.
    """
    check_pot(pot)
    return _colour(pot.paints, np.array(pot.volumes), over)


def aim_by_sample(pot: Pot, seen: Lab, wanted: Lab, over: Sequence[Coat] = ()) -> Lab:
    """Say what to aim at when a dried sample of the pot does not have its computed colour.

    What the sample is off by, the computation is taken to be off by after the additions too.
    """
    return pot_colour(pot, over).moved(seen, wanted)


def additions(
    pot: Pot,
    wanted: Lab,
    shelf: Sequence[Paint],
    tub_volume: float,
    *,
    most_paints: int = 2,
    over: Sequence[Coat] = (),
) -> Additions:
    """Find what to add to a pot to bring it to a wanted colour.

    Parameters
    ----------
    pot
        What is there.
    wanted
        The computed colour to aim at, see `aim_by_sample`; seen with all on that lies over it.
    shelf
        Paints that may be added.
    tub_volume
        How full the pot may get, ml, with what is in it now.
    most_paints
        How many different paints to add at the most, 1 or 2.
    over
        What will lie over the paint, the lowest first.

    Returns
    -------
    The additions that come closest; among those that do as well within 0.4, the fewest paints and
    then the least of them. Amounts are to 0.1 ml.

    Raises
    ------
    MendableError
        If the pot is empty, has too little room, or nothing on the shelf may be added to it.
    """
    check_pot(pot)
    check_room(pot, tub_volume)
    now = pot_colour(pot, over)
    before = float(delta_e_2000(wanted.triple, now.triple))
    may = may_be_added(pot, shelf)
    if tub_volume - pot.volume < _STEP / 2:
        return Additions(before, (), before, pot.volume)
    most = min(most_paints, len(may))
    scored: list[tuple[float, dict[int, float]]] = []
    # The shares are solved for the bare paint, so what lies over it is aimed off for: by what it
    # does to the colour now, then by what it does to the best that was found.
    poured = pot
    for _ in range(_ROUNDS if over else 1):
        bare = pot_colour(poured).moved(pot_colour(poured, over), wanted)
        rows = _candidates(pot, may, bare, tub_volume, most)
        scored += [_scored(pot, may, row, wanted, over) for row in rows]
        if scored:
            poured = _poured(pot, may, min(scored, key=lambda row: row[0])[1])
    chosen = _chosen(scored, before)
    if chosen is None:
        return Additions(before, (), before, pot.volume)
    steps = _steps(pot, may, chosen, wanted, over)
    return Additions(before, steps, steps[-1].delta_e, pot.volume + sum(chosen.values()))


def _chosen(
    scored: Sequence[tuple[float, dict[int, float]]], before: float
) -> dict[int, float] | None:
    """Choose the least of those that do as well as the best; None for adding nothing."""
    best = min([before, *(apart for apart, _ in scored)])
    close = [row for apart, row in scored if apart <= best + _TIE and apart < before]
    # What is there already counts among those that tie: then nothing is added.
    if not close or before <= best + _TIE / 4:
        return None
    return min(close, key=lambda row: (len(row), sum(row.values())))


def _as_paint(pot: Pot) -> PaintStack:
    """Take the pot's mixture as one paint."""
    shares = np.array(pot.volumes) / pot.volume
    of = stack(pot.paints)
    m = mix(of, [range(len(shares))], [shares])
    rate = 1 / (shares / of.spreading_rate).sum()
    return PaintStack(
        m.K, m.S, m.solids, m.glare, m.wet_scattering, m.milk, of.waterborne[:1], np.array([rate])
    )


def _candidates(
    pot: Pot, may: Sequence[Paint], wanted: Lab, tub: float, most: int
) -> list[dict[int, float]]:
    """Solve pot and one paint, then pot and two of them; amounts in ml by paint."""
    one, rest = _as_paint(pot), stack(may)
    both = PaintStack(*(np.concatenate([getattr(one, n), getattr(rest, n)]) for n in one.__slots__))
    least = np.zeros(len(both))
    least[0] = pot.volume / tub
    rules = Rules(least=least)
    found: list[dict[int, float]] = []
    for size in range(1, most + 1):
        sets = [(0, *(i + 1 for i in c)) for c in combinations(range(len(may)), size)]
        which = np.array(sets, dtype=np.intp)
        shares, apart = closest_shares(both, which, wanted.triple, rules=rules)
        # The closest, and of those that nearly tie with them the ones that take least paint.
        tied = apart <= np.min(apart) + _TIE
        order = np.lexsort((np.where(tied, -shares[:, 0], apart), ~tied))[: 2 * _SOLVED]
        near = np.argsort(apart, kind="stable")[:_SOLVED]
        for row in dict.fromkeys([*near.tolist(), *order.tolist()]):
            if np.isfinite(apart[row]):
                found += _in_ml(pot, tub, which[row], shares[row])
    return found


def _in_ml(pot: Pot, tub: float, which: NDArray[np.intp], shares: Floats) -> list[dict[int, float]]:
    """Turn shares into amounts that the pot has room for, to 0.1 ml; the whole and half of them."""
    exact = shares[1:] / max(float(shares[0]), 1e-9) * pot.volume
    out = []
    for part in (1.0, 0.75, 0.5):
        steps = np.round(part * exact / _STEP)
        room = np.floor((tub - pot.volume) / _STEP + 1e-6)
        while steps.sum() > room:
            steps[np.argmax(steps)] -= 1
        row = {
            int(i) - 1: round(float(n) * _STEP, 1)
            for i, n in zip(which[1:], steps, strict=True)
            if n > 0
        }
        if row:
            out.append(row)
    return out


def _colour(paints: Sequence[Paint], volumes: Floats, over: Sequence[Coat]) -> Lab:
    mixture = mix(stack(paints), [range(len(paints))], [volumes / volumes.sum()])
    return Lab.of(lab_under(mixture, over)[0])


def _poured(pot: Pot, may: Sequence[Paint], row: dict[int, float]) -> Pot:
    """Pour all of it into the pot."""
    return Pot((*pot.paints, *(may[i] for i in row)), (*pot.volumes, *row.values()))


def _scored(
    pot: Pot, may: Sequence[Paint], row: dict[int, float], wanted: Lab, over: Sequence[Coat]
) -> tuple[float, dict[int, float]]:
    after = pot_colour(_poured(pot, may, row), over)
    return float(delta_e_2000(wanted.triple, after.triple)), row


def _steps(
    pot: Pot, may: Sequence[Paint], row: dict[int, float], wanted: Lab, over: Sequence[Coat]
) -> tuple[Addition, ...]:
    """Pour the least first, and tell the colour after each."""
    steps = []
    for i, ml in sorted(row.items(), key=lambda item: item[1]):
        pot = replace(pot, paints=(*pot.paints, may[i]), volumes=(*pot.volumes, ml))
        after = pot_colour(pot, over)
        steps.append(Addition(may[i], ml, after, float(delta_e_2000(wanted.triple, after.triple))))
    return tuple(steps)
