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
    from swatchwright.photo.advise import Advice
    from swatchwright.photo.dominant import DominantColour
    from swatchwright.photo.reference import Balance
    from swatchwright.photo.references import Reference
    from swatchwright.values import KnownColour, Rect

__all__ = ["colours", "light_json"]

_WEAVE_SHOWS = 1.0
"""CIEDE2000 from which the colour from a metre away is worth a line of its own."""


def colours(arguments: argparse.Namespace) -> ExitCode:
    """Print the dominant colours of a photo."""
    from swatchwright.acts.colours import helpful_references, propose_greys

    found = read_photo_colours(arguments)
    help_ = helpful_references(found, found.colours[0])
    proposed = () if found.correction.references else propose_greys(found.photo)
    if arguments.json:
        print_json(_as_json(found, help_, proposed))
    else:
        _print(found, help_, proposed)
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


def _as_json(
    found: PhotoColours, help_: tuple[Advice, ...], proposed: tuple[Rect, ...]
) -> dict[str, Any]:
    return {
        "light": light_json(found.balance),
        "references": [_reference_json(r) for r in found.correction.references],
        "colours": [_colour_json(c) for c in found.colours],
        "findings": [
            {"kind": f.kind, "severity": f.severity, "text": f.text, "mend": f.mend}
            for f in found.findings
        ],
        "would_help": [
            {"add": a.addition, "words": a.words, "now": round(a.now, 2), "then": round(a.then, 2)}
            for a in help_
        ],
        "likely_greys": [[r.x, r.y, r.width, r.height] for r in proposed],
        "notes": list(found.notes),
        "warnings": list(found.warnings),
    }


def _reference_json(reference: Reference) -> dict[str, Any]:
    rect = reference.rect
    return {
        "kind": reference.kind,
        "rect": [rect.x, rect.y, rect.width, rect.height],
        "lab": [round(v, 2) for v in reference.lab.triple],
    }


def _colour_json(colour: DominantColour) -> dict[str, Any]:
    metre = colour.from_a_metre
    return {
        **colour_json(colour.colour.lab),
        "share": round(colour.share, 3),
        "name": colour_name(colour.colour.lab),
        "marks": [list(mark) for mark in colour.marks],
        "give_or_take": round(colour.give_or_take, 1),
        "covariance": _covariance_json(colour.colour),
        "from_a_metre": {**colour_json(metre.lab), "name": colour_name(metre.lab)},
    }


def _covariance_json(colour: KnownColour) -> list[list[float]] | None:
    rows = colour.covariance
    return None if rows is None else [[round(v, 3) for v in row] for row in rows]


def _print(found: PhotoColours, help_: tuple[Advice, ...], proposed: tuple[Rect, ...]) -> None:
    print(f"{found.photo.facts.name}: {found.photo.facts.words}")
    print(f"Light put right by: {found.correction.reference}")
    print()
    for number, c in enumerate(found.colours, start=1):
        _print_colour(number, c)
    print()
    print_notes(found.notes, found.warnings)
    best = help_[0]
    if best.worth_it:
        print(
            f"Would help most: {best.words}. The first colour would then be known to within"
            f" {best.then:.1f} instead of {best.now:.1f}."
        )
    for rect in proposed[:1]:
        print(
            "If this is your grey card, say so: "
            f"--grey {rect.x},{rect.y},{rect.width},{rect.height}"
        )


def _print_colour(number: int, c: DominantColour) -> None:
    """Print a colour, and how its weave looks from a metre where that is another."""
    lab, shown = c.colour.lab, colour_json(c.colour.lab)["srgb"]
    print(
        f"{number:2}  {c.share:4.0%}  {shown}  L* {lab.L:5.1f}  a* {lab.a:6.1f}  "
        f"b* {lab.b:6.1f}  ± {c.give_or_take:4.1f}  {colour_name(lab)}"
    )
    if c.weave >= _WEAVE_SHOWS:
        far = c.from_a_metre.lab
        print(
            f"    from a metre {colour_json(far)['srgb']}  L* {far.L:5.1f}  a* {far.a:6.1f}  "
            f"b* {far.b:6.1f}          {colour_name(far)}"
        )
