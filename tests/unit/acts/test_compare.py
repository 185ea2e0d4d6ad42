"""Mixes beside the wanted colour, in every state and light."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import colour
import numpy as np
import pytest
from colour.difference.metamerism_index import Lab_to_metamerism_index
from numpy.testing import assert_allclose
from numpy.typing import NDArray

from swatchwright.acts.compare import (
    ROOM,
    Compared,
    CompareView,
    Sight,
    State,
    compared,
    sound_view,
)
from swatchwright.acts.compare_words import (
    drift_words,
    figure_words,
    light_notes,
    light_of_word,
    near_words,
    seen_name,
    shown_words,
    sight_words,
    turn_words,
    usual_words,
    way_words,
)
from swatchwright.acts.finish import preview
from swatchwright.acts.in_light import adapted
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import WAVELENGTHS, Light, lab_of
from swatchwright.errors import MendableError
from swatchwright.mixing.plausible import plausible_reflectances
from swatchwright.mixing.smooth import smoothest_reflectance
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import KnownColour, Lab, isotropic

Floats = NDArray[np.floating[Any]]

DEMO = demo_shelf()
WANTED = typed_colour(46, 34, 24)
CHART = Path(__file__).parents[2] / "data" / "chart24_spectra_10nm.csv"
WASH, WAX = Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),)), Layer(LayerKind.WAX, amber=1.0)
OTHERS = [light for light in ROOM if light is not Light.D65]


@cache
def found() -> Recipes:
    """Give three mixes of two paints for a clay red."""
    return recipes_for(WANTED, DEMO, most_paints=2, keep=3)


@cache
def told() -> Compared:
    """Lay them beside it in every state and light."""
    return compared(WANTED, found().recipes, states=tuple(State), shelf=DEMO)


@cache
def chart() -> Floats:
    """Give the measured spectra of a printed chart of 24 patches."""
    lines = CHART.read_text("utf-8").splitlines()
    rows = [line.split(",") for line in lines if not line.startswith("#")][1:]
    return np.array(rows, dtype=np.float64)[:, 1:].T


def sight(**changes: Any) -> Sight:
    """Give a sight that is near in daylight, but for some changes."""
    usual = Sight(
        state=State.DRY,
        light=Light.D65,
        lab=Lab(50, 10, 10),
        shown=Lab(50, 10, 10),
        delta_e=2.0,
        least=2.0,
        most=2.0,
        ways=("redder",),
        ways_sure=True,
        drift=0.0,
        drift_most=0.0,
        usual=0.0,
    )
    return replace(usual, **changes)


class TestStates:
    """Dry, wet and finished."""

    def test_dry_and_wet_are_those_of_the_recipe(self) -> None:
        """In daylight a mix dries, and is wet, as its recipe says."""
        for one, measured in zip(told().candidates, found().recipes, strict=True):
            dry, wet = (one.sight(state, Light.D65) for state in (State.DRY, State.WET))
            assert dry.lab.triple == pytest.approx(measured.recipe.dry.triple, abs=1e-6)
            assert wet.lab.triple == pytest.approx(measured.recipe.wet.triple, abs=1e-6)
            assert dry.delta_e == pytest.approx(measured.recipe.delta_e, abs=1e-4)
            assert dry.usual == measured.confidence.both

    def test_finished_is_as_the_finish_says(self) -> None:
        """Washed and waxed are what a preview of the same layers shows, its doubt included."""
        recipe = found().recipes[0].recipe
        parts = [(p.id, share) for p, share in zip(recipe.paints, recipe.shares, strict=True)]
        one = compared(
            WANTED, found().recipes[:1], states=tuple(State), stack=Stack((WASH, WAX)), shelf=DEMO
        ).candidates[0]
        steps = preview(DEMO, parts, Stack((WASH, WAX))).steps
        for state, step in ((State.WASHED, steps[1]), (State.WAXED, steps[2])):
            seen = one.sight(state, Light.D65)
            assert seen.lab.triple == pytest.approx(step.dry.triple, abs=1e-6)
            assert seen.usual == pytest.approx(step.doubt)
        words = {laid.state: laid.words for laid in one.laid}
        assert words[State.WASHED] == (steps[1].words,)
        assert words[State.WAXED] == (steps[1].words, steps[2].words)

    def test_a_usual_finish_where_none_is_kept(self) -> None:
        """Without layers of one's own there is a pale wash, and a clear wax that hides nothing."""
        one = told().candidates[0]
        words = {laid.state: laid.words for laid in one.laid}
        assert "a wash of White, clean" in words[State.WASHED][0]
        assert words[State.WAXED] == ("a clear wax",)
        dry, washed = (one.sight(state, Light.D65).lab for state in (State.DRY, State.WASHED))
        assert washed.L > dry.L
        assert told().notes([State.WASHED])
        assert not told().notes([State.DRY, State.WET])

    def test_a_kept_wash_gets_a_wax_on_top(self) -> None:
        """Where the layers hold no clear finish, waxed is all of them under a clear wax."""
        one = compared(
            WANTED, found().recipes[:1], states=(State.WAXED,), stack=Stack((WASH,)), shelf=DEMO
        ).candidates[0]
        assert len(one.laid[0].words) == 2
        assert one.laid[0].words[1] == "a clear wax"

    def test_the_photo_is_part_of_the_doubt(self) -> None:
        """A colour that is known within 5 leaves every state in doubt by that at least."""
        hazy = KnownColour(WANTED.lab, isotropic(9.0), "a photo")
        known = recipes_for(hazy, DEMO, most_paints=2, keep=1)
        one = compared(hazy, known.recipes, states=tuple(State), shelf=DEMO).candidates[0]
        photo = known.recipes[0].confidence.photo
        assert photo > 3
        assert all(seen.usual >= photo for seen in one.sights)


