"""Reading what Pillow decodes: JPEG, PNG, TIFF, WebP and AVIF."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageCms, features

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.photo.readers import header
from swatchwright.photo.readers.boxes import BOX_BYTES, picture_properties
from swatchwright.photo.readers.chunks import png_code_points
from swatchwright.photo.readers.cicp import CodePoints
from swatchwright.photo.readers.deep import deep_numbers, refuse_deep
from swatchwright.photo.readers.found import Found, Pixels, Reading, upright_pixels
from swatchwright.photo.readers.hints import GAIN_MAP_MARKS, Hints, read_hints
from swatchwright.photo.readers.meaning import Labels, Meaning, meaning_of
from swatchwright.photo.readers.pages import choose_page
from swatchwright.photo.readers.refusals import (
    MOST_PIXELS,
    refuse_mode,
    refuse_size,
    several_pictures,
    too_many_pixels,
)

__all__ = ["GAIN_MAP", "read_avif", "read_still"]

_FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
"""What Pillow may open; a phone's multi-picture JPEG comes out of its JPEG reader as an MPO."""

_BITS = 258
"""TIFF 6.0 BitsPerSample."""

_STRIP = 256
"""Rows that are taken out of Pillow's picture at once: it keeps four bytes for each three."""

_SEARCHED = 64 * 1024 * 1024

GAIN_MAP = mark(
    "The file also holds a map that brightens the picture on HDR screens: the ordinary picture was"
    " read, without it."
)


@dataclass(frozen=True, slots=True)
class _Extras:
    """Which page holds the picture, and what else the file holds; fields as in `FileFacts`."""

    page: int
    gain_map: bool
    notes: tuple[str, ...]


def read_still(reading: Reading) -> Found:
    """Read a JPEG, PNG, TIFF or WebP.

    Raises
    ------
    MendableError
        If it is no colour picture of 8 or 16 bits; beside that whatever Pillow throws.
    """
    if header.webp_pixels(reading.head) > MOST_PIXELS:
        raise too_many_pixels(reading.name)
    picture = Image.open(reading.file, formats=_FORMATS)
    extras = _choose(picture, reading)
    refuse_size(*picture.size, reading.name)
    refuse_mode("L" if header.png_is_grey(reading.head) else picture.mode, reading.name)
    bits = max(header.png_bits(reading.head), _tiff_bits(picture), 8)
    if bits > 8:
        refuse_deep(picture, bits, reading.name)
    hints = read_hints(picture.getexif())
    labels = _labels(picture, hints, png_code_points(reading.file, reading.head))
    meaning = meaning_of(labels, 65536 if bits == 16 else 256)
    # Tables are applied to bytes only, so that with them the upper bytes have to do.
    if bits == 16 and meaning.tables is None:
        pixels = _deep_pixels(picture, reading, extras.page)
    else:
        bits, meaning = 8, meaning_of(labels)
        pixels = _pixels(picture, meaning)
    return Found(
        pixels,
        meaning,
        picture.format or "",
        hints,
        bits=bits,
        tone_mapped=True if hints.from_camera and not meaning.decoding.linear else None,
        gain_map=extras.gain_map,
        notes=extras.notes,
    )


def read_avif(reading: Reading) -> Found:
    """Read an AVIF, of which Pillow gives 8 bits a channel.

    Raises
    ------
    MendableError
        If it is no colour picture, or this Pillow does not read AVIF; beside that whatever Pillow
        throws.
    """
    if not features.check("avif"):
        raise MendableError(
            say(
                "“{name}” is an AVIF, which the Pillow on this computer does not read.",
                name=reading.name,
            ),
            say("Install a newer Pillow, or export the photo as a JPEG or PNG."),
        )
    properties = picture_properties(reading.start(BOX_BYTES))
    picture = Image.open(reading.file, formats=("AVIF",))
    refuse_size(*picture.size, reading.name)
    count = int(getattr(picture, "n_frames", 1))
    if count > 1:
        raise several_pictures(reading.name, count, say("moving pictures"))
    refuse_mode(picture.mode, reading.name)
    hints = read_hints(picture.getexif())
    if properties.portrait:
        hints = replace(hints, portrait=True)
    meaning = meaning_of(_labels(picture, hints, properties.colours))
    notes = [say(GAIN_MAP)] if properties.gain_map else []
    if properties.bits > 8:
        notes.append(
            say("Of the {bits} bits a channel of the AVIF 8 were read.", bits=properties.bits)
        )
    return Found(
        _pixels(picture, meaning),
        meaning,
        "AVIF",
        hints,
        tone_mapped=True if hints.from_camera else None,
        gain_map=properties.gain_map,
        notes=tuple(notes),
    )


