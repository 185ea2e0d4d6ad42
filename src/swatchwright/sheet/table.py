"""Tables: columns of a width, cells that wrap, rows that are not divided."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from swatchwright.sheet.flow import Block
from swatchwright.sheet.lettering import GREY, Style, wrapped
from swatchwright.sheet.pen import Pen

__all__ = ["Cell", "Column", "head_row", "row"]

HEAD = Style(7.2, grey=GREY)
BODY = Style(8.8)
SMALL = Style(7.2, grey=GREY)
_LINE = (0.72, 0.72, 0.72)
_PAD = 1.1


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table.

    Parameters
    ----------
    head
        Its heading.
    width
        mm, with what is left free at its right.
    number
        Whether its cells are numbers, set to the right.
    free
        What is left free at its right, mm.
    """

    head: str
    width: float
    number: bool = False
    free: float = 2.2


@dataclass(frozen=True, slots=True)
class Cell:
    """What stands in a cell: a text, more about it in small letters, or something drawn."""

    text: str = ""
    small: str = ""
    bold: bool = False
    draw: Callable[[Pen, float, float], None] | None = None


def head_row(columns: Sequence[Column]) -> Block:
    """Make the row of headings."""
    cells = [wrapped(column.head, HEAD, column.width - column.free) for column in columns]
    height = max(len(lines) for lines in cells) * HEAD.leading + 0.8

    def draw(pen: Pen, x: float, y: float) -> None:
        left = x
        for column, lines in zip(columns, cells, strict=True):
            top = y + height - 0.8 - len(lines) * HEAD.leading
            _write(pen, left, top, column, lines=lines, style=HEAD)
            left += column.width
        pen.stroke(x, y + height, left, y + height, ink=(0, 0, 0), thick=0.25)

    return Block(height, draw, with_next=True)


def row(columns: Sequence[Column], cells: Sequence[Cell], *, last: bool = False) -> Block:
    """Make a row."""
    bodies = [Style(BODY.size, bold=cell.bold) for cell in cells]
    told = [
        (wrapped(cell.text, body, c.width - c.free), wrapped(cell.small, SMALL, c.width - c.free))
        for cell, body, c in zip(cells, bodies, columns, strict=True)
    ]
    high = [len(text) * BODY.leading + len(small) * SMALL.leading for text, small in told]
    height = max(*high, BODY.leading) + 2 * _PAD

    def draw(pen: Pen, x: float, y: float) -> None:
        left = x
        for column, cell, body, (text, small) in zip(columns, cells, bodies, told, strict=True):
            if cell.draw is not None:
                cell.draw(pen, left, y + _PAD)
            _write(pen, left, y + _PAD, column, lines=text, style=body)
            below = y + _PAD + len(text) * BODY.leading
            _write(pen, left, below, column, lines=small, style=SMALL)
            left += column.width
        if not last:
            pen.stroke(x, y + height, left, y + height, ink=_LINE, thick=0.15)

    return Block(height, draw)


def _write(
    pen: Pen, x: float, y: float, column: Column, *, lines: Sequence[str], style: Style
) -> None:
    end = 1.0 if column.number else 0.0
    at = x + (column.width - column.free if column.number else 0.0)
    for line in lines:
        pen.text(at, y, line, style, end=end)
        y += style.leading
