"""Changing what a piece is built from."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.parts import (
    faces_in,
    sizes_in,
    with_faces,
    with_part,
    with_size,
    with_value,
    without_part,
)
from swatchwright.errors import MendableError
from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import View, drawn
from swatchwright.piece.faces import face_areas
from swatchwright.piece.part import Face, Piece, Shape
from unit.piece.made import panel, piece

TABLE = common_piece(Kind.CONSOLE_TABLE, leg=Shape.TURNED_LEG)
LEGS = next(row for row, part in enumerate(TABLE.parts) if part.name == "legs")


@given(factor=st.floats(0.3, 3.0), shape=st.sampled_from([*Shape]))
def test_areas_grow_as_squares(factor: float, shape: Shape) -> None:
    """A part with all its sizes drawn out alike has areas larger by the square (Euclid, VI 19)."""
    made = with_part(piece(panel()), shape)
    # A frame's members and a profile's points are not among the sizes of the table.
    if shape is Shape.FRAME:
        return
    grown = made
    for name in sizes_in(made.parts[1]):
        grown = with_size(grown, 1, name, factor * getattr(made.parts[1], name))
    if shape is Shape.SEAT:
        grown = replace(
            grown, parts=(grown.parts[0], replace(grown.parts[1], end=factor * made.parts[1].end))
        )
    before, after = face_areas(made.parts[1]), face_areas(grown.parts[1])
    for face, area in before.items():
        assert after[face] == pytest.approx(factor**2 * area)


def test_a_turned_leg_keeps_its_profile() -> None:
    """A turned leg that is made longer and thicker alike is similar: its area grows as a square."""
    longer = with_size(TABLE, LEGS, "length", 2 * TABLE.parts[LEGS].length)
    both = with_size(longer, LEGS, "width", 2 * TABLE.parts[LEGS].width)
    round_ = Face.ROUND
    assert face_areas(both.parts[LEGS])[round_] == pytest.approx(
        4 * face_areas(TABLE.parts[LEGS])[round_]
    )


def test_a_tapered_leg_keeps_its_taper() -> None:
    """A tapered leg that is made thicker has a foot that is thicker by as much."""
    table = common_piece(Kind.CONSOLE_TABLE)
    thick = with_size(table, LEGS, "width", 60).parts[LEGS]
    was = table.parts[LEGS]
    assert thick.end / thick.width == pytest.approx(was.end / was.width)


@pytest.mark.parametrize("shape", list(Shape))
def test_any_shape_can_be_added_and_drawn(shape: Shape) -> None:
    """A part of each shape can be added to a piece, has paint on it, and is drawn."""
    made = with_part(common_piece(Kind.CHAIR), shape)
    added = made.parts[-1]
    assert areas_of(made).total > areas_of(common_piece(Kind.CHAIR)).total
    assert added.name in {outline.part for outline in drawn(made, View.FRONT).outlines}
    again = with_part(made, shape)
    assert again.parts[-1].name != added.name


def test_counts_zones_and_names() -> None:
    """Twice as many parts have twice the area, in the zone they are given."""
    made = with_value(piece(panel(), panel("other")), 1, count=2, zone=" doors ", name="door")
    areas = areas_of(made)
    assert [(a.name, a.zone) for a in areas.parts] == [("panel", "body"), ("door", "doors")]
    assert areas.parts[1].area == pytest.approx(2 * areas.parts[0].area)


def test_faces_are_chosen() -> None:
    """The painted faces are those that were chosen, in the order the shape has them."""
    made = with_faces(piece(panel()), 0, (Face.INSIDE, Face.OUTSIDE))
    assert made.parts[0].painted == (Face.OUTSIDE, Face.INSIDE)
    assert areas_of(made).total == pytest.approx(2 * 0.5 * 0.3)
    assert Face.ROUND not in faces_in(made.parts[0])


def _wrong(act: str) -> Piece:
    one = piece(panel())
    return {
        "size": lambda: with_size(one, 0, "length", -5),
        "nan": lambda: with_size(one, 0, "length", float("nan")),
        "no such size": lambda: with_size(with_part(one, Shape.SPHERE), 1, "depth", 5),
        "count": lambda: with_value(one, 0, count=0),
        "zone": lambda: with_value(one, 0, zone="  "),
        "name": lambda: with_value(one, 0, name=""),
        "face": lambda: with_faces(one, 0, (Face.HEAD,)),
        "last": lambda: without_part(one, 0),
    }[act]()


@pytest.mark.parametrize(
    "act", ["size", "nan", "no such size", "count", "zone", "name", "face", "last"]
)
def test_what_cannot_be_is_refused(act: str) -> None:
    """A size, count, name, zone or face that cannot be is refused with what to do."""
    with pytest.raises(MendableError) as caught:
        _wrong(act)
    assert caught.value.mend


def test_a_part_is_taken_away() -> None:
    """The other parts stay, in their order."""
    made = without_part(piece(panel("a"), panel("b"), panel("c")), 1)
    assert [part.name for part in made.parts] == ["a", "c"]
