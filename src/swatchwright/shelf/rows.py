"""The lines of a CSV file as spreadsheets write it, with what is needed to blame a cell."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import reduce
from io import StringIO
from itertools import islice
from math import isfinite

from swatchwright.errors import MendableError
from swatchwright.language import mark, mark_in, say, say_in

__all__ = ["FileKind", "Row", "neither", "read_rows"]

_PLACE = "place of a line"
_PLACES = (
    mark_in("place of a line", "the shelf"),
    mark_in("place of a line", "the sheet"),
    mark_in("place of a line", "the file of doubts"),
)
_THINGS = "on the lines of a file"
_ALL_THINGS = (
    mark_in("on the lines of a file", "paints"),
    mark_in("on the lines of a file", "brush-outs"),
    mark_in("on the lines of a file", "lines"),
    mark_in("on the lines of a file", "samples"),
)
_OUTSIDE = mark("Line {line} of {place} has {value:g} under {column}.")


@dataclass(frozen=True, slots=True)
class FileKind:
    """How messages speak of a file of one kind, in English.

    Parameters
    ----------
    place
        What the file is, as in “line 3 of the shelf”.
    things
        What its lines hold, in the plural.
    layout
        A sentence that tells how such a file is laid out, marked for translation.
    most
        How many lines below the column names are read at most.
    also_called
        Other names of columns, each with the name it is read by.
    """

    place: str
    things: str
    layout: str
    most: int
    also_called: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the file, with what is needed to read a number and to blame it."""

    line: int
    cells: dict[str, str]
    comma: bool
    place: str

    def text(self, column: str) -> str:
        """Give what stands under a column, without spaces around it; empty where nothing does."""
        return (self.cells.get(column) or "").strip()

    def number(self, column: str, default: float | None) -> float | None:
        """Read the number under a column, if there is anything."""
        text = self.text(column)
        return default if not text else self.parsed(column, text)

    def parsed(self, column: str, text: str) -> float:
        """Read a text that stands under a column as a number."""
        try:
            value = float(text.replace(",", ".") if self.comma else text)
        except ValueError:
            value = float("nan")
        if not isfinite(value):
            raise MendableError(
                say(
                    "Line {line} of {place} has “{text}” under {column}, "
                    "where a number is expected.",
                    line=self.line,
                    place=self._said(),
                    text=text,
                    column=column,
                ),
                say("Put a plain number there, such as 0.38."),
            )
        return value

    def between(self, column: str, default: float | None, low: float, high: float) -> float | None:
        """Read a number above `low` and at most `high`."""
        value = self.number(column, default)
        return None if value is None else self.checked(column, value, low, high)

    def within(self, column: str, low: float, high: float) -> float | None:
        """Read a number, if there is one, from `low` to `high`, both included."""
        value = self.number(column, None)
        if value is not None and not low <= value <= high:
            raise self._outside(
                column, value, say("It should lie from {low:g} to {high:g}.", low=low, high=high)
            )
        return value

    def checked(self, column: str, value: float, low: float, high: float) -> float:
        """Refuse a number that is not above `low` and at most `high`."""
        if not low < value <= high:
            mend = say("It should lie above {low:g} and be at most {high:g}.", low=low, high=high)
            raise self._outside(column, value, mend)
        return value

    def _outside(self, column: str, value: float, mend: str) -> MendableError:
        place = self._said()
        what = say(_OUTSIDE, line=self.line, place=place, value=value, column=column)
        return MendableError(what, mend)

    def _said(self) -> str:
        """Say what the file is; one that is told by its name stays as it is."""
        return say_in(_PLACE, self.place)


def neither(columns: Sequence[str]) -> str:
    """List columns of which none is there, one or more.

    >>> neither(["id", "name"])
    'id nor name'
    """
    return reduce(lambda first, last: say("{first} nor {last}", first=first, last=last), columns)


def read_rows(text: str, name: str, kind: FileKind) -> tuple[list[Row], list[str]]:
    """Part a text into rows below a line of column names.

    Commas, semicolons or tabs may part the cells; beside semicolons and tabs, numbers may have
    decimal commas.

    Returns
    -------
    The rows, at least one; and the names of the columns in small letters, in their order.

    Raises
    ------
    MendableError
        If there are no rows or too many, a row has more cells than there are columns, or a
        quotation mark is left open.
    """
    text = text.lstrip("\ufeff")
    first = next((line for line in text.splitlines() if line.strip()), "")
    delimiter = max(",;\t", key=first.count)
    reader = csv.reader(StringIO(text), delimiter=delimiter)
    filled = ((reader.line_num, cells) for cells in reader if any(c.strip() for c in cells))
    try:
        lines = list(islice(filled, kind.most + 1))
        more = sum(1 for _ in filled)
    except csv.Error as error:
        raise MendableError(
            say(
                "{name} could not be read as CSV near line {line}.",
                name=name,
                line=reader.line_num,
            ),
            say("Check the quotation marks there."),
        ) from error
    things = say_in(_THINGS, kind.things)
    if len(lines) < 2:
        raise MendableError(
            say("{name} has no {things} in it.", name=name, things=things), say(kind.layout)
        )
    names = [cell.strip().lower() for cell in lines[0][1]]
    header = [
        name if kind.also_called.get(name, name) in names else kind.also_called[name]
        for name in names
    ]
    if more:
        raise MendableError(
            say("{name} has {count} {things}.", name=name, count=kind.most + more, things=things),
            say("Up to {most} can be read.", most=kind.most),
        )
    for n, cells in lines[1:]:
        if any(cell.strip() for cell in cells[len(header) :]):
            raise MendableError(
                say(
                    "Line {line} of {place} has more cells than there are columns.",
                    line=n,
                    place=say_in(_PLACE, kind.place),
                ),
                say("Put a text that holds a comma or semicolon in quotation marks."),
            )
    comma = delimiter != ","
    return [
        Row(n, dict(zip(header, cells, strict=False)), comma, kind.place) for n, cells in lines[1:]
    ], header
