"""Whether a plan can be made, said in words that tell what to mend."""

from __future__ import annotations

from datetime import date
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.piece.work.apart import coats_on_part
from swatchwright.piece.work.order import FinishKind, Lead, PaintTimes, PlanOrder, Primer, Week
from swatchwright.piece.work.times import checked_room

__all__ = ["checked_plan_order", "first_day"]

_MOST_AREA = 100.0
_MOST_COATS = 10
_LONGEST = 60 * 24 * 60.0
_YEARS = (1970, 2100)


def checked_plan_order(order: PlanOrder) -> PlanOrder:
    """Give an order back if a plan can be made from it.

    Raises
    ------
    MendableError
        If what is on the piece may hold lead and nobody has said whether it does, if paint would
        not dry, or if something cannot be.
    """
    first_day(order.start)
    _check_lead(order)
    if not order.name.strip() or len(order.name) > 80 or not order.name.isprintable():
        raise MendableError(
            say("The piece has no name that can be read."), say("Name it in a few words.")
        )
    if not (isfinite(order.area) and 0 < order.area <= _MOST_AREA):
        raise MendableError(
            say("{area:g} m² are to be painted.", area=order.area),
            say("Give an area up to {most:g} m².", most=_MOST_AREA),
        )
    _check_coats(order)
    if not order.faces or len(set(order.faces)) < len(order.faces):
        raise MendableError(
            say("What is painted is not clear."), say("Name each side to paint once.")
        )
    _check_times(order.primer_times, mark("The times of the primer cannot be."))
    _check_times(order.paint_times, mark("The times of the paint cannot be."))
    _check_times(order.wash_times, mark("The times of the wash cannot be."))
    _check_times(order.finish_times, mark("The times of the finish cannot be."))
    _check_times(order.wax_times, mark("The times of the wax cannot be."))
    _check_times(order.oil_times, mark("The times of the oil cannot be."))
    _check_times(order.varnish_times, mark("The times of the varnish cannot be."))
    checked_room(order.room)
    _check_week(order.week)
    return order


def first_day(text: str) -> date:
    """Read a day, as 2026-12-01.

    Raises
    ------
    MendableError
        If it is none, or not from 1970 to 2100.
    """
    try:
        day = date.fromisoformat(text)
    except ValueError as error:
        raise MendableError(
            say("“{text}” is not a day.", text=text[:40]),
            say("Write year, month and day, as 2026-12-01."),
        ) from error
    if not _YEARS[0] <= day.year <= _YEARS[1]:
        raise MendableError(
            say("The plan would begin in {year}.", year=day.year), say("Look at the year again.")
        )
    return day


def _check_lead(order: PlanOrder) -> None:
    if order.lead_asked and order.lead is Lead.NOT_ANSWERED:
        raise MendableError(
            say("What is on the piece is old or unknown, and may hold lead."),
            say(
                "Have it tested before anything is rubbed, and say “tested negative”; or say "
                "“treat as lead”, and it is planned without dry sanding. Your local rules come "
                "first."
            ),
        )


def _check_coats(order: PlanOrder) -> None:
    finish = order.finish_coats if order.finish is not FinishKind.NONE else 0
    finish = max(finish, coats_on_part(order.tops))
    for trouble, coats, least in (
        (mark("{coats} coats of paint were asked for."), order.coats, 0),
        (mark("{coats} coats of primer were asked for."), order.primer_coats, 0),
        (mark("{coats} coats of wash were asked for."), order.washes, 0),
        (
            mark("{coats} coats of finish were asked for."),
            finish,
            0 if order.finish is FinishKind.NONE else 1,
        ),
    ):
        if not least <= coats <= _MOST_COATS:
            raise MendableError(
                say(trouble, coats=coats),
                say("Ask for {least} to {most}.", least=least, most=_MOST_COATS),
            )
    if order.painted and not order.washes and order.finish is FinishKind.NONE:
        raise MendableError(
            say("0 coats of paint were asked for, and neither a wash nor a finish."),
            say("Ask for a coat of paint, or for what goes over the paint that is on already."),
        )
    if order.primer is Primer.NONE and order.primer_coats:
        raise MendableError(
            say("Coats of primer were asked for, and no primer."),
            say("Name the primer, or leave it out."),
        )


def _check_times(times: PaintTimes | None, trouble: str) -> None:
    if times is None:
        return
    in_order = 0 <= times.touch_dry <= times.recoat <= times.hard <= _LONGEST
    if not in_order:
        raise MendableError(
            say(trouble),
            say(
                "Give touch dry, recoat and hard as the tin says, each no less than the one "
                "before, up to 60 days."
            ),
        )


def _check_week(week: Week) -> None:
    days = set(week.days)
    if not days or len(days) < len(week.days) or not days <= set(range(7)):
        raise MendableError(
            say("No working days were given."), say("Give days from Monday to Sunday once.")
        )
    if not 0 <= week.begin < week.end <= 24 * 60 or week.end - week.begin < 60:
        raise MendableError(
            say("The working hours cannot be."),
            say("Give an hour or more of one day, as 9:00-17:00."),
        )
