"""From a loaded picture to upright bytes and what they mean as light."""

from __future__ import annotations

import struct
import zlib
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

import numpy as np
from PIL import Image, ImageCms

from swatchwright.photo.image import Decoding, srgb_decoding
from swatchwright.photo.readers.icc import read_icc

if TYPE_CHECKING:
    from numpy.typing import NDArray

__all__ = ["MALFORMED", "Pixels", "upright_pixels"]

MALFORMED = (
    OSError,  # also UnidentifiedImageError
    EOFError,
    ValueError,
    TypeError,
    LookupError,
    ArithmeticError,
    AttributeError,
    AssertionError,
    SyntaxError,
    RuntimeError,  # also NotImplementedError
    struct.error,
    zlib.error,
    ImageCms.PyCMSError,
)
"""What Pillow throws at a malformed file (found with its own collection of broken files)."""

_OPAQUE_FROM = 250
"""Alpha, 0-255, from which a pixel counts as opaque: some programs write 254 for all."""

_ORIENTATION, _EXIF_IFD, _COLOUR_SPACE, _UNCALIBRATED = 0x0112, 0x8769, 0xA001, 0xFFFF
"""Exif 2.32 tags, and the value of ColorSpace that says: not sRGB."""

_UPRIGHT = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
"""What makes a picture upright, by its Exif orientation."""


@dataclass(frozen=True, slots=True, eq=False)
class Pixels:
    """The upright bytes of a picture, with their meaning; fields as in `Photo` and `FileFacts`."""

    encoded: NDArray[np.uint8]
    opaque: NDArray[np.bool_] | None
    decoding: Decoding
    profile: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class _Meaning:
    """A picture in red, green and blue with what its bytes mean."""

    picture: Image.Image
    decoding: Decoding
    profile: str
    notes: tuple[str, ...]


def upright_pixels(picture: Image.Image) -> Pixels:
    """Take the pixels out of a loaded picture, upright, with the profile read.

    Pillow may throw whatever `MALFORMED` lists.
    """
    orientation, is_wide, notes = _exif(picture)
    turn = _UPRIGHT.get(orientation)
    opaque = _opaque(picture, turn)
    meaning = _meaning(picture, is_wide=is_wide)
    plain = meaning.picture if turn is None else meaning.picture.transpose(turn)
    encoded = np.array(plain, dtype=np.uint8)
    encoded.setflags(write=False)
    return Pixels(encoded, opaque, meaning.decoding, meaning.profile, (*notes, *meaning.notes))


def _exif(picture: Image.Image) -> tuple[int, bool, tuple[str, ...]]:
    """Give the orientation, whether the camera says "not sRGB", and a note if it is unreadable."""
    try:
        exif = picture.getexif()
        orientation = int(exif.get(_ORIENTATION, 1))
        space = exif.get_ifd(_EXIF_IFD).get(_COLOUR_SPACE)
    except MALFORMED:
        return 1, False, ("What the camera wrote into the file is damaged: read as it lies.",)
    return orientation, space == _UNCALIBRATED, ()


def _opaque(picture: Image.Image, turn: Image.Transpose | None) -> NDArray[np.bool_] | None:
    """Tell where a picture is opaque, upright; None if everywhere."""
    if not picture.has_transparency_data:
        return None
    alpha = picture.convert("RGBA").getchannel("A")
    if turn is not None:
        alpha = alpha.transpose(turn)
    opaque = np.asarray(alpha) >= _OPAQUE_FROM
    opaque.setflags(write=False)
    return None if opaque.all() else opaque


def _meaning(picture: Image.Image, *, is_wide: bool) -> _Meaning:
    """Read the profile; without a usable one the bytes are taken as sRGB, with a note."""
    # A palette with transparency, and premultiplied alpha, reach RGB rightly only over RGBA.
    through = picture.convert("RGBA") if picture.has_transparency_data else picture
    plain = through.convert("RGB")
    data = picture.info.get("icc_profile")
    if not data:
        profile, note = _unprofiled(picture, is_wide=is_wide)
        return _Meaning(plain, srgb_decoding(), profile, note)
    try:
        icc = read_icc(data)
        if icc.decoding is not None:
            return _Meaning(plain, icc.decoding, icc.description, ())
        return _by_tables(plain, data, icc.description)
    except (ValueError, ImageCms.PyCMSError, OSError):
        note = ("The colour profile in the file is damaged or of no use: read as sRGB instead.",)
        return _Meaning(plain, srgb_decoding(), "unreadable, read as sRGB", note)


def _unprofiled(picture: Image.Image, *, is_wide: bool) -> tuple[str, tuple[str, ...]]:
    """Name what a file without a profile is read as, and say what was assumed."""
    if "srgb" in picture.info:
        return "sRGB, as the file says", ()
    note = "No colour profile in the file: read as sRGB, as most phones mean it."
    if is_wide:
        note = (
            "The camera says that the colours are not sRGB, but put no profile into the file:"
            " read as sRGB, so strong colours come out too dull. Set the camera to sRGB."
        )
    return "none, read as sRGB", (note,)


def _by_tables(plain: Image.Image, data: bytes, description: str) -> _Meaning:
    """Convert by the tables of a profile that has nothing else."""
    converted = ImageCms.profileToProfile(
        plain,
        ImageCms.ImageCmsProfile(BytesIO(data)),
        ImageCms.createProfile("sRGB"),
        renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
        outputMode="RGB",
    )
    if converted is None:
        raise ValueError("the profile could not be applied")
    note = (
        f"The profile “{description}” holds tables only: converted to sRGB, and colours outside"
        " sRGB were clipped."
    )
    return _Meaning(converted, srgb_decoding(), description, (note,))
