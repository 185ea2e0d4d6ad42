"""Jobs to rows of the store and back."""

from __future__ import annotations

import sqlite3
import unicodedata
from dataclasses import replace
from difflib import get_close_matches
from typing import Any, TypeVar

import msgspec

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.language.letters import plain_letters
from swatchwright.shelf.decoding import decoded
from swatchwright.shelf.demo_names import name_in_use
from swatchwright.shelf.job_limits import check_document, check_job
from swatchwright.shelf.jobs import (
    KNOWN_PARTS,
    Document,
    Job,
    JobLine,
    KeptPhoto,
    Poured,
    RecipePaint,
    Status,
)
from swatchwright.shelf.store.store import Edit
from swatchwright.values import Lab

__all__ = [
    "add_job",
    "delete_job",
    "free_id",
    "full_id",
    "read_job",
    "read_lines",
    "searchable",
    "write_document",
    "write_job",
]

_P = TypeVar("_P", RecipePaint, Poured)

_HEADER = ("title", "client", "brief", "room_light", "status", "created", "changed")
_SELECT = f"SELECT id, {', '.join(_HEADER)} FROM jobs"  # noqa: S608 - our own names
_LAYOUT = 1
"""Version of how the parts defined in `shelf.jobs` are laid out as JSON."""


# --- reading -------------------------------------------------------------------------------------


def read_job(connection: sqlite3.Connection, id_: str) -> Job:
    """Read a job, whole.

    Raises
    ------
    MendableError
        If there is none of that id, or a part of it cannot be read.
    """
    row = connection.execute(f"{_SELECT} WHERE id = ?", (id_,)).fetchone()
    if row is None:
        raise _no_job(connection, id_)
    known: dict[str, Any] = {}
    documents = []
    parts = "SELECT part, layout, document FROM parts WHERE job = ? ORDER BY part"
    for part, layout, text in connection.execute(parts, (id_,)):
        if part in KNOWN_PARTS:
            known[part] = _named(part, Document(layout, text).read(KNOWN_PARTS[part]))
        else:
            documents.append((part, Document(layout, text)))
    photos = connection.execute("SELECT facts FROM photos WHERE job = ? ORDER BY row", (id_,))
    header = dict(zip(("id", *_HEADER), row, strict=True))
    return Job(
        **header | {"status": Status(header["status"])},
        photos=tuple(decoded(facts, KeptPhoto) for (facts,) in photos),
        documents=tuple(documents),
        **known,
    )


def _named(part: str, kept: Any) -> Any:  # noqa: ANN401 - what is kept of a job's known parts
    """Name invented paints in the language in use."""
    if part == "recipes":
        return tuple(replace(recipe, paints=_paints_named(recipe.paints)) for recipe in kept)
    if part == "batches":
        return tuple(replace(batch, poured=_paints_named(batch.poured)) for batch in kept)
    return kept


def _paints_named(paints: tuple[_P, ...]) -> tuple[_P, ...]:
    return tuple(replace(p, name=name_in_use(p.paint, p.name)) for p in paints)


def read_lines(connection: sqlite3.Connection, ids: tuple[str, ...] = ()) -> tuple[JobLine, ...]:
    """List jobs, the one changed last first: all, or those of some ids in the order of these."""
    statuses = {status.value: status for status in Status}
    asked = "SELECT id, title, client, status, changed, L, a, b FROM jobs"
    if ids:
        rows = connection.execute(
            f"{asked} WHERE id IN (SELECT value FROM json_each(?))",  # noqa: S608 - our own
            (msgspec.json.encode(ids).decode(),),
        )
    else:
        rows = connection.execute(f"{asked} ORDER BY changed DESC, row DESC")
    lines = {
        id_: JobLine(
            id_, title, client, statuses[status], changed, None if L is None else Lab(L, a, b)
        )
        for id_, title, client, status, changed, L, a, b in rows
    }
    return tuple(lines[id_] for id_ in ids) if ids else tuple(lines.values())


