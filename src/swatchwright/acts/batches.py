"""Keep the recipes of a job, and the batches mixed by them.

A recipe is kept with its paints as they were, so that a batch can be mixed again when the shelf has
changed; where a paint of the shelf is no longer what it was, that is said.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from swatchwright.acts import labels
from swatchwright.acts.kept_recipe import no_recipe, shelf_of_recipe, what_has_changed
from swatchwright.acts.mixes_in_use import WHOLE_PIECE, check_in_use, mixes_in_use
from swatchwright.acts.recipes import Recipes, check_volume
from swatchwright.acts.sample_tried import taught_in
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.recipe import Recipe
from swatchwright.shelf.jobs import (
    Batch,
    Job,
    KeptRecipe,
    Poured,
    ReadFrom,
    RecipePaint,
    WantedColour,
)
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows, paint_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Edit, Store

__all__ = [
    "WHOLE_PIECE",
    "choose_recipe",
    "day_named",
    "keep_recipes",
    "make_batch",
    "shelf_of_recipe",
    "take_back_batch",
    "take_off_mix",
    "what_has_changed",
]


def keep_recipes(
    store: Store,
    id_: str,
    found: Recipes,
    *,
    zone: str = WHOLE_PIECE,
    choose: int | None = 1,
    read: ReadFrom | None = None,
) -> Changes:
    """Keep the recipes found for a colour of a job, in place of those kept for that zone.

    Parameters
    ----------
    store, id_
        Which job.
    found
        The recipes; their wanted colour becomes that of the zone.
    zone
        The zone of the piece they are for; its colour keeps its place among those of the job.
    choose
        Which of them is chosen, 1 the first; None for none yet.
    read
        Where the wanted colour was read; None where it was not read now. A colour that the job has
        already is the one that was read then.

    Raises
    ------
    MendableError
        If there is no such job or no recipe of that number.
    """
    if choose is not None and not 1 <= choose <= len(found.recipes):
        raise MendableError(
            say(
                "Recipe {number} was chosen, and there are {many}.",
                number=choose,
                many=len(found.recipes),
            ),
            say("Choose from 1 to {most}.", most=len(found.recipes)),
        )
    with store.editing("Keep recipes") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(labels.KEEP_RECIPES.format(job=job.title))
        kept = [
            _kept(edit, measured.recipe, found, zone, chosen=number == choose)
            for number, measured in enumerate(found.recipes, start=1)
        ]
        others = [recipe for recipe in job.recipes if recipe.zone != zone]
        before = (w.read for w in job.wanted if w.read is not None and w.colour == found.wanted)
        read = read or next(before, None)
        colour = WantedColour(zone, found.wanted, read, found.volume)
        new = replace(job, recipes=(*others, *kept), wanted=_in_its_place(job.wanted, colour))
        job_rows.write_job(edit, job, new)
        return edit.changes


def _in_its_place(
    before: tuple[WantedColour, ...], colour: WantedColour
) -> tuple[WantedColour, ...]:
    """Put the colour of a zone where that of the zone stood; a new one comes last."""
    if all(wanted.zone != colour.zone for wanted in before):
        return (*before, colour)
    return tuple(colour if wanted.zone == colour.zone else wanted for wanted in before)


def take_off_mix(store: Store, id_: str, zone: str) -> Changes:
    """Take the colour of a zone and its mixes off a job; batches that were mixed of it stay.

    Raises
    ------
    MendableError
        If there is no such job, or it has no colour for that zone.
    """
    with store.editing("Take a mix off") as edit:
        job = job_rows.read_job(edit.connection, id_)
        recipes = tuple(recipe for recipe in job.recipes if recipe.zone != zone)
        wanted = tuple(colour for colour in job.wanted if colour.zone != zone)
        if (recipes, wanted) == (job.recipes, job.wanted):
            raise no_recipe(job, zone)
        if zone == WHOLE_PIECE:
            edit.call(labels.TAKE_MIX_OFF.format(job=job.title))
        else:
            edit.call(labels.TAKE_MIX_OFF_ZONE.format(job=job.title, zone=zone))
        job_rows.write_job(edit, job, replace(job, recipes=recipes, wanted=wanted))
        return edit.changes


def choose_recipe(store: Store, id_: str, recipe: KeptRecipe) -> Changes:
    """Choose one of the recipes that are kept for a zone of a job.

    Raises
    ------
    MendableError
        If there is no such job or recipe.
    """
    with store.editing("Choose a recipe") as edit:
        job = job_rows.read_job(edit.connection, id_)
        if recipe not in job.recipes:
            raise MendableError(
                say("“{job}” has no such recipe.", job=job.title),
                say("Choose one of those that the job shows."),
            )
        edit.call(labels.CHOOSE_RECIPE.format(job=job.title))
        recipes = tuple(
            replace(r, chosen=r == recipe) if r.zone == recipe.zone else r for r in job.recipes
        )
        job_rows.write_job(edit, job, replace(job, recipes=recipes))
        return edit.changes


def make_batch(
    store: Store,
    id_: str,
    *,
    volume: float,
    zone: str | None = None,
    day: str | None = None,
    note: str = "",
    in_use: Shelf | None = None,
) -> Changes:
    """Mix a batch by the chosen recipe: by its exact shares, for any volume, with a new number.

    What is poured is drawn from the stock where that is known. The warnings of what is given back
    say where the stock falls short and where a paint is no longer what it was.

    Parameters
    ----------
    store, id_
        Which job.
    volume
        ml to mix, 1 to 100 000.
    zone
        The zone whose recipe it is; the one chosen last if None.
    day
        As in 2026-03-01; today if None.
    note
        Anything.
    in_use
        As in `shelf_in_use`.

    Raises
    ------
    MendableError
        If there is no such job, no recipe is chosen, it is on no part of the piece, or the volume
        or the day cannot be.
    """
    check_volume(volume)
    day = _day(store, day)
    with store.editing("Mix a batch") as edit:
        job = job_rows.read_job(edit.connection, id_)
        recipe = _chosen(job, zone)
        number = max((batch.number for batch in job.batches), default=0) + 1
        edit.call(labels.MIX_BATCH.format(number=number, job=job.title, ml=f"{volume:g}"))
        amounts = rounded_amounts([p.share for p in recipe.paints], volume)
        poured = tuple(
            Poured(p.paint, p.name, ml, _draw(edit, p, ml))
            for p, ml in zip(recipe.paints, amounts, strict=True)
        )
        batch = Batch(number, day, round(volume, 1), recipe.zone, poured, note.strip())
        for told in what_has_changed(store, recipe, in_use=in_use, taught=taught_in(job)).others:
            edit.warn(told)
        job_rows.write_job(edit, job, replace(job, batches=(*job.batches, batch)))
        return edit.changes


def take_back_batch(store: Store, id_: str, number: int) -> Changes:
    """Take a batch off the job and give its paint back to the stock, as if it were not mixed.

    Raises
    ------
    MendableError
        If there is no such job or batch.
    """
    with store.editing("Take a batch back") as edit:
        job = job_rows.read_job(edit.connection, id_)
        batch = next((b for b in job.batches if b.number == number), None)
        if batch is None:
            numbers = ", ".join(str(b.number) for b in job.batches) or say("none so far")
            raise MendableError(
                say("“{job}” has no batch {number}.", job=job.title, number=number),
                say("Its batches are: {numbers}.", numbers=numbers),
            )
        edit.call(labels.TAKE_BACK.format(number=number, job=job.title))
        for poured in batch.poured:
            for stocked in paint_rows.read_paints(edit.connection, (poured.paint,)):
                if stocked.ml_left is not None and poured.drawn:
                    left = round(stocked.ml_left + poured.drawn, 2)
                    paint_rows.set_stock(edit, poured.paint, left)
        batches = tuple(b for b in job.batches if b is not batch)
        job_rows.write_job(edit, job, replace(job, batches=batches))
        return edit.changes


def _kept(edit: Edit, recipe: Recipe, found: Recipes, zone: str, *, chosen: bool) -> KeptRecipe:
    rows = zip(recipe.paints, recipe.shares, recipe.parts.counts, strict=True)
    return KeptRecipe(
        zone=zone,
        wanted=found.wanted.lab,
        paints=tuple(
            RecipePaint(p.id, p.name, paint_rows.freeze(edit, p), float(share), int(parts))
            for p, share, parts in rows
        ),
        dry=recipe.dry,
        wet=recipe.wet,
        delta_e=float(recipe.delta_e),
        chosen=chosen,
    )


def _chosen(job: Job, zone: str | None) -> KeptRecipe:
    check_in_use(job, zone)
    used = {recipe.zone for recipe in mixes_in_use(job)}
    fitting = [r for r in job.recipes if r.chosen and r.zone in used and zone in {None, r.zone}]
    if not fitting:
        raise no_recipe(job, zone)
    return fitting[-1]


def _draw(edit: Edit, paint: RecipePaint, ml: float) -> float:
    """Draw an amount from the stock, as far as there is any, and give how much that was."""
    found = paint_rows.read_paints(edit.connection, (paint.paint,))
    left = found[0].ml_left if found else None
    if left is None:
        return 0.0
    drawn = min(ml, left)
    if drawn < ml:
        edit.warn(
            say(
                "Of “{paint}” only {left:g} ml were left, and {ml:g} ml are needed.",
                paint=paint.name,
                left=left,
                ml=ml,
            )
        )
    paint_rows.set_stock(edit, paint.paint, round(left - drawn, 2))
    return drawn


def _day(store: Store, day: str | None) -> str:
    return store.today() if day is None else day_named(day)


def day_named(day: str) -> str:
    """Read a day as in 2026-03-01.

    Raises
    ------
    MendableError
        If it is none.
    """
    try:
        return date.fromisoformat(day.strip()).isoformat()
    except ValueError as error:
        raise MendableError(
            say("“{text}” is not a day.", text=day),
            say("Write it as year, month and day: 2026-03-01."),
        ) from error
