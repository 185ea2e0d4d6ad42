"""The words of the command line: commands and their options.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

import argparse

from swatchwright import __version__
from swatchwright.commands.amounts_options import add_amounts
from swatchwright.commands.compare_options import add_compare
from swatchwright.commands.finish_options import add_finish
from swatchwright.commands.guide_options import add_guide
from swatchwright.commands.job_options import add_job
from swatchwright.commands.paint_options import add_paint
from swatchwright.commands.parsing import (
    Commands,
    Parser,
    add_json,
    add_photo_options,
    add_shelf,
)
from swatchwright.commands.piece_options import add_piece
from swatchwright.commands.plan_options import add_plan
from swatchwright.commands.repaint_options import add_repaint
from swatchwright.commands.sample_options import add_sample
from swatchwright.commands.sheet_options import add_sheet
from swatchwright.commands.shelf_options import add_shelf_command
from swatchwright.commands.wash_options import add_layers, add_wash

__all__ = ["parser"]


def parser() -> argparse.ArgumentParser:
    """Make the parser of the command line."""
    made = Parser(
        prog="swatchwright",
        description="From a photo of a cloth to a measured mix of the paints on your shelf. "
        "With no command the window opens.",
        epilog="Exit codes: 0 done, 2 the input must be mended, 3 nothing on the shelf reaches "
        "the colour (the nearest is still shown), 70 our fault, 130 stopped by Ctrl-C.",
    )
    made.add_argument("--version", action="version", version=f"swatchwright {__version__}")
    commands = made.add_subparsers(dest="command", required=True, metavar="COMMAND")
    commands.add_parser(
        "window", help="open the window, with a photo if one is named", add_help=True
    )
    _add_colours(commands)
    _add_recipe(commands)
    _add_mix(commands)
    _add_correct(commands)
    _add_fan(commands)
    _add_reach(commands)
    add_sample(commands)
    add_paint(commands)
    add_job(commands)
    add_shelf_command(commands)
    add_wash(commands)
    add_finish(commands)
    add_compare(commands)
    add_piece(commands)
    add_amounts(commands)
    add_repaint(commands)
    add_plan(commands)
    add_sheet(commands)
    add_guide(commands)
    return made


def _add_colours(commands: Commands) -> None:
    colours = commands.add_parser(
        "colours",
        help="the dominant colours of a photo",
        description="Find the dominant colours of a photo, in the light of a grey card if one "
        "is in it.",
    )
    colours.add_argument("photo", metavar="PHOTO", help="a photo: JPEG, HEIC, RAW, PNG, TIFF, WebP")
    add_photo_options(colours)
    add_json(colours)


def _add_recipe(commands: Commands) -> None:
    recipe = commands.add_parser(
        "recipe",
        help="the mixes of a shelf that come closest to a colour",
        description="Find the two- and three-paint mixes that come closest to a colour picked "
        "from a photo, or given by its numbers.",
    )
    recipe.add_argument("photo", metavar="PHOTO", nargs="?", help="a photo to pick from")
    add_photo_options(recipe)
    recipe.add_argument(
        "--pick", type=int, metavar="N", help="which of the photo's colours, 1 the largest (1)"
    )
    recipe.add_argument("--lab", metavar="L,a,b", help="the wanted CIELAB colour, D65")
    recipe.add_argument("--srgb", metavar="#RRGGBB", help="the wanted colour on an sRGB screen")
    _add_list(recipe)
    add_shelf(recipe)
    recipe.add_argument(
        "--paints", type=int, choices=(2, 3), default=3, help="paints at the most (3)"
    )
    recipe.add_argument("--keep", type=int, default=6, metavar="N", help="recipes to show (6)")
    recipe.add_argument("--volume", type=float, default=500.0, metavar="ML", help="ml to mix (500)")
    _add_measures(recipe)
    _add_wishes(recipe)
    add_json(recipe)


def _add_measures(recipe: Parser) -> None:
    measure = recipe.add_argument_group("how you measure")
    measure.add_argument(
        "--syringe", type=float, metavar="ML", help="what your syringe can tell, ml"
    )
    measure.add_argument("--scale", type=float, metavar="G", help="or what your scale can tell, g")
    measure.add_argument(
        "--spoons", metavar="COUNTRY", help="also in the cups and spoons of a country, or metric"
    )


def _add_wishes(recipe: Parser) -> None:
    wish = recipe.add_argument_group("what else you ask", "IDS are ids parted by commas.")
    wish.add_argument("--only", metavar="IDS", help="use only these paints")
    wish.add_argument("--without", metavar="IDS", help="leave these out")
    wish.add_argument("--must", metavar="IDS", help="these must be in every mix")
    wish.add_argument("--owned", metavar="IDS", help="the paints you have (all)")
    wish.add_argument("--buy", type=int, metavar="N", help="buy at most so many of the others")
    wish.add_argument("--open", metavar="IDS", help="tins that are open, first among equals")
    wish.add_argument(
        "--limit", metavar="ID=SHARE", action="append", default=[], help="at most so much of it"
    )
    wish.add_argument("--coats", type=int, metavar="N", help="it must hide within so many coats")
    wish.add_argument(
        "--price", type=float, metavar="PRICE", help="a litre of it costs at most so much"
    )
    wish.add_argument(
        "--order",
        choices=("closest", "painter"),
        default="closest",
        help="the closest first, or as a painter would choose among those as close as can be told",
    )
    wish.add_argument(
        "--prove", action="store_true", help="prove how near the closest is to the best there is"
    )


def _add_list(recipe: Parser) -> None:
    recipe.add_argument(
        "--list", metavar="FILE.csv", help="many wanted colours: name and srgb, or name and l, a, b"
    )
    recipe.add_argument(
        "--out", metavar="FILE.jsonl", help="with --list: where to; taken up where it stopped"
    )
    recipe.add_argument(
        "--workers", type=int, default=1, metavar="N", help="with --list: how many at a time (1)"
    )
    recipe.add_argument(
        "--backend", default="loky", metavar="NAME", help="with --list: a joblib backend (loky)"
    )


def _add_mix(commands: Commands) -> None:
    mix = commands.add_parser(
        "mix",
        help="what a given mix will look like",
        description="Tell how a mix looks wet and dry. Shares may be fractions, percentages or "
        "parts: only their proportions count.",
    )
    mix.add_argument("parts", metavar="ID=SHARE", nargs="+", help="a paint's id and its share")
    add_shelf(mix)
    add_json(mix)


def _add_correct(commands: Commands) -> None:
    correct = commands.add_parser(
        "correct",
        help="what to add to a pot to put it right",
        description="Say what to add, and only add, to bring a pot to a colour, or to where a "
        "client wants it.",
    )
    correct.add_argument("pot", metavar="ID=ML", nargs="+", help="what is in the pot, ml")
    correct.add_argument("--lab", metavar="L,a,b", help="the colour to reach")
    correct.add_argument("--seen", metavar="L,a,b", help="the colour of a dried sample of the pot")
    correct.add_argument("--ask", metavar="WORD", help="or where to go: lighter, less vivid, ...")
    correct.add_argument(
        "--dial", type=float, default=1 / 3, metavar="0-1", help="with --ask: how far (a third)"
    )
    correct.add_argument(
        "--tub",
        type=float,
        metavar="ML",
        help="room in the pot: how full it may get, ml (a quarter more than is in it)",
    )
    add_layers(correct, "what will lie over the paint, such as a wax, as `finish` takes it")
    correct.add_argument(
        "--add", type=int, choices=(1, 2), default=2, help="paints to add at the most (2)"
    )
    add_shelf(correct)
    add_json(correct)


def _add_fan(commands: Commands) -> None:
    fan = commands.add_parser(
        "fan",
        help="neighbours of a mix to brush out and choose from by eye",
        description="Mix six to eight neighbours of a mix, about 2 CIEDE2000 from it.",
    )
    fan.add_argument("parts", metavar="ID=SHARE", nargs="+", help="the mix at the middle")
    fan.add_argument("--volume", type=float, default=20.0, metavar="ML", help="ml of each (20)")
    add_shelf(fan)
    add_json(fan)


def _add_reach(commands: Commands) -> None:
    reach = commands.add_parser(
        "reach",
        help="how near a shelf comes to a colour, and which paint more would reach it",
        description="Say how near the shelf comes to a colour, and which one paint more of "
        "another shelf would bring it within 1 CIEDE2000.",
    )
    reach.add_argument("--lab", metavar="L,a,b", required=True, help="the wanted CIELAB colour")
    reach.add_argument("--candidates", metavar="FILE.csv", help="paints that could be bought")
    add_shelf(reach)
    add_json(reach)