def full_id(connection: sqlite3.Connection, typed: str) -> str:
    """Give the id of the job that somebody means by an id or its beginning.

    Raises
    ------
    MendableError
        If none or several begin like that.
    """
    typed = typed.strip()
    if connection.execute("SELECT 1 FROM jobs WHERE id = ?", (typed,)).fetchone():
        return typed
    rows = connection.execute(
        "SELECT id FROM jobs WHERE substr(id, 1, ?) = ? ORDER BY id LIMIT 4", (len(typed), typed)
    ).fetchall()
    if len(rows) == 1 and typed:
        return str(rows[0][0])
    if rows and typed:
        raise MendableError(
            say(
                "Several jobs begin with “{typed}”: {ids}.",
                typed=typed,
                ids=", ".join(id_ for (id_,) in rows),
            ),
            say("Type more of the one you mean."),
        )
    raise _no_job(connection, typed)


def _no_job(connection: sqlite3.Connection, id_: str) -> MendableError:
    ids = [row[0] for row in connection.execute("SELECT id FROM jobs ORDER BY changed DESC")]
    near = get_close_matches(id_, ids, n=3, cutoff=0.5) or ids[:3]
    what = say("There is no job “{id}”.", id=id_[:60])
    if not near:
        return MendableError(what, say("No job is kept yet; begin a new one."))
    return MendableError(what, say("Use the id of one that is there, such as {ids}.", ids=near[0]))


def free_id(connection: sqlite3.Connection, title: str) -> str:
    """Make an id from a title, one that no job has: “Blanket box” gives blanket-box."""
    base = plain_letters(title) or "job"
    count, found = 2, base
    while connection.execute("SELECT 1 FROM jobs WHERE id = ?", (found,)).fetchone():
        found = f"{base}-{count}"
        count += 1
    return found


def searchable(text: str) -> str:
    """Give a text in small letters without accents, as it is searched."""
    plain = unicodedata.normalize("NFKD", text.casefold())
    return "".join(c for c in plain if not unicodedata.combining(c))


# --- writing -------------------------------------------------------------------------------------


def add_job(edit: Edit, job: Job) -> None:
    """Write a new job; the copies of its photos and its paints must be kept already.

    Raises
    ------
    MendableError
        If there is anything in it that cannot be kept.
    """
    check_job(job)
    _write_header(edit, job)
    for part in KNOWN_PARTS:
        _write_known(edit, job, part)
    for part, document in job.documents:
        _write_part(edit, job.id, part, document)
    _write_photos(edit, job, ())


def write_job(edit: Edit, old: Job, new: Job) -> None:
    """Write what differs between two states of a job, and when it was changed.

    Raises
    ------
    MendableError
        If there is anything in it that cannot be kept.
    """
    new = replace(new, changed=edit.made)
    if replace(old, changed=new.changed) == new:
        return
    check_job(new)
    _write_header(edit, new)
    for part in KNOWN_PARTS:
        if getattr(old, part) != getattr(new, part):
            _write_known(edit, new, part)
    for part in dict([*old.documents, *new.documents]):
        document = new.document(part)
        if old.document(part) != document:
            _write_part(edit, new.id, part, document)
    if old.photos != new.photos:
        _write_photos(edit, new, old.photos)


def write_document(edit: Edit, job: Job, part: str, document: Document | None) -> None:
    """Write one document of a job, or take it away if None.

    Raises
    ------
    MendableError
        If its name is not a part's or it is too large.
    """
    if document is not None:
        check_document(part, document)
    left = [(name, kept) for name, kept in job.documents if name != part]
    if document is not None:
        left.append((part, document))
    write_job(edit, job, replace(job, documents=tuple(sorted(left, key=lambda item: item[0]))))


def delete_job(edit: Edit, id_: str) -> None:
    """Take a job away; undo brings it back, photos and all."""
    for table in ("colours", "frozen", "photos", "parts"):
        edit.connection.execute(f"DELETE FROM {table} WHERE job = ?", (id_,))  # noqa: S608
    edit.connection.execute("DELETE FROM jobs WHERE id = ?", (id_,))


