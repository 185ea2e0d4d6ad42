"""A difference between colours, told in words."""

from __future__ import annotations

from math import atan2, cos, degrees, hypot, inf, sin

from swatchwright.colour.difference import delta_e_2000
from swatchwright.language import mark, mark_in, say, say_in
from swatchwright.values import Lab

__all__ = ["closeness", "colour_name", "difference_words"]

# A direction is named once it makes up this much of the whole difference, in CIEDE2000.
_NAMED = 0.35
_UNSEEN = 0.4

_BANDS = (
    (0.4, mark("no difference to see")),
    (0.8, mark("hardly to be seen")),
    (1.8, mark("close: most would accept it")),
    (3.5, mark("a shade off: clearly seen side by side")),
    (6.0, mark("some way off")),
    (float("inf"), mark("far off")),
)

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
    """Say how near a CIEDE2000 difference is.

    The steps at 0.8 and 1.8 are Paravina et al. 2015; the others are common practice, no source.
    """
    return say(next(words for limit, words in _BANDS if delta_e <= limit))


def difference_words(start: Lab, end: Lab, *, seen: float = inf) -> tuple[str, ...]:
    """Say in which directions one must go from a colour to another, the largest first.

    Lightness, vividness (chroma) and hue, each weighed by CIEDE2000; for near-greys, whose hue
    is nothing to go by, redder, greener, yellower and bluer instead. Empty where no difference
    can be seen. A direction that is small beside the others is named only from `seen` on.

    >>> difference_words(Lab(40, 0, 0), Lab(60, 0, 0))
    ('lighter',)
    """
    whole = float(delta_e_2000(start.triple, end.triple))
    if whole < _UNSEEN:
        return ()
    steps = [(say("lighter") if end.L > start.L else say("darker"), Lab(end.L, start.a, start.b))]
    steps += _grey_steps(start, end) if _near_grey(start, end) else _hue_steps(start, end)
    sized = [(float(delta_e_2000(start.triple, lab.triple)), word) for word, lab in steps]
    least = min(max(_NAMED * whole, _UNSEEN / 2), seen)
    named = [(size, word) for size, word in sized if size >= least]
    return tuple(word for _, word in sorted(named, key=lambda row: -row[0]))


def _near_grey(start: Lab, end: Lab) -> bool:
    return min(hypot(start.a, start.b), hypot(end.a, end.b)) < 8


def _grey_steps(start: Lab, end: Lab) -> list[tuple[str, Lab]]:
    return [
        (say("redder") if end.a > start.a else say("greener"), Lab(start.L, end.a, start.b)),
        (say("yellower") if end.b > start.b else say("bluer"), Lab(start.L, start.a, end.b)),
    ]


def _hue_steps(start: Lab, end: Lab) -> list[tuple[str, Lab]]:
    """Step along chroma at the same hue, and along hue at the same chroma."""
    C1, C2 = hypot(start.a, start.b), hypot(end.a, end.b)
    scale = C2 / C1
    vivid = Lab(start.L, start.a * scale, start.b * scale)
    h2 = atan2(end.b, end.a)
    turned = Lab(start.L, C1 * cos(h2), C1 * sin(h2))
    return [
        (say("more vivid") if C2 > C1 else say("greyer"), vivid),
        (_hue_word(start, degrees(h2)), turned),
    ]


def _hue_word(start: Lab, end_hue: float) -> str:
    """Name a turn of hue by the nearest of red, yellow, green and blue that it goes towards."""
    begin = degrees(atan2(start.b, start.a)) % 360
    turn = (end_hue - begin + 180) % 360 - 180
    # Unique hues in CIELAB: about 25, 90, 162 and 246 degrees (from memory of NCS studies).
    unique = (
        (25.0, say("redder")),
        (90.0, say("yellower")),
        (162.0, say("greener")),
        (246.0, say("bluer")),
    )
    if turn > 0:
        ahead = [((hue - begin) % 360, word) for hue, word in unique]
    else:
        ahead = [((begin - hue) % 360, word) for hue, word in unique]
    # The next unique hue, unless it is so near that the turn would pass it.
    return min(row for row in ahead if row[0] > abs(turn) / 2)[1]


def colour_name(lab: Lab) -> str:
    """Give a plain name: how light, how vivid, and the hue.

    >>> colour_name(Lab(27, 2, -24))
    'dark greyish blue'
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
