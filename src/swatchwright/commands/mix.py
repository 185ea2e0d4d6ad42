"""``swatchwright mix``."""

from __future__ import annotations

import argparse

from swatchwright.acts.mix import MixLook, look_of_mix
from swatchwright.colour.names import colour_name
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.words import (
    amount_of,
    chosen_shelf,
    colour_json,
    print_json,
    print_notes,
)

__all__ = ["mix"]


def mix(arguments: argparse.Namespace) -> ExitCode:
    """Print what a mix will look like."""
    look = look_of_mix(chosen_shelf(arguments), [amount_of(text) for text in arguments.parts])
    if arguments.json:
        print_json(
            {
                "paints": [
                    {"id": p.id, "name": p.name, "share": s, "how_known": p.how_known.value}
                    for p, s in zip(look.paints, look.shares, strict=True)
                ],
                "dry": colour_json(look.dry),
                "wet": colour_json(look.wet),
                "notes": list(look.notes),
            }
        )
    else:
        _print(look)
    return ExitCode.DONE


def _print(look: MixLook) -> None:
    for paint, share in zip(look.paints, look.shares, strict=True):
        print(f"{share:6.1%}  {paint.name} ({paint.id}, {paint.how_known.value})")
    for state, lab in (("dry", look.dry), ("wet", look.wet)):
        print(
            f"{state}  {colour_json(lab)['srgb']}  L* {lab.L:.1f}  a* {lab.a:.1f}  b* {lab.b:.1f}"
            f"  {colour_name(lab)}"
        )
    print_notes(look.notes)
