"""The plan of a job: what its other parts say of the piece, and of what goes on it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from swatchwright.acts.piece import sized
from swatchwright.acts.piece_job import PieceForm
from swatchwright.acts.plan import faces_of
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.layers import LayerKind, Stack
from swatchwright.paint.paints import Paint
from swatchwright.piece.part import Piece
from swatchwright.piece.work.coats import usual_primer
from swatchwright.piece.work.order import Carrier, FinishKind, Lead, PaintTimes, PlanOrder, Primer
from swatchwright.piece.work.times import finish_times, paint_times, primer_times
from swatchwright.shelf.jobs import KeptRecipe
from swatchwright.shelf.shelf import Shelf

__all__ = [
    "Elsewhere",
    "Product",
    "answered",
    "following",
    "paints_in_use",
    "products_in",
    "usual_times",
]

_FINISHES = {
    LayerKind.WAX: FinishKind.WAX,
    LayerKind.OIL: FinishKind.OIL,
    LayerKind.VARNISH: FinishKind.VARNISH,
}


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
    """

    piece: Piece | None = None
    form: PieceForm | None = None
    stack: Stack | None = None
    paints: tuple[Paint, ...] = ()


def following(order: PlanOrder, told: Elsewhere, *, coats: bool = True) -> PlanOrder:
    """Let an order follow what is said elsewhere of the piece and, if asked, of what goes on.

    Parameters
    ----------
    order
        What is set so far; what is said nowhere else stays.
    told
        What is said elsewhere.
    coats
        Whether coats, washes, finish and carrier follow too, or only the piece.
    """
    if told.piece is not None:
        order = replace(
            order,
            name=told.piece.name,
            area=max(0.01, round(sized(told.piece).areas.total, 2)),
            faces=faces_of(told.piece),
            flat=told.piece.flat,
        )
    return _coats(order, told) if coats else order


def _coats(order: PlanOrder, told: Elsewhere) -> PlanOrder:
    if told.form is not None:
        on = told.form.coats
        order = replace(order, coats=max(1, on.paint), washes=on.wash)
        if on.primer:
            named = order.primer not in {None, Primer.NONE}
            primer = order.primer if named else Primer.ORDINARY
            order = replace(order, primer=primer, primer_coats=on.primer)
        if on.clear:
            finish = FinishKind.VARNISH if order.finish is FinishKind.NONE else order.finish
            order = replace(order, finish=finish, finish_coats=on.clear)
    if told.stack is not None:
        last, coats = _finish(told.stack)
        washes = _washes(told.stack)
        order = replace(order, washes=washes, finish=last, finish_coats=coats)
    if told.paints:
        water = all(paint.finish.waterborne for paint in told.paints)
        order = replace(order, carrier=Carrier.WATER if water else Carrier.SOLVENT)
    return order


def _washes(stack: Stack) -> int:
    return min(_MOST_COATS, sum(layer.passes for layer in stack.layers if layer.is_paint))


def _finish(stack: Stack) -> tuple[FinishKind, int]:
    """Give what goes on last, with its coats; a plan has one finish, the one laid last."""
    clear = [layer for layer in stack.layers if not layer.is_paint and layer.passes]
    if not clear:
        return FinishKind.NONE, 1
    last = clear[-1].kind
    coats = sum(layer.passes for layer in clear if layer.kind is last)
    return _FINISHES[last], min(_MOST_COATS, coats)


# --- times ---------------------------------------------------------------------------------------

Product = str
"""`primer`, `paint`, `wash` or `finish`, as in the names of an order's times."""


def products_in(order: PlanOrder) -> Sequence[Product]:
    """Name what is put on by an order, in its turn."""
    primed = usual_primer(order)[1] > 0
    there = {
        "primer": primed,
        "paint": True,
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
