"""The options of ``swatchwright sheet``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser, add_json, add_shelf

__all__ = ["add_sheet"]


def add_sheet(commands: Commands) -> None:
    """Add the command to a parser."""
    sheet = commands.add_parser(
        "sheet",
        help="a recipe sheet or a jar label as PDF or picture; and the code on one read back",
        description="Write a recipe sheet, or with --label a label for a jar, of a job or of a "
        "mix, as a PDF or as PNG pictures. With --read, give the recipe that the text of a code "
        "holds.",
    )
    _add_what(sheet)
    _add_how(sheet)
    add_shelf(sheet)
    add_json(sheet)


def _add_what(sheet: Parser) -> None:
    what = sheet.add_argument_group("of what")
    what.add_argument("--job", metavar="JOB", help="a job's id, or its beginning")
    what.add_argument("--store", metavar="FILE", help="the store of jobs (your own)")
    what.add_argument("--zone", metavar="NAME", help="with --job: only this zone (all)")
    what.add_argument(
        "--recipe", metavar="ID=PARTS", nargs="+", default=[], help="or a mix with no job"
    )
    what.add_argument("--title", metavar="TEXT", default="", help="with --recipe: the piece")
    what.add_argument("--client", metavar="TEXT", default="", help="with --recipe: who it is for")
    what.add_argument("--lab", metavar="L,a,b", help="with --recipe: the wanted CIELAB colour")
    what.add_argument(
        "--layer",
        metavar="TEXT",
        action="append",
        default=[],
        help="with --recipe: what goes over it, as for `swatchwright finish`; the lowest first",
    )
    what.add_argument(
        "--volume", type=float, metavar="ML", help="ml to mix (the last batch, the piece, or 500)"
    )
    what.add_argument("--day", metavar="DAY", help="as in 2026-03-01 (today)")
    what.add_argument("--read", metavar="TEXT", help="or the text of a code; - reads it from input")


def _add_how(sheet: Parser) -> None:
    how = sheet.add_argument_group("how")
    how.add_argument("--out", metavar="FILE", help="where to: a name that ends with .pdf or .png")
    how.add_argument("--paper", metavar="NAME", help="a4 or letter (a4)")
    how.add_argument(
        "--label", metavar="SIZE", help="a label: 99.1x67.7, 63.5x38.1 or 70x37 mm, or 4x2in"
    )
    how.add_argument("--fill", action="store_true", help="with --label: a whole page of them")
    how.add_argument("--dpi", type=float, metavar="N", help="of pictures: dots to the inch (150)")
    how.add_argument(
        "--units", metavar="LIST", default="ml,g", help="ml, g or both, parted by commas (ml,g)"
    )
    how.add_argument("--spoons", metavar="COUNTRY", help="also in the cups and spoons of a country")
