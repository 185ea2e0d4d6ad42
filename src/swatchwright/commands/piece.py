"""``swatchwright piece``, and reading which piece is meant."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path
from typing import Any

from swatchwright.acts.piece import (
    SizedPiece,
    kind_named,
    leg_named,
    read_piece,
    save_piece,
    sized,
    sized_piece,
    write_drawing,
)
from swatchwright.acts.piece_job import PieceForm, form_for, keep_piece
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.for_job import keep_for_job
from swatchwright.commands.words import print_json
from swatchwright.errors import MendableError

__all__ = ["chosen_piece", "piece", "split_pair"]

_SIZES = ("width", "height", "depth", "drawers", "leg", "inside")


def piece(arguments: argparse.Namespace) -> ExitCode:
    """Print what of a piece is painted."""
    found = chosen_piece(arguments)
    if found is None:
        raise MendableError(
            "No piece was named.", "Name one, as in: swatchwright piece chair; or give --parts."
        )
    if arguments.colour and not arguments.drawing:
        raise MendableError("A colour was given, but no drawing.", "Add --drawing FILE.svg.")
    if arguments.save:
        save_piece(found.piece, Path(arguments.save))
    if arguments.drawing:
        colours = dict(split_pair(text, "--colour", "drawers=#a15047") for text in arguments.colour)
        write_drawing(found.piece, Path(arguments.drawing), colours)
    keep_for_job(
        arguments, lambda store, id_: keep_piece(store, id_, _form(arguments), found.piece, None)
    )
    if arguments.json:
        print_json(_piece_json(found))
    else:
        _print_piece(found)
        for path in (arguments.save, arguments.drawing):
            if path:
                print(f"Written: {path}")
    return ExitCode.DONE


def _form(arguments: argparse.Namespace) -> PieceForm:
    """Give the form that a piece of these words has in the window."""
    if arguments.piece is None:
        return PieceForm(None, by_hand=True)
    form = form_for(kind_named(arguments.piece))
    given = {name: getattr(arguments, name) for name in ("width", "height", "depth", "drawers")}
    return replace(
        form,
        **{name: value for name, value in given.items() if value is not None},
        leg=form.leg if arguments.leg is None else leg_named(arguments.leg),
        inside=bool(arguments.inside),
    )


def chosen_piece(arguments: argparse.Namespace) -> SizedPiece | None:
    """Give the piece that was named or read from a file; None where neither was asked for.

    Raises
    ------
    MendableError
        If both were, or sizes without a kind.
    """
    asked = [name for name in _SIZES if getattr(arguments, name)]
    if arguments.parts is not None:
        if arguments.piece is not None or asked:
            raise MendableError(
                "A file of parts was given, and a kind or a size too.",
                "Give one or the other; sizes of parts stand in the file.",
            )
        return sized(read_piece(Path(arguments.parts)))
    if arguments.piece is None:
        if asked:
            raise MendableError(f"--{asked[0]} was given, but no kind.", "Name the kind of piece.")
        return None
    return sized_piece(
        kind_named(arguments.piece),
        width=arguments.width,
        height=arguments.height,
        depth=arguments.depth,
        drawers=arguments.drawers,
        leg=None if arguments.leg is None else leg_named(arguments.leg),
        inside=arguments.inside,
    )


def split_pair(text: str, option: str, example: str) -> tuple[str, str]:
    """Read ``NAME=VALUE``.

    Raises
    ------
    MendableError
        If one of them is missing.
    """
    name, equals, value = text.partition("=")
    if not (name.strip() and equals and value.strip()):
        raise MendableError(f"{option} was given “{text}”.", f"Write it as {option} {example}.")
    return name.strip(), value.strip()


def _piece_json(found: SizedPiece) -> dict[str, Any]:
    return {
        "name": found.piece.name,
        "parts": [
            {"name": p.name, "count": p.count, "zone": p.zone, "area_m2": round(p.area, 5)}
            for p in found.areas.parts
        ],
        "zones": [{"zone": z.zone, "area_m2": round(z.area, 5)} for z in found.areas.zones],
        "total_m2": round(found.areas.total, 5),
    }


def _print_piece(found: SizedPiece) -> None:
    print(f"{found.piece.name}: {found.areas.total:.2f} m² to paint")
    for part in found.areas.parts:
        name = f"{part.count} × {part.name}" if part.count > 1 else part.name
        print(f"  {name:24} {part.zone:12} {part.area:7.3f} m²")
    for zone in found.areas.zones:
        print(f"{zone.zone:39} {zone.area:7.2f} m²")
