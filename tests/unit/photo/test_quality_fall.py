"""How the light falls off over a photo: told by its ground, whatever the box."""

from __future__ import annotations

import json
from functools import cache
from math import exp, log
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest

from swatchwright.photo.estimate import estimate
from swatchwright.photo.quality import findings
from swatchwright.photo.quality_fall import fall_of
from swatchwright.photo.readers.picture import read_photo
from swatchwright.photo.references import Reference
from swatchwright.values import Rect
from unit.photo.pictures import photo_of_light

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo

SAMPLES = Path(__file__).parents[3] / "sample_images"
LIT = ("cushion_window.jpg", "cushion_lamp.jpg", "printed_cloth.jpg")
"""Rendered photos of which is written down how the light on the cloth is to that on the card."""


@cache
def truth_of(name: str) -> dict[str, Any]:
    """Give what is written down of a rendered photo."""
    images = json.loads((SAMPLES / "truth.json").read_text())["images"]
    return next(image for image in images if image["file"] == name)


@cache
def lit(name: str, fall: float) -> Photo:
    """Give a rendered photo with less light, `fall` of its logarithm, from right to left."""
    light = read_photo(SAMPLES / name).linear(None).astype(np.float64)
    ramp = np.exp(-fall * np.linspace(1, 0, light.shape[1]))
    return photo_of_light(np.clip(light * ramp[None, :, None], 0, 1))


def middle(rect: Rect) -> tuple[float, float]:
    """Give the middle of a rectangle."""
    return rect.x + rect.width / 2, rect.y + rect.height / 2


def told(name: str, fall: float, cloth: Rect) -> list[str]:
    """Say what is found of the light's falling off with this box of the cloth."""
    photo = lit(name, fall)
    card = Rect(*truth_of(name)["grey_card"])
    correction = estimate(photo, (Reference.grey(card, 0.18),))
    return [f.text for f in findings(correction, cloth) if f.kind == "gradient"]


def boxes_about(box: Rect) -> list[Rect]:
    """Give boxes of the same place: a fifth larger, smaller, longer, wider, or moved a tenth."""
    found = [box]
    for across, down in ((1.2, 1.2), (0.8, 0.8), (0.8, 1.2), (1.2, 0.8)):
        for move in (-0.1, 0.1):
            wide, high = round(box.width * across), round(box.height * down)
            x = box.x + (box.width - wide) / 2 + move * box.width
            y = box.y + (box.height - high) / 2 + move * box.height
            found.append(Rect(round(x), round(y), wide, high))
    return found


@pytest.mark.parametrize("name", LIT)
@pytest.mark.parametrize("fall", [0.0, 0.5, 1.0, -0.8])
def test_the_light_is_known_by_what_is_seen_all_over(name: str, fall: float) -> None:
    """The light on the cloth over that on the card is within a tenth of what was rendered."""
    truth = truth_of(name)
    cloth, card = middle(Rect(*truth["area"])), middle(Rect(*truth["grey_card"]))
    found = fall_of(lit(name, fall))
    assert found is not None
    light = found.between(cloth, card)
    assert light is not None
    ramp = -fall * (card[0] - cloth[0]) / lit(name, fall).width
    assert light == pytest.approx(log(truth["light_on_area_to_light_on_card"]) + ramp, abs=0.1)


@pytest.mark.parametrize("name", LIT)
@pytest.mark.parametrize(("fall", "warned"), [(0.0, False), (0.3, False), (1.2, True)])
def test_boxes_of_one_place_tell_the_same(name: str, fall: float, *, warned: bool) -> None:
    """A box a fifth larger or smaller changes nothing; a true fall is told, its lack is not."""
    for box in boxes_about(Rect(*truth_of(name)["area"])):
        assert bool(told(name, fall, box)) is warned


@pytest.mark.parametrize(
    "box",
    [
        Rect(860, 300, 90, 400),
        Rect(850, 200, 100, 700),
        Rect(840, 250, 130, 600),
        Rect(880, 350, 60, 200),
        Rect(500, 200, 260, 760),
        Rect(200, 200, 850, 800),
    ],
)
def test_stripes_in_the_box_are_no_falling_off(box: Rect) -> None:
    """A short box on a stripe, a long one over others, one over all the cushion: none is warned."""
    assert told("cushion_window.jpg", 0.0, box) == []


def test_a_photo_with_nothing_alike_tells_nothing() -> None:
    """Where each place has another tint, or the photo is tiny, no fall is made up."""
    rng = np.random.default_rng(3)
    motley = np.exp(rng.uniform(-3, 0, (8, 12, 3))).repeat(60, axis=0).repeat(60, axis=1)
    found = fall_of(photo_of_light(motley))
    assert found is None or abs(found.across(Rect(100, 100, 300, 200)) or 0) < log(2)
    assert fall_of(photo_of_light(np.full((40, 40, 3), 0.3))) is None


def test_an_even_ground_is_even_and_a_slanting_one_slants() -> None:
    """One surface in light that falls to half from left to right: half, and even without it."""
    ramp = np.exp(-log(2) * np.linspace(0, 1, 640))[None, :, None]
    for light, share in ((np.ones((1, 640, 1)), 1.0), (ramp, 0.5)):
        found = fall_of(photo_of_light(0.6 * np.broadcast_to(light, (480, 640, 3))))
        assert found is not None
        between = found.between((630, 240), (10, 240))
        assert between is not None
        assert exp(between) == pytest.approx(share, rel=0.03)
