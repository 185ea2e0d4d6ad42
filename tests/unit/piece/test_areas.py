"""Painted areas by part and by zone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.piece.areas import areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.part import Face
from unit.piece.made import panel, piece


def test_a_part_in_two_colours() -> None:
    """A lid whose inside has a zone of its own gives each zone one face, 0.15 m2."""
    lid = panel("lid", painted=(Face.OUTSIDE, Face.INSIDE), zone="top", inside_zone="inside")
    found = areas_of(piece(lid))
    assert [row.zone for row in found.parts] == ["top", "inside"]
    assert [row.area for row in found.parts] == pytest.approx([0.15, 0.15])
    assert found.total == pytest.approx(0.3)


def test_what_is_alike_counts() -> None:
    """Four panels are four times one."""
    one, four = (areas_of(piece(panel(count=n))).total for n in (1, 4))
    assert four == pytest.approx(4 * one)


def test_what_is_left_bare_has_no_row() -> None:
    """A part with no painted face is in no row and no zone."""
    found = areas_of(piece(panel(), panel("back", painted=())))
    assert [row.name for row in found.parts] == ["panel"]


@given(st.sampled_from(Kind), st.booleans())
def test_zones_add_up(kind: Kind, inside: bool) -> None:  # noqa: FBT001 - hypothesis gives it
    """Parts, zones and total are the same area."""
    found = areas_of(common_piece(kind, inside=inside))
    assert sum(row.area for row in found.parts) == pytest.approx(found.total)
    assert sum(zone.area for zone in found.zones) == pytest.approx(found.total)
    assert len({zone.zone for zone in found.zones}) == len(found.zones)
