"""What is told of the clear finishes of a plan: where they are weak, and what holds on what.

All of it is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from swatchwright.language import listed, mark, say, say_in
from swatchwright.piece.names import side_word, zone_word
from swatchwright.piece.work.apart import apart_rounds
from swatchwright.piece.work.coats import stances
from swatchwright.piece.work.order import FinishKind, Laid, PlanOrder, Which
from swatchwright.piece.work.rounds import rounds
from swatchwright.piece.work.waits import SLICK

__all__ = ["edges_told", "left_bare", "weak_told"]

_SEAT = "seat"
"""What the zone is called that is sat on."""

_WEAK = {
    FinishKind.WAX: mark(
        "Wax is weak where it is sat on, where children are and where food is: a varnish meant "
        "for that lasts better, and its label decides."
    ),
    FinishKind.OIL: mark(
        "Oil is weak where it is sat on, where children are and where food is: a varnish meant "
        "for that lasts better, and its label decides."
    ),
}

# What does not hold, or not well, over what; and what would do instead.
_OVER = {
    (FinishKind.WAX, FinishKind.VARNISH): mark(
        "Varnish does not hold on wax, and here it would go over it ({parts}). Lay the varnish "
        "before the wax, or only one of them there; wax that is on already is cleaned off first."
    ),
    (FinishKind.WAX, FinishKind.OIL): mark(
        "Oil cannot get through wax, and here it would go over it ({parts}). Lay the oil before "
        "the wax, or only one of them there; wax that is on already is cleaned off first."
    ),
    (FinishKind.OIL, FinishKind.VARNISH): mark(
        "Varnish holds on oil only when that has hardened all through, and here it would go over "
        "it ({parts}). Wait for that, do it only where both labels allow it, and try it first on "
        "an inside face."
    ),
    (FinishKind.VARNISH, FinishKind.OIL): mark(
        "Oil cannot get into varnish and stays sticky on it, and here it would go over it "
        "({parts}). Leave one of them out there; wax goes over varnish."
    ),
}


def weak_told(order: PlanOrder) -> str:
    """Say where a finish does not hold on what is below, and where it is weak for the use."""
    told = [*_does_not_hold(order), *(say(_WEAK[kind]) for kind in _weak_for_use(order))]
    return " ".join(told)


def _weak_for_use(order: PlanOrder) -> Iterator[FinishKind]:
    """Give the wax or the oil that is weak for how the piece is used."""
    sat_on = order.seat and not order.tops
    last = {zone: _laid_on(order, zone)[-1:] for zone in _zones(order)}
    for kind in order.finishes:
        seat = last.get(_SEAT, last.get("", []))
        on_seat = order.seat and kind in seat
        if kind in SLICK and (order.uses or sat_on or on_seat):
            yield kind


def _does_not_hold(order: PlanOrder) -> Iterator[str]:
    """Say what goes over what it does not hold on, each pair with its parts."""
    found: dict[tuple[FinishKind, FinishKind], list[str]] = {}
    for zone in _zones(order):
        for pair in dict.fromkeys(pairwise(_laid_on(order, zone))):
            found.setdefault(pair, []).append(zone)
    for pair, zones in found.items():
        if pair in _OVER:
            # What is so where nothing is for one part alone is so on all of the piece.
            yield say(
                _OVER[pair],
                parts=say_in("what a layer goes on", "all of it") if "" in zones else _parts(zones),
            )


def _zones(order: PlanOrder) -> tuple[str, ...]:
    """Name the parts with finishes of their own, after the rest of the piece, which is empty."""
    return tuple(dict.fromkeys(["", *(one.zone for one in _there(order))]))


def _there(order: PlanOrder) -> list[Laid]:
    return [one for one in order.tops if one.faces != () and one.passes]


def _laid_on(order: PlanOrder, zone: str) -> list[FinishKind]:
    """Give the clear finishes on a part, the lowest first."""
    return [one.finish for one in _there(order) if one.zone in {"", zone} and one.finish]


def _parts(zones: list[str]) -> str:
    return listed(zone_word(zone) for zone in zones)


def edges_told(order: PlanOrder) -> list[str]:
    """Say what to mind where a varnished part meets one that is waxed or oiled."""
    slick = [kind for kind in order.finishes if kind in SLICK]
    on = {zone: set(_laid_on(order, zone)) for zone in _zones(order)}
    apart = any(kinds == {FinishKind.VARNISH} for kinds in on.values())
    if not slick or not apart:
        return []
    return [
        say(
            "Varnish does not hold on an edge with {finish} on it: it is laid before the "
            "{finish}, and the {finish} stops short of it. To varnish again later, clean that edge "
            "first (common practice, no source).",
            finish=listed(say(kind.value) for kind in slick),
        )
    ]


def left_bare(order: PlanOrder) -> list[str]:
    """Say where no wax or oil goes, as it is laid only when the piece stands for the last time."""
    stood = stances(order)
    first = stood[0].faces
    if len(stood) < 2:
        return []
    return [
        _left_without(order, first[0], finish)
        for finish in order.finishes
        if finish in SLICK and _seen(order, finish, first)
    ]


def _seen(order: PlanOrder, finish: FinishKind, faces: tuple[Which, ...]) -> tuple[Which, ...]:
    """Give which of some faces a finish would be laid on."""
    if order.tops:
        laid = [one for level in apart_rounds(order) for one in level if one.finish is finish]
    else:
        laid = [one for level in rounds(order.topped, order.finish_coats) for one in level]
    return tuple(face for one in laid for face in one.seen_from(faces))


def _left_without(order: PlanOrder, face: Which, finish: FinishKind) -> str:
    side, named = side_word(face.value), say(finish.value)
    if order.painted and not order.washes:
        return say("Its {side} is left without {finish}.", side=side, finish=named)
    return say(
        "Its {side} is left without {finish}: hands would carry it to where paint is "
        "still to hold.",
        side=side,
        finish=named,
    )
