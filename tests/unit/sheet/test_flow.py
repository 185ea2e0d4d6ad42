"""Blocks down the pages: all of them, in order, within each page."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from swatchwright.sheet.flow import Block, gap, laid_out, paragraph, together, with_first
from swatchwright.sheet.lettering import Style


def block(height: float, *, with_next: bool = False) -> Block:
    """Make a block that draws nothing."""
    return Block(height, lambda _pen, _x, _y: None, with_next=with_next)


@given(heights=st.lists(st.floats(1, 50), max_size=60), room=st.floats(50, 200))
def test_every_block_is_on_a_page_in_order(heights: list[float], room: float) -> None:
    """No block is lost, none runs over the foot, and none covers another."""
    blocks = [block(height) for height in heights]
    pages = laid_out(blocks, room, room)
    assert [placed.block for page in pages for placed in page] == blocks
    for page in pages:
        for one, other in pairwise(page):
            assert one.y + one.block.height <= other.y + 1e-9
        assert all(placed.y + placed.block.height <= room + 1e-6 for placed in page)


def test_a_heading_goes_over_with_what_it_heads() -> None:
    """A heading that would be last on a page moves to the next with what follows it."""
    heading, body = block(10, with_next=True), block(20)
    pages = laid_out([block(80), heading, gap(1), body], 100, 100)
    assert pages[1][0].block is heading
    assert pages[1][-1].block is body


def test_white_space_is_left_out_at_the_top_of_a_page() -> None:
    """A page does not begin with the space that parted two blocks."""
    last = block(50)
    pages = laid_out([block(60), gap(5), last], 100, 100)
    assert pages[-1][0].y == 0
    assert pages[-1][-1].block is last


@given(
    before=st.floats(1, 100),
    heights=st.lists(st.floats(1, 40), min_size=2, max_size=8),
)
def test_a_table_is_on_one_page_if_it_fits_on_one(before: float, heights: list[float]) -> None:
    """Blocks kept together are parted only where they are higher than a page; none is lost."""
    table = together([block(height) for height in heights])
    pages = laid_out([block(before), *table], 100, 100)
    assert [placed.block for page in pages for placed in page][1:] == table
    where = {i for i, page in enumerate(pages) for placed in page if placed.block in table}
    if sum(heights) <= 100:
        assert len(where) == 1
    assert all(p.y + p.block.height <= 100 + 1e-6 for page in pages for p in page)


def test_what_goes_on_over_a_page_says_what_it_is() -> None:
    """A block that begins a page is headed anew; further down it is not."""
    heading = block(10)
    body = Block(30, lambda _pen, _x, _y: None, again=heading)
    assert [p.block for p in laid_out([block(60), body], 100, 100)[0]][1:] == [body]
    over = laid_out([block(90), body], 100, 100)[1]
    assert [(p.block, p.y) for p in over] == [(heading, 0), (body, 10)]


def test_a_paragraph_has_a_block_for_each_line_and_nothing_for_nothing() -> None:
    """A long text can go over to another page; an empty one takes no room."""
    assert len(paragraph("word " * 200, Style(9), 100)) > 5
    assert paragraph("", Style(9), 100) == []
    assert with_first([block(1)], []) == []
