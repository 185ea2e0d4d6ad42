"""The sample of pixels that colours are found in."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.photo.sampling import MOST_SAMPLES, sample
from swatchwright.values import Rect
from unit.photo.pictures import photo_of, photo_of_light, woven


def test_pixels_come_from_the_area_and_are_not_too_many() -> None:
    """Each is where it says it is, inside the area, one of each cell."""
    pixels = np.random.default_rng(13).integers(5, 250, (700, 900, 3))
    photo = photo_of(pixels)
    taken = sample(photo, Rect(50, 30, 801, 603), ())
    assert taken.x.size <= MOST_SAMPLES * 1.05
    assert (taken.x.min() >= 50, taken.x.max() <= 850) == (True, True)
    assert (taken.y.min() >= 30, taken.y.max() <= 632) == (True, True)
    assert np.array_equal(taken.encoded, pixels[taken.y, taken.x])
    assert np.all(np.diff(taken.x // 3, axis=1) >= 0)


def test_a_small_area_is_taken_whole() -> None:
    """With room for all, every pixel is taken once."""
    taken = sample(photo_of(np.full((40, 50, 3), 90)), Rect(0, 0, 50, 40), ())
    assert len(set(zip(taken.x.ravel(), taken.y.ravel(), strict=True))) == 2000


def test_useless_pixels_are_marked() -> None:
    """Clipped, black, transparent and excluded pixels are not usable, others are."""
    pixels = np.full((40, 50, 3), 90)
    pixels[:10, :25], pixels[:10, 25:] = (254, 90, 90), (3, 3, 3)
    opaque = np.ones((40, 50), dtype=np.bool_)
    opaque[10:20] = False
    taken = sample(photo_of(pixels, opaque), Rect(0, 0, 50, 40), (Rect(-5, 20, 100, 10),))
    assert taken.usable.sum() == 10 * 50
    assert taken.usable[30:].all()


def test_the_middle_of_a_patch_is_calm_and_its_edge_is_not() -> None:
    """Only the pixels beside the seam weigh nothing; noise of one byte is no matter."""
    pixels = np.full((40, 50, 3), 90) + np.random.default_rng(14).integers(0, 2, (40, 50, 3))
    pixels[:, 25:] += 100
    weight = sample(photo_of(pixels), Rect(0, 0, 50, 40), ()).weight
    assert not weight[:, 24:26].any()
    assert np.all(weight[:, :24] >= 1)
    assert np.all(weight[:, 26:] >= 1)
    assert np.all(weight[:, :15] == pytest.approx(1))


def test_a_weave_weighs_as_much_as_a_flat_patch() -> None:
    """Fewer of its pixels are calm, and each of these stands for more."""
    light, _ = woven(((45.0, 42.0, 32.0), (85.0, 2.0, 14.0)), shape=(200, 200))
    light[:, 100:] = 0.2
    weight = sample(photo_of_light(light), Rect(0, 0, 200, 200), ()).weight
    assert np.mean(weight[:, :90] > 0) < 0.6
    assert weight[:, :90].mean() == pytest.approx(weight[:, 110:].mean(), rel=0.1)
