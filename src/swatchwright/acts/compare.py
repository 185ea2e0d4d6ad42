"""Lay mixes beside the wanted colour: dry, wet and finished, under each light of a room.

A colour under another light is told twice. `lab` is CIELAB for the light's own white, in which
differences are counted. `shown` is the colour that looks alike in daylight, to an eye that has got
used to that light (Bradford): a grey stays grey.

What spectrum the cloth has nobody knows. It is drawn as the smoothest of its colour, and what
differences come to over the spectra that it may well have is told as a range.

References
----------
CIE 015:2018 (colour in a light); Lam 1985 (Bradford); ISO 18314-4:2024 (the change of a pair from
light to light, here drift). See docs/bibliography.md.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from math import hypot
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.compare_values import (
    MOST_MIXES,
    ROOM,
    Candidate,
    Compared,
    CompareView,
    Laid,
    Sight,
    State,
    WantedSight,
    sound_view,
)
from swatchwright.acts.finish import preview
from swatchwright.acts.in_light import adapted, cloth_in
from swatchwright.acts.layering import coats_of_layer
from swatchwright.acts.mix import own_colours
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.acts.taken_mix import TakenMix
from swatchwright.colour.difference import UNSEEN, delta_e_2000
from swatchwright.colour.names import difference_words
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.plausible import plausible_reflectances
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.paint.layered import base_of, look_of
from swatchwright.paint.layers import Layer, LayerKind, Stack, check_stack
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import stack as stacked
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab

__all__ = [
    "MOST_MIXES",
    "ROOM",
    "Candidate",
    "CompareView",
    "Compared",
    "Laid",
    "Sight",
    "State",
    "WantedSight",
    "compared",
    "sound_view",
]

Floats = NDArray[np.floating[Any]]

# Between these shares of the spectra that a cloth may have lies what is told of a difference.
_LEAST, _MOST = 10, 90

# A way is sure when so many of those spectra agree on it.
_AGREED = 0.8


def compared(
    wanted: KnownColour,
    recipes: Sequence[MeasuredRecipe],
    *,
    states: Sequence[State] = (State.DRY,),
    lights: Sequence[Light] = ROOM,
    stack: Stack | None = None,
    shelf: Shelf,
    taken: TakenMix | None = None,
) -> Compared:
    """Lay mixes beside the wanted colour.

    Parameters
    ----------
    wanted
        The colour, with how sure it is.
    recipes
        1 to 6 mixes; none are needed beside one that was taken.
    states, lights
        How and where they are seen, each once; at least one of each.
    stack
        What is to go over them: its layers up to the last wash or glaze for `washed`, all of it
        for `waxed`. Where it is None or has none such, a usual pale wash, and a clear wax on top.
    shelf
        Where the paints of the layers are.
    taken
        The mix that was taken from a sample, to be laid before the others.

    Raises
    ------
    MendableError
        If there are none or too many mixes, states or lights, or a layer cannot be.
    """
    _check(recipes or (() if taken is None else (taken.measured,)), states, lights)
    check_stack(stack or Stack())
    cloth = _Cloth.of(wanted, lights)
    candidates = tuple(
        _candidate(cloth, one, _over(one, states, stack or Stack(), shelf)) for one in recipes
    )
    if taken is not None:
        candidates = (_candidate_taken(cloth, taken, states, stack or Stack(), shelf), *candidates)
    return Compared(
        wanted=wanted,
        sights=tuple(cloth.sight(light) for light in lights),
        candidates=candidates,
        states=tuple(states),
        lights=tuple(lights),
    )


def _check(
    recipes: Sequence[MeasuredRecipe], states: Sequence[State], lights: Sequence[Light]
) -> None:
    if not 1 <= len(recipes) <= MOST_MIXES:
        raise MendableError(
            say("{many} mixes were to be laid beside the wanted colour.", many=len(recipes)),
            say("Choose from 1 to {most} of them.", most=MOST_MIXES),
        )
    if not states or len(set(states)) < len(states):
        raise MendableError(
            say("A state to see the mixes in is missing or comes twice."),
            say("Name at least one state, and each once."),
        )
    if not lights or len(set(lights)) < len(lights):
        raise MendableError(
            say("A light to see the mixes in is missing or comes twice."),
            say("Name at least one light, and each once."),
        )


# --- the cloth -----------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, eq=False)
class _Cloth:
    """The wanted colour under each light: CIELAB as drawn, and of each spectrum it may have."""

    wanted: KnownColour
    lights: tuple[Light, ...]
    drawn: dict[Light, Floats]
    likely: dict[Light, Floats]

    @classmethod
    def of(cls, wanted: KnownColour, lights: Sequence[Light]) -> _Cloth:
        """Take the smoothest spectrum of a colour, and others that it may have."""
        smoothest = smoothest_reflectance(wanted.lab)
        likely = plausible_reflectances(wanted.lab)
        # In daylight it has the colour that is wanted, even one that no surface can have.
        day = np.array(wanted.lab.triple)
        drawn, spread = {Light.D65: day}, {Light.D65: np.tile(day, (len(likely), 1))}
        for light in set(lights) - {Light.D65}:
            drawn[light], spread[light] = lab_of(smoothest, light), lab_of(likely, light)
        return cls(wanted, tuple(lights), drawn, spread)

    def sight(self, light: Light) -> WantedSight:
        """Give how it looks under a light, its spectrum the smoothest."""
        shown = cloth_in(self.wanted.lab, light)
        turns = difference_words(self.wanted.lab, shown)
        return WantedSight(light, Lab.of(self.drawn[light]), shown, turns)


# --- a mix ---------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, eq=False)
class _Seen:
    """A mix in a state: its reflectance (36,), what lies on it, and how far off it usually is.

    `aside` is how far beside that (3,), CIELAB, it was seen to be.
    """

    state: State
    reflectance: Floats
    words: tuple[str, ...]
    usual: float
    notes: tuple[str, ...]
    as_usual: bool = False
    aside: Floats = field(default_factory=lambda: np.zeros(3))


def _over(
    measured: MeasuredRecipe, states: Sequence[State], stack: Stack, shelf: Shelf
) -> tuple[_Seen, ...]:
    """Reckon a mix in its states."""
    recipe = measured.recipe
    base = base_of(mix(stacked(recipe.paints), [range(len(recipe.paints))], [recipe.shares]))
    found = []
    for state in states:
        layers, as_usual = _layers(measured, state, stack, shelf)
        coats = [coat for layer in layers.layers for coat in coats_of_layer(shelf, layer)[0]]
        seen = look_of(base, coats, wet=state is State.WET)[0]
        if layers.layers:
            words, usual, notes = _finished(measured, layers, shelf)
            found.append(_Seen(state, np.asarray(seen), words, usual, notes, as_usual))
        else:
            found.append(_Seen(state, np.asarray(seen), (), measured.confidence.both, ()))
    return tuple(found)


def _finished(
    measured: MeasuredRecipe, layers: Stack, shelf: Shelf
) -> tuple[tuple[str, ...], float, tuple[str, ...]]:
    """Tell what lies over a mix, how far off that usually is, and what to mind."""
    recipe = measured.recipe
    parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
    look = preview(shelf, parts, layers)
    notes = tuple(note for note in look.notes if note not in shelf.notes)
    usual = hypot(measured.confidence.photo, look.steps[-1].doubt)
    return tuple(step.words for step in look.steps[1:]), usual, notes


def _layers(
    measured: MeasuredRecipe, state: State, stack: Stack, shelf: Shelf
) -> tuple[Stack, bool]:
    """Give what lies over a mix in a state, and whether the usual stands in for what is not laid.

    A layer that is laid no time at all is not laid.
    """
    laid = tuple(layer for layer in stack.layers if layer.passes > 0)
    if state in {State.DRY, State.WET}:
        return Stack(), False
    if state is State.WASHED:
        painted = [n for n, layer in enumerate(laid, 1) if layer.is_paint]
        if painted:
            return Stack(laid[: painted[-1]]), False
        return Stack((_usual_wash(measured, shelf),)), True
    if any(not layer.is_paint for layer in laid):
        return Stack(laid), False
    return Stack((*laid, Layer(LayerKind.WAX, amber=0.0))), True


def _usual_wash(measured: MeasuredRecipe, shelf: Shelf) -> Layer:
    """Give a wash of the palest paint that goes with a mix, water on water-borne paint."""
    waterborne = measured.recipe.paints[0].finish.waterborne
    may = tuple(p for p in shelf.paints if p.finish.waterborne is waterborne)
    if not may:
        raise MendableError(
            say("The shelf has no paint for a wash over this mix."),
            say("Leave the washed state out, or lay on a wash yourself."),
        )
    palest, _ = max(zip(may, own_colours(may), strict=True), key=lambda row: row[1].L)
    return Layer(LayerKind.WASH, ((palest.id, 1.0),))


def _candidate(cloth: _Cloth, measured: MeasuredRecipe, seen: Sequence[_Seen]) -> Candidate:
    return Candidate(
        recipe=measured,
        sights=tuple(_sight(cloth, one, light) for one in seen for light in cloth.lights),
        laid=tuple(
            Laid(one.state, one.words, one.notes, usual=one.as_usual) for one in seen if one.words
        ),
    )


def _candidate_taken(
    cloth: _Cloth, taken: TakenMix, states: Sequence[State], stack: Stack, shelf: Shelf
) -> Candidate:
    """Lay a mix that was taken from a sample beside the wanted colour, as the sample showed it.

    By how much it is beside what its paints come to, dry in daylight, it is in every state and
    light (additive correction in CIELAB).
    """
    ids = {paint.id for paint in taken.paints}
    others = (paint for paint in shelf.paints if paint.id not in ids)
    at_hand = replace(shelf, paints=(*taken.paints, *others))
    seen = _over(taken.measured, (State.DRY, *states), stack, at_hand)
    aside = np.array(taken.measured.recipe.dry.triple) - lab_of(seen[0].reflectance)
    least = taken.measured.confidence.both
    laid = [
        # Bare, the sample itself says how far off it is; what lies over it was not tried.
        replace(one, aside=aside, usual=max(one.usual, least) if one.words else 0.0)
        for one in seen[1:]
    ]
    found = _candidate(cloth, taken.measured, laid)
    return replace(
        found,
        sights=tuple(_as_seen(sight, taken.seen) for sight in found.sights),
        tried=taken.told,
    )


def _as_seen(sight: Sight, off: float | None) -> Sight:
    """Give the dry mix in daylight as far off as its sample was seen to be."""
    if off is None or (sight.state, sight.light) != (State.DRY, Light.D65):
        return sight
    ways = () if off <= UNSEEN else sight.ways
    return replace(sight, delta_e=off, least=off, most=off, ways=ways)


def _sight(cloth: _Cloth, seen: _Seen, light: Light) -> Sight:
    lab = _bounded(lab_of(seen.reflectance, light) + seen.aside)
    drawn, likely = cloth.drawn[light], cloth.likely[light]
    spread = delta_e_2000(likely, lab)
    least, most = np.percentile(spread, (_LEAST, _MOST))
    drifts = _drifts(cloth, seen, light)
    away = lab - drawn
    return Sight(
        state=seen.state,
        light=light,
        lab=Lab.of(lab),
        shown=Lab.of(_bounded(adapted(seen.reflectance, light) + seen.aside)),
        delta_e=float(delta_e_2000(drawn, lab)),
        least=float(least),
        most=float(most),
        ways=difference_words(Lab.of(drawn), Lab.of(lab)),
        ways_sure=bool(np.mean((lab - likely) @ away > 0) >= _AGREED),
        drift=float(np.median(drifts)),
        drift_most=float(np.percentile(drifts, _MOST)),
        usual=seen.usual,
    )


def _bounded(lab: Floats) -> Floats:
    """Keep a lightness to what there is."""
    return np.array((min(100.0, max(0.0, float(lab[0]))), lab[1], lab[2]))


def _drifts(cloth: _Cloth, seen: _Seen, light: Light) -> Floats:
    """Give the change of the pair from daylight to a light, for each spectrum of the cloth.

    What parts them in daylight is taken off the mix in the light (additive correction in CIELAB).
    """
    apart = lab_of(seen.reflectance) - np.array(cloth.wanted.lab.triple)
    return delta_e_2000(cloth.likely[light], lab_of(seen.reflectance, light) - apart)
