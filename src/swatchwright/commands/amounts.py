"""``swatchwright amounts``."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from typing import TypeVar

from swatchwright.acts.amounts import Coats, amounts_for, order_of
from swatchwright.acts.amounts_products import Over, coats_over, over_layers
from swatchwright.acts.habits import habits
from swatchwright.acts.tins_typed import tins_told
from swatchwright.commands.amounts_text import amounts_json, print_amounts
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.finish import layers_given
from swatchwright.commands.piece import chosen_piece, split_pair
from swatchwright.commands.words import amount_of, chosen_shelf, print_json
from swatchwright.errors import MendableError
from swatchwright.paint.layers import check_stack
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import ProductKind, Terms
from swatchwright.piece.spreading import Ground, Tool
from swatchwright.piece.tins import TinSize

__all__ = ["amounts", "one_of"]

_SHORT = {"clear": ProductKind.CLEAR.value}

Choice = TypeVar("Choice", bound=StrEnum)


def amounts(arguments: argparse.Namespace) -> ExitCode:
    """Print how much paint a piece takes, and what that comes to."""
    zones, over = _zones(arguments), _over(arguments)
    order = order_of(
        zones,
        _with_over(_coats(arguments), over, zones),
        shelf=chosen_shelf(arguments) if arguments.recipe or over else None,
        recipes=_recipes(arguments),
        tins=dict(_tins(text, arguments.currency or "") for text in arguments.tins),
        left={
            _SHORT.get(name, name): _number(ml, "--left")
            for name, ml in (split_pair(t, "--left", "white-clean=200") for t in arguments.left)
        },
        terms=_terms(arguments),
        sample_ml=arguments.sample,
        touch_up=arguments.touch_up,
        over=over,
    )
    found = amounts_for(order)
    if arguments.json:
        print_json(amounts_json(found))
    else:
        print_amounts(found, order.terms.currency)
    return ExitCode.DONE


def one_of(kinds: type[Choice], text: str, option: str) -> Choice:
    """Read one of several words, in any case, with hyphens or spaces; its beginning will do.

    Raises
    ------
    MendableError
        If it is none of them, or the beginning of several.
    """
    wanted = text.strip().lower().replace("_", " ")
    plain = {kind: kind.value.replace("-", " ") for kind in kinds}
    wanted = wanted.replace("-", " ")
    exact = [kind for kind, words in plain.items() if words == wanted]
    begun = [kind for kind, words in plain.items() if wanted and words.startswith(wanted)]
    if len(found := exact or begun) == 1:
        return found[0]
    raise MendableError(f"{option} was given “{text}”.", f"Use one of: {', '.join(kinds)}.")


def _zones(arguments: argparse.Namespace) -> list[ZoneArea]:
    piece = chosen_piece(arguments)
    pairs = [split_pair(text, "--zone", "drawers=0.8") for text in arguments.zone]
    by_hand = [ZoneArea(name, _number(area, "--zone")) for name, area in pairs]
    if piece is not None and by_hand:
        raise MendableError("A piece was given, and zones by hand.", "Give one or the other.")
    zones = by_hand or ([] if piece is None else list(piece.areas.zones))
    if not zones:
        raise MendableError(
            "Nothing to be painted was given.", "Add --piece KIND, --parts FILE or --zone NAME=M2."
        )
    return zones


def _coats(arguments: argparse.Namespace) -> Coats:
    rates = {
        ProductKind.PAINT: arguments.paint_rate,
        ProductKind.PRIMER: arguments.primer_rate,
        ProductKind.WASH: arguments.wash_rate,
        ProductKind.CLEAR: arguments.clear_rate,
    }
    counts = (arguments.coats, arguments.primer, arguments.wash, arguments.clear)
    if min(counts) < 0:
        raise MendableError(f"{min(counts)} coats were asked for.", "Ask for 0 or more.")
    return Coats(
        primer=arguments.primer,
        paint=arguments.coats,
        wash=arguments.wash,
        clear=arguments.clear,
        rates={kind: rate for kind, rate in rates.items() if rate is not None},
        solids=arguments.solids,
        wash_thinned=arguments.thinned,
        ground=one_of(Ground, arguments.ground, "--ground"),
        tool=one_of(Tool, arguments.tool, "--tool"),
    )


def _over(arguments: argparse.Namespace) -> tuple[Over, ...]:
    """Give what goes over the paint by the layers that were given; none where none were."""
    if not arguments.layer and arguments.layers is None:
        return ()
    if arguments.wash or arguments.clear:
        raise MendableError(
            "Layers were given, and coats of a wash or a clear finish too.",
            "Give all that goes over the paint as layers, or leave --layer and --layers out.",
        )
    stack = layers_given(arguments)
    check_stack(stack)
    return over_layers(stack)


def _with_over(coats: Coats, over: Sequence[Over], zones: Sequence[ZoneArea]) -> Coats:
    """Let the coats be as many as the layers say, which go on parts that are there."""
    if not over:
        return coats
    there = [zone.zone for zone in zones]
    for one in over:
        if one.zone and one.zone not in there:
            raise MendableError(
                f"There is no part “{one.zone}”.", f"Use one of: {', '.join(there)}."
            )
    wash, clear = (coats_over(over, kind) for kind in (ProductKind.WASH, ProductKind.CLEAR))
    return replace(coats, wash=wash, clear=clear)


def _recipes(arguments: argparse.Namespace) -> dict[str, list[tuple[str, float]]]:
    found: dict[str, list[tuple[str, float]]] = {}
    for text in arguments.recipe:
        zone, _, parts = text.rpartition(":")
        if zone.strip() in found:
            raise MendableError(f"There are two recipes for “{zone}”.", "Give each zone one.")
        found[zone.strip()] = [amount_of(part) for part in parts.split(",")]
    return found


def _tins(text: str, money: str) -> tuple[str, tuple[TinSize, ...]]:
    name, sizes = split_pair(text, "--tins", "primer=750:22,2500:58")
    try:
        return _SHORT.get(name, name), tins_told(sizes, money)
    except MendableError as error:
        raise MendableError(f"--tins: {error.what}", error.mend) from error


def _terms(arguments: argparse.Namespace) -> Terms:
    return Terms(
        _decimal(arguments.hours, "--hours"),
        _decimal(arguments.hour_rate, "--hour-rate"),
        _decimal(arguments.margin, "--margin"),
        habits().money if arguments.currency is None else arguments.currency,
    )


def _number(text: str, option: str) -> float:
    try:
        return float(text)
    except ValueError as error:
        raise MendableError(f"{option} was given “{text}”.", "Give a number.") from error


def _decimal(text: str, option: str) -> Decimal:
    try:
        return Decimal(text.strip())
    except InvalidOperation as error:
        raise MendableError(
            f"{option} was given “{text}”.", "Give a plain number, as 22.50."
        ) from error
