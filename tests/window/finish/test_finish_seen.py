"""The finish as it is seen: wet and dry, in the lights of the room, and how far to trust it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.in_light import cloth_in_room
from swatchwright.colour.names import colour_name
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import compare
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words import finish_seen as seen
from swatchwright.paint.layers import LayerKind
from swatchwright.values import KnownColour, Lab, isotropic
from window.finish_hands import LEFT, chroma, finish_of, lay

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]


class TestSeeing:
    """Wet and dry, and the lights of the room."""

    def test_wet_is_deeper(self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot) -> None:
        """A white wash is darker while wet than dry: its water fills the pores.

        Lekner and Dorf 1988, on why things are darker when wet.
        """
        lay(page, LayerKind.WASH, qtbot)
        shown()
        dry = page.layered.steps.colours()[1]
        qtbot.mouseClick(page.layered.wet, LEFT)
        assert page.layered.steps.colours()[1].L < dry.L

    def test_a_lamp_warms_red(self, page: FinishPage, qtbot: QtBot) -> None:
        """Under the warm lamp a red is lighter and more vivid than by day, even to a used eye.

        Illuminant A has its power in the red: CIE 015:2018, table 1.
        """
        day = page.layered.steps.colours()[0]
        qtbot.mouseClick(page.layered.lights[Light.LAMP], LEFT)
        lamp = page.layered.steps.colours()[0]
        assert lamp.L > day.L
        assert chroma(lamp) > chroma(day)
        assert seen.seen_word(Light.LAMP) in page.layered.steps.accessibleName()

    def test_the_lights_are_those_of_compare(self, page: FinishPage) -> None:
        """The page offers the lights of Compare, by the same words, and wet beside them."""
        buttons = page.layered.lights
        assert {light: button.text() for light, button in buttons.items()} == compare.LIGHTS
        assert buttons[Light.D65].isChecked()
        assert sum(b.isChecked() for b in (*buttons.values(), page.layered.wet)) == 1

    def test_the_wanted_colour_stays_in_sight(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """In every light the wanted colour lies above the steps, as Compare shows it, with doubt.

        Away from daylight it is said that the cloth may look otherwise.
        """
        lay(page, LayerKind.WAX, qtbot)
        shown()
        assert page.mix is not None
        steps = page.layered.steps
        for light, lab in cloth_in_room(page.mix.wanted):
            qtbot.mouseClick(page.layered.lights[light], LEFT)
            assert steps.wanted() == lab
            top = steps.areas()[0].top()
            picture = steps.grab().toImage()
            assert picture.pixelColor(picture.width() - 3, top - 1) == screen_colour(lab)
            assert seen.wanted_word(light) in steps.accessibleName()
            assert (words.CLOTH_CAUTION in page.layered.mind.text()) is (light is not Light.D65)
        qtbot.mouseClick(page.layered.wet, LEFT)
        assert steps.wanted() == page.mix.wanted

    def test_the_sentence_is_of_the_light(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """The sentence names the colour as seen and the light; wet it has no doubt to tell."""
        lay(page, LayerKind.OIL, qtbot)
        shown()
        for light, button in page.layered.lights.items():
            qtbot.mouseClick(button, LEFT)
            told = page.layered.result.text()
            assert colour_name(page.layered.steps.colours()[1]) in told
            assert (compare.UNDER[light] in told) is (light is not Light.D65)
            assert "within about" in told
        qtbot.mouseClick(page.layered.wet, LEFT)
        assert page.layered.result.text().startswith("While it is wet it is ")
        assert "within about" not in page.layered.result.text()

    def test_only_what_lies_thicker_shows_grain(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Under a wax alone no band is marked as grain; once a wash lies there, it is.

        The words of the bands are paint of another colour than the field.
        """

        def colours_at_foot() -> set[str]:
            steps = page.layered.steps
            area, picture = steps.areas()[1], steps.grab().toImage()
            return {
                picture.pixelColor(x, y).name()
                for x in range(area.left() + 5, area.left() + 60)
                for y in range(area.bottom() - 40, area.bottom() - 4)
            }

        lay(page, LayerKind.WAX, qtbot)
        shown()
        assert len(colours_at_foot()) == 1
        qtbot.mouseClick(page.layered.layers.rows[0].remove, LEFT)
        lay(page, LayerKind.WASH, qtbot)
        shown()
        assert len(colours_at_foot()) > 1

    def test_figures_are_shown_on_asking(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """The figures are written into the fields once they are asked for."""
        lay(page, LayerKind.WASH, qtbot)
        shown()
        before = page.layered.steps.grab().toImage()
        qtbot.mouseClick(page.layered.figures, LEFT)
        assert page.layered.steps.grab().toImage() != before

    def test_rags_are_warned_of(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """An oil brings the caution for its rags, and the label and a trial are pointed to.

        NFPA, on oily rags.
        """
        assert words.TRY_IT not in page.layered.mind.text()
        lay(page, LayerKind.OIL, qtbot)
        shown()
        assert "fire" in page.layered.mind.text()
        assert words.TRY_IT in page.layered.mind.text()


class TestDoubt:
    """How far all of it may be off."""

    @pytest.mark.parametrize(
        ("own", "photo", "says", "not_said"),
        [
            (0.0, 0.0, "", "within"),
            (1.2, 0.0, "within about 1 of this", "cloth"),
            (0.0, 4.6, "about 5 beside it", "within"),
            (3.0, 4.0, "about 5 in all", "about 7"),
            (3.0, 4.0, "within about 3 of this", ""),
        ],
    )
    def test_both_doubts_are_told(self, own: float, photo: float, says: str, not_said: str) -> None:
        """What dries otherwise and what the photo gets wrong add up as independent errors do.

        3 and 4 make 5 (JCGM 100:2008, 5.1.2, of uncorrelated quantities).
        """
        told = seen.doubt_line(own, photo)
        assert says in told
        assert not (not_said and not_said in told)

    def test_the_doubt_of_the_photo_comes_with_the_mix(
        self, mixed: Window, settle: Settle, shown: Callable[[], None]
    ) -> None:
        """A colour of a photo is as unsure here as beside its mixes, kept for a job or not."""
        hazy = KnownColour(Lab(46, 34, 24), isotropic(9.0), "a photo")
        mixed.session.want_known(hazy)
        settle()
        shown()
        page, recipes = finish_of(mixed), mixed.session.recipes
        assert page.mix is not None
        assert recipes is not None
        photo = recipes.recipes[0].confidence.photo
        assert photo > 3
        assert page.mix.photo == photo
        assert "beside" in page.layered.result.text()
        mixed.keeping.keep(1)
        settle()
        shown()
        assert page.mix.word.startswith(words.chosen_word("")[:6])
        assert page.mix.photo == pytest.approx(photo)
