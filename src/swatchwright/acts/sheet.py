"""Put a recipe sheet or a label together, write it, and read the code of one back."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date

from swatchwright.acts.batches import WHOLE_PIECE, day_named
from swatchwright.acts.jobs import job_of
from swatchwright.acts.kept_words import kept_words
from swatchwright.acts.recipes import DEFAULT_VOLUME
from swatchwright.acts.sheet_amounts import (
    Buying,
    MixedHere,
    Reckoned,
    buying,
    mixed_lines,
    piece_lines,
)
from swatchwright.acts.sheet_files import PICTURE_DPI, document_of, pictures_of, save_sheet
from swatchwright.acts.sheet_jars import jars_of
from swatchwright.acts.sheet_mixes import mixes_of_job
from swatchwright.acts.sheet_parts import (
    cautions_for,
    moment_text,
    parts_of,
    plan_lines,
)
from swatchwright.acts.sheet_zone import Mix, zone_of
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.layers import Stack
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.piece.names import zone_word
from swatchwright.sheet.code import CodeRecipe, read_code
from swatchwright.sheet.content import BatchLine, NoteLine, SheetContent, Units, Zone
from swatchwright.sheet.lettering import missing_letters
from swatchwright.sheet.paper import LABELS, LabelSize, Paper, label_named, paper_named
from swatchwright.shelf.jobs import Batch
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
_BY_PARTS = mark(
    "For another volume count out the parts, or change all amounts alike, and mix enough for all "
    "coats at once: two batches of one recipe differ a little, and so do two tins of one paint."
)
_BY_AMOUNTS = mark(
    "For another volume change all amounts alike, and mix enough for all coats at once: two "
    "batches of one recipe differ a little, and so do two tins of one paint."
)
_HOLD = mark("Keep a brushed card with this sheet, in the dark; it outlives any figure on it.")
_OPEN_JOB = mark(
    "With Swatchwright: open the job “{title}”. Or scan the square code beside a recipe with a "
    "phone and paste its text on the page Sheet, under “Read a code”. Without it, the amounts "
    "above are the whole recipe."
)
_SCAN = mark(
    "With Swatchwright: scan the square code beside a recipe with a phone and paste its text on "
    "the page Sheet, under “Read a code”. Without it, the amounts above are the whole recipe."
)
_NEXT_YEAR = mark(
    "Brush a sample first, even of a recipe that was right last time: let it dry, and hold it to a "
    "dry edge of the piece."
)


# --- of a job ------------------------------------------------------------------------------------


def content_of(
    store: Store,
    id_: str,
    *,
    zone: str | None = None,
    volume: float | None = None,
    units: Units | None = None,
    day: str | None = None,
    in_use: Shelf | None = None,
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
    in_use
        The paints on the bench; None for those that are kept, as in `shelf_in_use`.

    Raises
    ------
    MendableError
        If there is no such job, no recipe is chosen for it, or a volume or a day cannot be.
    """
    job = job_of(store, id_)
    parts = parts_of(store, job, in_use)
    told = units or Units()
    kept = mixes_of_job(store, job, parts, zone=zone, volume=volume, in_use=in_use)
    zones = tuple(zone_of(k.mix, told) for k in kept)
    here = [MixedHere(z.volume, z.paints, k.taken) for z, k in zip(zones, kept, strict=True)]
    paints = [paint for k in kept for paint in _used(k.mix)]
    laid = tuple(dict.fromkeys(layer for k in kept for layer in k.mix.layers.layers))
    reckoned, plan = parts.reckoned, parts.plan
    to_buy, gaps = _to_buy(reckoned, here)
    content = SheetContent(
        title=job.title,
        client=job.client,
        brief=job.brief,
        room_light=job.room_light,
        day=store.today() if day is None else day_named(day),
        job=job.id,
        units=told,
        zones=zones,
        jars=jars_of(reckoned, kept),
        batches=tuple(_batch_line(b) for b in job.batches if zone in {None, b.zone}),
        size=parts.size,
        piece=() if reckoned is None else piece_lines(reckoned.amounts),
        mixed=() if reckoned is None else mixed_lines(reckoned.amounts, here),
        buy=to_buy.lines,
        buy_cost=to_buy.cost,
        plan=() if plan is None else plan_lines(plan),
        ready="" if plan is None else moment_text(plan.ready),
        cautions=cautions_for(paints, Stack(laid), plan),
        notes=tuple(NoteLine(note.written[:10], kept_words(note.text)) for note in job.notes),
        again=_again(zones, job.title),
        invented=_any_invented(paints),
        gaps=(*parts.gaps, *gaps),
        gaps_in=parts.gaps_in,
    )
    return _with_missing_letters(content)


def _to_buy(reckoned: Reckoned | None, here: Sequence[MixedHere]) -> tuple[Buying, tuple[str, ...]]:
    """Give what to buy for what is mixed here, or why that is left out."""
    try:
        return (Buying() if reckoned is None else buying(reckoned, here)), ()
    except MendableError as error:
        why = f"{error.what} {error.mend}"
        return Buying(), (say("What to buy is left out: {why}", why=why),)


def _batch_line(batch: Batch) -> BatchLine:
    zone = "" if batch.zone == WHOLE_PIECE else zone_word(batch.zone)
    return BatchLine(batch.number, batch.day, batch.volume, zone, batch.note)


# --- of a mix ------------------------------------------------------------------------------------


def content_of_mix(
    shelf: Shelf,
    parts: Sequence[tuple[str, float]],
    *,
    counts: Sequence[int] | None = None,
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
        Ids and amounts; only their proportions count.
    counts
        Whole parts that come near them; None where the amounts are the parts themselves.
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
        counts=counts,
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
        again=_again((zone,)),
        invented=_any_invented(paints),
    )
    return _with_missing_letters(content)


def _again(zones: Sequence[Zone], job: str = "") -> tuple[str, ...]:
    """Say how to make the colour again; of a job, by its title, also where to find it."""
    amounts = say(_BY_PARTS if all(zone.in_parts for zone in zones) else _BY_AMOUNTS)
    found = say(_OPEN_JOB, title=job) if job else say(_SCAN)
    return amounts, found, say(_NEXT_YEAR), say(_HOLD)


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
    heads.append(content.buy_cost)
    lacking = missing_letters(" ".join([*heads, *names, *notes]))
    if not lacking:
        return content
    told = say(
        "The letters of the sheet do not have: {letters}. Write them by hand.",
        letters=" ".join(lacking[:20]),
    )
    return replace(content, gaps=(*content.gaps, told))
