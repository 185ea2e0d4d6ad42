"""The words for how near the next sample may be hoped to come."""

from __future__ import annotations

from swatchwright.acts.sample import Advice
from swatchwright.colour.names import closeness
from swatchwright.language import say

__all__ = ["fresh_after", "leave_line"]


def fresh_after(advice: Advice) -> str:
    """Say how near a fresh sample should come, and in which order to pour."""
    return say(
        "In this order, the last in thirds. It should be within about {off:.1f} of the cloth "
        "({seen}).",
        off=advice.fresh.outlook.usual,
        seen=closeness(advice.fresh.outlook.usual),
    )


def leave_line(advice: Advice) -> str:
    """Say why a sample is better left as it is, by the figures that are told."""
    ways = [advice.fresh.outlook.usual]
    if advice.additions.steps:
        ways.append(advice.after.usual)
    return say(
        "It is about {now:.1f} off ({seen}), which most people would accept. By what is not known "
        "of paints and cloth, what follows would be within about {then:.1f} ({then_seen}): more "
        "likely worse than better. Stripes brushed beside it in the same photo tell more.",
        now=advice.last.delta_e,
        seen=closeness(advice.last.delta_e),
        then=min(ways),
        then_seen=closeness(min(ways)),
    )
