"""The words of what samples teach the paints: beforehand, and afterwards."""

from __future__ import annotations

from swatchwright.acts.sample_learnt import Taught
from swatchwright.colour.difference import JUST_SEEN
from swatchwright.colour.names import closeness
from swatchwright.language import listed, say

TEACH_KNOWN = say(
    "The paints have learnt all that these samples say; a sample teaches once. The next one "
    "teaches more."
)
TEACH_VAGUE = say("A word by eye is vague and teaches little.")


def teach_line(*, known: bool, would: Taught | None, by_eye: bool = False) -> str:
    """Say beforehand what teaching would change, or why there is nothing to teach."""
    if known:
        return TEACH_KNOWN
    if would is None or not would.paints:
        return ""
    then = {
        "paints": listed([say("“{name}”", name=name) for name in would.paints]),
        "number": would.sample,
        "after": would.after,
        "seen": closeness(would.after),
    }
    if would.before < JUST_SEEN / 2:
        told = say(
            "Teaching changes {paints}, for all mixes: that of sample {number} is then taken to be "
            "within {after:.1f} ({seen}), now for just what the shelf says.",
            **then,
        )
    else:
        told = say(
            "Teaching changes {paints}, for all mixes: that of sample {number} is then taken to be "
            "within {after:.1f} ({seen}), now {before:.1f} ({before_seen}).",
            **then,
            before=would.before,
            before_seen=closeness(would.before),
        )
    return f"{told} {TEACH_VAGUE}" if by_eye else told


def taught_lines(taught: Taught) -> tuple[str, ...]:
    """Say which paints have learnt, how much surer their mix is, and what follows from it."""
    if not taught.paints:
        return (say("The samples told nothing new of the paints."),)
    told = say(
        "✓ Taught: {paints}. All mixes on the page Colour are found anew with what they learnt.",
        paints=listed([say("“{name}”", name=name) for name in taught.paints]),
    )
    then = {
        "number": taught.sample,
        "before": taught.before,
        "before_seen": closeness(taught.before),
        "after": taught.after,
        "seen": closeness(taught.after),
    }
    if taught.before < JUST_SEEN / 2 and taught.after > taught.before:
        surer = say(
            "They were taken for just what the shelf says. The samples came out otherwise than "
            "thought, so the mix of sample {number} is now taken to be within {after:.1f} "
            "({seen}).",
            **then,
        )
    elif round(taught.after, 1) > round(taught.before, 1):
        surer = say(
            "The mix of sample {number} is now known to within {after:.1f} ({seen}), before "
            "{before:.1f} ({before_seen}): the samples came out otherwise than thought, so less is "
            "known than was thought.",
            **then,
        )
    else:
        surer = say(
            "The mix of sample {number} is now known to within {after:.1f} ({seen}), before "
            "{before:.1f} ({before_seen}).",
            **then,
        )
    return told, surer
