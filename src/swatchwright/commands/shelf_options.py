"""The options of ``swatchwright shelf``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.job_options import add_store
from swatchwright.commands.parsing import Commands, Parser

__all__ = ["add_shelf_command"]


def add_shelf_command(commands: Commands) -> None:
    """Add ``shelf`` with all that can be done to the shelf of the store."""
    shelf = commands.add_parser(
        "shelf",
        help="the paints kept beside your jobs, and how much of each is left",
        description="Keep your paints beside your jobs, with how much of each is left. "
        "Whatever is changed can be undone by: swatchwright job undo.",
    )
    deeds: Commands = shelf.add_subparsers(dest="deed", required=True, metavar="DEED")
    _deed(deeds, "list", "the paints, and how much of each is left")
    _deed(deeds, "demo", "fill an empty shelf with the invented paints of the demonstration")
    brought = _deed(deeds, "import", "bring in the paints of a shelf file")
    brought.add_argument("file", metavar="FILE.csv", help="a shelf file")
    brought.add_argument(
        "--replace", action="store_true", help="paints that are not in it go from the shelf"
    )
    export = _deed(deeds, "export", "write the shelf to a shelf file")
    export.add_argument("file", metavar="FILE.csv", help="where to")
    remove = _deed(deeds, "remove", "take paints off the shelf; jobs keep what they need of them")
    remove.add_argument("ids", metavar="ID", nargs="+", help="a paint's id")
    stock = _deed(deeds, "stock", "write down how much of a paint is left")
    stock.add_argument(
        "how", choices=("set", "add", "draw"), help="set it, add a tin to it, or draw from it"
    )
    stock.add_argument("id", metavar="ID", help="a paint's id")
    stock.add_argument("ml", metavar="ML", type=float, help="ml")


def _deed(deeds: Commands, name: str, help_: str) -> Parser:
    parser = deeds.add_parser(name, help=help_, description=f"{help_[0].upper()}{help_[1:]}.")
    add_store(parser)
    return parser
