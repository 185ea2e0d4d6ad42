"""The job of the demonstration: a cushion in clay red and ink blue, a blanket box, a workshop.

All of it is invented, and it says so. What takes time, reading the photo and finding the recipes,
is done before the store is touched.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.job_bench import BENCH, BenchPhoto, Laid, keep_mix
from swatchwright.acts.jobs import keep_document, new_job, note_job
from swatchwright.acts.labels import BEGIN_DEMO
from swatchwright.acts.piece_job import form_for, keep_piece, piece_of_form
from swatchwright.acts.recipes import Order, Recipes, recipes_for
from swatchwright.acts.samples import SamplePhoto, sample_photos
from swatchwright.acts.shelf_used import ShelfFrom, UsedShelf
from swatchwright.acts.stock import ShelfKind, kept_shelf, set_stock, take_demo_shelf
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.piece.common import Kind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import Marks
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store

__all__ = ["DemoFindings", "begin_demo_job", "demo_findings"]

_TITLE = mark("Blanket box (demonstration)")
_CLIENT = mark("Harbour workshop (invented)")
_BRIEF = mark(
    "A blanket box for the workshop's waiting room, to go with the striped cushion on the bench "
    "there: the body in its clay red, the top in its ink blue. This job, the client and the paints "
    "are invented."
)
_LIGHT = mark("Daylight from a north window")
_NOTE = mark(
    "Invented for demonstration: change what you like, mix a batch, take it back, or remove it."
)
_ZONES = ("body", "top")
_VOLUME = 500.0
_STOCK = 1000.0
"""ml of each paint of the chosen recipes that stand on the shelf, so that batches draw on them."""


@dataclass(frozen=True, slots=True, eq=False)
class DemoFindings:
    """What the sample photo gave: the photo with its marks, and recipes for two zones."""

    photo: BenchPhoto
    recipes: tuple[tuple[str, Recipes], ...]


def demo_findings(
    *,
    progress: Callable[[float], None] | None = None,
    stopped: Callable[[], bool] | None = None,
) -> DemoFindings:
    """Read the sample photo and find recipes for its two main colours.

    Parameters
    ----------
    progress, stopped
        Told the share done, and asked whether to give up.

    Raises
    ------
    MendableError
        If the sample photos are not there.
    Stopped
        If `stopped` said so.
    """
    sample = _sample()
    photo = open_photo(sample.path)
    found = colours_of(
        photo, grey=sample.grey, reflectance=sample.reflectance, area=sample.cloth
    ).colours
    shelf, recipes = demo_shelf(), []
    for place, (zone, colour) in enumerate(zip(_ZONES, found[:2], strict=True)):
        recipes.append(
            (
                zone,
                recipes_for(
                    colour.colour,
                    shelf,
                    volume=_VOLUME,
                    order=Order.PAINTER,
                    progress=None if progress is None else _part_of(progress, place),
                    stopped=stopped,
                ),
            )
        )
    marks = Marks((sample.grey,), sample.cloth, sample.reflectance)
    return DemoFindings(BenchPhoto(photo, marks, sample.path), tuple(recipes))


def begin_demo_job(store: Store, found: DemoFindings) -> Changes:
    """Begin the job of the demonstration, in one edit.

    An empty shelf is filled with the invented paints; a shelf with paints is left as it is. The job
    says that it is worked with those of the demonstration, whatever else is kept.

    Raises
    ------
    MendableError
        If the sample photo is not there any more.
    """
    with store.editing(BEGIN_DEMO) as edit:
        job = new_job(
            store, title=say(_TITLE), client=say(_CLIENT), brief=say(_BRIEF), room_light=_LIGHT
        ).jobs[0]
        for zone, recipes in found.recipes[::-1]:
            photo = found.photo
            keep_mix(store, job, recipes, choose=1, zone=zone, photo=photo, read=photo.marks)
        _in_order(store, job, found)
        box = form_for(Kind.BLANKET_BOX)
        keep_piece(store, job, box, piece_of_form(box), None)
        note_job(store, job, say(_NOTE))
        if kept_shelf(store).kind is ShelfKind.EMPTY:
            _fill_shelf(store, found)
        return replace(edit.changes, jobs=(job,))


def _in_order(store: Store, id_: str, found: DemoFindings) -> None:
    """Put the zones in the order of the piece, the body first; it is what the bench shows."""
    with store.editing("Order the zones") as edit:
        job = job_rows.read_job(edit.connection, id_)
        wanted = tuple(sorted(job.wanted, key=lambda w: _ZONES.index(w.zone)))
        recipes = tuple(sorted(job.recipes, key=lambda r: _ZONES.index(r.zone)))
        job_rows.write_job(edit, job, replace(job, wanted=wanted, recipes=recipes))
    shelf = UsedShelf(ShelfFrom.DEMO)
    settings = Laid(_VOLUME, 3, found.recipes[0][0], job.photos[-1].hash, shelf)
    keep_document(store, id_, BENCH, settings)


def _fill_shelf(store: Store, found: DemoFindings) -> None:
    take_demo_shelf(store)
    poured = {paint.id for _, r in found.recipes for paint in r.recipes[0].recipe.paints}
    for paint in sorted(poured):
        set_stock(store, paint, _STOCK)


def _part_of(progress: Callable[[float], None], place: int) -> Callable[[float], None]:
    """Give what tells the progress of one of the two searches."""
    return lambda share: progress((place + share) / len(_ZONES))


def _sample() -> SamplePhoto:
    samples = sample_photos()
    if not samples:
        raise MendableError(
            say("The sample photos are not there; Swatchwright was installed without them."),
            say("Open a photo of your own, or run it from the project's folder."),
        )
    return samples[0]
