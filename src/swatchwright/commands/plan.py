"""``swatchwright plan``."""

from __future__ import annotations

import argparse
import re
from pathlib import Path
from typing import Any

from swatchwright.acts.bench_shelf import shelf_in_use
from swatchwright.acts.jobs import id_of, job_of
from swatchwright.acts.plan import PlannedWork, faces_of, plan_for, save_calendar
from swatchwright.acts.plan_job import keep_plan, under_layers
from swatchwright.acts.plan_laid import washes_on
from swatchwright.acts.plan_pots import with_pots
from swatchwright.commands.amounts import one_of
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.finish import layers_given
from swatchwright.commands.for_job import keep_for_job
from swatchwright.commands.piece import chosen_piece
from swatchwright.commands.plan_text import plan_json, print_plan
from swatchwright.commands.store_words import named_store
from swatchwright.commands.words import chosen_shelf, print_json
from swatchwright.errors import MendableError
from swatchwright.piece.work.order import (
    Age,
    Carrier,
    FinishKind,
    Lead,
    PaintTimes,
    PlanOrder,
    Primer,
    Room,
    Surface,
    Use,
    Week,
    Which,
)
from swatchwright.piece.work.seen import loose_parts, sat_on

__all__ = ["plan"]

_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_HOURS = re.compile(r"(\d{1,2})(?::(\d\d))?\s*-\s*(\d{1,2})(?::(\d\d))?")


def plan(arguments: argparse.Namespace) -> ExitCode:
    """Print the work day by day."""
    order = _with_colours(_with_parts(_order(arguments), arguments), arguments)
    made: PlannedWork = plan_for(order)
    keep_for_job(arguments, lambda store, id_: keep_plan(store, id_, order))
    if arguments.ics:
        save_calendar(made.plan, Path(arguments.ics))
    if arguments.json:
        print_json(plan_json(made))
    else:
        print_plan(made)
        if arguments.ics:
            print(f"Written: {arguments.ics}")
    return ExitCode.DONE


def _order(arguments: argparse.Namespace) -> PlanOrder:
    return PlanOrder(
        **_piece(arguments),
        start=arguments.start,
        surface=one_of(Surface, arguments.surface, "--surface"),
        age=one_of(Age, arguments.age, "--age"),
        lead=one_of(Lead, arguments.lead, "--lead"),
        carrier=one_of(Carrier, arguments.carrier, "--carrier"),
        primer=None if arguments.primer is None else one_of(Primer, arguments.primer, "--primer"),
        primer_coats=arguments.primer_coats,
        coats=arguments.coats,
        washes=arguments.washes,
        finish=one_of(FinishKind, arguments.finish, "--finish"),
        finish_coats=arguments.finish_coats,
        stain_block=arguments.stains,
        repairs=arguments.repairs,
        fittings=not arguments.no_fittings,
        uses=tuple(one_of(Use, word, "--use") for word in _list(arguments.use)),
        primer_times=_times(arguments.primer_times, "--primer-times"),
        paint_times=_times(arguments.paint_times, "--paint-times"),
        wash_times=_times(arguments.wash_times, "--wash-times"),
        finish_times=_times(arguments.finish_times, "--finish-times"),
        wax_times=_times(arguments.wax_times, "--wax-times"),
        oil_times=_times(arguments.oil_times, "--oil-times"),
        varnish_times=_times(arguments.varnish_times, "--varnish-times"),
        room=Room(arguments.temperature, arguments.humidity, arguments.tin_allows),
        week=_week(arguments),
    )


def _with_parts(order: PlanOrder, arguments: argparse.Namespace) -> PlanOrder:
    """Let each wash, or each layer, go on the part that is named for it."""
    if arguments.layer or arguments.layers is not None:
        return _with_layers(order, arguments)
    zones = [word.strip() for word in _list(arguments.washes_on)]
    if not zones:
        return order
    if order.washes:
        raise MendableError("Both --washes and --washes-on were given.", "Leave one of them out.")
    found = chosen_piece(arguments)
    return washes_on(order, zones, None if found is None else found.piece)


def _with_colours(order: PlanOrder, arguments: argparse.Namespace) -> PlanOrder:
    """Let an order that is kept with a job have its colours, where they are several."""
    if arguments.for_job is None:
        return order
    store = named_store(arguments)
    try:
        job = job_of(store, id_of(store, arguments.for_job))
        return with_pots(order, job, shelf_in_use(store))
    finally:
        store.close()


def _with_layers(order: PlanOrder, arguments: argparse.Namespace) -> PlanOrder:
    """Let what goes over the paint be the layers that were given."""
    if order.washes or arguments.washes_on or order.finish is not FinishKind.NONE:
        raise MendableError(
            "Layers were given, and washes or a finish too.",
            "Give all that goes over the paint as layers, or leave --layer and --layers out.",
        )
    found = chosen_piece(arguments)
    shelf, stack = chosen_shelf(arguments), layers_given(arguments)
    return under_layers(order, stack, shelf, None if found is None else found.piece)


def _piece(arguments: argparse.Namespace) -> dict[str, Any]:
    """Give what is known of the piece itself: its name, area, faces, and how it lies."""
    found = chosen_piece(arguments)
    told: dict[str, Any] = {"name": arguments.name or "piece", "flat": arguments.flat}
    if found is not None:
        told = {
            "name": arguments.name or found.piece.name,
            "area": found.areas.total,
            "faces": faces_of(found.piece),
            "flat": arguments.flat or found.piece.flat,
            "loose": loose_parts(found.piece),
            "seat": sat_on(found.piece),
        }
    if arguments.area is not None:
        told["area"] = arguments.area
    if arguments.faces:
        told["faces"] = tuple(one_of(Which, word, "--faces") for word in _list(arguments.faces))
    return told


def _list(text: str | None) -> list[str]:
    return [word for word in (text or "").split(",") if word.strip()]


def _times(text: str | None, option: str) -> PaintTimes | None:
    if text is None:
        return None
    try:
        touch, recoat, hard = (60.0 * float(part) for part in text.split(","))
    except ValueError as error:
        raise MendableError(
            f"{option} was given “{text}”.",
            f"Give hours until touch dry, recoat and hard, as in {option} 1,4,72.",
        ) from error
    return PaintTimes(touch, recoat, hard)


def _week(arguments: argparse.Namespace) -> Week:
    names = [word.strip().lower()[:3] for word in _list(arguments.days)]
    if any(name not in _DAYS for name in names):
        raise MendableError(
            f"--days was given “{arguments.days}”.", "Write days as mon,tue,wed,thu,fri,sat,sun."
        )
    found = _HOURS.fullmatch(arguments.hours.strip())
    if found is None:
        raise MendableError(f"--hours was given “{arguments.hours}”.", "Write them as 9:00-17:00.")
    begin, begin_minute, end, end_minute = (int(part or 0) for part in found.groups())
    days = tuple(sorted(_DAYS.index(name) for name in names))
    return Week(days, 60 * begin + begin_minute, 60 * end + end_minute)
