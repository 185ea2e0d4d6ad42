"""What may be amiss between light in a photo and the colour it came from."""

from __future__ import annotations

from functools import partial

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import approx_fprime

from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.photo.model import (
    PARAMETERS,
    jacobian,
    log_gains,
    monotone,
    predicted,
    prior_for,
)
from swatchwright.photo.references import Seen

GAINS = np.array([1.2, 1.0, 0.8])


def seen(light: object) -> Seen:
    """Put light, shape (n, 3), into the middle of the frame."""
    rows = np.atleast_2d(np.asarray(light, dtype=np.float64))
    return Seen(rows, np.zeros((len(rows), 2)))


def _coordinate(at: Seen, axis: int, theta: np.ndarray) -> float:
    """Give one coordinate of the colour of one place."""
    return float(predicted(at, theta, GAINS)[0, axis])


def test_with_nothing_amiss_only_the_gains_are_left() -> None:
    """Parameters of nought give plain white balance, exactly."""
    light = np.random.default_rng(1).random((20, 3))
    found = predicted(seen(light), np.zeros(PARAMETERS), GAINS)
    assert found == pytest.approx(np.asarray(linear_srgb_to_lab(light * GAINS)), abs=1e-9)


@given(st.lists(st.floats(-0.3, 0.3), min_size=7, max_size=7), st.floats(0.02, 0.9))
def test_the_matrix_keeps_greys_grey(entries: list[float], light: float) -> None:
    """Whatever the matrix and the vividness, equal channels stay equal."""
    theta = np.zeros(PARAMETERS)
    theta[-7:] = entries
    lab = predicted(seen([light] * 3), theta, np.ones(3))[0]
    assert lab == pytest.approx(np.asarray(linear_srgb_to_lab([light] * 3)), abs=1e-6)


@given(st.lists(st.floats(-1.5, 1.5), min_size=9, max_size=9))
def test_a_tone_curve_never_turns_back(tones: list[float]) -> None:
    """After `monotone` more light in the file is never less light, in any channel."""
    theta = np.zeros(PARAMETERS)
    theta[3:12] = tones
    grey = np.linspace(0, 1, 60)[:, None] * np.ones(3)
    labs = predicted(seen(grey), monotone(theta), np.ones(3))
    assert np.all(np.diff(np.asarray(lab_to_linear_srgb(labs)), axis=0) > -1e-9)


def test_a_tame_tone_curve_is_left_alone() -> None:
    """What is monotone already is not weakened."""
    theta = np.zeros(PARAMETERS)
    theta[3:6] = (0.2, -0.1, 0.05)
    assert np.array_equal(monotone(theta), theta)


def test_slopes_agree_with_a_general_library() -> None:
    """The Jacobian is that of scipy's finite differences."""
    theta = 0.05 * np.random.default_rng(2).standard_normal(PARAMETERS)
    at = Seen(np.array([[0.3, 0.2, 0.1]]), np.array([[0.4, -0.2]]))
    ours = jacobian(at, theta, GAINS)[0]
    for axis in range(3):
        theirs = approx_fprime(theta, partial(_coordinate, at, axis), 1e-6)
        assert ours[axis] == pytest.approx(theirs, abs=2e-3)


def test_light_that_falls_off_is_a_plane_in_its_logarithm() -> None:
    """The shared slope adds the same to every channel, in proportion to the place."""
    theta = np.zeros(PARAMETERS)
    theta[12] = 0.3
    gains = log_gains(np.array([[-1.0, 0.0], [0.0, 0.0], [0.5, 0.0]]), theta)
    assert gains == pytest.approx(np.array([[-0.3] * 3, [0.0] * 3, [0.15] * 3]))


def test_what_is_left_over_is_a_covariance() -> None:
    """It is symmetric and has no negative eigenvalue, for any colours."""
    labs = np.random.default_rng(3).uniform((10, -60, -60), (95, 60, 60), (40, 3))
    left = prior_for(linear=False, cast=0.1, balanced=True).leftover(labs, labs)
    assert np.array_equal(left, left.T)
    assert np.linalg.eigvalsh(left).min() > -1e-9


def test_lamps_and_pleasing_cameras_are_trusted_less() -> None:
    """A lamp leaves more over than daylight, and a shaped file has a wider tone curve."""
    day = prior_for(linear=True, cast=0.1, balanced=True, light="daylight")
    untold = prior_for(linear=True, cast=0.1, balanced=True)
    lamp = prior_for(linear=True, cast=0.1, balanced=True, light="lamp")
    assert day.own < untold.own < lamp.own
    assert not day.mean.any()
    pleasing = prior_for(linear=False, cast=0.1, balanced=True, light="daylight")
    assert pleasing.spread[3] > 3 * day.spread[3]
