"""Text from the command line to values, and values to JSON."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

from swatchwright.colour.convert import hex_to_lab, in_srgb, lab_to_hex
from swatchwright.colour.names import closeness
from swatchwright.errors import MendableError
from swatchwright.language.money import priced
from swatchwright.photo.reference import GREY_CARD, reflectance_from_lightness
from swatchwright.shelf.csv_file import demo_shelf, read_shelf
from swatchwright.values import KnownColour, Lab, Rect

if TYPE_CHECKING:
    from decimal import Decimal

    from swatchwright.acts.colours import PhotoColours
    from swatchwright.acts.recipes import Confidence
    from swatchwright.shelf.shelf import Shelf

__all__ = [
    "amount_of",
    "chosen_shelf",
    "colour_json",
    "doubt_text",
    "price_text",
    "print_json",
    "print_notes",
    "read_photo_colours",
    "rectangle",
    "reflectance_of",
    "three_numbers",
    "typed_by_options",
]


def rectangle(text: str | None, option: str) -> Rect | None:
    """Read ``X,Y,W,H``; None stays None.

    Raises
    ------
    MendableError
        If it is not four whole numbers.
    """
    if text is None:
        return None
    try:
        x, y, width, height = (int(part) for part in text.split(","))
    except ValueError as error:
        raise MendableError(
            f"{option} was given “{text}”.",
            "It takes four whole numbers of pixels: left, top, width, height, "
            f"as in {option} 40,60,120,90.",
        ) from error
    return Rect(x, y, width, height)


def three_numbers(text: str, option: str = "--lab") -> tuple[float, float, float]:
    """Read ``L,a,b``.

    Raises
    ------
    MendableError
        If it is not three numbers.
    """
    try:
        L, a, b = (float(part) for part in text.split(","))
    except ValueError as error:
        raise MendableError(
            f"{option} was given “{text}”.",
            f"It takes three numbers: L*, a*, b*, as in {option} 46,34,24.",
        ) from error
    return L, a, b


def amount_of(text: str) -> tuple[str, float]:
    """Read ``ID=AMOUNT``.

    Raises
    ------
    MendableError
        If it is not a paint's id and a number.
    """
    id_, _, share = text.rpartition("=")
    try:
        return id_.strip(), float(share.removesuffix("%"))
    except ValueError as error:
        raise MendableError(
            f"“{text}” is not a paint and its share.",
            "Write the paint's id, an equals sign and a number, as in white-clean=0.7.",
        ) from error


def read_photo_colours(arguments: argparse.Namespace) -> PhotoColours:
    """Run the act that the photo options ask for."""
    from swatchwright.acts.colours import colours_of, open_photo
    from swatchwright.commands.references import references_of

    photo = open_photo(Path(arguments.photo))
    return colours_of(
        photo,
        grey=rectangle(arguments.grey, "--grey"),
        reflectance=reflectance_of(arguments),
        references=references_of(arguments.ref),
        light=arguments.light,
        area=rectangle(arguments.area, "--area"),
        count=arguments.count,
    )


def reflectance_of(arguments: argparse.Namespace) -> float:
    """Give the reflectance of the grey that was marked, 0-1.

    Raises
    ------
    MendableError
        If it was given twice, or without the place of the grey.
    """
    if arguments.grey_l is not None and arguments.grey_y is not None:
        raise MendableError(
            "Both --grey-y and --grey-l were given.", "Give the reflectance or the L*, not both."
        )
    if arguments.grey is None and (arguments.grey_l, arguments.grey_y) != (None, None):
        raise MendableError(
            "The card's reflectance was given, but not where the card is.",
            "Add --grey X,Y,W,H.",
        )
    if arguments.grey_l is not None:
        return reflectance_from_lightness(arguments.grey_l)
    return GREY_CARD if arguments.grey_y is None else float(arguments.grey_y)


def chosen_shelf(arguments: argparse.Namespace) -> Shelf:
    """Read the shelf that was named, or the demonstration's."""
    return demo_shelf() if arguments.shelf is None else read_shelf(Path(arguments.shelf))


def colour_json(lab: Lab) -> dict[str, Any]:
    """Give a colour as JSON: Lab to two decimals, sRGB, and whether sRGB can show it."""
    return {
        "lab": [round(v, 2) for v in lab.triple],
        "srgb": lab_to_hex(lab),
        "in_srgb": in_srgb(lab),
    }


def doubt_text(confidence: Confidence) -> str:
    """Say how far an untried mix will usually be from the cloth, and where that comes from."""
    seen = closeness(round(confidence.both))
    told = f"usually within {confidence.both:.0f} of the cloth, untried: {seen}"
    if not confidence.photo or not confidence.paints:
        return told
    return f"{told} (the photo {confidence.photo:.1f}, the paints {confidence.paints:.1f})"


def price_text(value: float | Decimal, own: str = "") -> str:
    """Write a price for a terminal, as `priced` does but with plain spaces."""
    return priced(value, own).replace("\N{NO-BREAK SPACE}", " ")


def print_json(value: dict[str, Any]) -> None:
    """Print one JSON document."""
    print(json.dumps(value, indent=2, ensure_ascii=False))


def print_notes(notes: tuple[str, ...], warnings: tuple[str, ...] = ()) -> None:
    """Print what looks wrong, and what was assumed."""
    for warning in warnings:
        print(f"Check: {warning}")
    for note in notes:
        print(f"Note: {note}")


def typed_by_options(arguments: argparse.Namespace) -> KnownColour:
    """Read the wanted colour from ``--lab``, or else from ``--srgb``.

    Raises
    ------
    MendableError
        If it is no colour.
    """
    from swatchwright.acts.recipes import typed_colour

    if arguments.lab is not None:
        return typed_colour(*three_numbers(arguments.lab))
    try:
        return typed_colour(*hex_to_lab(arguments.srgb).triple)
    except ValueError as error:
        raise MendableError(
            f"--srgb was given “{arguments.srgb}”.",
            "It takes six hexadecimal digits in quotes, as in --srgb '#a4503c'.",
        ) from error
