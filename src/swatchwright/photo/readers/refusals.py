"""What is refused of a picture whose header can be read, each in its own words."""

from __future__ import annotations

from swatchwright.errors import MendableError
from swatchwright.language import say

__all__ = [
    "MOST_PIXELS",
    "SMALLEST_SIDE",
    "refuse_mode",
    "refuse_size",
    "several_pictures",
    "too_many_pixels",
]

MOST_PIXELS = 100_000_000
"""Most pixels that are decoded: twice what the phones of today save."""

SMALLEST_SIDE = 8
"""Fewest pixels of a side; less is an icon and holds no cloth."""

_GREYS = frozenset({"1", "L", "LA", "La", "I", "F"})


def too_many_pixels(name: str) -> MendableError:
    """Say that a picture is too large."""
    return MendableError(
        say(
            "“{name}” says it has more than {most} million pixels.",
            name=name,
            most=MOST_PIXELS // 10**6,
        ),
        say("Export it smaller: 12 million are plenty."),
    )


def refuse_size(width: int, height: int, name: str) -> None:
    """Refuse a picture that is too large or too small.

    Raises
    ------
    MendableError
        If it is.
    """
    if width * height > MOST_PIXELS:
        raise too_many_pixels(name)
    if min(width, height) < SMALLEST_SIDE:
        raise MendableError(
            say(
                "“{name}” is only {width} × {height} pixels.", name=name, width=width, height=height
            ),
            say("Choose a photo of at least {least} × {least}.", least=SMALLEST_SIDE),
        )


def refuse_mode(mode: str, name: str) -> None:
    """Refuse a picture that is not red, green and blue, by Pillow's word for what it is.

    Raises
    ------
    MendableError
        If it is in inks, in CIELAB, or without colour.
    """
    if mode == "CMYK":
        raise MendableError(
            say(
                "“{name}” is in printing inks (CMYK), which differ from press to press.", name=name
            ),
            say("Export it as RGB, best with an sRGB profile."),
        )
    if mode == "LAB":
        raise MendableError(
            say("“{name}” holds CIELAB values instead of red, green and blue.", name=name),
            say("Export it as an RGB JPEG, PNG or TIFF."),
        )
    if mode in _GREYS or mode.startswith(("I;", "L;", "LA;", "La;")):
        raise MendableError(
            say("“{name}” is a black-and-white picture, which holds no colour.", name=name),
            say("Choose a colour photo."),
        )


def several_pictures(name: str, count: int, kind: str) -> MendableError:
    """Say that a file holds several pictures and not one photo; kind is said, as in "pages"."""
    return MendableError(
        say(
            "“{name}” holds {count} {kind} instead of one photo.", name=name, count=count, kind=kind
        ),
        say("Export the one you mean as a JPEG or PNG."),
    )
