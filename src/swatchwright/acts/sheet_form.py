"""How a painter wants her recipe sheet or label, kept with the job, and the sheet made of that."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from io import BytesIO
from math import ceil
from pathlib import Path

from PIL import Image

from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.recipes import Recipes, check_volume
from swatchwright.acts.seen_in import SEEN_IN_PART
from swatchwright.acts.sheet import (
    LABELS,
    PICTURE_DPI,
    LabelSize,
    Paper,
    SheetContent,
    Units,
    content_of,
    content_of_mix,
    document_of,
    label_named,
    pictures_of,
    save_sheet,
)
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.layers import Stack
from swatchwright.shelf.jobs import Job
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store

__all__ = [
    "FORM_PART",
    "LABEL_DPI",
    "PRINT_DPI",
    "BenchMix",
    "SheetForm",
    "laid_out",
    "page_size",
    "save_laid_out",
    "sheet_of_job",
    "sheet_of_mix",
    "shown_pages",
    "sound_form",
    "told_of",
    "zones_told",
]

FORM_PART = "sheet-form"
"""The part of a job that holds its form."""

PRINT_DPI = 300.0
"""Dots to the inch of a page that goes to a printer."""

LABEL_DPI = 300.0
"""Dots to the inch of a picture of a label: its code is small."""

_LEAST_DPI = 50.0
_UNTOLD = frozenset({FORM_PART, SEEN_IN_PART, "bench", "compare"})


@dataclass(frozen=True, slots=True)
class SheetForm:
    """What is set for a sheet.

    Parameters
    ----------
    as_label
        Whether it is a label, and not a sheet.
    label
        The size of a label, by its name.
    fill
        Whether labels fill a page of them.
    paper
        Of a sheet.
    units
        In what amounts are told.
    volume
        ml; None for that of the job, or of the bench.
    zone
        The one zone to tell of; None for all.
    day
        As in 2026-03-01; None for the day on which it is made.
    """

    as_label: bool = False
    label: str = LABELS[0].name
    fill: bool = False
    paper: Paper = Paper.A4
    units: Units = field(default_factory=Units)
    volume: float | None = None
    zone: str | None = None
    day: str | None = None


@dataclass(frozen=True, slots=True, eq=False)
class BenchMix:
    """Mixes on the bench that no job keeps yet: the first of them is told.

    Parameters
    ----------
    recipes, shelf
        The mixes, and the paints that they are of.
    title, client
        The piece, and whom it is for; each may be empty.
    layers
        What goes over it.
    """

    recipes: Recipes
    shelf: Shelf
    title: str = ""
    client: str = ""
    layers: Stack = field(default_factory=Stack)


def sound_form(form: SheetForm, zones: Sequence[str]) -> SheetForm:
    """Give a form with nothing in it that there is not, as one kept elsewhere may have."""
    units, volume, day = form.units, form.volume, form.day
    if not (units.ml or units.grams or units.spoons):
        units = replace(units, ml=True)
    if volume is not None:
        try:
            check_volume(volume)
        except MendableError:
            volume = None
    if day is not None:
        try:
            day = date.fromisoformat(day).isoformat()
        except ValueError:
            day = None
    return replace(
        form,
        label=form.label if any(size.name == form.label for size in LABELS) else LABELS[0].name,
        units=units,
        volume=volume,
        zone=form.zone if form.zone in zones else None,
        day=day,
    )


def zones_told(job: Job | None) -> tuple[str, ...]:
    """Name the zones of a job whose chosen recipe is in use; none where there is no job."""
    return tuple(recipe.zone for recipe in mixes_in_use(job))


def told_of(job: Job) -> Job:
    """Give a job without what no sheet tells of it, to see whether a sheet is still true."""
    kept = tuple(entry for entry in job.documents if entry[0] not in _UNTOLD)
    return replace(job, changed="", documents=kept, photos=())


# --- putting together ----------------------------------------------------------------------------


def sheet_of_job(
    store: Store, id_: str, form: SheetForm, *, in_use: Shelf | None = None
) -> SheetContent:
    """Put together what a sheet says of a job, as a form wants it; the rest as `content_of`.

    Raises
    ------
    MendableError
        As `content_of`.
    """
    return content_of(
        store,
        id_,
        zone=form.zone,
        volume=form.volume,
        units=form.units,
        day=form.day,
        in_use=in_use,
    )


def sheet_of_mix(mix: BenchMix, form: SheetForm) -> SheetContent:
    """Put together what a sheet says of the first mix on the bench, as a form wants it.

    Layers that cannot be laid over it are left out, and that is told.

    Raises
    ------
    MendableError
        As `content_of_mix`.
    """
    try:
        return _of_mix(mix, form, mix.layers)
    except MendableError as error:
        if not mix.layers.layers:
            raise
        content = _of_mix(mix, form, Stack())
        gap = say("The finish is left out: {why}", why=f"{error.what} {error.mend}")
        gaps_in = (*content.gaps_in, "finish")
        return replace(content, gaps=(*content.gaps, gap), gaps_in=gaps_in)


def _of_mix(mix: BenchMix, form: SheetForm, layers: Stack) -> SheetContent:
    recipe = mix.recipes.recipes[0].recipe
    return content_of_mix(
        mix.shelf,
        [(paint.id, share) for paint, share in zip(recipe.paints, recipe.shares, strict=True)],
        counts=recipe.parts.counts,
        title=mix.title,
        client=mix.client,
        wanted=mix.recipes.wanted,
        layers=layers,
        volume=mix.recipes.volume if form.volume is None else form.volume,
        units=form.units,
        day=form.day,
    )


# --- laying out ----------------------------------------------------------------------------------


def laid_out(content: SheetContent, form: SheetForm) -> bytes:
    """Lay a sheet or labels out as a PDF, as a form wants it."""
    return document_of(content, paper=form.paper, label=_label(form), fill=form.fill)


def page_size(form: SheetForm) -> tuple[float, float]:
    """Give width and height of each page, mm."""
    label = _label(form)
    if label is None:
        return form.paper.size
    return label.paper.size if form.fill else (label.width, label.height)


def save_laid_out(content: SheetContent, path: Path, form: SheetForm) -> tuple[Path, ...]:
    """Write a sheet or labels to a PDF or to PNG pictures, and give what was written.

    Raises
    ------
    MendableError
        As `save_sheet`.
    """
    label = _label(form)
    return save_sheet(
        content,
        path,
        paper=form.paper,
        label=label,
        fill=form.fill,
        dpi=PICTURE_DPI if label is None else LABEL_DPI,
    )


def _label(form: SheetForm) -> LabelSize | None:
    return label_named(form.label) if form.as_label else None


def shown_pages(document: bytes, *, dpi: float, grey: bool = False) -> tuple[bytes, ...]:
    """Give the pages of a document as PNG pictures to be shown on a screen.

    Parameters
    ----------
    document
        The PDF.
    dpi
        Dots to the inch, above 0, at most 600. Pages of less than 50 are drawn larger and shrunk.
    grey
        Whether as a black and white print has them: by the luma of [BT601].

    Raises
    ------
    MendableError
        If so many dots cannot be.
    """
    times = max(1, ceil(_LEAST_DPI / dpi)) if dpi > 0 else 1
    pages = pictures_of(document, dpi=dpi * times)
    if times == 1 and not grey:
        return pages
    return tuple(_shrunk(page, times, grey=grey) for page in pages)


def _shrunk(page: bytes, times: int, *, grey: bool) -> bytes:
    with Image.open(BytesIO(page)) as opened:
        # Of Pillow, "L" is the luma of BT.601.
        picture = opened.convert("L" if grey else "RGB")
    if times > 1:
        picture = picture.reduce(times)
    file = BytesIO()
    picture.save(file, "PNG", compress_level=1)
    return file.getvalue()
