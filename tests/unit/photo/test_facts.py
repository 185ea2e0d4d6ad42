"""What a file is, in a line."""

from __future__ import annotations

from swatchwright.photo.facts import FileFacts


def test_the_words_hold_what_matters() -> None:
    """Kind, size, depth and profile are always told; light and shaping where they are known."""
    plain = FileFacts("a.jpg", "JPEG", 40, 30, "sRGB", 9, ())
    assert plain.words == "JPEG, 40 × 30, 8 bits, sRGB"
    shaped = FileFacts("a.jpg", "JPEG", 40, 30, "sRGB", 9, (), tone_mapped=True)
    assert shaped.words == "JPEG, 40 × 30, 8 bits, sRGB, tones shaped by the camera"
    raw = FileFacts("a.dng", "RAW", 40, 30, "own", 9, (), 14, linear=True, tone_mapped=False)
    assert raw.words == "RAW, 40 × 30, 14 bits, own, linear light"
