"""Drawings: to scale, complete, and with what is in front drawn last."""

from __future__ import annotations

from itertools import permutations
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import Drawing, Outline, Side, View, drawn
from swatchwright.piece.part import Axes, Face, Part, Shape, Spot
from swatchwright.piece.svg import svg_of
from unit.piece.made import cube, panel, piece


def area(outline: Outline) -> float:
    """Give the area of a polygon by the shoelace formula."""
    points = outline.points
    rounded = zip(points, points[1:] + points[:1], strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in rounded)) / 2


def faces(drawing: Drawing) -> list[tuple[str, Side]]:
    """Give what is drawn, in its order."""
    return [(o.part, o.side) for o in drawing.outlines]


def test_a_block_in_cabinet_projection() -> None:
    """A cube of 100 mm: its front as it is; top and side 100 by 100/2 sin 45 = 3535.5 mm2."""
    found = {o.side: area(o) for o in drawn(piece(cube("a", 0, 0, 0)), View.PICTURE).outlines}
    assert found[Side.FRONT] == pytest.approx(10_000)
    assert found[Side.TOP] == pytest.approx(100 * 100 / 2 * 0.5**0.5)
    assert found[Side.RIGHT] == pytest.approx(3535.534, abs=1e-3)


@pytest.mark.parametrize(
    ("behind", "before"),
    [
        ((0, 0, 150), (0, 0, 0)),
        ((0, 0, 0), (120, 0, 0)),
        ((0, 0, 0), (0, 120, 0)),
        ((0, 0, 120), (50, 50, 0)),
    ],
    ids=["further back", "on the left", "below", "back and beside"],
)
def test_what_is_in_front_is_drawn_last(
    behind: tuple[float, float, float], before: tuple[float, float, float]
) -> None:
    """Of two blocks the nearer, the one on the right and the upper one are drawn after."""
    for parts in permutations((cube("behind", *behind), cube("before", *before))):
        order = [name for name, _ in faces(drawn(piece(*parts), View.PICTURE))]
        assert order == ["behind"] * 3 + ["before"] * 3


def test_three_in_a_ring_are_all_drawn() -> None:
    """Three bars of which each hides the next have no right order, and are drawn all the same."""
    bars = [
        Part("a", Shape.RAIL, 100, 10, 10, spots=(Spot(0, 40, 0, Axes.XYZ),)),
        Part("b", Shape.RAIL, 100, 10, 10, spots=(Spot(20, 50, -40, Axes.ZYX),)),
        Part("c", Shape.RAIL, 100, 10, 10, spots=(Spot(30, 0, 20, Axes.YXZ),)),
    ]
    assert len(drawn(piece(*bars), View.PICTURE).outlines) == 9


@given(st.sampled_from(Kind), st.sampled_from(View))
def test_all_points_lie_on_the_sheet(kind: Kind, view: View) -> None:
    """Every part of a common piece is drawn, within the size that is told."""
    made = common_piece(kind)
    found = drawn(made, view)
    for outline in found.outlines:
        if outline.ellipse:
            (x, y), (rx, ry) = outline.points
            corners = [(x - rx, y - ry), (x + rx, y + ry)]
        else:
            corners = list(outline.points)
        for x, y in corners:
            assert -1e-6 <= x <= found.width + 1e-6
            assert -1e-6 <= y <= found.height + 1e-6
    assert {o.part for o in found.outlines} == {p.name for p in made.parts}


def test_a_zone_of_its_own_is_drawn_so() -> None:
    """Drawer fronts carry their zone, and a bare back none."""
    zones = {
        o.part: o.zone for o in drawn(common_piece(Kind.CHEST_OF_DRAWERS), View.FRONT).outlines
    }
    assert zones["drawer fronts"] == "drawers"
    assert zones["back"] == ""


def test_each_side_has_the_zone_of_its_face() -> None:
    """A panel painted on its outside alone is bare on its edges."""
    board = panel(spots=(Spot(0, 0, 0, Axes.XYZ),))
    found = {o.side: o.zone for o in drawn(piece(board), View.PICTURE).outlines}
    assert found == {Side.FRONT: "body", Side.TOP: "", Side.RIGHT: ""}
    inner = panel(painted=(Face.INSIDE,), inside_zone="inside", spots=board.spots)
    assert drawn(piece(inner), View.FRONT).outlines[0].zone == "inside"