def _choose(picture: Image.Image, reading: Reading) -> _Extras:
    """Go to the photo among several pictures, and see what else the file holds."""
    gain_map = _has_gain_map(picture, reading)
    notes = (say(GAIN_MAP),) if gain_map else ()
    count = int(getattr(picture, "n_frames", 1))
    if count <= 1:
        return _Extras(0, gain_map, notes)
    if picture.format == "MPO":
        taken = say(
            "The file holds {count} pictures, as some phones save them: the first was taken.",
            count=count,
        )
        return _Extras(0, gain_map, notes or (taken,))
    page = choose_page(picture, count) if picture.format == "TIFF" else None
    if page is None:
        kind = say("pages") if picture.format == "TIFF" else say("moving pictures")
        raise several_pictures(reading.name, count, kind)
    return _Extras(
        page,
        gain_map,
        (say("Of the {count} pages of the file the largest was taken.", count=count),),
    )


def _has_gain_map(picture: Image.Image, reading: Reading) -> bool:
    """Tell whether a JPEG brings along what HDR screens brighten it with.

    Some say so in the head of the picture, some in that of a second picture further down.
    """
    if picture.format not in {"JPEG", "MPO"}:
        return False
    told = b"".join(body for _, body in getattr(picture, "applist", ()))
    if picture.format == "MPO":
        told = reading.start(_SEARCHED)
    return any(mark in told for mark in GAIN_MAP_MARKS)


def _tiff_bits(picture: Image.Image) -> int:
    """Give the most bits of a channel that a TIFF states; 0 for another format."""
    tags = getattr(picture, "tag_v2", {})
    return max((int(v) for v in tags.get(_BITS, ())), default=0)


def _labels(picture: Image.Image, hints: Hints, points: CodePoints | None) -> Labels:
    """Gather what the file says of its colours."""
    gamma = picture.info.get("gamma")
    return Labels(
        icc=picture.info.get("icc_profile") or None,
        code_points=points,
        gamma=float(gamma) if isinstance(gamma, int | float) else None,
        says_srgb="srgb" in picture.info,
        is_wide=hints.is_wide,
    )


def _pixels(picture: Image.Image, meaning: Meaning) -> Pixels:
    """Take the bytes out of a picture, upright."""
    picture.load()
    # Asked for only now: Pillow turns a TIFF while it loads it.
    orientation = read_hints(picture.getexif()).orientation
    parts = (_bytes(strip, meaning) for strip in _strips(picture))
    return upright_pixels(parts, picture.size, orientation)


def _strips(picture: Image.Image) -> Iterator[Image.Image]:
    """Cut a picture into strips from top to bottom."""
    for top in range(0, picture.height, _STRIP):
        yield picture.crop((0, top, picture.width, min(top + _STRIP, picture.height)))


def _bytes(strip: Image.Image, meaning: Meaning) -> NDArray[np.uint8]:
    """Give the red, green and blue of a strip, and how opaque it is where that is not all."""
    # A palette with transparency, and premultiplied alpha, reach RGB rightly only over RGBA.
    clear = strip.has_transparency_data
    wanted = "RGBA" if clear else "RGB"
    plain = strip if strip.mode == wanted else strip.convert(wanted)
    if meaning.tables is None:
        return np.asarray(plain)
    colours = np.asarray(ImageCms.applyTransform(plain.convert("RGB"), meaning.tables))
    return np.dstack([colours, np.asarray(plain)[..., 3]]) if clear else colours


def _deep_pixels(picture: Image.Image, reading: Reading, page: int) -> Pixels:
    """Take all 16 bits out of a picture, upright."""
    numbers, orientation = deep_numbers(reading.file, picture.format or "", page)
    clear = picture.info.get("transparency")
    if numbers.shape[2] == 3 and isinstance(clear, tuple):
        # A PNG may name one colour that stands for "nothing here".
        shown = np.any(numbers != np.array(clear), axis=2)
        numbers = np.dstack([numbers, np.where(shown, 65535, 0).astype(np.uint16)])
    rows, columns = numbers.shape[:2]
    return upright_pixels((numbers,), (columns, rows), orientation)
