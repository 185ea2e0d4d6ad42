"""The ways to take a coat where a client wants it, as values."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from swatchwright.acts.recoat import Recoat
from swatchwright.mixing.knock_back import Washing
from swatchwright.mixing.mend import Additions
from swatchwright.mixing.wash_risks import Risk, RiskKind
from swatchwright.paint.layers import Layer
from swatchwright.values import Lab

__all__ = ["Way", "WayKind", "Ways", "of_every_wash"]

# What is told of each wash by itself, since it is about where that one ends.
_ITS_OWN = frozenset({RiskKind.HUE, RiskKind.SIDE_EFFECT})


class WayKind(StrEnum):
    """What is done."""

    WASH = "wash"
    STIR = "stir"
    RECOAT = "recoat"


@dataclass(frozen=True, slots=True)
class Way:
    """One way to get there.

    Parameters
    ----------
    kind
        A wash over the coat, something stirred into the rest of the pot, or a full new coat.
    layer
        The wash; None for the others.
    washing
        The same with its paints; None for the others.
    additions
        What to stir in; None for the others.
    flat, dry, grain
        The dry colour on the flats, on the whole, and in the grain, with all on that stays over
        the coat; alike for stirring and for a new coat.
    delta_e
        CIEDE2000 of the whole from the aim.
    felt
        The same over flat, whole and grain: what the ways are ranked by.
    risks
        What to weigh before it is done.
    roomier
        What could be stirred in with more room in the pot, where the room stops it short.
    recoat
        What to mix for a full new coat, and how much; None for the others.
    """

    kind: WayKind
    layer: Layer | None
    washing: Washing | None
    additions: Additions | None
    flat: Lab
    dry: Lab
    grain: Lab
    delta_e: float
    felt: float
    risks: tuple[Risk, ...]
    roomier: Additions | None = None
    recoat: Recoat | None = None


@dataclass(frozen=True, slots=True)
class Ways:
    """The ways to take a coat somewhere.

    Parameters
    ----------
    now, aim
        Its dry colour under what stays over it, and where that should go.
    before
        CIEDE2000 between the two: what doing nothing comes to.
    ways
        Each nearer than doing nothing by 0.4 and more; a full new coat comes last, as it is the
        most work. Empty where nothing is.
    notes
        What was assumed, and what to mind.
    over
        What stays over the coat, and over a wash on it: all colours are those seen with it on.
    """

    now: Lab
    aim: Lab
    before: float
    ways: tuple[Way, ...]
    notes: tuple[str, ...]
    over: tuple[Layer, ...] = ()


def of_every_wash(found: Ways) -> tuple[str, ...]:
    """Give what is to be said of all washes alike, so that it is said once; not where each ends."""
    said = [
        [risk.words for risk in way.risks if risk.kind not in _ITS_OWN]
        for way in found.ways
        if way.kind is WayKind.WASH
    ]
    first, *others = said or [[]]
    return tuple(words for words in first if others and all(words in rest for rest in others))
