"""How a grab of the window looks to eyes that lack a kind of cone, or see no colour at all.

References
----------
[Machado2009]: the simulation, by the matrices that colour-science ships, in linear light.
[WCAG22]: relative luminance, and contrast as a ratio of luminances.
"""

from __future__ import annotations

import warnings
from functools import cache
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPoint, QRect, QSize
from PySide6.QtGui import QImage

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

__all__ = ["SIGHTS", "Grey", "Light", "apart", "grab", "lightness", "linear", "ratio", "seen"]

Light = NDArray[np.float64]
"""Linear sRGB, (..., 3), each from 0 to 1."""

Grey = NDArray[np.float64]
"""Relative luminance, from 0 to 1."""

SIGHTS = ("usual", "protan", "deutan", "tritan", "no colour")
"""All cones; without the long, middle, short ones; and luminance alone."""

WEIGHTS = np.array([0.2126, 0.7152, 0.0722])
"""The luminance of red, green and blue in linear sRGB ([WCAG22])."""

_LACKS = {"protan": "Protanomaly", "deutan": "Deuteranomaly", "tritan": "Tritanomaly"}


@cache
def matrix(sight: str) -> Light:
    """Give what a sight makes of linear sRGB, at the full severity of 1."""
    if sight == "usual":
        return np.eye(3)
    if sight == "no colour":
        return np.tile(WEIGHTS, (3, 1))
    from colour.blindness import matrix_cvd_Machado2009

    with warnings.catch_warnings():
        # It says of the third kind that its shift is an approximation.
        warnings.simplefilter("ignore")
        found = matrix_cvd_Machado2009(_LACKS[sight], 1.0)
    return np.asarray(found, dtype=np.float64)


def linear(srgb: NDArray[np.floating]) -> Light:
    """Take encoded sRGB from 0 to 1 to linear light ([IEC61966-2-1])."""
    return np.where(srgb <= 0.04045, srgb / 12.92, ((srgb + 0.055) / 1.055) ** 2.4)


_LINEAR = linear(np.arange(256) / 255)


def grab(widget: QWidget, area: QRect | None = None) -> Light:
    """Give what a widget shows, or a part of it, as linear light (height, width, 3)."""
    whole = QRect(QPoint(0, 0), QSize(widget.size()))
    image = widget.grab(whole if area is None else area).toImage()
    image = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    return _LINEAR[rows[:, : 3 * image.width()].reshape(image.height(), image.width(), 3)]


def seen(light: Light, sight: str) -> Light:
    """Give what an eye makes of linear light, as linear light; a screen shows no more than 1."""
    return np.clip(light @ matrix(sight).T, 0.0, 1.0)


def lightness(light: Light, sight: str) -> Grey:
    """Give how light each place looks to an eye."""
    return np.asarray(seen(light, sight) @ WEIGHTS)


def ratio(one: Grey, other: Grey) -> Grey:
    """Give the contrast of two luminances ([WCAG22])."""
    return (np.maximum(one, other) + 0.05) / (np.minimum(one, other) + 0.05)


def apart(one: Light, other: Light, sight: str, least: float = 3.0) -> int:
    """Count the pixels in which two grabs of one place differ by a contrast of `least` or more."""
    return int((ratio(lightness(one, sight), lightness(other, sight)) >= least).sum())
