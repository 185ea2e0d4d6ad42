"""Figures of a photo's quality, against general libraries and pictures with a known defect."""

from __future__ import annotations

from io import BytesIO

import numpy as np
import pytest
from PIL import Image
from scipy.ndimage import gaussian_filter

from swatchwright.colour.convert import lab_to_xyz
from swatchwright.photo.signs import (
    blur,
    plane_of,
    sharpest_blur,
    small_steps,
    texture,
    whiteness,
)
from swatchwright.values import Lab
from unit.photo.pictures import photo_of


def restless(size: int = 256) -> np.ndarray:
    """Paint discs of many sizes, sharp at their edges: grey bytes."""
    rng = np.random.default_rng(6)
    y, x = np.mgrid[:size, :size]
    picture = np.full((size, size), 120.0)
    for _ in range(60):
        at, radius = rng.uniform(0, size, 2), rng.uniform(5, 30)
        picture[np.hypot(x - at[0], y - at[1]) < radius] = rng.uniform(30, 230)
    return picture


def stored(grey: np.ndarray, quality: int | None = None) -> np.ndarray:
    """Store grey bytes as a picture, through JPEG if asked."""
    picture = np.repeat(np.rint(grey)[..., None], 3, axis=-1).astype(np.uint8)
    if quality is None:
        return picture
    held = BytesIO()
    Image.fromarray(picture).save(held, "JPEG", quality=quality)
    return np.asarray(Image.open(held))


def test_blur_rises_with_blur() -> None:
    """A Gaussian of 0, 1, 2, 4 pixels is told in this order, and stays within 0 to 1."""
    values = [blur(gaussian_filter(restless(), sigma)) for sigma in (0, 1, 2, 4)]
    assert values == sorted(values)
    assert 0 < values[0] < 0.4
    assert 0.6 < values[3] < 1


def test_a_picture_without_an_edge_has_no_blur_to_tell() -> None:
    """Flat grey gives None; a sharp corner anywhere is found."""
    flat = np.full((400, 600), 120.0)
    assert sharpest_blur(photo_of(stored(flat))) is None
    flat[100:200, 100:200] = 30
    sharp = sharpest_blur(photo_of(stored(flat)))
    assert sharp is not None
    assert sharp < 0.4


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_hard_jpeg_leaves_no_small_steps(seed: int) -> None:
    """Quality 90 and 75 leave many, quality 10 hardly any, wherever the file was cropped."""
    rng = np.random.default_rng(seed)
    grey = gaussian_filter(restless(256), 3) + rng.normal(0, 4, (256, 256))
    grey = np.clip(grey, 0, 255)
    for quality in (90, 75):
        assert small_steps(stored(grey, quality)[..., 0].astype(float)) > 0.1
    hard = stored(grey, 10)[..., 0].astype(float)
    assert small_steps(hard) < 0.04
    assert small_steps(hard[3:, 5:]) < 0.04


def test_too_little_to_tell_is_not_held_against_a_picture() -> None:
    """A flat part, and a few pixels, count as fine."""
    assert small_steps(np.full((256, 256), 90.0)) == 1.0
    assert small_steps(np.zeros((10, 300))) == 1.0


def test_texture_is_the_noise_of_a_flat_part() -> None:
    """White noise of s bytes departs from four neighbours by s times sqrt(5/4) sqrt(2/pi)."""
    noise = np.random.default_rng(8).normal(100, 2.0, (300, 300))
    assert texture(noise) == pytest.approx(2.0 * np.sqrt(1.25 * 2 / np.pi), rel=0.03)
    assert texture(np.full((20, 20), 7.0)) == 0


def test_a_plane_is_found_in_noise() -> None:
    """Its rise from end to end and its share of the variance come out."""
    y, x = np.mgrid[-1:1:6j, -1:1:6j]
    rise, explained = plane_of(0.3 * x + 0.4 * y)
    assert (rise, explained) == pytest.approx((1.0, 1.0))
    assert plane_of(np.full((6, 6), 2.0)) == pytest.approx((0.0, 0.0))


def test_whiteness_is_the_published_formula() -> None:
    """It agrees with colour-science's CIE 2004 whiteness for D65."""
    import colour

    for lab in (Lab(95, 0, 0), Lab(92, 2, -8), Lab(88, -1, 4)):
        xyz = 100 * np.asarray(lab_to_xyz(lab.triple))
        xy = colour.XYZ_to_xy(xyz)
        theirs, _ = colour.colorimetry.whiteness_CIE2004(xy, xyz[1], np.array([0.3127, 0.3290]))
        assert whiteness(lab) == pytest.approx(float(theirs), abs=0.1)
