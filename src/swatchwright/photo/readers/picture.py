"""Reading a picture file into a photo.

Whatever a decoder may throw at a malformed file is caught in one place and told in a painter's
words. Pillow's global settings are not touched: it keeps refusing cut-off files.
"""

from __future__ import annotations

import logging
import warnings
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from PIL import Image

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.image import FileFacts, Photo
from swatchwright.photo.readers import header
from swatchwright.photo.readers.found import Found, Reading
from swatchwright.photo.readers.header import Kind
from swatchwright.photo.readers.heif import read_heic
from swatchwright.photo.readers.malformed import MALFORMED
from swatchwright.photo.readers.raw import read_raw
from swatchwright.photo.readers.refusals import MOST_PIXELS, SMALLEST_SIDE, too_many_pixels
from swatchwright.photo.readers.still import read_avif, read_still
from swatchwright.photo.readers.tiff import is_raw_tiff

if TYPE_CHECKING:
    from collections.abc import Iterator

__all__ = ["MOST_BYTES", "MOST_PIXELS", "SMALLEST_SIDE", "read_photo"]

# What is wrong with a file is told as a refusal in words, and not as a line on the terminal too.
logging.getLogger("PIL").setLevel(logging.CRITICAL)

MOST_BYTES = 512 * 1024 * 1024
"""Largest file that is opened: as many pixels as are decoded, uncompressed, with room to spare."""


def read_photo(path: Path | str) -> Photo:
    """Read a JPEG, PNG, TIFF, WebP, AVIF, HEIC or raw file.

    Parameters
    ----------
    path
        The file; its kind is told from its content.

    Raises
    ------
    MendableError
        If it cannot be opened or is not a sound colour picture.
    """
    place = Path(path)
    with _opened(place) as (file, size):
        reading = Reading(place, file, file.read(header.HEAD_BYTES))
        kind = header.kind_of(reading.head, reading.name)
        with _told(reading, kind):
            found = _read(reading, kind)
    pixels = found.pixels
    facts = FileFacts(
        name=place.name,
        format=found.format,
        width=int(pixels.encoded.shape[1]),
        height=int(pixels.encoded.shape[0]),
        profile=found.meaning.profile,
        bytes=size,
        notes=found.all_notes,
        bits=found.bits,
        linear=found.is_linear,
        tone_mapped=found.tone_mapped,
        gain_map=found.gain_map,
        portrait=found.hints.portrait,
    )
    return Photo(pixels.encoded, pixels.opaque, found.meaning.decoding, facts, pixels.deep)


def _read(reading: Reading, kind: Kind) -> Found:
    """Read a file by what its first bytes tell; the unknown is left to Pillow to refuse."""
    if kind is Kind.HEIC:
        return read_heic(reading)
    if kind is Kind.AVIF:
        return read_avif(reading)
    if kind is Kind.RAW or is_raw_tiff(reading.file, reading.head):
        return read_raw(reading)
    reading.file.seek(0)
    return read_still(reading)


@contextmanager
def _opened(place: Path) -> Iterator[tuple[BinaryIO, int]]:
    """Open a file and give it with its size, telling what hinders."""
    mend = say("Choose a photo: a JPEG, HEIC, PNG, TIFF, WebP, AVIF or raw file.")
    try:
        if place.is_dir():
            raise MendableError(
                say("“{name}” is a folder, not a photo.", name=place.name or place), mend
            )
        if place.exists() and not place.is_file():
            raise MendableError(say("“{name}” is a device, not a photo.", name=place.name), mend)
        size = place.stat().st_size
        file = place.open("rb")
    except FileNotFoundError:
        raise MendableError(
            say("There is no file “{path}”.", path=place),
            say("See whether it was moved or renamed, and choose it."),
        ) from None
    except PermissionError:
        raise MendableError(
            say("“{name}” may not be read by you.", name=place.name),
            say("Change its permissions, or copy it to a folder of your own."),
        ) from None
    except (OSError, ValueError) as error:
        raise MendableError(
            say("“{name}” cannot be opened ({error}).", name=place.name, error=error), mend
        ) from None
    with file:
        _refuse_by_size(place.name, size)
        yield file, size


def _refuse_by_size(name: str, size: int) -> None:
    """Refuse a file of no bytes and one of far too many."""
    if size == 0:
        raise MendableError(
            say("“{name}” is empty: it holds no bytes at all.", name=name),
            say("Copy it from the phone again."),
        )
    if size > MOST_BYTES:
        raise MendableError(
            say(
                "“{name}” has {size:.0f} MB; no more than {most} are read.",
                name=name,
                size=size / 2**20,
                most=MOST_BYTES // 2**20,
            ),
            say("Export it smaller, as a JPEG."),
        )


@contextmanager
def _told(reading: Reading, kind: Kind) -> Iterator[None]:
    """Turn whatever a decoder throws into words; the one place where this is done."""
    name = reading.name
    try:
        # Pillow warns of odd metadata and of sizes that have their own refusal here.
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        raise too_many_pixels(name) from None
    except MemoryError:
        raise MendableError(
            say("“{name}” needs more memory than the computer has free.", name=name),
            say("Close other programs, or export it smaller."),
        ) from None
    except MALFORMED:
        if kind is not Kind.UNKNOWN:
            raise MendableError(
                say(
                    "“{name}” is damaged or cut short: it cannot be decoded to its end.", name=name
                ),
                say("Copy it from the phone again, or open it elsewhere and export it as a JPEG."),
            ) from None
        raise MendableError(
            say("“{name}” is not a picture.", name=name),
            say(
                "Choose a JPEG, HEIC, PNG, TIFF, WebP, AVIF or raw file; GIF, BMP and others have"
                " to be exported as one of these."
            ),
        ) from None
