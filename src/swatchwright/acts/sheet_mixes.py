"""The mixes of a job as its sheet tells them: their paints as they were, and how much of each."""

from __future__ import annotations

from dataclasses import dataclass, replace

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.finish_paints import paints_at_hand
from swatchwright.acts.kept_recipe import OWN_PAINTS, no_recipe, shelf_of_recipe, what_has_changed
from swatchwright.acts.layers_by_part import layers_on, painted_with
from swatchwright.acts.mixes_in_use import check_in_use, mixes_in_use
from swatchwright.acts.recipes import DEFAULT_VOLUME
from swatchwright.acts.sample_known import TaughtPaint
from swatchwright.acts.sample_tried import taught_in, tried_line
from swatchwright.acts.sheet_amounts import MixedHere, batch_of_zone
from swatchwright.acts.sheet_parts import JobParts
from swatchwright.acts.sheet_wish import wish_in
from swatchwright.acts.sheet_zone import Mix
from swatchwright.language import say
from swatchwright.piece.amounts import Batch as Taken
from swatchwright.sheet.told import date_text, ml_text
from swatchwright.shelf.jobs import Batch, Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour

__all__ = ["KeptMix", "mixes_of_job"]


@dataclass(frozen=True, slots=True)
class KeptMix:
    """A mix of a job, and what its piece takes of it; None where that is not known."""

    mix: Mix
    taken: Taken | None


def mixes_of_job(
    store: Store,
    job: Job,
    parts: JobParts,
    *,
    zone: str | None,
    volume: float | None,
    in_use: Shelf | None,
) -> tuple[KeptMix, ...]:
    """Gather the chosen mix of each zone, or of one.

    Parameters
    ----------
    store, job, parts
        The job, and what it holds besides its colours.
    zone
        The one zone; all if None.
    volume
        ml that are asked for; None for those of the last batch, or of the piece, or of the bench
        when the colour was kept.
    in_use
        As in `shelf_in_use`.

    Raises
    ------
    MendableError
        If no recipe is chosen, or the one asked for is on no part of the piece.
    """
    amounts = None if parts.reckoned is None else parts.reckoned.amounts
    zones = [recipe.zone for recipe in mixes_in_use(job)]
    found = []
    for recipe in _chosen(job, zone):
        on = painted_with(job, recipe.zone, parts.layers)
        batch = next((b for b in reversed(job.batches) if b.zone == recipe.zone), None)
        taken = batch_of_zone(amounts, recipe.zone, zones)
        colour = next((w for w in job.wanted if w.zone == recipe.zone), None)
        ml, volume_from = _volume(volume, batch, taken, None if colour is None else colour.volume)
        mix = Mix(
            parts=[(paint.paint, paint.share) for paint in recipe.paints],
            counts=[paint.parts for paint in recipe.paints],
            shelf=_shelf(store, job, recipe, in_use),
            wanted=KnownColour(recipe.wanted, None, "") if colour is None else colour.colour,
            layers=layers_on(parts.layers, on),
            on=on,
            asked=wish_in(job, [recipe.wanted, *([] if colour is None else [colour.colour.lab])]),
            zone="" if recipe.zone == WHOLE_PIECE else recipe.zone,
            title=job.title,
            day="" if batch is None else batch.day,
            batch=None if batch is None else batch.number,
            volume=ml,
            volume_from=volume_from,
            changed=_changes(store, recipe, in_use, taught_in(job)),
            tried=tried_line(job, [(paint.paint, paint.share) for paint in recipe.paints]),
        )
        found.append(KeptMix(mix, taken))
    return tuple(found)


def _chosen(job: Job, zone: str | None) -> list[KeptRecipe]:
    """Give the chosen recipe of each zone, or of one."""
    check_in_use(job, zone)
    recipes = [recipe for recipe in mixes_in_use(job) if zone in {None, recipe.zone}]
    if not recipes:
        raise no_recipe(job, zone)
    return recipes


def _volume(
    asked: float | None, batch: Batch | None, taken: Taken | None, kept: float | None
) -> tuple[float, str]:
    """Choose a volume, and say where it comes from, and how much the piece takes if not that."""
    if asked is not None:
        volume, told = asked, say("as asked")
    elif batch is not None:
        volume = batch.volume
        told = say("as batch {number} on {day}", number=batch.number, day=date_text(batch.day))
    elif taken is not None:
        return taken.mix_ml, say("what the piece takes, with a sample and some to touch up")
    elif kept is not None and kept != DEFAULT_VOLUME:
        return kept, say("as kept with the colour")
    else:
        return DEFAULT_VOLUME, say("for a small piece")
    if taken is None or MixedHere(volume, (), taken).as_the_piece_takes:
        return volume, told
    return volume, say("{told}; the piece takes {amount}", told=told, amount=ml_text(taken.mix_ml))


def _shelf(store: Store, job: Job, recipe: KeptRecipe, in_use: Shelf | None) -> Shelf:
    """Give the paints of a recipe as they were, and the others that layers may have."""
    own = shelf_of_recipe(store, recipe)
    ids = {paint.id for paint in own.paints}
    others = [p for p in paints_at_hand(store, job, in_use) if p.id not in ids]
    return Shelf(OWN_PAINTS, (*own.paints, *others))


def _changes(
    store: Store, recipe: KeptRecipe, in_use: Shelf | None, taught: tuple[TaughtPaint, ...]
) -> dict[str, str]:
    """Say of each paint what has changed about it since.

    What the samples taught is no change of a tin: the sheet tells the recipe, which stays.
    """
    told = {}
    for paint in recipe.paints:
        alone = replace(recipe, paints=(paint,))
        changed = what_has_changed(store, alone, in_use=in_use, taught=taught)
        if changed.others:
            told[paint.paint] = " ".join(changed.others)
    return told
