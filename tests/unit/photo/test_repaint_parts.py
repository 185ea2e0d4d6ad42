"""The parts that repainting is made of: colours that speak, edges that fit, gloss and wear."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.colour.convert import lab_to_linear_srgb
from swatchwright.photo.repaint_colours import likely
from swatchwright.photo.repaint_edges import enlarged, fitted
from swatchwright.photo.repaint_shade import coats_of, looks, painted, surroundings
from swatchwright.photo.repaint_strokes import UNMARKED
from swatchwright.photo.repaint_worn import lighter_where_worn, worn

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.floating[Any]]

GREEN = np.asarray(lab_to_linear_srgb((55, -20, 8)), dtype=np.float32)
WOOD = np.asarray(lab_to_linear_srgb((70, 10, 30)), dtype=np.float32)


def marks_on(shape: tuple[int, int], *columns: tuple[int, int]) -> NDArray[np.uint8]:
    """Mark columns of a picture, one label after another."""
    marks = np.full(shape, UNMARKED, dtype=np.uint8)
    for label, (first, last) in enumerate(columns):
        marks[:, first:last] = label
    return marks


def test_shade_speaks_for_its_surface() -> None:
    """A surface in half the light speaks for its own zone; a colour never marked for none."""
    light = np.zeros((10, 80, 3), dtype=np.float32)
    light[:, :40], light[:, 40:] = GREEN, WOOD
    light[5:] *= 0.5
    light[:, 70:] = np.asarray(lab_to_linear_srgb((40, 50, -60)))
    marks = marks_on((10, 80), (2, 8), (42, 48))
    marks[5:] = UNMARKED
    votes = likely(light, marks, 3)
    assert votes.sum(axis=0) == pytest.approx(np.ones((10, 80)), abs=1e-5)
    assert votes[0, 7, 20] > 0.9
    assert votes[1, 7, 60] > 0.9
    assert votes[2, 2, 75] > 0.9


def test_the_dark_says_nothing() -> None:
    """Where there is hardly any light every zone is as likely."""
    light = np.full((6, 20, 3), 0.002, dtype=np.float32)
    light[:, :8] = GREEN
    votes = likely(light, marks_on((6, 20), (0, 4)), 2)
    assert votes[:, 3, 15] == pytest.approx([0.5, 0.5])


def test_an_edge_is_moved_to_that_of_the_picture() -> None:
    """A mask that is off by a pixel, fitted to a picture, has the picture's edge."""
    picture = np.full((40, 60, 3), 0.2, dtype=np.float32)
    picture[:, 30:] = (0.7, 0.5, 0.3)
    mask = np.zeros((1, 40, 60), dtype=np.float32)
    mask[:, :, 31:] = 1
    found = fitted(picture, mask).masks(picture, slice(0, 40), 40)[0]
    assert found[20, 30] > 0.7
    assert found[20, 29] < 0.1
    assert np.all(found[:, 42:] == pytest.approx(1, abs=1e-4))
    assert np.all(found[:, :18] == pytest.approx(0, abs=1e-4))


def test_strips_make_up_the_whole() -> None:
    """A field enlarged strip by strip is the field enlarged at once."""
    field = np.random.default_rng(2).normal(size=(30, 40)).astype(np.float32)
    whole = enlarged(field, (120, 160), (0.0, 1.0))
    strips = [enlarged(field, (40, 160), (n / 3, (n + 1) / 3)) for n in range(3)]
    inner = np.ones(120, dtype=np.bool_)
    inner[36:44] = inner[76:84] = False
    assert np.concatenate(strips)[inner] == pytest.approx(whole[inner], abs=1e-5)


@given(st.floats(0.05, 1.0), st.floats(0.0, 0.6))
def test_shade_and_gloss_are_no_wear(shade: float, gloss: float) -> None:
    """Old paint in any shade and under any gloss is old paint; wood never is."""
    seen = (shade * GREEN + gloss)[None, None]
    assert worn(seen, GREEN)[0, 0] == 0
    assert worn((shade * WOOD)[None, None], GREEN)[0, 0] == 1


def test_how_much_lighter_the_patches_are() -> None:
    """The factor is that of the luminances, whatever the light over the whole; 1 without any."""
    light = np.tile(GREEN, (60, 60, 1)) * np.linspace(0.5, 1, 60)[None, :, None]
    inside = np.ones((60, 60), dtype=np.bool_)
    assert lighter_where_worn(light, inside, worn(light, GREEN)) == 1
    ramp = np.linspace(0.5, 1, 60)[None, :, None]
    light[20:32, 20:32] = (np.tile(WOOD, (60, 60, 1)) * ramp)[20:32, 20:32]
    weights = np.array([0.2126, 0.7152, 0.0722])
    expected = float(WOOD @ weights / (GREEN @ weights))
    found = lighter_where_worn(light, inside, worn(light, GREEN))
    assert found == pytest.approx(expected, rel=0.05)


def test_two_zones_of_one_paint_share_its_light() -> None:
    """A side in less light than the front, of the same paint, stays the darker one."""
    light = np.tile(GREEN, (30, 80, 1))
    light[:, 40:] *= 0.7
    marks = marks_on((30, 80), (5, 15), (60, 70))
    masks = np.zeros((2, 30, 80), dtype=np.float32)
    masks[0, :, :40] = masks[1, :, 40:] = 1
    coats = coats_of(light, masks, marks)
    assert coats[0].level == pytest.approx(coats[1].level)
    seen = looks(light, masks, coats, surroundings(light, masks))
    out = painted(seen, coats, [WOOD, WOOD])
    assert out[15, 70] / out[15, 10] == pytest.approx([0.7, 0.7, 0.7], abs=0.02)
