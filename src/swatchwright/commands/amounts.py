"""``swatchwright amounts``."""

from __future__ import annotations

import argparse
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from typing import TypeVar

from swatchwright.acts.amounts import Coats, amounts_for, order_of
from swatchwright.acts.habits import habits
from swatchwright.commands.amounts_text import amounts_json, print_amounts
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.piece import chosen_piece, split_pair
from swatchwright.commands.words import amount_of, chosen_shelf, print_json
from swatchwright.errors import MendableError
from swatchwright.piece.areas import ZoneArea
from swatchwright.piece.order import ProductKind, Terms
from swatchwright.piece.spreading import Ground, Tool
from swatchwright.piece.tins import TinSize

__all__ = ["amounts", "one_of"]

_SHORT = {"clear": ProductKind.CLEAR.value}

Choice = TypeVar("Choice", bound=StrEnum)


def amounts(arguments: argparse.Namespace) -> ExitCode:
    """Print how much paint a piece takes, and what that comes to."""
    order = order_of(
        _zones(arguments),
        _coats(arguments),
        shelf=chosen_shelf(arguments) if arguments.recipe else None,
        recipes=_recipes(arguments),
        tins=dict(_tins(text) for text in arguments.tins),
        left={
            _SHORT.get(name, name): _number(ml, "--left")
            for name, ml in (split_pair(t, "--left", "white-clean=200") for t in arguments.left)
        },
        terms=_terms(arguments),
        sample_ml=arguments.sample,
        touch_up=arguments.touch_up,
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


def _recipes(arguments: argparse.Namespace) -> dict[str, list[tuple[str, float]]]:
    found: dict[str, list[tuple[str, float]]] = {}
    for text in arguments.recipe:
        zone, _, parts = text.rpartition(":")
        if zone.strip() in found:
            raise MendableError(f"There are two recipes for “{zone}”.", "Give each zone one.")
        found[zone.strip()] = [amount_of(part) for part in parts.split(",")]
    return found


def _tins(text: str) -> tuple[str, list[TinSize]]:
    name, sizes = split_pair(text, "--tins", "primer=750:22,2500:58")
    found = []
    for size in sizes.split(","):
        ml, _, price = size.partition(":")
        found.append(
            TinSize(_number(ml, "--tins"), _decimal(price, "--tins") if price.strip() else None)
        )
    return _SHORT.get(name, name), found


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
