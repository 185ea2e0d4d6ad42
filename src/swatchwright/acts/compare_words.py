"""A mix beside the wanted colour, told in words that need no eye for colour."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from swatchwright.acts.compare_values import Sight, State, WantedSight
from swatchwright.colour.convert import in_srgb
from swatchwright.colour.difference import ACCEPTED, ANOTHER, JUST_SEEN, PLAIN
from swatchwright.colour.names import closeness, closeness_between, colour_name, off_words
from swatchwright.colour.spectrum import Light
from swatchwright.language import listed, mark, say, say_count
from swatchwright.values import Lab

__all__ = [
    "LIGHT_WORDS",
    "STATE_WORDS",
    "drift_words",
    "figure_words",
    "light_notes",
    "light_of_word",
    "light_word",
    "near_words",
    "seen_name",
    "shown_words",
    "sight_words",
    "state_word",
    "turn_words",
    "usual_words",
    "way_words",
]

LIGHT_WORDS = {
    Light.D65: mark("daylight"),
    Light.LAMP: mark("warm lamp"),
    Light.WARM_LED: mark("warm LED"),
    Light.COOL_LED: mark("cool LED"),
    Light.TUBE: mark("tube"),
}

STATE_WORDS = {state: state.value for state in State}
"""The words for lights and states, in English: `light_word` and `state_word` say them."""

_ADAPTED = mark(
    "Under another light all is shown as an eye sees it that has got used to that light: a grey "
    "stays grey."
)
_NOT_KNOWN = mark(
    "What dyes the cloth holds nobody can tell from a photo, so under another light a range is "
    "told: of all cloths that may look so in daylight, eight in ten lie within it."
)

# CIEDE2000 up to which a pair has changed so much between lights, which no one sees side by side:
# the limits are those of the one scale, the words are of a change.
_LITTLE, _PLAINLY = mark("drifts a little"), mark("drifts plainly")
_DRIFTS = ((JUST_SEEN, mark("holds")), (ACCEPTED, _LITTLE), (PLAIN, _PLAINLY))
_PARTS = mark("parts from it")


def light_notes(lights: Sequence[Light]) -> tuple[str, ...]:
    """Say what was assumed of other lights than daylight, if there are any."""
    return (say(_ADAPTED), say(_NOT_KNOWN)) if set(lights) - {Light.D65} else ()


def light_word(light: Light) -> str:
    """Say what a light is."""
    return say(LIGHT_WORDS[light])


def state_word(state: State) -> str:
    """Say what a state is."""
    return say(STATE_WORDS[state])


def light_of_word(word: str) -> Light | None:
    """Give the light of a word such as “warm-lamp”; None if there is none such."""
    told = word.strip().lower().replace("-", " ")
    return next((light for light, name in LIGHT_WORDS.items() if name.lower() == told), None)


def near_words(sight: Sight) -> str:
    """Say how near a mix is: in a word where that is known, else between which two it may be."""
    least, most = closeness(sight.least), closeness(sight.most)
    if least == most:
        return most
    return say("it could be anything from “{least}” to “{most}”", least=least, most=most)


def way_words(sight: Sight) -> str:
    """Say which way a mix differs from what is wanted; empty where that is not to be seen."""
    ways = listed(sight.ways)
    return ways if sight.ways_sure or not ways else say("perhaps {ways}", ways=ways)


def sight_words(sight: Sight) -> str:
    """Say how near it is, and which way it differs."""
    way = way_words(sight)
    near = near_words(sight)
    return say("{near}; {way}", near=near, way=way) if way else near


def drift_words(sight: Sight) -> str:
    """Say how a mix goes with the cloth from daylight to this light; empty in daylight."""
    if sight.light is Light.D65:
        return ""
    if sight.delta_e > ANOTHER:
        return say("stays another colour")
    usual, most = _drift(sight.drift), _drift(sight.drift_most)
    if usual == most:
        return say(usual)
    if (usual, most) == (_LITTLE, _PLAINLY):
        return say("drifts a little, perhaps plainly")
    return say("{usual}, perhaps {most}", usual=say(usual), most=say(most))


def _drift(delta_e: float) -> str:
    return next((words for limit, words in _DRIFTS if delta_e <= limit), _PARTS)


def turn_words(sight: WantedSight) -> str:
    """Say how the wanted colour itself looks otherwise under a light; empty if it does not."""
    return listed(sight.turns)


def figure_words(sight: Sight) -> str:
    """Give the difference in CIEDE2000 with its word: a range where it is not known."""
    if sight.most - sight.least < 0.05:
        return off_words(sight.most)
    return say(
        "{least:.1f} to {most:.1f} off: {seen}",
        least=sight.least,
        most=sight.most,
        seen=closeness_between(sight.least, sight.most),
    )


def usual_words(sight: Sight) -> str:
    """Say how far from the cloth it will usually be, untried; empty where nothing is in doubt."""
    if sight.usual < 0.5:
        return ""
    usual = ceil(sight.usual)
    return say(
        "usually within {usual} of the cloth, untried ({seen})", usual=usual, seen=closeness(usual)
    )


def shown_words(labs: Sequence[Lab]) -> str:
    """Say that colours cannot be shown as they are; empty where they can."""
    out = sum(not in_srgb(lab) for lab in labs)
    if not out:
        return ""
    return say_count(
        "One colour is more vivid than a screen can show; the nearest is shown, marked “about”.",
        "{count} colours are more vivid than a screen can show; the nearest is shown, marked "
        "“about”.",
        out,
    )


def seen_name(lab: Lab) -> str:
    """Name a colour plainly, “about” where no screen shows it."""
    name = colour_name(lab)
    return name if in_srgb(lab) else say("about {colour}", colour=name)
