"""How well the paints of a shelf are known: a second CSV file beside the shelf's own.

`mine.csv` has `mine.doubt.csv` beside it, with a line for each direction in which a paint's ln K
and ln S may be off together: ``id, direction, of``, then ``k_380 .. k_730`` and ``s_380 ..
s_730``, the step of one standard deviation. ``of`` is a mark of the K that the line was made for:
if K has been changed since, the line is out of date and left out.
"""

from __future__ import annotations

import csv
from collections.abc import Sequence
from dataclasses import replace
from hashlib import sha256
from io import StringIO
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.errors import MendableError
from swatchwright.language import mark, say, say_count
from swatchwright.paint.paints import Paint
from swatchwright.shelf.plain_text import read_text
from swatchwright.shelf.rows import FileKind, Row, read_rows
from swatchwright.shelf.shelf import Shelf

__all__ = ["parse_spreads", "spread_path", "spread_text", "with_spreads"]

Floats = NDArray[np.floating[Any]]

_COLUMNS = [f"{letter}_{nm:g}" for letter in "ks" for nm in WAVELENGTHS]
_MOST_DIRECTIONS = len(_COLUMNS)

# A paint of which so little is known is not known at all: a factor of e to the twentieth.
_MOST_STEP = 20.0

_KIND = FileKind(
    place="the file of doubts",
    things="lines",
    layout=mark("It is written beside a shelf when paints are fitted; take it away to do without."),
    most=50_000,
)


def spread_path(path: Path) -> Path:
    """Give the file beside a shelf's that holds how well its paints are known."""
    return path.with_suffix(".doubt.csv")


def mark_of(paint: Paint) -> str:
    """Give a mark of a paint's K that changes when it does by a millionth."""
    return sha256(",".join(f"{value:.6g}" for value in paint.K).encode()).hexdigest()[:12]


def spread_text(paints: Sequence[Paint]) -> str | None:
    """Write the spreads of paints; None if there are none."""
    known = [(paint, paint.spread) for paint in paints if paint.spread is not None]
    if not known:
        return None
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["id", "direction", "of", *_COLUMNS])
    for paint, spread in known:
        # A paint that is known exactly has no direction: its only line is numbered 0.
        steps = spread if len(spread) else np.zeros((1, _MOST_DIRECTIONS))
        for number, step in enumerate(steps, 1 if len(spread) else 0):
            writer.writerow([paint.id, number, mark_of(paint), *(repr(float(v)) for v in step)])
    return out.getvalue()


def with_spreads(shelf: Shelf, path: Path) -> Shelf:
    """Give the shelf with what the file beside its own says of how well paints are known.

    Raises
    ------
    MendableError
        If there is such a file and it is broken.
    """
    beside = spread_path(path)
    if not beside.is_file():
        return shelf
    text = read_text(beside, "a file of doubts", say(_KIND.layout))
    return parse_spreads(text, beside.name, shelf)


def parse_spreads(text: str, name: str, shelf: Shelf) -> Shelf:
    """Give the shelf with the spreads that a text holds.

    Raises
    ------
    MendableError
        If a column is missing, a number impossible or a paint's lines are not numbered in turn.
    """
    rows, header = read_rows(text, name, _KIND)
    missing = [column for column in ("id", "direction", "of", *_COLUMNS) if column not in header]
    if missing:
        raise MendableError(
            say("{name} has no column {columns}.", name=name, columns=missing[0]),
            say(_KIND.layout),
        )
    by_id: dict[str, list[Row]] = {}
    for row in rows:
        by_id.setdefault(row.text("id"), []).append(row)
    paints, old = [], []
    for paint in shelf.paints:
        mine = by_id.pop(paint.id, [])
        if mine and any(row.text("of") != mark_of(paint) for row in mine):
            old.append(paint.id)
        elif mine:
            paint = replace(paint, spread=_spread(mine))  # noqa: PLW2901 - the same, known better
        paints.append(paint)
    notes = list(shelf.notes)
    if old:
        notes.append(_out_of_date(name, old))
    if by_id:
        notes.append(
            say(
                "{name} speaks of paints that are not on the shelf: {ids}.",
                name=name,
                ids=", ".join(by_id),
            )
        )
    return replace(shelf, paints=tuple(paints), notes=tuple(notes))


def _out_of_date(name: str, ids: Sequence[str]) -> str:
    return say_count(
        "How well {ids} is known was not read: K has been changed since {name} was written. Fit "
        "the paint again to know.",
        "How well {ids} are known was not read: K has been changed since {name} was written. Fit "
        "the paint again to know.",
        len(ids),
        ids=", ".join(ids),
        name=name,
    )


def _spread(rows: list[Row]) -> Floats:
    """Read a paint's directions (n, 72)."""
    first, numbers = rows[0], [row.text("direction") for row in rows]
    if numbers == ["0"]:
        return np.zeros((0, _MOST_DIRECTIONS))
    if numbers != [str(n) for n in range(1, len(rows) + 1)] or len(rows) > _MOST_DIRECTIONS:
        raise MendableError(
            say(
                "From line {line} of the file of doubts on, the lines of {id} are not numbered "
                "1, 2, 3 …, up to {most}.",
                line=first.line,
                id=first.text("id"),
                most=_MOST_DIRECTIONS,
            ),
            say(_KIND.layout),
        )
    return np.array([[_step(row, column) for column in _COLUMNS] for row in rows])


def _step(row: Row, column: str) -> float:
    value = row.parsed(column, row.text(column))
    if abs(value) > _MOST_STEP:
        raise MendableError(
            say(
                "Line {line} of the file of doubts has {value:g} under {column}.",
                line=row.line,
                value=value,
                column=column,
            ),
            say("It lies between -{most:g} and {most:g}.", most=_MOST_STEP),
        )
    return value
