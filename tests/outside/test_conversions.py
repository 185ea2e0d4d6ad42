"""sRGB, CIELAB and the change of white against printed tables and colour-science."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.colour.convert import (
    D50_WHITE,
    D65_WHITE,
    bradford,
    hex_to_lab,
    lab_to_linear_srgb,
    lab_to_xyz,
    linear_srgb_to_lab,
    linear_srgb_to_xyz,
    srgb_decode,
    srgb_encode,
    xyz_to_lab,
    xyz_to_linear_srgb,
)

# IEC 61966-2-1:1999, the two matrices as printed, to four decimals.
IEC_TO_XYZ = ((0.4124, 0.3576, 0.1805), (0.2126, 0.7152, 0.0722), (0.0193, 0.1192, 0.9505))
IEC_TO_RGB = ((3.2406, -1.5372, -0.4986), (-0.9689, 1.8758, 0.0415), (0.0557, -0.2040, 1.0570))


@pytest.mark.parametrize(
    ("byte", "linear"),
    [
        # The transfer function of IEC 61966-2-1:1999, worked out to ten decimals.
        (0, 0.0),
        (10, 0.0030352698),
        (11, 0.0033465358),
        (50, 0.0318960331),
        (100, 0.1274376804),
        (118, 0.1811642443),
        (119, 0.1844749945),
        (127, 0.2122307574),
        (128, 0.2158605001),
        (188, 0.5028864580),
        (200, 0.5775804404),
        (255, 1.0),
    ],
)
def test_a_byte_decodes_to_its_light(byte: int, linear: float) -> None:
    """Bytes below, at and above the bend of the curve decode to their light and back."""
    assert float(srgb_decode(byte / 255)) == pytest.approx(linear, abs=1e-10)
    assert float(srgb_encode(linear)) * 255 == pytest.approx(byte, abs=1e-6)


def test_the_curve_is_that_of_an_independent_program() -> None:
    """All of the curve agrees with colour-science, both ways."""
    c = np.linspace(0, 1, 4097)
    assert_allclose(srgb_decode(c), colour.models.eotf_sRGB(c), rtol=0, atol=1e-12)
    # At the bend itself the standard's two branches differ by 3e-8.
    assert_allclose(srgb_encode(c), colour.models.eotf_inverse_sRGB(c), rtol=0, atol=1e-7)


def test_the_primaries_are_those_of_the_standard() -> None:
    """Both matrices are close to the printed ones, and white is exactly D65.

    The standard takes white by its rounded x, y, which makes its Z 0.0002 larger.
    """
    eye = np.eye(3)
    assert_allclose(linear_srgb_to_xyz(eye).T, IEC_TO_XYZ, rtol=0, atol=2.5e-4)
    assert_allclose(xyz_to_linear_srgb(eye).T, IEC_TO_RGB, rtol=0, atol=1.3e-3)
    assert_allclose(linear_srgb_to_xyz([1.0, 1, 1]), D65_WHITE, rtol=0, atol=1e-12)


@pytest.mark.parametrize(
    ("code", "lab"),
    [
        # sRGB by IEC 61966-2-1 with its printed matrix, CIELAB for D65; the printed matrix
        # puts white 0.008 off, and so these.
        ("#ff0000", (53.2329, 80.1112, 67.2237)),
        ("#00ff00", (87.7370, -86.1829, 83.1878)),
        ("#0000ff", (32.3026, 79.1981, -107.8504)),
        ("#000080", (12.9753, 47.5086, -64.6963)),
        ("#777777", (50.0344, 0.0, 0.0)),
        ("#808080", (53.5850, 0.0, 0.0)),
        ("#ffffff", (100.0, 0.0, 0.0)),
        ("#000000", (0.0, 0.0, 0.0)),
    ],
)
def test_a_screen_colour_in_cielab(code: str, lab: tuple[float, ...]) -> None:
    """Full red, green, blue, a navy and greys have their CIELAB, within 0.03."""
    assert_allclose(hex_to_lab(code).triple, lab, rtol=0, atol=0.03)


@pytest.mark.parametrize(
    ("Y", "L"),
    # ISO/CIE 11664-4:2019, L* = 116 f(Y) - 16, worked out.
    [(0.18, 49.4961), (0.20, 51.8372), (0.90, 95.9968), (0.036, 22.3024), (0.05, 26.7348)],
)
def test_the_lightness_of_a_grey(Y: float, L: float) -> None:
    """Greys of known reflectance have their L* under every white, and no a* or b*."""
    for white in (D65_WHITE, D50_WHITE, (1.09850, 1.0, 0.35585)):
        lab = xyz_to_lab([Y * w for w in white], white)
        assert_allclose(lab, (L, 0, 0), rtol=0, atol=5e-5)


def test_dark_colours_are_on_the_straight_part() -> None:
    """Below Y = 216/24389 L* is 24389/27 Y (ISO/CIE 11664-4:2019), and continuous there."""
    edge = 216 / 24389
    assert float(xyz_to_lab(np.multiply(D65_WHITE, 0.001))[0]) == pytest.approx(24.389 / 27)
    below, above = (xyz_to_lab(np.multiply(D65_WHITE, edge * k))[0] for k in (1 - 1e-9, 1 + 1e-9))
    assert float(below) == pytest.approx(8, abs=1e-6)
    assert float(above) == pytest.approx(8, abs=1e-6)


@pytest.mark.parametrize("white", [D65_WHITE, D50_WHITE, (1.09850, 1.0, 0.35585)])
def test_cielab_agrees_with_an_independent_program(white: tuple[float, ...]) -> None:
    """XYZ to CIELAB and back agrees with colour-science, from black to bright."""
    xyz = np.random.default_rng(11664).uniform(0, 1.1, (2000, 3)) ** 3
    xy = colour.XYZ_to_xy(np.array(white))
    expected = colour.XYZ_to_Lab(xyz, xy)
    # The white goes to that program by its x, y, and so with its last digits rounded.
    assert_allclose(xyz_to_lab(xyz, white), expected, rtol=0, atol=1e-9)
    assert_allclose(lab_to_xyz(expected, white), xyz, rtol=0, atol=1e-12)


def test_srgb_to_cielab_agrees_with_an_independent_program() -> None:
    """Random screen colours agree with colour-science's sRGB, within the printed matrix."""
    rgb = np.random.default_rng(61966).uniform(0, 1, (2000, 3))
    xy = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    expected = colour.XYZ_to_Lab(colour.sRGB_to_XYZ(rgb), xy)
    ours = linear_srgb_to_lab(srgb_decode(rgb))
    assert np.max(colour.delta_E(ours, expected, method="CIE 2000")) < 0.02
    assert_allclose(srgb_encode(lab_to_linear_srgb(ours)), rgb, rtol=0, atol=1e-7)


