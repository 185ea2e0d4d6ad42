"""What may go wrong with a wash, or with stirring something into the pot, from the reckoning.

Each risk is a number that the forward reckoning gives, and a sentence with it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import reduce
from math import atan2, degrees, hypot

import numpy as np

from swatchwright.colour.difference import JUST_SEEN, PLAIN, delta_e_2000
from swatchwright.colour.names import closeness, difference_words
from swatchwright.colour.spectrum import lab_of
from swatchwright.language import mark, say
from swatchwright.mixing.knock_back import Washing, film_of_washing
from swatchwright.mixing.mend import Additions, Pot, pot_colour
from swatchwright.mixing.recipe import Recipe
from swatchwright.paint.hiding import coats_to_hide
from swatchwright.paint.layered import Base, Coat, look_of
from swatchwright.paint.mixture import DRY_INDEX, mix
from swatchwright.paint.paints import stack
from swatchwright.paint.surface import internal_diffuse, normal_reflectance
from swatchwright.values import Lab

__all__ = [
    "HEAVY",
    "Risk",
    "RiskKind",
    "hand_words",
    "hue_turn",
    "risks_of_recoat",
    "risks_of_stirring",
    "risks_of_wash",
]

# A hand that wipes less than it means to leaves half as much again; common practice, no source.
HEAVY = 1.5
# How much of its water a batch may lose on a warm day while it is used: a quarter, no source.
_DRIED_OFF = 0.75
_MEASURED_OFF = 1.1

_NO_HUE = 6.0
_TURNED = 5.0
_MOST_COATS = 6

_HUES = (mark("redder"), mark("yellower"), mark("greener"), mark("bluer"))
_HIDES_NOT = mark("It hides nothing and need not: what is below it must hide by itself.")
_WASH_STAYS = mark(
    "While it is wet a damp cloth takes it off. Once dry it stays; only paint covers it."
)
_STIRRED_STAYS = mark(
    "What is stirred in stays in: try it on a spoonful first. What is painted already keeps its "
    "colour and needs another coat."
)
_COATED_STAYS = mark(
    "It hides what is there for good. Let that dry through, dull it with a fine abrasive so that "
    "the new coat holds, and do not rub through to older paint: that may hold lead."
)


class RiskKind(StrEnum):
    """What a risk is of."""

    GRAIN = "grain"
    WIPING = "wiping"
    THICKENING = "thickening"
    HUE = "hue"
    SIDE_EFFECT = "side effect"
    HIDING = "hiding"
    MEASURE = "measure"
    UNDOING = "undoing"


@dataclass(frozen=True, slots=True)
class Risk:
    """One thing to weigh.

    Parameters
    ----------
    kind
        What it is of.
    size
        How much: CIEDE2000, degrees of hue for `HUE`, coats for `HIDING`; None where it is no
        matter of size.
    words
        The same in a sentence.
    """

    kind: RiskKind
    size: float | None
    words: str


def hue_turn(start: Lab, end: Lab) -> float:
    """Give by how many degrees the hue turns, -180 to 180; 0 where one of them is a near-grey.

    >>> round(hue_turn(Lab(50, 30, 0), Lab(50, 0, 30)))
    90
    """
    if min(hypot(start.a, start.b), hypot(end.a, end.b)) < _NO_HUE:
        return 0.0
    turn = degrees(atan2(end.b, end.a) - atan2(start.b, start.a))
    return (turn + 180) % 360 - 180


def risks_of_wash(
    washing: Washing, base: Base, now: Lab, aim: Lab, over: Sequence[Coat] = ()
) -> tuple[Risk, ...]:
    """Say what to weigh before a wash is laid.

    Parameters
    ----------
    washing
        The wash.
    base
        The coat it goes over.
    now, aim
        The colour of that coat, and where it should go, with all on that lies over the wash.
    over
        What lies over the wash, the lowest first.
    """
    return (
        _grain(washing),
        _wiping(washing, base, over),
        _thickening(washing, base, over),
        *_turned(now, washing.dry, aim),
        Risk(
            RiskKind.HIDING,
            0.0,
            say(_HIDES_NOT),
        ),
        Risk(
            RiskKind.UNDOING,
            None,
            say(_WASH_STAYS),
        ),
    )


def _grain(washing: Washing) -> Risk:
    size = float(delta_e_2000(washing.flat.triple, washing.grain.triple))
    if size < JUST_SEEN:
        words = say("Flats and grain come out alike.")
    elif size <= PLAIN:
        words = say(
            "Flats and grain come out {size:.1f} apart ({seen}): a little life in the surface.",
            size=size,
            seen=closeness(size),
        )
    else:
        words = say(
            "Flats and grain come out {size:.0f} apart ({seen}): an old, broken look, not an even "
            "colour.",
            size=size,
            seen=closeness(round(size)),
        )
    return Risk(RiskKind.GRAIN, size, words)


def _moved(
    washing: Washing,
    base: Base,
    over: Sequence[Coat],
    *,
    heavy: float = 1.0,
    water: float = 1.0,
) -> float:
    """Give how far the colour goes off if more is left, or if the wash has lost water."""
    film = film_of_washing(
        washing.paints, washing.parts, washing.water * water, washing.passes, washing.left
    )
    # Only of the wash there is more: what lies over it is laid as it was meant to be.
    more = replace(film, thickness=heavy * np.asarray(film.thickness))
    after = lab_of(look_of(base, [more, *over]))[0]
    return float(delta_e_2000(washing.dry.triple, after))


def _wiping(washing: Washing, base: Base, over: Sequence[Coat]) -> Risk:
    size = _moved(washing, base, over, heavy=HEAVY)
    return Risk(RiskKind.WIPING, size, hand_words(size))


def hand_words(size: float) -> str:
    """Say how far off, CIEDE2000, a wash comes out of which half as much again is left."""
    if size < 1.5:
        hand = say("forgiving")
    else:
        hand = say("mind your hand") if size < 4 else say("it asks a sure hand")
    return say(
        "With half as much again left on it is {size:.1f} off ({seen}): {hand}.",
        size=size,
        seen=closeness(size),
        hand=hand,
    )


def _thickening(washing: Washing, base: Base, over: Sequence[Coat]) -> Risk:
    size = _moved(washing, base, over, water=_DRIED_OFF)
    return Risk(
        RiskKind.THICKENING,
        size,
        say(
            "It thickens as it stands in warm air: with a quarter of its water gone it goes on "
            "heavier, and comes out {size:.1f} off ({seen}).",
            size=size,
            seen=closeness(size),
        ),
    )


def _turned(now: Lab, after: Lab, aim: Lab) -> tuple[Risk, ...]:
    """Say how the hue turns, and what is off from where it should go; the two never disagree."""
    turn = abs(hue_turn(now, after) - hue_turn(now, aim))
    size = float(delta_e_2000(aim.triple, after.triple))
    off = difference_words(aim, after) if size >= JUST_SEEN else ()
    if size >= JUST_SEEN and turn >= _TURNED:
        hue = say("The hue turns by {turn:.0f} degrees more than it should.", turn=turn)
    elif any(say(word) in off for word in _HUES):
        hue = say("The hue does not quite keep.")
    else:
        hue = say("The hue keeps.")
    beside = (
        say(
            "It ends {way} than asked, by {size:.1f} ({seen}).",
            way=_together(off),
            size=size,
            seen=closeness(size),
        )
        if off
        else say("It ends where it was asked to.")
    )
    return Risk(RiskKind.HUE, turn, hue), Risk(RiskKind.SIDE_EFFECT, size, beside)


def _together(ways: Sequence[str]) -> str:
    return reduce(lambda first, last: say("{first} and {last}", first=first, last=last), ways)


def risks_of_stirring(
    pot: Pot, added: Additions, aim: Lab, over: Sequence[Coat] = ()
) -> tuple[Risk, ...]:
    """Say what to weigh before something is stirred into the pot; seen under what lies over it."""
    after = _pot_after(pot, added)
    return (
        Risk(RiskKind.GRAIN, 0.0, say("It is an even coat: flats and grain come out alike.")),
        _measure(pot, added, over),
        *_turned(pot_colour(pot, over), pot_colour(after, over), aim),
        _hiding(pot, after),
        Risk(
            RiskKind.UNDOING,
            None,
            say(_STIRRED_STAYS),
        ),
    )


def risks_of_recoat(recipe: Recipe, now: Lab, seen: Lab, aim: Lab) -> tuple[Risk, ...]:
    """Say what to weigh before a full new coat.

    Parameters
    ----------
    recipe
        The mix of the new coat.
    now, seen, aim
        As it is, as the new coat looks, and where it should go, with all on that lies over it.
    """
    if recipe.coats is None:
        hides = say("It hides little: it takes more than {most} coats.", most=_MOST_COATS)
    else:
        hides = say("It hides any colour in {coats}.", coats=_told(recipe.coats))
    return (
        Risk(RiskKind.GRAIN, 0.0, say("It is an even coat: flats and grain come out alike.")),
        *_turned(now, seen, aim),
        Risk(RiskKind.HIDING, None if recipe.coats is None else float(recipe.coats), hides),
        Risk(RiskKind.UNDOING, None, say(_COATED_STAYS)),
    )


def _pot_after(pot: Pot, added: Additions, *, off: float = 1.0) -> Pot:
    """Pour the additions, each `off` times as much as was told."""
    return Pot(
        (*pot.paints, *(step.paint for step in added.steps)),
        (*pot.volumes, *(off * step.ml for step in added.steps)),
    )


def _measure(pot: Pot, added: Additions, over: Sequence[Coat]) -> Risk:
    told, poured = (
        pot_colour(_pot_after(pot, added, off=off), over).triple for off in (1.0, _MEASURED_OFF)
    )
    size = float(delta_e_2000(told, poured))
    words = say(
        "A tenth too much stirred in is {size:.1f} off ({seen}).", size=size, seen=closeness(size)
    )
    return Risk(RiskKind.MEASURE, size, words)


def _coats(pot: Pot) -> float:
    """Give how many coats of a pot hide black and white alike."""
    shares = np.array(pot.volumes) / pot.volume
    mixture = mix(stack(pot.paints), [range(len(shares))], [shares])
    k1, k2 = float(normal_reflectance(DRY_INDEX)), float(internal_diffuse(DRY_INDEX))
    coat = mixture.wet_film * mixture.solids
    return float(coats_to_hide(mixture.K, mixture.S, coat, k1=k1, k2=k2)[0])


def _hiding(pot: Pot, after: Pot) -> Risk:
    """Say whether hiding suffers."""
    was, then = (min(_coats(p), _MOST_COATS + 1.0) for p in (pot, after))
    if then > was:
        words = say(
            "It hides less: in {now}, where it was {before}.", now=_told(then), before=_told(was)
        )
    elif then < was:
        words = say(
            "It hides better: in {now}, where it was {before}.", now=_told(then), before=_told(was)
        )
    else:
        words = say("It hides as before, in {coats}.", coats=_told(was))
    return Risk(RiskKind.HIDING, then - was, words)


def _told(coats: float) -> str:
    if coats > _MOST_COATS:
        return say("more than {most} coats", most=_MOST_COATS)
    return say("one coat") if coats == 1 else say("{coats:.0f} coats", coats=coats)
