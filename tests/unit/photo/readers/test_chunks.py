"""Code points inside a PNG (PNG, third edition, 11.3.2.6)."""

from __future__ import annotations

import io

import pytest

from swatchwright.photo.readers.chunks import png_code_points
from swatchwright.photo.readers.cicp import CodePoints
from unit.photo.readers.invented import chunk

HEAD = b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", bytes(13))
GAMMA = chunk(b"gAMA", bytes(4))
END = chunk(b"IDAT", b"") + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    ("data", "points"),
    [
        (HEAD + chunk(b"cICP", b"\x09\x10\0\1") + END, CodePoints(9, 16)),
        (
            HEAD + GAMMA + chunk(b"cICP", b"\x0c\x0d\0\1") + END,
            CodePoints(12, 13),
        ),
        (HEAD + END, None),
        (HEAD + END + chunk(b"cICP", b"\x09\x10\0\1"), None),
        (HEAD + chunk(b"cICP", b"\x09"), None),
        (HEAD[:20], None),
        (b"\xff\xd8\xff" + HEAD, None),
    ],
)
def test_points_are_found_before_the_pixels(data: bytes, points: CodePoints | None) -> None:
    """They are found wherever they stand before the pixels, and the place is left alone."""
    file = io.BytesIO(data)
    file.seek(3)
    assert png_code_points(file, data[:64]) == points
    assert file.tell() == 3
