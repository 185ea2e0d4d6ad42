"""``swatchwright colours``."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING, Any

from swatchwright.colour.names import colour_name
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.words import (
    colour_json,
    print_json,
    print_notes,
    read_photo_colours,
)

if TYPE_CHECKING:
    from swatchwright.acts.colours import PhotoColours
    from swatchwright.photo.reference import Balance

__all__ = ["colours", "light_json"]


def colours(arguments: argparse.Namespace) -> ExitCode:
    """Print the dominant colours of a photo."""
    found = read_photo_colours(arguments)
    if arguments.json:
        print_json(_as_json(found))
    else:
        _print(found)
    return ExitCode.DONE


def light_json(balance: Balance) -> dict[str, Any]:
    """Give the light of a photo as JSON."""
    return {
        "reference": None if balance.reflectance is None else "grey",
        "reflectance": balance.reflectance,
        "gains": [round(g, 4) for g in balance.gains],
        "xy": None if balance.light_xy is None else [round(v, 4) for v in balance.light_xy],
        "cct": None if balance.cct is None else round(balance.cct),
    }


def _as_json(found: PhotoColours) -> dict[str, Any]:
    return {
        "light": light_json(found.balance),
        "colours": [
            {
                **colour_json(c.colour.lab),
                "share": round(c.share, 3),
                "name": colour_name(c.colour.lab),
                "marks": [list(mark) for mark in c.marks],
            }
            for c in found.colours
        ],
        "notes": list(found.notes),
        "warnings": list(found.warnings),
    }


def _print(found: PhotoColours) -> None:
    facts = found.photo.facts
    print(f"{facts.name}: {facts.format}, {facts.width} × {facts.height}, {facts.profile}")
    print(f"Light put right by: {found.balance.reference}")
    print()
    for number, c in enumerate(found.colours, start=1):
        lab, shown = c.colour.lab, colour_json(c.colour.lab)["srgb"]
        print(
            f"{number:2}  {c.share:4.0%}  {shown}  L* {lab.L:5.1f}  a* {lab.a:6.1f}  "
            f"b* {lab.b:6.1f}  {colour_name(lab)}"
        )
    print()
    print_notes(found.notes, found.warnings)
