"""Colours and differences told in words that point the right way."""

from __future__ import annotations

from math import cos, hypot, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.colour.difference import ACCEPTED, JUST_SEEN
from swatchwright.colour.names import closeness, colour_name, difference_words
from swatchwright.values import Lab

labs = st.builds(Lab, st.floats(0, 100), st.floats(-100, 100), st.floats(-100, 100))

OPPOSITE = {
    "lighter": "darker",
    "more vivid": "greyer",
    "redder": "greener",
    "yellower": "bluer",
}
OPPOSITE |= {there: back for back, there in OPPOSITE.items()}


def polar(L: float, C: float, h: float) -> Lab:
    """Make a colour from lightness, chroma and hue in degrees."""
    return Lab(L, C * cos(radians(h)), C * sin(radians(h)))


@pytest.mark.parametrize("threshold", [JUST_SEEN, ACCEPTED])
def test_closeness_turns_where_people_were_found_to(threshold: float) -> None:
    """What is said changes at 0.8 and 1.8, the thresholds of Paravina et al. 2015."""
    assert (JUST_SEEN, ACCEPTED) == (0.8, 1.8)
    assert closeness(threshold - 0.01) == closeness(threshold)
    assert closeness(threshold) != closeness(threshold + 0.01)


def test_closeness_never_turns_back() -> None:
    """As the difference grows each step is said once, and every difference has its words."""
    said = [closeness(tenth / 10) for tenth in range(1000)]
    steps = [words for i, words in enumerate(said) if i == 0 or words != said[i - 1]]
    assert len(steps) == len(set(steps)) >= 4
    assert all(said)


@pytest.mark.parametrize(
    ("start", "end", "words"),
    [
        (Lab(40, 20, 30), Lab(60, 20, 30), ("lighter",)),
        (Lab(60, 20, 30), Lab(40, 20, 30), ("darker",)),
        (polar(50, 20, 40), polar(50, 60, 40), ("more vivid",)),
        (polar(50, 60, 40), polar(50, 20, 40), ("greyer",)),
        (Lab(50, 0, 0), Lab(50, 12, 0), ("redder",)),
        (Lab(50, 0, 0), Lab(50, -12, 0), ("greener",)),
        (Lab(50, 0, 0), Lab(50, 0, 12), ("yellower",)),
        (Lab(50, 0, 0), Lab(50, 0, -12), ("bluer",)),
        # Turns of hue, named by the pure hue that they go towards.
        (polar(60, 50, 60), polar(60, 50, 80), ("yellower",)),
        (polar(60, 50, 60), polar(60, 50, 35), ("redder",)),
        (polar(60, 50, 110), polar(60, 50, 140), ("greener",)),
        (polar(60, 50, 120), polar(60, 50, 95), ("yellower",)),
        (polar(60, 50, 180), polar(60, 50, 220), ("bluer",)),
        (polar(60, 50, 220), polar(60, 50, 185), ("greener",)),
        (polar(60, 50, 300), polar(60, 50, 340), ("redder",)),
        (polar(60, 50, 340), polar(60, 50, 300), ("bluer",)),
        (polar(60, 50, 350), polar(60, 50, 10), ("redder",)),
        (polar(60, 50, 10), polar(60, 50, 340), ("bluer",)),
        (polar(60, 50, 80), polar(60, 50, 100), ("greener",)),
    ],
)
def test_a_step_in_one_direction(start: Lab, end: Lab, words: tuple[str, ...]) -> None:
    """A step in lightness, vividness or hue alone is named by its one word."""
    assert difference_words(start, end) == words


def test_the_largest_comes_first() -> None:
    """Two directions are both named, the larger first; a small third is left out."""
    assert difference_words(polar(40, 20, 40), polar(52, 40, 40)) == ("lighter", "more vivid")
    assert difference_words(polar(44, 30, 40), polar(50, 50, 40)) == ("more vivid", "lighter")
    assert difference_words(polar(40, 20, 40), polar(55, 28, 40)) == ("lighter",)


@given(labs)
def test_the_same_colour_needs_no_word(lab: Lab) -> None:
    """There is nothing to say between a colour and itself."""
    assert difference_words(lab, lab) == ()


@given(labs, labs)
def test_words_never_contradict(start: Lab, end: Lab) -> None:
    """No two words of one answer are opposites, and lightness is never named wrongly."""
    words = difference_words(start, end)
    assert not {OPPOSITE[word] for word in words} & set(words)
    assert "lighter" not in words or end.L > start.L
    assert "darker" not in words or end.L < start.L
    more = hypot(end.a, end.b) > hypot(start.a, start.b)
    assert "more vivid" not in words or more
    assert "greyer" not in words or not more


@pytest.mark.parametrize(
    ("lab", "name"),
    [
        # Common practice, no source.
        (Lab(100, 0, 0), "white"),
        (Lab(0, 0, 0), "black"),
        (Lab(53, 0, 0), "mid grey"),
        (Lab(53, 65, 50), "mid vivid red"),
        (Lab(27, 2, -8), "dark greyish blue"),
        (Lab(85, 0, 60), "pale vivid yellow"),
        (Lab(40, 15, 25), "dark muted brown"),
        (Lab(50, -40, 25), "mid green"),
        (Lab(60, 35, -2), "mid pink-red"),
        (Lab(35, 20, -45), "dark blue"),
    ],
)
def test_the_name_of_a_colour(lab: Lab, name: str) -> None:
    """Plain colours have the plain names that anybody would give them."""
    assert colour_name(lab) == name


@given(labs)
def test_every_colour_has_a_name(lab: Lab) -> None:
    """Any colour has a name of one to four words, without stray blanks."""
    words = colour_name(lab).split(" ")
    assert 1 <= len(words) <= 4
    assert all(words)


def test_small_directions_are_named_where_they_can_be_seen() -> None:
    """Much lighter and a little greyer: the lesser is named only where that is asked for."""
    start, end = Lab(46, 34, 24), Lab(56, 31, 21.9)
    assert difference_words(start, end) == ("lighter",)
    assert difference_words(start, end, seen=0.8) == ("lighter", "greyer")
