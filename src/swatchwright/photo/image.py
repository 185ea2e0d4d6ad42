"""A photo as a value: the bytes of the file, upright, with the way back to linear light.

The bytes are kept, not the light: 12 megapixels are 36 MB as they are and 144 MB as float32.
Light is made for the part that is asked for. Where a file holds more than 8 bits a channel, all of
them are kept beside the bytes, and light is made from those.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from swatchwright.colour.convert import srgb_decode, srgb_encode
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.photo.facts import FileFacts

if TYPE_CHECKING:
    from swatchwright.values import Rect

__all__ = ["Decoding", "FileFacts", "Photo", "require_inside", "srgb_decoding"]

Bytes = NDArray[np.uint8]
Deep = NDArray[np.uint16]
Light = NDArray[np.float32]

_BEHIND = 0.18
"""Linear light shown where a picture is transparent: a middle grey pleads for no colour."""


@dataclass(frozen=True, slots=True, eq=False)
class Decoding:
    """The way from the numbers of a file to light.

    Parameters
    ----------
    curves
        Shape (3, 256), or (3, 65536) where the file holds more than 8 bits a channel: linear light
        of each number of the red, green and blue channel; 1 for the white of the file, and above
        it only for a picture made for HDR screens.
    matrix
        Shape (3, 3): from the linear light of the file's own primaries to linear sRGB (D65).
        Not clipped: a colour outside sRGB comes out below 0 or above 1.
    """

    curves: Light
    matrix: NDArray[np.float64]

    @property
    def linear(self) -> bool:
        """Whether the numbers are in proportion to light already, to 0.1 % of white."""
        straight = np.linspace(0, 1, self.curves.shape[1], dtype=np.float32)
        return bool(np.abs(self.curves - straight).max() < 1e-3)


@dataclass(frozen=True, slots=True, eq=False)
class Photo:
    """A photo, upright.

    Parameters
    ----------
    encoded
        Shape (height, width, 3): the bytes of the file, or the upper ones of what is deeper.
    opaque
        Shape (height, width): where the picture is not transparent; None if it is nowhere.
    decoding
        The way from the bytes to light.
    facts
        What is known of the file.
    deep
        Shape (height, width, 3): all 16 bits of a file that holds more than 8; else None. A byte
        of `encoded` is the nearest to a 257th of it.
    """

    encoded: Bytes
    opaque: NDArray[np.bool_] | None
    decoding: Decoding
    facts: FileFacts
    deep: Deep | None = None

    @property
    def width(self) -> int:
        """Columns of the upright picture."""
        return int(self.encoded.shape[1])

    @property
    def height(self) -> int:
        """Rows of the upright picture."""
        return int(self.encoded.shape[0])

    def linear(self, rect: Rect | None = None, step: int = 1) -> Light:
        """Decode a part of the photo to linear sRGB.

        Parameters
        ----------
        rect
            The part; the whole photo if None.
        step
            Take every so-manieth row and column, from the first of the part on.

        Returns
        -------
        Shape (rows, columns, 3), 1 for the white of the file, not clipped to sRGB.

        Raises
        ------
        MendableError
            If the part does not lie in the photo.
        """
        return self.light_of(self._numbers[self._part(rect, step)])

    def light_at(self, x: NDArray[np.intp], y: NDArray[np.intp]) -> Light:
        """Decode single pixels, x and y of one shape (...), to linear sRGB, shape (..., 3)."""
        return self.light_of(self._numbers[y, x])

    def light_of(self, encoded: Bytes | Deep) -> Light:
        """Decode numbers of the photo, shape (..., 3), to linear sRGB of the same shape.

        Parameters
        ----------
        encoded
            Out of `encoded`, or out of `deep` where there is one.
        """
        light = np.empty(encoded.shape, dtype=np.float32)
        for channel in range(3):
            light[..., channel] = self._light_of_channel(encoded[..., channel], channel)
        return self._to_srgb(light)

    def cut(self, rect: Rect | None = None, step: int = 1) -> Bytes:
        """Give the bytes of a part of the photo, as a view; arguments as in `linear`."""
        return self.encoded[self._part(rect, step)]

    def cut_opaque(self, rect: Rect | None = None, step: int = 1) -> NDArray[np.bool_]:
        """Tell of each pixel that `cut` gives whether the picture is opaque there."""
        part = self._part(rect, step)
        if self.opaque is None:
            return np.ones(self.encoded[part].shape[:2], dtype=np.bool_)
        return self.opaque[part]

    def part(self, rect: Rect, step: int = 1) -> Photo:
        """Give a part of the photo as a photo of its own, without copying; arguments as above."""
        part = self._part(rect, step)
        opaque = None if self.opaque is None else self.opaque[part]
        deep = None if self.deep is None else self.deep[part]
        return Photo(self.encoded[part], opaque, self.decoding, self.facts, deep)

    def preview(self, longest: int, gains: tuple[float, float, float] = (1.0, 1.0, 1.0)) -> Bytes:
        """Make a small picture of it for an sRGB screen.

        Light is averaged over boxes, so that a weave does not turn into stripes.

        Parameters
        ----------
        longest
            Wanted length of the longer side in pixels; a smaller photo is not enlarged.
        gains
            Factors of linear red, green and blue, to show the balanced picture.

        Returns
        -------
        Shape (rows, columns, 3), encoded as sRGB; what the screen cannot show is clipped.
        """
        rows, columns = _fitted(self.height, self.width, longest)
        shown = np.empty((rows, columns, 3), dtype=np.uint8)
        # In strips, for the light of a large photo would be four times as large as its bytes.
        strip = max(1, _STRIP * rows // self.height)
        for top in range(0, rows, strip):
            part = slice(top, min(top + strip, rows))
            shown[part] = self._shown(part, (rows, columns), np.asarray(gains, dtype=np.float32))
        return shown

    def _shown(self, part: slice, shape: tuple[int, int], gains: Light) -> Bytes:
        """Make some rows of a preview that has so many rows and columns."""
        ends = (part.start * self.height / shape[0], part.stop * self.height / shape[0])
        across = slice(floor(ends[0]), min(ceil(ends[1]), self.height))
        size = (part.stop - part.start, shape[1])
        inner = (0.0, ends[0] - across.start, float(self.width), ends[1] - across.start)
        light = np.empty((*size, 3), dtype=np.float32)
        for channel in range(3):
            plane = self._light_of_channel(self._numbers[across, :, channel], channel)
            light[..., channel] = _box(plane, size, inner)
        light = self._to_srgb(light) * gains
        if self.opaque is not None:
            cover = _box(self.opaque[across].astype(np.float32), size, inner)[..., np.newaxis]
            light = light * cover + np.float32(_BEHIND) * (1 - cover)
        return _ENCODE[(np.clip(light, 0, 1) * _STEPS + 0.5).astype(np.uint16)]

    @property
    def _numbers(self) -> Bytes | Deep:
        """What light is made from: as deep as there is."""
        return self.encoded if self.deep is None else self.deep

    def _part(self, rect: Rect | None, step: int) -> tuple[slice, slice]:
        """Give the rows and columns of a part."""
        if rect is None:
            return slice(None, None, step), slice(None, None, step)
        require_inside(self, rect, say("The rectangle"))
        return slice(rect.y, rect.bottom, step), slice(rect.x, rect.right, step)

    def _light_of_channel(self, numbers: Bytes | Deep, channel: int) -> Light:
        """Look up the light of one channel, in the file's own primaries."""
        curve = self.decoding.curves[channel]
        # A curve for 16 bits serves bytes as well, at every 257th place.
        return np.take(curve[:: (len(curve) - 1) // np.iinfo(numbers.dtype).max], numbers)

    def _to_srgb(self, light: Light) -> Light:
        """Take light of the file's primaries to linear sRGB."""
        matrix = self.decoding.matrix
        if np.array_equal(matrix, np.eye(3)):
            return light
        return light @ matrix.T.astype(np.float32)


def srgb_decoding(levels: int = 256) -> Decoding:
    """Give the decoding of a file that is sRGB (IEC 61966-2-1), of 256 or 65536 levels."""
    curve = srgb_decode(np.linspace(0, 1, levels)).astype(np.float32)
    return Decoding(np.stack([curve] * 3), np.eye(3))


def require_inside(photo: Photo, rect: Rect, what: str) -> None:
    """Refuse a rectangle that does not lie wholly in the photo, naming it and the photo's size.

    Raises
    ------
    MendableError
        If it is empty or reaches over an edge.
    """
    if rect.inside(photo.width, photo.height):
        return
    raise MendableError(
        say(
            "{what} at {x}, {y} ({width} × {height} pixels) does not lie in the photo, which is"
            " {wide} × {high} pixels.",
            what=what,
            x=rect.x,
            y=rect.y,
            width=rect.width,
            height=rect.height,
            wide=photo.width,
            high=photo.height,
        ),
        say("Draw it inside the photo."),
    )


_STRIP = 512
"""Rows of a photo that become a preview at once."""

_STEPS = 65535
_ENCODE = np.rint(srgb_encode(np.arange(_STEPS + 1) / _STEPS) * 255).astype(np.uint8)
"""The sRGB byte of linear light in 65 536 steps: 20 times finer than a byte even in the blacks."""


def _fitted(height: int, width: int, longest: int) -> tuple[int, int]:
    """Give rows and columns of a picture whose longer side is at most so long."""
    scale = min(1.0, longest / max(height, width))
    return max(1, round(height * scale)), max(1, round(width * scale))


def _box(plane: Light, shape: tuple[int, int], inner: tuple[float, float, float, float]) -> Light:
    """Average what lies in a box (left, top, right, bottom) of one plane of light over boxes."""
    if plane.shape == shape:
        return plane
    rows, columns = shape
    reduced = Image.fromarray(plane).resize((columns, rows), Image.Resampling.BOX, box=inner)
    return np.asarray(reduced, dtype=np.float32)
