"""Amounts in whole millilitres, as they are told of a batch: they add up to what is told of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from swatchwright.measures.shares import rounded_amounts
from swatchwright.piece.amounts import Amounts, Batch

__all__ = ["MadeUp", "made_up", "needs_told", "poured"]


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


def _whole(amounts: Sequence[float], total: float) -> tuple[float, ...]:
    if round(total) < 1 or sum(amounts) <= 0:
        return (0.0,) * len(amounts)
    return rounded_amounts(amounts, total, 1.0)
