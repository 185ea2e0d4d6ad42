"""The mix that was taken from a sample, as it stands beside the mixes that are found.

It is told as the job keeps it: of its own paints, in the colour that the samples taught to expect,
with what the sample said of it. So it is the same wherever it is shown, whatever the shelf is by
now and whatever is found anew.
"""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass, replace
from math import hypot

from swatchwright.acts.confidence import Confidence
from swatchwright.acts.job_bench import zones_of
from swatchwright.acts.kept_recipe import shelf_of_recipe
from swatchwright.acts.poured import recipe_as_told
from swatchwright.acts.recipes import MeasuredRecipe, amounts_for
from swatchwright.acts.sample_taken import Taken
from swatchwright.acts.sample_tried import loop_of, taken_for, tried_line
from swatchwright.errors import MendableError
from swatchwright.mixing.recipe import Parts
from swatchwright.paint.paints import Paint
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

__all__ = ["TakenMix", "taken_mix"]


@dataclass(frozen=True, slots=True)
class TakenMix:
    """A mix that was taken from a sample.

    Parameters
    ----------
    zones
        The zones of the piece that it is kept for, the one at hand first.
    taken
        From which sample, and what was added to its pot.
    wanted
        The colour it is for.
    measured
        The mix, in the colour to expect of it, with what to measure.
    told
        How near it came or should come, in a sentence: the same that job and sheet tell.
    misread
        Whether its sample was compared by a grey that was none.
    """

    zones: tuple[str, ...]
    taken: Taken
    wanted: Lab
    measured: MeasuredRecipe
    told: str
    misread: bool = False

    @property
    def seen(self) -> float | None:
        """How far off its sample was seen to be, CIEDE2000; None where that is not known."""
        return None if self.taken.added or self.misread else self.taken.off

    @property
    def paints(self) -> tuple[Paint, ...]:
        """Its paints, as they were when it was taken."""
        return self.measured.recipe.paints

    def for_volume(self, volume: float) -> TakenMix:
        """Give the same for another volume, ml."""
        amounts = amounts_for(self.measured.recipe, volume)
        return replace(self, measured=replace(self.measured, amounts=amounts))


def taken_mix(
    store: Store, job: Job | None, wanted: Lab, *, zone: str, volume: float
) -> TakenMix | None:
    """Give the mix of a job that was taken from a sample for a colour.

    Parameters
    ----------
    store, job
        The job, and where its paints are kept as they were.
    wanted
        The colour, as it is wanted now.
    zone
        The zone of the piece that is at hand: its mix goes first.
    volume
        ml to measure out.

    Returns
    -------
    None where no mix for that colour was taken, or another is kept in its place by now.
    """
    if job is None:
        return None
    for at in dict.fromkeys((zone, *zones_of(job))):
        taken, kept = taken_for(job, at), job.chosen(at)
        if taken is not None and kept is not None and kept.wanted == wanted:
            with suppress(MendableError):
                # Where its paints are damaged in the store, the page of the job says so.
                return _taken_mix(store, job, kept, taken, volume)
    return None


def _taken_mix(store: Store, job: Job, kept: KeptRecipe, taken: Taken, volume: float) -> TakenMix:
    parts = [(paint.paint, paint.share) for paint in kept.paints]
    others = (zone for zone in zones_of(job) if zone != kept.zone and _same(job, zone, kept))
    measured = _measured(shelf_of_recipe(store, kept).paints, kept, taken, volume)
    return TakenMix(
        zones=(kept.zone, *others),
        taken=taken,
        wanted=kept.wanted,
        measured=measured,
        told=tried_line(job, parts),
        misread=_misread(job, taken),
    )


def _misread(job: Job, taken: Taken) -> bool:
    loop = loop_of(job)
    return loop is not None and not taken.added and loop.rounds[taken.number - 1].misread


def _same(job: Job, zone: str, kept: KeptRecipe) -> bool:
    """Tell whether a zone has just the same mix, taken from the samples as well."""
    other = job.chosen(zone)
    same = other is not None and replace(other, zone=kept.zone) == kept
    return same and taken_for(job, zone) is not None


def _measured(
    paints: tuple[Paint, ...], kept: KeptRecipe, taken: Taken, volume: float
) -> MeasuredRecipe:
    """Give a kept mix as those that are found are given.

    What is not known of it is what its sample leaves: how far off it was seen to be and the error
    of that, or what is expected where nothing was brushed since. What is not known of the photo of
    the cloth is no part of it, as it was held to the cloth itself.
    """
    shares = tuple(paint.share for paint in kept.paints)
    return recipe_as_told(
        paints,
        shares,
        dry=kept.dry,
        wet=kept.wet,
        wanted=kept.wanted,
        delta_e=kept.delta_e,
        parts=Parts(tuple(paint.parts for paint in kept.paints), kept.delta_e, 0.0),
        confidence=Confidence(0.0, hypot(taken.off, taken.give_or_take)),
        volume=volume,
    )