def test_a_tapered_leg_stands_on_its_narrow_end() -> None:
    """Seen from the front a leg of 50 to 30 mm has its 30 mm at the floor."""
    leg = Part("l", Shape.TAPERED_LEG, 700, 50, 50, end=30, spots=(Spot(0, 0, 0),))
    points = drawn(piece(leg), View.FRONT).outlines[0].points
    at_floor, at_top = ([x for x, y in points if y == level] for level in (0, 700))
    assert max(at_floor) - min(at_floor) == pytest.approx(30)
    assert max(at_top) - min(at_top) == pytest.approx(50)


def test_a_turned_leg_shows_its_profile() -> None:
    """The outline of a turned leg has its head at the top and twice its radius as width."""
    leg = Part("l", Shape.TURNED_LEG, 700, profile=((0, 30), (350, 10), (700, 15)))
    points = drawn(piece(leg), View.FRONT).outlines[0].points
    wide = {level: [x for x, y in points if y == pytest.approx(level)] for level in (700, 350, 0)}
    assert [max(xs) - min(xs) for xs in wide.values()] == pytest.approx([60, 20, 30])


@pytest.mark.parametrize("axes", list(Axes))
@pytest.mark.parametrize("shape", list(Shape))
def test_every_shape_is_drawn_any_way(shape: Shape, axes: Axes) -> None:
    """Each shape can lie along each axis in each view."""
    part = Part("x", shape, 400, 200, 20, end=15, member=30, spots=(Spot(0, 0, 0, axes),))
    for view in View:
        found = drawn(piece(part), view)
        assert found.outlines
        assert min(found.width, found.height) > 0


def test_parts_without_a_place_are_laid_out() -> None:
    """Parts from a list without places are laid beside each other and do not overlap."""
    found = drawn(piece(panel(count=30), panel("b", count=2)), View.FRONT)
    boxes = [
        (min(x), max(x), min(y), max(y))
        for x, y in (zip(*o.points, strict=True) for o in found.outlines)
    ]
    assert len(boxes) == 32
    for i, a in enumerate(boxes):
        for b in boxes[:i]:
            assert a[1] <= b[0] or b[1] <= a[0] or a[3] <= b[2] or b[3] <= a[2]


def test_too_much_to_draw() -> None:
    """More than 400 parts are refused, with the number."""
    with pytest.raises(MendableError, match="401 parts to draw"):
        drawn(piece(panel(count=200), panel("b", count=200), panel("c")), View.FRONT)


def test_the_svg_is_well_formed_and_to_scale() -> None:
    """A parser of XML finds every outline, with its zone, and a legend; names are escaped."""
    made = common_piece(Kind.BEDSIDE_CABINET)
    drawings = [drawn(made, view) for view in View]
    text = svg_of('a <b> & "c"', drawings, {"drawers": "#a15047"})
    root = ET.fromstring(text)  # noqa: S314 - our own text
    space = "{http://www.w3.org/2000/svg}"
    shapes = [e for kind in ("polygon", "ellipse") for e in root.iter(space + kind)]
    assert len(shapes) == sum(len(d.outlines) for d in drawings)
    assert {e.get("data-zone") for e in shapes} >= {"body", "top", "drawers", "doors"}
    assert root.findtext(space + "title") == 'a <b> & "c"'
    fronts = [e for e in shapes if e.get("data-part") == "drawer fronts"]
    assert "rgb(161,80,71)" in {e.get("fill") for e in fronts}
    assert (root.get("width") or "").endswith("mm")
    words = [e.text for e in root.iter(space + "text")]
    assert "420 mm wide, 600 mm high" in (words[0] or "")
    assert {"top", "drawers"} <= set(words)


@given(st.sampled_from(Kind), st.sampled_from(View))
def test_each_face_knows_its_part(kind: Kind, view: View) -> None:
    """A face tells the row of its part in the piece, and every row is drawn."""
    made = common_piece(kind)
    outlines = drawn(made, view).outlines
    assert all(made.parts[outline.row].name == outline.part for outline in outlines)
    assert {outline.row for outline in outlines} == {*range(len(made.parts))}


def test_parts_of_one_name_are_told_apart() -> None:
    """Two parts that are called alike are two rows, and the four sides of a frame are one."""
    frame = Part("a", Shape.FRAME, 400, 300, 20, member=40, painted=(Face.OUTSIDE,))
    found = drawn(piece(cube("a", 0, 0, 0), frame), View.FRONT).outlines
    assert sorted(outline.row for outline in found) == [0, 1, 1, 1, 1]
