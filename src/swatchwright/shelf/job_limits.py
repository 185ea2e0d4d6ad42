"""What a job may hold: every text, number and list of it has a bound."""

from __future__ import annotations

import re
from collections.abc import Sized
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import (
    KNOWN_PARTS,
    Batch,
    Document,
    Job,
    KeptPhoto,
    KeptRecipe,
    RecipePaint,
    WantedColour,
)
from swatchwright.values import Lab, Rect

__all__ = ["MOST_DOCUMENT", "MOST_PHOTOS", "check_document", "check_job", "check_text"]

MOST_PHOTOS = 50
MOST_DOCUMENT = 5_000_000
"""Characters of the JSON of one part."""

_SHORT, _LONG = 200, 20_000
_MOST = {"photos": MOST_PHOTOS, "wanted": 50, "recipes": 200, "batches": 2000, "notes": 2000}
_MOST_DOCUMENTS = 50
_MOST_ML = 1e6
_MOST_SIDE = 1_000_000
_MOST_BYTES = 2**40
_PART = re.compile(r"[a-z][a-z0-9_-]{0,39}")
_HASH = re.compile(r"[0-9a-f]{64}")
_SLUG = re.compile(r"[a-z0-9][a-z0-9-]{0,59}")


def check_job(job: Job) -> None:
    """Refuse a job with anything in it that no painter's job has.

    Raises
    ------
    MendableError
        Naming what is too long, too many or out of range.
    """
    _require(bool(_SLUG.fullmatch(job.id)), f"A job's id is “{job.id[:60]}”.")
    check_text(job.title, "title", needed=True)
    for what in ("client", "room_light", "created", "changed"):
        check_text(getattr(job, what), what.replace("_", " "))
    check_text(job.brief, "brief", most=_LONG)
    for name, most in _MOST.items():
        _count(getattr(job, name), name, most)
    for photo in job.photos:
        _photo(photo)
    for wanted in job.wanted:
        _wanted(wanted)
    for recipe in job.recipes:
        _recipe(recipe)
    for batch in job.batches:
        _batch(batch)
    for note in job.notes:
        check_text(note.text, "note", most=_LONG)
        check_text(note.written, "time of a note")
    _documents(job)


def check_text(text: str, what: str, *, most: int = _SHORT, needed: bool = False) -> None:
    """Refuse a text that is too long, holds control characters, or is missing.

    Raises
    ------
    MendableError
        Naming what it is of.
    """
    if needed and not text.strip():
        raise MendableError(f"The {what} is empty.", "Write a few words that tell it apart.")
    if len(text) > most:
        raise MendableError(
            f"The {what} has {len(text):,} letters.", f"Keep it to {most:,}; notes hold more."
        )
    odd = next((c for c in text if (c < " " and c not in "\n\t\r") or "\ud800" <= c < "\ue000"), "")
    if odd:
        raise MendableError(
            f"The {what} holds a character that cannot be kept (number {ord(odd)}).",
            "Type it again without that character.",
        )


def check_document(part: str, document: Document) -> None:
    """Refuse a document under a name that is not a part's, or one that is too large.

    Raises
    ------
    MendableError
        If it is.
    """
    _require(bool(_PART.fullmatch(part)) and part not in KNOWN_PARTS, f"A part is “{part[:60]}”.")
    _require(1 <= document.schema <= 10_000, f"The layout of the {part} is {document.schema}.")
    _require(len(document.json) <= MOST_DOCUMENT, f"The {part} is too large to be kept.")


def _documents(job: Job) -> None:
    _count(job.documents, "documents", _MOST_DOCUMENTS)
    for part, document in job.documents:
        check_document(part, document)
    _require(len(dict(job.documents)) == len(job.documents), "A part comes twice.")


