"""The colours of a piece as a plan of work takes them: which pot goes where, and how much of it."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from typing import TypeVar

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.layers_by_part import parts_of_mix
from swatchwright.acts.mixes_in_use import WHOLE_PIECE, mixes_in_use, painted_zones
from swatchwright.acts.piece_form import PieceForm
from swatchwright.acts.piece_job import (
    FORM_PART,
    PIECE_PART,
    AtHand,
    beside_in,
    mixes_by_zone,
    order_for_job,
)
from swatchwright.errors import MendableError
from swatchwright.piece.order import AmountsOrder, ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.work.order import PlanOrder, Pot, Which
from swatchwright.piece.work.seen import sides_of_zone
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf

__all__ = ["coats_of_piece", "pots_at_coats", "pots_in", "with_pots"]

T = TypeVar("T")
Recipe = tuple[tuple[str, float], ...]

_REST = ""


def pots_in(job: Job | None, shelf: Shelf) -> tuple[Pot, ...]:
    """Give the pots that a piece is painted from; none where all of it has one colour.

    Mixes of the same recipe are one pot. How much of each is mixed is as the amounts of the piece
    have it; it is not told where the piece is not sized, or the shelf lacks a paint of the mix.

    Parameters
    ----------
    job
        Which one; None where there is none.
    shelf
        The paints that are in use.
    """
    mixes = mixes_in_use(job)
    if job is None or len(mixes) < 2:
        return ()
    own = [mix.zone for mix in mixes if mix.zone != WHOLE_PIECE]
    named = painted_zones(job) or (*own, _REST)
    groups: dict[Recipe, list[str]] = {}
    for mix in sorted(mixes, key=lambda mix: mix.zone == WHOLE_PIECE):
        groups.setdefault(_recipe(mix), []).extend(parts_of_mix(mix.zone, own, named))
    if len(groups) < 2:
        return ()
    dry = {_recipe(mix): mix.dry for mix in mixes}
    piece, ml = _read(job, PIECE_PART, Piece), _ml_by_zone(job, mixes, shelf)
    pots = [
        Pot(_seen(zones, piece), dry[recipe], ml.get(zones[0])) for recipe, zones in groups.items()
    ]
    mixed = {zone for zones in groups.values() for zone in zones}
    bare = [zone for zone in named if zone not in mixed and zone != _REST]
    return (*pots, Pot(_seen(bare, piece))) if bare else tuple(pots)


def _recipe(mix: KeptRecipe) -> Recipe:
    return tuple((paint.paint, paint.share) for paint in mix.paints)


def _seen(
    zones: Sequence[str], piece: Piece | None
) -> tuple[tuple[str, tuple[Which, ...] | None], ...]:
    """Give parts with the sides from which each is seen."""
    return tuple(
        (zone, None if piece is None or zone == _REST else sides_of_zone(piece, zone))
        for zone in zones
    )


def _ml_by_zone(job: Job, mixes: Sequence[KeptRecipe], shelf: Shelf) -> dict[str, float]:
    """Give what is mixed at once of the paint of each part, as the page of the piece tells it."""
    piece = _read(job, PIECE_PART, Piece)
    if piece is None:
        return {}
    form = _read(job, FORM_PART, PieceForm) or PieceForm(None)
    there = {paint.id for paint in shelf.paints}
    try:
        found = mixes_by_zone(piece, mixes, None)
        known = {zone: m for zone, m in found.items() if there.issuperset(i for i, _ in m.parts)}
        order = order_for_job(form, piece, known, shelf, AtHand(), beside=beside_in(job))
        amounts = amounts_for(_without_tins(order))
    except MendableError:
        return {}
    ml = {b.product: b.mix_ml for b in amounts.batches if b.kind is ProductKind.PAINT}
    return {
        row.zone: ml[row.product]
        for row in amounts.coatings
        if row.product in ml and row.zone in known
    }


def _without_tins(order: AmountsOrder) -> AmountsOrder:
    """Leave out what is sold: to choose among tins takes long, and changes nothing of a batch."""
    products = tuple(
        replace(one, ingredients=tuple(replace(paint, tins=()) for paint in one.ingredients))
        for one in order.products
    )
    return replace(order, products=products)


def _read(job: Job, part: str, kind: type[T]) -> T | None:
    """Give a part of a job; None where there is none, or it cannot be read."""
    with suppress(MendableError):
        document = job.document(part)
        return None if document is None else document.read(kind)
    return None


def pots_at_coats(pots: Sequence[Pot], planned: int, reckoned: int) -> tuple[Pot, ...]:
    """Leave out how much is mixed where it was reckoned for other coats than are planned."""
    return tuple(pots) if planned == reckoned else tuple(replace(pot, ml=None) for pot in pots)


def coats_of_piece(form: PieceForm | None) -> int:
    """Give the coats of paint that the amounts of a piece are reckoned for."""
    return (form or PieceForm(None)).coats.paint


def with_pots(order: PlanOrder, job: Job, shelf: Shelf) -> PlanOrder:
    """Let an order have the pots of a job.

    Parameters
    ----------
    order
        What is set so far.
    job
        Which one.
    shelf
        The paints that are in use.
    """
    coats = coats_of_piece(_read(job, FORM_PART, PieceForm))
    return replace(order, pots=pots_at_coats(pots_in(job, shelf), order.coats, coats))
