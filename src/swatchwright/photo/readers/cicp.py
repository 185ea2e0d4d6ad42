"""What the numbers of a picture mean by code points, as films and the pictures akin to them say it.

References
----------
ITU-T H.273 (2021), tables 2 and 3; Recommendations ITU-R BT.709-6, BT.2020-2, BT.2100-2; ITU-R
BT.2408 (where white paper lies in a picture for HDR screens); IEC 61966-2-1.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import (
    D65_WHITE,
    bradford,
    srgb_decode,
    xyz_to_linear_srgb,
)
from swatchwright.language import mark, say
from swatchwright.photo.image import Decoding

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["CodePoints", "decoding_by_primaries", "power_curve"]

Curve = NDArray[np.floating[Any]]

_UNSPECIFIED = 2
_PQ, _HLG = 16, 18
_PAPER_PQ = 203.0 / 10_000.0
_PAPER_HLG = 0.75
"""White paper in a picture for HDR screens: in 10 000 cd/m² of PQ, and as a signal of HLG (ITU-R
BT.2408, table 1)."""

_D65 = (0.3127, 0.3290)
_Primaries = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]

_PRIMARIES: Mapping[int, tuple[str, _Primaries]] = MappingProxyType(
    {
        1: ("BT.709", ((0.640, 0.330), (0.300, 0.600), (0.150, 0.060))),
        5: (mark("BT.601, 625 lines"), ((0.640, 0.330), (0.290, 0.600), (0.150, 0.060))),
        6: (mark("BT.601, 525 lines"), ((0.630, 0.340), (0.310, 0.595), (0.155, 0.070))),
        7: (mark("BT.601, 525 lines"), ((0.630, 0.340), (0.310, 0.595), (0.155, 0.070))),
        9: ("BT.2020", ((0.708, 0.292), (0.170, 0.797), (0.131, 0.046))),
        12: ("Display P3", ((0.680, 0.320), (0.265, 0.690), (0.150, 0.060))),
    }
)
"""x, y of red, green and blue by code point, all with the white of D65 (H.273, table 2)."""


def _bt709(v: Curve) -> Curve:
    """Invert the camera curve of BT.709, which BT.601 and BT.2020 share (BT.2020 to 12 bits)."""
    alpha, beta = 1.09929682680944, 0.018053968510807
    curve = ((v + alpha - 1) / alpha) ** (1 / 0.45)
    return np.asarray(np.where(v < 4.5 * beta, v / 4.5, curve))


def _pq(v: Curve) -> Curve:
    """Invert the perceptual quantiser (BT.2100, table 4), with white paper as 1."""
    m1, m2, c1, c2, c3 = 2610 / 16384, 2523 / 32, 3424 / 4096, 2413 / 128, 2392 / 128
    power = v ** (1 / m2)
    light = (np.maximum(power - c1, 0) / (c2 - c3 * power)) ** (1 / m1)
    return np.asarray(light / _PAPER_PQ)


def _hlg_scene(v: Curve) -> Curve:
    """Invert the camera curve of hybrid log-gamma (BT.2100, table 5)."""
    a, b, c = 0.17883277, 0.28466892, 0.55991073
    return np.asarray(np.where(v <= 0.5, v**2 / 3, (np.exp((v - c) / a) + b) / 12))


def _hlg(v: Curve) -> Curve:
    """Invert hybrid log-gamma with white paper as 1."""
    return _hlg_scene(v) / _hlg_scene(np.array(_PAPER_HLG))


def power_curve(exponent: float, levels: int) -> Curve:
    """Give light at so many levels for numbers that are its root; exponent 0.1 to 10."""
    return np.asarray(np.linspace(0, 1, levels) ** exponent)


_TRANSFERS: Mapping[int, tuple[str, Callable[[Curve], Curve]]] = MappingProxyType(
    {
        1: (mark("BT.709 curve"), _bt709),
        4: (mark("power of 2.2"), lambda v: v**2.2),
        5: (mark("power of 2.8"), lambda v: v**2.8),
        6: (mark("BT.709 curve"), _bt709),
        8: (mark("linear light"), lambda v: v),
        13: (mark("sRGB curve"), srgb_decode),
        14: (mark("BT.709 curve"), _bt709),
        15: (mark("BT.709 curve"), _bt709),
        _PQ: (mark("PQ curve"), _pq),
        _HLG: (mark("HLG curve"), _hlg),
    }
)
"""From numbers, 0-1, to light by code point (H.273, table 3)."""


@dataclass(frozen=True, slots=True)
class CodePoints:
    """Two code points of H.273: which primaries, and which curve.

    Parameters
    ----------
    primaries, transfer
        As in tables 2 and 3; 2 means that the file leaves it open, and is taken as sRGB.
    """

    primaries: int
    transfer: int

    @property
    def is_open(self) -> bool:
        """Whether the file leaves both open."""
        return self.primaries == _UNSPECIFIED and self.transfer == _UNSPECIFIED

    @property
    def is_hdr(self) -> bool:
        """Whether the picture was made for HDR screens."""
        return self.transfer in {_PQ, _HLG}

    @property
    def words(self) -> str:
        """The primaries and the curve in words."""
        primaries, transfer = self._known()
        if (primaries, transfer) == (1, 13):
            return "sRGB"
        name = say(_PRIMARIES[primaries][0])
        if (primaries, transfer) == (12, 13):
            return name
        return f"{name}, {say(_TRANSFERS[transfer][0])}"

    def decoding(self, levels: int) -> Decoding:
        """Give the way to light for so many levels, 256 or 65536.

        Raises
        ------
        ValueError
            If a code point is none of those known.
        """
        primaries, transfer = self._known()
        curve = _TRANSFERS[transfer][1](np.linspace(0, 1, levels))
        return decoding_by_primaries([curve] * 3, _PRIMARIES[primaries][1])

    def _known(self) -> tuple[int, int]:
        """Give the code points with sRGB for what is open."""
        primaries = 1 if self.primaries == _UNSPECIFIED else self.primaries
        transfer = 13 if self.transfer == _UNSPECIFIED else self.transfer
        if primaries not in _PRIMARIES or transfer not in _TRANSFERS:
            raise ValueError("the code points of the colours are not known")
        return primaries, transfer


def decoding_by_primaries(
    curves: list[Curve], primaries: _Primaries, white: tuple[float, float] = _D65
) -> Decoding:
    """Make a decoding of three curves and the x, y of three primaries and their white.

    Raises
    ------
    ValueError
        If the primaries make no white.
    """
    if min(y for _, y in (*primaries, white)) < 1e-3:
        raise ValueError("a primary has no light")
    columns = np.array([(x / y, 1.0, (1 - x - y) / y) for x, y in primaries]).T
    xyz_white = np.array((white[0] / white[1], 1.0, (1 - white[0] - white[1]) / white[1]))
    if abs(np.linalg.det(columns)) < 1e-3:
        raise ValueError("the primaries make no white")
    to_xyz = columns * np.linalg.solve(columns, xyz_white)
    matrix = xyz_to_linear_srgb((bradford(xyz_white, D65_WHITE) @ to_xyz).T).T
    if not np.all(np.isfinite(matrix)) or np.abs(matrix).max() > 20:
        raise ValueError("the primaries make no colours")
    return Decoding(np.stack(curves).astype(np.float32), np.asarray(matrix, dtype=np.float64))