class TestLights:
    """Under the lights of a room."""

    @pytest.mark.parametrize("light", ROOM)
    def test_adapted_as_colour_science_adapts(self, light: Light) -> None:
        """24 measured spectra look as colour-science has them: sums at 5 nm, then Bradford.

        XYZ by `sd_to_XYZ` of colour-science with its own tables and Sprague interpolation, carried
        to D65 by its `chromatic_adaptation`, the transform named.
        """
        shape = colour.SpectralShape(380, 780, 5)
        source = colour.SDS_ILLUMINANTS[light.value].copy().align(shape)
        observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(shape)

        def xyz(sd: Any) -> Floats:
            return np.asarray(colour.sd_to_XYZ(sd, observer, source, method="Integration") / 100)

        white, day = xyz(colour.sd_ones(shape)), np.array((0.95047, 1.0, 1.08883))
        theirs = []
        for row in chart():
            sd = colour.SpectralDistribution(dict(zip(WAVELENGTHS, row, strict=True)))
            sd = sd.interpolate(colour.SpectralShape(380, 730, 5)).extrapolate(shape)
            moved = colour.chromatic_adaptation(
                xyz(sd), white, day, method="Von Kries", transform="Bradford"
            )
            theirs.append(colour.XYZ_to_Lab(moved, colour.XYZ_to_xy(day)))
        assert delta_e_2000(theirs, adapted(chart(), light)).max() < 0.03

    @pytest.mark.parametrize("light", ROOM)
    def test_a_grey_stays_grey(self, light: Light) -> None:
        """A grey looks the same grey under any light, to an eye that has got used to it."""
        greys = np.array([[share] * 36 for share in (0.05, 0.18, 0.9)])
        assert_allclose(adapted(greys, light), lab_of(greys), atol=1e-6)

    @pytest.mark.parametrize("light", OTHERS)
    def test_drift_is_the_index_of_the_standard(self, light: Light) -> None:
        """Drift is the middle of the index of ISO 18314-4 over the spectra, by colour-science."""
        cloths = plausible_reflectances(WANTED.lab)
        for one in told().candidates:
            day, seen = one.sight(State.DRY, Light.D65), one.sight(State.DRY, light)
            index = Lab_to_metamerism_index(
                np.array(seen.lab.triple),
                lab_of(cloths, light),
                np.array(day.lab.triple),
                np.array(WANTED.lab.triple),
                correction="Additive",
                method="CIE 2000",
            )
            assert seen.drift == pytest.approx(np.median(index), abs=0.02)
            assert seen.drift_most == pytest.approx(np.percentile(index, 90), abs=0.02)

    def test_only_daylight_is_sure(self) -> None:
        """In daylight a difference is one figure; elsewhere a range that grows from there."""
        for one in told().candidates:
            for seen in one.sights:
                if seen.light is Light.D65:
                    assert seen.least == pytest.approx(seen.most)
                    assert seen.delta_e == pytest.approx(seen.most)
                    assert seen.drift == pytest.approx(0, abs=1e-6)
                else:
                    assert seen.most > seen.least
                    assert seen.drift_most >= seen.drift > 0

    def test_the_cloth_is_the_smoothest(self) -> None:
        """The wanted colour is itself in daylight, and its smoothest spectrum in other lights."""
        smooth = smoothest_reflectance(WANTED.lab)
        assert told().wanted_under(Light.D65).shown == WANTED.lab
        assert told().wanted_under(Light.D65).turns == ()
        for light in OTHERS:
            seen = told().wanted_under(light)
            assert_allclose(seen.lab.triple, lab_of(smooth, light), atol=1e-9)
            assert_allclose(seen.shown.triple, adapted(smooth, light), atol=1e-9)
            assert seen.turns

    def test_lights_come_in_the_order_asked(self) -> None:
        """Only the lights asked for are told, in that order, daylight or not."""
        lights = (Light.TUBE, Light.LAMP)
        one = compared(WANTED, found().recipes[:1], lights=lights, shelf=DEMO)
        assert [seen.light for seen in one.sights] == list(lights)
        assert [seen.light for seen in one.candidates[0].sights] == list(lights)
        assert one.candidates[0].sight(State.DRY, Light.TUBE) == told().candidates[0].sight(
            State.DRY, Light.TUBE
        )

    def test_a_colour_no_surface_has(self) -> None:
        """It is shown as it was asked for in daylight, and nothing fails in other lights."""
        wild = typed_colour(50, 0, -140)
        near = recipes_for(wild, DEMO, most_paints=2, keep=1)
        one = compared(wild, near.recipes, shelf=DEMO)
        assert one.wanted_under(Light.D65).shown == wild.lab
        assert one.candidates[0].sight(State.DRY, Light.D65).delta_e == pytest.approx(
            near.recipes[0].recipe.delta_e, abs=1e-4
        )


