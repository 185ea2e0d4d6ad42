"""A photo as a value: the bytes of the file, upright, with the way back to linear light.

The bytes are kept, not the light: 12 megapixels are 36 MB as they are and 144 MB as float32.
Light is made for the part that is asked for.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from swatchwright.colour.convert import srgb_decode, srgb_encode
from swatchwright.errors import MendableError

if TYPE_CHECKING:
    from swatchwright.values import Rect

__all__ = ["Decoding", "FileFacts", "Photo", "require_inside", "srgb_decoding"]

Bytes = NDArray[np.uint8]
Light = NDArray[np.float32]

_BEHIND = 0.18
"""Linear light shown where a picture is transparent: a middle grey pleads for no colour."""


@dataclass(frozen=True, slots=True, eq=False)
class Decoding:
    """The way from the bytes of a file to light.

    Parameters
    ----------
    curves
        Shape (3, 256): linear light, 0-1, of each byte of the red, green and blue channel.
    matrix
        Shape (3, 3): from the linear light of the file's own primaries to linear sRGB (D65).
        Not clipped: a colour outside sRGB comes out below 0 or above 1.
    """

    curves: Light
    matrix: NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class FileFacts:
    """What is known of the file that a photo came from.

    Parameters
    ----------
    name
        Name of the file without its folder.
    format
        JPEG, MPO, PNG, TIFF or WEBP, found from the content.
    width, height
        Size in pixels, upright.
    profile
        The colour profile in words.
    bytes
        Size of the file.
    notes
        What was assumed while reading, in sentences a painter reads.
    """

    name: str
    format: str
    width: int
    height: int
    profile: str
    bytes: int
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Photo:
    """A photo, upright.

    Parameters
    ----------
    encoded
        Shape (height, width, 3): the bytes of the file.
    opaque
        Shape (height, width): where the picture is not transparent; None if it is nowhere.
    decoding
        The way from the bytes to light.
    facts
        What is known of the file.
    """

    encoded: Bytes
    opaque: NDArray[np.bool_] | None
    decoding: Decoding
    facts: FileFacts

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
        return self.light_of(self.cut(rect, step))

    def light_of(self, encoded: Bytes) -> Light:
        """Decode bytes of the photo, shape (..., 3), to linear sRGB of the same shape."""
        light = np.empty(encoded.shape, dtype=np.float32)
        for channel in range(3):
            light[..., channel] = self.decoding.curves[channel][encoded[..., channel]]
        return self._to_srgb(light)

    def cut(self, rect: Rect | None = None, step: int = 1) -> Bytes:
        """Give the bytes of a part of the photo, as a view; arguments as in `linear`."""
        if rect is None:
            return self.encoded[::step, ::step]
        require_inside(self, rect, "The rectangle")
        return self.encoded[rect.y : rect.bottom : step, rect.x : rect.right : step]

    def cut_opaque(self, rect: Rect | None = None, step: int = 1) -> NDArray[np.bool_]:
        """Tell of each pixel that `cut` gives whether the picture is opaque there."""
        if self.opaque is None:
            return np.ones(self.cut(rect, step).shape[:2], dtype=np.bool_)
        if rect is None:
            return self.opaque[::step, ::step]
        require_inside(self, rect, "The rectangle")
        return self.opaque[rect.y : rect.bottom : step, rect.x : rect.right : step]

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
        light = np.empty((rows, columns, 3), dtype=np.float32)
        for channel in range(3):
            plane = self.decoding.curves[channel][self.encoded[..., channel]]
            light[..., channel] = _box(plane, rows, columns)
        light = self._to_srgb(light) * np.asarray(gains, dtype=np.float32)
        if self.opaque is not None:
            cover = _box(self.opaque.astype(np.float32), rows, columns)[..., np.newaxis]
            light = light * cover + np.float32(_BEHIND) * (1 - cover)
        return _ENCODE[(np.clip(light, 0, 1) * _STEPS + 0.5).astype(np.uint16)]

    def _to_srgb(self, light: Light) -> Light:
        """Take light of the file's primaries to linear sRGB."""
        matrix = self.decoding.matrix
        if np.array_equal(matrix, np.eye(3)):
            return light
        return light @ matrix.T.astype(np.float32)


def srgb_decoding() -> Decoding:
    """Give the decoding of a file that is sRGB (IEC 61966-2-1)."""
    curve = srgb_decode(np.arange(256) / 255).astype(np.float32)
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
        f"{what} at {rect.x}, {rect.y} ({rect.width} × {rect.height} pixels) does not lie in the"
        f" photo, which is {photo.width} × {photo.height} pixels.",
        "Draw it inside the photo.",
    )


_STEPS = 65535
_ENCODE = np.rint(srgb_encode(np.arange(_STEPS + 1) / _STEPS) * 255).astype(np.uint8)
"""The sRGB byte of linear light in 65 536 steps: 20 times finer than a byte even in the blacks."""


def _fitted(height: int, width: int, longest: int) -> tuple[int, int]:
    """Give rows and columns of a picture whose longer side is at most so long."""
    scale = min(1.0, longest / max(height, width))
    return max(1, round(height * scale)), max(1, round(width * scale))


def _box(plane: Light, rows: int, columns: int) -> Light:
    """Average one plane of light over boxes."""
    if plane.shape == (rows, columns):
        return plane
    reduced = Image.fromarray(plane).resize((columns, rows), Image.Resampling.BOX)
    return np.asarray(reduced, dtype=np.float32)
