"""The CIEDE2000 colour difference, and what a difference is called.

References
----------
Sharma, Wu, Dalal 2005, Color Res. Appl. 30(1):21-30 (formula and notes on its discontinuities);
ISO/CIE 11664-6:2022; Paravina et al. 2015, J. Esthet. Restor. Dent. 27 Suppl 1:S1-S9
(thresholds); Mokrzycki, Tatol 2011, Machine Graphics and Vision 20:383-411 (a scale of words, for
CIELAB differences). See docs/bibliography.md.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "ACCEPTED",
    "ANOTHER",
    "JUST_SEEN",
    "PLAIN",
    "UNSEEN",
    "VALID_TO",
    "delta_e_2000",
    "delta_e_terms",
    "far_difference",
]

Floats = NDArray[np.floating[Any]]

# The limits of the one scale of words, which `colour.names.closeness` says.

UNSEEN = 0.4
"""CIEDE2000 up to which nobody is told of a difference: half of `JUST_SEEN`, our choice."""

JUST_SEEN = 0.8
"""CIEDE2000 that half of 175 observers could see (Paravina et al. 2015)."""

ACCEPTED = 1.8
"""CIEDE2000 that half of 175 observers would accept (Paravina et al. 2015)."""

PLAIN = 3.5
"""CIEDE2000 above which it is plain.

As Mokrzycki and Tatol 2011 have it of CIELAB differences (from memory).
"""

ANOTHER = 6.0
"""CIEDE2000 above which it is called another colour: our choice.

Mokrzycki and Tatol 2011 do so from 5 CIELAB units on (from memory); CIEDE2000 was fitted up to
`VALID_TO`.
"""

VALID_TO = 5.0
"""CIEDE2000 up to which the formula was fitted (ISO/CIE 11664-6); beyond it only orders colours."""

_POW7_25 = 25.0**7

# Pair 14 of Sharma's table has hues exactly 180 degrees apart; arctan2 differs in the last bit
# between platforms, so "opposite" is taken with this slack, in degrees.
_OPPOSITE_SLACK = 1e-9


def delta_e_2000(lab_1: ArrayLike, lab_2: ArrayLike) -> Floats:
    """Give the CIEDE2000 difference of two colours, with kL = kC = kH = 1.

    Parameters
    ----------
    lab_1, lab_2
        CIELAB, coordinates on the last axis; the other axes broadcast.

    Returns
    -------
    Non-negative differences of the broadcast shape. Symmetric in its arguments.

    Notes
    -----
    Made for differences up to about 5; larger values order colours but are not distances.

    Examples
    --------
    >>> round(float(delta_e_2000([50, 2.6772, -79.7751], [50, 0, -82.7485])), 4)
    2.0425
    """
    dL, dC, dH, rotation = delta_e_terms(lab_1, lab_2)
    squared = dL * dL + dC * dC + dH * dH + rotation * dC * dH
    return np.asarray(np.sqrt(np.maximum(squared, 0.0)))


def far_difference(lab_1: ArrayLike, lab_2: ArrayLike) -> Floats:
    """Give CIEDE2000 without its rotation term, to order colours that are far apart.

    The rotation was fitted to small differences among blues. Between far colours of nearly
    opposite hue it can cancel most of the difference: a vivid purple then comes out nearer to a
    greenish grey than to a muted purple, as no one would see it.
    """
    dL, dC, dH, _ = delta_e_terms(lab_1, lab_2)
    return np.asarray(np.sqrt(dL * dL + dC * dC + dH * dH))


def delta_e_terms(lab_1: ArrayLike, lab_2: ArrayLike) -> tuple[Floats, Floats, Floats, Floats]:
    """Give the weighted lightness, chroma and hue terms and the rotation of CIEDE2000.

    Each is signed, second colour less first; the squared difference is
    ``dL**2 + dC**2 + dH**2 + rotation * dC * dH``.
    """
    one = np.asarray(lab_1, dtype=np.float64)
    two = np.asarray(lab_2, dtype=np.float64)
    a1, a2, C1, C2 = _stretched(one, two)
    h1, h2 = _hue(a1, one[..., 2], C1), _hue(a2, two[..., 2], C2)
    dL = two[..., 0] - one[..., 0]
    dC = C2 - C1
    dh, h_mean = _hue_step(h1, h2, C1 * C2)
    dH = 2 * np.sqrt(C1 * C2) * np.sin(np.radians(dh / 2))
    S_L, S_C, S_H, rotation = _weights((one[..., 0] + two[..., 0]) / 2, (C1 + C2) / 2, h_mean)
    return dL / S_L, dC / S_C, dH / S_H, rotation


def _stretched(one: Floats, two: Floats) -> tuple[Floats, Floats, Floats, Floats]:
    """Stretch a* of near-greys, which CIELAB squeezes; give new a* and chroma of both."""
    b1, b2 = one[..., 2], two[..., 2]
    mean = (np.hypot(one[..., 1], b1) + np.hypot(two[..., 1], b2)) / 2
    m7 = mean**7
    factor = 1.5 - 0.5 * np.sqrt(m7 / (m7 + _POW7_25))
    a1, a2 = one[..., 1] * factor, two[..., 1] * factor
    return a1, a2, np.hypot(a1, b1), np.hypot(a2, b2)


def _hue(a: Floats, b: Floats, C: Floats) -> Floats:
    """Give the hue angle in 0-360 degrees; 0 for a grey, whose hue is undefined."""
    return np.asarray(np.where(C == 0, 0.0, np.degrees(np.arctan2(b, a)) % 360))


def _hue_step(h1: Floats, h2: Floats, product: Floats) -> tuple[Floats, Floats]:
    """Give the signed hue step in -180 to 180 and the mean hue, both in degrees."""
    step = h2 - h1
    opposite = np.abs(step) <= 180 + _OPPOSITE_SLACK
    dh = np.where(opposite, step, np.where(step > 0, step - 360, step + 360))
    total = h1 + h2
    around = np.where(total < 360, total + 360, total - 360)
    mean = np.where(opposite, total, around) / 2
    grey = product == 0
    return np.where(grey, 0.0, dh), np.where(grey, total, mean)


def _weights(L: Floats, C: Floats, h: Floats) -> tuple[Floats, Floats, Floats, Floats]:
    """Give S_L, S_C, S_H and the rotation term R_T for the mean of a pair."""
    T = (
        1
        - 0.17 * np.cos(np.radians(h - 30))
        + 0.24 * np.cos(np.radians(2 * h))
        + 0.32 * np.cos(np.radians(3 * h + 6))
        - 0.20 * np.cos(np.radians(4 * h - 63))
    )
    offset = (L - 50) ** 2
    S_L = 1 + 0.015 * offset / np.sqrt(20 + offset)
    C7 = C**7
    turn = 60 * np.exp(-(((h - 275) / 25) ** 2))
    rotation = -2 * np.sqrt(C7 / (C7 + _POW7_25)) * np.sin(np.radians(turn))
    return S_L, 1 + 0.045 * C, 1 + 0.015 * C * T, rotation
