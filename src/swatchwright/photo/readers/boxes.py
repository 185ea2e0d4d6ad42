"""What the boxes at the head of a HEIC or AVIF say of its colours, before anything decodes it.

Only properties of pictures are looked at: the decoders do the rest. Every length is checked
against what holds it, and the number of boxes is bounded.

References
----------
ISO/IEC 14496-12 (boxes, `colr`, `pixi`); ISO/IEC 23008-12 (`meta`, `iprp`, `ipco`, `auxC`); ISO
21496-1 (gain maps).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from swatchwright.photo.readers.cicp import CodePoints

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["BOX_BYTES", "Properties", "picture_properties"]

BOX_BYTES = 1024 * 1024
"""How much of the head of a file is looked at."""

_MOST_BOXES = 4096
_GAIN_MAPS = (b"hdrgainmap", b"gainmap", b"21496")
_MATTES = (b"portrait", b"matte", b"depth", b"disparity")
"""Parts of the names of auxiliary pictures, in small letters: the one brightens the picture on HDR
screens, the other parts a person from the background."""


@dataclass(frozen=True, slots=True)
class Properties:
    """What the properties of the pictures in a file say.

    Parameters
    ----------
    colours
        The code points of the first picture that has them; None without.
    bits
        Most bits of a channel; 0 if it does not say.
    gain_map, portrait
        Whether there is an auxiliary picture of this kind.
    """

    colours: CodePoints | None = None
    bits: int = 0
    gain_map: bool = False
    portrait: bool = False


def picture_properties(data: bytes) -> Properties:
    """Read the properties out of the first bytes of a file; what is damaged is passed over."""
    meta = next((body for kind, body in _boxes(data) if kind == b"meta"), b"")[4:]
    colours, bits = None, 0
    auxiliary = b""
    for kind, body in _properties(meta):
        if kind == b"colr" and body[:4] == b"nclx" and len(body) >= 8 and colours is None:
            colours = CodePoints(*(int.from_bytes(body[i : i + 2], "big") for i in (4, 6)))
        elif kind == b"pixi" and len(body) > 5:
            bits = max(bits, *body[5 : 5 + min(body[4], 4)], 0)
        elif kind == b"auxC":
            auxiliary += body[4:].lower() + b"\0"
    # A picture that is derived by a gain map names itself so in its item's entry.
    gain_map = any(name in auxiliary for name in _GAIN_MAPS) or b"tmap" in _items(meta)
    return Properties(colours, bits, gain_map, any(name in auxiliary for name in _MATTES))


def _boxes(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Give kind and body of each box; the last may be cut short."""
    start = 0
    for _ in range(_MOST_BOXES):
        if start + 8 > len(data):
            return
        size, kind, head = (
            int.from_bytes(data[start : start + 4], "big"),
            data[start + 4 : start + 8],
            8,
        )
        if size == 1:
            size, head = int.from_bytes(data[start + 8 : start + 16], "big"), 16
        elif size == 0:
            size = len(data) - start
        if size < head:
            return
        yield kind, data[start + head : start + size]
        start += size


def _properties(meta: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Give the properties in the order in which they stand."""
    for kind, body in _boxes(meta):
        if kind == b"iprp":
            for inner, properties in _boxes(body):
                if inner == b"ipco":
                    yield from _boxes(properties)


def _items(meta: bytes) -> list[bytes]:
    """Give the kinds of the items, as far as the entries are of the common version."""
    kinds: list[bytes] = []
    for kind, body in _boxes(meta):
        if kind == b"iinf":
            entries = _boxes(body[6:] if body[:1] == b"\0" else body[8:])
            kinds.extend(entry[8:12] for inner, entry in entries if inner == b"infe")
    return kinds
