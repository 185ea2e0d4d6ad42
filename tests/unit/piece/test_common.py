"""Common pieces are as large as asked, and measure what a tape would."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageDraw

from swatchwright.errors import MendableError
from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import USUAL, Kind, common_piece
from swatchwright.piece.drawing import View, drawn
from swatchwright.piece.part import Piece, Shape
from swatchwright.piece.solids import solids_of


def box(piece: Piece) -> tuple[float, float, float]:
    """Give the outer sizes of a piece without its knobs, which stand out in front."""
    solids = [s for s in solids_of(piece) if s.part.shape is not Shape.SPHERE]
    low, high = (
        [pick(getattr(s, name)[axis] for s in solids) for axis in range(3)]
        for name, pick in (("low", min), ("high", max))
    )
    return high[0] - low[0], high[1] - low[1], high[2] - low[2]


@given(st.data(), st.sampled_from(Kind))
def test_a_piece_is_as_large_as_asked(data: st.DataObject, kind: Kind) -> None:
    """Within its bounds every kind is built to its outer width and height, and drawn so."""
    usual = USUAL[kind]
    size = [
        data.draw(st.floats(low, high)) for low, high in zip(usual.least, usual.most, strict=True)
    ]
    made = common_piece(kind, width=size[0], height=size[1], depth=size[2])
    wide, high, deep = box(made)
    assert (wide, high) == pytest.approx((size[0], size[1]))
    assert size[2] - 1e-6 <= deep <= size[2] + 20
    front = drawn(made, View.FRONT)
    assert (front.width, front.height) == pytest.approx((size[0], size[1]))


def test_a_blanket_box_by_tape() -> None:
    """A box of 1000 by 500 by 450 mm: lid, its edges, four sides of 480 mm and the bevelled foot.

    By tape: lid 0.45 + edges 2.9 x 0.02; all round the box 2 x (0.97 + 0.42) x 0.48, corners and
    all; foot (1.0 + 2 x 0.435) x 0.07 x 1.41421.
    """
    lid = 0.45 + 2.9 * 0.02
    sides = 2 * (0.97 + 0.42) * 0.48
    foot = 1.87 * 0.07 * 2**0.5
    assert areas_of(common_piece(Kind.BLANKET_BOX)).total == pytest.approx(lid + sides + foot)


def test_the_inside_is_a_zone() -> None:
    """With its inside a blanket box takes more, all of it in a zone of its own."""
    plain, inside = (areas_of(common_piece(Kind.BLANKET_BOX, inside=i)) for i in (False, True))
    zones = {zone.zone: zone.area for zone in inside.zones}
    assert inside.total > plain.total
    assert zones["inside"] == pytest.approx(inside.total - plain.total)


@pytest.mark.parametrize("count", [1, 4, 12])
def test_drawers_fill_the_chest(count: int) -> None:
    """A chest has as many fronts as asked, two knobs each, and they do not overlap."""
    made = common_piece(Kind.CHEST_OF_DRAWERS, drawers=count)
    fronts = sorted(s.low[1] for s in solids_of(made) if s.part.name == "drawer fronts")
    (front,) = [p for p in made.parts if p.name == "drawer fronts"]
    assert len(fronts) == count
    assert all(b - a >= front.width for a, b in pairwise(fronts))
    assert sum(p.count for p in made.parts if p.name == "knobs") == 2 * count


def test_legs_are_chosen() -> None:
    """A turned leg takes less paint than the square one it is turned from."""
    square, tapered, turned = (
        areas_of(common_piece(Kind.CONSOLE_TABLE, leg=leg)).total
        for leg in (Shape.SQUARE_LEG, Shape.TAPERED_LEG, Shape.TURNED_LEG)
    )
    assert turned < tapered < square


def test_a_part_is_edited() -> None:
    """A leg made longer by hand takes more paint, and is drawn longer."""
    made = common_piece(Kind.CONSOLE_TABLE)
    longer = replace(
        made,
        parts=tuple(
            replace(p, length=p.length + 100) if p.name == "legs" else p for p in made.parts
        ),
    )
    assert areas_of(longer).total > areas_of(made).total
    assert drawn(longer, View.FRONT).height > drawn(made, View.FRONT).height


@pytest.mark.parametrize(
    ("kind", "asked", "told"),
    [
        (Kind.CHAIR, {"width": 5.0}, "width of 5 mm"),
        (Kind.CHAIR, {"height": float("nan")}, "height of nan"),
        (Kind.CHAIR, {"drawers": 2}, "has no drawers"),
        (Kind.CHEST_OF_DRAWERS, {"drawers": 0}, "0 drawers"),
        (Kind.CHEST_OF_DRAWERS, {"drawers": 13}, "13 drawers"),
        (Kind.CHEST_OF_DRAWERS, {"leg": Shape.TURNED_LEG}, "no legs to choose"),
        (Kind.CHAIR, {"leg": Shape.PANEL}, "is no leg"),
    ],
)
def test_what_no_kind_has(kind: Kind, asked: dict[str, float], told: str) -> None:
    """A size out of bounds, and drawers or legs that a kind has not, are refused."""
    with pytest.raises(MendableError, match=told):
        common_piece(kind, **asked)  # type: ignore[arg-type]


@pytest.mark.parametrize("inside", [False, True])
@pytest.mark.parametrize("kind", Kind)
def test_nothing_bare_is_seen_at_the_corners(kind: Kind, *, inside: bool) -> None:
    """In the picture all that shows is painted, as it is on a real piece.

    Looked for in the picture as filled by Pillow: no bare back shows between the fronts either,
    but for a speck of a few dots in nine hundred.
    """
    wanted = inside and kind in {Kind.BLANKET_BOX, Kind.BEDSIDE_CABINET, Kind.DRESSER}
    drawing = drawn(common_piece(kind, inside=wanted), View.PICTURE)
    scale = 900 / max(drawing.width, drawing.height)
    picture = Image.new("I", (round(drawing.width * scale) + 2, round(drawing.height * scale) + 2))
    pen = ImageDraw.Draw(picture)
    for number, outline in enumerate(drawing.outlines, start=1):
        points = [(x * scale, y * scale) for x, y in outline.points]
        if outline.ellipse:
            (x, y), (across, up) = points
            pen.ellipse((x - across, y - up, x + across, y + up), fill=number)
        else:
            pen.polygon(points, fill=number)
    numbers, dots = np.unique(np.array(picture), return_counts=True)
    told = [number for number, count in zip(numbers, dots, strict=True) if number and count > 20]
    seen = {drawing.outlines[number - 1] for number in told}
    assert {(o.part, o.side) for o in seen if not o.zone} == set()
