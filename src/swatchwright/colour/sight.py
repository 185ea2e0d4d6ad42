"""How dark and how light a colour looks, whatever cones the eye has that looks at it.

References
----------
[Machado2009]: the simulation of eyes without long, middle or short cones, in linear sRGB.
[WCAG22]: relative luminance, and contrast as a ratio of luminances.
"""

from __future__ import annotations

from functools import lru_cache

__all__ = ["LEAST_CONTRAST", "black_and_white_on", "luminances"]

RGB = tuple[float, float, float]

LEAST_CONTRAST = 4.5
"""Of words against their ground ([WCAG22], 1.4.3)."""

_LUMINANCE = (0.2126, 0.7152, 0.0722)

_ALL_CONES = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
# The whole deficiency, to the six places that are published.
_NO_LONG = (
    (0.152286, 1.052583, -0.204868),
    (0.114503, 0.786281, 0.099216),
    (-0.003882, -0.048116, 1.051998),
)
_NO_MIDDLE = (
    (0.367322, 0.860646, -0.227968),
    (0.280085, 0.672501, 0.047413),
    (-0.011820, 0.042940, 0.968881),
)
_NO_SHORT = (
    (1.255528, -0.076749, -0.178779),
    (-0.078411, 0.930809, 0.147602),
    (0.004733, 0.691367, 0.303900),
)
# An eye that sees no colour at all is taken to see luminance, as an eye with all cones does.
_SIGHTS = (_ALL_CONES, _NO_LONG, _NO_MIDDLE, _NO_SHORT)


def luminances(rgb: RGB) -> tuple[float, ...]:
    """Give the luminance of an sRGB colour to eyes with all cones, and without each kind.

    Parameters
    ----------
    rgb
        Red, green and blue, encoded, each from 0 to 1.

    Returns
    -------
    tuple of float
        For eyes with all cones, then without the long, the middle and the short ones; 0 to 1.

    >>> [round(y, 2) for y in luminances((1.0, 0.0, 0.0))]
    [0.21, 0.11, 0.28, 0.21]
    """
    light = [_decoded(value) for value in rgb]
    return tuple(
        _along(_LUMINANCE, [min(1.0, max(0.0, _along(row, light))) for row in sight])
        for sight in _SIGHTS
    )


@lru_cache(maxsize=4096)
def black_and_white_on(rgb: RGB) -> tuple[float, float]:
    """Give the contrasts of black and of white words on an sRGB colour, to the eye that has least.

    >>> [round(c, 1) for c in black_and_white_on((1.0, 0.0, 0.0))]
    [3.3, 3.2]
    """
    found = luminances(rgb)
    return (min(found) + 0.05) / 0.05, 1.05 / (max(found) + 0.05)


def _decoded(value: float) -> float:
    """Take an encoded value to linear light."""
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _along(weights: tuple[float, ...], values: list[float]) -> float:
    return sum(weight * value for weight, value in zip(weights, values, strict=True))
