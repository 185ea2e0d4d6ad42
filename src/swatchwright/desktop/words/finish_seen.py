"""The words of how a finish is seen: wet or dry, in which light, and how far to trust it."""

from __future__ import annotations

from math import hypot

from swatchwright.acts.finish_values import Look, StepLook
from swatchwright.colour.difference import JUST_SEEN, PLAIN
from swatchwright.colour.names import closeness, colour_name
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words.compare import LIGHT_TIPS, LIGHTS, UNDER
from swatchwright.desktop.words.finish import WANTED
from swatchwright.language import say, say_in

__all__ = [
    "DRY_IN",
    "OF_ROOM_TIP",
    "WET",
    "WET_TIP",
    "doubt_line",
    "light_tip",
    "of_room",
    "result_line",
    "seen_word",
    "wanted_word",
]

DRY_IN = say_in("before a light", "Seen dry, in")
OF_ROOM_TIP = say("As the page Job names it; what you choose here is kept with the job")
WET = say("Wet, daylight")
WET_TIP = say("While the last layer is wet, on the whole")
_DAYLIGHT_TIP = say("Flats, the whole, and grain and mouldings, where a wash stays thicker")

# CIEDE2000 below which a doubt is not told.
_KNOWN = 0.5


def of_room(light: Light) -> str:
    """Say that a light is that of the room."""
    return say("{light}: the light of the room", light=LIGHTS[light])


def light_tip(light: Light) -> str:
    """Tell of a light, and how a piece is shown in it."""
    if light is Light.D65:
        return say("{light}. {shown}", light=LIGHT_TIPS[light], shown=_DAYLIGHT_TIP)
    return say("{light}: as an eye used to it sees it, on the whole", light=LIGHT_TIPS[light])


def seen_word(light: Light | None) -> str:
    """Say how it is seen: wet, or dry in a light."""
    return WET if light is None else say("Dry, {under}", under=UNDER[light])


def wanted_word(light: Light | None) -> str:
    """Name the wanted colour as it is shown."""
    if light is None or light is Light.D65:
        return WANTED
    return say("wanted, as the cloth may look {under}", under=UNDER[light])


def result_line(look: Look, light: Light | None, photo: float) -> str:
    """Say in a sentence what comes of it all as it is seen, and how far to trust it.

    Parameters
    ----------
    look
        The steps.
    light
        The light that it is seen in, dry; None for wet, in daylight.
    photo
        How far the wanted colour usually is from the cloth, CIEDE2000.
    """
    last = look.steps[-1]
    # How far a wet look may be off is not known, and it is not what stays.
    told = (_result(last, light), "" if light is None else doubt_line(last.doubt, photo))
    return " ".join(text for text in told if text)


def _result(last: StepLook, light: Light | None) -> str:
    """Say what colour comes of it."""
    if light is None:
        return say("While it is wet it is {colour}.", colour=colour_name(last.wet))
    colour, under = colour_name(last.under(light)), UNDER[light]
    if last.layer is None:
        return say("The bare mix is {colour} {under}.", colour=colour, under=under)
    if light is Light.D65:
        colour = _with_grain(colour, last.grain_range)
        return say("With all layers dry it is {colour}.", colour=colour)
    return say(
        "With all layers dry it is {colour} {under}.",
        colour=colour,
        under=under,
    )


def doubt_line(own: float, photo: float) -> str:
    """Say how far the mix and its layers land from what is shown, and all of it from the cloth.

    The photo does not move the paint: it moves what the paint was mixed for. As independent
    errors the two add up as the root of the sum of their squares.
    """
    both = hypot(own, photo)
    if photo < _KNOWN:
        return _own_doubt(own)
    if own < _KNOWN:
        return say(
            "The photo may have the cloth wrong: reckon with about {both:.0f} beside it ({seen}).",
            both=both,
            seen=closeness(round(both)),
        )
    return say(
        "Mix and layers usually dry within about {own:.0f} of this ({seen}); the photo may have "
        "the cloth wrong too, so beside the cloth reckon with about {both:.0f} in all ({in_all}).",
        own=max(own, 1.0),
        seen=closeness(round(max(own, 1.0))),
        both=both,
        in_all=closeness(round(both)),
    )


def _own_doubt(own: float) -> str:
    if own < _KNOWN:
        return ""
    return say(
        "Mix and layers usually dry within about {own:.0f} of this ({seen}).",
        own=max(own, 1.0),
        seen=closeness(round(max(own, 1.0))),
    )


def _with_grain(colour: str, apart: float) -> str:
    """Say of a colour how it differs in the grain, where that is seen."""
    if apart < JUST_SEEN:
        return colour
    if apart <= PLAIN:
        return say("{colour}, a little livelier in the grain", colour=colour)
    return say("{colour}, clearly stronger in the grain", colour=colour)
