"""How the piece stands, how long hands take, and a step that leaves a wet face."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.piece.work.cautions import Danger
from swatchwright.piece.work.order import Carrier, PlanOrder, Use, Which
from swatchwright.piece.work.task import StepKind, Task
from swatchwright.piece.work.times import Wait

__all__ = ["PACE", "Stance", "minutes_for", "wet"]

# Minutes for each m2 and coat, and minutes at the least: common practice, no source.
PACE = {
    StepKind.STAIN_BLOCK: (12.0, 10.0),
    StepKind.PRIME: (18.0, 15.0),
    StepKind.COAT: (20.0, 15.0),
    StepKind.WASH: (15.0, 15.0),
    StepKind.CLEAR: (18.0, 15.0),
    StepKind.DENIB: (8.0, 5.0),
    StepKind.DENIB_WET: (10.0, 10.0),
    StepKind.BUFF: (12.0, 10.0),
}


@dataclass(frozen=True, slots=True)
class Stance:
    """How the piece stands or lies, what is painted meanwhile, and which share of it all."""

    rests_on: Which
    faces: tuple[Which, ...]
    share: float


def minutes_for(kind: StepKind, area: float) -> float:
    """Give the minutes that a step takes on an area of so many m2."""
    pace, least = PACE[kind]
    return max(least, pace * area)


def wet(
    kind: StepKind, title: str, how: str, order: PlanOrder, stance: Stance, *dangers: Danger
) -> Task:
    """Give a step that leaves what is seen while the piece stands so wet."""
    cautions = list(dangers)
    if order.carrier is Carrier.SOLVENT and Danger.SOLVENTS not in cautions:
        cautions += [Danger.SOLVENTS]
    if order.carrier is Carrier.SOLVENT and Danger.RAGS not in cautions:
        cautions += [Danger.RAGS]
    cautions += [{Use.CHILDREN: Danger.CHILDREN, Use.FOOD: Danger.FOOD}[use] for use in order.uses]
    return Task(
        kind,
        title,
        how,
        minutes_for(kind, order.area * stance.share),
        Wait(0.0),
        stance.rests_on,
        stance.faces,
        tuple(cautions),
    )
