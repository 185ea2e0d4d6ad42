"""What a job keeps of its piece on a photo, and which colours its zones may be seen in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.finish import preview
from swatchwright.acts.job_bench import zones_of
from swatchwright.acts.job_photos import add_photo, remove_photo
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.mixes_in_use import of_no_zone
from swatchwright.acts.recipes import Recipes
from swatchwright.paint.layers import Stack
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD
from swatchwright.photo.repaint_strokes import MOST_ZONES, Marked
from swatchwright.shelf.jobs import Job, KeptPhoto, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Edit, Store
from swatchwright.values import KnownColour, Lab, Rect

__all__ = [
    "AS_IT_IS",
    "REPAINT_PART",
    "SAMPLE_COLOURS",
    "Choice",
    "ChoiceKind",
    "RepaintPlan",
    "choice_for",
    "choices_of",
    "colours_of_zones",
    "keep_repaint",
    "piece_photo",
    "sample_colours",
    "zones_to_mark",
]

REPAINT_PART = "repaint"
AS_IT_IS = "as it is"
"""The key of a zone that keeps its old paint."""

SAMPLE_COLOURS = (("body", "paint:deep-blue-red"), ("top", "paint:white-clean"))
"""Paints of the demonstration shelf for the sample box, where no mix is at hand."""

_USUAL_ZONES = ("body", "top")


@dataclass(frozen=True, slots=True)
class RepaintPlan:
    """A piece on a photo, as it is kept with a job.

    Parameters
    ----------
    photo
        SHA-256 of the photo.
    marked
        The strokes.
    grey
        Where the grey card is, in pixels of the size that the strokes are for; None for none.
    reflectance
        What the card reflects.
    colours
        The key of a choice for each zone that is not seen in its usual one.
    finished
        Whether the piece is seen with the finish of the job, where that has one.
    """

    photo: str
    marked: Marked
    grey: Rect | None = None
    reflectance: float = GREY_CARD
    colours: tuple[tuple[str, str], ...] = ()
    finished: bool = True

    def grey_on(self, photo: Photo) -> Rect | None:
        """Give where the grey card is on the photo in the size it has now."""
        if self.grey is None:
            return None
        across = photo.width / self.marked.size[0]
        down = photo.height / self.marked.size[1]
        x, y = round(self.grey.x * across), round(self.grey.y * down)
        width = min(max(1, round(self.grey.width * across)), photo.width - x)
        height = min(max(1, round(self.grey.height * down)), photo.height - y)
        return Rect(x, y, width, height)


class ChoiceKind(StrEnum):
    """Where a colour comes from."""

    CHOSEN = "chosen"
    MIX = "mix"
    WANTED = "wanted"
    PAINT = "paint"


@dataclass(frozen=True, slots=True)
class Choice:
    """A colour that a zone may be seen in.

    Parameters
    ----------
    kind, name
        Where it comes from: a chosen mix and its zone, a mix and its number, the wanted colour
        and no name, or a paint and its name.
    key
        Tells it from all others, also tomorrow.
    parts
        Ids and shares of its paints; empty for the wanted colour.
    lab
        Its dry colour; None where that is still to be reckoned, from the parts.
    """

    kind: ChoiceKind
    name: str
    key: str
    parts: tuple[tuple[str, float], ...] = ()
    lab: Lab | None = None


# --- keeping -------------------------------------------------------------------------------------


def piece_photo(job: Job | None, plan: RepaintPlan | None) -> KeptPhoto | None:
    """Give the photo of the piece as a job keeps it; None where it has none."""
    photos = () if job is None or plan is None else job.photos
    return next((photo for photo in photos if plan and photo.hash == plan.photo), None)


def keep_repaint(
    store: Store, id_: str, plan: RepaintPlan, what: str, *, path: Path | None, photo: Photo | None
) -> Changes:
    """Keep strokes and colours with a job, and the photo of the piece if it does not have it yet.

    The photo of the piece that it replaces goes.

    Parameters
    ----------
    store, id_
        Which job.
    plan
        What is to be kept.
    what
        What was done, in words, for undo.
    path, photo
        The file of the photo and the photo as it was read, where they are at hand.

    Raises
    ------
    MendableError
        If there is no such job, or the photo cannot be kept.
    """
    with store.editing(what) as edit:
        job = job_rows.read_job(edit.connection, id_)
        document = job.document(REPAINT_PART)
        before = None
        if document is not None and plan.photo not in document.json:
            before = piece_photo(job, document.read(RepaintPlan))
        kept = {one.hash for one in job.photos}
        if plan.photo not in kept and path is not None:
            add_photo(store, id_, path, photo=photo)
            _put_first(edit, id_, plan.photo)
        if before is not None:
            remove_photo(store, id_, before.hash)
        keep_document(store, id_, REPAINT_PART, plan)
        edit.call(what)
        return edit.changes


def _put_first(edit: Edit, id_: str, hash_: str) -> None:
    """Put the photo of the piece before those of cloths, for the last is what is laid out."""
    job = job_rows.read_job(edit.connection, id_)
    own = tuple(one for one in job.photos if one.hash == hash_)
    rest = tuple(one for one in job.photos if one.hash != hash_)
    # The store keeps photos in the order in which they came: the others are taken out and put back.
    alone = replace(job, photos=own)
    job_rows.write_job(edit, job, alone)
    job_rows.write_job(edit, alone, replace(job, photos=(*own, *rest)))


# --- zones and colours ---------------------------------------------------------------------------


def zones_to_mark(job: Job | None, marked: Marked | None = None) -> tuple[str, ...]:
    """Give the zones that can be marked: those of the job, else body and top, and those marked.

    One that only a mix is kept for, and the piece does not have, is none of them.
    """
    gone = () if job is None else tuple(recipe.zone for recipe in of_no_zone(job))
    own = tuple(zone for zone in zones_of(job) if zone not in {WHOLE_PIECE, *gone})
    there = own or _USUAL_ZONES
    used = () if marked is None else marked.zones
    return tuple(dict.fromkeys([*there, *used]))[:MOST_ZONES]


def choices_of(
    job: Job | None, found: Recipes | None, wanted: KnownColour | None, shelf: Shelf
) -> tuple[Choice, ...]:
    """List the colours that a zone may be seen in: mixes first, then the paints as they are."""
    kept = {} if job is None else {r.zone: r for r in job.recipes if r.chosen}
    choices = [_chosen(recipe) for recipe in kept.values()]
    for number, measured in enumerate(() if found is None else found.recipes, start=1):
        recipe = measured.recipe
        rows = zip(recipe.paints, recipe.shares, strict=True)
        parts = tuple((paint.id, share) for paint, share in rows)
        choices.append(Choice(ChoiceKind.MIX, str(number), f"mix:{number}", parts, recipe.dry))
    if wanted is not None:
        choices.append(Choice(ChoiceKind.WANTED, "", "wanted", (), wanted.lab))
    choices += [
        Choice(ChoiceKind.PAINT, paint.name, f"paint:{paint.id}", ((paint.id, 1.0),))
        for paint in shelf.paints
    ]
    return tuple(choices)


def _chosen(recipe: KeptRecipe) -> Choice:
    parts = tuple((paint.paint, paint.share) for paint in recipe.paints)
    return Choice(ChoiceKind.CHOSEN, recipe.zone, f"zone:{recipe.zone}", parts, recipe.dry)


def choice_for(zone: str, choices: tuple[Choice, ...], plan: RepaintPlan | None) -> Choice | None:
    """Give the colour a zone is seen in: the one set, else its own mix, else the first there is.

    A zone beside the first with no mix of its own, and no mix for the whole piece, stays as it is.
    """
    by_key = {choice.key: choice for choice in choices}
    key = dict(() if plan is None else plan.colours).get(zone)
    if key == AS_IT_IS:
        return None
    if key in by_key:
        return by_key[key]
    own = by_key.get(f"zone:{zone}") or by_key.get(f"zone:{WHOLE_PIECE}")
    if own is not None:
        return own
    zones = () if plan is None else plan.marked.zones
    others = any(choice.kind is ChoiceKind.CHOSEN for choice in choices)
    if others or (zones and zone != zones[0]):
        return None
    return next((choice for choice in choices if choice.kind is not ChoiceKind.PAINT), None)


def sample_colours(choices: tuple[Choice, ...]) -> tuple[tuple[str, str], ...]:
    """Give the colours to see the sample box in, where they are not its usual ones.

    With kept mixes it is seen in those: each zone in its own by name, and where none is for a zone
    of the box, its body in the first. Else the body is seen in the first mix there is, and what
    has none in a paint of the demonstration.
    """
    keys = {choice.key for choice in choices}
    kept = [choice for choice in choices if choice.kind is ChoiceKind.CHOSEN]
    if kept:
        own = {f"zone:{zone}" for zone in (*_USUAL_ZONES, WHOLE_PIECE)}
        return () if own & keys else ((_USUAL_ZONES[0], kept[0].key),)
    mixed = any(choice.kind is not ChoiceKind.PAINT for choice in choices)
    return tuple(usual for usual in SAMPLE_COLOURS[mixed:] if usual[1] in keys)


def colours_of_zones(
    chosen: Mapping[str, Choice], shelf: Shelf, stack: Stack | None = None
) -> dict[str, Lab]:
    """Reckon the colour of each zone, dry, or with layers over it.

    Parameters
    ----------
    chosen
        The choice of each zone.
    shelf
        Where the paints are.
    stack
        What goes over it, each zone under its own layers; None for the dry mix. Nothing can be
        laid over a wanted colour.

    Raises
    ------
    MendableError
        If a paint or a layer is gone, or cannot be.
    """
    found = {}
    for zone, choice in chosen.items():
        over = Stack() if stack is None else stack.over(zone)
        if over.layers and choice.parts:
            found[zone] = preview(shelf, choice.parts, over).steps[-1].dry
        elif choice.lab is not None:
            found[zone] = choice.lab
        else:
            found[zone] = look_of_mix(shelf, choice.parts).dry
    return found
