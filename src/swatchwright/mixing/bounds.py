"""How near to a wanted colour any colour of a box can be, never overstated.

A box is a range of L*, a* and b*. Each quantity of CIEDE2000 is carried through as a range that
holds it for every colour of the box, and the least value of the formula over those ranges is
taken. The smaller the box, the nearer the bound comes to the truth.

References
----------
Sharma, Wu, Dalal 2005, Color Res. Appl. 30(1):21-30 (the formula); Moore 1966, Interval Analysis
(the method). See docs/bibliography.md.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

__all__ = ["least_difference"]

Floats = NDArray[np.floating[Any]]

# The steepest that T turns with the mean hue, per degree: the sum of its cosines' slopes.
_T_SLOPE = np.radians(0.17 + 2 * 0.24 + 3 * 0.32 + 4 * 0.20)
_T_MOST = 1 + 0.17 + 0.24 + 0.32 + 0.20
_T_LEAST = 1 - 0.17 - 0.24 - 0.32 - 0.20
_POW7_25 = 25.0**7

# Taken off every bound, for what rounding of the arithmetic may add.
_SLACK = 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class _Range:
    """Least and greatest values, element by element."""

    low: Floats
    high: Floats

    def __mul__(self, other: _Range) -> _Range:
        ends = np.stack([a * b for a in (self.low, self.high) for b in (other.low, other.high)])
        return _Range(ends.min(axis=0), ends.max(axis=0))

    def over(self, other: _Range) -> _Range:
        """Divide by a range above 0."""
        return self * _Range(1 / other.high, 1 / other.low)

    def size(self) -> _Range:
        """Give the range of the absolute value."""
        least = np.maximum(0, np.maximum(self.low, -self.high))
        return _Range(least, np.maximum(np.abs(self.low), np.abs(self.high)))


def least_difference(
    low: ArrayLike, high: ArrayLike, wanted: ArrayLike, *, far: bool = False
) -> Floats:
    """Give a difference that no colour of a box undercuts.

    Parameters
    ----------
    low, high
        (..., 3) CIELAB of the least and the greatest corner of each box.
    wanted
        (3,) CIELAB.
    far
        Whether the difference is the one for far colours, which leaves out the rotation.

    Returns
    -------
    (...) differences, 0 or more: each at most the least CIEDE2000 over its box.
    """
    box = _Range(np.asarray(low, dtype=np.float64), np.asarray(high, dtype=np.float64))
    L0, a0, b0 = (float(v) for v in np.asarray(wanted, dtype=np.float64))
    dL = _lightness(_Range(box.low[..., 0], box.high[..., 0]), L0)
    a, b = (_Range(box.low[..., i], box.high[..., i]) for i in (1, 2))
    rest = _chroma_and_hue(a, b, a0, b0, far=far)
    return np.asarray(np.maximum(np.sqrt(dL * dL + rest) - _SLACK, 0.0))


def _lightness(L: _Range, L0: float) -> Floats:
    """Give the least weighted difference of lightness."""
    apart = np.maximum(0, np.maximum(L.low - L0, L0 - L.high))
    # The weight rises with the distance of the mean from 50: it is greatest at an end.
    offset = np.maximum(((L.low + L0) / 2 - 50) ** 2, ((L.high + L0) / 2 - 50) ** 2)
    return np.asarray(apart / (1 + 0.015 * offset / np.sqrt(20 + offset)))


def _length(a: _Range, b: _Range) -> _Range:
    a, b = a.size(), b.size()
    return _Range(np.hypot(a.low, b.low), np.hypot(a.high, b.high))


def _stretch(C: Floats) -> Floats:
    """Give the factor on a* for a mean chroma; it falls as the chroma rises."""
    C7 = C**7
    return np.asarray(1.5 - 0.5 * np.sqrt(C7 / (C7 + _POW7_25)))


def _chroma_and_hue(a: _Range, b: _Range, a0: float, b0: float, *, far: bool) -> Floats:
    """Give the least sum of the squared chroma and hue terms and the rotation."""
    raw, raw0 = _length(a, b), float(np.hypot(a0, b0))
    factor = _Range(_stretch((raw.high + raw0) / 2), _stretch((raw.low + raw0) / 2))
    a = a * factor
    a0_low, a0_high = np.sort(np.stack([a0 * factor.low, a0 * factor.high]), axis=0)
    C = _length(a, b)
    C0 = _length(
        _Range(a0_low, a0_high), _Range(np.full_like(a0_low, b0), np.full_like(a0_low, b0))
    )
    mean = _Range((C.low + C0.low) / 2, (C.high + C0.high) / 2)
    hue0 = _hues(_Range(a0_low, a0_high), _Range(C0.low * 0 + b0, C0.low * 0 + b0))
    hue = _hues(a, b)
    parts = _Parts(C, C0, mean, hue0)
    first, second, folded = _turn(hue, hue0)
    least = _form_of(parts, first, far=far)
    if folded.any():
        # Colours of opposite hue may be turned to either way round, with another mean hue.
        least = np.where(folded, np.minimum(least, _form_of(parts, second, far=far)), least)
    return np.asarray(least)


@dataclass(frozen=True, slots=True, eq=False)
class _Parts:
    """Chroma of the box, the wanted colour and their mean, and the wanted hue, as ranges."""

    C: _Range
    C0: _Range
    mean: _Range
    hue0: _Range


def _form_of(parts: _Parts, turn: _Range, *, far: bool) -> Floats:
    """Give the least of the chroma, hue and rotation terms for a range of turns of hue."""
    C, C0, mean, hue0 = parts.C, parts.C0, parts.mean, parts.hue0
    half = (turn.high - turn.low) / 4 + (hue0.high - hue0.low) / 2
    middle = (hue0.low + hue0.high) / 2 + (turn.low + turn.high) / 4
    T = _weight_of_hue(middle, half)
    dC = _Range(C.low - C0.high, C.high - C0.low)
    root = _Range(np.sqrt(C.low * C0.low), np.sqrt(C.high * C0.high))
    dH = root * _Range(2 * np.sin(np.radians(turn.low / 2)), 2 * np.sin(np.radians(turn.high / 2)))
    u = dC.over(_Range(1 + 0.045 * mean.low, 1 + 0.045 * mean.high))
    v = dH.over(_Range(1 + 0.015 * mean.low * T.low, 1 + 0.015 * mean.high * T.high))
    if far:
        return np.asarray(u.size().low ** 2 + v.size().low ** 2)
    rotation = _rotation(mean, middle, half)
    return np.minimum(_least_form(u, v, rotation.low), _least_form(u, v, rotation.high))


def _hues(a: _Range, b: _Range) -> _Range:
    """Give the range of hue, degrees, from below 0 to above 360 where it must; or all of it."""
    middle = np.degrees(np.arctan2((b.low + b.high) / 2, (a.low + a.high) / 2))
    corners = np.stack(
        [np.degrees(np.arctan2(y, x)) for x in (a.low, a.high) for y in (b.low, b.high)]
    )
    off = (corners - middle + 180) % 360 - 180
    around = (a.low <= 0) & (a.high >= 0) & (b.low <= 0) & (b.high >= 0)
    low = np.where(around, -180.0, off.min(axis=0) - 1e-9)
    high = np.where(around, 180.0, off.max(axis=0) + 1e-9)
    return _Range(middle + low, middle + high)


def _turn(hue: _Range, hue0: _Range) -> tuple[_Range, _Range, NDArray[np.bool_]]:
    """Give the turn from the wanted hue, in -180 to 180; what passes that end, and where."""
    middle = (hue.low + hue.high - hue0.low - hue0.high) / 2
    half = np.minimum((hue.high - hue.low + hue0.high - hue0.low) / 2, 180.0)
    middle = (middle + 180) % 360 - 180
    low, high = middle - half, middle + half
    # A hair on both sides of the end, where rounding decides which way round it is.
    folded = (low < -180 + 1e-6) | (high > 180 - 1e-6)
    first = _Range(np.maximum(low, -180.0), np.minimum(high, 180.0))
    above = high > 180 - 1e-6
    second = _Range(
        np.where(above, -180.0, np.minimum(low + 360, 180.0)),
        np.where(above, np.maximum(high - 360, -180.0), 180.0),
    )
    both = above & (low < -180 + 1e-6)
    second = _Range(np.where(both, -180.0, second.low), np.where(both, 180.0, second.high))
    return first, second, folded


def _weight_of_hue(middle: Floats, half: Floats) -> _Range:
    """Give the range of T, whose slope is bounded, about a mean hue."""
    h = np.radians(middle)
    T = (
        1
        - 0.17 * np.cos(h - np.radians(30))
        + 0.24 * np.cos(2 * h)
        + 0.32 * np.cos(3 * h + np.radians(6))
        - 0.20 * np.cos(4 * h - np.radians(63))
    )
    reach = _T_SLOPE * half
    return _Range(np.clip(T - reach, _T_LEAST, _T_MOST), np.clip(T + reach, _T_LEAST, _T_MOST))


def _rotation(C: _Range, middle: Floats, half: Floats) -> _Range:
    """Give the range of the rotation term, which is never above 0."""
    wrapped = middle % 360
    ends = np.stack([wrapped - half, wrapped + half])
    # The formula counts the mean hue from 0 to 360: a range past an end is also one at the other.
    off = np.stack([np.abs(wrapped + shift - 275) for shift in (-360, 0, 360)]).min(axis=0)
    nearest = np.maximum(0, off - half)
    passes = (ends[0] < 0) | (ends[1] > 360)
    furthest = np.where(passes, np.inf, np.abs(wrapped - 275) + half)
    C7 = _Range(C.low**7, C.high**7)
    deepest = np.sqrt(C7.high / (C7.high + _POW7_25)) * np.sin(np.radians(60 * _bell(nearest)))
    mildest = np.sqrt(C7.low / (C7.low + _POW7_25)) * np.sin(np.radians(60 * _bell(furthest)))
    return _Range(-2 * deepest, -2 * mildest)


def _bell(off: Floats) -> Floats:
    return np.asarray(np.exp(-((off / 25) ** 2)))


def _least_form(u: _Range, v: _Range, r: Floats) -> Floats:
    """Give the least of u^2 + v^2 + r u v over a rectangle; it is convex, as -2 < r <= 0."""
    edges = []
    for fixed in (u.low, u.high):
        free = np.clip(-r * fixed / 2, v.low, v.high)
        edges.append(fixed**2 + free**2 + r * fixed * free)
    for fixed in (v.low, v.high):
        free = np.clip(-r * fixed / 2, u.low, u.high)
        edges.append(fixed**2 + free**2 + r * fixed * free)
    inside = (u.low <= 0) & (u.high >= 0) & (v.low <= 0) & (v.high >= 0)
    return np.asarray(np.where(inside, 0.0, np.maximum(np.min(edges, axis=0), 0.0)))
