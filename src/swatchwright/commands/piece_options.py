"""The words of ``swatchwright piece``, and how any command is told which piece is meant."""

from __future__ import annotations

import argparse

from swatchwright.commands.parsing import Commands, Parser, add_for_job, add_json

__all__ = ["add_piece", "add_which_piece"]

_KINDS = (
    "console table, chest of drawers, chair, blanket box, bedside cabinet, dresser, mirror frame, "
    "picture rail"
)


def add_piece(commands: Commands) -> None:
    """Add ``piece``."""
    piece = commands.add_parser(
        "piece",
        help="size a piece of furniture: painted areas by part and by colour zone, and a drawing",
        description="Measure what of a piece is painted, by part and by colour zone. The piece is "
        f"a common one, sized from outside ({_KINDS}; hyphens will do for spaces), or a JSON file "
        "of parts.",
        epilog="To change a part: save the piece, edit the file, and read it with --parts.",
    )
    piece.add_argument("piece", metavar="KIND", nargs="?", help="a common piece")
    _add_sizes(piece)
    piece.add_argument("--save", metavar="FILE.json", help="write its parts, to be edited")
    piece.add_argument("--drawing", metavar="FILE.svg", help="draw it to scale")
    piece.add_argument(
        "--colour",
        metavar="ZONE=#RRGGBB",
        action="append",
        default=[],
        help="colour of a zone in the drawing",
    )
    add_for_job(piece)
    add_json(piece)


def add_which_piece(parser: Parser) -> None:
    """Ask which piece is meant, as an option."""
    which = parser.add_argument_group("which piece", "One of these, or areas by hand.")
    which.add_argument("--piece", metavar="KIND", help=f"a common piece: {_KINDS}")
    _add_sizes(which)


def _add_sizes(to: argparse._ActionsContainer) -> None:
    to.add_argument("--parts", metavar="FILE.json", help="a file of parts, as docs/piece.md tells")
    to.add_argument("--width", type=float, metavar="MM", help="from side to side, mm")
    to.add_argument("--height", type=float, metavar="MM", help="mm")
    to.add_argument("--depth", type=float, metavar="MM", help="from front to back, mm")
    to.add_argument("--drawers", type=int, metavar="N", help="how many drawers")
    to.add_argument("--leg", metavar="SHAPE", help="square, tapered or turned")
    to.add_argument("--inside", action="store_true", help="the inside is painted too")
