"""Read the command line, run one act, and turn errors into messages and exit codes.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

import argparse
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from contextlib import suppress
from enum import IntEnum
from typing import NoReturn

from swatchwright import __version__
from swatchwright.errors import MendableError

__all__ = ["ExitCode", "run"]


class ExitCode(IntEnum):
    """What the program ends with."""

    DONE = 0
    INPUT = 2
    OUT_OF_REACH = 3
    OUR_FAULT = 70


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints say how to get help."""

    def error(self, message: str) -> NoReturn:
        self.exit(ExitCode.INPUT, f"{self.prog}: {message}\nTry: {self.prog} --help\n")


def run(words: Sequence[str]) -> int:
    """Run the command that the words ask for and return the exit code."""
    for stream in (sys.stdout, sys.stderr):
        # A pipe on some systems cannot hold every letter of a paint's name.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    arguments = _parser().parse_args(words)
    try:
        code = int(_command(arguments.command)(arguments))
        sys.stdout.flush()
    except MendableError as error:
        print(f"swatchwright: {error.what}\n  {error.mend}", file=sys.stderr)
        return ExitCode.INPUT
    except BrokenPipeError:
        _forget_output()
        return ExitCode.DONE
    except Exception:  # noqa: BLE001 - the last fence: whatever it is, it is our fault
        print(
            "swatchwright: something went wrong that is not your doing. Please pass this on:\n"
            f"swatchwright {__version__}, Python {sys.version.split()[0]}, {sys.platform}\n"
            f"{traceback.format_exc()}",
            file=sys.stderr,
        )
        return ExitCode.OUR_FAULT
    return code


def _forget_output() -> None:
    """Send what is still to be written nowhere: its reader has gone, as ``head`` does."""
    with suppress(OSError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _command(name: str) -> Callable[[argparse.Namespace], int]:
    """Import a command when it is asked for."""
    if name == "colours":
        from swatchwright.commands.colours import colours as command
    elif name == "recipe":
        from swatchwright.commands.recipe import recipe as command
    else:
        from swatchwright.commands.mix import mix as command
    return command


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="swatchwright",
        description="From a photo of a cloth to a measured mix of the paints on your shelf. "
        "With no command the window opens.",
        epilog="Exit codes: 0 done, 2 the input must be mended, 3 nothing on the shelf reaches "
        "the colour (the nearest is still shown), 70 our fault.",
    )
    parser.add_argument("--version", action="version", version=f"swatchwright {__version__}")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    commands.add_parser(
        "window", help="open the window, with a photo if one is named", add_help=True
    )
    _add_colours(commands)
    _add_recipe(commands)
    _add_mix(commands)
    return parser


_Commands = argparse._SubParsersAction  # noqa: SLF001 - argparse gives it no public name


def _add_colours(commands: _Commands[_Parser]) -> None:
    colours = commands.add_parser(
        "colours",
        help="the dominant colours of a photo",
        description="Find the dominant colours of a photo, in the light of a grey card if one "
        "is in it.",
    )
    colours.add_argument("photo", metavar="PHOTO", help="a JPEG, PNG, TIFF or WebP file")
    _add_photo_options(colours)
    _add_json(colours)


def _add_recipe(commands: _Commands[_Parser]) -> None:
    recipe = commands.add_parser(
        "recipe",
        help="the mixes of a shelf that come closest to a colour",
        description="Find the two- and three-paint mixes that come closest to a colour picked "
        "from a photo, or given by its numbers.",
    )
    recipe.add_argument("photo", metavar="PHOTO", nargs="?", help="a photo to pick from")
    _add_photo_options(recipe)
    recipe.add_argument(
        "--pick", type=int, metavar="N", help="which of the photo's colours, 1 the largest (1)"
    )
    recipe.add_argument("--lab", metavar="L,a,b", help="the wanted CIELAB colour, D65")
    recipe.add_argument("--srgb", metavar="#RRGGBB", help="the wanted colour on an sRGB screen")
    _add_list(recipe)
    _add_shelf(recipe)
    recipe.add_argument(
        "--paints", type=int, choices=(2, 3), default=3, help="paints at the most (3)"
    )
    recipe.add_argument("--keep", type=int, default=6, metavar="N", help="recipes to show (6)")
    recipe.add_argument("--volume", type=float, default=500.0, metavar="ML", help="ml to mix (500)")
    _add_json(recipe)


def _add_list(recipe: _Parser) -> None:
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


def _add_mix(commands: _Commands[_Parser]) -> None:
    mix = commands.add_parser(
        "mix",
        help="what a given mix will look like",
        description="Tell how a mix looks wet and dry. Shares may be fractions, percentages or "
        "parts: only their proportions count.",
    )
    mix.add_argument("parts", metavar="ID=SHARE", nargs="+", help="a paint's id and its share")
    _add_shelf(mix)
    _add_json(mix)


def _add_photo_options(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--grey", metavar="X,Y,W,H", help="where the grey card is, in pixels")
    parser.add_argument(
        "--grey-y", type=float, metavar="Y", help="its reflectance, 0-1 (0.18; white paper 0.9)"
    )
    parser.add_argument("--grey-l", type=float, metavar="L", help="or its lightness L*, 16-100")
    parser.add_argument("--area", metavar="X,Y,W,H", help="where the cloth is, in pixels")
    parser.add_argument("--count", type=int, metavar="N", help="how many colours to find")


def _add_shelf(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--shelf", metavar="FILE.csv", help="your paints (a demonstration shelf)")


def _add_json(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--json", action="store_true", help="print JSON, as docs/files.md tells")
