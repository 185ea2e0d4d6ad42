"""``swatchwright shelf``."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from swatchwright.acts.stock import (
    KeptShelf,
    ShelfKind,
    add_stock,
    draw_stock,
    export_shelf,
    import_shelf,
    kept_shelf,
    remove_paints,
    set_stock,
    take_demo_shelf,
)
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.store_words import named_store, tell_changes
from swatchwright.commands.words import print_json

if TYPE_CHECKING:
    from swatchwright.acts.jobs import Store

__all__ = ["shelf"]


def shelf(arguments: argparse.Namespace) -> ExitCode:
    """Do what is asked of the shelf."""
    with named_store(arguments) as store:
        if arguments.deed == "list":
            return _list(kept_shelf(store), arguments)
        if arguments.deed == "export":
            return _export(store, arguments)
        if arguments.deed == "stock":
            change = {"set": set_stock, "add": add_stock, "draw": draw_stock}[arguments.how]
            return tell_changes(change(store, arguments.id, arguments.ml), arguments)
        if arguments.deed == "remove":
            return tell_changes(remove_paints(store, tuple(arguments.ids)), arguments)
        if arguments.deed == "demo":
            return tell_changes(take_demo_shelf(store), arguments)
        changes = import_shelf(store, Path(arguments.file), replace_all=arguments.replace)
        return tell_changes(changes, arguments)


def _export(store: Store, arguments: argparse.Namespace) -> ExitCode:
    written = export_shelf(store, Path(arguments.file))
    if arguments.json:
        print_json({"files": [str(path) for path in written]})
    else:
        print(f"Written: {', '.join(str(path) for path in written)}")
    return ExitCode.DONE


def _list(kept: KeptShelf, arguments: argparse.Namespace) -> ExitCode:
    if arguments.json:
        print_json(_as_json(kept))
        return ExitCode.DONE
    if kept.kind is ShelfKind.EMPTY:
        print("Your shelf is empty.")
        print("Bring in your paints: swatchwright shelf import FILE.csv")
        print("Or look around with 24 invented ones: swatchwright shelf demo")
        return ExitCode.DONE
    width = max(len(stocked.paint.id) for stocked in kept.stocked)
    for stocked in kept.stocked:
        paint = stocked.paint
        left = "      ?" if stocked.ml_left is None else f"{stocked.ml_left:7.0f}"
        print(f"{paint.id:{width}}  {left} ml  {paint.name} ({paint.family}, {paint.how_known})")
    if kept.kind is ShelfKind.DEMO:
        print("\nThese paints are invented for the demonstration; no such paint is sold.")
    return ExitCode.DONE


def _as_json(kept: KeptShelf) -> dict[str, Any]:
    return {
        "kind": kept.kind.value,
        "paints": [
            {
                "id": stocked.paint.id,
                "name": stocked.paint.name,
                "family": stocked.paint.family.value,
                "how_known": stocked.paint.how_known.value,
                "ml_left": stocked.ml_left,
                "tins_ml": [tin.ml for tin in stocked.paint.tins],
            }
            for stocked in kept.stocked
        ],
    }
