"""Amounts as they are told: whole ml of a batch, tenths of what is poured.

They add up to what is told of them. Bench, sheet and commands all take their figures from here.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import floor

from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.pour import Pour
from swatchwright.piece.amounts import Amounts, Batch

__all__ = ["MadeUp", "bought_told", "made_up", "needs_told", "poured", "pours_told"]


@dataclass(frozen=True, slots=True)
class MadeUp:
    """What a batch is made up of, whole ml that add up to it.

    Parameters
    ----------
    need, sample, touch_up, rounding
        To put on, for a sample, to touch up, and to round up.
    """

    need: float
    sample: float
    touch_up: float
    rounding: float


def made_up(batch: Batch) -> MadeUp:
    """Tell what a batch is made up of; the largest remainders get what rounding leaves over."""
    parts = (batch.need_ml, batch.sample_ml, batch.touch_up_ml, batch.rounding_ml)
    return MadeUp(*_whole(parts, sum(parts)))


def poured(batch: Batch) -> tuple[float, ...]:
    """Tell how much of each paint of a batch is poured, and last how much water or thinner."""
    return _whole([*(paint.ml for paint in batch.paints), batch.thinner_ml], batch.mix_ml)


def needs_told(amounts: Amounts) -> tuple[float, ...]:
    """Tell what each row of the amounts takes; those of a product add up to what is to put on."""
    told = [0.0] * len(amounts.coatings)
    for batch in amounts.batches:
        rows = [i for i, row in enumerate(amounts.coatings) if row.product == batch.product]
        needs = _whole([amounts.coatings[i].need_ml for i in rows], made_up(batch).need)
        for i, need in zip(rows, needs, strict=True):
            told[i] = need
    return tuple(told)


def bought_told(amounts: Amounts) -> dict[str, float]:
    """Tell how much is needed of each paint, by its id: what is poured of it, of all batches."""
    told: dict[str, float] = {}
    for batch in amounts.batches:
        for paint, ml in zip(batch.paints, poured(batch), strict=False):
            told[paint.id] = told.get(paint.id, 0.0) + ml
    return told


def pours_told(pours: Sequence[Pour]) -> tuple[Pour, ...]:
    """Give what is poured in turn to the tenth of a ml, adding up to what there is of each paint.

    The portions of the last paint are alike; what rounding them down leaves over is held back. Of
    so little that a portion would be nothing, each is told as it is.
    """
    if not pours or not pours[-1].held_back:
        return tuple(replace(pour, ml=round(pour.ml, 1)) for pour in pours)
    *first, held = pours
    portions = [pour for pour in first if pour.paint.id == held.paint.id]
    portion = min(floor(10 * pour.ml + 1e-6) / 10 for pour in portions)
    if not portion:
        return tuple(pours)
    whole = [replace(p, ml=round(p.ml, 1)) for p in first if p.paint.id != held.paint.id]
    left = sum(pour.ml - portion for pour in portions) + held.ml
    return (*whole, *(replace(p, ml=portion) for p in portions), replace(held, ml=round(left, 1)))


def _whole(amounts: Sequence[float], total: float) -> tuple[float, ...]:
    if round(total) < 1 or sum(amounts) <= 0:
        return (0.0,) * len(amounts)
    return rounded_amounts(amounts, total, 1.0)
