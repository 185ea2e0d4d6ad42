"""A difference between colours, told in words."""

from __future__ import annotations

from math import atan2, copysign, cos, degrees, hypot, inf, radians, sin

from swatchwright.colour.difference import (
    ACCEPTED,
    ANOTHER,
    JUST_SEEN,
    PLAIN,
    UNSEEN,
    delta_e_2000,
    delta_e_terms,
)
from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.values import Lab

__all__ = [
    "SCALE",
    "closeness",
    "closeness_between",
    "colour_name",
    "difference_words",
    "off_words",
    "scale_told",
]

# A direction is named once it makes up this much of the whole difference, in CIEDE2000.
_NAMED = 0.35

# Unique hues in CIELAB, degrees (from memory of NCS studies).
_RED, _YELLOW, _GREEN, _BLUE = 25.0, 90.0, 162.0, 246.0
_NOTHING = 1e-9
"""A product of steps of a* or b* that is nothing but the rounding of numbers."""

# The one scale of words: CIEDE2000 up to which each is said. `difference` has the sources.
_BANDS = (
    (UNSEEN, mark("no difference to see")),
    (JUST_SEEN, mark("hardly to be seen")),
    (ACCEPTED, mark("just seen")),
    (PLAIN, mark("seen side by side")),
    (ANOTHER, mark("plain to see")),
    (inf, mark("another colour")),
)

SCALE = mark(
    "How far off one colour is from another, to the eye: half of all people see 0.8 side by side, "
    "and half still accept 1.8. So 1 is just seen, 2 is seen side by side, 5 is plain to see, and "
    "above 6 it is another colour."
)
"""The explanation of the scale, to be said; its figures are those of `closeness`."""

# CIELAB hue angle at which each name ends; common practice, no source.
_HUES = (
    (12.0, mark("pink-red")),
    (48.0, mark("red")),
    (75.0, mark("orange")),
    (102.0, mark("yellow")),
    (128.0, mark("yellow-green")),
    (175.0, mark("green")),
    (215.0, mark("blue-green")),
    (250.0, mark("green-blue")),
    (303.0, mark("blue")),
    (322.0, mark("violet")),
    (345.0, mark("purple")),
    (360.0, mark("pink-red")),
)

# Greyish oranges and yellows have names of their own in every workshop.
_EARTHY = 27.0
_EARTHS = (
    (28.0, mark("very dark brown")),
    (46.0, mark("dark brown")),
    (60.0, mark("mid brown")),
    (72.0, mark("dark beige")),
    (82.0, mark("beige")),
)
_CREAM = mark("cream")
_HUED = "before a hue"
_LIGHTS = (
    (22.0, mark_in("before a hue", "very dark")),
    (42.0, mark_in("before a hue", "dark")),
    (62.0, mark_in("before a hue", "mid")),
    (80.0, mark_in("before a hue", "light")),
)
_PALE = mark_in("before a hue", "pale")
_VIVIDS = (
    (12.0, mark_in("before a hue", "greyish")),
    (30.0, mark_in("before a hue", "muted")),
    (55.0, ""),
)
_VIVID = mark_in("before a hue", "vivid")
_GREYS = (
    (22.0, mark("black")),
    (42.0, mark("dark grey")),
    (62.0, mark("mid grey")),
    (88.0, mark("light grey")),
)
_WHITE = mark("white")


def closeness(delta_e: float) -> str:
    """Say how plainly a CIEDE2000 difference is seen: the one scale of words for all that is told.

    The word goes with the figure as it is told, to a tenth, so that one figure never stands with
    two words.

    >>> closeness(2.1)
    'seen side by side'
    """
    told = round(float(delta_e), 1)
    return say(next(words for limit, words in _BANDS if told <= limit))


def closeness_between(least: float, most: float) -> str:
    """Say how plainly a difference is seen that lies between two.

    >>> closeness_between(1, 4)
    '“just seen” to “plain to see”'
    """
    near, far = closeness(least), closeness(most)
    if near == far:
        return far
    return say("“{least}” to “{most}”", least=near, most=far)


def off_words(delta_e: float) -> str:
    """Tell a CIEDE2000 difference in a figure, with its word.

    >>> off_words(2.14)
    '2.1 off: seen side by side'
    """
    return say("{off:.1f} off: {seen}", off=delta_e, seen=closeness(delta_e))


def scale_told() -> str:
    """Explain the scale in two sentences: by what people see, and by what 1, 2 and 5 look like."""
    return say(SCALE)