class TestRefusals:
    """What cannot be laid side by side."""

    def test_too_few_or_too_many(self) -> None:
        """No mix, seven mixes, no light and a state twice are refused, and so is a bad layer."""
        some = found().recipes
        for recipes, changes in (
            ((), {}),
            (some * 3, {}),
            (some, {"lights": ()}),
            (some, {"states": (State.DRY, State.DRY)}),
            (some, {"stack": Stack((Layer(LayerKind.WASH, ()),))}),
            (some, {"stack": Stack((WASH,) * 12), "states": (State.WAXED,)}),
        ):
            with pytest.raises(MendableError):
                compared(WANTED, recipes, shelf=DEMO, **changes)

    def test_no_paint_for_a_wash(self) -> None:
        """A shelf without a paint of the mix's kind can give no wash, and that is said."""
        oil = tuple(p for p in DEMO.paints if not p.finish.waterborne)
        with pytest.raises(MendableError, match="wash"):
            compared(
                WANTED,
                found().recipes[:1],
                states=(State.WASHED,),
                shelf=replace(DEMO, paints=oil),
            )

    def test_a_view_is_made_sound(self) -> None:
        """Mixes that are not there are left out, and something is always shown."""
        view = CompareView(mixes=(5, 2, 2, -1), states=(State.WAXED, State.WET), light=Light.D50)
        sound = sound_view(view, 4)
        assert sound == CompareView(mixes=(2,), states=(State.WET, State.WAXED))
        assert sound_view(CompareView(mixes=(6,), states=()), 2) == CompareView(mixes=(1, 2))
        assert sound_view(CompareView(), 0).mixes == ()


