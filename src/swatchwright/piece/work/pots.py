"""Several colours on one piece: what is in which pot, and which colour goes where.

Colours of different parts are painted side by side, on the same days as one colour would be.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import reduce

from swatchwright.colour.names import colour_name
from swatchwright.language import listed, say
from swatchwright.piece.names import zone_word
from swatchwright.piece.work.order import PlanOrder, Pot, Which
from swatchwright.piece.work.task import StepKind
from swatchwright.piece.work.times import Source, Wait, drawn_out, wait_factor
from swatchwright.piece.work.waits import times_of
from swatchwright.values import Lab

__all__ = ["coat_how", "coat_title", "mix_how", "mix_title"]

_REST = ""
"""All of a piece but the parts that have a colour of their own."""


def mix_title(pots: Sequence[Pot]) -> str:
    """Name each pot: its colour, what it is for, and how much is mixed."""
    told = [_pot_said(pot, pot.dry) for pot in pots if pot.dry is not None]
    return say("Mix each colour whole, in one pot each: {pots}", pots="; ".join(told))


def _pot_said(pot: Pot, dry: Lab) -> str:
    colour, parts = colour_name(dry), _parts_said(pot)
    if pot.ml is None:
        return say("{colour} for the {parts}", colour=colour, parts=parts)
    return say("{colour} for the {parts}, {ml:.0f} ml", colour=colour, parts=parts, ml=pot.ml)


def _parts_said(pot: Pot) -> str:
    return listed(say("rest") if zone == _REST else zone_word(zone) for zone, _ in pot.on)


def mix_how(pots: Sequence[Pot]) -> str:
    """Say how the pots are mixed, and what has no mix yet."""
    told = say(
        "Mix all the paint for all coats of a colour at once, stir it well, close it, and write "
        "on the pot where it goes: a second batch never comes out quite the same."
    )
    return _with_bare(told, pots)


def coat_title(order: PlanOrder, n: int, seen: Sequence[Which]) -> str:
    """Name a coat of paint, and which colour goes where.

    Parameters
    ----------
    order
        What is planned.
    n
        Which coat, from 1.
    seen
        The sides that are painted while the piece stands so.
    """
    told = [
        say("{colour} on the {parts}", colour=colour_name(pot.dry), parts=_parts_said(pot))
        for pot in _standing(order.pots, seen)
        if pot.dry is not None
    ]
    if not told:
        return say("Paint, coat {n}", n=n)
    return say("Paint, coat {n}: {colours}", n=n, colours=reduce(_after, told))


def _after(told: str, following: str) -> str:
    # Not by a comma in every language: a colour's own name may have one.
    return say("{colours}, {following}", colours=told, following=following)


def coat_how(order: PlanOrder, how: str, seen: Sequence[Which]) -> str:
    """Say of a coat of paint what is to be cared for where two colours meet; see `coat_title`."""
    pots = _standing(order.pots, seen)
    several = len(pots) > 1
    return _with_bare(f"{how} {_where_they_meet(order)}" if several else how, pots)


def _where_they_meet(order: PlanOrder) -> str:
    """Say how long the one dries before it is masked. Common practice, no source."""
    dry, source = times_of(order, StepKind.COAT, order.finish)
    # As the wait for the next coat is drawn out by the room, so is this.
    wait = drawn_out(Wait(max(dry.recoat, dry.touch_dry)), wait_factor(order.room))
    hours = wait.minutes / 60
    if source is Source.TIN:
        return say(
            "Where two colours meet, cut in by hand, or let the first dry for {hours:g} h, by the "
            "time on its tin, before you mask over it, and take the tape off before the paint is "
            "hard (common practice, no source).",
            hours=hours,
        )
    return say(
        "Where two colours meet, cut in by hand, or let the first dry for {hours:g} h before you "
        "mask over it, and take the tape off before the paint is hard (common practice, no "
        "source).",
        hours=hours,
    )


def _with_bare(told: str, pots: Sequence[Pot]) -> str:
    """Add which parts have no mix yet."""
    bare = [_parts_said(pot) for pot in pots if pot.dry is None]
    if not bare:
        return told
    lacking = say("No mix is kept yet for this: {parts}.", parts=listed(bare))
    return f"{told} {lacking}"


def _standing(pots: Sequence[Pot], seen: Sequence[Which]) -> list[Pot]:
    """Give of each pot the parts that are painted now; not what is put on none."""
    found = [
        replace(pot, on=tuple(one for one in pot.on if one[1] is None or {*one[1]} & {*seen}))
        for pot in pots
    ]
    return [pot for pot in found if pot.on]
