"""What stands below the colours of a sheet: piece, batches, plan, cautions, notes."""

from __future__ import annotations

from dataclasses import replace

from swatchwright.language import figure, mark, say, say_in
from swatchwright.piece.names import zone_word
from swatchwright.sheet.content import BatchLine, CautionBox, SheetContent
from swatchwright.sheet.flow import Block, gap, paragraph, together, with_first
from swatchwright.sheet.head import section
from swatchwright.sheet.lettering import GREY, Style, cut, text_width, wrapped
from swatchwright.sheet.pen import Box, Pen
from swatchwright.sheet.table import Cell, Column, head_row, row
from swatchwright.sheet.told import date_text, ml_text

__all__ = ["rest_blocks"]

_TEXT = Style(8.8)
_STRONG = Style(8.8, bold=True)
_SMALL = Style(7.6, grey=GREY)
_BLACK = (0.0, 0.0, 0.0)
_LEAD = 23.0
_COST = 26.0
_WAITS = mark(
    "Waits that the tin does not tell are common practice, no source; the tin comes first."
)


def rest_blocks(content: SheetContent, width: float) -> list[Block]:
    """Make all of it; what is not known is left out."""
    return [
        *_piece(content, width),
        *_batches(content, width),
        *_plan(content, width),
        *_again(content, width),
        *_cautions(content, width),
        *_notes(content, width),
        *_gaps(content, width),
    ]


def _piece(content: SheetContent, width: float) -> list[Block]:
    if not content.piece:
        return []
    columns = [
        Column(say_in("head of a column", "where"), 0.26 * width),
        Column(say_in("head of a column", "what"), 0.74 * width - 66),
        Column("m²", 20, number=True),
        Column(say_in("head of a column", "coats"), 20, number=True),
        Column(say("ml to put on"), 26, number=True, free=0.0),
    ]
    rows = [
        row(
            columns,
            [
                Cell("" if i and content.piece[i - 1].zone == line.zone else line.zone, bold=True),
                Cell(line.product),
                Cell(figure(line.area, ".2f")),
                Cell(str(line.coats)),
                Cell(f"{line.told:.0f}"),
            ],
            last=line is content.piece[-1] or content.piece[i + 1].zone == line.zone,
        )
        for i, line in enumerate(content.piece)
    ]
    mixed = [b for text in content.mixed for b in paragraph(text, _TEXT, width)]
    return [
        *section(say("The piece, and how much of each"), width),
        head_row(columns),
        *rows,
        gap(1.0),
        *mixed,
        *with_first([gap(2.0)], _buy(content, width)),
    ]


def _buy(content: SheetContent, width: float) -> list[Block]:
    if not content.buy:
        return []
    columns = [
        Column(say_in("head of a column", "paint"), 0.42 * width),
        Column(say_in("head of a column", "needed"), 26, number=True, free=6.0),
        Column(say_in("head of a column", "to buy"), 0.58 * width - 26),
    ]
    if content.buy_cost:
        columns[-1] = replace(columns[-1], width=columns[-1].width - _COST)
        columns.append(Column(say_in("head of a column", "price"), _COST, number=True, free=0.0))
    rows = [
        row(
            columns,
            [Cell(line.name), Cell(ml_text(line.ml)), Cell(line.words), Cell(line.cost)][
                : len(columns)
            ],
            last=line is content.buy[-1],
        )
        for line in content.buy
    ]
    cost = paragraph(content.buy_cost, _STRONG, width) if content.buy_cost else []
    heading = paragraph(say("To buy, for what this sheet mixes"), _STRONG, width)
    return together([*heading, head_row(columns), *rows, *cost])


def _batches(content: SheetContent, width: float) -> list[Block]:
    blocks: list[Block] = []
    for batch in content.batches:
        lead = say("Batch {number}", number=batch.number)
        blocks += paragraph(_mixed(batch), _TEXT, width, indent=_LEAD, lead=lead)
    return with_first(section(say("Mixed so far"), width), blocks)


def _mixed(batch: BatchLine) -> str:
    """Say how much was mixed and when, for which zone, and what was noted of it."""
    told = say("{amount} on {day}", amount=ml_text(batch.ml), day=date_text(batch.day))
    if batch.zone:
        told = f"{told}, {zone_word(batch.zone)}"
    return f"{told}: {batch.note}" if batch.note else told


def _plan(content: SheetContent, width: float) -> list[Block]:
    if not content.plan:
        return []
    columns = [
        Column(say_in("head of a column", "day"), 34),
        Column(say_in("head of a column", "time"), 34),
        Column(say("what to do"), width - 102),
        Column(say("then wait"), 34, free=0.0),
    ]
    days = [line.day for line in content.plan]
    rows = [
        row(
            columns,
            [
                Cell("" if i and days[i - 1] == line.day else line.day, bold=True),
                Cell(line.time),
                Cell(line.title),
                Cell(line.wait),
            ],
            last=i + 1 < len(days) and days[i + 1] == line.day,
        )
        for i, line in enumerate(content.plan)
    ]
    told = say("Ready to use {when}.", when=content.ready) if content.ready else ""
    return [
        *section(say("The work"), width),
        head_row(columns),
        *rows,
        gap(1.0),
        *paragraph(told, _STRONG, width),
        *paragraph(say(_WAITS), _SMALL, width),
    ]


def _again(content: SheetContent, width: float) -> list[Block]:
    blocks: list[Block] = []
    for text in content.again:
        blocks += [*([gap(1.0)] if blocks else []), *paragraph(text, _TEXT, width)]
    return with_first(section(say("To make it again"), width), blocks)


def _cautions(content: SheetContent, width: float) -> list[Block]:
    boxes = [_caution(caution, width) for caution in content.cautions]
    return with_first(section(say("Take care"), width), boxes)


def _caution(caution: CautionBox, width: float) -> Block:
    """Make a box with what can hurt in its margin."""
    head, body = Style(8.2, bold=True), Style(7.8)
    danger = caution.danger[0].upper() + caution.danger[1:]
    words = wrapped(danger, head, _LEAD - 3)
    lines = wrapped(f"{caution.why} {caution.do}", body, width - _LEAD - 5)
    height = max(len(lines) * body.leading, len(words) * head.leading) + 2.4

    def draw(pen: Pen, x: float, y: float) -> None:
        pen.rect(Box(x, y, width, height), line=_BLACK, thick=0.3)
        pen.rect(Box(x, y, 1.2, height), fill=_BLACK)
        pen.lines(x + 3, y + 1.2, words, head)
        pen.lines(x + _LEAD + 3, y + 1.2, lines, body)

    return Block(height, draw)


def _notes(content: SheetContent, width: float) -> list[Block]:
    blocks: list[Block] = []
    days = [date_text(note.day) for note in content.notes]
    # Their days are as wide as the longest of them, but for a text that was typed for one.
    widest = max((text_width(day, _STRONG) for day in days), default=0.0)
    indent = min(max(_LEAD, widest + 3.0), width / 3)
    for day, note in zip(days, content.notes, strict=True):
        blocks += paragraph(
            note.text, _TEXT, width, indent=indent, lead=cut(day, _STRONG, indent - 1.5)
        )
    return with_first(section(say("Notes"), width), blocks)


def _gaps(content: SheetContent, width: float) -> list[Block]:
    lines = [b for text in content.gaps for b in paragraph(text, _SMALL, width)]
    return with_first(section(say("Left out"), width), lines)
