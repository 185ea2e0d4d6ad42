"""How large a piece is told to be."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.acts.piece_form import form_for, piece_of_form
from swatchwright.acts.piece_size import outer_size
from swatchwright.piece.common import Kind


def test_as_it_was_asked() -> None:
    """A common piece has the sizes that were set; knobs stand out of them."""
    form = replace(form_for(Kind.DRESSER), width=1100.0, height=1800.0, depth=450.0)
    piece = piece_of_form(form)
    assert outer_size(piece, form) == (1100, 1800, 450)
    wide, high, deep = outer_size(piece) or (0, 0, 0)
    assert (wide, high) == pytest.approx((1100, 1800))
    assert deep > 450


def test_of_parts_alone() -> None:
    """Where the parts tell it they are asked, and where one has no place nothing is said."""
    piece = piece_of_form(form_for(Kind.BLANKET_BOX))
    by_hand = replace(form_for(Kind.BLANKET_BOX), width=5.0, by_hand=True)
    assert outer_size(piece, by_hand) == pytest.approx((1000, 500, 450))
    loose = replace(piece, parts=(replace(piece.parts[0], spots=()), *piece.parts[1:]))
    assert outer_size(loose) is None
