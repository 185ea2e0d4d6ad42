"""The words of ``swatchwright paint``: fitting paints and looking at them."""

from __future__ import annotations

from swatchwright.commands.job_options import add_store
from swatchwright.commands.parsing import Commands, Parser, add_json, add_shelf

__all__ = ["add_paint"]


def add_paint(commands: Commands) -> None:
    """Add ``swatchwright paint`` and what can be done with paints."""
    paint = commands.add_parser(
        "paint",
        help="fit paints from brush-outs, and look at them",
        description="Get to know your own paints: what to brush out, what the brush-outs say, "
        "how a paint is known and how it dries.",
    )
    doing = paint.add_subparsers(dest="doing", required=True, metavar="WHAT")
    _add_brushouts(doing)
    _add_fit(doing)
    _add_show(doing)
    _add_dry(doing)
    _add_add(doing)


def _add_brushouts(doing: Commands) -> None:
    wanted = doing.add_parser(
        "brushouts",
        help="what to brush out so that paints can be fitted",
        description="List the strips to brush: which mixes, in which parts, on which card. With "
        "--out, write the sheet to fill in.",
    )
    wanted.add_argument(
        "ids", metavar="ID", nargs="*", help="paints of the shelf, or ids for new ones (all)"
    )
    wanted.add_argument("--white", metavar="ID", help="what to let down with (the lightest)")
    wanted.add_argument(
        "--no-card", dest="card", action="store_false", help="there is no card of black and white"
    )
    add_shelf(wanted)
    wanted.add_argument("--out", metavar="FILE.csv", help="write the sheet to fill in")
    add_json(wanted)


def _add_fit(doing: Commands) -> None:
    fit = doing.add_parser(
        "fit",
        help="fit paints from a sheet of brush-outs",
        description="Find what the paints of a sheet do to light, how well that is known, and "
        "which brush-out would teach most. docs/paints.md tells how a sheet is written.",
    )
    fit.add_argument("sheet", metavar="SHEET.csv", help="the brush-outs and what was read off them")
    fit.add_argument(
        "--shelf", metavar="FILE.csv", help="paints that are known, such as the white (none)"
    )
    fit.add_argument("--readings", metavar="FILE", help="measurements that the sheet names")
    fit.add_argument("--again", metavar="IDS", help="paints of the shelf to fit anew")
    fit.add_argument("--by-weight", action="store_true", help="parts are grams, not volumes")
    fit.add_argument(
        "--gloss",
        choices=("seen", "included", "excluded"),
        default="seen",
        help="the surface's own reflection in the readings: as seen in a photo, or as the "
        "instrument was set (seen)",
    )
    fit.add_argument(
        "--usually-off",
        type=float,
        metavar="DE",
        help="how far the colours usually are from the truth, CIEDE2000 (5.5, as of photos)",
    )
    fit.add_argument("--out", metavar="FILE.csv", help="write the shelf with the fitted paints")
    add_json(fit)


def _add_show(doing: Commands) -> None:
    show = doing.add_parser(
        "show",
        help="how a paint is known and how it looks",
        description="Tell how a paint is known, its colour, its let-downs, how it hides and dries.",
    )
    show.add_argument("id", metavar="ID", help="the paint")
    add_shelf(show)
    add_json(show)


def _add_dry(doing: Commands) -> None:
    dry: Parser = doing.add_parser(
        "dry",
        help="learn how a paint dries",
        description="Learn from the wet and the dry colour of one stroke how this paint dries.",
    )
    dry.add_argument("id", metavar="ID", help="the paint")
    dry.add_argument("--wet", metavar="L,a,b", required=True, help="the stroke just brushed")
    dry.add_argument("--dry", metavar="L,a,b", required=True, help="the same stroke, dry")
    add_shelf(dry)
    dry.add_argument("--out", metavar="FILE.csv", help="write the shelf with what was learnt")
    add_json(dry)


def _add_add(doing: Commands) -> None:
    add = doing.add_parser(
        "add",
        help="put a paint on your shelf by hand",
        description="Put a paint on the shelf kept beside your jobs, from its name, its kind and "
        "one colour; where you have none of your own, it begins one. Undo it by: swatchwright job "
        "undo.",
    )
    add.add_argument("name", metavar="NAME", help="what the tin calls it")
    add.add_argument(
        "--colour",
        metavar="COLOUR",
        required=True,
        help="its dry colour, laid until it hides: L,a,b or #rrggbb",
    )
    add.add_argument(
        "--known",
        choices=("eye", "photo", "measured"),
        default="eye",
        help="how the colour is known: by eye or off the maker's card, from a photo beside a grey "
        "card, or measured with an instrument (eye)",
    )
    add.add_argument(
        "--kind",
        metavar="KIND",
        default="chalky matte",
        help="chalky matte, mineral, emulsion matte, eggshell, satin, gloss or oil (chalky matte)",
    )
    add.add_argument(
        "--tin",
        metavar="ML[=PRICE]",
        action="append",
        default=[],
        help="a size it is sold in and what that costs; may be given several times",
    )
    add_store(add)
