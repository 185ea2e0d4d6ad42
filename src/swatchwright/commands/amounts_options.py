"""The words of ``swatchwright amounts``."""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser, add_json, add_shelf
from swatchwright.commands.piece_options import add_which_piece

__all__ = ["add_amounts"]


def add_amounts(commands: Commands) -> None:
    """Add ``amounts``."""
    amounts = commands.add_parser(
        "amounts",
        help="how much paint a piece takes, what to mix at once, what to buy, what to ask for it",
        description="Reckon paint by zone, by batch and by tin, and a price for the client.",
        epilog="NAME is the id of a paint of the shelf, or primer, wash or clear, or the zone "
        "whose paint has no recipe. Money is called by the word you give, or "
        "as you named it in the window.",
    )
    amounts.add_argument(
        "--zone", metavar="NAME=M2", action="append", default=[], help="a colour zone and its area"
    )
    add_which_piece(amounts)
    _add_coats(amounts)
    _add_paints(amounts)
    add_shelf(amounts)
    _add_terms(amounts)
    add_json(amounts)


def _add_coats(amounts: Parser) -> None:
    coats = amounts.add_argument_group("what goes on")
    coats.add_argument("--coats", type=int, default=2, metavar="N", help="coats of paint (2)")
    coats.add_argument("--primer", type=int, default=0, metavar="N", help="of primer (0)")
    coats.add_argument("--wash", type=int, default=0, metavar="N", help="of a wash (0)")
    coats.add_argument("--clear", type=int, default=0, metavar="N", help="of a clear finish (0)")
    coats.add_argument(
        "--layer",
        metavar="TEXT",
        action="append",
        default=[],
        help="instead of --wash and --clear, each layer as `finish` takes it, where several go on "
        "different parts: “varnish coats=3 on=top”, “wax on=body”",
    )
    coats.add_argument(
        "--layers", metavar="FILE.json", help="or all of them from a file, as docs/files.md tells"
    )
    coats.add_argument(
        "--ground",
        default="painted",
        metavar="WHAT",
        help="what it goes on: bare wood, rough wood, primed, painted, shiny (painted)",
    )
    coats.add_argument(
        "--tool",
        default="brush",
        metavar="WHAT",
        help="brush, flock roller, foam roller, spray (brush)",
    )
    for kind in ("paint", "primer", "wash", "clear"):
        coats.add_argument(
            f"--{kind}-rate", type=float, metavar="M2", help=f"m² a litre of {kind} covers (12)"
        )
    coats.add_argument("--solids", type=float, metavar="0-1", help="volume solids of the paint")
    coats.add_argument(
        "--thinned", type=float, default=3.0, metavar="PARTS", help="water to one of wash paint (3)"
    )


def _add_paints(amounts: Parser) -> None:
    paints = amounts.add_argument_group("paints")
    paints.add_argument(
        "--recipe",
        metavar="[ZONE:]ID=SHARE,...",
        action="append",
        default=[],
        help="two or three paints of the shelf, for a zone or for all",
    )
    paints.add_argument(
        "--tins",
        metavar="NAME=ML[:PRICE],...",
        action="append",
        default=[],
        help="sizes sold, instead of the shelf's",
    )
    paints.add_argument(
        "--left", metavar="NAME=ML", action="append", default=[], help="what is left on the shelf"
    )
    paints.add_argument(
        "--sample", type=float, default=30.0, metavar="ML", help="mixed on top for a sample (30)"
    )
    paints.add_argument(
        "--touch-up", type=float, default=0.1, metavar="0-1", help="share on top to touch up (0.1)"
    )


def _add_terms(amounts: Parser) -> None:
    terms = amounts.add_argument_group("a price for the client")
    terms.add_argument("--hours", default="0", metavar="H", help="hours of work")
    terms.add_argument("--hour-rate", default="0", metavar="MONEY", help="for an hour")
    terms.add_argument("--margin", default="0", metavar="0-1", help="share on top of both (0)")
    terms.add_argument(
        "--currency", metavar="WORD", help="what to call the money (as named in the window)"
    )
