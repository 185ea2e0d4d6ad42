"""``swatchwright reach``."""

from __future__ import annotations

import argparse
from pathlib import Path

from swatchwright.acts.reach import candidates_from, reach_of
from swatchwright.colour.names import closeness
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.words import chosen_shelf, print_json, three_numbers
from swatchwright.values import Lab

__all__ = ["reach"]


def reach(arguments: argparse.Namespace) -> ExitCode:
    """Print how near the shelf comes to a colour, and which paint more would reach it."""
    wanted = Lab.of_a_surface(*three_numbers(arguments.lab, "--lab"))
    candidates = (
        None if arguments.candidates is None else candidates_from(Path(arguments.candidates))
    )
    found = reach_of(wanted, chosen_shelf(arguments), candidates)
    short = found.shortfall
    if arguments.json:
        print_json(
            {
                "delta_e_00": round(found.delta_e, 2),
                "towards": [] if short is None else list(short.towards),
                "one_more": [
                    {"id": m.paint.id, "name": m.paint.name, "delta_e_00": round(m.delta_e, 2)}
                    for m in found.one_more
                ],
            }
        )
    else:
        print(f"The nearest mix is {found.delta_e:.1f} CIEDE2000 off: {closeness(found.delta_e)}.")
        if short is not None:
            print(f"It would have to be {' and '.join(short.towards) or 'otherwise'}.")
        for more in found.one_more:
            print(
                f"With {more.paint.name} ({more.paint.id}) it comes within {more.delta_e:.1f} "
                f"({closeness(more.delta_e)})."
            )
    return ExitCode.DONE if short is None else ExitCode.OUT_OF_REACH
