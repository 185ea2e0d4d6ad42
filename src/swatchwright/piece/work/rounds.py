"""Layers over parts of a piece, put into rounds: what lies side by side is laid without a wait.

A layer that goes on one part alone need not wait for what was laid on another. What goes on all of
the piece waits for each of them, and they for it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.piece.work.order import FinishKind, Laid, Which

__all__ = ["Pass", "alike", "passes_in", "rounds", "zones_left_out"]


@dataclass(frozen=True, slots=True)
class Pass:
    """A layer that is laid in one go, on all of a piece or on some of its parts.

    Parameters
    ----------
    number
        Which layer it is there, from 1.
    on
        What it is, for each part of its own; None where nothing is known of it.
    """

    number: int
    on: tuple[Laid | None, ...]

    @property
    def laid(self) -> Laid | None:
        """What it is; of several parts that of the first."""
        return self.on[0]

    @property
    def zones(self) -> tuple[str, ...]:
        """The parts that it goes on; none for all of the piece."""
        return tuple(laid.zone for laid in self.on if laid is not None and laid.zone)

    @property
    def finish(self) -> FinishKind | None:
        """Which clear finish it is of, where there are several; else None."""
        return None if self.laid is None else self.laid.finish

    def standing(self, faces: Sequence[Which]) -> Pass | None:
        """Give what of it is laid on some faces; None where that is nothing."""
        here = tuple(one for one in self.on if any(_wets(one, face) for face in faces))
        return replace(self, on=here) if here else None

    def seen_from(self, faces: Sequence[Which]) -> tuple[Which, ...]:
        """Give which of the faces it wets."""
        return tuple(face for face in faces if any(_wets(laid, face) for laid in self.on))


def _wets(laid: Laid | None, face: Which) -> bool:
    return laid is None or laid.faces is None or face in laid.faces


def rounds(laid: Sequence[Laid], count: int) -> tuple[tuple[Pass, ...], ...]:
    """Put layers into rounds, each of which is laid on different parts.

    Parameters
    ----------
    laid
        What the layers are, in their turn; empty where it is not known.
    count
        How many there are on the part that gets the most of them. Where it is more than are known
        the last one there goes on, and where it is fewer the last ones are left out.
    """
    passes = passes_in(laid, count)
    zones = ("", *dict.fromkeys(one.zone for one in passes if one is not None and one.zone))
    depth, numbers = dict.fromkeys(zones, 0), dict.fromkeys(zones, 0)
    levels: list[list[tuple[int, Laid | None]]] = []
    for one in passes:
        here = (one.zone,) if one is not None and one.zone else zones
        level = 1 + max(depth[zone] for zone in here)
        depth.update(dict.fromkeys(here, level))
        numbers.update({zone: numbers[zone] + 1 for zone in here})
        levels += [[] for _ in range(level - len(levels))]
        levels[level - 1].append((max(numbers[zone] for zone in here), one))
    return tuple(tuple(alike(level)) for level in levels)


def passes_in(laid: Sequence[Laid], count: int) -> tuple[Laid | None, ...]:
    """Give each single layer in its turn, but for those of a part that the piece does not have."""
    there = [one for one in laid if one.faces != ()]
    if not there:
        return () if laid else (None,) * count
    zones = dict.fromkeys(["", *(one.zone for one in there)])
    on = {z: [n for n, one in enumerate(there) if one.zone in {"", z}] for z in zones}
    laid_on = {zone: sum(there[n].passes for n in ns) for zone, ns in on.items()}
    last = {ns[-1] for z, ns in on.items() if ns and laid_on[z] == max(laid_on.values())}
    left = dict.fromkeys(zones, count)
    found: list[Laid] = []
    for n, one in enumerate(there):
        here = [zone for zone in left if one.zone in {"", zone}]
        free = min(left[zone] for zone in here)
        times = free if n in last else min(one.passes, free)
        left.update({zone: left[zone] - times for zone in here})
        found += [one] * times
    return tuple(found)


def zones_left_out(laid: Sequence[Laid]) -> tuple[str, ...]:
    """Name the parts that something is to go on and the piece does not have, each once."""
    return tuple(dict.fromkeys(one.zone for one in laid if one.faces == () and one.passes))


def alike(level: Sequence[tuple[int, Laid | None]]) -> list[Pass]:
    """Put together what is the same stuff, laid likewise and as often before."""
    found: dict[tuple[int, Laid | None], list[Laid | None]] = {}
    for number, one in level:
        found.setdefault((number, _stuff(one)), []).append(one)
    return [Pass(number, tuple(on)) for (number, _), on in found.items()]


def _stuff(laid: Laid | None) -> Laid | None:
    return (
        None if laid is None else replace(laid, passes=1, zone="", faces=None, area=None, ml=None)
    )
