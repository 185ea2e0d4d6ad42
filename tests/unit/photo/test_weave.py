"""The yarn, and the cloth from a metre away."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.photo.dominant import dominant_colours
from swatchwright.photo.reference import no_reference
from swatchwright.photo.sampling import sample
from swatchwright.photo.weave import metre_light, surface_of
from swatchwright.values import Rect
from unit.photo.pictures import patches, photo_of_light, woven

CLAY = (45.0, 33.0, 24.0)


def test_the_yarn_is_the_lit_part_and_the_metre_the_mean_of_the_light() -> None:
    """Of a weave of one yarn, one is the yarn and the other the mean of its linear light."""
    light, _ = woven([CLAY, CLAY])
    photo = photo_of_light(light)
    surface = surface_of(photo, sample(photo, Rect(0, 0, 400, 300), ()), "It")
    assert delta_e_2000(linear_srgb_to_lab(surface.yarn), CLAY) < 1.5
    mean = linear_srgb_to_lab(light.mean(axis=(0, 1)))
    assert delta_e_2000(linear_srgb_to_lab(surface.metre), mean) < 1.0
    assert surface.yarn[1] > 1.05 * surface.metre[1]


def test_a_flat_surface_has_one_colour() -> None:
    """With nothing but noise, both are its mean, hardly moved by the noise."""
    rng = np.random.default_rng(4)
    light = patches([CLAY], (200,)) * (1 + 0.05 * rng.standard_normal((200, 200, 3)))
    photo = photo_of_light(np.clip(light, 0, 1))
    surface = surface_of(photo, sample(photo, Rect(0, 0, 200, 200), ()), "It")
    for seen in (surface.yarn, surface.metre):
        assert delta_e_2000(linear_srgb_to_lab(seen), CLAY) < 0.4


def test_folds_do_not_count_as_weave() -> None:
    """A cloth half in deep shade keeps, from a metre, the colour of most of its windows."""
    light = patches([CLAY], (300,))
    light[:60] *= 0.4
    usable = np.ones(light.shape[:2], dtype=np.bool_)
    assert metre_light(light, usable, usable) == pytest.approx(lab_to_linear_srgb(CLAY))


def test_both_colours_are_offered_for_each_dominant_colour() -> None:
    """They come with words, the metre's darker than the yarn's, and both with their doubt."""
    light, _ = woven([CLAY, CLAY])
    found = dominant_colours(photo_of_light(light), no_reference(), count=1)[0]
    assert found.yarn is found.colour
    assert "seen near to" in found.colour.origin
    assert "from a metre" in found.from_a_metre.origin
    assert found.from_a_metre.lab.L < found.yarn.lab.L - 1
    assert found.from_a_metre.covariance == found.colour.covariance
    assert found.weave > 1


def test_hardly_a_pixel_is_refused() -> None:
    """A part that is black holds nothing that can be used."""
    photo = photo_of_light(np.zeros((40, 40, 3)))
    with pytest.raises(MendableError, match="The cloth holds only 0"):
        surface_of(photo, sample(photo, Rect(0, 0, 40, 40), ()), "The cloth")
