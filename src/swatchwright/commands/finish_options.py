"""The options of ``swatchwright finish``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

import argparse

from swatchwright.commands.parsing import Commands, add_for_job, add_json, add_shelf
from swatchwright.commands.wash_options import add_coat, add_layers

__all__ = ["add_finish"]

_EPILOG = """\
a layer is its kind and what is said of it, with spaces between:
  "wash ID[=PARTS] ... water=3 left=20 passes=2"   left is what wiping leaves, %
  "glaze ID[=PARTS] ... water=3"                   water is its medium
  "wax", "wax amber=1", "wax ID water=9"           the last tinted, 1 to 9 of clear wax
  "oil passes=2"
  "varnish sheen=satin amber=0"                    matte, eggshell, satin, gloss
with on=PART at its end it goes on that part of the piece alone, else on all of it:
  "wash ID water=3 on=body"
"""


def add_finish(commands: Commands) -> None:
    """Add the command to a parser."""
    finish = commands.add_parser(
        "finish",
        help="what washes, waxes, oils and varnishes do to a colour, layer by layer",
        description="Show a mix under any layers, one after another: dry, wet, under the lights "
        "of a room, and its range between flats and grain.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_coat(finish)
    add_layers(finish, "a layer, the lowest first")
    add_shelf(finish)
    add_for_job(finish)
    add_json(finish)
