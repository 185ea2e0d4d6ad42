"""Tell in a line what other parts of the program keep with a job."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from typing import TypeVar

from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes, Stands
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_job import PIECE_PART
from swatchwright.colour.names import colour_name
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.paint.layers import Layer, Stack
from swatchwright.piece.names import piece_word, zone_word
from swatchwright.piece.part import Piece
from swatchwright.piece.work.order import PlanOrder
from swatchwright.sheet.told import date_text
from swatchwright.shelf.jobs import Document, Job

__all__ = ["told_parts"]

T = TypeVar("T")


def told_parts(job: Job) -> dict[str, str]:
    """Tell of each part of a job what it is; empty where it is of a kind that is not known here.

    What cannot be read is told as empty too: the page that it belongs to says why.
    """
    told = {part: _TOLD.get(part, _nothing)(document) for part, document in job.documents}
    client = job.document(CLIENT_PART)
    if client is not None:
        colours = {wanted.colour.lab for wanted in job.wanted}
        told[CLIENT_PART] = _told(ClientWishes, lambda said: _client(said.among(colours)))(client)
    return told


def _told(kind: type[T], tell: Callable[[T], str]) -> Callable[[Document], str]:
    """Give what tells a document of a kind."""

    def told(document: Document) -> str:
        with suppress(MendableError):
            return tell(document.read(kind))
        return ""

    return told


def _nothing(document: Document) -> str:
    del document
    return ""


def _piece(piece: Piece) -> str:
    return say(
        "{piece}, {area:.1f} m² to paint",
        piece=piece_word(piece.name),
        area=sized(piece).areas.total,
    )


def _plan(order: PlanOrder) -> str:
    return say("from {day}", day=date_text(order.start))


def _finish(stack: Stack) -> str:
    laid = ", ".join(_layer(layer) for layer in stack.layers)
    return laid or say("none, the bare coat")


def _layer(layer: Layer) -> str:
    """Say what a layer is, and of one for a part of the piece, for which."""
    if not layer.zone:
        return say(layer.kind.value)
    return say("{layer} ({part})", layer=say(layer.kind.value), part=zone_word(layer.zone))


def _client(wishes: ClientWishes) -> str:
    told = [colour_name(wish.aim) for wish in wishes.wishes]
    told += dict.fromkeys(say(_STANDS[one.stands]) for one in wishes.stand)
    return ", ".join(told)


_STANDS = {
    Stands.UNMIXED: mark("nothing is mixed yet"),
    Stands.PAINTED: mark("painted already"),
    Stands.POT: mark("still in the pot"),
}


_TOLD: dict[str, Callable[[Document], str]] = {
    PIECE_PART: _told(Piece, _piece),
    "plan": _told(PlanOrder, _plan),
    "finish": _told(Stack, _finish),
}
