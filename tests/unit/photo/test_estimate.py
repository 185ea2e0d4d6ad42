"""From references of any mixture to colours, and how surely."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

import numpy as np
import pytest

from swatchwright.colour.convert import linear_srgb_to_lab
from swatchwright.colour.difference import delta_e_2000
from swatchwright.photo.estimate import Correction, _Fit, estimate
from swatchwright.photo.reference import balance_from_grey
from swatchwright.photo.references import Reference
from swatchwright.values import Lab, usual_distance
from unit.photo.boards import COLOURS, GREYS, board, chip, grey_lab, lively, mark, middle, seen_at

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

    from swatchwright.photo.image import Photo

RED = 0
WARM = np.array([1.25, 1.0, 0.62])


def off(correction: Correction, photo: Photo, index: int, truth: ArrayLike) -> float:
    """Give CIEDE2000 of a patch as read from its truth."""
    lab = correction.lab_of(seen_at(photo, index), *middle(index))[0]
    return float(delta_e_2000(lab, truth))


def doubt(correction: Correction, photo: Photo, index: int) -> float:
    """Give the stated usual error of a patch."""
    return usual_distance(correction.covariance_at(seen_at(photo, index), *middle(index)))


def test_one_grey_is_plain_white_balance() -> None:
    """With one grey every colour comes out as by the gains of that grey, to rounding."""
    photo = board([grey_lab(0.18), *COLOURS], lambda light: 0.7 * light * WARM)
    correction = estimate(photo, (Reference.grey(mark(0), 0.18),))
    balance = balance_from_grey(photo, mark(0), 0.18)
    light = np.stack([seen_at(photo, index) for index in range(1, 9)])
    plain = linear_srgb_to_lab(light * np.asarray(balance.gains))
    assert correction.lab_of(light, 100, 20) == pytest.approx(np.asarray(plain), abs=0.02)
    assert correction.balance == balance


def test_without_references_colours_are_as_the_camera_left_them() -> None:
    """Nothing is changed, and the doubt is wide."""
    photo = board(COLOURS)
    correction = estimate(photo)
    assert off(correction, photo, RED, COLOURS[RED]) < 0.5
    assert doubt(correction, photo, RED) > 8


def test_three_greys_undo_a_tone_curve() -> None:
    """White, grey and black bring colours nearer than the grey alone, and other greys too."""
    others = [grey_lab(0.06), grey_lab(0.45)]
    photo = board([*(grey_lab(g) for g in GREYS), *others, *COLOURS], tone=lively)
    greys = [Reference.grey(mark(i), reflectance, 0.3) for i, reflectance in enumerate(GREYS)]
    one, three = estimate(photo, greys[1:2]), estimate(photo, greys)
    with_one, with_three = (
        [off(c, photo, at, truth) for at, truth in enumerate(others, start=3)] for c in (one, three)
    )
    assert sum(with_three) < 0.5 * sum(with_one)
    assert max(with_three) < 1.2
    colours = list(enumerate(COLOURS, start=5))
    assert np.median([off(three, photo, i, c) for i, c in colours]) < 0.7 * np.median(
        [off(one, photo, i, c) for i, c in colours]
    )


def test_greys_over_the_frame_take_off_the_fall_of_the_light() -> None:
    """Light that halves from left to right is put right by a grey at each end."""

    def falling(light: np.ndarray) -> np.ndarray:
        across = np.linspace(0, 1, light.shape[1])[None, :, None]
        return light * 2.0**-across

    photo = board([grey_lab(0.18), *COLOURS, grey_lab(0.18)], falling, linear=True)
    left, right = Reference.grey(mark(0), 0.18), Reference.grey(mark(9), 0.18)
    one, both = estimate(photo, [left]), estimate(photo, [left, right])
    assert off(one, photo, 6, COLOURS[5]) > 5
    assert off(both, photo, 6, COLOURS[5]) < 2
    # The middle has the root of half the light (log 2 is 0.69); the greys have all and half.
    assert both.fall_to(*middle(8)) == pytest.approx(-0.27, abs=0.08)


def test_chips_put_right_what_a_grey_cannot() -> None:
    """A camera that mixes its channels is put right near the chips by chips."""
    mixing = np.array([[0.85, 0.2, -0.05], [0.08, 0.82, 0.1], [-0.03, 0.13, 0.9]])
    photo = board([grey_lab(0.18), *COLOURS], lambda light: light @ mixing.T)
    grey = Reference.grey(mark(0), 0.18)
    chips = [chip(i, c) for i, c in enumerate(COLOURS, start=1)]
    alone, helped = [], []
    for left_out, truth in enumerate(COLOURS, start=1):
        others = [grey, *(c for i, c in enumerate(chips, start=1) if i != left_out)]
        alone.append(off(estimate(photo, [grey]), photo, left_out, truth))
        helped.append(off(estimate(photo, others), photo, left_out, truth))
    assert np.mean(helped) < 0.6 * np.mean(alone)


def test_chips_alone_will_do() -> None:
    """With no grey at all the gains come from the chips."""
    photo = board(COLOURS, lambda light: 0.6 * light * WARM)
    correction = estimate(photo, [chip(i, c) for i, c in enumerate(COLOURS) if i != 6])
    assert off(correction, photo, 6, COLOURS[6]) < 1.5
    assert correction.balance.reflectance is None
    assert correction.reference == "7 measured chips"


def test_each_reference_more_makes_surer() -> None:
    """The stated doubt of a colour shrinks with every reference that is added."""
    photo = board([*(grey_lab(g) for g in GREYS), *COLOURS])
    given = [Reference.grey(mark(1), 0.18), Reference.grey(mark(0), 0.9)]
    given += [Reference.grey(mark(2), 0.035)]
    doubts = [doubt(estimate(photo, given[:count]), photo, 5) for count in range(4)]
    assert all(more > less for more, less in pairwise(doubts))
    near = estimate(photo, [*given, chip(5, COLOURS[2])])
    assert doubt(near, photo, 5) < 0.7 * doubts[-1]


def test_a_reference_that_lies_is_doubted() -> None:
    """A card called grey that is pink, among true ones, is named; no other is."""
    greys = [0.5, 0.18, 0.3, 0.06]
    labs = [grey_lab(g) for g in greys]
    labs[2] = (labs[2][0], 14.0, 4.0)
    photo = board([*labs, *COLOURS], linear=True)
    given = [Reference.grey(mark(i), g) for i, g in enumerate(greys)]
    given += [chip(i, c) for i, c in enumerate(COLOURS[:4], start=4)]
    assert [r.rect for r in estimate(photo, given).doubted] == [mark(2)]


def test_the_covariance_is_one() -> None:
    """It is symmetric and positive, with any references."""
    photo = board([*(grey_lab(g) for g in GREYS), *COLOURS])
    for given in ([], [Reference.grey(mark(1), 0.18)], [chip(4, COLOURS[1])]):
        lab, covariance = estimate(photo, given).apply(seen_at(photo, 6), *middle(6))
        matrix = np.array(covariance)
        assert isinstance(lab, Lab)
        assert np.array_equal(matrix, matrix.T)
        assert np.linalg.eigvalsh(matrix).min() > 0


def test_the_difference_of_two_alike_colours_is_surer_than_either() -> None:
    """What the camera does to both alike cancels."""
    photo = board([grey_lab(0.18), (45, 30, 20), (48, 32, 24)])
    correction = estimate(photo, [Reference.grey(mark(0), 0.18)])
    lights = [seen_at(photo, 1), seen_at(photo, 2)]
    (x1, y1), (x2, y2) = middle(1), middle(2)
    vector, covariance = correction.difference(lights, [x1, x2], [y1, y2])
    assert vector == pytest.approx([3, 2, 4], abs=0.7)
    assert usual_distance(covariance) < 0.6 * doubt(correction, photo, 1)


def test_what_the_light_was_may_be_told() -> None:
    """Told it was daylight, the colour is surer; told it was a lamp, less sure."""
    photo = board([grey_lab(0.18), *COLOURS])
    grey = [Reference.grey(mark(0), 0.18)]
    day, untold, lamp = (
        doubt(estimate(photo, grey, light=light), photo, 1) for light in ("daylight", None, "lamp")
    )
    assert day < untold < lamp


def test_contradicting_references_are_doubted_and_widen_the_doubt() -> None:
    """A chip that is said to be another colour is named, and all colours are less sure for it."""
    photo = board([grey_lab(0.18), grey_lab(0.45), *COLOURS], lambda light: 0.7 * light * WARM)
    greys = (Reference.grey(mark(0), 0.18), Reference.grey(mark(1), 0.45))
    agreed = estimate(photo, (*greys, chip(2, COLOURS[0])))
    torn = estimate(photo, (*greys, chip(2, (50, -70, 60))))
    assert torn.doubted
    assert not agreed.doubted
    for index in range(3, 9):
        assert doubt(torn, photo, index) > doubt(agreed, photo, index)


def test_no_step_of_the_fit_makes_things_worse() -> None:
    """However wrong the references, the parameters are no less likely than those begun with."""
    photo = board([grey_lab(0.18), grey_lab(0.45), *COLOURS], lambda light: 0.7 * light * WARM)
    for wrong in ((95, 0, 0), (20, 60, 40), (60, 10, -80)):
        given = (Reference.grey(mark(0), 0.18), Reference.grey(mark(1), 0.45), chip(2, wrong))
        found = estimate(photo, given)
        fit = _Fit(found.seen, given, found.balance)
        assert fit._unlikely(found.prior, found.theta) <= fit._unlikely(
            found.prior, found.prior.mean
        )
