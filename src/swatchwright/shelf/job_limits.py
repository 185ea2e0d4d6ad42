"""What a job may hold: every text, number and list of it has a bound."""

from __future__ import annotations

import re
from collections.abc import Sized
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.shelf.jobs import (
    KNOWN_PARTS,
    Batch,
    Document,
    Job,
    KeptPhoto,
    KeptRecipe,
    ReadFrom,
    RecipePaint,
    WantedColour,
)
from swatchwright.values import Lab, Rect

__all__ = ["MOST_DOCUMENT", "MOST_PHOTOS", "check_document", "check_job", "check_text"]

MOST_PHOTOS = 50
MOST_DOCUMENT = 5_000_000
"""Characters of the JSON of one part."""

_TEXT, _THINGS = "a text of a job", "in a job, many"
"""In which sense the words for what is checked are said."""

_SHORT, _LONG = 200, 20_000
_MOST = {
    mark_in("in a job, many", "photos"): MOST_PHOTOS,
    mark_in("in a job, many", "wanted"): 50,
    mark_in("in a job, many", "recipes"): 200,
    mark_in("in a job, many", "batches"): 2000,
    mark_in("in a job, many", "notes"): 2000,
}
_MOST_DOCUMENTS = 50
_MOST_ML = 1e6
_MOST_MIX = 1e5
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
    _require(bool(_SLUG.fullmatch(job.id)), mark("A job's id is “{id}”."), id=job.id[:60])
    check_text(job.title, mark_in("a text of a job", "title"), needed=True)
    check_text(job.client, mark_in("a text of a job", "client"))
    check_text(job.room_light, mark_in("a text of a job", "room light"))
    check_text(job.created, mark_in("a text of a job", "created"))
    check_text(job.changed, mark_in("a text of a job", "changed"))
    check_text(job.brief, mark_in("a text of a job", "brief"), most=_LONG)
    for name, most in _MOST.items():
        _count(getattr(job, name), name, most)
    for photo in job.photos:
        _photo(photo)
    for wanted in job.wanted:
        _wanted(wanted)
        if wanted.read is not None:
            _read_from(wanted.read, job)
    for recipe in job.recipes:
        _recipe(recipe)
    for batch in job.batches:
        _batch(batch)
    for note in job.notes:
        check_text(note.text, mark_in("a text of a job", "note"), most=_LONG)
        check_text(note.written, mark_in("a text of a job", "time of a note"))
    _documents(job)


def check_text(text: str, what: str, *, most: int = _SHORT, needed: bool = False) -> None:
    """Refuse a text that is too long, holds control characters, or is missing.

    Raises
    ------
    MendableError
        Naming what it is of, in English: “title”.
    """
    if needed and not text.strip():
        raise MendableError(
            say("The {what} is empty.", what=say_in(_TEXT, what)),
            say("Write a few words that tell it apart."),
        )
    if len(text) > most:
        raise MendableError(
            say("The {what} has {count:,} letters.", what=say_in(_TEXT, what), count=len(text)),
            say("Keep it to {most:,}; notes hold more.", most=most),
        )
    odd = next((c for c in text if (c < " " and c not in "\n\t\r") or "\ud800" <= c < "\ue000"), "")
    if odd:
        raise MendableError(
            say(
                "The {what} holds a character that cannot be kept (number {number}).",
                what=say_in(_TEXT, what),
                number=ord(odd),
            ),
            say("Type it again without that character."),
        )


def check_document(part: str, document: Document) -> None:
    """Refuse a document under a name that is not a part's, or one that is too large.

    Raises
    ------
    MendableError
        If it is.
    """
    fine = bool(_PART.fullmatch(part)) and part not in KNOWN_PARTS
    _require(fine, mark("A part is “{part}”."), part=part[:60])
    _require(
        1 <= document.schema <= 10_000,
        mark("The layout of the {part} is {layout}."),
        part=part,
        layout=document.schema,
    )
    _require(
        len(document.json) <= MOST_DOCUMENT, mark("The {part} is too large to be kept."), part=part
    )


def _documents(job: Job) -> None:
    _count(job.documents, mark_in("in a job, many", "documents"), _MOST_DOCUMENTS)
    for part, document in job.documents:
        check_document(part, document)
    _require(len(dict(job.documents)) == len(job.documents), mark("A part comes twice."))


def _photo(photo: KeptPhoto) -> None:
    check_text(photo.name, mark_in("a text of a job", "name of a photo"))
    check_text(photo.path, mark_in("a text of a job", "place of a photo"), most=4096)
    whole = all(_HASH.fullmatch(h) for h in (photo.hash, photo.copy))
    _require(whole, mark("The fingerprint of a photo is damaged."))
    sides = (photo.width, photo.height)
    fine = all(0 < side <= _MOST_SIDE for side in sides)
    _require(fine, mark("A photo is {sides} pixels large."), sides=sides)
    _require(0 <= photo.size <= _MOST_BYTES, mark("A photo has {size} bytes."), size=photo.size)
    _marks(photo)


