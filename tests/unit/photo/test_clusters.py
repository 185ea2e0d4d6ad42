"""Groups of pixels of one colour."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest

from swatchwright.colour.convert import linear_srgb_to_lab
from swatchwright.photo.clusters import Pixels, group

if TYPE_CHECKING:
    from numpy.typing import NDArray

RED, BLUE = np.array([0.35, 0.06, 0.05]), np.array([0.05, 0.08, 0.30])
RNG = np.random.default_rng(15)


def pixels_of(light: NDArray[np.float64], pure: NDArray[np.bool_] | None = None) -> Pixels:
    """Make pixels of linear light, shape (rows, columns, 3), with 1 % noise."""
    noisy = light * (1 + 0.01 * RNG.standard_normal(light.shape))
    grid = np.arange(light[..., 0].size).reshape(light.shape[:2])
    lab = np.asarray(linear_srgb_to_lab(noisy.reshape(-1, 3)), dtype=np.float64)
    return Pixels(lab, np.ones(len(lab)) if pure is None else pure.ravel().astype(np.float64), grid)


def test_a_fold_is_one_colour() -> None:
    """Light that runs smoothly from full to half over the cloth does not split it."""
    shade = np.linspace(0.5, 1.0, 120)[None, :, None]
    assert set(group(pixels_of(np.tile(RED * shade, (80, 1, 1))), None)) == {0}


def test_a_light_and_a_dark_patch_of_one_hue_are_two() -> None:
    """Side by side with nothing between them, they are two colours, however alike in hue."""
    light = np.tile(RED, (80, 120, 1))
    light[:, 60:] *= 0.45
    labels = group(pixels_of(light), None).reshape(80, 120)
    assert set(labels[:, :60].ravel()) != set(labels[:, 60:].ravel())
    assert len(set(labels.ravel())) == 2


def test_light_and_shade_finely_mixed_are_one() -> None:
    """A weave with sunlit and shaded pixels all over is one colour."""
    shade = np.where(RNG.random((80, 120, 1)) < 0.6, 1.0, 0.5)
    assert set(group(pixels_of(RED * shade), None)) == {0}


def test_the_blur_between_two_colours_is_no_colour() -> None:
    """Impure pixels of every mixture of two colours are shared out between these."""
    light = np.tile(RED, (80, 120, 1))
    light[:, 60:] = BLUE
    part = np.linspace(0, 1, 30)[:, None]
    light[:, 45:75] = RED * (1 - part) + BLUE * part
    pure = np.ones((80, 120), np.bool_)
    pure[::2, 45:75] = False
    pure[1::4, 45:75] = False
    labels = group(pixels_of(light, pure), None).reshape(80, 120)
    assert len(set(labels.ravel())) == 2
    assert abs(float(np.mean(labels == labels[0, 0])) - 0.5) < 0.1


@pytest.mark.parametrize("count", [1, 2, 3, 5])
def test_as_many_as_are_asked_for(count: int) -> None:
    """Six plain colours are joined to the number asked for, the nearest first."""
    colours = np.array(
        [[0.4, 0.05, 0.05], [0.38, 0.07, 0.05], [0.05, 0.3, 0.05], [0.05, 0.05, 0.4],
         [0.6, 0.6, 0.6], [0.5, 0.4, 0.05]]
    )  # fmt: skip
    light = np.repeat(colours, 20, axis=0)[None].repeat(60, axis=0)
    labels = group(pixels_of(light), count).reshape(60, 120)
    assert len(set(labels.ravel())) == count
    assert labels[0, 0] == labels[0, 30]


def test_never_more_than_there_are() -> None:
    """Two exact colours stay two when five are asked for."""
    lab = np.repeat([[50.0, 0.0, 0.0], [60.0, 30.0, 0.0]], 100, axis=0)
    pixels = Pixels(lab, np.ones(200), np.arange(200).reshape(10, 20))
    assert len(set(group(pixels, 5))) == 2
