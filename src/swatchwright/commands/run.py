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


# Modules are named in full, so that nothing can be imported here that a reader does not see.
_WHERE: dict[str, Callable[[], object]] = {
    "amounts": lambda: import_module("swatchwright.commands.amounts").amounts,
    "colours": lambda: import_module("swatchwright.commands.colours").colours,
    "compare": lambda: import_module("swatchwright.commands.compare").compare,
    "correct": lambda: import_module("swatchwright.commands.correct").correct,
    "fan": lambda: import_module("swatchwright.commands.correct").fan,
    "finish": lambda: import_module("swatchwright.commands.finish").finish,
    "guide": lambda: import_module("swatchwright.commands.guide").guide,
    "job": lambda: import_module("swatchwright.commands.job").job,
    "mix": lambda: import_module("swatchwright.commands.mix").mix,
    "paint": lambda: import_module("swatchwright.commands.paint").paint,
    "piece": lambda: import_module("swatchwright.commands.piece").piece,
    "plan": lambda: import_module("swatchwright.commands.plan").plan,
    "reach": lambda: import_module("swatchwright.commands.reach").reach,
    "recipe": lambda: import_module("swatchwright.commands.recipe").recipe,
    "repaint": lambda: import_module("swatchwright.commands.repaint").repaint,
    "sample": lambda: import_module("swatchwright.commands.sample").sample,
    "sheet": lambda: import_module("swatchwright.commands.sheet").sheet,
    "shelf": lambda: import_module("swatchwright.commands.shelf").shelf,
    "wash": lambda: import_module("swatchwright.commands.wash").wash,
}
"""How each command is imported."""


def _command(name: str) -> Callable[[argparse.Namespace], int]:
    """Import a command when it is asked for."""
    return cast(Callable[[argparse.Namespace], int], _WHERE[name]())
