"""The plan of a job: what its other parts say of the piece, and of what goes on it."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from swatchwright.acts.amounts_products import Over, coats_over
from swatchwright.acts.client_wish import ClientWishes, Stands
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.labels import part_label
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.piece import sized
from swatchwright.acts.piece_follow import Beside, answers_of_piece, followed, told_by_plan
from swatchwright.acts.piece_form import PieceForm
from swatchwright.acts.piece_job import FORM_PART, PIECE_PART
from swatchwright.acts.plan import faces_of
from swatchwright.acts.plan_laid import laid_in, topped_in
from swatchwright.acts.plan_own import own_answers
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.layers import Stack
from swatchwright.paint.paints import Paint
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.work.coats import usual_primer
from swatchwright.piece.work.order import Carrier, FinishKind, Laid, Lead, PaintTimes, PlanOrder
from swatchwright.piece.work.seen import loose_parts, sat_on
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import Until, finish_times, paint_times, primer_times
from swatchwright.piece.work.waits import wait_of_coat
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.store import Store

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
    "products_in",
    "rag_wait",
    "said_painted",
    "topped_in",
    "usual_times",
]

T = TypeVar("T")

PLAN_PART, FINISH_PART = "plan", "finish"
"""Names of the parts of a job: the plan of work, and what goes over the paint."""

_FINISHES = {kind.value: kind for kind in (FinishKind.WAX, FinishKind.OIL, FinishKind.VARNISH)}

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
    """

    piece: Piece | None = None
    form: PieceForm | None = None
    stack: Stack | None = None
    paints: tuple[Paint, ...] = ()
    laid: tuple[Laid, ...] = ()
    topped: tuple[Laid, ...] = ()


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
    order = replace(order, laid=told.laid, topped=())
    if told.form is not None and "coats" not in own:
        order = replace(order, coats=told.form.coats.paint)
    # Where nothing is told any more, as after a finish is taken back, nothing is laid.
    over = _on_piece(followed(told.form or PieceForm(None), Beside(told.stack)).over, told)
    if "washes" not in own:
        order = replace(order, washes=_washes(over))
    if "finish" not in own:
        last, coats = _finish(over)
        order = replace(order, finish=last, finish_coats=coats, topped=told.topped)
    if told.paints and "carrier" not in own:
        water = all(paint.finish.waterborne for paint in told.paints)
        order = replace(order, carrier=Carrier.WATER if water else Carrier.SOLVENT)
    return order


def _on_piece(over: Sequence[Over], told: Elsewhere) -> tuple[Over, ...]:
    """Leave out what is for a part that the piece does not have."""
    gone = {laid.zone for laid in (*told.laid, *told.topped) if laid.faces == ()}
    return tuple(one for one in over if one.zone not in gone)


def _washes(over: Sequence[Over]) -> int:
    return min(_MOST_COATS, coats_over(over, ProductKind.WASH))


def _finish(over: Sequence[Over]) -> tuple[FinishKind, int]:
    """Give what goes on last, with its coats; a plan has one finish, the one laid last.

    A clear finish of which no more is known is taken for a varnish.
    """
    clear = [one for one in over if one.kind is ProductKind.CLEAR]
    if not clear:
        return FinishKind.NONE, 1
    last = clear[-1].name
    coats = coats_over([one for one in clear if one.name == last], ProductKind.CLEAR)
    return _FINISHES.get(last, FinishKind.VARNISH), min(_MOST_COATS, coats)


def said_painted(wishes: ClientWishes | None) -> bool:
    """Tell whether it was said of a colour that it is on the piece, and of none that it is not."""
    said = {one.stands for one in (() if wishes is None else wishes.stand)}
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
        topped_in(stack, piece),
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


# --- times ---------------------------------------------------------------------------------------

Product = str
"""`primer`, `paint`, `wash` or `finish`, as in the names of an order's times."""


def products_in(order: PlanOrder) -> Sequence[Product]:
    """Name what is put on by an order, in its turn."""
    there = {
        "primer": usual_primer(order)[1] > 0 and not order.painted,
        "paint": not order.painted,
        "wash": order.washes > 0,
        "finish": order.finish is not FinishKind.NONE,
    }
    return tuple(name for name, used in there.items() if used)


def usual_times(order: PlanOrder, product: Product) -> PaintTimes:
    """Give how long a product of an order usually dries, where its tin is not asked."""
    if product == "primer":
        return primer_times(usual_primer(order)[0], order.carrier)
    if product == "finish":
        return finish_times(order.finish, order.carrier)
    return paint_times(order.carrier)


def rag_wait(order: PlanOrder) -> float | None:
    """Give the minutes until a coat of an order bears a wet rag; None where none waits for it."""
    wait = wait_of_coat(order, StepKind.WASH)
    return wait.minutes if order.washes and wait.until is Until.RAG else None


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
