"""The coats of a piece as the other parts of its job say them, but for what is set by hand.

The finish says which washes and clear finishes go on, and of what. The plan says what is on the
piece now, and so which primer it takes. What is on it and its primer are one answer for piece and
plan: set on either, it is kept with both.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace

from swatchwright.acts.amounts import Coats
from swatchwright.acts.amounts_products import Over, coats_over, over_layers, spread_over
from swatchwright.acts.piece_form import FOLLOWING, PieceForm, own_coats
from swatchwright.acts.plan_own import own_answers
from swatchwright.paint.layers import Stack
from swatchwright.piece.order import ProductKind
from swatchwright.piece.spreading import Ground
from swatchwright.piece.work.coats import usual_primer
from swatchwright.piece.work.order import Lead, PlanOrder, Primer, Surface

__all__ = [
    "Beside",
    "Painted",
    "answers_of_piece",
    "followed",
    "ground_on",
    "plan_told",
    "set_by_hand",
    "told_by_plan",
]

_MOST_COATS = 10

_GROUNDS = {
    Surface.RAW: (Ground.BARE, Ground.ROUGH, Ground.PRIMED),
    Surface.PAINTED: (Ground.PAINTED,),
    Surface.VARNISHED: (Ground.SHINY,),
    Surface.WAXED: (Ground.PAINTED,),
    Surface.VENEER: (Ground.PAINTED,),
    Surface.LAMINATE: (Ground.SHINY,),
    Surface.METAL: (Ground.SHINY,),
    Surface.UNKNOWN: (Ground.UNKNOWN,),
}
"""How what is on a piece takes paint; the first where no more is said."""

_SURFACES = {
    Ground.BARE: Surface.RAW,
    Ground.ROUGH: Surface.RAW,
    Ground.PRIMED: Surface.RAW,
    Ground.PAINTED: Surface.PAINTED,
    Ground.SHINY: Surface.VARNISHED,
    Ground.UNKNOWN: Surface.UNKNOWN,
}


@dataclass(frozen=True, slots=True)
class Beside:
    """What other parts of a job say that a piece follows; None where they are not there.

    Parameters
    ----------
    stack
        What goes over the paint.
    plan
        The plan of work, as it is kept.
    """

    stack: Stack | None = None
    plan: PlanOrder | None = None


@dataclass(frozen=True, slots=True)
class Painted:
    """How a piece is painted, all told.

    Parameters
    ----------
    form
        The form with the coats that hold; what was set by hand is named in it.
    over
        What washes and clear finishes are, the lowest first.
    primer
        What the primer is called.
    """

    form: PieceForm
    over: tuple[Over, ...]
    primer: str

    @property
    def coats(self) -> Coats:
        """The coats that hold."""
        return self.form.coats


def ground_on(surface: Surface) -> Ground:
    """Give how what is on a piece takes paint, where no more is said."""
    return _GROUNDS[surface][0]


def followed(form: PieceForm, beside: Beside) -> Painted:
    """Let a form follow what is said elsewhere, but for what was set by hand."""
    own = own_coats(form)
    surface, ground = _what_is_on(form, beside, own)
    primer, primer_coats = _primer(form, beside, own, surface, ground)
    over = _over(form, beside, own)
    coats = replace(
        form.coats,
        primer=primer_coats,
        wash=_count(over, ProductKind.WASH),
        clear=_count(over, ProductKind.CLEAR),
        wash_thinned=_thinned(form, over, own),
        ground=ground,
    )
    told = replace(form, coats=coats, surface=surface, own=tuple(n for n in FOLLOWING if n in own))
    return Painted(told, over, primer.value)


def set_by_hand(before: PieceForm, after: PieceForm) -> PieceForm:
    """Mark as set by hand what differs from a form as it was shown.

    Parameters
    ----------
    before
        The form as `followed` gave it.
    after
        The same with what was changed.
    """
    own = own_coats(before) | {
        name for name in FOLLOWING if getattr(before.coats, name) != getattr(after.coats, name)
    }
    if before.surface is not after.surface:
        own |= {"ground"}
    return replace(after, own=tuple(name for name in FOLLOWING if name in own))


# --- washes and clear finishes -------------------------------------------------------------------


def _over(form: PieceForm, beside: Beside, own: Collection[str]) -> tuple[Over, ...]:
    over = over_layers(beside.stack)
    for name, kind in (("wash", ProductKind.WASH), ("clear", ProductKind.CLEAR)):
        told = int(getattr(form.coats, name)) if name in own else _count(over, kind)
        over = spread_over(over, kind, told)
    if "wash_thinned" not in own:
        return over
    return tuple(
        replace(one, thinned=form.coats.wash_thinned) if one.kind is ProductKind.WASH else one
        for one in over
    )


def _count(over: tuple[Over, ...], kind: ProductKind) -> int:
    """Give how often what is of a kind is laid, at most on any part of the piece."""
    return min(_MOST_COATS, coats_over(over, kind))


def _thinned(form: PieceForm, over: tuple[Over, ...], own: Collection[str]) -> float:
    """Give the water of the first wash, which stands for all where it is set by hand."""
    if "wash_thinned" in own:
        return form.coats.wash_thinned
    known = [one.thinned for one in over if one.kind is ProductKind.WASH and one.paints]
    return known[0] if known else Coats().wash_thinned


# --- what is on it now, and its primer -----------------------------------------------------------


def _what_is_on(form: PieceForm, beside: Beside, own: Collection[str]) -> tuple[Surface, Ground]:
    """Give what is on a piece; what is set with the plan comes before what is with the piece."""
    plan, ground = beside.plan, form.coats.ground
    if plan is not None and ("surface" in own_answers(plan) or "ground" not in own):
        fits = "ground" in own and ground in _GROUNDS[plan.surface]
        return plan.surface, ground if fits else ground_on(plan.surface)
    if "ground" not in own:
        return Surface.UNKNOWN, Ground.UNKNOWN
    fits = ground in _GROUNDS[form.surface]
    return form.surface if fits else _SURFACES[ground], ground


def _primer(
    form: PieceForm, beside: Beside, own: Collection[str], surface: Surface, ground: Ground
) -> tuple[Primer, int]:
    """Give the primer: set with the plan, with the piece, or as is usual on what is there."""
    blank = PlanOrder("piece", "2000-01-01", surface=surface)
    plan = beside.plan
    # Without paint nothing is primed: it is painted already.
    if not form.coats.paint and "primer" not in own:
        return Primer.NONE, 0
    if plan is not None and "primer" in own_answers(plan):
        return usual_primer(replace(plan, surface=surface))
    if "primer" in own:
        return usual_primer(_with_primer(blank, form.coats.primer))
    return (Primer.NONE, 0) if ground is Ground.PRIMED else usual_primer(blank)


def _with_primer(order: PlanOrder, coats: int) -> PlanOrder:
    """Let an order have so many coats of the primer that is usual on what is there."""
    if not coats:
        return replace(order, primer=Primer.NONE, primer_coats=0)
    named = order.primer not in {None, Primer.NONE}
    usual, _ = usual_primer(order if named else replace(order, primer=None, primer_coats=0))
    kind = Primer.ORDINARY if usual is Primer.NONE else usual
    return replace(order, primer=kind, primer_coats=coats)


def answers_of_piece(order: PlanOrder, form: PieceForm) -> PlanOrder:
    """Let a plan follow what is set with the piece: what is on it, and its primer."""
    answers, own = own_answers(order), own_coats(form)
    surface, ground = _what_is_on(form, Beside(plan=order), own)
    order = replace(order, surface=surface)
    if "primer" in answers:
        return order
    order = replace(order, primer=None, primer_coats=0)
    if "primer" in own:
        return _with_primer(order, form.coats.primer)
    return replace(order, primer=Primer.NONE) if ground is Ground.PRIMED else order


# --- one answer for both -------------------------------------------------------------------------


def plan_told(order: PlanOrder, form: PieceForm) -> PlanOrder:
    """Tell a plan what was set with the piece: what is on it, and its primer."""
    own, told = own_coats(form), set(own_answers(order))
    surface, _ = _what_is_on(form, Beside(), own)
    if "ground" in own and form.coats.ground not in _GROUNDS[order.surface]:
        order = replace(order, surface=surface)
        told.add("surface")
    elif "ground" in own and form.surface not in {order.surface, Surface.UNKNOWN}:
        order = replace(order, surface=form.surface)
        told.add("surface")
    if "primer" in own and usual_primer(order)[1] != form.coats.primer:
        order = _with_primer(order, form.coats.primer)
        told.add("primer")
    if not order.lead_matters:
        order = replace(order, lead=Lead.NOT_ANSWERED)
    return replace(order, own=tuple(sorted(told)))


def told_by_plan(form: PieceForm, order: PlanOrder) -> PieceForm:
    """Tell a form what was set with the plan: what is on the piece, and its primer."""
    own, coats = set(own_coats(form)), form.coats
    answers = own_answers(order)
    if "ground" in own and "surface" in answers and coats.ground not in _GROUNDS[order.surface]:
        coats = replace(coats, ground=ground_on(order.surface))
    if "ground" in own and "surface" in answers:
        form = replace(form, surface=order.surface)
    if "primer" in own and order.own is not None and order.primer is None:
        own.discard("primer")
    elif "primer" in own and "primer" in answers:
        coats = replace(coats, primer=usual_primer(order)[1])
    return replace(form, coats=coats, own=tuple(name for name in FOLLOWING if name in own))
