"""How the light in a photo may differ from the colour it came from, and how likely each way is.

The way back from a photo to a colour is thought of as four steps, each near to doing nothing: a
tone curve taken off the stored values; one factor for each channel, which may change smoothly over
the frame; a matrix of the channels that keeps greys grey. What is then left over is smooth in the
colour, small for greys and larger for strong colours: cameras do not see as eyes do, and the more
so the less the light is like daylight.

The sizes of the steps were set on a rendered camera, on surfaces other than those by which the
program is judged (docs/accuracy.md).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import linear_srgb_to_lab

if TYPE_CHECKING:
    from swatchwright.photo.references import Seen

__all__ = [
    "AXES",
    "PARAMETERS",
    "LightKind",
    "Prior",
    "jacobian",
    "log_gains",
    "monotone",
    "predicted",
    "prior_for",
]

Floats = NDArray[np.float64]

LightKind = Literal["daylight", "lamp"]
"""What a painter can tell of the light."""

_GAINS = slice(0, 3)
_LEAST_SLOPE = 1e-3
"""Of a tone curve; between the places where it is looked at it can be less by a tenth of that."""

_TONE = slice(3, 6)
_TONE_OF = slice(6, 12)
_FALL = slice(12, 15)
_FALL_OF = slice(15, 19)
_VIVID = slice(19, 20)
_MATRIX = slice(20, 26)
PARAMETERS = 26
"""What each parameter stands for: log gains of red, green, blue; tone of all (contrast, lift,
shape); tone of red and of blue less that of all (the same three each); log light across, down and
out to the corners; the same across and down of red, then of blue; vividness; the six other entries
of the matrix."""

_LUMA = np.array([0.2126, 0.7152, 0.0722])
_STEP = 1e-4
_STRENGTH_OF_GREY = 0.3

_LENGTH = 20.0
_NEAR, _SHARED = 6.0, 0.8
"""Distances in Lab over which what is left over stays alike, for the part that is smooth in colour
and for the part that is not; and what of the latter two surfaces of one colour share."""


@dataclass(frozen=True, slots=True, eq=False)
class Prior:
    """What is thought before any reference is looked at.

    Parameters
    ----------
    mean
        Mean of each parameter, shape (26,).
    spread
        Standard deviation of each, likewise.
    left
        Of what is left over for a strong colour, in Lab units.
    own
        Of the part that only colours hardly to be told apart share, and not even those quite.
    """

    mean: Floats
    spread: Floats
    left: float
    own: float

    def scaled(self, strength: float) -> Prior:
        """Make what concerns colour, not light, so many times as likely to be large."""
        spread = self.spread.copy()
        spread[_VIVID] *= strength
        spread[_MATRIX] *= strength
        return Prior(self.mean, spread, self.left * strength, self.own * strength)

    def leftover(self, one: Floats, other: Floats) -> Floats:
        """Give how what is left over hangs together, (n, m) of colours (n, 3) and (m, 3).

        It is the covariance along a* and b*; along L* it is `AXES` of it.
        """
        apart = np.sum((one[:, None] - other[None]) ** 2, axis=-1)
        far = self.left**2 * np.exp(-apart / (2 * _LENGTH**2))
        near = self.own**2 * _SHARED * np.exp(-apart / (2 * _NEAR**2))
        return np.asarray(np.outer(_strength(one), _strength(other)) * (far + near))

    def lone(self, labs: Floats) -> Floats:
        """Give the variance of the part no other surface shares, shape (n, 3) of (n, 3)."""
        own = self.own**2 * (1 - _SHARED) * _strength(labs) ** 2
        return np.asarray(own[:, None] * AXES + _READING**2)


AXES = np.array([0.2, 1.0, 0.85])
"""Variance of what is left over along L*, a*, b*, relative to that along a*."""

_READING = 0.25
"""Standard deviation of reading one mark, Lab units: half a byte."""


@dataclass(frozen=True, slots=True)
class _Sizes:
    """How large the steps of one kind of file are: standard deviations."""

    tone: tuple[float, float, float]
    tone_of: float
    vivid: float
    matrix: float


_PLAIN = _Sizes((0.01, 0.01, 0.01), 0.003, 0.03, 0.05)
_PLEASING = _Sizes((0.28, 0.10, 0.03), 0.016, 0.06, 0.05)
_FULL_CAST = 0.35
_ODD_UNTOLD, _ODD_LAMP, _ODD_MOST = 0.25, 0.8, 1.5
_UNBALANCED = 0.25
_ACROSS, _OUTWARDS, _ACROSS_OF = 0.10, 0.02, 0.03
_VIVID_ODD, _MATRIX_ODD = 0.02, 0.8
_MATRIX_BY_DAY = np.array([1.2, 0.4, 0.6, 0.6, 0.5, 1.0])
_MATRIX_BY_LAMP = np.array([0.12, 0.06, 0.10, 0.07, 0.03, 0.30])
_LAMP = np.array([-0.03, -0.02, -0.10, 0.13, 0.04, -0.05])
"""What a matrix made for daylight misses under a lamp: red from green, red from blue, green from
red, green from blue, blue from red, blue from green; and how that differs between cameras."""

_LEFT, _LEFT_ODD = 0.9, 0.7
_OWN, _OWN_ODD = 0.95, 1.6


def _strength(labs: Floats) -> Floats:
    """Give how far a colour is from grey, next to nothing for greys to 1.5 for the strongest."""
    chroma = np.hypot(labs[:, 1], labs[:, 2])
    return np.asarray(np.minimum(_STRENGTH_OF_GREY + chroma / 40, 1.5))


def prior_for(
    *, linear: bool, cast: float, balanced: bool, light: LightKind | None = None
) -> Prior:
    """Give what is thought of a photo before its references are looked at.

    Parameters
    ----------
    linear
        Whether the file is known to hold plain light, with no tone curve of the camera's.
    cast
        How unequal the channels of a grey are in it: spread of their natural logarithms. The
        camera balances a part of it away, so little is left even of lamp light.
    balanced
        Whether a reference gave the gains; if not they are as the camera set them.
    light
        What the light was, where somebody told.
    """
    odd = _oddness(cast, light)
    sizes = _PLAIN if linear else _PLEASING
    spread = np.zeros(PARAMETERS)
    spread[_GAINS] = 1.0 if balanced else _UNBALANCED
    spread[_TONE] = sizes.tone
    spread[_TONE_OF] = sizes.tone_of
    spread[_FALL] = (_ACROSS, _ACROSS, _OUTWARDS)
    spread[_FALL_OF] = _ACROSS_OF
    spread[_VIVID] = sizes.vivid + _VIVID_ODD * odd
    spread[_MATRIX] = sizes.matrix * _MATRIX_BY_DAY + _MATRIX_ODD * odd * _MATRIX_BY_LAMP
    mean = np.zeros(PARAMETERS)
    if light == "lamp":
        mean[_MATRIX] = _LAMP
    return Prior(mean, spread, _LEFT + _LEFT_ODD * odd, _OWN + _OWN_ODD * odd)


def _oddness(cast: float, light: LightKind | None) -> float:
    """Give how unlike daylight the light is: 0 for daylight, about 1 for a warm lamp."""
    if light == "daylight":
        return 0.0
    least = _ODD_LAMP if light == "lamp" else _ODD_UNTOLD
    return min(least + cast / _FULL_CAST, _ODD_MOST)


def predicted(seen: Seen, theta: Floats, gains: Floats) -> Floats:
    """Give the CIELAB of what was seen.

    Parameters
    ----------
    seen
        Light and place, n of each.
    theta
        Parameters, shape (..., 26).
    gains
        Gains that go before, shape (3,).

    Returns
    -------
    Shape (..., n, 3).
    """
    toned = _untoned(seen.light, theta)
    light = toned * gains * np.exp(log_gains(seen.place, theta))
    return np.asarray(linear_srgb_to_lab(_mixed(light, theta)), dtype=np.float64)


def jacobian(seen: Seen, theta: Floats, gains: Floats) -> Floats:
    """Give how `predicted` changes with each parameter, shape (n, 3, 26)."""
    steps = _STEP * np.eye(PARAMETERS)
    up, down = (predicted(seen, theta + sign * steps, gains) for sign in (1, -1))
    return np.moveaxis((up - down) / (2 * _STEP), 0, -1)


def monotone(theta: Floats) -> Floats:
    """Weaken the tone curve until more light in the file never means less light."""
    held = theta.copy()
    for _ in range(20):
        if np.all(_slope_of_tone(held) > _LEAST_SLOPE):
            break
        held[_TONE] *= 0.8
        held[_TONE_OF] *= 0.8
    return held


def _slope_of_tone(theta: Floats) -> Floats:
    """Give the slope of the tone curve of each channel at each place (channels, places)."""
    stored = np.linspace(0.0, 1.0, 513)
    middle, basis = 2 * stored - 1, stored * (1 - stored)
    slopes = np.stack(
        [2 * basis - middle**2, -middle, -middle * (1 - 5 * middle**2) - 20 * middle * basis],
        axis=-1,
    )
    return np.asarray(1 + _tone_of_channels(theta) @ slopes.T)


def _tone_of_channels(theta: Floats) -> Floats:
    """Give the bends of red, green and blue, shape (..., 3, 3)."""
    tone = np.repeat(theta[..., np.newaxis, _TONE], 3, axis=-2)
    tone[..., 0, :] += theta[..., 6:9]
    tone[..., 2, :] += theta[..., 9:12]
    return np.asarray(tone)


def _untoned(light: Floats, theta: Floats) -> Floats:
    """Take the tone curve off: light (n, 3) and parameters (..., 26) to (..., n, 3)."""
    if not np.any(theta[..., _TONE]) and not np.any(theta[..., _TONE_OF]):
        return np.broadcast_to(light, (*theta.shape[:-1], *light.shape))
    stored = np.clip(light, 0.0, 1.0) ** (1 / 2.4)
    basis = stored * (1 - stored)
    middle = 2 * stored - 1
    bends = np.stack([basis * middle, basis, basis * (1 - 5 * middle**2)], axis=-1)
    tone = _tone_of_channels(theta)
    bent = stored + np.sum(bends * tone[..., np.newaxis, :, :], axis=-1)
    # What lies outside the file's range keeps its distance from it.
    return np.asarray(np.maximum(bent, 0.0) ** 2.4 + (light - np.clip(light, 0.0, 1.0)))


def log_gains(place: Floats, theta: Floats) -> Floats:
    """Give the logarithm of the gains at each place, shape (..., n, 3)."""
    out = np.sum(place**2, axis=1, keepdims=True) - 2 / 3
    shared = np.concatenate([place, out], axis=1) @ theta[..., _FALL, np.newaxis]
    own = np.zeros((*shared.shape[:-1], 3))
    own[..., 0] = (place @ theta[..., 15:17, np.newaxis])[..., 0]
    own[..., 2] = (place @ theta[..., 17:19, np.newaxis])[..., 0]
    return np.asarray(theta[..., np.newaxis, _GAINS] + shared + own)


def _mixed(light: Floats, theta: Floats) -> Floats:
    """Put light, shape (..., n, 3), through the matrix, which keeps greys grey."""
    matrix = np.zeros((*theta.shape[:-1], 3, 3))
    off = theta[..., _MATRIX]
    for at, (row, column) in enumerate(((0, 1), (0, 2), (1, 0), (1, 2), (2, 0), (2, 1))):
        matrix[..., row, column] += off[..., at]
        matrix[..., row, row] -= off[..., at]
    matrix += theta[..., _VIVID, np.newaxis] * (np.eye(3) - _LUMA)
    return np.asarray(light + light @ np.swapaxes(matrix, -1, -2))
