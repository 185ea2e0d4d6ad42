"""Which answers of a plan were set by hand, and follow no other page."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.piece.work.order import PlanOrder

__all__ = ["ANSWERS", "answers_set", "own_answers", "plan_coats_apart"]

ANSWERS: dict[str, tuple[str, ...]] = {
    "surface": ("surface",),
    "carrier": ("carrier",),
    "primer": ("primer", "primer_coats"),
    "coats": ("coats",),
    "washes": ("washes",),
    "finish": ("finish", "finish_coats", "topped"),
}
"""The answers that follow what other parts of the job say, and the fields that hold each."""


def own_answers(order: PlanOrder) -> frozenset[str]:
    """Name the answers that were set by hand; where that is not told, those that are unusual."""
    if order.own is not None:
        return frozenset(order.own)
    return _unlike(PlanOrder(order.name, order.start), order)


def answers_set(before: PlanOrder, after: PlanOrder) -> PlanOrder:
    """Mark as set by hand what differs from an order as it was shown.

    A primer that is as is usual again follows again.

    Parameters
    ----------
    before
        The order as it was shown, following what is said elsewhere.
    after
        The same with what was changed.
    """
    own = own_answers(before) | _unlike(before, after)
    if after.primer is None and not after.primer_coats:
        own -= {"primer"}
    return replace(after, own=tuple(sorted(own)))


def plan_coats_apart(plan: PlanOrder | None, paint: int) -> int | None:
    """Give the coats of paint set with a plan where the piece has others; None where they agree.

    Parameters
    ----------
    plan
        The plan as it is kept; None where there is none.
    paint
        Coats of paint set with the piece.
    """
    if plan is None or "coats" not in own_answers(plan) or plan.coats == paint:
        return None
    return plan.coats


def _unlike(one: PlanOrder, other: PlanOrder) -> frozenset[str]:
    return frozenset(
        answer
        for answer, fields in ANSWERS.items()
        if any(getattr(one, name) != getattr(other, name) for name in fields)
    )
