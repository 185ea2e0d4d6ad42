"""What a plan knows of a piece is what its parts say."""

from __future__ import annotations

from dataclasses import replace

import pytest

from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.part import Face, Piece
from swatchwright.piece.work.order import Loose, Which
from swatchwright.piece.work.seen import loose_parts, painted_sides, sat_on
from unit.piece.made import panel, piece

BOX = common_piece(Kind.BLANKET_BOX)


def without(made: Piece, name: str) -> Piece:
    """Leave a part of a piece bare."""
    parts = tuple(replace(p, painted=()) if p.name == name else p for p in made.parts)
    return replace(made, parts=parts)


def test_a_back_that_is_counted_is_named() -> None:
    """Painted, the back of a box counts in its area and is one of its sides; bare, neither."""
    bare = without(BOX, "back")
    assert Which.BACK in painted_sides(BOX)
    assert Which.BACK not in painted_sides(bare)
    # A back of 970 by 480 mm: by hand, width less two overhangs and two ends of 20, height
    # less the lid.
    assert areas_of(BOX).total - areas_of(bare).total == pytest.approx((0.97 + 2 * 0.02) * 0.48)


def test_other_sides_follow_the_parts() -> None:
    """A lid left bare is no painted top, and the inside is one where it has its own zone."""
    assert Which.TOP in painted_sides(BOX)
    level = without(without(BOX, "lid"), "floor")
    assert Which.TOP not in painted_sides(level)
    inside = common_piece(Kind.BLANKET_BOX, inside=True)
    assert Which.INSIDE in painted_sides(inside)
    assert Which.INSIDE not in painted_sides(BOX)


@pytest.mark.parametrize("kind", list(Kind))
def test_every_common_piece_has_sides_once(kind: Kind) -> None:
    """Each side is named once; a piece that lies flat is painted from its front."""
    made = common_piece(kind)
    found = painted_sides(made)
    assert found
    assert len(set(found)) == len(found)
    assert (found == (Which.FRONT,)) == made.flat
    assert (Which.UNDERSIDE in found) == made.underside


def test_a_piece_with_nothing_painted_is_told_as_is_usual() -> None:
    """Without a painted face the usual sides are told, so that a plan can be made."""
    bare = painted_sides(piece(panel(painted=())))
    assert bare == (Which.FRONT, Which.SIDES, Which.TOP)
    assert painted_sides(piece(panel(painted=(Face.OUTSIDE,))))


@pytest.mark.parametrize(
    ("kind", "loose"),
    [
        (Kind.BLANKET_BOX, (Loose.LID,)),
        (Kind.CHEST_OF_DRAWERS, (Loose.DRAWERS,)),
        (Kind.DRESSER, (Loose.DRAWERS, Loose.DOORS)),
        (Kind.CHAIR, ()),
    ],
)
def test_what_comes_off(kind: Kind, loose: tuple[Loose, ...]) -> None:
    """A box has a lid, a chest drawers, a dresser both drawers and doors, a chair nothing."""
    assert loose_parts(common_piece(kind)) == loose


def test_a_chair_is_sat_on() -> None:
    """A chair has a seat, a box has none."""
    assert sat_on(common_piece(Kind.CHAIR))
    assert not sat_on(BOX)
