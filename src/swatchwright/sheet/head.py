"""The head of a recipe sheet: what the piece is, for whom, when, and whether it is invented."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from swatchwright.language import mark, say, say_in
from swatchwright.sheet.content import SheetContent
from swatchwright.sheet.flow import Block, gap, paragraph
from swatchwright.sheet.lettering import GREY, Style, text_width, wrapped
from swatchwright.sheet.pen import Box, Pen
from swatchwright.sheet.told import date_text

__all__ = ["DEMONSTRATION", "head_blocks", "section"]

DEMONSTRATION = mark(
    "Demonstration: the paints of this sheet are invented, and none of them is sold. "
    "Do not buy or mix by it."
)

_TITLE = Style(23, bold=True)
_LABEL = Style(7, grey=GREY)
_VALUE = Style(9.2)
_SECTION = Style(11.5, bold=True)
_BLACK = (0.0, 0.0, 0.0)


def head_blocks(content: SheetContent, width: float) -> list[Block]:
    """Make the head."""
    title = wrapped(content.title or say("Recipe"), _TITLE, width)
    blocks = [_lines_block(title, _TITLE), gap(2.0), _facts(content, width)]
    if content.brief:
        blocks += [gap(1.5), *paragraph(content.brief, Style(8.8, grey=GREY), width)]
    if content.invented:
        blocks += [gap(2.5), _notice(say(DEMONSTRATION), width)]
    return blocks


def section(heading: str, width: float) -> list[Block]:
    """Make the heading of a section, with a rule above it."""
    lines = wrapped(heading, _SECTION, width)

    def draw(pen: Pen, x: float, y: float) -> None:
        pen.stroke(x, y, x + width, y, ink=_BLACK, thick=0.35)
        pen.lines(x, y + 1.6, lines, _SECTION)

    return [gap(5.5), Block(len(lines) * _SECTION.leading + 3.0, draw, with_next=True)]


def _lines_block(lines: list[str], style: Style) -> Block:
    def draw(pen: Pen, x: float, y: float) -> None:
        pen.lines(x, y, lines, style)

    return Block(len(lines) * style.leading, draw)


def _facts(content: SheetContent, width: float) -> Block:
    """Make the row of facts below the title, each under its word."""
    shown = [(word, value) for word, value in _values(content) if value]
    wide = _widths(shown, width)
    starts = list(accumulate(wide, initial=0.0))
    cells = [wrapped(value, _VALUE, w - 4) for (_, value), w in zip(shown, wide, strict=True)]
    height = _LABEL.leading + max((len(lines) for lines in cells), default=0) * _VALUE.leading

    def draw(pen: Pen, x: float, y: float) -> None:
        for start, (word, _), lines in zip(starts, shown, cells, strict=False):
            pen.text(x + start, y, word, _LABEL)
            pen.lines(x + start, y + _LABEL.leading, lines, _VALUE)

    return Block(height, draw)


def _widths(shown: Sequence[tuple[str, str]], width: float) -> list[float]:
    """Give each fact the width of its words, and what is left over to all alike, up to a third.

    Where they do not fit beside each other, the widest are broken into lines.
    """
    own = [max(text_width(w, _LABEL), text_width(v, _VALUE)) + 4.5 for w, v in shown]
    if not own:
        return []
    left, wide = width, 0.0
    for rank, one in enumerate(sorted(own)):
        # The narrow ones have what they want, the others share what those leave.
        wide = max(wide, min(one, left / (len(own) - rank)))
        left -= min(one, left / (len(own) - rank))
    kept = [min(one, wide) for one in own]
    more = max(0.0, width - sum(kept)) / len(own)
    return [min(one + more, max(one, width / 3)) for one in kept]


def _values(content: SheetContent) -> list[tuple[str, str]]:
    """Give each fact after its word; those that are not known are empty."""
    one = say_in("above a fact", "batch")
    many = say_in("above a fact", "batches")
    numbers = ", ".join(str(batch.number) for batch in content.batches[-6:])
    return [
        (say_in("above a fact", "for"), content.client),
        (say_in("above a fact", "date"), date_text(content.day)),
        (say_in("above a fact", "wide, high, deep"), content.size),
        (one if len(content.batches) < 2 else many, numbers),
        (say_in("above a fact", "will stand in"), say(content.room_light)),
    ]


def _notice(text: str, width: float) -> Block:
    style = Style(8.8, bold=True)
    lines = wrapped(text, style, width - 6)
    height = len(lines) * style.leading + 3.2

    def draw(pen: Pen, x: float, y: float) -> None:
        pen.rect(Box(x, y, width, height), line=_BLACK, thick=0.35)
        pen.lines(x + 3, y + 1.6, lines, style)

    return Block(height, draw)
