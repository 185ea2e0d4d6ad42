"""Proposals of where a grey card may lie."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.acts.colours import open_photo, propose_greys
from swatchwright.acts.samples import sample_photos
from swatchwright.photo.greys import likely_greys
from swatchwright.values import Rect
from unit.photo.pictures import photo_of_light


def inside(inner: Rect, outer: Rect) -> bool:
    """Tell whether one rectangle lies in another."""
    return (
        inner.x >= outer.x
        and inner.y >= outer.y
        and inner.right <= outer.right
        and inner.bottom <= outer.bottom
    )


def scene(card: tuple[float, float, float]) -> np.ndarray:
    """Lay a card on a restless green ground, 600 x 400."""
    rng = np.random.default_rng(5)
    light = np.array([0.1, 0.25, 0.08]) * rng.uniform(0.3, 1.7, (400, 600, 1))
    light[100:220, 350:500] = np.array(card) * rng.uniform(0.97, 1.03, (120, 150, 1))
    return np.clip(light, 0, 1)


@pytest.mark.parametrize("card", [(0.18, 0.18, 0.18), (0.24, 0.18, 0.12), (0.8, 0.8, 0.78)])
def test_a_card_is_proposed(card: tuple[float, float, float]) -> None:
    """The first proposal lies on the card, in neutral and in warm light, grey and white."""
    found = likely_greys(photo_of_light(scene(card)))
    assert found
    assert inside(found[0], Rect(350, 100, 150, 120))


def test_a_coloured_patch_is_not() -> None:
    """A vivid red patch and a picture of noise alone give no proposal."""
    assert not likely_greys(photo_of_light(scene((0.5, 0.05, 0.04))))
    assert not likely_greys(photo_of_light(scene((0.1, 0.25, 0.08)) * 0 + scene((0, 0, 0))[::-1]))


def test_the_cards_of_the_sample_photos_are_found() -> None:
    """In each sample the first proposal overlaps the marked card."""
    for known in sample_photos():
        first = propose_greys(open_photo(known.path))[0]
        assert abs(first.x + first.width / 2 - known.grey.x - known.grey.width / 2) < 40
        assert abs(first.y + first.height / 2 - known.grey.y - known.grey.height / 2) < 40


def test_a_tiny_picture_has_none() -> None:
    """A few pixels are no card."""
    assert likely_greys(photo_of_light(np.full((3, 3, 3), 0.2))) == ()
