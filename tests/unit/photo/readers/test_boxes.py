"""What the boxes of a HEIC or AVIF say, built by hand from ISO/IEC 14496-12 and 23008-12."""

from __future__ import annotations

import struct

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.photo.readers.boxes import Properties, picture_properties
from swatchwright.photo.readers.cicp import CodePoints
from unit.photo.pictures import colourful
from unit.photo.readers.invented import avif, heic


def box(kind: bytes, body: bytes) -> bytes:
    """Write a box."""
    return struct.pack(">I", 8 + len(body)) + kind + body


def file_of(*properties: bytes, items: tuple[bytes, ...] = ()) -> bytes:
    """Write the head of a file with these properties and kinds of items."""
    entries = b"".join(box(b"infe", b"\x02\0\0\0\0\1\0\0" + kind + b"\0") for kind in items)
    infos = box(b"iinf", bytes(4) + struct.pack(">H", len(items)) + entries)
    iprp = box(b"iprp", box(b"ipco", b"".join(properties)))
    return box(b"ftyp", b"heic\0\0\0\0mif1") + box(b"meta", bytes(4) + infos + iprp)


def nclx(primaries: int, transfer: int) -> bytes:
    """Write the property that holds code points."""
    return box(b"colr", b"nclx" + struct.pack(">HHHB", primaries, transfer, 6, 0x80))


def auxiliary(name: bytes) -> bytes:
    """Write the property that names an auxiliary picture."""
    return box(b"auxC", bytes(4) + name + b"\0")


def test_code_points_and_bits_are_read() -> None:
    """The first code points count, and the most bits."""
    data = file_of(
        nclx(12, 13),
        box(b"pixi", bytes(4) + b"\3\x0a\x0a\x0a"),
        nclx(1, 1),
        box(b"ispe", bytes(12)),
    )
    assert picture_properties(data) == Properties(CodePoints(12, 13), 10)


@pytest.mark.parametrize(
    ("name", "gain_map", "portrait"),
    [
        (b"urn:maker:photo:2020:aux:hdrgainmap", True, False),
        (b"urn:maker:photo:2018:aux:portraiteffectsmatte", False, True),
        (b"urn:mpeg:hevc:2015:auxid:2", False, False),
    ],
)
def test_auxiliary_pictures_are_told_by_their_names(
    name: bytes, *, gain_map: bool, portrait: bool
) -> None:
    """A gain map and a matte are told; alpha is neither."""
    found = picture_properties(file_of(auxiliary(name)))
    assert (found.gain_map, found.portrait) == (gain_map, portrait)


def test_a_derived_picture_for_hdr_is_a_gain_map() -> None:
    """An item of the kind `tmap` is one (ISO 21496-1)."""
    assert picture_properties(file_of(items=(b"hvc1", b"tmap"))).gain_map
    assert not picture_properties(file_of(items=(b"hvc1",))).gain_map


def test_files_of_two_encoders_are_read() -> None:
    """What libheif and libavif write is understood."""
    import numpy as np

    numbers = np.asarray(colourful())
    written = heic(numbers, color_primaries=12, transfer_characteristics=13)
    assert picture_properties(written).colours == CodePoints(12, 13)
    assert picture_properties(avif(numbers)).bits == 8


@settings(max_examples=300, deadline=None, derandomize=True)
@given(st.integers(0, 200), st.lists(st.tuples(st.integers(0, 199), st.integers(0, 255))))
def test_damage_is_passed_over(end: int, hits: list[tuple[int, int]]) -> None:
    """Whatever is done to the bytes, an answer comes out."""
    data = bytearray(file_of(nclx(9, 16), auxiliary(b"hdrgainmap"), items=(b"tmap",)))
    for where, value in hits:
        data[where % len(data)] = value
    assert isinstance(picture_properties(bytes(data[:end])), Properties)
