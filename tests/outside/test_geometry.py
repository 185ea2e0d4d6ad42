"""Areas against numerical integration, the surfaces of convex hulls, and figures of handbooks.

The integrals are scipy's adaptive quadrature of the exact curve; the hulls are qhull's, whose area
of a convex body is exact but for rounding.
"""

from __future__ import annotations

from itertools import pairwise, product
from math import cos, hypot, pi, sin
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.spatial import ConvexHull

from swatchwright.piece.faces import face_areas
from swatchwright.piece.geometry import girth, lateral, sphere, tapered_sides
from swatchwright.piece.part import Face, Moulding, Part, Shape

if TYPE_CHECKING:
    from collections.abc import Callable

sizes = st.floats(5, 3000)


def surface(points: list[tuple[float, float, float]]) -> float:
    """Give the surface of the convex body that has these corners."""
    return float(ConvexHull(np.array(points)).area)


def prism(start: tuple[float, float], end: tuple[float, float], length: float) -> float:
    """Give the surface of a body between two rectangles that share an axis."""
    corners = [
        (x * w / 2, y * d / 2, z)
        for (w, d), z in ((start, 0.0), (end, length))
        for x, y in product((-1, 1), repeat=2)
    ]
    return surface(corners)


def turned(radius: Callable[[float], float], length: float) -> float:
    """Integrate 2 pi r ds along the axis; the slope is a central difference."""

    def ring(z: float) -> float:
        slope = (radius(z + 1e-4) - radius(z - 1e-4)) / 2e-4
        return 2 * pi * radius(z) * hypot(1.0, slope)

    return float(quad(ring, 0, length, limit=400, epsabs=1e-3)[0])


# --- what stands in handbooks --------------------------------------------------------------------


def test_worked_frustum() -> None:
    """Radius 30 to 15 over 700 mm: pi (r1 + r2) s = 98 982.886 mm2; four legs 0.3959 m2."""
    assert lateral([(0, 30), (700, 15)]) == pytest.approx(98_982.886, abs=5e-4)
    assert 4e-6 * lateral([(0, 30), (700, 15)]) == pytest.approx(0.3959315, abs=5e-8)


def test_worked_square_taper() -> None:
    """A leg of 45 mm square to 25 mm over 700 mm has 98 009.999 mm2 of sides."""
    assert tapered_sides(700, (45, 45), (25, 25)) == pytest.approx(98_009.999, abs=1e-3)


def test_worked_sphere() -> None:
    """A knob of 60 mm has 11 309.734 mm2."""
    assert sphere(60) == pytest.approx(11_309.734, abs=1e-3)


def arc(radius: float, turn: float) -> float:
    """Integrate the length of an arc of a circle."""
    return float(quad(lambda _: radius, 0, turn)[0])


@pytest.mark.parametrize(
    ("moulding", "across"),
    [
        (Moulding.FLAT, 40.0),
        (Moulding.BEVEL, hypot(40, 40)),
        (Moulding.HALF_ROUND, arc(20, pi)),
        (Moulding.QUARTER_ROUND, arc(40, pi / 2)),
        (Moulding.OGEE, 2 * arc(20, pi / 2)),
    ],
)
def test_profiles_by_their_curve(moulding: Moulding, across: float) -> None:
    """A metre of each profile, 40 mm wide, has the length of its arcs across."""
    part = Part("m", Shape.MOULDING, 1000, 40, moulding=moulding)
    assert face_areas(part)[Face.OUTSIDE] == pytest.approx(1000 * across)


def test_a_wave_has_its_elliptic_length() -> None:
    """A sine of amplitude 5 and period 20 mm is 1.46370 times as long as it is wide (quad)."""
    points = [(x, 5 * sin(2 * pi * x / 20)) for x in np.linspace(0, 20, 2000)]
    exact = quad(lambda x: hypot(1, 0.5 * pi * cos(2 * pi * x / 20)), 0, 20)[0]
    assert exact / 20 == pytest.approx(1.46370, abs=5e-6)
    assert girth(points) == pytest.approx(exact, rel=1e-5)


def test_worked_cabinet() -> None:
    """A case of 800 by 400 by 900 mm, five faces, is 2.48 m2."""
    top = Part("top", Shape.TOP, 800, 400, 20)
    side = Part("side", Shape.PANEL, 900, 400, 20)
    front = Part("front", Shape.PANEL, 800, 900, 20)
    flat = [face_areas(p)[Face.OUTSIDE] for p in (top, side, side, front, front)]
    assert sum(flat) * 1e-6 == pytest.approx(2.48)


def test_worked_slat() -> None:
    """A slat of 20 by 50 by 1000 mm has 0.142 m2 all over."""
    slat = Part("slat", Shape.RAIL, 1000, 50, 20)
    assert sum(face_areas(slat).values()) * 1e-6 == pytest.approx(0.142)


