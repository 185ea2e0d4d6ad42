"""The lines of a CSV file as spreadsheets write it, with what is needed to blame a cell."""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass, field
from io import StringIO
from itertools import islice
from math import isfinite

from swatchwright.errors import MendableError

__all__ = ["FileKind", "Row", "read_rows"]


@dataclass(frozen=True, slots=True)
class FileKind:
    """How messages speak of a file of one kind.

    Parameters
    ----------
    place
        What the file is, as in “line 3 of the shelf”.
    things
        What its lines hold, in the plural.
    layout
        A sentence that tells how such a file is laid out.
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
                f"Line {self.line} of {self.place} has “{text}” under {column}, "
                "where a number is expected.",
                "Put a plain number there, such as 0.38.",
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
            raise MendableError(
                f"Line {self.line} of {self.place} has {value:g} under {column}.",
                f"It should lie from {low:g} to {high:g}.",
            )
        return value

    def checked(self, column: str, value: float, low: float, high: float) -> float:
        """Refuse a number that is not above `low` and at most `high`."""
        if not low < value <= high:
            raise MendableError(
                f"Line {self.line} of {self.place} has {value:g} under {column}.",
                f"It should lie above {low:g} and be at most {high:g}.",
            )
        return value


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
            f"{name} could not be read as CSV near line {reader.line_num}.",
            "Check the quotation marks there.",
        ) from error
    if len(lines) < 2:
        raise MendableError(f"{name} has no {kind.things} in it.", kind.layout)
    names = [cell.strip().lower() for cell in lines[0][1]]
    header = [
        name if kind.also_called.get(name, name) in names else kind.also_called[name]
        for name in names
    ]
    if more:
        raise MendableError(
            f"{name} has {kind.most + more} {kind.things}.", f"Up to {kind.most} can be read."
        )
    for n, cells in lines[1:]:
        if any(cell.strip() for cell in cells[len(header) :]):
            raise MendableError(
                f"Line {n} of {kind.place} has more cells than there are columns.",
                "Put a text that holds a comma or semicolon in quotation marks.",
            )
    comma = delimiter != ","
    return [
        Row(n, dict(zip(header, cells, strict=False)), comma, kind.place) for n, cells in lines[1:]
    ], header
