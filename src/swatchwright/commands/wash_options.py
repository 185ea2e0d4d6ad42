"""The options of ``swatchwright wash``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser, add_json, add_shelf

__all__ = ["add_coat", "add_layers", "add_part", "add_wash"]


def add_wash(commands: Commands) -> None:
    """Add the command to a parser."""
    wash = commands.add_parser(
        "wash",
        help="what a wash does to a colour, or which wash takes it where a client wants it",
        description="With --wash, show what a wash or a glaze does to a mix, pass by pass. With "
        "--ask, --as or --lab, find what takes the mix there, with the risks of each: washes, and "
        "what to stir into the rest of the pot. Say with --stands how far it has come: on a piece "
        "that is painted a wash helps, or a full new coat, which is told with its amount; while "
        "the paint is in the pot, stirring in.",
    )
    add_coat(wash)
    forward = wash.add_argument_group("a wash to look at")
    forward.add_argument(
        "--wash",
        metavar="ID[=PARTS]",
        action="append",
        default=[],
        help="a paint of the wash; again for each more",
    )
    forward.add_argument(
        "--water", type=float, default=3.0, metavar="N", help="parts of water to one of paint (3)"
    )
    forward.add_argument("--passes", type=int, default=3, metavar="N", help="passes to show (3)")
    forward.add_argument(
        "--glaze", action="store_true", help="leave it as a glaze: it is not wiped back"
    )
    reverse = wash.add_argument_group("or where to go")
    reverse.add_argument(
        "--ask", metavar="WORD", help="less vivid, more vivid, lighter, darker, warmer, cooler, ..."
    )
    reverse.add_argument(
        "--dial", type=float, default=1 / 3, metavar="0-1", help="with --ask: how far (a third)"
    )
    reverse.add_argument(
        "--as",
        dest="grey_as",
        metavar="L,a,b",
        help="as grey as this colour, at its own hue and lightness",
    )
    reverse.add_argument("--lab", metavar="L,a,b", help="or this very colour")
    reverse.add_argument(
        "--stands",
        metavar="painted|pot",
        help="is the piece painted already, or the paint still in the pot: only what helps then",
    )
    reverse.add_argument(
        "--area",
        type=float,
        metavar="M2",
        help="with --stands painted: m2 that a full new coat would go on (1)",
    )
    reverse.add_argument(
        "--new-coats",
        type=int,
        metavar="N",
        help="with --stands painted: how often it would be put on (2)",
    )
    reverse.add_argument(
        "--only", metavar="IDS", help="use only these paints, ids parted by commas"
    )
    reverse.add_argument("--keep", type=int, default=3, metavar="N", help="washes to show (3)")
    reverse.add_argument(
        "--pot", type=float, default=250.0, metavar="ML", help="what is left of the mix, ml (250)"
    )
    reverse.add_argument(
        "--tub",
        type=float,
        metavar="ML",
        help="room in its pot: how full it may get, ml (a quarter more than is in it)",
    )
    wash.add_argument(
        "--left",
        type=float,
        metavar="%",
        help="share of the wet wash that is left after wiping, %% (20)",
    )
    add_layers(wash, "what stays over it all, such as a wax, as `finish` takes it")
    add_shelf(wash)
    add_json(wash)


def add_layers(parser: Parser, what: str) -> None:
    """Ask which layers lie over it."""
    parser.add_argument("--layer", metavar="TEXT", action="append", default=[], help=what)
    parser.add_argument(
        "--layers", metavar="FILE.json", help="or all of them from a file, as docs/files.md tells"
    )
    add_part(parser)


def add_part(parser: Parser) -> None:
    """Ask which part of the piece is meant, where layers go on one alone."""
    parser.add_argument(
        "--part",
        metavar="NAME",
        help="the part of the piece that is asked of, such as body, where a layer goes on one "
        "alone (on=body); all for what goes on all of it",
    )


def add_coat(parser: Parser) -> None:
    """Ask what the coat below is of, and what is below that."""
    parser.add_argument("parts", metavar="ID=SHARE", nargs="+", help="the mix below")
    parser.add_argument(
        "--primer", metavar="L,a,b", help="colour of what is below it, where it may not hide"
    )
    parser.add_argument(
        "--coats", type=int, default=2, metavar="N", help="with --primer: coats of the mix (2)"
    )
