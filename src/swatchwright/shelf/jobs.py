"""A job as a value: who it is for, what was photographed, wanted, mixed and noted.

Everything in it is plain: text, numbers, dates as text, colours. What other parts of the program
define (the piece, the plan, finishes, rounds of samples) is held as a `Document` under the name of
its part. A job never looks at the shelf: each recipe names its paints by a fingerprint under which
they are kept as they were, so that it can be mixed again when the shelf has changed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from enum import StrEnum
from typing import Any, Literal, TypeVar

import msgspec

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.decoding import decoded
from swatchwright.values import KnownColour, Lab, Rect

__all__ = [
    "KNOWN_PARTS",
    "Batch",
    "Document",
    "Job",
    "JobLine",
    "KeptPhoto",
    "KeptRecipe",
    "MarkedReference",
    "Marks",
    "Note",
    "Poured",
    "ReadFrom",
    "RecipePaint",
    "Status",
    "WantedColour",
]

T = TypeVar("T")


class Status(StrEnum):
    """How far a job has come."""

    ASKED = "asked"
    SAMPLING = "sampling"
    AGREED = "agreed"
    PAINTED = "painted"
    DONE = "done"


@dataclass(frozen=True, slots=True)
class Document:
    """A part of a job whose meaning is known elsewhere, as JSON with the version of its layout.

    Parameters
    ----------
    schema
        Version of the layout, 1 or more; whoever defines the part counts it up.
    json
        The value as JSON.
    """

    schema: int
    json: str

    @classmethod
    def of(cls, value: object, schema: int = 1) -> Document:
        """Make one of any value of frozen dataclasses, plain types and arrays."""
        return cls(schema, msgspec.json.encode(value, enc_hook=_plain).decode())

    def read(self, kind: type[T]) -> T:
        """Read it as a value of a type.

        Raises
        ------
        MendableError
            If it is not laid out as that type is.
        """
        try:
            return decoded(self.json, kind)
        except msgspec.DecodeError as error:
            raise MendableError(
                say("A part of the job could not be read ({error}).", error=error),
                say("It may have been written by a newer Swatchwright; bring this one up to date."),
            ) from error


def _plain(value: object) -> object:
    """Turn an array or a number of numpy into lists and numbers of Python."""
    to_list: Callable[[], object] | None = getattr(value, "tolist", None)
    if to_list is None:
        raise TypeError(f"{type(value).__name__} cannot be written as JSON")
    return to_list()


@dataclass(frozen=True, slots=True)
class MarkedReference:
    """Something more of known colour that is marked in a photo.

    Parameters
    ----------
    name
        What it is: “white paper”, or the name of a paint.
    rect
        Where it is.
    lab, kind, spread
        Its colour, whether it is a grey or a chip of any colour, and how well that is known:
        standard deviation along each axis of Lab.
    """

    name: str
    rect: Rect
    lab: Lab
    kind: Literal["grey", "chip"]
    spread: float


@dataclass(frozen=True, slots=True)
class Marks:
    """What is marked in a photo, in pixels of the upright original.

    Parameters
    ----------
    grey
        Where greys of known reflectance are.
    cloth
        Where the cloth is; None for the whole photo.
    reflectance
        Reflectance of the grey, above 0, at most 1.
    references
        What else of known colour is marked, each with its own.
    light
        What the light was, “daylight” or “lamp”; None where that was not told.
    metre
        Whether the colours are wanted as seen from a metre away, not as those of the yarn.
    """

    grey: tuple[Rect, ...] = ()
    cloth: Rect | None = None
    reflectance: float = 0.18
    references: tuple[MarkedReference, ...] = ()
    light: Literal["daylight", "lamp"] | None = None
    metre: bool = False


@dataclass(frozen=True, slots=True)
class KeptPhoto:
    """A photo of a job: what is known of the original, and a reduced copy of it.

    Parameters
    ----------
    hash
        SHA-256 of the original file, in hexadecimal.
    name, size, path
        Name, bytes and place of the original when it was brought in; it may have gone since.
    width, height
        Pixels of the original, upright.
    copy
        SHA-256 of the reduced JPEG copy, under which the store keeps it.
    marks
        What is marked in it.
    """

    hash: str
    name: str
    size: int
    path: str
    width: int
    height: int
    copy: str
    marks: Marks = Marks()


@dataclass(frozen=True, slots=True)
class ReadFrom:
    """Where a wanted colour was read: what else is marked in the photo is the same for all.

    Parameters
    ----------
    photo
        SHA-256 of the photo, which the job may no longer have.
    cloth
        The cloth it was read from, in pixels of the upright original; None for the whole photo.
    metre
        Whether it is the colour as seen from a metre away, not that of the yarn.
    """

    photo: str
    cloth: Rect | None = None
    metre: bool = False


@dataclass(frozen=True, slots=True)
class WantedColour:
    """A colour that is wanted.

    Parameters
    ----------
    zone
        The zone of the piece it is for (“body”, “drawers”).
    colour
        The colour.
    read
        Where it was read; None where it was typed or chosen by eye, or that was not kept.
    volume
        How much of its mix was to be mixed when it was kept, ml; None where that was not kept.
    """

    zone: str
    colour: KnownColour
    read: ReadFrom | None = None
    volume: float | None = None


@dataclass(frozen=True, slots=True)
class RecipePaint:
    """A paint of a recipe: its id and name on the shelf then, and how much of it.

    Parameters
    ----------
    paint, name
        Its id and name on the shelf when the recipe was kept.
    frozen
        Fingerprint under which the paint is kept as it was, with its K and S.
    share
        Share of the wet volume, 0-1.
    parts
        Whole parts.
    """

    paint: str
    name: str
    frozen: str
    share: float
    parts: int


@dataclass(frozen=True, slots=True)
class KeptRecipe:
    """A recipe that was considered or chosen.

    Parameters
    ----------
    zone
        The zone of the piece it is for.
    wanted
        The colour it was sought for.
    paints
        Its paints, the largest share first.
    dry, wet
        Its colour as computed.
    delta_e
        CIEDE2000 of `dry` from the wanted colour.
    chosen
        Whether it is the one for its zone.
    """

    zone: str
    wanted: Lab
    paints: tuple[RecipePaint, ...]
    dry: Lab
    wet: Lab
    delta_e: float
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class Poured:
    """What went into a batch of one paint.

    Parameters
    ----------
    paint, name
        Its id and name.
    ml
        How much, ml.
    drawn
        How much of that was taken from the stock, ml; less where the stock was unknown or short.
    """

    paint: str
    name: str
    ml: float
    drawn: float = 0.0


@dataclass(frozen=True, slots=True)
class Batch:
    """A batch that was mixed: its number in the job, day, volume in ml, and what went in."""

    number: int
    day: str
    volume: float
    zone: str
    poured: tuple[Poured, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Note:
    """Something written down, and when (UTC)."""

    written: str
    text: str


@dataclass(frozen=True, slots=True)
class Job:
    """A job, whole.

    Parameters
    ----------
    id
        Short name, different for each job, made from the title.
    title
        The piece.
    client, brief, room_light
        Who it is for, what was asked, and the light of the room where it will stand.
    status
        How far it has come.
    created, changed
        When, UTC, as in 2026-03-01T09:30:00Z.
    photos, wanted, recipes, batches, notes
        What has been gathered so far.
    documents
        Other parts by name: “piece”, “plan”, “finish”, “samples”.
    """

    id: str
    title: str
    client: str = ""
    brief: str = ""
    room_light: str = ""
    status: Status = Status.ASKED
    created: str = ""
    changed: str = ""
    photos: tuple[KeptPhoto, ...] = ()
    wanted: tuple[WantedColour, ...] = ()
    recipes: tuple[KeptRecipe, ...] = ()
    batches: tuple[Batch, ...] = ()
    notes: tuple[Note, ...] = ()
    documents: tuple[tuple[str, Document], ...] = ()

    def document(self, part: str) -> Document | None:
        """Give a part by its name; None where the job has none."""
        return dict(self.documents).get(part)

    def chosen(self, zone: str | None = None) -> KeptRecipe | None:
        """Give the chosen recipe of a zone, or of any; None where none is chosen."""
        fitting = [r for r in self.recipes if r.chosen and zone in {None, r.zone}]
        return fitting[-1] if fitting else None


@dataclass(frozen=True, slots=True)
class JobLine:
    """A job as a line of a list: what tells it from others, and one colour to show."""

    id: str
    title: str
    client: str
    status: Status
    changed: str
    colour: Lab | None


KNOWN_PARTS: dict[str, Any] = {
    "wanted": tuple[WantedColour, ...],
    "recipes": tuple[KeptRecipe, ...],
    "batches": tuple[Batch, ...],
    "notes": tuple[Note, ...],
}
"""The parts of a job that are defined here, with their types; all others are documents."""

assert set(KNOWN_PARTS) < {field.name for field in fields(Job)}  # noqa: S101 - a slip of ours
