"""Put a recipe sheet or a label together, write it, and read the code of one back."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date

from swatchwright.acts.batches import WHOLE_PIECE, day_named
from swatchwright.acts.jobs import job_of
from swatchwright.acts.kept_recipe import OWN_PAINTS, no_recipe, shelf_of_recipe, what_has_changed
from swatchwright.acts.kept_words import kept_words
from swatchwright.acts.recipes import DEFAULT_VOLUME
from swatchwright.acts.sheet_files import PICTURE_DPI, document_of, pictures_of, save_sheet
from swatchwright.acts.sheet_parts import (
    JobParts,
    buy_lines,
    cautions_for,
    mixed_lines,
    moment_text,
    parts_of,
    piece_lines,
    plan_lines,
    volume_of_zone,
)
from swatchwright.acts.sheet_zone import Mix, zone_of
from swatchwright.acts.stock import kept_shelf
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.layers import Stack
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.piece.names import zone_word
from swatchwright.sheet.code import CodeRecipe, read_code
from swatchwright.sheet.content import BatchLine, NoteLine, SheetContent, Units
from swatchwright.sheet.lettering import missing_letters
from swatchwright.sheet.paper import LABELS, LabelSize, Paper, label_named, paper_named
from swatchwright.sheet.told import date_text
from swatchwright.shelf.jobs import Batch, Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour

__all__ = [
    "LABELS",
    "PICTURE_DPI",
    "CodeRecipe",
    "LabelSize",
    "Paper",
    "SheetContent",
    "Units",
    "content_of",
    "content_of_mix",
    "document_of",
    "label_named",
    "paper_named",
    "pictures_of",
    "read_code",
    "save_sheet",
]

_MOST_TEXT = 200
_KEEP_TO = mark(
    "Mix by the parts, whatever the volume, and mix enough for all coats at once: two batches of "
    "one recipe differ a little, and so do two tins of one paint."
)
_HOLD = mark("Keep a brushed card with this sheet, in the dark; it outlives any figure on it.")


# --- of a job ------------------------------------------------------------------------------------


def content_of(
    store: Store,
    id_: str,
    *,
    zone: str | None = None,
    volume: float | None = None,
    units: Units | None = None,
    day: str | None = None,
) -> SheetContent:
    """Put together what a sheet says of a job.

    Parameters
    ----------
    store, id_
        Which job.
    zone
        The one zone to tell of; all that have a chosen recipe if None.
    volume
        ml; if None that of the zone's last batch, else what its piece takes, else 500.
    units
        In what amounts are told.
    day
        Of the sheet, as in 2026-03-01; today if None.

    Raises
    ------
    MendableError
        If there is no such job, no recipe is chosen for it, or a volume or a day cannot be.
    """
    job = job_of(store, id_)
    recipes = _chosen(job, zone)
    parts = parts_of(store, job)
    told = units or Units()
    mixes = [_mix(store, job, recipe, parts, volume) for recipe in recipes]
    paints = [paint for mix in mixes for paint in _used(mix)]
    amounts, plan = parts.amounts, parts.plan
    content = SheetContent(
        title=job.title,
        client=job.client,
        brief=job.brief,
        room_light=job.room_light,
        day=store.today() if day is None else day_named(day),
        job=job.id,
        units=told,
        zones=tuple(zone_of(mix, told) for mix in mixes),
        batches=tuple(_batch_line(b) for b in job.batches if zone in {None, b.zone}),
        piece=() if amounts is None else piece_lines(amounts),
        mixed=() if amounts is None else mixed_lines(amounts),
        buy=() if amounts is None else buy_lines(amounts),
        plan=() if plan is None else plan_lines(plan),
        ready="" if plan is None else moment_text(plan.ready),
        cautions=cautions_for(paints, parts.layers, plan),
        notes=tuple(NoteLine(note.written[:10], kept_words(note.text)) for note in job.notes),
        again=(say(_KEEP_TO), say(_HOLD)),
        invented=_any_invented(paints),
        gaps=parts.gaps,
        gaps_in=parts.gaps_in,
    )
    return _with_missing_letters(content)


def _chosen(job: Job, zone: str | None) -> list[KeptRecipe]:
    """Give the chosen recipe of each zone, or of one."""
    zones = dict.fromkeys(recipe.zone for recipe in job.recipes if recipe.chosen)
    found = [job.chosen(name) for name in zones if zone in {None, name}]
    recipes = [recipe for recipe in found if recipe is not None]
    if not recipes:
        raise no_recipe(job, zone)
    return recipes


def _mix(store: Store, job: Job, recipe: KeptRecipe, parts: JobParts, volume: float | None) -> Mix:
    """Gather what is known of the chosen recipe of a zone."""
    batch = next((b for b in reversed(job.batches) if b.zone == recipe.zone), None)
    needed = volume_of_zone(parts.amounts, recipe.zone, [r.zone for r in job.recipes if r.chosen])
    ml, volume_from = _volume(volume, batch, needed)
    wanted = next((w.colour for w in job.wanted if w.zone == recipe.zone), None)
    return Mix(
        parts=[(paint.paint, float(paint.parts)) for paint in recipe.paints],
        shelf=_shelf(store, recipe),
        wanted=wanted or KnownColour(recipe.wanted, None, ""),
        layers=parts.layers,
        zone="" if recipe.zone == WHOLE_PIECE else recipe.zone,
        title=job.title,
        day="" if batch is None else batch.day,
        batch=None if batch is None else batch.number,
        volume=ml,
        volume_from=volume_from,
        changed=_changes(store, recipe),
    )


def _volume(asked: float | None, batch: Batch | None, needed: float | None) -> tuple[float, str]:
    """Choose a volume, and say where it comes from."""
    if asked is not None:
        return asked, say("as asked")
    if batch is not None:
        told = say("as batch {number} on {day}", number=batch.number, day=date_text(batch.day))
        return batch.volume, told
    if needed is not None:
        return needed, say("what the piece takes, with a sample and some to touch up")
    return DEFAULT_VOLUME, say("for a small piece")


def _shelf(store: Store, recipe: KeptRecipe) -> Shelf:
    """Give the paints of a recipe as they were, and the others of the shelf, for layers."""
    own = shelf_of_recipe(store, recipe)
    ids = {paint.id for paint in own.paints}
    others = [p for p in kept_shelf(store).shelf.paints if p.id not in ids]
    return Shelf(OWN_PAINTS, (*own.paints, *others))


def _changes(store: Store, recipe: KeptRecipe) -> dict[str, str]:
    """Say of each paint what has changed about it since."""
    told = {}
    for paint in recipe.paints:
        changed = what_has_changed(store, replace(recipe, paints=(paint,)))
        if changed:
            told[paint.paint] = " ".join(changed)
    return told


def _batch_line(batch: Batch) -> BatchLine:
    zone = "" if batch.zone == WHOLE_PIECE else zone_word(batch.zone)
    return BatchLine(batch.number, batch.day, batch.volume, zone, batch.note)


# --- of a mix ------------------------------------------------------------------------------------


def content_of_mix(
    shelf: Shelf,
    parts: Sequence[tuple[str, float]],
    *,
    title: str = "",
    client: str = "",
    wanted: KnownColour | None = None,
    layers: Stack | None = None,
    volume: float | None = None,
    units: Units | None = None,
    day: str | None = None,
) -> SheetContent:
    """Put together what a sheet says of a mix with no job.

    Parameters
    ----------
    shelf
        Where its paints are.
    parts
        Ids and parts.
    title, client
        What it is for, and whom.
    wanted
        The colour that is wanted, if one is.
    layers
        What goes over it.
    volume
        ml; 500 if None.
    units
        In what amounts are told.
    day
        Of the sheet, as in 2026-03-01; today if None.

    Raises
    ------
    MendableError
        If the mix, a layer, the volume, the day or a text cannot be.
    """
    for text in (title, client):
        if len(text) > _MOST_TEXT:
            raise MendableError(
                say("“{text}…” has {many} letters.", text=text[:30], many=len(text)),
                say("Give up to {most}.", most=_MOST_TEXT),
            )
    told, over = units or Units(), layers or Stack()
    named = date.today().isoformat() if day is None else day_named(day)  # noqa: DTZ011 - her own day
    mix = Mix(
        parts=parts,
        shelf=shelf,
        wanted=wanted,
        layers=over,
        title=title,
        day=named,
        volume=DEFAULT_VOLUME if volume is None else volume,
        volume_from=say("for a small piece") if volume is None else say("as asked"),
    )
    zone = zone_of(mix, told)
    paints = _used(mix)
    content = SheetContent(
        title=title,
        client=client,
        brief="",
        room_light="",
        day=named,
        job="",
        units=told,
        zones=(zone,),
        cautions=cautions_for(paints, over, None),
        again=(say(_KEEP_TO), say(_HOLD)),
        invented=_any_invented(paints),
    )
    return _with_missing_letters(content)


def _used(mix: Mix) -> list[Paint]:
    """Give the paints of a mix and of the layers over it."""
    layered = [id_ for layer in mix.layers.layers for id_, _ in layer.paints]
    ids = dict.fromkeys([*(id_ for id_, _ in mix.parts), *layered])
    found = []
    for id_ in ids:
        # A layer whose paint is gone is told of where it is previewed.
        with suppress(MendableError):
            found.append(mix.shelf.paint(id_))
    return found


def _any_invented(paints: Sequence[Paint]) -> bool:
    return any(paint.how_known is HowKnown.INVENTED for paint in paints)


def _with_missing_letters(content: SheetContent) -> SheetContent:
    """Say which letters the fonts of the sheet do not have."""
    names = [paint.name for zone in content.zones for paint in zone.paints]
    notes = [note.text for note in content.notes] + [batch.note for batch in content.batches]
    heads = [content.title, content.client, content.brief, content.room_light]
    lacking = missing_letters(" ".join([*heads, *names, *notes]))
    if not lacking:
        return content
    told = say(
        "The letters of the sheet do not have: {letters}. Write them by hand.",
        letters=" ".join(lacking[:20]),
    )
    return replace(content, gaps=(*content.gaps, told))
