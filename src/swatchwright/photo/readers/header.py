"""What the first bytes of a file say, before anything decodes it."""

from __future__ import annotations

from enum import Enum

from swatchwright.errors import MendableError
from swatchwright.language import mark, say

__all__ = ["HEAD_BYTES", "Kind", "kind_of", "png_bits", "png_is_grey", "webp_pixels"]

HEAD_BYTES = 64
"""How much of a file the functions here want to see."""


class Kind(Enum):
    """Kinds of files, by what reads them."""

    STILL = "JPEG, PNG, TIFF or WebP"
    AVIF = "AVIF"
    HEIC = "HEIC"
    RAW = "RAW"
    UNKNOWN = "none that is known"


_SIGNATURES: tuple[tuple[int, bytes, str], ...] = (
    (0, b"GIF8", mark("a GIF")),
    (0, b"BM", mark("a BMP")),
    (0, b"%PDF", mark("a PDF")),
    (0, b"8BPS", mark("a layered file of a picture editor")),
    (0, b"\x00\x00\x00\x0cjP  ", mark("a JPEG 2000")),
    (0, b"\xff\x4f\xff\x51", mark("a JPEG 2000")),
    (0, b"\x00\x00\x00\x0cJXL ", mark("a JPEG XL")),
    (0, b"\xff\x0a", mark("a JPEG XL")),
)

_RAW_SIGNATURES = (
    (0, b"IIU\0"), (0, b"IIRO"), (0, b"IIRS"), (0, b"MMOR"), (0, b"\0MRM"), (0, b"FOVb"),
    (6, b"HEAPCCDR"), (8, b"CR\x02"), (8, b"CCD-RAW"),
)  # fmt: skip
"""Raw files that are no plain TIFF."""

_BRANDS = {
    b"avif": Kind.AVIF,
    b"avis": Kind.AVIF,
    b"crx ": Kind.RAW,
    b"heic": Kind.HEIC,
    b"heix": Kind.HEIC,
    b"heim": Kind.HEIC,
    b"heis": Kind.HEIC,
    b"hevc": Kind.HEIC,
    b"hevx": Kind.HEIC,
}
"""Brands of files built on ISO/IEC 14496-12; the HEIC ones are those of ISO/IEC 23008-12."""

_GENERAL_BRANDS = frozenset({b"mif1", b"mif2", b"msf1", b"miaf"})
"""Brands that leave the coding open: another one beside them tells it."""

_STILLS = (b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")


def kind_of(head: bytes, name: str) -> Kind:
    """Tell what kind a file is by its first bytes.

    Raises
    ------
    MendableError
        If it is of a kind known but not read; the kind is named.
    """
    refused = say("a film or a picture in a film's wrapping")
    if head[4:8] == b"ftyp":
        kind = _kind_of_brands(head)
        if kind is not None:
            return kind
    else:
        named = next((k for start, mark, k in _SIGNATURES if head.startswith(mark, start)), None)
        if named is None:
            return _kind_by_signature(head)
        refused = say(named)
    raise MendableError(
        say("“{name}” is {kind}, which is not read.", name=name, kind=refused),
        say("Export it as a JPEG or PNG and open that."),
    )


def _kind_of_brands(head: bytes) -> Kind | None:
    """Tell the kind by the brand of the file, and where that is general by those beside it."""
    brand = head[8:12]
    if brand not in _GENERAL_BRANDS:
        return _BRANDS.get(brand)
    end = min(len(head), int.from_bytes(head[:4], "big"))
    beside = (_BRANDS.get(head[i : i + 4]) for i in range(16, end - 3, 4))
    return next((kind for kind in beside if kind is not None), Kind.HEIC)


def _kind_by_signature(head: bytes) -> Kind:
    """Tell stills and raw files by their marks."""
    if any(head.startswith(mark, start) for start, mark in _RAW_SIGNATURES):
        return Kind.RAW
    if head.startswith(_STILLS) or (head[:4] == b"RIFF" and head[8:12] == b"WEBP"):
        return Kind.STILL
    return Kind.UNKNOWN


def png_bits(head: bytes) -> int:
    """Give the bits of a channel that the head of a PNG states (ISO/IEC 15948, 11.2.1), or 0."""
    if head.startswith(b"\x89PNG") and head[12:16] == b"IHDR" and len(head) > 25:
        return head[24]
    return 0


def png_is_grey(head: bytes) -> bool:
    """Tell whether the head of a PNG states that it holds no colour (types 0 and 4)."""
    return png_bits(head) > 0 and head[25] in {0, 4}


def webp_pixels(head: bytes) -> int:
    """Give the number of pixels that the head of a WebP states (RFC 9649), or 0.

    A WebP needs this because its decoder makes room for the picture on opening.
    """
    if head[:4] != b"RIFF" or head[8:12] != b"WEBP" or len(head) < 30:
        return 0
    kind = head[12:16]
    if kind == b"VP8X":
        wide, high = (int.from_bytes(head[i : i + 3], "little") + 1 for i in (24, 27))
    elif kind == b"VP8L":
        bits = int.from_bytes(head[21:25], "little")
        wide, high = (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
    elif kind == b"VP8 ":
        wide, high = (int.from_bytes(head[i : i + 2], "little") & 0x3FFF for i in (26, 28))
    else:
        return 0
    return wide * high
