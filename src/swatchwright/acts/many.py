"""Recipes for many colours at once, over the cores of this machine or others."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from swatchwright.acts.recipes import DEFAULT_VOLUME, Recipes, read_colour, recipes_for
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour

__all__ = ["ListedColour", "read_colour_list", "recipes_for_list"]

_MOST_COLOURS = 100_000
_LAB = ("l", "a", "b")


@dataclass(frozen=True, slots=True)
class ListedColour:
    """A colour of a list, by the name the list gives it."""

    name: str
    colour: KnownColour


def read_colour_list(path: Path) -> tuple[ListedColour, ...]:
    """Read a CSV list of wanted colours.

    Columns ``name`` and either ``srgb`` (#rrggbb) or ``l, a, b`` (CIELAB, D65).

    Raises
    ------
    MendableError
        If it cannot be read, a column is missing, a name comes twice or a colour is impossible;
        the message names the line.
    """
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        raise MendableError(
            say("The list {file} could not be read as text.", file=path),
            say("Check its name; it is a CSV file."),
        ) from error
    lines = text.splitlines()
    reader = csv.DictReader(lines, skipinitialspace=True)
    fields = [field.strip().lower() for field in reader.fieldnames or []]
    if "name" not in fields or not ("srgb" in fields or set(_LAB) <= set(fields)):
        raise MendableError(
            say(
                "{file} has the columns {columns}.",
                file=path.name,
                columns=", ".join(fields) or say("of nothing"),
            ),
            say("A list of colours has a column name, and either srgb or l, a, b."),
        )
    reader.fieldnames = fields
    colours = tuple(_listed(row, reader.line_num) for row in reader)
    if not 0 < len(colours) <= _MOST_COLOURS:
        raise MendableError(
            say("{file} lists {many} colours.", file=path.name, many=len(colours)),
            say("List from 1 to {most}.", most=_MOST_COLOURS),
        )
    _check_names(colours)
    return colours


def _listed(row: dict[str, str], line: int) -> ListedColour:
    name, srgb = (row.get("name") or "").strip(), (row.get("srgb") or "").strip()
    text = srgb or ",".join((row.get(c) or "").strip() for c in _LAB)
    if not name:
        raise MendableError(
            say("Line {line} of the list has no name.", line=line), say("Name each colour.")
        )
    try:
        return ListedColour(name, read_colour(text))
    except MendableError as error:
        raise MendableError(
            say("Line {line} of the list: {what}", line=line, what=error.what), error.mend
        ) from error


def _check_names(colours: Sequence[ListedColour]) -> None:
    names = [colour.name for colour in colours]
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise MendableError(
                say("The list names “{name}” more than once.", name=name),
                say("Give each colour a name of its own."),
            )
        seen.add(name)


def recipes_for_list(
    colours: Sequence[ListedColour],
    shelf: Shelf,
    *,
    most_paints: int = 3,
    keep: int = 6,
    volume: float = DEFAULT_VOLUME,
    workers: int = 1,
    backend: str = "loky",
) -> Iterator[tuple[ListedColour, Recipes]]:
    """Find the recipes for each colour of a list, in its order, as they come.

    Parameters
    ----------
    colours, shelf, most_paints, keep, volume
        As `recipes_for` takes them.
    workers
        How many to work on at a time; -1 for all cores. Results do not depend on it.
    backend
        A joblib backend by its name: ``loky`` (processes of this machine), ``threading``, or one
        that has been registered with joblib, such as ``dask``.

    Raises
    ------
    MendableError
        If the backend is not known, or as `recipes_for` does.
    """
    from joblib import Parallel, delayed

    task = delayed(_one)
    try:
        found = Parallel(n_jobs=workers, backend=backend, return_as="generator")(
            task(colour.colour, shelf, most_paints, keep, volume) for colour in colours
        )
    except (ValueError, ImportError) as error:
        raise MendableError(
            say(
                "Work cannot be spread by “{backend}” over {workers} workers.",
                backend=backend,
                workers=workers,
            ),
            say("Use loky, threading, or a backend that is installed and registered with joblib."),
        ) from error
    yield from zip(colours, found, strict=True)


def _one(wanted: KnownColour, shelf: Shelf, most_paints: int, keep: int, volume: float) -> Recipes:
    return recipes_for(wanted, shelf, most_paints=most_paints, keep=keep, volume=volume)