def difference_words(start: Lab, end: Lab, *, seen: float = inf) -> tuple[str, ...]:
    """Say in which directions one must go from a colour to another, the largest first.

    Lightness, vividness (chroma) and hue, each weighed by CIEDE2000; for near-greys, whose hue
    is nothing to go by, redder, greener, yellower and bluer instead. Empty where no difference
    can be seen. A direction that is small beside the others is named only from `seen` on.

    Every word has the sign of what it names: redder a larger a*, greener a smaller, yellower a
    larger b*, bluer a smaller. So no word is ever said both of a fault and of its cure, and the
    way back names the same directions.

    >>> difference_words(Lab(40, 0, 0), Lab(60, 0, 0))
    ('lighter',)
    """
    whole = float(delta_e_2000(start.triple, end.triple))
    if whole < UNSEEN:
        return ()
    dL, dC, dH, _ = (float(term) for term in delta_e_terms(start.triple, end.triple))
    sized = [(abs(dL), say("lighter") if end.L > start.L else say("darker"))]
    if _near_grey(start, end):
        sized += _grey_steps(start, end)
    else:
        more = hypot(end.a, end.b) > hypot(start.a, start.b)
        sized += [(abs(dC), say("more vivid") if more else say("greyer"))]
        sized += [(abs(dH), _hue_word(start, end))]
    least = min(max(_NAMED * whole, UNSEEN / 2), seen)
    named = [(size, word) for size, word in sized if size >= least]
    return tuple(word for _, word in sorted(named, key=lambda row: -row[0]))


def _near_grey(start: Lab, end: Lab) -> bool:
    return min(hypot(start.a, start.b), hypot(end.a, end.b)) < 8


def _grey_steps(start: Lab, end: Lab) -> list[tuple[float, str]]:
    """Step along a* and along b*, each about the middle of the two, so that the way back is as far.

    Near the neutral axis a little change of a* or b* is a large turn of hue.
    """
    L, a, b = ((one + two) / 2 for one, two in zip(start.triple, end.triple, strict=True))
    steps = (
        (say("redder") if end.a > start.a else say("greener"), (L, start.a, b), (L, end.a, b)),
        (say("yellower") if end.b > start.b else say("bluer"), (L, a, start.b), (L, a, end.b)),
    )
    return [(float(delta_e_2000(one, two)), word) for word, one, two in steps]


def _hue_word(start: Lab, end: Lab) -> str:
    """Name a turn of hue by a direction of a* or b* in which both it and the whole step go.

    Colours that turn from 35 to 33 degrees turn towards red; but of one that has become so much
    greyer that its a* is smaller nobody says that it is redder: it is bluer. Where both a* and b*
    go with the turn, it is named by the next of the unique hues ahead of its middle: from orange
    on, it grows yellower one way and redder the other.
    """
    begin, finish = (degrees(atan2(lab.b, lab.a)) % 360 for lab in (start, end))
    turn = (finish - begin + 180) % 360 - 180
    middle, way = begin + turn / 2, copysign(1.0, turn)
    along_a, along_b = -sin(radians(middle)) * way, cos(radians(middle)) * way
    with_a, with_b = along_a * (end.a - start.a), along_b * (end.b - start.b)
    by_a = (_RED, say("redder")) if along_a > 0 else (_GREEN, say("greener"))
    by_b = (_YELLOW, say("yellower")) if along_b > 0 else (_BLUE, say("bluer"))
    if min(with_a, with_b) <= _NOTHING:
        return by_a[1] if with_a > with_b else by_b[1]
    return min((way * (hue - middle) % 360, word) for hue, word in (by_a, by_b))[1]


def colour_name(lab: Lab) -> str:
    """Give a plain name: how light, how vivid, and the hue.

    >>> colour_name(Lab(27, 2, -24))
    'dark muted blue'
    """
    C = hypot(lab.a, lab.b)
    if lab.L >= 84 and 2 < C < 9:
        return say("off-white")
    hue = degrees(atan2(lab.b, lab.a)) % 360
    if 4 <= C < _EARTHY and 45 < hue <= 105:
        return say(_first(lab.L, _EARTHS, _CREAM))
    if C < 4:
        return say(_first(lab.L, _GREYS, _WHITE))
    name = next(word for limit, word in _HUES if hue <= limit)
    if name == "orange" and lab.L < 55:
        name = mark("brown")
    # The words before a hue follow its gender in other languages, where all hues share one.
    light = say_in(_HUED, _first(lab.L, _LIGHTS, _PALE))
    vivid = _first(C, _VIVIDS, _VIVID)
    if not vivid:
        return say("{light} {hue}", light=light, hue=say(name))
    vivid = say_in(_HUED, vivid)
    return say("{light} {vivid} {hue}", light=light, vivid=vivid, hue=say(name))


def _first(value: float, steps: tuple[tuple[float, str], ...], last: str) -> str:
    return next((word for limit, word in steps if value < limit), last)
