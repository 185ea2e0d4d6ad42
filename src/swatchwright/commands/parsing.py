"""What the parsers of all commands share.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

import argparse
from typing import NoReturn, TypeAlias

from swatchwright.commands.codes import ExitCode

__all__ = ["Commands", "Parser", "add_for_job", "add_json", "add_photo_options", "add_shelf"]


class Parser(argparse.ArgumentParser):
    """A parser whose complaints say how to get help."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong and how to get help."""
        self.exit(ExitCode.INPUT, f"{self.prog}: {message}\nTry: {self.prog} --help\n")


# argparse gives it no public name, and lets only a type checker fill in the brackets.
Commands: TypeAlias = "argparse._SubParsersAction[Parser]"  # noqa: SLF001
"""What the parser of a command is added to."""


def add_photo_options(parser: argparse.ArgumentParser) -> None:
    """Ask where the grey card and the cloth are in a photo."""
    parser.add_argument("--grey", metavar="X,Y,W,H", help="where the grey card is, in pixels")
    parser.add_argument(
        "--grey-y", type=float, metavar="Y", help="its reflectance, 0-1 (0.18; white paper 0.9)"
    )
    parser.add_argument("--grey-l", type=float, metavar="L", help="or its lightness L*, 16-100")
    parser.add_argument(
        "--ref",
        metavar="X,Y,W,H=VALUE",
        action="append",
        default=[],
        help="another thing of known colour, as often as you like: VALUE is a reflectance (0.18 or "
        "18%%), an L* (16-100) or L*,a*,b*",
    )
    parser.add_argument(
        "--light", choices=("daylight", "lamp"), help="what the light was, if you know"
    )
    parser.add_argument("--area", metavar="X,Y,W,H", help="where the cloth is, in pixels")
    parser.add_argument("--count", type=int, metavar="N", help="how many colours to find")


def add_shelf(parser: argparse.ArgumentParser) -> None:
    """Ask which shelf the paints come from."""
    parser.add_argument("--shelf", metavar="FILE.csv", help="your paints (a demonstration shelf)")


def add_json(parser: argparse.ArgumentParser) -> None:
    """Offer the answer as JSON."""
    parser.add_argument("--json", action="store_true", help="print JSON, as docs/files.md tells")


def add_for_job(
    parser: argparse.ArgumentParser, told: str = "keep it with this job, by its id"
) -> None:
    """Offer to keep the answer with a job."""
    parser.add_argument("--for-job", metavar="JOB", help=told)
    parser.add_argument("--store", metavar="FILE", help="the store of jobs (your own)")
