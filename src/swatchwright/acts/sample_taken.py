"""Which mix of a job was found by a sample: what was taken from a loop as the mix of a zone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Taken", "same_mix"]

_SAME = 1e-4
"""Shares by which a mix that is kept may differ from the one that was taken: it is the same one."""


@dataclass(frozen=True, slots=True)
class Taken:
    """The mix of a sample that was taken as the mix of a zone.

    Parameters
    ----------
    zone
        The zone of the piece.
    number
        Which sample, from 1.
    mixed
        Ids and ml of all that was in it, as it was poured.
    off, give_or_take
        How far that was from the cloth, CIEDE2000, and the usual error of that; after an addition
        how far it will usually be, for all that is not known, and none.
    added
        Whether something was added to the pot after the sample, which is in `mixed`.
    extra
        Ids and ml of what was added.
    reckoned
        Whether `off` after an addition counts all that is not known; it did not always.
    """

    zone: str
    number: int
    mixed: tuple[tuple[str, float], ...]
    off: float
    give_or_take: float = 0.0
    added: bool = False
    extra: tuple[tuple[str, float], ...] = ()
    reckoned: bool = False


def same_mix(one: Sequence[tuple[str, float]], other: Sequence[tuple[str, float]]) -> bool:
    """Tell whether two mixes, by ids and amounts, are of the same proportions."""
    first, second = _shares(one), _shares(other)
    ids = first.keys() | second.keys()
    return bool(ids) and all(abs(first.get(i, 0) - second.get(i, 0)) <= _SAME for i in ids)


def _shares(mix: Sequence[tuple[str, float]]) -> dict[str, float]:
    total = sum(amount for _, amount in mix)
    return {id_: amount / total for id_, amount in mix if amount > 0}
