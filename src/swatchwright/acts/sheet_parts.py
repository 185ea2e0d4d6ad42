"""The other parts of a job as a sheet tells them: its piece, its plan, its finish, its cautions."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import TypeVar

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.bench_shelf import shelf_in_use
from swatchwright.acts.finish_paints import paints_at_hand
from swatchwright.acts.layers_by_part import of_no_part
from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.piece_job import (
    FORM_PART,
    PIECE_PART,
    PieceForm,
    amounts_order_of,
    at_hand,
)
from swatchwright.acts.piece_size import outer_size
from swatchwright.acts.plan import plan_for, titled
from swatchwright.acts.plan_job import FINISH_PART, plan_of_job
from swatchwright.acts.sheet_amounts import Reckoned
from swatchwright.errors import MendableError
from swatchwright.language import figure, listed, mark, say
from swatchwright.language.dates import full_day, time_of_day
from swatchwright.paint.layers import LayerKind, Stack, check_stack
from swatchwright.paint.paints import Paint
from swatchwright.piece.names import zone_word
from swatchwright.piece.part import Piece
from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.plan import Plan, Step
from swatchwright.piece.work.times import Source
from swatchwright.sheet.content import CautionBox, PlanLine
from swatchwright.shelf.jobs import Job
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store

__all__ = [
    "JobParts",
    "cautions_for",
    "moment_text",
    "parts_of",
    "plan_lines",
]

T = TypeVar("T")

_OILY = frozenset({LayerKind.OIL, LayerKind.WAX})


@dataclass(frozen=True, slots=True)
class JobParts:
    """What a job holds besides its colours; None or empty where it holds none.

    Parameters
    ----------
    reckoned
        Amounts of its piece.
    plan
        Of the work.
    layers
        Over the paint.
    gaps
        What there is and could not be used, and why.
    gaps_in
        Which parts these are: ``piece``, ``plan`` or ``finish``.
    size
        Width, height and depth of its piece in words; empty where they are not known.
    """

    reckoned: Reckoned | None
    plan: Plan | None
    layers: Stack
    gaps: tuple[str, ...]
    gaps_in: tuple[str, ...]
    size: str = ""


def parts_of(store: Store, job: Job, in_use: Shelf | None = None) -> JobParts:
    """Gather what a job holds; what cannot be used is left out, and why is told.

    Parameters
    ----------
    store, job
        Which job.
    in_use
        As in `shelf_in_use`.
    """
    used = shelf_in_use(store, in_use)
    shelf = replace(used, paints=_with_layers(used, paints_at_hand(store, job, in_use)))
    gaps: dict[str, str] = {}
    reckoned = _try(gaps, "piece", lambda: _reckoned(store, job, shelf))
    plan = _try(gaps, "plan", lambda: _plan(job, shelf))
    layers = _try(gaps, "finish", lambda: _layers(job))
    if layers is not None and (lost := of_no_part(job, layers)):
        gaps["finish"] = say(_NO_PART, parts=listed(zone_word(part) for part in lost))
    size = ""
    with suppress(MendableError):
        size = _size(job)
    return JobParts(reckoned, plan, layers or Stack(), tuple(gaps.values()), tuple(gaps), size)


def _with_layers(shelf: Shelf, known: tuple[Paint, ...]) -> tuple[Paint, ...]:
    """Give the paints of a shelf, and after them those that layers may have and it lacks."""
    ids = {paint.id for paint in shelf.paints}
    return (*shelf.paints, *(paint for paint in known if paint.id not in ids))


_GAPS = {
    "piece": mark("The amounts for the piece are left out: {why}"),
    "plan": mark("The plan of work is left out: {why}"),
    "finish": mark("The finish is left out: {why}"),
}


_NO_PART = mark("Layers are left out for parts that the piece does not have: {parts}.")


def _try(gaps: dict[str, str], part: str, find: Callable[[], T | None]) -> T | None:
    try:
        return find()
    except MendableError as error:
        gaps[part] = say(_GAPS[part], why=f"{error.what} {error.mend}")
        return None


def _read(job: Job, part: str, kind: type[T]) -> T | None:
    document = job.document(part)
    return None if document is None else document.read(kind)


def _reckoned(store: Store, job: Job, shelf: Shelf) -> Reckoned | None:
    order = amounts_order_of(store, job, shelf)
    if order is None:
        return None
    return Reckoned(order, amounts_for(order), at_hand(store, mixes_in_use(job)).left)


def _size(job: Job) -> str:
    piece = _read(job, PIECE_PART, Piece)
    found = None if piece is None else outer_size(piece, _read(job, FORM_PART, PieceForm))
    if found is None:
        return ""
    width, height, depth = found
    return say(
        "{width:.0f} × {height:.0f} × {depth:.0f} mm", width=width, height=height, depth=depth
    )


def _plan(job: Job, shelf: Shelf) -> Plan | None:
    order = plan_of_job(job, shelf)
    return None if order is None else plan_for(order).plan


def _layers(job: Job) -> Stack | None:
    stack = _read(job, FINISH_PART, Stack)
    if stack is not None:
        check_stack(stack)
    return stack


# --- as lines ------------------------------------------------------------------------------------


def plan_lines(plan: Plan) -> tuple[PlanLine, ...]:
    """Tell the steps of a plan; of those of one name each tells which sides it goes on."""
    titles = [step.title for step in plan.steps]
    return tuple(
        PlanLine(
            full_day(step.start),
            _time(step),
            titled(step) if titles.count(step.title) > 1 else step.title,
            _wait(step),
        )
        for step in plan.steps
    )


def _time(step: Step) -> str:
    begin, end = time_of_day(step.start), time_of_day(step.end)
    if step.end[:10] != step.start[:10]:
        return say("{begin} to {day}, {end}", begin=begin, day=full_day(step.end), end=end)
    return begin if begin == end else f"{begin}–{end}"


def moment_text(moment: str) -> str:
    """Give the day and the time of a moment, as in “Tue 1 Dec 2026, 9:30”."""
    return say("{day}, {time}", day=full_day(moment), time=time_of_day(moment))


def _wait(step: Step) -> str:
    if not step.wait:
        return ""
    long = step.wait > 72 * 60
    days, hours = (
        say("{days:.3g} days", days=step.wait / 1440),
        f"{figure(step.wait / 60, '.2g')} h",
    )
    told = days if long else hours
    short = f"{step.wait:.0f} min" if step.wait < 60 else told
    return say("{wait} (the tin)", wait=short) if step.wait_from is Source.TIN else short


# --- cautions ------------------------------------------------------------------------------------


def cautions_for(
    paints: Iterable[Paint], layers: Stack, plan: Plan | None
) -> tuple[CautionBox, ...]:
    """Give the cautions of the plan, or the usual ones, and those of paints and layers."""
    dangers = [Danger.LEAD, Danger.DUST] if plan is None else [c.danger for c in plan.cautions]
    carriers = {paint.finish.waterborne for paint in paints}
    if False in carriers:
        dangers.append(Danger.SOLVENTS)
    if False in carriers or any(layer.kind in _OILY for layer in layers.layers):
        dangers.append(Danger.RAGS)
    dangers.append(Danger.CHILDREN)
    found = [CAUTIONS[danger] for danger in Danger if danger in dangers]
    return tuple(CautionBox(say(c.danger.value), say(c.why), say(c.do)) for c in found)
