"""``swatchwright recipe --list``: a line of JSON a colour, taken up again where it stopped."""

from __future__ import annotations

import argparse
import hashlib
import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TextIO

from swatchwright import __version__
from swatchwright.acts.many import ListedColour, read_colour_list, recipes_for_list
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.recipe_json import recipes_json
from swatchwright.commands.words import chosen_shelf
from swatchwright.errors import MendableError
from swatchwright.shelf.shelf import Shelf

__all__ = ["recipes_of_list"]


def recipes_of_list(arguments: argparse.Namespace) -> ExitCode:
    """Write the recipes for each colour of a list, those that are not written yet."""
    _refuse_other_ways(arguments)
    colours = read_colour_list(Path(arguments.list))
    shelf = chosen_shelf(arguments)
    request = _fingerprint(shelf, arguments)
    if arguments.out is None:
        return _work(colours, shelf, arguments, request, sys.stdout)
    out = Path(arguments.out)
    done = _already_done(out, request)
    left = [colour for colour in colours if colour.name not in done]
    if done:
        print(f"{len(colours) - len(left)} of {len(colours)} were done before.", file=sys.stderr)
    try:
        with out.open("a", encoding="utf-8", newline="\n") as file:
            return _work(left, shelf, arguments, request, file)
    except OSError as error:
        raise MendableError(
            f"{out} could not be written: {error.strerror}.", "Choose another place for --out."
        ) from error


def _refuse_other_ways(arguments: argparse.Namespace) -> None:
    for option in ("photo", "lab", "srgb", "grey", "area", "pick"):
        if getattr(arguments, option) is not None:
            raise MendableError(
                f"--list was given together with {option}.", "Ask for a list or for one colour."
            )


def _work(
    colours: Sequence[ListedColour],
    shelf: Shelf,
    arguments: argparse.Namespace,
    request: str,
    file: TextIO,
) -> ExitCode:
    """Write a line for each colour as it comes, with the progress on the other stream."""
    short = 0
    rows = recipes_for_list(
        colours,
        shelf,
        most_paints=arguments.paints,
        keep=arguments.keep,
        volume=arguments.volume,
        workers=arguments.workers,
        backend=arguments.backend,
    )
    for count, (colour, found) in enumerate(rows, start=1):
        line = {"name": colour.name, "request": request, **recipes_json(found)}
        file.write(json.dumps(line, ensure_ascii=False) + "\n")
        file.flush()
        short += found.shortfall is not None
        print(f"{count} of {len(colours)}: {colour.name}", file=sys.stderr)
    if short:
        print(f"{short} of {len(colours)} are out of reach of the shelf.", file=sys.stderr)
    return ExitCode.OUT_OF_REACH if short else ExitCode.DONE


def _fingerprint(shelf: Shelf, arguments: argparse.Namespace) -> str:
    """Give a short name of all that the answers depend on, besides the colours."""
    asked = (__version__, arguments.paints, arguments.keep, arguments.volume)
    digest = hashlib.sha256(repr(asked).encode())
    for paint in shelf.paints:
        known = (paint.id, paint.name, paint.family.value, paint.volume_solids, paint.density)
        digest.update(repr((*known, paint.spreading_rate, paint.how_known.value)).encode())
        digest.update(paint.K.tobytes() + paint.S.tobytes())
    return digest.hexdigest()[:16]


def _already_done(out: Path, request: str) -> set[str]:
    """Read which colours a file has already; a line cut off by a stop is taken away."""
    if not out.exists():
        return set()
    lines = out.read_text(encoding="utf-8").splitlines(keepends=True)
    if lines and not lines[-1].endswith("\n"):
        lines.pop()
        out.write_text("".join(lines), encoding="utf-8", newline="\n")
    try:
        rows = [json.loads(line) for line in lines]
        done = {row["name"]: row["request"] for row in rows}
    except (ValueError, KeyError, TypeError) as error:
        raise MendableError(
            f"{out} is there already and holds something else.", "Choose another file for --out."
        ) from error
    if any(made != request for made in done.values()):
        raise MendableError(
            f"{out} holds answers for another shelf or other options.",
            "Choose another file for --out, or ask for the same again.",
        )
    return set(done)
