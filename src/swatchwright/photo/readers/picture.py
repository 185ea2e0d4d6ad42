"""Reading a picture file into a photo.

Pillow decodes; everything that it may throw at a malformed file is caught in one place and told
in a painter's words. Its global settings are not touched: it keeps refusing cut-off files.
"""

from __future__ import annotations

import warnings
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from PIL import Image

from swatchwright.errors import MendableError
from swatchwright.photo.image import FileFacts, Photo
from swatchwright.photo.readers import header
from swatchwright.photo.readers.pixels import MALFORMED, upright_pixels

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["MOST_BYTES", "MOST_PIXELS", "SMALLEST_SIDE", "read_photo"]

MOST_PIXELS = 100_000_000
"""Most pixels that are decoded: twice what the phones of today save."""

MOST_BYTES = 512 * 1024 * 1024
"""Largest file that is opened: that many pixels, uncompressed, with room to spare."""

SMALLEST_SIDE = 8
"""Fewest pixels of a side; less is an icon and holds no cloth."""

_FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
"""What Pillow may open; a phone's multi-picture JPEG comes out of its JPEG reader as an MPO."""

_SUBFILE, _BITS, _DNG_VERSION = 254, 258, 50706
"""TIFF 6.0 NewSubfileType and BitsPerSample, and the mark of a digital negative."""


@dataclass(slots=True)
class _Reading:
    """A file while it is being read: its name, its first bytes and the notes so far."""

    name: str
    head: bytes
    notes: list[str] = field(default_factory=list)


def read_photo(path: Path | str) -> Photo:
    """Read a JPEG, PNG, TIFF or WebP.

    Parameters
    ----------
    path
        The file; its kind is told from its content.

    Raises
    ------
    MendableError
        If it cannot be opened or is not a sound colour picture of 8 bits a channel.
    """
    place = Path(path)
    with _opened(place) as (file, size):
        reading = _Reading(place.name, file.read(header.HEAD_BYTES))
        _refuse_by_head(reading)
        with _told(reading):
            picture = Image.open(file, formats=_FORMATS)
            _refuse_by_header(picture, reading)
            picture.load()
            pixels = upright_pixels(picture)
    facts = FileFacts(
        name=place.name,
        format=picture.format or "",
        width=int(pixels.encoded.shape[1]),
        height=int(pixels.encoded.shape[0]),
        profile=pixels.profile,
        bytes=size,
        notes=(*reading.notes, *pixels.notes),
    )
    return Photo(pixels.encoded, pixels.opaque, pixels.decoding, facts)


@contextmanager
def _opened(place: Path) -> Iterator[tuple[BinaryIO, int]]:
    """Open a file and give it with its size, telling what hinders."""
    mend = "Choose a photo: a JPEG, PNG, TIFF or WebP."
    try:
        if place.is_dir():
            raise MendableError(f"“{place.name or place}” is a folder, not a photo.", mend)
        if place.exists() and not place.is_file():
            raise MendableError(f"“{place.name}” is a device, not a photo.", mend)
        size = place.stat().st_size
        file = place.open("rb")
    except FileNotFoundError:
        raise MendableError(
            f"There is no file “{place}”.", "See whether it was moved or renamed, and choose it."
        ) from None
    except PermissionError:
        raise MendableError(
            f"“{place.name}” may not be read by you.",
            "Change its permissions, or copy it to a folder of your own.",
        ) from None
    except (OSError, ValueError) as error:
        raise MendableError(f"“{place.name}” cannot be opened ({error}).", mend) from None
    with file:
        _refuse_by_size(place.name, size)
        yield file, size


def _refuse_by_size(name: str, size: int) -> None:
    """Refuse a file of no bytes and one of far too many."""
    if size == 0:
        raise MendableError(
            f"“{name}” is empty: it holds no bytes at all.", "Copy it from the phone again."
        )
    if size > MOST_BYTES:
        raise MendableError(
            f"“{name}” has {size / 2**20:.0f} MB; no more than {MOST_BYTES // 2**20} are read.",
            "Export it smaller, as a JPEG.",
        )


def _refuse_by_head(reading: _Reading) -> None:
    """Refuse what the first bytes show to be another kind or too large."""
    header.refuse_other_kinds(reading.head, reading.name)
    if header.webp_pixels(reading.head) > MOST_PIXELS:
        raise _too_many_pixels(reading.name)


