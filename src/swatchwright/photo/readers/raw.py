"""Reading raw files: what the sensor saw, as linear light in the camera's own primaries.

Nothing is brightened and no curve applied. The camera's own balance is used, so that what clips
clips as white; the grey card puts the light right afterwards, as with every photo.

References
----------
The digital negative specification, version 1.7, "mapping camera color space to CIE XYZ space".
"""

from __future__ import annotations

import os
from dataclasses import replace
from types import ModuleType
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from swatchwright.colour.convert import linear_srgb_to_xyz, srgb_encode
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.photo.image import Decoding, srgb_decoding
from swatchwright.photo.readers.found import Found, Reading, upright_pixels
from swatchwright.photo.readers.hints import Hints, read_hints
from swatchwright.photo.readers.malformed import MALFORMED
from swatchwright.photo.readers.meaning import Meaning
from swatchwright.photo.readers.refusals import refuse_size

if TYPE_CHECKING:
    from rawpy import RawPy

__all__ = ["read_raw"]

Matrix = NDArray[np.float64]

_LEAST_VOLUME = 1e-3
_WHITE_SLACK = 0.02
"""A matrix whose primaries lie almost in a plane, or that tints white by more, is damage."""

_HALVED_FROM = 6_000_000
"""Pixels of a sensor from which each square of four becomes one: no colour has then to be guessed
from its neighbours, and there are pixels enough."""

_HALVED = mark(
    "Each square of four dots of the sensor was made one pixel, so the photo has half the width and"
    " height that the camera states."
)
_NO_PRIMARIES = mark(
    "The file does not say how the camera sees colours, and the camera is not known: read as if it"
    " saw them as sRGB, so strong colours are less sure."
)


def read_raw(reading: Reading) -> Found:
    """Read a raw file.

    Raises
    ------
    MendableError
        If the package that reads it is not installed or does not know the camera, or the sensor
        sees no colour.
    ValueError
        If it is damaged.
    """
    rawpy = _package(reading.name)
    try:
        with rawpy.imread(os.fspath(reading.path)) as raw:
            return _developed(rawpy, raw, reading)
    except (rawpy.LibRawFileUnsupportedError, rawpy.NotSupportedError):
        raise MendableError(
            say(
                "“{name}” is a raw file of a camera or a kind that is not known here.",
                name=reading.name,
            ),
            say(
                "Save it as an uncompressed DNG, or develop it and export a 16-bit TIFF or a JPEG."
            ),
        ) from None
    except rawpy.LibRawUnsufficientMemoryError:
        raise MemoryError from None
    except rawpy.LibRawError as error:
        raise ValueError(str(error)) from None


def _package(name: str) -> ModuleType:
    """Import the package that reads raw files."""
    try:
        import rawpy
    except ImportError:
        raise MendableError(
            say(
                "“{name}” is a raw file of a camera, and what reads that is not installed.",
                name=name,
            ),
            say(
                "Install it by: pip install 'swatchwright[raw]'. Or develop it and export a 16-bit"
                " TIFF or a JPEG, with the profile embedded."
            ),
        ) from None
    return rawpy


def _developed(rawpy: ModuleType, raw: RawPy, reading: Reading) -> Found:
    """Turn what the sensor saw into pixels."""
    sizes = raw.sizes
    refuse_size(sizes.width, sizes.height, reading.name)
    if raw.num_colors < 3:
        raise MendableError(
            say("“{name}” comes from a sensor that sees no colour.", name=reading.name),
            say("Choose a colour photo."),
        )
    halved = raw.raw_type == rawpy.RawType.Flat and sizes.width * sizes.height >= _HALVED_FROM
    white_level = int(raw.white_level)
    linear = raw.postprocess(
        half_size=halved,
        output_color=rawpy.ColorSpace.raw,
        output_bps=16,
        gamma=(1, 1),
        no_auto_bright=True,
        adjust_maximum_thr=0.0,
        **_white_balance(raw),
    )
    meaning = _meaning(raw)
    rows, columns = linear.shape[:2]
    return Found(
        upright_pixels((_encoded()[linear[..., :3]],), (columns, rows), 1),
        meaning,
        "RAW",
        _hints(reading),
        bits=min(max(white_level.bit_length(), 8), 16),
        tone_mapped=False,
        notes=(say(_HALVED),) if halved else (),
    )


def _white_balance(raw: RawPy) -> dict[str, Any]:
    """Choose the balance of the camera, or that of daylight where it wrote none."""
    as_shot = [float(v) for v in raw.camera_whitebalance[:3]]
    if all(np.isfinite(v) and v > 0 for v in as_shot):
        return {"use_camera_wb": True}
    daylight = [float(v) for v in raw.daylight_whitebalance[:3]]
    if all(np.isfinite(v) and v > 0 for v in daylight):
        return {"user_wb": [*daylight, daylight[1]]}
    return {"user_wb": [1.0, 1.0, 1.0, 1.0]}


def _encoded() -> NDArray[np.uint16]:
    """Give the numbers that linear ones are kept as: by the curve of sRGB, like those of a photo.

    So their upper bytes are as even to the eye as those of any photo.
    """
    return np.rint(srgb_encode(np.linspace(0, 1, 65536)) * 65535).astype(np.uint16)


def _meaning(raw: RawPy) -> Meaning:
    """Find the way from the camera's balanced primaries to linear sRGB.

    A matrix in the file goes before the one that the package knows of the camera.
    """
    curves = srgb_decoding(65536).curves
    in_file: Matrix = np.asarray(raw.color_matrix, dtype=np.float64)[:3, :3]
    known: Matrix = np.asarray(raw.rgb_xyz_matrix, dtype=np.float64)[:3]
    for matrix in (in_file, _from_xyz(known)):
        if matrix is not None and _keeps_white(matrix):
            return Meaning(Decoding(curves, matrix), say("the camera's own"))
    return Meaning(
        Decoding(curves, np.eye(3)), say("unknown, taken as sRGB"), (say(_NO_PRIMARIES),)
    )


def _keeps_white(matrix: Matrix) -> bool:
    """Tell whether a matrix is sound: what the balance has made neutral must stay so."""
    sound = bool(np.all(np.isfinite(matrix))) and abs(np.linalg.det(matrix)) > _LEAST_VOLUME
    return sound and bool(np.abs(matrix.sum(axis=1) - 1).max() < _WHITE_SLACK)


def _from_xyz(xyz_to_camera: Matrix) -> Matrix | None:
    """Turn a matrix from XYZ, for the white of D65, round; None where there is none."""
    srgb_to_camera = xyz_to_camera @ linear_srgb_to_xyz(np.eye(3)).T
    whites = srgb_to_camera.sum(axis=1, keepdims=True)
    if not np.all(np.isfinite(srgb_to_camera)) or np.any(whites < _LEAST_VOLUME):
        return None
    balanced = srgb_to_camera / whites
    if abs(np.linalg.det(balanced)) < _LEAST_VOLUME:
        return None
    return np.asarray(np.linalg.inv(balanced), dtype=np.float64)


def _hints(reading: Reading) -> Hints:
    """Read what the camera wrote, as far as the file is built as a TIFF."""
    exif = Image.Exif()
    try:
        exif.load(b"Exif\0\0" + reading.start(_MOST_EXIF))
        hints = read_hints(exif)
    except MALFORMED:
        return Hints(from_camera=True)
    # A camera's sub-pictures and makers' notes reach further than what is looked at.
    return replace(hints.turned_upright(portrait=False), damaged=False)


_MOST_EXIF = 256 * 1024
"""How much of a raw file is looked at for what the camera wrote."""
