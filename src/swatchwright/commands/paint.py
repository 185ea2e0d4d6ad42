"""``swatchwright paint``: brushouts, fit, show, dry and add."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from swatchwright.acts.brush_outs import brush_outs_wanted, wanted_text
from swatchwright.acts.fit import Gloss, fit_sheet
from swatchwright.acts.own_paint import ColourFrom, add_paint, paint_by_hand
from swatchwright.acts.paint import dry_alike, look_of_paint
from swatchwright.acts.recipes import read_colour
from swatchwright.acts.stock import kept_shelf
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.paint_words import (
    asked_json,
    drying_json,
    fitted_json,
    look_json,
    print_asked,
    print_drying,
    print_fitted,
    print_look,
)
from swatchwright.commands.store_words import changes_json, named_store, tell_changes
from swatchwright.commands.words import chosen_shelf, print_json, print_notes, three_numbers
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family, family_of
from swatchwright.paint.paints import Tin
from swatchwright.shelf.brush_outs import read_sheet
from swatchwright.shelf.csv_file import read_shelf
from swatchwright.shelf.measured import read_measurements
from swatchwright.shelf.plain_text import write_text
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.write import write_shelf
from swatchwright.values import Lab

__all__ = ["paint"]


def paint(arguments: argparse.Namespace) -> ExitCode:
    """Do what was asked with paints."""
    doing = {"brushouts": _brushouts, "fit": _fit, "show": _show, "dry": _dry, "add": _add}
    return doing[arguments.doing](arguments)


def _brushouts(arguments: argparse.Namespace) -> ExitCode:
    wanted = brush_outs_wanted(
        chosen_shelf(arguments), arguments.ids, card=arguments.card, white=arguments.white
    )
    written: tuple[Path, ...] = ()
    if arguments.out is not None:
        written = (Path(arguments.out),)
        write_text(written[0], wanted_text(wanted), "a sheet")
    if arguments.json:
        print_json({**asked_json(wanted), "written": [str(path) for path in written]})
    else:
        print_asked(wanted)
        _print_written(written)
    return ExitCode.DONE


def _fit(arguments: argparse.Namespace) -> ExitCode:
    if arguments.usually_off is not None and not 0 < arguments.usually_off <= 30:
        raise MendableError(
            f"--usually-off was given {arguments.usually_off:g}.",
            "It lies above 0 and is at most 30: about 0.5 for an instrument, 5.5 for a photo.",
        )
    sheet = read_sheet(Path(arguments.sheet))
    shelf = None if arguments.shelf is None else read_shelf(Path(arguments.shelf))
    readings = arguments.readings
    fitted = fit_sheet(
        sheet,
        shelf,
        measured=None if readings is None else read_measurements(Path(readings)),
        again=[id_.strip() for id_ in (arguments.again or "").split(",") if id_.strip()],
        by_weight=arguments.by_weight,
        gloss=Gloss(arguments.gloss),
        usually_off=arguments.usually_off,
    )
    written = _written(fitted.shelf, arguments)
    if arguments.json:
        print_json({**fitted_json(fitted), "written": [str(path) for path in written]})
    else:
        print_fitted(fitted)
        print_notes(fitted.notes)
        _print_written(written, kept=False)
    return ExitCode.DONE


def _show(arguments: argparse.Namespace) -> ExitCode:
    shelf = chosen_shelf(arguments)
    look = look_of_paint(shelf, arguments.id)
    if arguments.json:
        print_json({**look_json(look), "notes": list(shelf.notes)})
    else:
        print_look(look)
        print_notes(shelf.notes)
    return ExitCode.DONE


def _dry(arguments: argparse.Namespace) -> ExitCode:
    shelf, drying = dry_alike(
        chosen_shelf(arguments),
        arguments.id,
        wet=Lab.of_a_surface(*three_numbers(arguments.wet, "--wet")),
        dry=Lab.of_a_surface(*three_numbers(arguments.dry, "--dry")),
    )
    written = _written(shelf, arguments)
    if arguments.json:
        told: dict[str, Any] = drying_json(drying)
        print_json({**told, "written": [str(path) for path in written]})
    else:
        print_drying(drying)
        _print_written(written, kept=False)
    return ExitCode.DONE


def _add(arguments: argparse.Namespace) -> ExitCode:
    family = family_of(arguments.kind)
    if family is None:
        raise MendableError(
            f"“{arguments.kind}” is no kind of paint we know.",
            f"--kind takes one of: {', '.join(Family)}.",
        )
    colour = read_colour(arguments.colour).lab
    tins = tuple(_tin(text) for text in arguments.tin)
    with named_store(arguments) as store:
        kept = kept_shelf(store).shelf
        made = paint_by_hand(
            arguments.name,
            family,
            colour,
            shelf=kept,
            usually_off=ColourFrom(arguments.known).usually_off,
            tins=tins,
        )
        changes = add_paint(store, made)
        shelf = kept_shelf(store).shelf
    if arguments.json:
        print_json({**changes_json(changes), "paint": look_json(look_of_paint(shelf, made.id))})
        return ExitCode.DONE
    done = tell_changes(changes, arguments)
    print_look(look_of_paint(shelf, made.id))
    return done


def _tin(text: str) -> Tin:
    """Read a size with or without its price."""
    ml, equals, price = text.partition("=")
    try:
        return Tin(float(ml), float(price) if equals else None)
    except ValueError as error:
        raise MendableError(
            f"--tin was given “{text}”.",
            "Give ml, or ml and the price of that tin, such as 750 or 750=24.50.",
        ) from error


def _written(shelf: Shelf, arguments: argparse.Namespace) -> tuple[Path, ...]:
    return () if arguments.out is None else write_shelf(shelf, Path(arguments.out))


def _print_written(written: tuple[Path, ...], *, kept: bool = True) -> None:
    if written:
        print(f"Written: {', '.join(map(str, written))}")
    elif not kept:
        print("Nothing was written: with --out FILE.csv the shelf is kept.")