# --- hulls ---------------------------------------------------------------------------------------


@given(sizes, sizes, sizes)
def test_a_panel_is_a_box(length: float, width: float, depth: float) -> None:
    """All faces of a panel together are the surface of its box."""
    part = Part("p", Shape.PANEL, length, width, depth)
    box = prism((width, depth), (width, depth), length)
    assert sum(face_areas(part).values()) == pytest.approx(box, rel=1e-9)


@given(sizes, sizes, sizes, st.floats(0.2, 1.5))
def test_a_tapered_leg_is_a_hull(length: float, width: float, depth: float, taper: float) -> None:
    """All faces of a leg that tapers in proportion are the surface between its two ends."""
    part = Part("l", Shape.TAPERED_LEG, length, width, depth, end=width * taper)
    hull = prism((width, depth), (width * taper, depth * taper), length)
    assert sum(face_areas(part).values()) == pytest.approx(hull, rel=1e-9)


@given(sizes, sizes, sizes, st.floats(0.3, 1.5))
def test_a_seat_is_a_hull(length: float, width: float, depth: float, narrower: float) -> None:
    """All faces of a seat that narrows to its back are the surface between front and back."""
    part = Part("s", Shape.SEAT, length, width, depth, end=width * narrower)
    hull = prism((width, depth), (width * narrower, depth), length)
    assert sum(face_areas(part).values()) == pytest.approx(hull, rel=1e-9)


@given(st.floats(200, 3000), st.floats(200, 3000), st.floats(5, 50), st.floats(10, 90))
def test_a_frame_is_four_boxes(length: float, width: float, depth: float, member: float) -> None:
    """A frame's faces are those of two stiles and two rails less what is glued together."""
    part = Part("f", Shape.FRAME, length, width, depth, member=member)
    stile = prism((member, depth), (member, depth), length)
    rail = prism((member, depth), (member, depth), width - 2 * member)
    glued = 8 * member * depth
    assert sum(face_areas(part).values()) == pytest.approx(2 * stile + 2 * rail - glued, rel=1e-9)


# --- turned --------------------------------------------------------------------------------------


def test_a_waved_leg() -> None:
    """A radius of 25 + 5 sin(2 pi z / 100) over 700 mm: 112 620.545 mm2 both ways."""

    def radius(z: float) -> float:
        return 25 + 5 * sin(2 * pi * z / 100)

    exact = turned(radius, 700)
    assert exact == pytest.approx(112_620.545, abs=0.01)
    profile = [(z, radius(z)) for z in np.linspace(0, 700, 2001)]
    assert lateral(profile) == pytest.approx(exact, rel=2e-5)


@given(
    st.lists(st.floats(2, 60), min_size=3, max_size=8),
    st.floats(100, 1000),
)
def test_stacked_frustums_are_the_integral(radii: list[float], length: float) -> None:
    """A profile of straight pieces has exactly the area that quadrature gives piece by piece."""
    profile = list(zip(np.linspace(0, length, len(radii)).tolist(), radii, strict=True))
    exact = 0.0
    for (z1, r1), (z2, r2) in pairwise(profile):
        slope = (r2 - r1) / (z2 - z1)
        exact += quad(_ring, z1, z2, args=(z1, r1, slope))[0]
    assert lateral(profile) == pytest.approx(exact, rel=1e-9)


def _ring(z: float, z0: float, r0: float, slope: float) -> float:
    return 2 * pi * (r0 + slope * (z - z0)) * hypot(1, slope)


def test_a_ball_of_frustums_is_a_sphere() -> None:
    """Frustums that follow a half circle come to pi d2, short by the square of the step."""
    errors = []
    for n in (50, 100):
        arc = [(30 - 30 * cos(t), 30 * sin(t)) for t in np.linspace(0, pi, n + 1)]
        errors.append(1 - lateral(arc) / sphere(60))
    assert 0 < errors[1] < 1e-3
    assert errors[0] / errors[1] == pytest.approx(4, abs=0.05)


def test_a_torus_of_frustums_is_that_of_pappus() -> None:
    """The outer half of a ring, 2 pi r (pi R + 2 r): for R 25, r 8 mm, 4 752.089 mm2."""
    arc = [(8 * sin(t), 25 + 8 * cos(t)) for t in np.linspace(-pi / 2, pi / 2, 2001)]
    assert lateral(arc) == pytest.approx(4_752.089, rel=1e-5)


def test_a_shoulder_is_a_flat_ring() -> None:
    """Two radii at one distance make the ring between two discs, pi (R2 - r2)."""
    assert lateral([(10, 30), (10, 20)]) == pytest.approx(pi * (900 - 400))
