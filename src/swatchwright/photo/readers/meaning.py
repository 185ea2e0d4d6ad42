"""What the numbers of a picture mean as light: by its profile, its code points, or by custom."""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING

import numpy as np
from PIL import ImageCms

from swatchwright.language import mark, say
from swatchwright.photo.image import Decoding, srgb_decoding
from swatchwright.photo.readers.cicp import power_curve
from swatchwright.photo.readers.icc import read_icc

if TYPE_CHECKING:
    from swatchwright.photo.readers.cicp import CodePoints

__all__ = ["Labels", "Meaning", "meaning_of"]

_SRGB_GAMMA = (0.44, 0.47)
"""Exponents of encoding that stand for the sRGB curve: PNG has no other way to write it."""

_GAMMAS = (0.1, 10.0)

_HDR = mark(
    "The picture was made for HDR screens: its white is taken to be white paper, and the camera has"
    " shaped light and dark a good deal. Take the cloth with HDR switched off if you can."
)


@dataclass(frozen=True, slots=True)
class Labels:
    """What a file says of its colours.

    Parameters
    ----------
    icc
        The profile; None without.
    code_points
        Primaries and curve by code points; None without. A profile goes before them.
    gamma
        The exponent by which light was encoded, as a PNG may say it; None without.
    says_srgb
        Whether the file calls itself sRGB.
    is_wide
        Whether the camera says that it is not.
    """

    icc: bytes | None = None
    code_points: CodePoints | None = None
    gamma: float | None = None
    says_srgb: bool = False
    is_wide: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Meaning:
    """What the numbers of a picture mean.

    Parameters
    ----------
    decoding
        The way to light.
    profile
        Where that comes from, in words.
    notes
        What was assumed.
    tables
        What converts the bytes to sRGB first, for a profile of tables only; None otherwise.
    """

    decoding: Decoding
    profile: str
    notes: tuple[str, ...] = ()
    tables: ImageCms.ImageCmsTransform | None = None


def meaning_of(labels: Labels, levels: int = 256) -> Meaning:
    """Tell what numbers of so many levels mean; without a usable label they are taken as sRGB."""
    if labels.code_points is not None and (labels.code_points.is_hdr or not labels.icc):
        coded = _by_code_points(labels.code_points, levels)
        if coded is not None:
            return coded
    if labels.icc:
        return _by_profile(labels.icc, levels)
    return _by_custom(labels, levels)


def _by_code_points(points: CodePoints, levels: int) -> Meaning | None:
    """Tell it by code points; None if they leave it open or are unknown."""
    try:
        decoding = points.decoding(levels)
    except ValueError:
        return None
    if points.is_open:
        return None
    return Meaning(decoding, points.words, (say(_HDR),) if points.is_hdr else ())


def _by_profile(data: bytes, levels: int) -> Meaning:
    """Tell it by a profile; a damaged one is passed over, with a note."""
    try:
        icc = read_icc(data, levels)
        hdr = icc.code_points is not None and icc.code_points.is_hdr
        if hdr and icc.code_points is not None:
            coded = _by_code_points(icc.code_points, levels)
            if coded is not None:
                return coded
        if icc.decoding is not None:
            return Meaning(icc.decoding, icc.description)
        return _by_tables(data, icc.description, levels)
    except (ValueError, ImageCms.PyCMSError, OSError):
        note = say("The colour profile in the file is damaged or of no use: read as sRGB instead.")
        return Meaning(srgb_decoding(levels), say("unreadable, read as sRGB"), (note,))


def _by_tables(data: bytes, description: str, levels: int) -> Meaning:
    """Convert by the tables of a profile that has nothing else."""
    transform = ImageCms.buildTransform(
        ImageCms.ImageCmsProfile(BytesIO(data)),
        ImageCms.createProfile("sRGB"),
        "RGB",
        "RGB",
        renderingIntent=ImageCms.Intent.RELATIVE_COLORIMETRIC,
    )
    note = say(
        "The profile “{name}” holds tables only: converted to sRGB, and colours outside"
        " sRGB were clipped.",
        name=description,
    )
    return Meaning(srgb_decoding(levels), description, (note,), transform)


def _by_custom(labels: Labels, levels: int) -> Meaning:
    """Tell what a file without a profile is read as, and say what was assumed."""
    if labels.says_srgb:
        return Meaning(srgb_decoding(levels), say("sRGB, as the file says"))
    gamma = labels.gamma
    if gamma is not None and _is_odd(gamma):
        curve = power_curve(1 / gamma, levels).astype(np.float32)
        note = say(
            "The file says that its numbers are light to the power of {gamma:.2f}: read so, with"
            " the primaries of sRGB.",
            gamma=gamma,
        )
        return Meaning(Decoding(np.stack([curve] * 3), np.eye(3)), say("sRGB primaries"), (note,))
    note = say("No colour profile in the file: read as sRGB, as most phones mean it.")
    if labels.is_wide:
        note = say(
            "The camera says that the colours are not sRGB, but put no profile into the file:"
            " read as sRGB, so strong colours come out too dull. Set the camera to sRGB."
        )
    return Meaning(srgb_decoding(levels), say("none, read as sRGB"), (note,))


def _is_odd(gamma: float) -> bool:
    """Tell whether an exponent is another than that of sRGB, and one that can be."""
    within_srgb = _SRGB_GAMMA[0] <= gamma <= _SRGB_GAMMA[1]
    return _GAMMAS[0] <= gamma <= _GAMMAS[1] and not within_srgb
