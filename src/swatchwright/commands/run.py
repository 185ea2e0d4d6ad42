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
from importlib import import_module
from typing import cast

from swatchwright import __version__
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.options import parser
from swatchwright.errors import MendableError

__all__ = ["ExitCode", "run"]


def run(words: Sequence[str]) -> int:
    """Run the command that the words ask for and return the exit code."""
    for stream in (sys.stdout, sys.stderr):
        # A pipe on some systems cannot hold every letter of a paint's name.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
    arguments = parser().parse_args(words)
    try:
        code = int(_command(arguments.command)(arguments))
        sys.stdout.flush()
    except MendableError as error:
        print(f"swatchwright: {error.what}\n  {error.mend}", file=sys.stderr)
        return ExitCode.INPUT
    except KeyboardInterrupt:
        print("swatchwright: stopped", file=sys.stderr)
        return ExitCode.STOPPED
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


_WHERE = {
    "colours": ("colours", "colours"),
    "correct": ("correct", "correct"),
    "fan": ("correct", "fan"),
    "mix": ("mix", "mix"),
    "reach": ("reach", "reach"),
    "recipe": ("recipe", "recipe"),
}
"""The module and the function of each command."""


def _command(name: str) -> Callable[[argparse.Namespace], int]:
    """Import a command when it is asked for."""
    module, function = _WHERE[name]
    found = getattr(import_module(f"swatchwright.commands.{module}"), function)
    return cast(Callable[[argparse.Namespace], int], found)
