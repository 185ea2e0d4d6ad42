"""Blocks that follow each other down the pages of a sheet."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from swatchwright.sheet.lettering import Style, wrapped
from swatchwright.sheet.pen import Pen

__all__ = ["Block", "Placed", "gap", "laid_out", "paragraph", "together", "with_first"]


@dataclass(frozen=True, slots=True)
class Block:
    """Something that is not divided between pages.

    Parameters
    ----------
    height
        mm.
    draw
        Draws it, given a pen and its top left corner, mm.
    with_next
        Whether it may not be the last on a page, as a heading.
    space
        Whether it is white space, which is left out at the top of a page.
    whole
        Whether it stays with the next as far as all that stays together fits on a page.
    again
        What stands above it where it is the first on a page, saying what it goes on with; None
        for nothing.
    """

    height: float
    draw: Callable[[Pen, float, float], None]
    with_next: bool = False
    space: bool = False
    whole: bool = False
    again: Block | None = None


@dataclass(frozen=True, slots=True)
class Placed:
    """A block and how far below the top of its page it is, mm."""

    block: Block
    y: float


def gap(height: float) -> Block:
    """Make white space."""
    return Block(height, lambda _pen, _x, _y: None, space=True)


def paragraph(
    text: str, style: Style, width: float, *, indent: float = 0.0, lead: str = ""
) -> list[Block]:
    """Make a block of each line of a text; after the indent, in which a lead word may stand."""
    lines = wrapped(text, style, width - indent)

    def line(i: int) -> Block:
        def draw(pen: Pen, x: float, y: float) -> None:
            if i == 0:
                pen.text(x, y, lead, Style(style.size, bold=True))
            pen.text(x + indent, y, lines[i], style)

        # The first two lines and the last two stay together.
        return Block(style.leading, draw, with_next=i in {0, len(lines) - 2} and len(lines) > 1)

    return [line(i) for i in range(len(lines))]


def with_first(heading: Sequence[Block], body: Sequence[Block]) -> list[Block]:
    """Put a heading before what it heads; nothing where that is empty."""
    return [*heading, *body] if body else []


def together(blocks: Sequence[Block]) -> list[Block]:
    """Keep blocks on one page where they fit on one."""
    return [*(replace(block, whole=True) for block in blocks[:-1]), *blocks[-1:]]


def laid_out(blocks: Sequence[Block], first: float, others: float) -> list[list[Placed]]:
    """Lay blocks out on pages.

    Parameters
    ----------
    blocks
        In their order.
    first, others
        How high the first page and the others are, mm.
    """
    pages: list[list[Placed]] = [[]]
    y = 0.0
    for group in _fitting(blocks, others):
        room = first if len(pages) == 1 else others
        if pages[-1] and y + _height(group) > room + 1e-6:
            pages.append([])
            y = 0.0
        for block in group:
            if block.space and not pages[-1]:
                continue
            if block.again is not None and not pages[-1]:
                pages[-1].append(Placed(block.again, y))
                y += block.again.height
            pages[-1].append(Placed(block, y))
            y += block.height
    return pages


def _height(group: Sequence[Block]) -> float:
    return sum(block.height for block in group)


def _fitting(blocks: Sequence[Block], room: float) -> list[list[Block]]:
    """Put blocks together that stay on one page, those of a table only where it fits on one."""
    return [
        part
        for group in _groups(blocks, whole=True)
        for part in ([group] if _height(group) <= room else _groups(group, whole=False))
    ]


def _groups(blocks: Sequence[Block], *, whole: bool) -> list[list[Block]]:
    """Put blocks that may not be parted together: headings with what follows them."""
    groups: list[list[Block]] = []
    joined = False
    for block in blocks:
        if joined:
            groups[-1].append(block)
        else:
            groups.append([block])
        joined = block.with_next or (whole and block.whole) or (joined and block.space)
    return groups