@pytest.mark.parametrize(
    ("source", "destination", "matrix"),
    [
        # Bradford (Lam 1985; ICC.1:2022 annex E), worked out for these whites.
        (
            D65_WHITE,
            D50_WHITE,
            (
                (1.0478112, 0.0228866, -0.0501270),
                (0.0295424, 0.9904844, -0.0170491),
                (-0.0092345, 0.0150436, 0.7521316),
            ),
        ),
        (
            (1.09850, 1.0, 0.35585),
            D65_WHITE,
            (
                (0.8446965, -0.1179225, 0.3948108),
                (-0.1366303, 1.1041226, 0.1291718),
                (0.0798490, -0.1348999, 3.1924010),
            ),
        ),
    ],
)
def test_bradford_has_its_matrix(
    source: tuple[float, ...], destination: tuple[float, ...], matrix: tuple[tuple[float, ...], ...]
) -> None:
    """Two changes of white have their matrix, and it takes the one white to the other."""
    ours = bradford(source, destination)
    assert_allclose(ours, matrix, rtol=0, atol=6e-8)
    assert_allclose(ours @ source, destination, rtol=0, atol=1e-12)
    theirs = colour.adaptation.matrix_chromatic_adaptation_VonKries(
        np.array(source), np.array(destination), transform="Bradford"
    )
    assert_allclose(ours, theirs, rtol=0, atol=1e-6)
