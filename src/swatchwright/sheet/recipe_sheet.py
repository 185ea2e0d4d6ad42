"""The recipe sheet: all that brings a colour back next year, on as many pages as it takes."""

from __future__ import annotations

from collections.abc import Callable

from swatchwright.colour.names import scale_told
from swatchwright.language import mark, say
from swatchwright.sheet.content import SheetContent
from swatchwright.sheet.flow import Block, Placed, gap, laid_out, together
from swatchwright.sheet.head import head_blocks
from swatchwright.sheet.lettering import GREY, Style, cut, wrapped
from swatchwright.sheet.paper import Paper
from swatchwright.sheet.pen import Pen
from swatchwright.sheet.rest import rest_blocks
from swatchwright.sheet.told import date_text
from swatchwright.sheet.zone import zone_blocks

__all__ = ["MARGIN", "sheet_pdf"]

MARGIN = 17.0
"""mm at the left, the right and the top."""

_FOOT = Style(6.8, grey=GREY)
_FOOT_HEIGHT = 25.0
_RULE = (0.6, 0.6, 0.6)
_KEY = mark("{scale} L*, a*, b* and # are for measuring instruments and screens.")


def sheet_pdf(
    content: SheetContent, paper: Paper, *, progress: Callable[[float], None] | None = None
) -> bytes:
    """Lay a recipe sheet out and give it as a PDF.

    Parameters
    ----------
    content
        What it says.
    paper
        What it is printed on.
    progress
        Told the share done, page by page.
    """
    wide, high = paper.size
    width = wide - 2 * MARGIN
    room = high - MARGIN - _FOOT_HEIGHT
    title = say("Recipe sheet: {title}", title=content.title)
    pages = laid_out(_blocks(content, width), room, room)
    pen = Pen(wide, high, title, say("How the colour was mixed"))
    for number, page in enumerate(pages, start=1):
        _draw(pen, page)
        _foot(pen, content, number, len(pages))
        if number < len(pages):
            pen.next_page()
        if progress is not None:
            progress(number / len(pages))
    return pen.done()


def _blocks(content: SheetContent, width: float) -> list[Block]:
    blocks = head_blocks(content, width)
    for i, zone in enumerate(content.zones):
        told = zone_blocks(zone, content, width)
        # A page for each colour, to be pinned up by itself; the first stays below the head.
        blocks += [gap(5.5), *(together(told) if i else told)]
    return [*blocks, *rest_blocks(content, width)]


def _draw(pen: Pen, page: list[Placed]) -> None:
    for placed in page:
        placed.block.draw(pen, MARGIN, MARGIN + placed.y)


def _foot(pen: Pen, content: SheetContent, number: int, of: int) -> None:
    """Say at the foot of a page whose it is, what its figures mean, and which page it is."""
    top = pen.height - _FOOT_HEIGHT + 3.0
    pen.stroke(MARGIN, top, pen.width - MARGIN, top, ink=_RULE)
    style = Style(6.8, bold=True)
    room = pen.width - 2 * MARGIN - 24
    whose = ", ".join(text for text in (content.title, content.client) if text)
    pen.text(MARGIN, top + 1.3, cut(whose, style, room), style)
    below = top + 1.3 + (_FOOT.leading if whose else 0.0)
    pen.lines(MARGIN, below, wrapped(say(_KEY, scale=scale_told()), _FOOT, room), _FOOT)
    pen.text(
        pen.width - MARGIN,
        top + 1.3,
        say("page {number} of {count}", number=number, count=of),
        style,
        end=1,
    )
    pen.text(pen.width - MARGIN, top + 1.3 + _FOOT.leading, date_text(content.day), _FOOT, end=1)
