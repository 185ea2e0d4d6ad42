"""Reading HEIC, as many phones save it, with all the bits it has."""

from __future__ import annotations

from types import ModuleType
from typing import TYPE_CHECKING, Any

import numpy as np
from PIL import Image

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.readers.boxes import BOX_BYTES, Properties, picture_properties
from swatchwright.photo.readers.cicp import CodePoints
from swatchwright.photo.readers.found import Found, Numbers, Reading, upright_pixels
from swatchwright.photo.readers.hints import Hints, read_hints
from swatchwright.photo.readers.meaning import Labels, meaning_of
from swatchwright.photo.readers.refusals import refuse_mode, refuse_size
from swatchwright.photo.readers.still import GAIN_MAP

if TYPE_CHECKING:
    from numpy.typing import NDArray
    from pillow_heif import HeifFile

__all__ = ["read_heic"]

_GREY = 400
"""The decoder's word for a picture of lightness alone, which it may hand out as RGB."""


def read_heic(reading: Reading) -> Found:
    """Read the main picture of a HEIC; its decoder turns it upright.

    Raises
    ------
    MendableError
        If it is no colour picture, or the package that decodes it is not installed; beside that
        what the decoder throws, all of it in `MALFORMED`.
    """
    decoder = _decoder(reading.name)
    properties = picture_properties(reading.start(BOX_BYTES))
    picture: HeifFile = decoder.open_heif(reading.file, convert_hdr_to_8bit=False)
    width, height = picture.size
    refuse_size(width, height, reading.name)
    refuse_mode("L" if picture.info.get("chroma") == _GREY else picture.mode, reading.name)
    bits = int(picture.info.get("bit_depth", 8))
    hints = _hints(picture.info, properties)
    meaning = meaning_of(_labels(picture.info, hints, properties), 65536 if bits > 8 else 256)
    if meaning.tables is not None:
        raise MendableError(
            say(
                "“{name}” has a colour profile of tables, which is not read in a HEIC.",
                name=reading.name,
            ),
            say("Export it as a JPEG."),
        )
    numbers = _numbers(picture, bits)
    rows, columns = numbers.shape[:2]
    return Found(
        upright_pixels((numbers,), (columns, rows), 1),
        meaning,
        "HEIC",
        hints,
        bits=bits,
        tone_mapped=True if hints.from_camera else None,
        gain_map=properties.gain_map,
        notes=_notes(len(picture), properties),
    )


def _decoder(name: str) -> ModuleType:
    """Import the package that decodes HEIC."""
    try:
        import pillow_heif
    except ImportError:
        raise MendableError(
            say("“{name}” is a HEIC, and what reads that is not installed.", name=name),
            say(
                "Install it by: pip install 'swatchwright[heif]'. Or set the phone's camera to save"
                " JPEG (often called 'most compatible'), or export the photo as a JPEG."
            ),
        ) from None
    return pillow_heif


def _hints(info: dict[str, Any], properties: Properties) -> Hints:
    """Read what the camera wrote; the orientation is the decoder's affair."""
    exif = Image.Exif()
    exif.load(info.get("exif") or b"")
    hints = read_hints(exif)
    return hints.turned_upright(portrait=properties.portrait or bool(info.get("depth_images")))


def _labels(info: dict[str, Any], hints: Hints, properties: Properties) -> Labels:
    """Gather what the file says of its colours; the decoder knows which picture's they are."""
    points = properties.colours
    nclx = info.get("nclx_profile")
    if nclx:
        points = CodePoints(int(nclx["color_primaries"]), int(nclx["transfer_characteristics"]))
    return Labels(icc=info.get("icc_profile") or None, code_points=points, is_wide=hints.is_wide)


def _numbers(picture: HeifFile, bits: int) -> Numbers:
    """Decode the picture; what is deeper than 8 bits is stretched to fill 16."""
    numbers: Numbers = np.asarray(picture)
    if bits <= 8:
        return numbers
    # The decoder only shifts, which leaves white at 65472 of 65535 where there are 10 bits.
    most = 2**bits - 1
    stretched: NDArray[np.float64] = (
        np.minimum(np.arange(65536) >> (16 - bits), most) * 65535 / most
    )
    table: NDArray[np.uint16] = np.rint(stretched).astype(np.uint16)
    return np.asarray(table[numbers])


def _notes(count: int, properties: Properties) -> tuple[str, ...]:
    """Say what else the file holds."""
    notes = [say(GAIN_MAP)] if properties.gain_map else []
    if count > 1:
        notes.append(say("The file holds {count} pictures: the main one was taken.", count=count))
    return tuple(notes)
