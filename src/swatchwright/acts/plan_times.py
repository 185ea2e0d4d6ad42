"""How long what a plan puts on dries: what its tins say, and what is usual."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from swatchwright.piece.work.coats import usual_primer
from swatchwright.piece.work.order import FinishKind, PaintTimes, PlanOrder
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import Until, finish_times, paint_times, primer_times
from swatchwright.piece.work.waits import wait_of_coat

__all__ = [
    "FINISHES",
    "Product",
    "products_in",
    "rag_wait",
    "tin_times",
    "usual_times",
    "with_tin_times",
]

FINISHES = {kind.value: kind for kind in (FinishKind.WAX, FinishKind.OIL, FinishKind.VARNISH)}
"""The clear finishes by what they are called."""

Product = str
"""`primer`, `paint`, `wash` or `finish`, as in the names of an order's times.

Where there are several finishes they are `wax`, `oil` and `varnish` instead of `finish`.
"""


def products_in(order: PlanOrder) -> Sequence[Product]:
    """Name what is put on by an order, in its turn; of several finishes what is brushed first."""
    several = order.finishes if order.tops else ()
    there = {
        "primer": usual_primer(order)[1] > 0 and not order.painted,
        "paint": not order.painted,
        "wash": order.washes > 0,
        "finish": order.finish is not FinishKind.NONE and not several,
        "varnish": FinishKind.VARNISH in several,
        "oil": FinishKind.OIL in several,
        "wax": FinishKind.WAX in several,
    }
    return tuple(name for name, used in there.items() if used)


def usual_times(order: PlanOrder, product: Product) -> PaintTimes:
    """Give how long a product of an order usually dries, where its tin is not asked."""
    if product == "primer":
        return primer_times(usual_primer(order)[0], order.carrier)
    if product == "finish":
        return finish_times(order.finish, order.carrier)
    if product in FINISHES:
        return finish_times(FINISHES[product], order.carrier)
    return paint_times(order.carrier)


def tin_times(order: PlanOrder, product: Product) -> PaintTimes | None:
    """Give what the tin of a product of an order says; None where it is not asked."""
    if product == "finish":
        return order.tin_of(order.finish)
    if product in FINISHES:
        return order.tin_of(FINISHES[product])
    named = {"primer": order.primer_times, "paint": order.paint_times, "wash": order.wash_times}
    return named[product]


def with_tin_times(order: PlanOrder, times: Mapping[Product, PaintTimes | None]) -> PlanOrder:
    """Let the tins of some products of an order say these times; those of others stay.

    What the tin of the one finish says goes on to be said of it where there come to be several.
    """
    told: dict[str, Any] = {f"{product}_times": value for product, value in times.items()}
    if "finish" in times and order.finish.value in FINISHES:
        told[f"{order.finish.value}_times"] = None
    if order.finish.value in times:
        told["finish_times"] = None
    return replace(order, **told)


def rag_wait(order: PlanOrder) -> float | None:
    """Give the minutes until a coat of an order bears a wet rag; None where none waits for it."""
    wait = wait_of_coat(order, StepKind.WASH)
    return wait.minutes if order.washes and wait.until is Until.RAG else None
