"""Code points of colour, against colour-science and the Recommendations themselves."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from swatchwright.photo.readers.cicp import CodePoints, decoding_by_primaries, power_curve

V = np.linspace(0, 1, 256)


def transfer(code: int) -> NDArray[np.float32]:
    """Give the light of the 256 bytes by one curve of H.273."""
    return np.asarray(CodePoints(1, code).decoding(256).curves[0])


def test_curves_of_ordinary_pictures_follow_colour_science() -> None:
    """BT.709 (which BT.601 and BT.2020 share), sRGB and plain light."""
    import colour

    bt709 = colour.models.oetf_inverse_BT709(V)
    # The Recommendation rounds its constants; H.273 gives them in full: 0.0002 apart.
    for code in (1, 6, 14, 15):
        assert transfer(code) == pytest.approx(bt709, abs=3e-4)
    assert transfer(15) == pytest.approx(
        colour.models.oetf_inverse_BT2020(V, is_12_bits_system=True), abs=1e-4
    )
    assert transfer(13) == pytest.approx(colour.models.eotf_sRGB(V), abs=1e-6)
    assert transfer(8) == pytest.approx(V, abs=1e-6)
    assert transfer(4) == pytest.approx(V**2.2, abs=1e-6)


def test_curves_of_hdr_follow_colour_science() -> None:
    """PQ and HLG, with the white paper of ITU-R BT.2408 as 1: 203 cd/m², and 75 % of the signal."""
    import colour

    assert transfer(16) == pytest.approx(colour.models.eotf_ST2084(V) / 203, rel=1e-5)
    scene = colour.models.oetf_inverse_BT2100_HLG
    assert transfer(18) == pytest.approx(scene(V) / scene(0.75), rel=1e-5)


@pytest.mark.parametrize(
    ("code", "space"), [(1, "ITU-R BT.709"), (9, "ITU-R BT.2020"), (12, "Display P3")]
)
def test_primaries_follow_colour_science(code: int, space: str) -> None:
    """The matrix to linear sRGB is that between the two spaces, within 1e-3."""
    import colour

    expected = colour.matrix_RGB_to_RGB(
        colour.RGB_COLOURSPACES[space],
        colour.RGB_COLOURSPACES["sRGB"],
        chromatic_adaptation_transform=None,
    )
    assert CodePoints(code, 13).decoding(256).matrix == pytest.approx(expected, abs=2e-3)


@pytest.mark.parametrize("primaries", [1, 2, 5, 6, 7, 9, 12])
def test_white_stays_white(primaries: int) -> None:
    """Equal red, green and blue come out equal, whatever the primaries."""
    matrix = CodePoints(primaries, 13).decoding(256).matrix
    assert matrix.sum(axis=1) == pytest.approx([1, 1, 1], abs=1e-9)


def test_what_is_open_is_srgb_and_what_is_unknown_is_refused() -> None:
    """Code point 2 leaves it open; others that are not in the tables raise."""
    assert CodePoints(2, 2).is_open
    assert CodePoints(2, 2).words == "sRGB"
    for points in (CodePoints(0, 13), CodePoints(1, 0), CodePoints(255, 255)):
        with pytest.raises(ValueError, match="code points"):
            points.decoding(256)


def test_words_name_the_space() -> None:
    """A painter reads names, not numbers."""
    assert CodePoints(12, 13).words == "Display P3"
    assert CodePoints(1, 1).words == "BT.709, BT.709 curve"
    assert CodePoints(9, 18).words == "BT.2020, HLG curve"


def test_primaries_that_make_no_white_are_refused() -> None:
    """Primaries on a line, or without light, are damage."""
    curves = [power_curve(2.0, 256)] * 3
    for bad in (
        ((0.3, 0.3), (0.3, 0.3), (0.3, 0.3)),
        ((0.64, 0.0), (0.3, 0.6), (0.15, 0.06)),
    ):
        with pytest.raises(ValueError, match=r"white|light"):
            decoding_by_primaries(curves, bad)
