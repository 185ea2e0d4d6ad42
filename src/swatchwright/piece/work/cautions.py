"""What can hurt, and what to do about it: short, and after the label, the law and the licensed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from swatchwright.language import mark

__all__ = ["CAUTIONS", "Caution", "Danger"]


class Danger(StrEnum):
    """What can hurt."""

    LEAD = mark("lead")
    DUST = mark("dust")
    SILICA = mark("silica")
    SOLVENTS = mark("solvents")
    RAGS = mark("oily rags")
    CHILDREN = mark("children")
    FOOD = mark("food")
    MIXING = mark("mixing")


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution.

    Parameters
    ----------
    danger
        What can hurt.
    why
        How, in a sentence, in English: it is said in her language where it is shown.
    do
        What to do about it, likewise.
    """

    danger: Danger
    why: str
    do: str


# Sources, in the order below: [LeadUS], [LeadUK]; [Dust]; [Dust]; the label, common practice;
# [NFPA-rags]; [EN71-3]; common practice; common practice.
CAUTIONS: dict[Danger, Caution] = {
    caution.danger: caution
    for caution in (
        Caution(
            Danger.LEAD,
            mark(
                "Old paint, varnish and metal primer may hold lead; its dust poisons, children "
                "most."
            ),
            mark(
                "Have it tested before anything is rubbed. If it holds lead, or you do not know: "
                "no dry sanding, no heat gun, no blowlamp; rub it wet, wipe up and bag the waste, "
                "keep children and pregnant women away. Sound paint may be painted over. For more "
                "than that call a licensed contractor, and follow your local rules."
            ),
        ),
        Caution(
            Danger.DUST,
            mark("Dust of wood, most of all of hardwood, and of old coats harms the lungs."),
            mark(
                "Sand with extraction, wear the mask that your local rules name, wipe up damp and "
                "do not sweep."
            ),
        ),
        Caution(
            Danger.SILICA,
            mark(
                "Some fillers and chalky primers hold crystalline silica, whose dust scars the "
                "lungs."
            ),
            mark(
                "Read the label of the filler. Smooth it while it is soft, or wet; otherwise with "
                "extraction and a mask."
            ),
        ),
        Caution(
            Danger.SOLVENTS,
            mark("Vapours of solvents make dizzy and can catch fire."),
            mark(
                "Open the windows, keep flames and sparks away, wear gloves, and follow the label."
            ),
        ),
        Caution(
            Danger.RAGS,
            mark("Rags with oil, oil paint or oily wax heat by themselves and can catch fire."),
            mark(
                "Never pile them. Lay them flat outdoors to dry, one layer thick, or put them into "
                "a metal can filled with water, with a tight lid; then as your waste service says."
            ),
        ),
        Caution(
            Danger.CHILDREN,
            mark("Children chew what is in reach, and a mixed paint is tested by nobody."),
            mark(
                "For cots, toys and high chairs use only what its label says is safe for toys, "
                "unmixed; this program cannot say that a mixture is."
            ),
        ),
        Caution(
            Danger.FOOD,
            mark("Paint and finishes are not made to touch food."),
            mark(
                "Leave bare what food touches, or finish it with what its label says is for that."
            ),
        ),
        Caution(
            Danger.MIXING,
            mark("Water-borne and solvent-borne paint do not mix: they part, and may never dry."),
            mark(
                "Keep to one kind in a pot; put one over the other only where both labels allow it."
            ),
        ),
    )
}
"""All cautions."""
