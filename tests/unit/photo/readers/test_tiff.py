"""Raw files that are built as a TIFF are told from pictures."""

from __future__ import annotations

import io
import struct
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.photo.readers.tiff import is_raw_tiff
from unit.photo.pictures import colourful, saved
from unit.photo.readers.invented import negative

if TYPE_CHECKING:
    from pathlib import Path


def told(data: bytes) -> bool:
    """Tell whether these bytes are a raw file."""
    return is_raw_tiff(io.BytesIO(data), data[:64])


def directory(order: str, entries: list[tuple[int, int, int, int]], following: int = 0) -> bytes:
    """Write a directory of whole numbers (TIFF 6.0, section 2)."""
    rows = b"".join(
        struct.pack(f"{order}HHI", tag, kind, count)
        + (struct.pack(f"{order}HH", v, 0) if kind == 3 else struct.pack(f"{order}I", v))
        for tag, kind, count, v in entries
    )
    return struct.pack(f"{order}H", len(entries)) + rows + struct.pack(f"{order}I", following)


@pytest.mark.parametrize(("order", "mark"), [("<", b"II*\0"), (">", b"MM\0*")])
def test_a_sensor_below_a_thumbnail_makes_a_raw_file(order: str, mark: bytes) -> None:
    """A first page that is a thumbnail, with a colour filter array in a directory below it."""
    first = directory(order, [(254, 4, 1, 1), (262, 3, 1, 2), (330, 4, 1, 50)])
    second = directory(order, [(262, 3, 1, 32803)])
    data = mark + struct.pack(f"{order}I", 8) + first
    assert len(data) == 50
    assert told(data + second)
    assert not told(data + directory(order, [(262, 3, 1, 2)]))


def test_a_digital_negative_is_one_and_a_picture_is_not(tmp_path: Path) -> None:
    """Files of two writers are told apart, and nothing but a TIFF is one."""
    light = np.full((32, 32, 3), 0.2)
    assert told(negative(tmp_path / "x.dng", light).read_bytes())
    assert not told(saved(colourful(), tmp_path / "x.tif").read_bytes())
    assert not told(saved(colourful(), tmp_path / "x.jpg").read_bytes())


def test_a_circle_of_directories_ends() -> None:
    """A directory that names itself as the following one, and as the one below, is read once."""
    data = b"II*\0" + struct.pack("<I", 8) + directory("<", [(330, 4, 1, 8)], following=8)
    assert not told(data)


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.integers(0, 90), st.lists(st.tuples(st.integers(0, 89), st.integers(0, 255))))
def test_damage_gives_an_answer(end: int, hits: list[tuple[int, int]]) -> None:
    """Whatever is done to the bytes, it is a raw file or not."""
    first = directory("<", [(254, 4, 1, 1), (262, 3, 9, 60), (330, 4, 3, 50)], following=44)
    data = bytearray(b"II*\0" + struct.pack("<I", 8) + first + bytes(60))
    for where, value in hits:
        data[where] = value
    assert told(bytes(data[:end])) in {True, False}
