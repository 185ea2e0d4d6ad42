"""Faces of parts: which a shape has, and what it must be given."""

from __future__ import annotations

from math import pi

import pytest

from swatchwright.piece.faces import EDGES, face_areas, foot_of, needs, outline_radii
from swatchwright.piece.part import Face, Moulding, Part, Shape


def test_every_shape_has_faces() -> None:
    """Each shape has at least one face, all with an area above 0."""
    for shape in Shape:
        part = Part("x", shape, 400, 200, 20, end=15, member=30)
        areas = face_areas(part)
        assert areas
        assert min(areas.values()) > 0


def test_edges_of_a_panel_are_its_perimeter() -> None:
    """The edges of a board of 500 by 300 by 20 mm together are 1600 mm times 20 mm."""
    areas = face_areas(Part("p", Shape.PANEL, 500, 300, 20))
    assert sum(areas[face] for face in EDGES) == pytest.approx(1600 * 20)


def test_enrichment_multiplies_what_is_seen() -> None:
    """A panelled door takes 1.30 of its flat area (IS 1200 part 15), its back and edges do not."""
    plain = face_areas(Part("d", Shape.PANEL, 600, 400, 20))
    rich = face_areas(Part("d", Shape.PANEL, 600, 400, 20, enrichment=1.3))
    assert rich[Face.OUTSIDE] == pytest.approx(1.3 * plain[Face.OUTSIDE])
    assert rich[Face.INSIDE] == plain[Face.INSIDE]
    assert rich[Face.FRONT_EDGE] == plain[Face.FRONT_EDGE]


def test_a_spindle_without_a_profile_is_a_cylinder() -> None:
    """Without a profile what is turned is pi d l round, and a disc at either end."""
    part = Part("s", Shape.SPINDLE, 300, 20)
    areas = face_areas(part)
    assert areas[Face.ROUND] == pytest.approx(pi * 20 * 300)
    assert areas[Face.HEAD] == pytest.approx(pi * 100)
    assert outline_radii(part) == ((0.0, 10.0), (300, 10.0))


def test_the_foot_of_a_taper_keeps_its_proportions() -> None:
    """A leg of 60 by 30 mm that tapers to 40 mm has a foot of 40 by 20 mm."""
    assert foot_of(Part("l", Shape.TAPERED_LEG, 700, 60, 30, end=40)) == (40, 20)
    assert foot_of(Part("l", Shape.SQUARE_LEG, 700, 60, 30, end=40)) == (60, 30)


def test_what_is_needed_depends_on_the_profile() -> None:
    """A profile stands in for a width, of what is turned and of a moulding of its own."""
    assert needs(Part("l", Shape.TURNED_LEG, 700)) == ("width",)
    assert needs(Part("l", Shape.TURNED_LEG, 700, profile=((0, 20), (700, 20)))) == ()
    assert needs(Part("m", Shape.MOULDING, 700, moulding=Moulding.OWN)) == ()
    assert needs(Part("b", Shape.SPHERE, 30)) == ()
