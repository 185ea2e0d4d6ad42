"""Builders of pictures, profiles and photos for the tests of the photo package."""

from __future__ import annotations

import struct
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from PIL import Image

from swatchwright.colour.convert import lab_to_linear_srgb, srgb_encode
from swatchwright.errors import MendableError
from swatchwright.photo.image import FileFacts, Photo, srgb_decoding
from swatchwright.photo.readers import read_photo

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

    from numpy.typing import ArrayLike, NDArray

SUFFIXES = ("jpg", "png", "tif", "webp")
LOSSLESS: dict[str, Any] = {"lossless": True}

# Colorants of Display P3 and sRGB, adapted to D50, as their published profiles state them
# (five decimals; the sRGB ones are also printed in the W3C note on sRGB profiles). From memory;
# the tests check them against colour-science's primaries.
P3_COLORANTS = (
    (0.51512, 0.24120, -0.00105),
    (0.29198, 0.69225, 0.04189),
    (0.15710, 0.06657, 0.78407),
)
SRGB_COLORANTS = (
    (0.43607, 0.22249, 0.01392),
    (0.38515, 0.71687, 0.09708),
    (0.14307, 0.06061, 0.71410),
)
SRGB_CURVE = (2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045)


def fixed(*values: float) -> bytes:
    """Write numbers of the s15Fixed16 kind."""
    return b"".join(struct.pack(">i", round(v * 65536)) for v in values)


def para(kind: int, *values: float) -> bytes:
    """Write a parametricCurveType."""
    return b"para\0\0\0\0" + struct.pack(">HH", kind, 0) + fixed(*values)


def curv(*values: int) -> bytes:
    """Write a curveType."""
    return b"curv\0\0\0\0" + struct.pack(f">I{len(values)}H", len(values), *values)


def xyz(*values: float) -> bytes:
    """Write an XYZType."""
    return b"XYZ \0\0\0\0" + fixed(*values)


def mluc(text: str, language: bytes = b"enGB") -> bytes:
    """Write a multiLocalizedUnicodeType of one record."""
    coded = text.encode("utf-16-be")
    return b"mluc\0\0\0\0" + struct.pack(">II4sII", 1, 12, language, len(coded), 28) + coded


def desc(text: str) -> bytes:
    """Write a textDescriptionType of version 2."""
    coded = text.encode() + b"\0"
    return b"desc\0\0\0\0" + struct.pack(">I", len(coded)) + coded + bytes(78)


def matrix_tags(
    colorants: Sequence[Sequence[float]], curve: bytes, name: str = "Made up"
) -> dict[str, bytes]:
    """Give the tags of a matrix profile."""
    tags = {"desc": mluc(name), "wtpt": xyz(0.9642, 1.0, 0.8249), "cprt": mluc("none")}
    for letter, colorant in zip("rgb", colorants, strict=True):
        tags[f"{letter}XYZ"] = xyz(*colorant)
        tags[f"{letter}TRC"] = curve
    return tags


def icc(tags: Mapping[str, bytes], space: bytes = b"RGB ", pcs: bytes = b"XYZ ") -> bytes:
    """Write a display profile of version 4 with these tags (ICC.1:2022)."""
    table, body = struct.pack(">I", len(tags)), b""
    start = 132 + 12 * len(tags)
    for name, tag in tags.items():
        table += name.encode() + struct.pack(">II", start + len(body), len(tag))
        body += tag + bytes(-len(tag) % 4)
    head = bytearray(128)
    head[:4] = struct.pack(">I", 128 + len(table) + len(body))
    head[8:24] = b"\x04\x40\0\0" + b"mntr" + space + pcs
    head[24:36] = struct.pack(">6H", 2024, 1, 1, 0, 0, 0)
    head[36:40] = b"acsp"
    head[68:80] = fixed(0.9642, 1.0, 0.8249)
    return bytes(head) + table + body


def p3_profile() -> bytes:
    """Write a Display P3 profile."""
    return icc(matrix_tags(P3_COLORANTS, para(3, *SRGB_CURVE), "Display P3"))


def srgb_profile() -> bytes:
    """Write an sRGB profile."""
    return icc(matrix_tags(SRGB_COLORANTS, para(3, *SRGB_CURVE), "sRGB"))


def colourful(height: int = 24, width: int = 32) -> Image.Image:
    """Paint a picture whose four quarters and every row and column differ."""
    y, x = np.mgrid[0:height, 0:width]
    red, green, blue = (
        40 + 200 * x / width,
        30 + 200 * y / height,
        200 - 150 * x * y / width / height,
    )
    return Image.fromarray(np.stack([red, green, blue], axis=-1).astype(np.uint8))


def saved(image: Image.Image, path: Path, **options: Any) -> Path:
    """Save a picture, by the suffix of the path, and give the path."""
    image.save(path, **options)
    return path


def photo_of(encoded: ArrayLike, opaque: NDArray[np.bool_] | None = None) -> Photo:
    """Make an sRGB photo of bytes, shape (height, width, 3)."""
    pixels = np.asarray(encoded, dtype=np.uint8)
    facts = FileFacts("made.png", "PNG", pixels.shape[1], pixels.shape[0], "sRGB", 0, ())
    return Photo(pixels, opaque, srgb_decoding(), facts)


def photo_of_light(linear: ArrayLike) -> Photo:
    """Make an sRGB photo of linear light, shape (height, width, 3)."""
    return photo_of(np.rint(255 * srgb_encode(linear)))


def woven(
    yarns: Sequence[Sequence[float]], *, thread: int = 8, shape: tuple[int, int] = (300, 400)
) -> tuple[NDArray[np.float64], NDArray[np.intp]]:
    """Weave a cloth of yarns given as CIELAB: its linear light and which yarn each pixel is.

    Plain weave: the weft is the last yarn, the warp the others in stripes. The flanks of a thread
    are in shade, down to 0.45 of the light; 2 % noise.
    """
    rng = np.random.default_rng(11)
    y, x = np.mgrid[0 : shape[0], 0 : shape[1]]
    warp = (x // thread + y // thread) % 2 == 0
    across = (np.where(warp, x, y) % thread + 0.5) / thread * 2 - 1
    shade = np.clip(1 - 0.55 * across**4 * rng.uniform(0.6, 1, shape), 0.45, 1)
    stripe = (x // (8 * thread)) % max(1, len(yarns) - 1)
    which = np.where(warp, stripe, len(yarns) - 1)
    light = lab_to_linear_srgb(yarns)[which] * shade[..., np.newaxis]
    light = light * (1 + 0.02 * rng.standard_normal(light.shape))
    return np.clip(light, 0, 1), which


def patches(
    colours: Sequence[Sequence[float]], widths: Sequence[int], height: int = 200
) -> NDArray[np.float64]:
    """Lay upright strips of colours given as CIELAB side by side: their linear light."""
    strips = [
        np.full((height, w, 3), lab_to_linear_srgb(c)) for c, w in zip(colours, widths, strict=True)
    ]
    return np.concatenate(strips, axis=1)


def refusal(path: Path) -> str:
    """Give the words with which a file is refused."""
    with pytest.raises(MendableError) as caught:
        read_photo(path)
    assert caught.value.mend
    return str(caught.value)