@contextmanager
def _told(reading: _Reading) -> Iterator[None]:
    """Turn whatever Pillow throws into words; the one place where this is done."""
    name = reading.name
    try:
        # Pillow warns of odd metadata and of sizes that have their own refusal here.
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        raise _too_many_pixels(name) from None
    except MemoryError:
        raise MendableError(
            f"“{name}” needs more memory than the computer has free.",
            "Close other programs, or export it smaller.",
        ) from None
    except MALFORMED:
        if header.looks_readable(reading.head):
            raise MendableError(
                f"“{name}” is damaged or cut short: it cannot be decoded to its end.",
                "Copy it from the phone again, or open it elsewhere and export it as a JPEG.",
            ) from None
        raise MendableError(
            f"“{name}” is not a picture.",
            "Choose a JPEG, PNG, TIFF or WebP; HEIC, raw files, GIF and BMP are not read and"
            " have to be exported as one of these.",
        ) from None


def _too_many_pixels(name: str) -> MendableError:
    """Say that a picture is too large."""
    return MendableError(
        f"“{name}” says it has more than {MOST_PIXELS // 10**6} million pixels.",
        "Export it smaller: 12 million are plenty.",
    )


def _refuse_by_header(picture: Image.Image, reading: _Reading) -> None:
    """Refuse what the header shows to be of no use, before any pixel is decoded."""
    name = reading.name
    width, height = picture.size
    if width * height > MOST_PIXELS:
        raise _too_many_pixels(name)
    if picture.format == "TIFF":
        _refuse_raw(picture, name)
    _refuse_by_mode(picture.mode, name)
    bits = max(header.png_bits(reading.head), _tiff_bits(picture))
    if bits > 8:
        raise MendableError(
            f"“{name}” has {bits} bits a channel; 8 are read.",
            "Export it as an 8-bit JPEG or PNG.",
        )
    if min(width, height) < SMALLEST_SIDE:
        raise MendableError(
            f"“{name}” is only {width} × {height} pixels.",
            f"Choose a photo of at least {SMALLEST_SIDE} × {SMALLEST_SIDE}.",
        )
    _refuse_several(picture, reading)


def _refuse_raw(picture: Image.Image, name: str) -> None:
    """Refuse a raw file that is built as a TIFF: what Pillow sees in it is a thumbnail."""
    tags = getattr(picture, "tag_v2", {})
    if _DNG_VERSION in tags or int(tags.get(_SUBFILE, 0)) & 1:
        raise MendableError(
            f"“{name}” is a raw file of a camera, which is not read.",
            "Develop it and export it as an 8-bit JPEG or PNG, with the profile embedded.",
        )


def _refuse_by_mode(mode: str, name: str) -> None:
    """Refuse a picture that is not red, green and blue."""
    if mode == "CMYK":
        raise MendableError(
            f"“{name}” is in printing inks (CMYK), which differ from press to press.",
            "Export it as RGB, best with an sRGB profile.",
        )
    if mode == "LAB":
        raise MendableError(
            f"“{name}” holds CIELAB values instead of red, green and blue.",
            "Export it as an 8-bit RGB JPEG or PNG.",
        )
    if mode in {"1", "L", "LA", "La", "I", "F"} or mode.startswith("I;"):
        raise MendableError(
            f"“{name}” is a black-and-white picture, which holds no colour.",
            "Choose a colour photo.",
        )


def _tiff_bits(picture: Image.Image) -> int:
    """Give the most bits of a channel that a TIFF states; 0 for another format."""
    tags = getattr(picture, "tag_v2", {})
    return max((int(v) for v in tags.get(_BITS, ())), default=0)


def _refuse_several(picture: Image.Image, reading: _Reading) -> None:
    """Refuse a film or several pages; of a phone's several pictures take the first."""
    count = int(getattr(picture, "n_frames", 1))
    if count <= 1:
        return
    if picture.format == "MPO":
        reading.notes.append(
            f"The file holds {count} pictures, as some phones save them: the first was taken."
        )
        return
    pages = "pages" if picture.format == "TIFF" else "moving pictures"
    raise MendableError(
        f"“{reading.name}” holds {count} {pages} instead of one photo.",
        "Export the one you mean as a JPEG or PNG.",
    )
