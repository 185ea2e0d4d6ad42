"""Things of known colour: what they are, and what the photo shows of them."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.colour.convert import lab_to_linear_srgb
from swatchwright.errors import MendableError
from swatchwright.photo.references import MOST_REFERENCES, Reference, Seen, see
from swatchwright.values import Lab, Rect
from unit.photo.pictures import patches, photo_of_light

HERE = Rect(20, 20, 60, 60)
RED = Lab(45, 50, 25)


def test_a_grey_knows_its_reflectance_and_is_neutral() -> None:
    """The reflectance comes back as entered, and its a* and b* are 0 (ISO/CIE 11664-4)."""
    for reflectance in (0.035, 0.18, 0.9):
        grey = Reference.grey(HERE, reflectance)
        assert grey.reflectance == reflectance
        assert (grey.lab.a, grey.lab.b) == pytest.approx((0, 0), abs=1e-9)
        assert grey.neutral


def test_paper_is_known_less_well_than_a_card() -> None:
    """White paper may be brightened, so its colour is taken as less sure."""
    assert Reference.grey(HERE, 0.9).spread > Reference.grey(HERE, 0.18).spread


def test_words_name_each_kind() -> None:
    """A grey is told by its per cent, a chip by its colour."""
    assert "grey of 18 %" in Reference.grey(HERE).words
    assert "chip of L* 45, a* 50, b* 25" in Reference.chip(HERE, RED).words


@pytest.mark.parametrize("lab", [Lab(120, 0, 0), Lab(50, 300, 0), Lab(float("nan"), 0, 0)])
def test_a_colour_no_surface_has_is_refused(lab: Lab) -> None:
    """A slip of the keyboard in the colour of a chip is told."""
    with pytest.raises(MendableError):
        Reference.chip(HERE, lab)


def test_what_is_seen_is_the_median_light_of_each_mark() -> None:
    """A speck of dust does not move it, and places run from -1 to 1 over the frame."""
    light = patches([RED.triple, (50, 0, 0)], (100, 100), height=100)
    light[30:34, 30:34] = 0.01
    photo = photo_of_light(light)
    seen = see(photo, (Reference.chip(HERE, RED), Reference.grey(Rect(120, 20, 60, 60))))
    assert seen.light[0] == pytest.approx(lab_to_linear_srgb(RED.triple), abs=0.004)
    assert seen.place[:, 0] == pytest.approx([-0.5, 0.5], abs=1e-9)
    assert seen.place[:, 1] == pytest.approx([0, 0], abs=1e-9)
    corner = Seen.at(photo, (0, 0, 0), 199, 99).place[0]
    assert corner == pytest.approx([0.995, 0.99])


def test_what_cannot_be_read_is_refused_by_its_place() -> None:
    """Marks outside, overexposed, on two things or of too few pixels name the reference."""
    photo = photo_of_light(patches([(45, 50, 25), (20, 0, 0), (100, 0, 0)], (100, 100, 100)))
    for rect, says in (
        (Rect(280, 20, 60, 60), "does not lie"),
        (Rect(220, 20, 60, 60), "overexposed"),
        (Rect(60, 20, 80, 60), "not of one colour"),
        (Rect(20, 20, 3, 3), "only 9 pixels"),
    ):
        with pytest.raises(MendableError, match=says) as caught:
            see(photo, (Reference.chip(rect, RED),))
        assert f"{rect.x}, {rect.y}" in str(caught.value)


def test_a_strong_chip_may_lack_a_channel() -> None:
    """A vivid blue with hardly any red can be read; a grey without red cannot."""
    light = np.full((100, 100, 3), (0.002, 0.1, 0.5))
    photo = photo_of_light(light)
    assert see(photo, (Reference.chip(HERE, Lab(40, 10, -60)),)).light[0, 2] > 0.4
    with pytest.raises(MendableError, match="hardly any red"):
        see(photo, (Reference.grey(HERE),))


def test_a_bound_on_their_number() -> None:
    """Sixty are taken, more are refused."""
    photo = photo_of_light(np.full((100, 100, 3), 0.2))
    given = (Reference.grey(HERE),) * MOST_REFERENCES
    assert len(see(photo, given).light) == MOST_REFERENCES
    with pytest.raises(MendableError, match="at most 60"):
        see(photo, (*given, given[0]))
