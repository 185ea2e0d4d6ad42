"""Raw files come back as the light that was written into them."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.typing import NDArray

from swatchwright.photo.readers import read_photo
from unit.photo.pictures import refusal
from unit.photo.readers.invented import COLOUR_MATRIX, negative

if TYPE_CHECKING:
    from pathlib import Path

PATCHES = np.array([[0.18, 0.18, 0.18], [0.4, 0.1, 0.05], [0.05, 0.2, 0.5], [0.5, 0.45, 0.1]])
"""Linear sRGB of four patches, the first a grey card."""


def seen(patches: NDArray[np.float64], side: int = 32) -> NDArray[np.float64]:
    """Give square patches side by side as the invented camera's primaries have them.

    The matrix between sRGB and XYZ is that of colour-science.
    """
    import colour

    to_xyz = colour.RGB_COLOURSPACES["sRGB"].matrix_RGB_to_XYZ
    camera = patches @ (COLOUR_MATRIX @ to_xyz).T
    return np.repeat(np.repeat(camera[None], side, axis=0), side, axis=1)


def patches_of(light: NDArray[np.float32], side: int = 32) -> NDArray[np.float64]:
    """Give the patches, in proportion to the first, which is 0.18."""
    middles = light[side // 2, side // 2 :: side].astype(np.float64)
    return np.asarray(middles / middles[0] * 0.18)


@pytest.mark.parametrize("mosaic", [True, False])
def test_light_comes_back(tmp_path: Path, *, mosaic: bool) -> None:
    """A digital negative gives the linear light it was made from, in proportion to the grey."""
    photo = read_photo(negative(tmp_path / "x.dng", seen(PATCHES), mosaic=mosaic))
    assert patches_of(photo.linear()) == pytest.approx(PATCHES, abs=1e-3)
    assert photo.linear()[16, 16].std() < 1e-3
    facts = photo.facts
    assert facts.words == "RAW, 128 × 32, 14 bits, the camera's own, linear light"
    assert (facts.linear, facts.tone_mapped) == (True, False)
    assert photo.deep is not None


def test_colours_outside_srgb_survive(tmp_path: Path) -> None:
    """A green that no sRGB screen shows comes back, below 0 in red."""
    wide = np.array([[0.18, 0.18, 0.18], [-0.08, 0.4, 0.1]])
    photo = read_photo(negative(tmp_path / "x.dng", seen(wide)))
    assert patches_of(photo.linear()) == pytest.approx(wide, abs=1e-3)


def test_light_twice_as_strong_is_twice_the_number(tmp_path: Path) -> None:
    """Nothing is brightened by itself, and no curve bends it."""
    first, second = (
        read_photo(negative(tmp_path / f"{k}.dng", k * seen(PATCHES))).linear() for k in (0.3, 0.6)
    )
    assert second == pytest.approx(2 * first, rel=0.02, abs=5e-4)


def test_what_is_clipped_is_at_the_top(tmp_path: Path) -> None:
    """Where the sensor saw more than it can hold all three channels are full, as with any photo."""
    photo = read_photo(negative(tmp_path / "x.dng", seen(PATCHES * 9)))
    assert photo.encoded[16, 16].tolist() == [255, 255, 255]


def test_it_is_turned_upright(tmp_path: Path) -> None:
    """The orientation in the file is applied once."""
    photo = read_photo(negative(tmp_path / "x.dng", seen(PATCHES), orientation=6))
    assert (photo.width, photo.height) == (32, 128)
    assert photo.linear()[112, 16, 0] > photo.linear()[16, 16, 0]


def test_a_large_sensor_is_halved(tmp_path: Path) -> None:
    """From 6 million dots on each square of four becomes a pixel, with a note."""
    camera = np.repeat(seen(PATCHES, 600), 5, axis=0)[:2600]
    photo = read_photo(negative(tmp_path / "x.dng", camera))
    assert (photo.width, photo.height) == (1200, 1300)
    assert patches_of(photo.linear(), 300) == pytest.approx(PATCHES, abs=1e-3)
    assert "half the width" in photo.facts.notes[0]


def test_without_its_package_it_says_how_to_install_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The extra is named, and the way round it."""
    path = negative(tmp_path / "x.dng", seen(PATCHES))
    monkeypatch.setitem(sys.modules, "rawpy", None)
    words = refusal(path)
    assert "swatchwright[raw]" in words
    assert "16-bit TIFF" in words


def test_an_unknown_camera_is_named_as_that(tmp_path: Path) -> None:
    """A head of a raw file with nothing known behind it is refused, with a way round it."""
    (tmp_path / "x.raw").write_bytes(b"II*\0\x10\0\0\0CR\x02\0" + bytes(4000))
    assert "DNG" in refusal(tmp_path / "x.raw")


def test_half_a_file_is_damaged(tmp_path: Path) -> None:
    """A negative without its pixels is refused."""
    path = negative(tmp_path / "x.dng", seen(PATCHES))
    path.write_bytes(path.read_bytes()[:900])
    assert refusal(path)
