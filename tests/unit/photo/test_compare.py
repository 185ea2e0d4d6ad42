"""A sample against the cloth, within one photo."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.doubt import usual_difference
from swatchwright.errors import MendableError
from swatchwright.photo.compare import difference_in_photo
from swatchwright.photo.estimate import estimate
from swatchwright.photo.references import Reference
from swatchwright.values import Rect
from unit.photo.boards import board, grey_lab, lively, mark, middle, seen_at
from unit.photo.pictures import photo_of_light, woven

Tone = Callable[[np.ndarray], np.ndarray] | None

CLOTH, PAINT = (45.0, 30.0, 20.0), (48.0, 27.0, 22.0)
STEP = np.array(PAINT) - np.array(CLOTH)
GREY = (Reference.grey(mark(0), 0.18),)


@pytest.mark.parametrize("tone", [None, lively])
@pytest.mark.parametrize("light", [(1, 1, 1), (1.2, 1, 0.6), (0.6, 0.7, 0.8)])
def test_the_difference_comes_out_in_any_light(tone: Tone, light: tuple[float, ...]) -> None:
    """Under warm and cool light, and after a tone curve, it is within 1 CIEDE2000."""
    photo = board([grey_lab(0.18), CLOTH, PAINT], lambda x: x * np.array(light), tone)
    found = difference_in_photo(photo, GREY, mark(1), mark(2))
    assert delta_e_2000(np.array(CLOTH) + found.vector, PAINT) < 1.0
    assert found.delta_e_00 == pytest.approx(float(delta_e_2000(CLOTH, PAINT)), abs=1.0)


def test_it_is_surer_than_two_readings() -> None:
    """Its doubt is less than half of that of two separate readings."""
    photo = board([grey_lab(0.18), CLOTH, PAINT])
    correction = estimate(photo, GREY)
    found = difference_in_photo(photo, GREY, mark(1), mark(2))
    apart = [correction.covariance_at(seen_at(photo, i), *middle(i)) for i in (1, 2)]
    both = sum(np.trace(np.array(c)) for c in apart)
    assert np.trace(np.array(found.covariance)) < 0.5 * both
    assert found.give_or_take == usual_difference(found.cloth, found.covariance)


def test_it_needs_no_reference() -> None:
    """Without a grey the difference is still about right."""
    photo = board([grey_lab(0.18), CLOTH, PAINT], lambda x: 0.8 * x)
    assert np.linalg.norm(difference_in_photo(photo, (), mark(1), mark(2)).vector - STEP) < 1.5


def test_it_turns_round() -> None:
    """Sample and cloth exchanged, the difference has the other sign."""
    photo = board([grey_lab(0.18), CLOTH, PAINT])
    there = difference_in_photo(photo, GREY, mark(1), mark(2))
    back = difference_in_photo(photo, GREY, mark(2), mark(1))
    assert np.array(there.vector) == pytest.approx(-np.array(back.vector), abs=1e-9)
    assert np.array(there.covariance) == pytest.approx(np.array(back.covariance), abs=1e-9)


def test_a_cloth_may_be_meant_by_its_yarn_or_from_a_metre() -> None:
    """Paint of the yarn's colour is like the yarn, and lighter than the cloth from a metre."""
    cloth, _ = woven([CLOTH, CLOTH])
    light = np.concatenate([cloth, np.full((300, 100, 3), lab_to_linear_srgb(CLOTH))], axis=1)
    photo = photo_of_light(light)
    marks = (Rect(20, 20, 360, 260), Rect(420, 20, 60, 260))
    yarn = difference_in_photo(photo, (), *marks)
    metre = difference_in_photo(photo, (), *marks, seeing="metre")
    assert abs(yarn.vector[0]) < 2
    assert metre.vector[0] > yarn.vector[0] + 1
    mean = cloth[20:280, 20:380].mean(axis=(0, 1))
    drop = float(linear_srgb_to_lab(mean)[0]) - CLOTH[0]
    assert metre.vector[0] == pytest.approx(-drop, abs=1.0)


def test_marks_that_cannot_serve_are_refused() -> None:
    """Outside, black, or the same twice: each is named."""
    photo = board([grey_lab(0.18), CLOTH, (0, 0, 0)])
    with pytest.raises(MendableError, match="cloth"):
        difference_in_photo(photo, GREY, Rect(900, 0, 30, 30), mark(1))
    with pytest.raises(MendableError, match="sample"):
        difference_in_photo(photo, GREY, mark(1), mark(2))
    with pytest.raises(MendableError, match="the same"):
        difference_in_photo(photo, GREY, mark(1), mark(1))
