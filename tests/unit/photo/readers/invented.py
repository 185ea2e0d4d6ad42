"""Files of kinds that Pillow does not write, made of known light for the tests.

The camera is invented. What a digital negative holds is that of its specification, version 1.7.
"""

from __future__ import annotations

import io
import struct
import zlib
from pathlib import Path
from typing import Any

import numpy as np
import tifffile
from numpy.typing import NDArray
from PIL import Image

__all__ = ["COLOUR_MATRIX", "avif", "chunk", "deep_tiff", "heic", "negative", "png"]

COLOUR_MATRIX = np.array(
    [[0.7034, -0.0804, -0.1014], [-0.4420, 1.2564, 0.2058], [-0.0851, 0.1994, 0.5758]]
)
"""From XYZ to the primaries of a camera that nobody sells."""

BLACK, WHITE = 512, 16383

_BYTE, _SHORT, _LONG, _RATIO, _SIGNED_RATIO = 1, 3, 4, 5, 10
_CFA, _LINEAR = 32803, 34892


def negative(
    path: Path, camera: NDArray[np.float64], *, mosaic: bool = True, orientation: int = 1
) -> Path:
    """Write a digital negative.

    Parameters
    ----------
    camera
        Shape (rows, columns, 3): light, 0-1, as the camera's three primaries have it.
    mosaic
        Whether each dot of the sensor saw one primary only (red, green / green, blue).
    """
    numbers = np.rint(np.clip(camera, 0, 1) * (WHITE - BLACK) + BLACK).astype(np.uint16)
    neutral = COLOUR_MATRIX @ (0.95047, 1.0, 1.08883)
    tags: list[Any] = [
        (50706, _BYTE, 4, bytes([1, 4, 0, 0]), True),
        (50708, 2, 0, "Invented", True),
        (50721, _SIGNED_RATIO, 9, ratios(COLOUR_MATRIX), True),
        (50778, _SHORT, 1, 21, True),
        (50728, _RATIO, 3, ratios(neutral / neutral.max()), True),
        (274, _SHORT, 1, orientation, True),
    ]
    if not mosaic:
        tags += [(50714, _LONG, 3, (BLACK,) * 3, True), (50717, _LONG, 3, (WHITE,) * 3, True)]
        tifffile.imwrite(
            path, numbers, photometric=_LINEAR, planarconfig="contig", extratags=tags, metadata=None
        )
        return path
    tags += [
        (50714, _LONG, 1, BLACK, True),
        (50717, _LONG, 1, WHITE, True),
        (33421, _SHORT, 2, (2, 2), True),
        (33422, _BYTE, 4, bytes([0, 1, 1, 2]), True),
    ]
    dots = numbers[..., 1].copy()
    dots[0::2, 0::2] = numbers[0::2, 0::2, 0]
    dots[1::2, 1::2] = numbers[1::2, 1::2, 2]
    tifffile.imwrite(path, dots, photometric=_CFA, extratags=tags, metadata=None)
    return path


def ratios(values: NDArray[np.float64]) -> list[int]:
    """Write numbers as pairs of whole ones."""
    return [whole for v in values.ravel() for whole in (round(float(v) * 10_000), 10_000)]


def heic(numbers: NDArray[np.uint8] | NDArray[np.uint16], **options: Any) -> bytes:
    """Write a HEIC without loss, of 8 bits a channel, or of 10 for numbers of 16 bits."""
    import pillow_heif

    rows, columns = numbers.shape[:2]
    mode = "RGB" if numbers.dtype == np.uint8 else "RGB;16"
    memory = io.BytesIO()
    picture = pillow_heif.from_bytes(mode, (columns, rows), numbers.tobytes())
    picture.save(memory, **{"quality": -1, "chroma": 444, "matrix_coefficients": 0, **options})
    return memory.getvalue()


def avif(numbers: NDArray[np.uint8], **options: Any) -> bytes:
    """Write an AVIF, as good as Pillow does."""
    memory = io.BytesIO()
    Image.fromarray(numbers).save(memory, "AVIF", quality=100, subsampling="4:4:4", **options)
    return memory.getvalue()


def deep_tiff(path: Path, numbers: NDArray[np.uint16], **options: Any) -> Path:
    """Write a TIFF with 16 bits a channel."""
    tifffile.imwrite(path, numbers, photometric="rgb", metadata=None, **options)
    return path


def chunk(name: bytes, body: bytes) -> bytes:
    """Write a chunk of a PNG."""
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def png(path: Path, pixels: NDArray[np.uint16], *between: bytes) -> Path:
    """Write a PNG with 16 bits, its rows filtered in the five ways by turns (PNG, clause 9)."""
    rows, columns, channels = pixels.shape
    head = struct.pack(">IIBBBBB", columns, rows, 16, {1: 0, 2: 4, 3: 2, 4: 6}[channels], 0, 0, 0)
    raw = pixels.astype(">u2").view(np.uint8).reshape(rows, -1).astype(int)
    step = 2 * channels
    left = np.pad(raw, ((0, 0), (step, 0)))[:, :-step]
    above = np.pad(raw, ((1, 0), (0, 0)))[:-1]
    corner = np.pad(above, ((0, 0), (step, 0)))[:, :-step]
    guess = left + above - corner
    off = np.abs(np.stack([guess - left, guess - above, guess - corner]))
    paeth = np.choose(off.argmin(axis=0), [left, above, corner])
    ways = [np.zeros_like(raw), left, above, (left + above) // 2, paeth]
    lines = b"".join(
        bytes([i % 5]) + ((raw[i] - ways[i % 5][i]) % 256).astype(np.uint8).tobytes()
        for i in range(rows)
    )
    body = chunk(b"IHDR", head) + b"".join(between) + chunk(b"IDAT", zlib.compress(lines))
    path.write_bytes(b"\x89PNG\r\n\x1a\n" + body + chunk(b"IEND", b""))
    return path
