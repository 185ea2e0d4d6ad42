"""What the first bytes of a file say, before anything decodes it."""

from __future__ import annotations

from swatchwright.errors import MendableError

__all__ = ["HEAD_BYTES", "looks_readable", "png_bits", "refuse_other_kinds", "webp_pixels"]

HEAD_BYTES = 64
"""How much of a file the functions here want to see."""

_EXPORT = "Export it as a JPEG or PNG and open that."
_RAW = "a raw file of a camera"

_SIGNATURES: tuple[tuple[int, bytes, str], ...] = (
    (0, b"GIF8", "a GIF"),
    (0, b"BM", "a BMP"),
    (0, b"%PDF", "a PDF"),
    (0, b"8BPS", "a layered file of a picture editor"),
    (0, b"\x00\x00\x00\x0cjP  ", "a JPEG 2000"),
    (0, b"\xff\x4f\xff\x51", "a JPEG 2000"),
    (0, b"\x00\x00\x00\x0cJXL ", "a JPEG XL"),
    (0, b"\xff\x0a", "a JPEG XL"),
    (0, b"IIU\0", _RAW),
    (0, b"IIRO", _RAW),
    (0, b"IIRS", _RAW),
    (0, b"MMOR", _RAW),
    (8, b"CR\x02", _RAW),
)

_BRANDS = {
    b"avif": "an AVIF",
    b"avis": "an AVIF",
    b"crx ": _RAW,
    b"heic": "a HEIC",
    b"heix": "a HEIC",
    b"heim": "a HEIC",
    b"heis": "a HEIC",
    b"hevc": "a HEIC",
    b"hevx": "a HEIC",
    b"mif1": "a HEIC",
    b"msf1": "a HEIC",
}
"""Brands of files built on ISO/IEC 14496-12; the HEIC ones are those of ISO/IEC 23008-12."""

_READABLE = (b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"II*\0", b"MM\0*", b"II+\0", b"MM\0+")


def refuse_other_kinds(head: bytes, name: str) -> None:
    """Refuse a picture of a kind that is not read, naming the kind.

    Raises
    ------
    MendableError
        If the head is that of a kind known but not read.
    """
    kind = _kind_of(head)
    if kind is None:
        return
    if kind == "a HEIC":
        mend = (
            "Set the phone's camera to save JPEG (often called 'most compatible'), or export the"
            " photo as a JPEG."
        )
    elif kind == _RAW:
        mend = "Develop it and export it as an 8-bit JPEG or PNG, with the profile embedded."
    else:
        mend = _EXPORT
    raise MendableError(f"“{name}” is {kind}, which is not read.", mend)


def _kind_of(head: bytes) -> str | None:
    """Name the kind of a file that is not read, None if it is none of those known."""
    if head[4:8] == b"ftyp":
        return _BRANDS.get(head[8:12], "a film or a picture in a film's wrapping")
    for start, mark, kind in _SIGNATURES:
        if head[start : start + len(mark)] == mark:
            return kind
    return None


def looks_readable(head: bytes) -> bool:
    """Tell whether a file begins as one that is read, sound or not."""
    return head.startswith(_READABLE) or (head[:4] == b"RIFF" and head[8:12] == b"WEBP")


def png_bits(head: bytes) -> int:
    """Give the bits of a channel that the head of a PNG states (ISO/IEC 15948, 11.2.1), or 0."""
    if head.startswith(b"\x89PNG") and head[12:16] == b"IHDR" and len(head) > 24:
        return head[24]
    return 0


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
