"""One thing to do, before it has a date."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import FinishKind, Which
from swatchwright.piece.work.times import Wait

__all__ = ["DRY_SANDING", "WET", "Hold", "StepKind", "Task", "meet"]


class StepKind(StrEnum):
    """What kind of step it is."""

    LEAD_CARE = "lead care"
    CHECK_PAINT = "check the paint"
    REMOVE = "remove fittings"
    UNWAX = "take off wax"
    DEGREASE = "degrease"
    RINSE = "rinse"
    SAND = "sand"
    KEY_WET = "key, wet"
    DUST = "dust off"
    FILL = "fill"
    SMOOTH = "sand filler"
    SMOOTH_WET = "smooth filler, wet"
    TURN = "turn"
    STAIN_BLOCK = "stain block"
    PRIME = "prime"
    COAT = "coat"
    DENIB = "denib"
    DENIB_WET = "denib, wet"
    WASH = "wash"
    CLEAR = "clear finish"
    BUFF = "buff"
    CURE = "cure"
    SAMPLE = "sample"
    CHECK = "check the sample"
    MIX = "mix"
    MIX_WASH = "mix the wash"
    REFIT = "refit"


DRY_SANDING = frozenset({StepKind.SAND, StepKind.SMOOTH, StepKind.DENIB})
"""Steps that make dust."""

WET = frozenset(
    {StepKind.STAIN_BLOCK, StepKind.PRIME, StepKind.COAT, StepKind.WASH, StepKind.CLEAR}
)
"""Steps that leave a wet face; each is done in one go, so that no edge dries meanwhile."""


@dataclass(frozen=True, slots=True)
class Hold:
    """A wait for an earlier task that is not the one before: how many before, and how long."""

    back: int
    wait: Wait


@dataclass(frozen=True, slots=True)
class Task:
    """One thing to do.

    Parameters
    ----------
    kind, title, how
        What it is, in two words and in a sentence.
    hands_on
        Minutes of work.
    wait
        Before what follows.
    rests_on
        What the piece stands or lies on meanwhile.
    faces
        What is wet after it.
    cautions
        What can hurt.
    with_next
        Whether what follows must be done on the same day, as buffing after waxing.
    parts
        The parts of the piece that it goes on; none for all of it.
    beside
        Whether what follows goes on other parts, and so need not wait for it.
    finish
        Which clear finish it is of.
    holds
        What was laid on other parts before, and has to be so dry for it.
    """

    kind: StepKind
    title: str
    how: str
    hands_on: float
    wait: Wait
    rests_on: Which
    faces: tuple[Which, ...] = ()
    cautions: tuple[Danger, ...] = ()
    with_next: bool = False
    parts: tuple[str, ...] = ()
    beside: bool = False
    finish: FinishKind = FinishKind.NONE
    holds: tuple[Hold, ...] = ()


def meet(one: Task, other: Task) -> bool:
    """Tell whether two tasks go on a part in common; what names no part goes on all."""
    return not one.parts or not other.parts or not {*one.parts}.isdisjoint(other.parts)
