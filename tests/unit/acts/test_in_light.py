"""A film in a light is one colour, on whichever page or by whichever command it is seen."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from numpy.testing import assert_allclose

from swatchwright.acts.compare import State, compared
from swatchwright.acts.compare_values import Compared
from swatchwright.acts.finish import preview
from swatchwright.acts.finish_values import StepLook
from swatchwright.acts.in_light import ROOM, adapted, cloth_in, cloth_in_room
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.paint.layers import Layer, LayerKind, Sheen, Stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

DEMO = demo_shelf()
WANTED = typed_colour(46, 34, 24)
WASH = Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),))
STACKS = {
    "as usual": None,
    "a wax": Stack((Layer(LayerKind.WAX),)),
    "a wash and an amber wax": Stack((WASH, Layer(LayerKind.WAX, amber=1.0))),
    "a gloss varnish": Stack((Layer(LayerKind.VARNISH, sheen=Sheen.GLOSS),)),
    "a tinted wax": Stack((Layer(LayerKind.WAX, (("soft-black", 1.0),)),)),
    "a wax laid no time": Stack((WASH, Layer(LayerKind.WAX, passes=0))),
}


@cache
def found() -> Recipes:
    """Give two mixes for a clay red."""
    return recipes_for(WANTED, DEMO, most_paints=2, keep=2)


def finish_step(told: Compared, place: int, stack: Stack) -> StepLook:
    """Give the last step of the finish over the same mix."""
    recipe = told.candidates[place].recipe.recipe
    parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
    return preview(DEMO, parts, stack).steps[-1]


@pytest.mark.parametrize("name", STACKS)
def test_the_same_layers_in_the_same_light_are_one_colour(name: str) -> None:
    """Dry, wet, washed and waxed, each mix is on Finish what it is on Compare, in every light."""
    stack = STACKS[name]
    told = compared(WANTED, found().recipes, states=tuple(State), stack=stack, shelf=DEMO)
    laid = () if stack is None else tuple(layer for layer in stack.layers if layer.passes)
    painted = tuple(layer for layer in laid if layer.is_paint) or (
        Layer(LayerKind.WASH, (("white-clean", 1.0),)),
    )
    clear = any(not layer.is_paint for layer in laid)
    layers = {
        State.DRY: Stack(),
        State.WASHED: Stack(painted),
        State.WAXED: Stack(laid if clear else (*laid, Layer(LayerKind.WAX))),
    }
    for place, one in enumerate(told.candidates):
        for state, over in layers.items():
            step = finish_step(told, place, over)
            for light in ROOM:
                seen = one.sight(state, light).shown
                assert_allclose(seen.triple, step.under(light).triple, atol=1e-6)
        wet = one.sight(State.WET, Light.D65).shown
        assert_allclose(wet.triple, finish_step(told, place, Stack()).wet.triple, atol=1e-3)


def test_whose_finish_it_is_is_told() -> None:
    """A usual wash or wax is told as such, one that is laid is not; laid no time is not laid."""

    def usual(name: str) -> dict[State, bool]:
        one = compared(
            WANTED, found().recipes[:1], states=tuple(State), stack=STACKS[name], shelf=DEMO
        ).candidates[0]
        return {over.state: over.usual for over in one.laid}

    assert usual("as usual") == {State.WASHED: True, State.WAXED: True}
    assert usual("a wax") == {State.WASHED: True, State.WAXED: False}
    assert usual("a wash and an amber wax") == {State.WASHED: False, State.WAXED: False}
    assert usual("a wax laid no time") == {State.WASHED: False, State.WAXED: True}


def test_daylight_is_the_colour_itself() -> None:
    """In daylight what is shown is CIELAB for D65: there is nothing to get used to."""
    spectra = np.linspace(0.02, 0.9, 36 * 5).reshape(5, 36)
    assert_allclose(adapted(spectra, Light.D65), lab_of(spectra), atol=1e-9)
    for step in (preview(DEMO, [("ink-blue-dark", 1.0)], Stack((WASH,))).steps)[:2]:
        assert_allclose(step.under(Light.D65).triple, step.dry.triple, atol=1e-9)


def test_the_cloth_in_a_light_is_the_one_compared() -> None:
    """The wanted colour looks as it does beside the mixes, and is itself in daylight."""
    told = compared(WANTED, found().recipes, shelf=DEMO)
    for light, lab in cloth_in_room(WANTED.lab):
        assert lab == told.wanted_under(light).shown
    assert cloth_in(Lab(50, 0, -140), Light.D65) == Lab(50, 0, -140)
