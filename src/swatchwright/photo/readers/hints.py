"""What the camera wrote beside the picture, as far as it tells how light became numbers.

References
----------
Exif 2.32 (CIPA DC-008), the tags named; ISO 21496-1 and its forerunners (gain maps). That cameras
of phones put 2 to 8 into CustomRendered is from memory; the standard knows 0 and 1.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from swatchwright.language import mark, say
from swatchwright.photo.readers.malformed import MALFORMED

if TYPE_CHECKING:
    from collections.abc import Mapping

    from PIL import Image

__all__ = ["GAIN_MAP_MARKS", "Hints", "read_hints"]

_EXIF_IFD, _ORIENTATION = 0x8769, 0x0112
_COLOUR_SPACE, _UNCALIBRATED = 0xA001, 0xFFFF
_MAKE, _MODEL, _EXPOSURE_TIME, _F_NUMBER, _LENS_MODEL = 0x010F, 0x0110, 0x829A, 0x829D, 0xA434
_CUSTOM_RENDERED, _SCENE, _COMPOSITE = 0xA401, 0xA406, 0xA460
_PORTRAIT_SCENE, _NIGHT_SCENE = 2, 3
_PORTRAIT_RENDERED = frozenset({7, 8})
_MERGED_RENDERED = frozenset({2, 3, 4, 7})
_COMPOSITES = frozenset({2, 3})

GAIN_MAP_MARKS = (b"hdrgm:", b"hdr-gain-map", b"HDRGainMap", b"ts:21496", b"iso:21496")
"""What stands in a file that brightens its picture on HDR screens, of all kinds in use."""


@dataclass(frozen=True, slots=True)
class Hints:
    """What the camera wrote.

    Parameters
    ----------
    orientation
        As in Exif, 1 to 8.
    is_wide
        Whether the camera says that the colours are not sRGB.
    from_camera
        Whether a camera wrote how it took the picture.
    portrait, night, merged
        Whether it was taken in a mode that blurs the background, in a night mode, and whether it
        was put together from several exposures.
    damaged
        Whether what the camera wrote cannot be read.
    """

    orientation: int = 1
    is_wide: bool = False
    from_camera: bool = False
    portrait: bool = False
    night: bool = False
    merged: bool = False
    damaged: bool = False

    def turned_upright(self, *, portrait: bool) -> Hints:
        """Give the hints for a picture that its decoder has turned, with what else is known."""
        return replace(self, orientation=1, portrait=self.portrait or portrait)

    def notes(self, *, tone_mapped: bool | None) -> tuple[str, ...]:
        """Say what a painter should know of it.

        A portrait mode is not among it: that is a fault of the photo, told with its other faults.
        """
        told = {
            _DAMAGED: self.damaged,
            _SHAPED: bool(tone_mapped),
            _NIGHT: self.night,
            _MERGED: self.merged,
        }
        return tuple(say(sentence) for sentence, holds in told.items() if holds)


_DAMAGED = mark("What the camera wrote into the file is damaged: read as it lies.")
_SHAPED = mark(
    "The camera has shaped light and dark for the eye, as nearly all do: what is much lighter or"
    " darker than the grey card is less sure. A raw file (DNG) is not shaped."
)
_NIGHT = mark(
    "It was taken in a night mode: colours in so little light are less sure. Take it by daylight if"
    " you can."
)
_MERGED = mark(
    "The camera put it together from several exposures, and may have treated parts of it"
    " differently: keep the grey card close to the cloth."
)


def read_hints(exif: Image.Exif) -> Hints:
    """Read the hints; what is damaged is passed over, and said."""
    try:
        orientation = int(exif.get(_ORIENTATION, 1))
        inner = exif.get_ifd(_EXIF_IFD)
        space = inner.get(_COLOUR_SPACE)
        taken = any(tag in inner for tag in (_EXPOSURE_TIME, _F_NUMBER, _LENS_MODEL))
        rendered, scene, composite = (
            _whole(inner, tag) for tag in (_CUSTOM_RENDERED, _SCENE, _COMPOSITE)
        )
    except MALFORMED:
        return Hints(damaged=True)
    return Hints(
        orientation=orientation,
        is_wide=space == _UNCALIBRATED,
        from_camera=taken or (_MAKE in exif and _MODEL in exif),
        portrait=scene == _PORTRAIT_SCENE or rendered in _PORTRAIT_RENDERED,
        night=scene == _NIGHT_SCENE,
        merged=composite in _COMPOSITES or rendered in _MERGED_RENDERED,
    )


def _whole(tags: Mapping[int, object], tag: int) -> int:
    """Give a tag that is a whole number; -1 without."""
    value = tags.get(tag)
    return value if isinstance(value, int) else -1
