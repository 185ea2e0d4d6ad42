"""Where a colour came from: kept in English with the colour, said in the painter's language.

A job keeps the origin of its colours as a sentence. So that it reads the same whoever opens it, and
a script finds the same words everywhere, it is made and kept in English; when it is shown, its
parts are known again by what they are made of.
"""

from __future__ import annotations

import re
from string import Formatter
from typing import TYPE_CHECKING

from swatchwright.language import listed, mark, say, say_count

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from swatchwright.values import Rect

__all__ = [
    "NO_REFERENCE",
    "chips_origin",
    "grey_origin",
    "origin_words",
    "photo_origin",
    "references_origin",
]

NO_REFERENCE = mark("none: the colours are as the camera balanced them")

_GREY = mark("a grey of {percent:g} % at {x}, {y} ({width} × {height} pixels)")
_GREY_ALONE = mark("a grey of {percent:g} %")
_CHIPS, _CHIP = mark("{count} chips of known colour"), mark("a measured chip")
_PHOTO = mark("a colour of the photo; reference: {reference}; {seen}")
_YARN, _METRE = mark("the yarn, seen near to"), mark("seen from a metre")


def grey_origin(rect: Rect, reflectance: float) -> str:
    """Tell of a grey as the only reference, in English.

    >>> from swatchwright.values import Rect
    >>> grey_origin(Rect(10, 20, 30, 25), 0.18)
    'a grey of 18 % at 10, 20 (30 × 25 pixels)'
    """
    place = {"x": rect.x, "y": rect.y, "width": rect.width, "height": rect.height}
    return _GREY.format(percent=100 * reflectance, **place)


def chips_origin(count: int) -> str:
    """Tell of chips as the only references, in English.

    >>> chips_origin(3)
    '3 chips of known colour'
    """
    return _CHIPS.format(count=count) if count > 1 else _CHIP


def references_origin(greys: int, chips: int) -> str:
    """Tell of so many references together, in English.

    >>> references_origin(2, 1)
    '2 greys and 1 measured chip'
    """
    told = [f"{greys} grey{'s' if greys > 1 else ''}"] if greys else []
    if chips:
        told.append(f"{chips} measured chip{'s' if chips > 1 else ''}")
    return " and ".join(told)


def photo_origin(reference: str, *, metre: bool) -> str:
    """Tell of a colour of a photo, in English.

    Parameters
    ----------
    reference
        What its light was put right by, as one of the others here tells it.
    metre
        Whether it is the colour seen from a metre, and not that of the yarn.
    """
    return _PHOTO.format(reference=reference, seen=_METRE if metre else _YARN)


def origin_words(kept: str, *, places: bool = True) -> str:
    """Say where a colour came from, of the English that was kept.

    What was written by hand, or by nobody here, stands as it is.

    Parameters
    ----------
    kept
        What was kept.
    places
        Whether it is told where in the photo a grey lies, in pixels.

    Examples
    --------
    >>> origin_words("2 greys and 1 measured chip")
    '2 greys and 1 measured chip'
    """
    photo = _read(_PHOTO, kept)
    if photo:
        reference, seen = photo.values()
        return say(_PHOTO, reference=origin_words(reference, places=places), seen=say(seen))
    grey = _read(_GREY, kept)
    if grey:
        alone = {"percent": float(grey["percent"])}
        return say(_GREY, **grey | alone) if places else say(_GREY_ALONE, **alone)
    chips = _read(_CHIPS, kept)
    if chips:
        return say(_CHIPS, **chips)
    return _counted(kept) or say(kept)


def _counted(kept: str) -> str:
    """Say how many references of each kind there are; empty where something else is told."""
    found = _COUNTED.fullmatch(kept)
    if not found:
        return ""
    said = (told(int(found[kind])) for kind, told in _KINDS.items() if found[kind])
    return listed(said)


def _greys(count: int) -> str:
    return say_count("{count} grey", "{count} greys", count)


def _measured(count: int) -> str:
    return say_count("{count} measured chip", "{count} measured chips", count)


_COUNTED = re.compile(
    r"(?:(?P<greys>\d{1,4}) greys?)?(?: and )?(?:(?P<chips>\d{1,4}) measured chips?)?"
)
_KINDS: Mapping[str, Callable[[int], str]] = {"greys": _greys, "chips": _measured}


_NUMBER = r"\d{1,9}(?:\.\d{1,9})?"
_NUMBERS = frozenset({"count", "height", "percent", "width", "x", "y"})


def _read(form: str, kept: str) -> dict[str, str]:
    """Read what was put into the places of a sentence; empty if it is another sentence."""
    parts = Formatter().parse(form)
    pattern = "".join(
        re.escape(text) + (f"(?P<{name}>{_NUMBER if name in _NUMBERS else '.+'})" if name else "")
        for text, name, _, _ in parts
    )
    found = re.fullmatch(pattern, kept)
    return {} if found is None else found.groupdict()
