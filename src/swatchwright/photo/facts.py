"""What is known of the file that a photo came from."""

from __future__ import annotations

from dataclasses import dataclass

from swatchwright.language import say

__all__ = ["FileFacts"]


@dataclass(frozen=True, slots=True)
class FileFacts:
    """What is known of the file that a photo came from.

    Parameters
    ----------
    name
        Name of the file without its folder.
    format
        JPEG, MPO, PNG, TIFF, WEBP, HEIC, AVIF or RAW, found from the content.
    width, height
        Size in pixels, upright.
    profile
        The colour profile in words.
    bytes
        Size of the file.
    notes
        What was assumed while reading, in sentences a painter reads.
    bits
        Bits of a channel, as far as they were read.
    linear
        Whether the numbers in the file are in proportion to the light that fell on the camera, as
        in a raw file.
    tone_mapped
        Whether a camera has shaped light and dark for the eye: true for what it saved ready to
        look at, false for a raw file, None where the file does not say where it comes from.
    gain_map
        Whether the file also holds what HDR screens brighten the picture with; it is not used.
    portrait
        Whether it was taken in a mode that blurs and retouches the background.
    """

    name: str
    format: str
    width: int
    height: int
    profile: str
    bytes: int
    notes: tuple[str, ...]
    bits: int = 8
    linear: bool = False
    tone_mapped: bool | None = None
    gain_map: bool = False
    portrait: bool = False

    @property
    def words(self) -> str:
        """What the file is, in a line: kind, size, depth, profile, and what the camera did.

        >>> FileFacts("a.dng", "RAW", 4000, 3000, "the camera's own", 9, (), 16, True, False).words
        "RAW, 4000 × 3000, 16 bits, the camera's own, linear light"
        """
        bits = say("{bits} bits", bits=self.bits)
        parts = [self.format, f"{self.width} × {self.height}", bits, self.profile]
        if self.linear:
            parts.append(say("linear light"))
        if self.tone_mapped:
            parts.append(say("tones shaped by the camera"))
        return ", ".join(parts)
