"""Pieces that cannot be are refused, with the part and what would do."""

from __future__ import annotations

from dataclasses import replace
from math import inf, nan
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.piece.areas import areas_of
from swatchwright.piece.check import checked_piece
from swatchwright.piece.faces import face_areas
from swatchwright.piece.part import Face, Moulding, Part, Shape, Spot
from unit.piece.made import panel, piece

LEG = Part("leg", Shape.TURNED_LEG, 700, profile=((0, 30), (700, 15)), painted=(Face.ROUND,))


@pytest.mark.parametrize(
    ("part", "told"),
    [
        (panel(length=0), "length of 0 mm"),
        (panel(width=7000), "width of 7000 mm"),
        (panel(depth=nan), "depth of nan"),
        (panel(length=inf), "length of inf"),
        (panel(end=-1), "end of −1"),
        (panel(count=0), "0 times"),
        (panel(count=201), "201 times"),
        (panel(enrichment=0.5), "enrichment of 0.5"),
        (panel(name=" "), "no name"),
        (panel(zone=""), "A colour of the piece"),
        (panel(zone="x" * 50), "A colour of the piece"),
        (panel(inside_zone="a\nb"), "A colour of the piece"),
        (panel(painted=(Face.ROUND,)), "has no all round"),
        (panel(painted=(Face.OUTSIDE, Face.OUTSIDE)), "outside named twice"),
        (panel(profile=((0, 1), (1, 1))), "has a profile"),
        (panel(spots=(Spot(nan, 0, 0),)), "stands nowhere"),
        (replace(LEG, length=600), "does not run its length"),
        (replace(LEG, profile=((0, 30), (400, 10), (300, 10), (700, 5))), "does not run"),
        (replace(LEG, profile=((0, 30), (700, -15))), "radius below 0"),
        (replace(LEG, profile=((0, 30),)), "1 points"),
        (replace(LEG, profile=((0, 30), (700, inf))), "out of bounds"),
        (Part("m", Shape.MOULDING, 700, moulding=Moulding.OWN), "has no profile"),
        (Part("f", Shape.FRAME, 500, 100, 20, member=50), "too wide"),
        (Part("f", Shape.FRAME, 100, 500, 20, member=20, rail=60), "too wide"),
    ],
)
def test_what_cannot_be(part: Part, told: str) -> None:
    """A part that cannot be is refused by its name."""
    with pytest.raises(MendableError, match=told):
        checked_piece(piece(part))


def test_a_piece_of_nothing() -> None:
    """A piece has from 1 to 200 parts."""
    with pytest.raises(MendableError, match="0 parts"):
        checked_piece(piece())
    with pytest.raises(MendableError, match="201 parts"):
        checked_piece(piece(*[panel()] * 201))


numbers = st.floats() | st.floats(0, 8000)


@given(
    st.sampled_from(Shape),
    st.fixed_dictionaries(
        dict.fromkeys(("length", "width", "depth", "end", "member", "rail"), numbers)
    ),
    st.lists(st.tuples(numbers, numbers), max_size=4),
    st.sampled_from(Moulding),
)
def test_any_numbers_are_measured_or_refused(
    shape: Shape, given_sizes: dict[str, Any], profile: list[tuple[float, float]], m: Moulding
) -> None:
    """Whatever the numbers, a part has a finite area of 0 or more, or is refused in words."""
    part = Part("x", shape, profile=tuple(profile), moulding=m, **given_sizes)
    if not can_be(part):
        return
    faces = tuple(face_areas(part))
    total = areas_of(piece(replace(part, painted=faces))).total
    assert 0 <= total < 1000


def can_be(part: Part) -> bool:
    """Tell whether a part can be; any other end than a word to the painter fails the test."""
    try:
        checked_piece(piece(part))
    except MendableError:
        return False
    return True
