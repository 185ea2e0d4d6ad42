"""The grey reference: what a known grey in the frame says of the light, and how it puts it right.

The grey is made neutral and as light as it is known to be, by one factor for each of linear red,
green and blue. That cancels the light and the camera's own balancing, as far as three factors can.

How far the colours of a photo can then be trusted was measured on real phone photos of a 24-patch
chart before the project began: with one grey patch as reference the chromatic patches came out at
a median of 4 to 7 CIEDE2000 from their published values, and at 14 to 15 without. The middles of
these ranges are used. A colour's uncertainty is taken to be the same in every direction of CIELAB,
and a step of CIELAB to be one of CIEDE2000, which overstates it for strong colours.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_xyz, linear_srgb_to_lab
from swatchwright.errors import MendableError
from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.photo.image import Photo, require_inside
from swatchwright.photo.light import cct_mccamy, chromaticity
from swatchwright.photo.origin import NO_REFERENCE, chips_origin, grey_origin
from swatchwright.values import Covariance, Rect, isotropic

if TYPE_CHECKING:
    from collections.abc import Mapping


__all__ = [
    "GREY_CARD",
    "REFLECTANCES",
    "WHITE_PAPER",
    "Balance",
    "apply",
    "balance_from_chips",
    "balance_from_grey",
    "no_reference",
    "reflectance_from_lightness",
    "require_light",
    "require_one_colour",
    "require_reflectance",
    "require_unclipped",
    "usable_pixels",
]

GREY_CARD = 0.18
"""Reflectance of the common grey card (common practice; no standard binds its makers)."""

WHITE_PAPER = 0.90
"""Reflectance of white paper with no brightener (common practice, no source)."""

REFLECTANCES: Mapping[str, float] = MappingProxyType(
    {"grey card, 18 %": GREY_CARD, "white paper, 90 %": WHITE_PAPER}
)
"""The references offered, the default first."""

LEAST_REFLECTANCE = 0.02

_MEDIAN_WITH_GREY = 5.5
_MEDIAN_WITHOUT = 14.5

_COST_OF_NONE = mark(
    "With no grey in the photo the colours are typically 14 to 15 CIEDE2000 off, and 4 to 7 with"
    " one: lay a grey card beside the cloth and photograph it again."
)

_FEWEST_PIXELS = 16
_CLIPPED_FROM = 252
_MOST_CLIPPED = 0.02
_DARKEST = 0.01
_UNEVEN = 0.15
_NOT_ONE_GREY = 0.60
_STRONG_CAST = 2.5
_VERY_WARM = 3300.0

_CHANNELS = (
    mark_in("light of a channel", "red"),
    mark_in("light of a channel", "green"),
    mark_in("light of a channel", "blue"),
)

Light = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Balance:
    """What puts the light of a photo right.

    Parameters
    ----------
    gains
        Factors of linear red, green and blue (sRGB).
    reference
        What it was taken from, in English words; `origin_words` says them.
    reflectance
        Reflectance of the reference, 0-1; None if there was none.
    light_xy
        CIE 1931 x, y of the light as the file shows it, that is after the camera's own balancing;
        None if there was no reference.
    cct
        Its correlated colour temperature in kelvin, 2 000 to 12 500; None beyond that, where it
        has no meaning, or with no reference.
    notes
        What is worth knowing of the reference, in sentences a painter reads.
    warnings
        Signs that the reference or its light is not what it should be, likewise.
    covariance
        Uncertainty of a colour of the balanced photo, in squared Lab units.
    """

    gains: tuple[float, float, float]
    reference: str
    reflectance: float | None
    light_xy: tuple[float, float] | None
    cct: float | None
    notes: tuple[str, ...]
    covariance: Covariance
    warnings: tuple[str, ...] = ()

    def lab_of(self, light: object, x: object, y: object) -> NDArray[np.float64]:
        """Read the CIELAB of linear sRGB, shape (n, 3), the same wherever it was seen."""
        del x, y
        balanced = np.asarray(light, dtype=np.float64) * np.asarray(self.gains)
        return np.asarray(linear_srgb_to_lab(balanced))

    def covariance_at(self, light: object, x: object, y: object) -> Covariance:
        """Give the uncertainty of a colour: the usual one of a phone's photo."""
        del light, x, y
        return self.covariance


