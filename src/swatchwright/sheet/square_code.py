"""A square code (QR code, ISO/IEC 18004), drawn as squares."""

from __future__ import annotations

from functools import lru_cache

from swatchwright.sheet.pen import Box, Pen

__all__ = ["QUIET", "code_side", "draw_code"]

QUIET = 4
"""Modules that stay white around a code; the standard asks for four."""

_BLACK = (0.0, 0.0, 0.0)
_WHITE = (1.0, 1.0, 1.0)


def code_side(text: str) -> int:
    """Give how many modules a code has along a side, with what stays white around it."""
    return len(_rows(text)) + 2 * QUIET


def draw_code(pen: Pen, x: float, y: float, side: float, *, text: str) -> None:
    """Draw a code into a square of this side, mm, what stays white around it included."""
    rows = _rows(text)
    module = side / (len(rows) + 2 * QUIET)
    pen.rect(Box(x, y, side, side), fill=_WHITE)
    pen.rects(
        [
            Box(x + (QUIET + first) * module, y + (QUIET + i) * module, length * module, module)
            for i, row in enumerate(rows)
            for first, length in _runs(row)
        ],
        _BLACK,
    )


@lru_cache(maxsize=32)
def _rows(text: str) -> tuple[bytearray, ...]:
    """Give the modules of a code, 1 for dark, repairing 15 % of it where that is lost."""
    import segno

    # A reader may take bytes for Latin-1 unless told that they are UTF-8.
    plain = text.isascii()
    encoding = None if plain else "utf-8"
    code = segno.make_qr(text, error="m", boost_error=False, encoding=encoding, eci=not plain)
    return tuple(code.matrix)


def _runs(row: bytearray) -> list[tuple[int, int]]:
    """Give where each run of dark modules begins, and how long it is."""
    runs, start = [], -1
    for i, dark in enumerate([*row, 0]):
        if dark and start < 0:
            start = i
        elif not dark and start >= 0:
            runs.append((start, i - start))
            start = -1
    return runs
