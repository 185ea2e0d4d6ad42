"""What a client asks for in words, as a colour: a third less vivid, a little lighter, warmer."""

from __future__ import annotations

from enum import StrEnum
from math import cos, isfinite, radians, sin

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.values import Lab

__all__ = ["Asked", "asked_for"]


class Asked(StrEnum):
    """A direction in which a client wants a colour moved."""

    LIGHTER = mark("lighter")
    DARKER = mark("darker")
    LESS_VIVID = mark("less vivid")
    MORE_VIVID = mark("more vivid")
    WARMER = mark("warmer")
    COOLER = mark("cooler")
    REDDER = mark("redder")
    GREENER = mark("greener")
    YELLOWER = mark("yellower")
    BLUER = mark("bluer")


# Hue angle that most people call warmest, and how far the whole dial goes, in CIELAB units.
# Common practice, no source.
_WARMEST = 50.0
_WHOLE = 20.0

_AXES = {
    Asked.WARMER: _WARMEST,
    Asked.COOLER: _WARMEST + 180,
    Asked.REDDER: 0.0,
    Asked.YELLOWER: 90.0,
    Asked.GREENER: 180.0,
    Asked.BLUER: 270.0,
}


def asked_for(colour: Lab, word: Asked, dial: float) -> Lab:
    """Move a colour as a client asks.

    Parameters
    ----------
    colour
        The colour as it is.
    word
        The direction.
    dial
        0 for not at all to 1 for all the way: no chroma or twice as much, white or black, 20
        units warmer, redder and so on.

    Raises
    ------
    MendableError
        If the dial is not between 0 and 1.

    Examples
    --------
    >>> asked_for(Lab(50, 30, 0), Asked.LESS_VIVID, 1 / 3)
    Lab(L=50, a=20.0, b=0.0)
    """
    if not (isfinite(dial) and 0 <= dial <= 1):
        raise MendableError(
            say("The dial stands at {dial:g}.", dial=dial), say("Set it between 0 and 1.")
        )
    L, a, b = colour.triple
    if word is Asked.LIGHTER:
        return Lab(L + dial * (100 - L), a, b)
    if word is Asked.DARKER:
        return Lab(L * (1 - dial), a, b)
    if word in {Asked.LESS_VIVID, Asked.MORE_VIVID}:
        scale = 1 - dial if word is Asked.LESS_VIVID else 1 + dial
        return Lab(L, round(a * scale, 9), round(b * scale, 9))
    turn = radians(_AXES[word])
    return Lab(L, a + dial * _WHOLE * cos(turn), b + dial * _WHOLE * sin(turn))
