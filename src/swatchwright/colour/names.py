"""A difference between colours, told in words."""

from __future__ import annotations

from math import atan2, cos, degrees, hypot, sin

from swatchwright.colour.difference import delta_e_2000
from swatchwright.values import Lab

__all__ = ["closeness", "colour_name", "difference_words"]

# A direction is named once it makes up this much of the whole difference, in CIEDE2000.
_NAMED = 0.35
_UNSEEN = 0.4

_BANDS = (
    (0.4, "no difference to see"),
    (0.8, "hardly to be seen"),
    (1.8, "close: most would accept it"),
    (3.5, "near: clearly seen side by side"),
    (6.0, "some way off"),
    (float("inf"), "far off"),
)

# CIELAB hue angle at which each name ends; common practice, no source.
_HUES = (
    (12.0, "pink-red"),
    (48.0, "red"),
    (75.0, "orange"),
    (102.0, "yellow"),
    (128.0, "yellow-green"),
    (175.0, "green"),
    (215.0, "blue-green"),
    (250.0, "green-blue"),
    (303.0, "blue"),
    (322.0, "violet"),
    (345.0, "purple"),
    (360.0, "pink-red"),
)

# Greyish oranges and yellows have names of their own in every workshop.
_EARTHY = 27.0
_EARTHS = (
    (28.0, "very dark brown"),
    (46.0, "dark brown"),
    (60.0, "mid brown"),
    (72.0, "dark beige"),
    (82.0, "beige"),
)
_GREYS = ((22.0, "black"), (42.0, "dark grey"), (62.0, "mid grey"), (88.0, "light grey"))


def closeness(delta_e: float) -> str:
    """Say how near a CIEDE2000 difference is.

    The steps at 0.8 and 1.8 are Paravina et al. 2015; the others are common practice, no source.
    """
    return next(words for limit, words in _BANDS if delta_e <= limit)


def difference_words(start: Lab, end: Lab) -> tuple[str, ...]:
    """Say in which directions one must go from a colour to another, the largest first.

    Lightness, vividness (chroma) and hue, each weighed by CIEDE2000; for near-greys, whose hue
    is nothing to go by, redder, greener, yellower and bluer instead. Empty where no difference
    can be seen.

    >>> difference_words(Lab(40, 0, 0), Lab(60, 0, 0))
    ('lighter',)
    """
    whole = float(delta_e_2000(start.triple, end.triple))
    if whole < _UNSEEN:
        return ()
    steps = [("lighter" if end.L > start.L else "darker", Lab(end.L, start.a, start.b))]
    steps += _grey_steps(start, end) if _near_grey(start, end) else _hue_steps(start, end)
    sized = [(float(delta_e_2000(start.triple, lab.triple)), word) for word, lab in steps]
    named = [(size, word) for size, word in sized if size >= max(_NAMED * whole, _UNSEEN / 2)]
    return tuple(word for _, word in sorted(named, key=lambda row: -row[0]))


def _near_grey(start: Lab, end: Lab) -> bool:
    return min(hypot(start.a, start.b), hypot(end.a, end.b)) < 8


def _grey_steps(start: Lab, end: Lab) -> list[tuple[str, Lab]]:
    return [
        ("redder" if end.a > start.a else "greener", Lab(start.L, end.a, start.b)),
        ("yellower" if end.b > start.b else "bluer", Lab(start.L, start.a, end.b)),
    ]


def _hue_steps(start: Lab, end: Lab) -> list[tuple[str, Lab]]:
    """Step along chroma at the same hue, and along hue at the same chroma."""
    C1, C2 = hypot(start.a, start.b), hypot(end.a, end.b)
    scale = C2 / C1
    vivid = Lab(start.L, start.a * scale, start.b * scale)
    h2 = atan2(end.b, end.a)
    turned = Lab(start.L, C1 * cos(h2), C1 * sin(h2))
    return [
        ("more vivid" if C2 > C1 else "greyer", vivid),
        (_hue_word(start, degrees(h2)), turned),
    ]


def _hue_word(start: Lab, end_hue: float) -> str:
    """Name a turn of hue by the nearest of red, yellow, green and blue that it goes towards."""
    begin = degrees(atan2(start.b, start.a)) % 360
    turn = (end_hue - begin + 180) % 360 - 180
    # Unique hues in CIELAB: about 25, 90, 162 and 246 degrees (from memory of NCS studies).
    unique = ((25.0, "redder"), (90.0, "yellower"), (162.0, "greener"), (246.0, "bluer"))
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
    light = _first(lab.L, ((22, "very dark"), (42, "dark"), (62, "mid"), (80, "light")), "pale")
    if lab.L >= 84 and 2 < C < 9:
        return "off-white"
    hue = degrees(atan2(lab.b, lab.a)) % 360
    if 4 <= C < _EARTHY and 45 < hue <= 105:
        return _first(lab.L, _EARTHS, "cream")
    if C < 4:
        return _first(lab.L, _GREYS, "white")
    name = next(word for limit, word in _HUES if hue <= limit)
    if name == "orange" and lab.L < 55:
        name = "brown"
    vivid = _first(C, ((12, "greyish "), (30, "muted "), (55, "")), "vivid ")
    return f"{light} {vivid}{name}"


def _first(value: float, steps: tuple[tuple[float, str], ...], last: str) -> str:
    return next((word for limit, word in steps if value < limit), last)
