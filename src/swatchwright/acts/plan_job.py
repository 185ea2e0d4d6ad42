"""The plan of a job: what its other parts say of the piece, and of what goes on it."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from swatchwright.acts.amounts_products import Over, coats_over, over_layers
from swatchwright.acts.client_wish import ClientWishes, Stands
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import part_label
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_follow import Beside, answers_of_piece, followed, told_by_plan
from swatchwright.acts.piece_form import PieceForm
from swatchwright.acts.piece_job import FORM_PART, PIECE_PART
from swatchwright.acts.plan import faces_of
from swatchwright.acts.plan_laid import as_often, check_zones, laid_in, topped_in
from swatchwright.acts.plan_own import own_answers
from swatchwright.acts.plan_pots import coats_of_piece, pots_at_coats, pots_in
from swatchwright.acts.plan_times import (
    FINISHES,
    Product,
    products_in,
    rag_wait,
    tin_times,
    usual_times,
    with_tin_times,
)
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.layers import Stack, check_stack
from swatchwright.paint.paints import Paint
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.work.order import Carrier, FinishKind, Laid, Lead, PlanOrder, Pot
from swatchwright.piece.work.seen import loose_parts, sat_on
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

__all__ = [
    "FINISH_PART",
    "PLAN_PART",
    "Elsewhere",
    "Product",
    "answered",
    "following",
    "keep_plan",
    "laid_in",
    "paints_in_use",
    "plan_of_job",
    "pots_in",
    "products_in",
    "rag_wait",
    "said_painted",
    "tin_times",
    "topped_in",
    "under_layers",
    "usual_times",
    "with_tin_times",
]

T = TypeVar("T")

PLAN_PART, FINISH_PART = "plan", "finish"
"""Names of the parts of a job: the plan of work, and what goes over the paint."""

_MOST_COATS = 10


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """What other parts of a job say that a plan is made from; None or empty where they are not.

    Parameters
    ----------
    piece, form
        The piece, and how it is painted.
    stack
        What goes over the paint.
    paints
        What the chosen mixes are made of.
    laid
        What the washes are stirred of, and where they go; see `laid_in`.
    topped
        On which parts the finish goes; see `topped_in`.
    pots
        The colours of the paint where there are several; see `pots_in`.
    """

    piece: Piece | None = None
    form: PieceForm | None = None
    stack: Stack | None = None
    paints: tuple[Paint, ...] = ()
    laid: tuple[Laid, ...] = ()
    topped: tuple[Laid, ...] = ()
    pots: tuple[Pot, ...] = ()


def following(order: PlanOrder, told: Elsewhere) -> PlanOrder:
    """Let an order follow what is said elsewhere, but for the answers that were set by hand.

    Parameters
    ----------
    order
        What is set so far; what is said nowhere else stays.
    told
        What is said elsewhere.
    """
    # Once washes and coats are followed, what was set by hand cannot be told by what is unusual.
    order = replace(order, own=tuple(sorted(own_answers(order))))
    if told.piece is not None:
        order = replace(
            order,
            name=told.piece.name,
            area=max(0.01, round(sized(told.piece).areas.total, 2)),
            faces=faces_of(told.piece),
            flat=told.piece.flat,
            loose=loose_parts(told.piece),
            seat=sat_on(told.piece),
        )
    if told.form is not None:
        order = answers_of_piece(order, told.form)
    return _coats(order, told, own_answers(order))


def _coats(order: PlanOrder, told: Elsewhere, own: Collection[str]) -> PlanOrder:
    # What goes where is set by hand only together with which finish it is.
    order = replace(order, laid=told.laid, topped=order.tops if "finish" in own else ())
    if told.form is not None and "coats" not in own:
        order = replace(order, coats=told.form.coats.paint)
    pots = pots_at_coats(told.pots, order.coats, coats_of_piece(told.form))
    order = replace(order, pots=pots)
    # Where nothing is told any more, as after a finish is taken back, nothing is laid.
    over = _on_piece(followed(told.form or PieceForm(None), Beside(told.stack)).over, told)
    if "washes" not in own:
        order = replace(order, washes=_washes(over))
    if "finish" not in own:
        last, coats = _finish(over)
        topped = as_often(told.topped, over)
        order = replace(order, finish=last, finish_coats=coats, topped=topped)
    if told.paints and "carrier" not in own:
        water = all(paint.finish.waterborne for paint in told.paints)
        order = replace(order, carrier=Carrier.WATER if water else Carrier.SOLVENT)
    return order


def under_layers(
    order: PlanOrder, stack: Stack, shelf: Shelf, piece: Piece | None = None
) -> PlanOrder:
    """Let an order have these washes and clear finishes, each where it goes.

    Parameters
    ----------
    order
        What is set so far.
    stack
        What goes over the paint.
    shelf
        The paints that the washes are stirred of.
    piece
        The piece; None where it is not sized.

    Raises
    ------
    MendableError
        If a layer cannot be, or the piece has no such part.
    """
    check_stack(stack)
    check_zones(stack.zones, piece)
    over = over_layers(stack)
    last, coats = _finish(over)
    # Each tells which finish it is, so that it stays where it was set by hand.
    topped = [replace(one, finish=one.finish or last) for one in topped_in(stack, piece)]
    return replace(
        order,
        laid=laid_in(stack, shelf, piece),
        washes=_washes(over),
        finish=last,
        finish_coats=coats,
        topped=tuple(topped),
    )


def _on_piece(over: Sequence[Over], told: Elsewhere) -> tuple[Over, ...]:
    """Leave out what is for a part that the piece does not have."""
    gone = {laid.zone for laid in (*told.laid, *told.topped) if laid.faces == ()}
    return tuple(one for one in over if one.zone not in gone)


def _washes(over: Sequence[Over]) -> int:
    return min(_MOST_COATS, coats_over(over, ProductKind.WASH))


def _finish(over: Sequence[Over]) -> tuple[FinishKind, int]:
    """Give what goes on last, with its coats; where there are several, `topped_in` tells them.

    A clear finish of which no more is known is taken for a varnish.
    """
    clear = [one for one in over if one.kind is ProductKind.CLEAR]
    if not clear:
        return FinishKind.NONE, 1
    last = clear[-1].name
    coats = coats_over([one for one in clear if one.name == last], ProductKind.CLEAR)
    return FINISHES.get(last, FinishKind.VARNISH), min(_MOST_COATS, coats)


def said_painted(wishes: ClientWishes | None, colours: Collection[Lab] = ()) -> bool:
    """Tell whether it was said of a colour that it is on the piece, and of none that it is not.

    Parameters
    ----------
    wishes
        What was said.
    colours
        Those that are wanted by now; of another nothing counts. Any where there are none.
    """
    said = {one.stands for one in (() if wishes is None else wishes.among(colours).stand)}
    return said == {Stands.PAINTED}


def plan_of_job(job: Job, shelf: Shelf) -> PlanOrder | None:
    """Give the order of a job's plan as its other parts say now; None where it has none.

    Parameters
    ----------
    job
        Which one.
    shelf
        The paints that are in use.
    """
    order = _read(job, PLAN_PART, PlanOrder)
    if order is None:
        return None
    stack = _read(job, FINISH_PART, Stack)
    piece, form = _read(job, PIECE_PART, Piece), _read(job, FORM_PART, PieceForm)
    told = Elsewhere(
        piece,
        form,
        stack,
        paints_in_use(mixes_in_use(job), None, shelf),
        laid_in(stack, shelf, piece, form),
        topped_in(stack, piece, form),
        pots_in(job, shelf),
    )
    return following(order, told)


def _read(job: Job, part: str, kind: type[T]) -> T | None:
    document = job.document(part)
    return None if document is None else document.read(kind)


# --- kept ----------------------------------------------------------------------------------------


def keep_plan(store: Store, id_: str, order: PlanOrder) -> Changes:
    """Keep the plan of a job; what is on the piece and its primer are told to its piece as well.

    Raises
    ------
    MendableError
        If there is no such job.
    """
    with store.editing("The plan") as edit:
        job = job_rows.read_job(edit.connection, id_)
        edit.call(part_label(PLAN_PART, job.title))
        keep_document(store, id_, PLAN_PART, order)
        form = _read(job, FORM_PART, PieceForm)
        if form is not None and (told := told_by_plan(form, order)) != form:
            keep_document(store, id_, FORM_PART, told)
        return edit.changes


def paints_in_use(
    kept: Sequence[KeptRecipe], first: Recipe | None, shelf: Shelf
) -> tuple[Paint, ...]:
    """Give the paints of the chosen recipes that the shelf has, or else those of the first mix."""
    ids = {paint.paint for recipe in kept if recipe.chosen for paint in recipe.paints}
    if not ids:
        return () if first is None else first.paints
    return tuple(paint for paint in shelf.paints if paint.id in ids)


def answered(order: PlanOrder) -> PlanOrder:
    """Forget an answer about lead that is no longer asked for.

    What was tested may not be said of another coat: she is asked anew when it matters again.
    """
    return order if order.lead_matters else replace(order, lead=Lead.NOT_ANSWERED)