def balance_from_grey(photo: Photo, rect: Rect, reflectance: float = GREY_CARD) -> Balance:
    """Balance a photo by a grey in it.

    Parameters
    ----------
    photo
        The photo.
    rect
        Where the grey is.
    reflectance
        Its reflectance, 0.02 to 1.

    Raises
    ------
    MendableError
        If the rectangle does not lie in the photo or holds no usable grey, or the reflectance is
        out of range.
    """
    require_reflectance(reflectance)
    light = _grey_pixels(photo, rect)
    low, middle, high = np.percentile(light, (25, 50, 75), axis=0)
    require_light(middle)
    spread = float(np.max((high - low) / middle))
    require_one_colour(spread)
    x, y = chromaticity(middle)
    cct = cct_mccamy(x, y)
    red, green, blue = (float(reflectance / m) for m in middle)
    return Balance(
        gains=(red, green, blue),
        reference=grey_origin(rect, reflectance),
        reflectance=float(reflectance),
        light_xy=(x, y),
        cct=cct,
        notes=_doubts_of_reference(reflectance),
        covariance=isotropic(_MEDIAN_WITH_GREY),
        warnings=(*_doubts_of_light(middle, cct), *_doubts_of_evenness(spread)),
    )


def balance_from_chips(seen: NDArray[np.float64], known: NDArray[np.float64]) -> Balance:
    """Balance a photo by chips of known colour, where it has no grey.

    Parameters
    ----------
    seen, known
        Linear sRGB of the photo and of the chips, shape (n, 3), n >= 1. The gain of a channel is
        that which does best for all of them, in proportion to their light.
    """
    light = np.maximum(seen, 1e-4)
    gains = np.sum(np.maximum(known, 1e-4) * light, axis=0) / np.sum(light**2, axis=0)
    x, y = chromaticity(1 / gains)
    return Balance(
        gains=(float(gains[0]), float(gains[1]), float(gains[2])),
        reference=chips_origin(len(seen)),
        reflectance=None,
        light_xy=(x, y),
        cct=cct_mccamy(x, y),
        notes=(),
        covariance=isotropic(_MEDIAN_WITH_GREY),
    )


def no_reference() -> Balance:
    """Take the photo as the camera balanced it, at the price of a wide uncertainty."""
    return Balance(
        gains=(1.0, 1.0, 1.0),
        reference=NO_REFERENCE,
        reflectance=None,
        light_xy=None,
        cct=None,
        notes=(say(_COST_OF_NONE),),
        covariance=isotropic(_MEDIAN_WITHOUT),
    )


def apply(balance: Balance, linear: Light) -> Light:
    """Balance linear sRGB; shape (..., 3), neither clipped before nor after."""
    return np.asarray(linear * np.asarray(balance.gains, dtype=np.float32), dtype=np.float32)


def reflectance_from_lightness(L: float) -> float:
    """Give the reflectance, 0-1, of a grey whose L* is printed on it.

    >>> round(reflectance_from_lightness(49.4961), 4)
    0.18

    Raises
    ------
    MendableError
        If L* is not from 16 to 100, which are reflectances of 0.02 to 1.
    """
    if not (isfinite(L) and 16 <= L <= 100):
        raise MendableError(
            say("A grey reference cannot have an L* of {L:g}.", L=L),
            say("Enter the L* printed on it, 16 to 100."),
        )
    return float(lab_to_xyz((L, 0.0, 0.0))[1])


def require_reflectance(reflectance: float) -> None:
    """Refuse a reflectance that no reference has.

    Raises
    ------
    MendableError
        If it is not from 0.02 to 1.
    """
    if isfinite(reflectance) and LEAST_REFLECTANCE <= reflectance <= 1:
        return
    raise MendableError(
        say(
            "A grey reference cannot reflect {percent:g} % of the light.", percent=100 * reflectance
        ),
        say("Enter a figure from 2 to 100 %: 18 for a grey card, 90 for white paper."),
    )


def _grey_pixels(photo: Photo, rect: Rect) -> Light:
    """Give the light of the grey, shape (pixels, 3), refusing too few pixels and clipped ones."""
    require_inside(photo, rect, say("The mark of the grey reference"))
    light = usable_pixels(photo, rect)
    require_unclipped(photo, rect)
    return light


def usable_pixels(photo: Photo, rect: Rect, what: str = "") -> Light:
    """Give the light of the opaque pixels of a mark, shape (pixels, 3).

    Raises
    ------
    MendableError
        If they are fewer than 16.
    """
    opaque = photo.cut_opaque(rect)
    count = int(opaque.sum())
    if count < _FEWEST_PIXELS:
        raise MendableError(
            say(
                "The mark of {reference} holds only {count} pixels that can be used.",
                reference=_inside(what),
                count=count,
            ),
            say(
                "Draw it larger: {fewest} pixels are the least, hundreds are better.",
                fewest=_FEWEST_PIXELS,
            ),
        )
    return photo.linear(rect)[opaque]


