"""What of a job lies on the bench: its photo and marks, its wanted colour, the mix that is kept."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory

from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.colours import PhotoColours, open_photo
from swatchwright.acts.job_photos import add_photo, mark_photo, photo_copy
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import KEEP_MIX, KEEP_MIX_FOR_ZONE
from swatchwright.acts.recipes import DEFAULT_VOLUME, Recipes
from swatchwright.acts.shelf_used import UsedShelf, worked_with
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.photo.image import Photo
from swatchwright.shelf.jobs import (
    Document,
    Job,
    KeptPhoto,
    KeptRecipe,
    Marks,
    ReadFrom,
    WantedColour,
)
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Rect

__all__ = [
    "BENCH",
    "BenchPhoto",
    "Laid",
    "chosen_among",
    "keep_mix",
    "laid_photo",
    "photo_of_colour",
    "photo_to_lay",
    "pick_among",
    "scaled",
    "settings_of",
    "volume_kept",
    "wanted_to_lay",
    "without_places",
    "zones_of",
]

BENCH = "bench"
"""The part of a job that tells how the bench was set."""

_NOT_OF_A_CLOTH = ("repaint", "sample-photo")
"""The parts of a job whose photos are not those of a cloth alone."""

_SAME_SHARE = 5e-4
_SAME_COLOUR = 0.05
_SAME_BLOCK = 0.5
_ONE_COPY = mark(
    "The original photo is not where it was; this is the reduced copy that is kept with the job."
)


@dataclass(frozen=True, slots=True)
class Laid:
    """How the bench was set when a mix was kept.

    Parameters
    ----------
    volume, most_paints, zone
        How much was mixed, ml, of how many paints at the most, and for which zone.
    photo
        SHA-256 of the photo.
    shelf
        Which shelf was worked with; None where that was not kept.
    """

    volume: float = DEFAULT_VOLUME
    most_paints: int = 3
    zone: str = WHOLE_PIECE
    photo: str = ""
    shelf: UsedShelf | None = None


@dataclass(frozen=True, slots=True, eq=False)
class _OnPhoto:
    """As much as is asked here of a part that has a photo of its own."""

    photo: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class BenchPhoto:
    """A photo on the bench.

    Parameters
    ----------
    photo
        The photo as it was read.
    marks
        What is marked in it, in its own pixels.
    path
        Its file; None where it is the reduced copy of a kept one.
    kept
        How a job keeps it; None where none does yet.
    """

    photo: Photo
    marks: Marks
    path: Path | None = None
    kept: KeptPhoto | None = None


# --- laying --------------------------------------------------------------------------------------


def settings_of(job: Job) -> Laid:
    """Give how the bench was set for a job; the usual where that was not kept or is not read."""
    document = job.document(BENCH)
    with suppress(MendableError):
        if document is not None:
            return document.read(Laid)
    return Laid()


def photo_to_lay(job: Job) -> KeptPhoto | None:
    """Give the photo of a job that belongs on the bench: the one kept there last."""
    hash_, others = settings_of(job).photo, _other_photos(job)
    cloths = [photo for photo in job.photos if photo.hash not in others]
    return next(iter([*(p for p in job.photos if p.hash == hash_), *cloths[::-1]]), None)


def photo_of_colour(job: Job, wanted: WantedColour | None) -> KeptPhoto | None:
    """Give the photo of a job that a colour was read from, marked as it was read.

    None where it was typed or chosen by eye, or the photo is no longer with the job.
    """
    read = None if wanted is None else wanted.read
    for photo in job.photos:
        if read is not None and photo.hash == read.photo:
            marks = replace(photo.marks, cloth=read.cloth, metre=read.metre)
            return replace(photo, marks=marks)
    return None


def _other_photos(job: Job) -> set[str]:
    """Give the hashes of the photos that show the piece to be painted, or a sample."""
    documents = [job.document(part) for part in _NOT_OF_A_CLOTH]
    found = set()
    for document in documents:
        with suppress(MendableError):
            found.add("" if document is None else document.read(_OnPhoto).photo)
    return found


def wanted_to_lay(job: Job) -> WantedColour | None:
    """Give the wanted colour of a job that belongs on the bench: that of the last zone."""
    zone = settings_of(job).zone
    return next(iter([*(w for w in job.wanted if w.zone == zone), *job.wanted[::-1]]), None)


def without_places(job: Job) -> Job:
    """Give a job without where files lay on this machine: of photos, and of the shelf in use."""
    settings, bare = settings_of(job), tuple(replace(photo, path="") for photo in job.photos)
    if settings.shelf is not None and settings.shelf.path:
        laid = Document.of(replace(settings, shelf=None))
        documents = tuple((p, laid if p == BENCH else document) for p, document in job.documents)
        job = replace(job, documents=documents)
    return replace(job, photos=bare)


def volume_kept(job: Job, zone: str) -> float:
    """Give how much of its mix the colour of a zone was kept for, ml.

    That of the bench as it was last where a colour has none of its own, as those of before.
    """
    kept = (wanted.volume for wanted in job.wanted if wanted.zone == zone)
    return next((ml for ml in kept if ml is not None), settings_of(job).volume)


def laid_photo(store: Store, kept: KeptPhoto) -> BenchPhoto:
    """Open a photo of a job: the original if it is still where it was, else the reduced copy.

    Raises
    ------
    MendableError
        If the original has gone and the copy is missing or damaged.
    """
    path = Path(kept.path) if kept.path else None
    if path is not None and _is_original(path, kept.hash):
        with suppress(MendableError):
            return BenchPhoto(open_photo(path), kept.marks, path, kept)
    with TemporaryDirectory() as folder:
        # Under a name of ours: that of a photo brought in from elsewhere may be anything.
        file = Path(folder) / "copy.jpg"
        file.write_bytes(photo_copy(store, kept))
        photo = open_photo(file)
    facts = replace(photo.facts, name=kept.name, notes=(*photo.facts.notes, say(_ONE_COPY)))
    marks = scaled(kept.marks, (kept.width, kept.height), (photo.width, photo.height))
    return BenchPhoto(replace(photo, facts=facts), marks, None, kept)


def pick_among(found: PhotoColours, wanted: KnownColour) -> int | None:
    """Say which of the colours of a photo a wanted one is, by its place; None for none of them."""
    apart = [float(delta_e_2000(wanted.lab.triple, c.colour.lab.triple)) for c in found.colours]
    nearest = min(range(len(apart)), key=apart.__getitem__)
    return nearest if apart[nearest] < _SAME_BLOCK else None


def _is_original(path: Path, hash_: str) -> bool:
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest() == hash_
    except (OSError, ValueError):
        return False


def scaled(marks: Marks, start: tuple[int, int], end: tuple[int, int]) -> Marks:
    """Carry marks over from a picture of one size to one of another."""
    if start == end:
        return marks
    cloth = None if marks.cloth is None else _rect(marks.cloth, start, end)
    more = tuple(replace(r, rect=_rect(r.rect, start, end)) for r in marks.references)
    grey = tuple(_rect(r, start, end) for r in marks.grey)
    return replace(marks, grey=grey, cloth=cloth, references=more)


def _rect(rect: Rect, start: tuple[int, int], end: tuple[int, int]) -> Rect:
    across, down = end[0] / start[0], end[1] / start[1]
    x, y = min(round(rect.x * across), end[0] - 1), min(round(rect.y * down), end[1] - 1)
    right, bottom = round(rect.right * across), round(rect.bottom * down)
    return Rect(x, y, max(1, min(right, end[0]) - x), max(1, min(bottom, end[1]) - y))


# --- keeping -------------------------------------------------------------------------------------


def zones_of(job: Job | None) -> tuple[str, ...]:
    """Give the zones that a mix can be kept for: those of the piece, then those already wanted.

    A job whose piece is all of one colour has one, the whole piece.
    """
    if job is None:
        return (WHOLE_PIECE,)
    document = job.document("piece")
    sized = () if document is None else tuple(dict.fromkeys(_zones_in(json.loads(document.json))))
    several = sized if len(sized) > 1 else ()
    return tuple(dict.fromkeys([*several, *(w.zone for w in job.wanted)])) or (WHOLE_PIECE,)


def _zones_in(value: object) -> Iterator[str]:
    """Find the zones of the painted parts, wherever in a document the parts are listed."""
    if isinstance(value, dict):
        if value.get("painted"):
            zones = (value.get("zone"), value.get("inside_zone"))
            yield from (zone for zone in zones if isinstance(zone, str) and zone)
        value = list(value.values())
    if isinstance(value, list):
        for inner in value:
            yield from _zones_in(inner)


def chosen_among(job: Job | None, found: Recipes | None, zone: str) -> int | None:
    """Say which of the recipes found is the one chosen for a zone of a job, 1 the first."""
    chosen = None if job is None else job.chosen(zone)
    if chosen is None or found is None:
        return None
    for number, measured in enumerate(found.recipes, start=1):
        recipe = measured.recipe
        same = [p.id for p in recipe.paints] == [p.paint for p in chosen.paints]
        if same and _alike(chosen, recipe.shares, recipe.dry.triple):
            return number
    return None


def _alike(kept: KeptRecipe, shares: tuple[float, ...], dry: tuple[float, float, float]) -> bool:
    """Tell whether a recipe of the same paints is the kept one, and the paints are as they were."""
    near = all(abs(p.share - s) < _SAME_SHARE for p, s in zip(kept.paints, shares, strict=True))
    return near and float(delta_e_2000(kept.dry.triple, dry)) < _SAME_COLOUR


def keep_mix(
    store: Store,
    id_: str,
    found: Recipes,
    *,
    choose: int,
    zone: str = WHOLE_PIECE,
    photo: BenchPhoto | None = None,
    read: Marks | None = None,
    most_paints: int = 3,
    shelf: UsedShelf | None = None,
) -> Changes:
    """Keep the recipes found for a zone with one chosen, and the bench as it is, in one edit.

    Parameters
    ----------
    store, id_
        Which job.
    found
        The recipes; their wanted colour becomes that of the zone, with their volume.
    choose
        Which of them is chosen, 1 the first.
    zone
        The zone of the piece.
    photo
        The photo on the bench; it is added to the job, or its marks are renewed.
    read
        The marks by which the wanted colour was read from that photo; None where it was typed,
        chosen by eye or kept before.
    most_paints
        How many paints a recipe may have, as it was asked.
    shelf
        Which shelf is in use; None for the one that the job has already.

    Returns
    -------
    What has changed. Where the photo is not there any more, a warning says so and the rest is kept.

    Raises
    ------
    MendableError
        If there is no such job or recipe.
    """
    with store.editing("Keep a mix") as edit:
        kept = None
        if photo is not None:
            try:
                kept = _keep_photo(store, id_, photo)
            except MendableError as error:
                # It lay on a card or a stick that is out again; the mix is worth keeping alone.
                edit.warn(error.what)
        where = None
        if photo is not None and kept is not None and read is not None:
            where = _read_from(photo, kept, read)
        keep_recipes(store, id_, found, zone=zone, choose=choose, read=where)
        before = settings_of(job_rows.read_job(edit.connection, id_)).shelf
        used = before if shelf is None else worked_with(store, shelf)
        laid = Laid(found.volume, most_paints, zone, "" if kept is None else kept.hash, used)
        keep_document(store, id_, BENCH, laid)
        job = job_rows.read_job(edit.connection, id_)
        label = KEEP_MIX if zone == WHOLE_PIECE else KEEP_MIX_FOR_ZONE
        edit.call(label.format(number=choose, job=job.title, zone=zone))
        return edit.changes


def _keep_photo(store: Store, id_: str, photo: BenchPhoto) -> KeptPhoto | None:
    """Keep a photo with its marks and give it as it is kept; None where it cannot be added."""
    with store.reading() as connection:
        here = {kept.hash for kept in job_rows.read_job(connection, id_).photos}
    kept = photo.kept
    if kept is not None and kept.hash in here:
        mark_photo(store, id_, kept.hash, _in_original(photo, kept, photo.marks))
        return kept
    if photo.path is None:
        return None
    add_photo(store, id_, photo.path, marks=photo.marks, photo=photo.photo)
    with store.reading() as connection:
        after = job_rows.read_job(connection, id_).photos
    place = str(photo.path.absolute())
    return next(p for p in reversed(after) if p.path == place)


def _in_original(photo: BenchPhoto, kept: KeptPhoto, marks: Marks) -> Marks:
    """Carry marks over from a photo on the bench to the original, as the job keeps them."""
    return scaled(marks, (photo.photo.width, photo.photo.height), (kept.width, kept.height))


def _read_from(photo: BenchPhoto, kept: KeptPhoto, read: Marks) -> ReadFrom:
    """Say where a colour was read, by the marks on the bench."""
    marks = _in_original(photo, kept, read)
    return ReadFrom(kept.hash, marks.cloth, marks.metre)