class TestWords:
    """Told in words, for those who cannot go by the colours."""

    def test_near(self) -> None:
        """One word where it is known, both ends where it is not; figures likewise."""
        assert near_words(sight()) == "seen side by side"
        wide = sight(least=1.0, most=4.0)
        assert near_words(wide) == "it could be anything from “just seen” to “plain to see”"
        assert figure_words(wide) == ("1.0 to 4.0 off: “just seen” to “plain to see”")
        assert figure_words(sight(least=2.0, most=2.5)) == "2.0 to 2.5 off: seen side by side"
        assert figure_words(sight()) == "2.0 off: seen side by side"

    def test_ways(self) -> None:
        """Ways that the cloth's spectra do not agree on are told as perhaps so."""
        ways = ("darker", "greyer", "redder")
        assert way_words(sight(ways=ways)) == "darker, greyer and redder"
        assert way_words(sight(ways_sure=False)) == "perhaps redder"
        assert way_words(sight(ways=(), ways_sure=False)) == ""
        assert sight_words(sight()) == "seen side by side; redder"
        assert sight_words(sight(ways=())) == "seen side by side"

    @pytest.mark.parametrize(
        ("drift", "most", "words"),
        [
            (0.3, 0.7, "holds"),
            (0.3, 1.5, "holds, perhaps drifts a little"),
            (1.0, 3.0, "drifts a little, perhaps plainly"),
            (1.0, 5.0, "drifts a little, perhaps parts from it"),
            (4.0, 5.0, "parts from it"),
        ],
    )
    def test_drift(self, drift: float, most: float, words: str) -> None:
        """What is usual comes first, and what it may come to after it."""
        assert drift_words(sight(light=Light.LAMP, drift=drift, drift_most=most)) == words

    def test_drift_of_what_is_far(self) -> None:
        """Daylight has no drift, and a mix that is another colour stays so."""
        assert drift_words(sight(drift=3.0)) == ""
        assert (
            drift_words(sight(light=Light.LAMP, delta_e=9.0, drift=3.0)) == "stays another colour"
        )

    def test_doubt(self) -> None:
        """The usual error is told in whole steps, rounded up, and not where there is none."""
        assert usual_words(sight()) == ""
        assert usual_words(sight(usual=4.2)) == (
            "usually within 5 of the cloth, untried (plain to see)"
        )

    def test_beyond_the_screen(self) -> None:
        """Colours that sRGB cannot show are counted and said to be about so."""
        wild, tame = Lab(50, 0, -100), Lab(50, 10, 10)
        assert shown_words([tame]) == ""
        assert shown_words([tame, wild]).startswith("One colour is")
        assert shown_words([wild, wild]).startswith("2 colours are")
        assert seen_name(wild).startswith("about ")
        assert not seen_name(tame).startswith("about")

    def test_lights(self) -> None:
        """A light is known by its word; what is assumed is said only of others than daylight."""
        assert light_of_word("Warm-Lamp") is Light.LAMP
        assert light_of_word("cool-led") is Light.COOL_LED
        assert light_of_word("moon") is None
        assert light_notes([Light.D65]) == ()
        assert "grey" in light_notes([Light.TUBE])[0]
        lamp = told().wanted_under(Light.LAMP)
        assert turn_words(lamp).split(" and ")[0] == lamp.turns[0]
