"""The piece of a job: how it was sized and is painted, its mixes by zone, its order, kept in one.

What a painter sets for a piece is a `PieceForm`. From it, the mixes that are chosen and the shelf
follow the order of amounts and what of each zone is seen.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from typing import TypeVar

from swatchwright.acts.amounts import order_of
from swatchwright.acts.batches import WHOLE_PIECE, shelf_of_recipe
from swatchwright.acts.jobs import job_of, keep_document
from swatchwright.acts.labels import THE_PIECE
from swatchwright.acts.layers_by_part import layers_on
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_follow import Beside, followed, plan_told
from swatchwright.acts.piece_form import (
    PieceForm,
    form_for,
    form_of_parts,
    has_inside,
    piece_of_form,
)
from swatchwright.acts.stock import kept_shelf
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.layers import Stack
from swatchwright.paint.paints import Paint
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.part import Piece
from swatchwright.piece.tins import TinSize
from swatchwright.piece.work.order import PlanOrder
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

__all__ = [
    "AMOUNTS_PART",
    "FORM_PART",
    "PIECE_PART",
    "AtHand",
    "Beside",
    "PieceForm",
    "ZoneMix",
    "amounts_order_of",
    "at_hand",
    "beside_in",
    "form_for",
    "form_of_parts",
    "has_inside",
    "keep_piece",
    "keep_sized",
    "mixes_by_zone",
    "order_for_job",
    "piece_of_form",
]

PIECE_PART, AMOUNTS_PART, FORM_PART = "piece", "amounts", "piece-form"
"""Names of the parts of a job: the piece, its order of amounts, and what was set for both."""

Share = tuple[str, float]
T = TypeVar("T")


# --- mixes ---------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class ZoneMix:
    """The mix that is chosen for a zone: ids and shares of its paints, and its dry colour."""

    parts: tuple[Share, ...]
    dry: Lab


def mixes_by_zone(
    piece: Piece, kept: Sequence[KeptRecipe], first: Recipe | None
) -> dict[str, ZoneMix]:
    """Give the mix of each painted zone that has one.

    Parameters
    ----------
    piece
        The piece.
    kept
        The recipes of the job. One that is chosen for the whole piece serves every zone that has
        none of its own.
    first
        A mix that is on the bench and not chosen yet: it serves all zones where the job has no
        chosen one.
    """
    chosen = {recipe.zone: _kept_mix(recipe) for recipe in kept if recipe.chosen}
    whole = chosen.get(WHOLE_PIECE)
    if not chosen and first is not None:
        shares = zip(first.paints, first.shares, strict=True)
        whole = ZoneMix(tuple((paint.id, share) for paint, share in shares), first.dry)
    found = {zone.zone: chosen.get(zone.zone, whole) for zone in sized(piece).areas.zones}
    return {zone: mix for zone, mix in found.items() if mix is not None}


def _kept_mix(recipe: KeptRecipe) -> ZoneMix:
    return ZoneMix(tuple((paint.paint, paint.share) for paint in recipe.paints), recipe.dry)


@dataclass(frozen=True, slots=True)
class AtHand:
    """What the store knows of paints: those of kept recipes as they were, and what is left, ml."""

    paints: tuple[Paint, ...] = ()
    left: Mapping[str, float] = field(default_factory=dict)


def at_hand(store: Store, kept: Sequence[KeptRecipe]) -> AtHand:
    """Ask the store for the paints of chosen recipes, and for what is left of every paint."""
    found = [paint for r in kept if r.chosen for paint in shelf_of_recipe(store, r).paints]
    stocked = kept_shelf(store).stocked
    left = {s.paint.id: s.ml_left for s in stocked if s.ml_left is not None}
    return AtHand(tuple(found), left)


# --- the order -----------------------------------------------------------------------------------


def order_for_job(
    form: PieceForm,
    piece: Piece,
    mixes: Mapping[str, ZoneMix],
    shelf: Shelf,
    known: AtHand,
    *,
    beside: Beside | None = None,
) -> AmountsOrder:
    """Put together the order of amounts for a piece and its mixes.

    A paint is taken from the shelf, or, where that lacks it, as it was when its recipe was kept.
    What the form leaves open follows what other parts of the job say.

    Raises
    ------
    MendableError
        If nothing of the piece is painted, or a number cannot be.
    """
    zones = sized(piece).areas.zones
    if not zones:
        raise MendableError(
            say("No face of any part is painted."),
            say("Tick a painted face of a part in the list of parts."),
        )
    told = followed(form, _on_these(beside or Beside(), zones))
    paints = {paint.id: paint for paint in (*known.paints, *shelf.paints)}
    recipes = {
        zone: mix.parts for zone, mix in mixes.items() if all(id_ in paints for id_, _ in mix.parts)
    }
    over = tuple(
        one if all(id_ in paints for id_, _ in one.paints) else replace(one, paints=())
        for one in told.over
    )
    order = order_of(
        zones,
        told.coats,
        shelf=Shelf(shelf.name, tuple(paints.values())),
        recipes=recipes,
        terms=form.terms,
        sample_ml=form.sample_ml,
        touch_up=form.touch_up,
        over=over,
        primer=told.primer,
    )
    return _stocked(order, form.tins, {**known.left, **form.left})


def _on_these(beside: Beside, zones: Sequence[ZoneArea]) -> Beside:
    """Leave out the layers for parts that the piece does not have."""
    if beside.stack is None:
        return beside
    return replace(beside, stack=layers_on(beside.stack, [zone.zone for zone in zones]))


def _stocked(
    order: AmountsOrder, tins: Mapping[str, tuple[TinSize, ...]], left: Mapping[str, float]
) -> AmountsOrder:
    """Put in what is sold and left of each paint, as far as that is used."""
    return replace(
        order,
        products=tuple(
            replace(
                product,
                ingredients=tuple(
                    replace(
                        paint,
                        tins=tins.get(paint.id, paint.tins),
                        left_ml=left.get(paint.id, paint.left_ml),
                    )
                    for paint in product.ingredients
                ),
            )
            for product in order.products
        ),
    )


def amounts_order_of(store: Store, job: Job, shelf: Shelf) -> AmountsOrder | None:
    """Give the order of amounts of a job as all its parts say now; None where it has no piece.

    Parameters
    ----------
    store, job
        Which job.
    shelf
        The paints that are in use.

    Raises
    ------
    MendableError
        As `order_for_job`.
    """
    piece = _read(job, PIECE_PART, Piece)
    if piece is None:
        return None
    form = _read(job, FORM_PART, PieceForm) or PieceForm(None)
    mixes = mixes_by_zone(piece, mixes_in_use(job), None)
    known = at_hand(store, mixes_in_use(job))
    return order_for_job(form, piece, mixes, shelf, known, beside=beside_in(job))


def beside_in(job: Job) -> Beside:
    """Give what the other parts of a job say that its piece follows."""
    return Beside(_read(job, "finish", Stack), _read(job, "plan", PlanOrder))


def _read(job: Job, part: str, kind: type[T]) -> T | None:
    document = job.document(part)
    return None if document is None else document.read(kind)


# --- kept ----------------------------------------------------------------------------------------


def keep_piece(
    store: Store, id_: str, form: PieceForm | None, piece: Piece | None, order: AmountsOrder | None
) -> Changes:
    """Keep the piece of a job, what was set for it and its order of amounts, as one edit.

    What is None is taken away. What is on the piece and its primer are told to its plan as well.

    Raises
    ------
    MendableError
        If there is no such job, or one of them is too large to be kept.
    """
    with store.editing("The piece") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(THE_PIECE.format(job=job.title))
        for part, value in ((PIECE_PART, piece), (FORM_PART, form), (AMOUNTS_PART, order)):
            keep_document(store, id_, part, value)
        plan = _read(job, "plan", PlanOrder)
        if plan is not None and form is not None and (told := plan_told(plan, form)) != plan:
            keep_document(store, id_, "plan", told)
        return edit.changes


def keep_sized(
    store: Store,
    id_: str,
    form: PieceForm,
    piece: Piece,
    *,
    mixes: Mapping[str, ZoneMix],
    shelf: Shelf,
    known: AtHand,
) -> Changes:
    """Keep a piece with the order of amounts that follows from it; see `order_for_job`.

    Where there can be no order, as nothing is painted, the piece is kept without one.

    Raises
    ------
    MendableError
        As `keep_piece`.
    """
    order: AmountsOrder | None = None
    with suppress(MendableError):
        beside = beside_in(job_of(store, id_))
        order = order_for_job(form, piece, mixes, shelf, known, beside=beside)
    return keep_piece(store, id_, form, piece, order)