def _write_header(edit: Edit, job: Job) -> None:
    names = (*_HEADER, "words", "L", "a", "b")
    values = [str(getattr(job, name)) for name in _HEADER]
    colour = _shown_colour(job)
    shown = (None, None, None) if colour is None else colour.triple
    edit.connection.execute(
        f"INSERT INTO jobs (id, {', '.join(names)}) VALUES (?{', ?' * len(names)}) "  # noqa: S608
        f"ON CONFLICT (id) DO UPDATE SET {', '.join(f'{n} = excluded.{n}' for n in names)}",
        (job.id, *values, _words(job), *shown),
    )


def _shown_colour(job: Job) -> Lab | None:
    """Give the colour that a list shows of a job: the one chosen first, else wanted first."""
    chosen = [recipe.dry for recipe in job.recipes if recipe.chosen]
    return next(iter([*chosen, *(wanted.colour.lab for wanted in job.wanted)]), None)


def _words(job: Job) -> str:
    """Give all the words by which a job may be looked for."""
    paints = dict.fromkeys(p.name for recipe in job.recipes for p in recipe.paints)
    zones = dict.fromkeys(wanted.zone for wanted in job.wanted)
    notes = [note.text for note in job.notes]
    told = [job.title, job.client, job.brief, job.room_light, job.status.value]
    return searchable("\n".join([*told, *notes, *zones, *paints]))


def _write_known(edit: Edit, job: Job, part: str) -> None:
    value = getattr(job, part)
    _write_part(edit, job.id, part, Document.of(value, _LAYOUT) if value else None)
    if part == "wanted":
        _write_colours(edit, job.id, part, [(w.zone, w.colour.lab) for w in job.wanted])
    if part == "recipes":
        chosen = [(r.zone, r.dry) for r in job.recipes if r.chosen]
        _write_colours(edit, job.id, "chosen", chosen)
        _write_frozen(edit, job)


def _write_part(edit: Edit, job: str, part: str, document: Document | None) -> None:
    if document is None:
        edit.connection.execute("DELETE FROM parts WHERE job = ? AND part = ?", (job, part))
        return
    edit.connection.execute(
        "INSERT INTO parts (job, part, layout, document) VALUES (?, ?, ?, ?) ON CONFLICT "
        "(job, part) DO UPDATE SET layout = excluded.layout, document = excluded.document",
        (job, part, document.schema, document.json),
    )


def _write_colours(edit: Edit, job: str, kind: str, colours: list[tuple[str, Lab]]) -> None:
    edit.connection.execute("DELETE FROM colours WHERE job = ? AND kind = ?", (job, kind))
    edit.connection.executemany(
        "INSERT INTO colours (job, kind, zone, L, a, b) VALUES (?, ?, ?, ?, ?, ?)",
        [(job, kind, zone, *lab.triple) for zone, lab in colours],
    )


def _write_frozen(edit: Edit, job: Job) -> None:
    hashes = dict.fromkeys(paint.frozen for recipe in job.recipes for paint in recipe.paints)
    edit.connection.execute("DELETE FROM frozen WHERE job = ?", (job.id,))
    edit.connection.executemany(
        "INSERT INTO frozen (job, hash) VALUES (?, ?)", [(job.id, hash_) for hash_ in hashes]
    )


def _write_photos(edit: Edit, job: Job, old: tuple[KeptPhoto, ...]) -> None:
    gone = {photo.hash for photo in old} - {photo.hash for photo in job.photos}
    edit.connection.executemany(
        "DELETE FROM photos WHERE job = ? AND hash = ?", [(job.id, hash_) for hash_ in gone]
    )
    edit.connection.executemany(
        "INSERT INTO photos (job, hash, copy, facts) VALUES (?, ?, ?, ?) ON CONFLICT (job, hash) "
        "DO UPDATE SET copy = excluded.copy, facts = excluded.facts",
        [
            (job.id, photo.hash, photo.copy, msgspec.json.encode(photo).decode())
            for photo in job.photos
            if photo not in old
        ],
    )
