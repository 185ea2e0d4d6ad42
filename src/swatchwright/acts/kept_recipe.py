"""What is told of the recipes that a job keeps: their paints as they were, and what has changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from swatchwright.acts.bench_shelf import shelf_in_use
from swatchwright.acts.mix import own_colours
from swatchwright.acts.mixes_in_use import mixes_in_use, of_no_zone
from swatchwright.acts.sample_known import TaughtPaint, same_tin, taught_lines
from swatchwright.colour.difference import JUST_SEEN, delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.language import listed, mark, say
from swatchwright.paint.paints import Paint
from swatchwright.piece.names import zone_word
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import paint_rows
from swatchwright.shelf.store.store import Store

__all__ = ["OWN_PAINTS", "Changed", "no_recipe", "shelf_of_recipe", "what_has_changed"]

OWN_PAINTS = mark("the recipe's own paints")
"""The name of a shelf of the paints of one recipe."""


@dataclass(frozen=True, slots=True)
class Changed:
    """What is to be said of the paints of a recipe, each in a sentence.

    Parameters
    ----------
    others
        Of those that the shelf lacks, or that are other paints there: mind them.
    taught
        Of those that are the same tins, which the job's own samples taught, all in one.
    """

    others: tuple[str, ...] = ()
    taught: tuple[str, ...] = ()


def shelf_of_recipe(store: Store, recipe: KeptRecipe) -> Shelf:
    """Give the paints of a recipe as they were when it was kept, as a shelf.

    Raises
    ------
    MendableError
        If one of them is missing or damaged in the store.
    """
    with store.reading() as connection:
        paints = tuple(paint_rows.read_frozen(connection, p.frozen) for p in recipe.paints)
    return Shelf(OWN_PAINTS, paints)


def what_has_changed(
    store: Store,
    recipe: KeptRecipe,
    *,
    in_use: Shelf | None = None,
    taught: Sequence[TaughtPaint] = (),
) -> Changed:
    """Say of each paint of a recipe that the shelf lacks or that is no longer what it was.

    Parameters
    ----------
    store, recipe
        Where the shelf and the recipe's paints are kept.
    in_use
        As in `shelf_in_use`.
    taught
        What the samples of the job taught of its paints.
    """
    was = shelf_of_recipe(store, recipe)
    now = {paint.id: paint for paint in shelf_in_use(store, in_use).paints}
    others: list[str] = []
    same: list[tuple[str, int]] = []
    for paint in was.paints:
        here = now.get(paint.id)
        sample = None if here is None else same_tin(paint, here, taught)
        if sample is not None:
            same.append((paint.name, sample))
        elif told := _difference(paint, here):
            others.append(told)
    return Changed(tuple(others), taught_lines(same))


def no_recipe(job: Job, zone: str | None) -> MendableError:
    """Say that no recipe is chosen for a job, or for one of its zones."""
    zones = [zone_word(recipe.zone) for recipe in mixes_in_use(job)]
    if not zones and (kept := of_no_zone(job)):
        return MendableError(
            say(
                "No part of “{job}” has a mix: those that are kept are for {zones}, which its "
                "piece does not have.",
                job=job.title,
                zones=listed(zone_word(recipe.zone) for recipe in kept),
            ),
            say("Give a part of the piece that colour, or keep a mix for one that it has."),
        )
    return MendableError(
        say("No recipe is chosen for “{job}”, zone {zone}.", job=job.title, zone=zone_word(zone))
        if zone
        else say("No recipe is chosen for “{job}”.", job=job.title),
        say("Its zones with a recipe are: {zones}.", zones=", ".join(zones))
        if zones
        else say("Find and keep a recipe first."),
    )


def _difference(was: Paint, now: Paint | None) -> str:
    """Say in a sentence how a paint differs from what it was; empty where it does not."""
    if now is None:
        return say("“{paint}” is not on the shelf any more.", paint=was.name)
    if paint_rows.paint_bytes(was) == paint_rows.paint_bytes(now):
        return ""
    optics = (np.allclose(getattr(was, c), getattr(now, c), rtol=1e-6) for c in "KS")
    same = all(optics) and was.finish == now.finish and was.volume_solids == now.volume_solids
    if same:
        return ""
    before, after = own_colours((was, now))
    apart = float(delta_e_2000(before.triple, after.triple))
    if apart < JUST_SEEN:
        return say(
            "“{paint}” on the shelf is not the paint of the recipe: by itself it dries the same, "
            "but it may tint or hide otherwise. Brush a sample first.",
            paint=was.name,
        )
    return say(
        "“{paint}” on the shelf is not the paint of the recipe: by itself it now dries "
        "{apart:.1f} from what it was ({seen}). Brush a sample first.",
        paint=was.name,
        apart=apart,
        seen=closeness(apart),
    )