def _photo(photo: KeptPhoto) -> None:
    check_text(photo.name, "name of a photo")
    check_text(photo.path, "place of a photo", most=4096)
    hashes = (photo.hash, photo.copy)
    _require(all(_HASH.fullmatch(h) for h in hashes), "The fingerprint of a photo is damaged.")
    sides = (photo.width, photo.height)
    _require(all(0 < side <= _MOST_SIDE for side in sides), f"A photo is {sides} pixels large.")
    _require(0 <= photo.size <= _MOST_BYTES, f"A photo has {photo.size} bytes.")
    marks = photo.marks
    _count(marks.grey, "grey cards", 100)
    _require(0 < marks.reflectance <= 1, f"The grey reflects {marks.reflectance:g}.")
    for rect in (*marks.grey, *([] if marks.cloth is None else [marks.cloth])):
        _rect(rect, photo)
    _count(marks.references, "references", 100)
    for reference in marks.references:
        check_text(reference.name, "name of a reference")
        _rect(reference.rect, photo)
        _lab(reference.lab)
        known = 0 < reference.spread <= 100
        _require(known, f"A reference is known to within {reference.spread:g}.")


def _rect(rect: Rect, photo: KeptPhoto) -> None:
    _require(
        rect.inside(photo.width, photo.height),
        f"A mark at {rect.x}, {rect.y} does not lie in the photo {photo.name}.",
    )


def _wanted(wanted: WantedColour) -> None:
    check_text(wanted.zone, "zone")
    check_text(wanted.colour.origin, "origin of a colour")
    _lab(wanted.colour.lab)
    if wanted.colour.covariance is not None:
        numbers = [v for row in wanted.colour.covariance for v in row]
        fine = all(isfinite(v) and abs(v) <= 1e6 for v in numbers)
        _require(fine, "The doubt of a colour is no number.")


def _recipe(recipe: KeptRecipe) -> None:
    check_text(recipe.zone, "zone")
    for lab in (recipe.wanted, recipe.dry, recipe.wet):
        _lab(lab)
    _require(0 <= recipe.delta_e <= 1000, f"A recipe is {recipe.delta_e:g} off its colour.")
    _require(1 <= len(recipe.paints) <= 8, f"A recipe has {len(recipe.paints)} paints.")
    for paint in recipe.paints:
        _recipe_paint(paint)
    total = sum(paint.share for paint in recipe.paints)
    _require(abs(total - 1) < 0.01, f"The shares of a recipe add up to {total:g}.")


def _recipe_paint(paint: RecipePaint) -> None:
    check_text(paint.paint, "id of a paint", needed=True)
    check_text(paint.name, "name of a paint")
    _require(bool(_HASH.fullmatch(paint.frozen)), "The fingerprint of a paint is damaged.")
    _require(0 < paint.share <= 1, f"The share of {paint.paint} is {paint.share:g}.")
    _require(0 < paint.parts <= 1_000_000, f"{paint.paint} has {paint.parts} parts.")


def _batch(batch: Batch) -> None:
    _require(1 <= batch.number <= 1_000_000, f"A batch has the number {batch.number}.")
    check_text(batch.day, "day of a batch")
    check_text(batch.zone, "zone")
    check_text(batch.note, "note of a batch", most=_LONG)
    _count(batch.poured, "paints of a batch", 8)
    for ml in (batch.volume, *(v for p in batch.poured for v in (p.ml, p.drawn))):
        _require(0 <= ml <= _MOST_ML, f"A batch has {ml:g} ml.")
    for poured in batch.poured:
        check_text(poured.paint, "id of a paint", needed=True)
        check_text(poured.name, "name of a paint")


def _lab(lab: Lab) -> None:
    fine = -1 <= lab.L <= 110 and abs(lab.a) <= 200 and abs(lab.b) <= 200
    _require(fine, f"A colour is {lab.L:g}, {lab.a:g}, {lab.b:g}.")


def _count(things: Sized, what: str, most: int) -> None:
    if len(things) > most:
        raise MendableError(f"The job has {len(things):,} {what}.", f"It may have {most:,}.")


def _require(fine: bool, what: str) -> None:  # noqa: FBT001 - what is required comes first
    if not fine:
        raise MendableError(what, "That cannot be kept in a job; put it right first.")
