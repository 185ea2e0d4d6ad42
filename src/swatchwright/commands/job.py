"""``swatchwright job``."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from swatchwright.acts import jobs as acts
from swatchwright.colour.names import closeness
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.job_words import (
    job_json,
    line_json,
    print_job,
    print_lines,
    print_steps,
    steps_json,
)
from swatchwright.commands.store_words import changes_json, named_store, tell_changes
from swatchwright.commands.words import print_json, rectangle, three_numbers
from swatchwright.errors import MendableError
from swatchwright.values import Lab

if TYPE_CHECKING:
    from swatchwright.acts.jobs import Store
    from swatchwright.shelf.shelf import Shelf

__all__ = ["job"]


def job(arguments: argparse.Namespace) -> ExitCode:
    """Do what is asked of the jobs."""
    with named_store(arguments) as store:
        if "job" in arguments:
            arguments.job = acts.id_of(store, arguments.job)
        return _DEEDS[arguments.deed](store, arguments)


# --- looking -------------------------------------------------------------------------------------


def _list(store: Store, arguments: argparse.Namespace) -> ExitCode:
    status = None if arguments.status is None else acts.status_of(arguments.status)
    lines = acts.list_jobs(store, status=status)
    if arguments.json:
        print_json({"jobs": [line_json(line) for line in lines]})
    elif lines:
        print_lines(lines)
    elif status is None:
        print("No job is kept yet. Begin one: swatchwright job new “Blanket box”")
    else:
        print(f"No job is “{status}”.")
    return ExitCode.DONE


def _show(store: Store, arguments: argparse.Namespace) -> ExitCode:
    shown = acts.job_of(store, arguments.job)
    if arguments.json:
        print_json(job_json(shown))
    else:
        print_job(shown)
    return ExitCode.DONE


def _find(store: Store, arguments: argparse.Namespace) -> ExitCode:
    like = arguments.like
    found = acts.find_jobs(
        store,
        text=" ".join(arguments.words),
        piece=arguments.piece,
        client=arguments.client,
        like=None if like is None else Lab.of_a_surface(*three_numbers(like, "--like")),
        within=arguments.within,
    )
    if arguments.json:
        print_json({"jobs": [line_json(f.line, f.near) for f in found]})
    elif found:
        print_lines([f.line for f in found], [f.near for f in found])
    else:
        print("No job is like that.")
    return ExitCode.DONE


def _history(store: Store, arguments: argparse.Namespace) -> ExitCode:
    steps = acts.edits(store)
    if arguments.json:
        print_json({"edits": steps_json(steps)})
    elif steps:
        print_steps(steps)
    else:
        print("Nothing was done yet.")
    return ExitCode.DONE


# --- the head ------------------------------------------------------------------------------------


def _new(store: Store, arguments: argparse.Namespace) -> ExitCode:
    changes = acts.new_job(
        store,
        title=arguments.title,
        client=arguments.client or "",
        brief=arguments.brief or "",
        room_light=arguments.light or "",
    )
    tell_changes(changes, arguments)
    if not arguments.json:
        print(f"Its id is {changes.jobs[0]}.")
    return ExitCode.DONE


def _change(store: Store, arguments: argparse.Namespace) -> ExitCode:
    changes = acts.change_job(
        store,
        arguments.job,
        title=arguments.title,
        client=arguments.client,
        brief=arguments.brief,
        room_light=arguments.light,
        status=None if arguments.status is None else acts.status_of(arguments.status),
    )
    return tell_changes(changes, arguments)


def _note(store: Store, arguments: argparse.Namespace) -> ExitCode:
    return tell_changes(acts.note_job(store, arguments.job, arguments.text), arguments)


def _copy(store: Store, arguments: argparse.Namespace) -> ExitCode:
    changes = acts.copy_job(store, arguments.job, title=arguments.title, client=arguments.client)
    tell_changes(changes, arguments)
    if not arguments.json:
        print(f"The copy's id is {changes.jobs[0]}.")
    return ExitCode.DONE


def _remove(store: Store, arguments: argparse.Namespace) -> ExitCode:
    tell_changes(acts.remove_job(store, arguments.job), arguments)
    if not arguments.json:
        print("To have it back: swatchwright job undo")
    return ExitCode.DONE


def _undo(store: Store, arguments: argparse.Namespace) -> ExitCode:
    return tell_changes(acts.undo(store), arguments, "Undone: ")


def _redo(store: Store, arguments: argparse.Namespace) -> ExitCode:
    return tell_changes(acts.redo(store), arguments, "Redone: ")


# --- mixing --------------------------------------------------------------------------------------


def _photo(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.job_photos import add_photo
    from swatchwright.shelf.jobs import Marks

    grey = rectangle(arguments.grey, "--grey")
    marks = Marks(
        grey=() if grey is None else (grey,),
        cloth=rectangle(arguments.area, "--area"),
        reflectance=0.18 if arguments.grey_y is None else arguments.grey_y,
    )
    changes = add_photo(store, arguments.job, Path(arguments.photo), marks=marks)
    return tell_changes(changes, arguments)


def _recipe(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.batches import keep_recipes
    from swatchwright.acts.job_pick import picked_colour
    from swatchwright.acts.recipes import recipes_for, typed_colour

    read = None
    if arguments.lab is None:
        wanted, read = picked_colour(store, arguments.job, arguments.pick)
    else:
        wanted = typed_colour(*three_numbers(arguments.lab))
    shelf = _shelf(store, arguments)
    found = recipes_for(wanted, shelf, most_paints=arguments.paints, keep=arguments.keep)
    choose = arguments.choose or None
    changes = keep_recipes(
        store, arguments.job, found, zone=arguments.zone, choose=choose, read=read
    )
    tell_changes(changes, arguments)
    if not arguments.json:
        print_job(acts.job_of(store, arguments.job), zone=arguments.zone)
        if found.shortfall is not None:
            towards = " and ".join(found.shortfall.towards) or "otherwise"
            print(
                f"Nothing on the shelf reaches it. The nearest stays {found.shortfall.delta_e:.1f} "
                f"CIEDE2000 off ({closeness(found.shortfall.delta_e)}): it would have to be "
                f"{towards}."
            )
        for note in found.notes:
            print(f"Note: {note}")
        doubt = found.recipes[0].confidence.both
        if doubt:
            print(f"Usually within {doubt:.0f} of the cloth, untried ({closeness(round(doubt))}).")
        print("Brush a sample on card, dry it, and hold it to the cloth before you mix the batch.")
    return ExitCode.DONE if found.shortfall is None else ExitCode.OUT_OF_REACH


def _take_off(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.batches import take_off_mix

    return tell_changes(take_off_mix(store, arguments.job, arguments.zone), arguments)


def _shelf(store: Store, arguments: argparse.Namespace) -> Shelf:
    from swatchwright.acts.stock import ShelfKind, kept_shelf
    from swatchwright.shelf.csv_file import read_shelf

    if arguments.shelf is not None:
        return read_shelf(Path(arguments.shelf))
    kept = kept_shelf(store)
    if kept.kind is ShelfKind.EMPTY:
        raise MendableError(
            "Your shelf is empty.",
            "Bring in your paints with swatchwright shelf import FILE.csv, or take the invented "
            "ones with swatchwright shelf demo.",
        )
    return kept.shelf


def _batch(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.batches import make_batch, take_back_batch

    if arguments.take_back is not None:
        if arguments.volume is not None:
            raise MendableError(
                "Both --take-back and --volume were given.", "Take a batch back or mix one."
            )
        return tell_changes(take_back_batch(store, arguments.job, arguments.take_back), arguments)
    changes = make_batch(
        store,
        arguments.job,
        volume=500.0 if arguments.volume is None else arguments.volume,
        zone=arguments.zone,
        day=arguments.day,
        note=arguments.note,
    )
    batch = acts.job_of(store, arguments.job).batches[-1]
    if arguments.json:
        poured = [{"id": p.paint, "ml": p.ml, "drawn_ml": p.drawn} for p in batch.poured]
        print_json({**changes_json(changes), "number": batch.number, "poured": poured})
        return ExitCode.DONE
    tell_changes(changes, arguments)
    for p in batch.poured:
        print(f"{p.ml:8.1f} ml  {p.name} ({p.paint})")
    return ExitCode.DONE


# --- moving --------------------------------------------------------------------------------------


def _export(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.job_files import export_job

    out = None if arguments.out is None else Path(arguments.out)
    written = export_job(store, arguments.job, out)
    if arguments.json:
        print_json({"files": [str(written)]})
    else:
        print(f"Written: {written}")
    return ExitCode.DONE


def _import(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.job_files import import_job

    return tell_changes(import_job(store, Path(arguments.file)), arguments)


def _rescue(store: Store, arguments: argparse.Namespace) -> ExitCode:
    from swatchwright.acts.job_files import rescue_store

    return tell_changes(rescue_store(store, Path(arguments.file)), arguments)


_DEEDS: dict[str, Callable[[Store, argparse.Namespace], ExitCode]] = {
    "batch": _batch,
    "change": _change,
    "copy": _copy,
    "export": _export,
    "find": _find,
    "history": _history,
    "import": _import,
    "list": _list,
    "new": _new,
    "note": _note,
    "photo": _photo,
    "recipe": _recipe,
    "redo": _redo,
    "remove": _remove,
    "rescue": _rescue,
    "show": _show,
    "take-off": _take_off,
    "undo": _undo,
}