def require_unclipped(photo: Photo, rect: Rect, what: str = "") -> None:
    """Refuse a mark whose pixels are at the top of a channel.

    Raises
    ------
    MendableError
        If more than 2 % are.
    """
    opaque = photo.cut_opaque(rect)
    clipped = float(np.mean(np.any(photo.cut(rect)[opaque] >= _CLIPPED_FROM, axis=1)))
    if clipped > _MOST_CLIPPED:
        raise MendableError(
            say(
                "{reference} is overexposed: {percent:.0f} % of its pixels are at the top"
                " of a channel, so its colour is lost.",
                reference=_named(what),
                percent=100 * clipped,
            ),
            say("Expose less, or turn the card out of the glare, and photograph it again."),
        )


def require_light(
    middle: NDArray[np.floating[Any]], what: str = "", least: float = _DARKEST
) -> None:
    """Refuse a mark with too little light, as a whole or in one channel.

    Raises
    ------
    MendableError
        If a channel of its middle, shape (3,), is below the least.
    """
    if middle.min() >= least:
        return
    if middle.max() < least:
        raise MendableError(
            say(
                "{reference} is nearly black: {percent:.1f} % of white.",
                reference=_named(what),
                percent=100 * float(middle.max()),
            ),
            say("Expose more or use more light, and photograph it again."),
        )
    missing = _CHANNELS[int(middle.argmin())]
    raise MendableError(
        say(
            "There is hardly any {channel} in the mark of {reference}.",
            channel=say_in("light of a channel", missing),
            reference=_inside(what),
        ),
        say("See that the mark lies on the card; if it does, photograph it again in daylight."),
    )


def require_one_colour(spread: float, what: str = "") -> None:
    """Refuse a mark the middle half of whose pixels spreads over more than 60 % of its light.

    Raises
    ------
    MendableError
        If it does: it lies on two things.
    """
    if spread > _NOT_ONE_GREY:
        percent = 100 * spread
        raise MendableError(
            say(
                "{reference} is not of one colour: the middle half of its pixels spreads over"
                " {percent:.0f} %.",
                reference=what,
                percent=percent,
            )
            if what
            else say(
                "The mark is not on one grey: the middle half of its pixels spreads over"
                " {percent:.0f} %.",
                percent=percent,
            ),
            say("Draw it smaller, wholly inside the card and clear of shadows and print."),
        )


def _inside(what: str) -> str:
    """Give a subject as it stands within a sentence."""
    named = _named(what)
    return named[:1].lower() + named[1:]


def _named(what: str) -> str:
    """Give a subject, which is the grey reference where nobody said."""
    return what or say("The grey reference")


def _doubts_of_reference(reflectance: float) -> tuple[str, ...]:
    """Say what is doubtful about the reference itself."""
    if abs(reflectance - WHITE_PAPER) < 0.05:
        return (
            say(
                "Office paper is often brightened: it glows bluish in daylight, which turns the"
                " whole picture yellow. A grey card is safer."
            ),
        )
    if abs(reflectance - GREY_CARD) < 0.001:
        return (
            say(
                "Grey cards differ, for no standard binds their makers: if yours has its own"
                " figure printed on it, enter that."
            ),
        )
    return ()


def _doubts_of_light(middle: NDArray[np.float64], cct: float | None) -> tuple[str, ...]:
    """Say what is doubtful about the light on the reference."""
    ratio = float(middle.max() / middle.min())
    if ratio <= _STRONG_CAST and (cct is None or cct >= _VERY_WARM):
        return ()
    kind = say("very warm") if middle[0] > middle[2] else say("strongly coloured")
    return (
        say(
            "The light on the reference is {kind}: one grey puts such light right only in part."
            " See that the mark lies on the card, and take the photo in daylight if you can.",
            kind=kind,
        ),
    )


def _doubts_of_evenness(spread: float) -> tuple[str, ...]:
    """Say whether the reference is unevenly lit or noisy."""
    if spread <= _UNEVEN:
        return ()
    return (
        say(
            "The reference is not even: the middle half of its pixels spreads over"
            " {percent:.0f} %. A shadow, glare or print on it may shift every colour.",
            percent=100 * spread,
        ),
    )
