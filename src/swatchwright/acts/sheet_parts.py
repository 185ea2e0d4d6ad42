"""The other parts of a job as a sheet tells them: its piece, its plan, its finish, its cautions."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import TypeVar

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.piece_job import (
    FORM_PART,
    PIECE_PART,
    PieceForm,
    at_hand,
    mixes_by_zone,
    order_for_job,
)
from swatchwright.acts.plan import plan_for
from swatchwright.acts.stock import kept_shelf
from swatchwright.errors import MendableError
from swatchwright.language import figure, listed, mark, say
from swatchwright.paint.layers import LayerKind, Stack, check_stack
from swatchwright.paint.paints import Paint
from swatchwright.piece.amounts import Amounts, Batch, Purchase
from swatchwright.piece.names import paint_word, zone_word
from swatchwright.piece.order import ProductKind
from swatchwright.piece.part import Piece
from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.order import PlanOrder
from swatchwright.piece.work.plan import Plan, Step
from swatchwright.piece.work.times import Source
from swatchwright.sheet.content import BuyLine, CautionBox, PieceLine, PlanLine
from swatchwright.sheet.told import ml_text
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.shelf.store.store import Store

__all__ = [
    "JobParts",
    "buy_lines",
    "cautions_for",
    "day_text",
    "mixed_lines",
    "moment_text",
    "parts_of",
    "piece_lines",
    "plan_lines",
    "volume_of_zone",
]

T = TypeVar("T")

PLAN_PART, FINISH_PART = "plan", "finish"

_OILY = frozenset({LayerKind.OIL, LayerKind.WAX})
_DAYS = (
    *(mark("Mon"), mark("Tue"), mark("Wed"), mark("Thu"), mark("Fri")),
    *(mark("Sat"), mark("Sun")),
)


@dataclass(frozen=True, slots=True)
class JobParts:
    """What a job holds besides its colours; None or empty where it holds none.

    Parameters
    ----------
    amounts
        Of its piece.
    plan
        Of the work.
    layers
        Over the paint.
    gaps
        What there is and could not be used, and why.
    gaps_in
        Which parts these are: ``piece``, ``plan`` or ``finish``.
    """

    amounts: Amounts | None
    plan: Plan | None
    layers: Stack
    gaps: tuple[str, ...]
    gaps_in: tuple[str, ...]


def parts_of(store: Store, job: Job) -> JobParts:
    """Gather what a job holds; what cannot be used is left out, and why is told."""
    gaps: dict[str, str] = {}
    amounts = _try(gaps, "piece", lambda: _amounts(store, job))
    plan = _try(gaps, "plan", lambda: _plan(job))
    layers = _try(gaps, "finish", lambda: _layers(job))
    return JobParts(amounts, plan, layers or Stack(), tuple(gaps.values()), tuple(gaps))


_GAPS = {
    "piece": mark("The amounts for the piece are left out: {why}"),
    "plan": mark("The plan of work is left out: {why}"),
    "finish": mark("The finish is left out: {why}"),
}


def _try(gaps: dict[str, str], part: str, find: Callable[[], T | None]) -> T | None:
    try:
        return find()
    except MendableError as error:
        gaps[part] = say(_GAPS[part], why=f"{error.what} {error.mend}")
        return None


def _read(job: Job, part: str, kind: type[T]) -> T | None:
    document = job.document(part)
    return None if document is None else document.read(kind)


def _amounts(store: Store, job: Job) -> Amounts | None:
    piece = _read(job, PIECE_PART, Piece)
    if piece is None:
        return None
    form = _read(job, FORM_PART, PieceForm) or PieceForm(None)
    mixes = mixes_by_zone(piece, [_by_parts(recipe) for recipe in job.recipes], None)
    known = at_hand(store, job.recipes)
    return amounts_for(order_for_job(form, piece, mixes, kept_shelf(store).shelf, known))


def _by_parts(recipe: KeptRecipe) -> KeptRecipe:
    """Let a recipe count by its whole parts, as the rest of the sheet does."""
    whole = sum(paint.parts for paint in recipe.paints)
    return replace(recipe, paints=tuple(replace(p, share=p.parts / whole) for p in recipe.paints))


def _plan(job: Job) -> Plan | None:
    order = _read(job, PLAN_PART, PlanOrder)
    return None if order is None else plan_for(order).plan


def _layers(job: Job) -> Stack | None:
    stack = _read(job, FINISH_PART, Stack)
    if stack is not None:
        check_stack(stack)
    return stack


# --- as lines ------------------------------------------------------------------------------------


def piece_lines(amounts: Amounts) -> tuple[PieceLine, ...]:
    """Tell what each zone takes."""
    return tuple(
        PieceLine(
            zone_word(row.zone), _called(amounts, row.product), row.area, row.coats, row.need_ml
        )
        for row in amounts.coatings
    )


def _called(amounts: Amounts, product: str) -> str:
    """Give what a product is called: a mix by the zones that it is for."""
    kinds = {batch.product: batch.kind for batch in amounts.batches}
    if kinds.get(product) is not ProductKind.PAINT:
        return paint_word(product)
    zones = [zone_word(row.zone) for row in amounts.coatings if row.product == product]
    return say("mix for {zones}", zones=listed(zones))


def volume_of_zone(amounts: Amounts | None, zone: str, zones: Sequence[str]) -> float | None:
    """Give what is to be mixed at once for a zone of the sheet, ml; None where it is not known.

    Parameters
    ----------
    amounts
        Of the piece.
    zone
        The zone; the whole piece if it is not one of the piece's.
    zones
        All zones of the sheet: the whole piece is what none of them is.
    """
    if amounts is None:
        return None
    paints = {b.product: b.mix_ml for b in amounts.batches if b.kind is ProductKind.PAINT}
    here = [row for row in amounts.coatings if row.product in paints]
    named = [row.product for row in here if row.zone == zone]
    others = [row.product for row in here if row.zone not in zones]
    found = named or others
    return paints[found[0]] if found else None


def mixed_lines(amounts: Amounts) -> tuple[str, ...]:
    """Say of each product how much to mix at once, and why so much."""
    return tuple(_mixed(batch, _called(amounts, batch.product)) for batch in amounts.batches)


def _mixed(batch: Batch, called: str) -> str:
    told = [
        say(words, ml=ml)
        for words, ml, there in (
            (mark("{ml:.0f} to put on"), batch.need_ml, True),
            (mark("{ml:.0f} for a sample"), batch.sample_ml, bool(batch.sample_ml)),
            (mark("{ml:.0f} to touch up"), batch.touch_up_ml, bool(batch.touch_up_ml)),
            (mark("{ml:.0f} of it water or thinner"), batch.thinner_ml, batch.thinner_ml >= 0.5),
        )
        if there
    ]
    if batch.sample_ml or batch.touch_up_ml:
        words = mark("Mix at once {amount} of {what}: {told}.")
    else:
        words = mark("Have ready {amount} of {what}: {told}.")
    return say(words, amount=ml_text(batch.mix_ml), what=called, told=", ".join(told))


def buy_lines(amounts: Amounts) -> tuple[BuyLine, ...]:
    """Tell what is needed of each paint, and what to buy."""
    return tuple(BuyLine(paint_word(p.name), p.need_ml, _buy(p)) for p in amounts.purchases)


def _buy(purchase: Purchase) -> str:
    to_buy = _to_buy(purchase)
    if not purchase.left_ml:
        return to_buy
    left = ml_text(round(purchase.left_ml))
    return say("{amount} left; {to_buy}", amount=left, to_buy=to_buy)


def _to_buy(purchase: Purchase) -> str:
    if purchase.short_ml:
        return say("{amount} to get", amount=ml_text(round(purchase.short_ml)))
    if not purchase.tins:
        return say("nothing to buy")
    return listed(f"{tin.count} × {ml_text(tin.size.ml)}" for tin in purchase.tins)


def plan_lines(plan: Plan) -> tuple[PlanLine, ...]:
    """Tell the steps of a plan."""
    return tuple(
        PlanLine(day_text(step.start), _time(step), step.title, _wait(step)) for step in plan.steps
    )


def _time(step: Step) -> str:
    begin, end = step.start[11:], step.end[11:]
    if step.end[:10] != step.start[:10]:
        return say("{begin} to {day}, {end}", begin=begin, day=day_text(step.end), end=end)
    return begin if begin == end else f"{begin}–{end}"


def day_text(moment: str) -> str:
    """Give the day of a moment, as in “Tue 2026-12-01”."""
    day = datetime.fromisoformat(moment)
    return say(
        "{weekday} {year}-{month:02d}-{day:02d}",
        weekday=say(_DAYS[day.weekday()]),
        year=day.year,
        month=day.month,
        day=day.day,
    )


def moment_text(moment: str) -> str:
    """Give the day and the time of a moment, as in “Tue 2026-12-01 09:30”."""
    return say("{day} {time}", day=day_text(moment), time=moment[11:])


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
