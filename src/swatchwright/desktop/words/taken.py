"""The words of the mix that was taken from a sample, where it stands beside those found."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.acts.taken_mix import TakenMix
from swatchwright.colour.difference import UNSEEN
from swatchwright.colour.names import closeness
from swatchwright.desktop.words.bits import first_up, millilitres
from swatchwright.desktop.words.keeping import shown_line, zone_name
from swatchwright.desktop.words.mixes import cost_line, known_line, mix_rows, way_line
from swatchwright.language import listed, say, say_count

__all__ = [
    "COPY",
    "HEADING",
    "KEPT_TIP",
    "SAMPLE",
    "SAMPLE_TIP",
    "YOURS",
    "kept_name",
    "line",
    "name",
    "shown",
    "text",
    "way",
]

HEADING = say("What you mixed and judged")
YOURS = say("yours")
COPY = say("Copy what you mixed")
SAMPLE = say("Its sample")
SAMPLE_TIP = say("Show the sample that it was taken from, on the page Sample")
KEPT_TIP = say(
    "It was taken from a sample, and the piece is painted with it. Keep another mix, or take the "
    "sample back, and it goes from here."
)


def line(mix: TakenMix) -> str:
    """Say how near it came or should come: the figures of job and sheet, in few words."""
    taken = mix.taken
    if mix.misread or (taken.added and not taken.reckoned):
        return mix.told
    if taken.added:
        return say(
            "Sample {number} and what was added to it: within about {off:.1f} of the cloth, {seen}",
            number=taken.number,
            off=taken.off,
            seen=closeness(taken.off),
        )
    return say(
        "Sample {number}: {off:.1f} off, {seen} (give or take {doubt:.1f})",
        number=taken.number,
        off=taken.off,
        seen=closeness(taken.off),
        doubt=taken.give_or_take,
    )


def way(mix: TakenMix) -> str:
    """Say which way it dries otherwise than wanted; empty if no difference was seen."""
    if mix.seen is not None and mix.seen <= UNSEEN:
        return ""
    return way_line(mix.measured, mix.wanted)


def name(zones: Sequence[str] = (), besides: Sequence[str] = ()) -> str:
    """Name it among others, with the zones of the job that it is kept for."""
    if not zones:
        return say("your mix")
    kept = listed([zone_name(zone, besides) for zone in zones])
    return say("your mix, kept for {zones}", zones=kept)


def kept_name(zone: str) -> str:
    """Tell for a screen reader that it is kept for a zone."""
    return say("What you mixed and judged is kept for {zone}", zone=zone_name(zone))


def text(mix: TakenMix, measured: MeasuredRecipe) -> str:
    """Tell it, for an amount, as text to paste: parts, amounts and how near it came."""
    head = say(
        "{heading}, {volume}.",
        heading=HEADING,
        volume=millilitres(sum(pour.ml for pour in measured.amounts)),
    )
    told = (*mix_rows(measured), mix.told, cost_line(measured), known_line(measured.recipe.paints))
    return "\n".join((head, *told))


def shown(first: int, last: int, count: int) -> str:
    """Say which are in view where hers is the first of them, number 0.

    Parameters
    ----------
    first, last
        Numbers of the first and the last mix in view.
    count
        How many there are besides hers.
    """
    if first > 0:
        return shown_line(first, last, count)
    if last == 0:
        return first_up(name())
    if last == count:
        return say_count("Your mix and one more", "Your mix and all {count}", count)
    if last == 1:
        return say("Your mix and mix 1 of {count}", count=count)
    return say("Your mix and mixes 1 to {last} of {count}", last=last, count=count)