def _marks(photo: KeptPhoto) -> None:
    marks = photo.marks
    _count(marks.grey, mark_in("in a job, many", "grey cards"), 100)
    grey = marks.reflectance
    _require(0 < grey <= 1, mark("The grey reflects {reflectance:g}."), reflectance=grey)
    for rect in (*marks.grey, *([] if marks.cloth is None else [marks.cloth])):
        _rect(rect, photo)
    _count(marks.references, mark_in("in a job, many", "references"), 100)
    for reference in marks.references:
        check_text(reference.name, mark_in("a text of a job", "name of a reference"))
        _rect(reference.rect, photo)
        _lab(reference.lab)
        known = 0 < reference.spread <= 100
        told = mark("A reference is known to within {spread:g}.")
        _require(known, told, spread=reference.spread)


def _rect(rect: Rect, photo: KeptPhoto) -> None:
    _require(
        rect.inside(photo.width, photo.height),
        mark("A mark at {x}, {y} does not lie in the photo {photo}."),
        x=rect.x,
        y=rect.y,
        photo=photo.name,
    )


def _wanted(wanted: WantedColour) -> None:
    check_text(wanted.zone, mark_in("a text of a job", "zone"))
    check_text(wanted.colour.origin, mark_in("a text of a job", "origin of a colour"))
    _lab(wanted.colour.lab)
    if wanted.colour.covariance is not None:
        numbers = [v for row in wanted.colour.covariance for v in row]
        fine = all(isfinite(v) and abs(v) <= 1e6 for v in numbers)
        _require(fine, mark("The doubt of a colour is no number."))
    ml = wanted.volume
    if ml is not None:
        _require(1 <= ml <= _MOST_MIX, mark("A colour is kept for {ml:g} ml."), ml=ml)


def _read_from(read: ReadFrom, job: Job) -> None:
    whole = bool(_HASH.fullmatch(read.photo))
    _require(whole, mark("The fingerprint of a photo is damaged."))
    if read.cloth is None:
        return
    for photo in (photo for photo in job.photos if photo.hash == read.photo):
        _rect(read.cloth, photo)
    fine, at = read.cloth.inside(_MOST_SIDE, _MOST_SIDE), read.cloth
    _require(fine, mark("The cloth of a colour is marked at {x}, {y}."), x=at.x, y=at.y)


def _recipe(recipe: KeptRecipe) -> None:
    check_text(recipe.zone, mark_in("a text of a job", "zone"))
    for lab in (recipe.wanted, recipe.dry, recipe.wet):
        _lab(lab)
    off, count = recipe.delta_e, len(recipe.paints)
    _require(0 <= off <= 1000, mark("A recipe is {off:g} off its colour."), off=off)
    _require(1 <= count <= 8, mark("A recipe has {count} paints."), count=count)
    for paint in recipe.paints:
        _recipe_paint(paint)
    total = sum(paint.share for paint in recipe.paints)
    fine = abs(total - 1) < 0.01
    _require(fine, mark("The shares of a recipe add up to {total:g}."), total=total)


def _recipe_paint(paint: RecipePaint) -> None:
    check_text(paint.paint, mark_in("a text of a job", "id of a paint"), needed=True)
    check_text(paint.name, mark_in("a text of a job", "name of a paint"))
    whole = bool(_HASH.fullmatch(paint.frozen))
    _require(whole, mark("The fingerprint of a paint is damaged."))
    id_, share, parts = paint.paint, paint.share, paint.parts
    _require(0 < share <= 1, mark("The share of {id} is {share:g}."), id=id_, share=share)
    _require(0 < parts <= 1_000_000, mark("{id} has {parts} parts."), id=id_, parts=parts)


def _batch(batch: Batch) -> None:
    number = batch.number
    _require(1 <= number <= 1_000_000, mark("A batch has the number {number}."), number=number)
    check_text(batch.day, mark_in("a text of a job", "day of a batch"))
    check_text(batch.zone, mark_in("a text of a job", "zone"))
    check_text(batch.note, mark_in("a text of a job", "note of a batch"), most=_LONG)
    _count(batch.poured, mark_in("in a job, many", "paints of a batch"), 8)
    for ml in (batch.volume, *(v for p in batch.poured for v in (p.ml, p.drawn))):
        _require(0 <= ml <= _MOST_ML, mark("A batch has {ml:g} ml."), ml=ml)
    for poured in batch.poured:
        check_text(poured.paint, mark_in("a text of a job", "id of a paint"), needed=True)
        check_text(poured.name, mark_in("a text of a job", "name of a paint"))


def _lab(lab: Lab) -> None:
    fine = -1 <= lab.L <= 110 and abs(lab.a) <= 200 and abs(lab.b) <= 200
    _require(fine, mark("A colour is {L:g}, {a:g}, {b:g}."), L=lab.L, a=lab.a, b=lab.b)


def _count(things: Sized, what: str, most: int) -> None:
    if len(things) > most:
        told = say_in(_THINGS, what)
        raise MendableError(
            say("The job has {count:,} {things}.", count=len(things), things=told),
            say("It may have {most:,}.", most=most),
        )


def _require(
    fine: bool,  # noqa: FBT001 - what is required comes first
    what: str,
    **values: object,
) -> None:
    if not fine:
        raise MendableError(
            say(what, **values), say("That cannot be kept in a job; put it right first.")
        )
