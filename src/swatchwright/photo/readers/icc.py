"""Colour profiles of the matrix kind, as phones and cameras put them into a photo.

Only what such a profile needs is read: three curves, three primaries and a name. Every offset and
length is checked against the size of the profile, because a profile is input like any other.

References
----------
ICC.1:2022 (profile version 4.4; also ISO 15076-1): header 7.2, cicpType 10.3, curveType 10.6,
multiLocalizedUnicodeType 10.15, parametricCurveType 10.18, XYZType 10.31; ICC.1:2001-04
(textDescriptionType of version 2).
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import D65_WHITE, bradford, xyz_to_linear_srgb
from swatchwright.language import say
from swatchwright.photo.image import Decoding
from swatchwright.photo.readers.cicp import CodePoints

if TYPE_CHECKING:
    from collections.abc import Mapping

__all__ = ["IccProfile", "read_icc"]

Curve = NDArray[np.float64]

_PCS_WHITE = (0xF6D6 / 65536, 1.0, 0xD32D / 65536)
"""White of the profile connection space, as the header of every profile has it."""

_MOST_BYTES = 16 * 1024 * 1024
_MOST_TAGS = 256
_LONGEST_NAME = 100
_WHITE_SLACK = 0.1
"""How far the sum of the primaries may be from the white, in XYZ, before it is damage."""

_PARAMETERS = (1, 3, 4, 5, 7)
"""How many numbers each type of parametric curve takes."""

_TRCS = ("rTRC", "gTRC", "bTRC")
_PRIMARIES = ("rXYZ", "gXYZ", "bXYZ")


@dataclass(frozen=True, slots=True, eq=False)
class IccProfile:
    """A colour profile.

    Parameters
    ----------
    description
        Its own name for itself.
    decoding
        Its curves and matrix to linear sRGB; None if it holds tables only.
    code_points
        What it says by code points as well (cicpTag), which only pictures for HDR screens need.
    """

    description: str
    decoding: Decoding | None
    code_points: CodePoints | None = None


def read_icc(data: bytes, levels: int = 256) -> IccProfile:
    """Read an embedded profile for red, green and blue.

    Parameters
    ----------
    data
        The profile.
    levels
        For how many levels the curves are worked out: 256, or 65536 for 16 bits a channel.

    Raises
    ------
    ValueError
        If it is damaged or not a profile for red, green and blue.
    """
    if len(data) > _MOST_BYTES:
        raise ValueError("the profile is too large")
    if _slice(data, 36, 4) != b"acsp":
        raise ValueError("the profile has no signature")
    if data[16:20] != b"RGB ":
        raise ValueError("the profile is not for red, green and blue")
    tags = _tags(data)
    description = _description(tags.get("desc", b""))
    if data[20:24] == b"XYZ " and all(name in tags for name in (*_TRCS, *_PRIMARIES)):
        return IccProfile(description, _decoding(tags, levels), _code_points(tags))
    if "A2B0" in tags or "A2B1" in tags:
        return IccProfile(description, None, _code_points(tags))
    raise ValueError("the profile has neither curves with primaries nor tables")


def _slice(data: bytes, start: int, length: int) -> bytes:
    """Cut bytes out, refusing what lies beyond the end."""
    if start + length > len(data):
        raise ValueError("the profile is cut short")
    return data[start : start + length]


def _number(data: bytes, start: int) -> int:
    """Read an unsigned 32-bit number."""
    return int.from_bytes(_slice(data, start, 4), "big")


def _fixed(data: bytes, start: int, count: int) -> list[float]:
    """Read numbers of the s15Fixed16 kind."""
    return [v / 65536 for v in struct.unpack(f">{count}i", _slice(data, start, 4 * count))]


def _tags(data: bytes) -> Mapping[str, bytes]:
    """Cut the profile into its tags."""
    count = _number(data, 128)
    if count > _MOST_TAGS:
        raise ValueError("the profile claims too many tags")
    tags = {}
    for start in range(132, 132 + 12 * count, 12):
        name = _slice(data, start, 4).decode("latin-1")
        tags[name] = _slice(data, _number(data, start + 4), _number(data, start + 8))
    return tags


def _code_points(tags: Mapping[str, bytes]) -> CodePoints | None:
    """Read the code points (cicpTag)."""
    tag = tags.get("cicp", b"")
    return CodePoints(tag[8], tag[9]) if tag[:4] == b"cicp" and len(tag) >= 12 else None


def _decoding(tags: Mapping[str, bytes], levels: int) -> Decoding:
    """Make the decoding from curves and primaries."""
    x = np.linspace(0, 1, levels)
    curves = np.stack([_curve(tags[name], x) for name in _TRCS])
    if not np.all(np.isfinite(curves)) or np.any(curves[:, -1] <= curves[:, 0]):
        raise ValueError("a curve of the profile does not rise")
    to_pcs = np.array([_xyz(tags[name]) for name in _PRIMARIES]).T
    off_white = np.abs(to_pcs.sum(axis=1) - _PCS_WHITE).max()
    if off_white > _WHITE_SLACK or abs(np.linalg.det(to_pcs)) < 1e-4:
        raise ValueError("the primaries of the profile make no white")
    to_d65 = bradford(_PCS_WHITE, D65_WHITE) @ to_pcs
    matrix = xyz_to_linear_srgb(to_d65.T).T
    return Decoding(curves.astype(np.float32), np.asarray(matrix, dtype=np.float64))


def _xyz(tag: bytes) -> list[float]:
    """Read one XYZ."""
    if tag[:4] != b"XYZ ":
        raise ValueError("a primary of the profile is no XYZ")
    return _fixed(tag, 8, 3)


def _curve(tag: bytes, x: Curve) -> Curve:
    """Read a curve at the numbers x, 0-1, as light, 0-1."""
    kind = tag[:4]
    if kind == b"curv":
        return _sampled(tag, x)
    if kind == b"para":
        return _parametric(tag, x)
    raise ValueError("a curve of the profile is of an unknown kind")


def _sampled(tag: bytes, x: Curve) -> Curve:
    """Work out a curveType: none, a gamma, or a table that is interpolated."""
    count = _number(tag, 8)
    table = np.frombuffer(_slice(tag, 12, 2 * count), dtype=">u2").astype(np.float64)
    if count == 0:
        return x
    if count == 1:
        return np.asarray(x ** (table[0] / 256), dtype=np.float64)
    return np.interp(x, np.linspace(0, 1, count), table / 65535)


def _parametric(tag: bytes, x: Curve) -> Curve:
    """Work out a parametricCurveType, types 0 to 4."""
    kind = int.from_bytes(_slice(tag, 8, 2), "big")
    if kind >= len(_PARAMETERS):
        raise ValueError("a curve of the profile is of an unknown type")
    values = _fixed(tag, 12, _PARAMETERS[kind])
    g, a, b, c, d, e, f = _seven(kind, values)
    # Below the corner the power may be of a negative number, which is not what is taken there.
    with np.errstate(all="ignore"):
        power = np.maximum(a * x + b, 0.0) ** g + e
    return np.clip(np.where(x >= d, power, c * x + f), 0.0, 1.0)


def _seven(kind: int, values: list[float]) -> list[float]:
    """Write the shorter types as the longest: (a x + b)^g + e from d on, c x + f below."""
    if kind == 0:
        return [values[0], 1.0, 0.0, 0.0, 0.0, 0.0, 0.0]
    if kind >= 3:
        return [*values, 0.0, 0.0][:7]
    g, a, b = values[:3]
    if a == 0:
        raise ValueError("a curve of the profile is level")
    shift = values[3] if kind == 2 else 0.0
    return [g, a, b, 0.0, -b / a, shift, shift]


def _description(tag: bytes) -> str:
    """Read the name; a damaged name is no reason to refuse a profile that is sound otherwise."""
    try:
        if tag[:4] == b"mluc":
            text = _localised(tag)
        else:
            text = _slice(tag, 12, _number(tag, 8)).split(b"\0")[0].decode("latin-1")
    except ValueError:
        text = ""
    printable = "".join(c for c in text if c.isprintable()).strip()
    return printable[:_LONGEST_NAME] or say("a profile without a name")


def _localised(tag: bytes) -> str:
    """Read the English name, or else the first."""
    records = [_slice(tag, 16 + 12 * i, 12) for i in range(min(_number(tag, 8), _MOST_TAGS))]
    english = [r for r in records if r[:2] == b"en"]
    record = (english or records or [bytes(12)])[0]
    return _slice(tag, _number(record, 8), _number(record, 4)).decode("utf-16-be")
