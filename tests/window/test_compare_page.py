"""The page where mixes lie beside the wanted colour."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import colour
import numpy as np
import pytest
from numpy.typing import NDArray
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QKeySequence

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.compare import ROOM, Compared, CompareView, State
from swatchwright.acts.compare_words import LIGHT_WORDS, near_words
from swatchwright.acts.jobs import new_job
from swatchwright.colour.convert import (
    in_srgb,
    lab_to_linear_srgb,
    linear_srgb_to_lab,
    srgb_decode,
    srgb_encode,
)
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.names import closeness, difference_words
from swatchwright.colour.spectrum import Light
from swatchwright.desktop import words as common
from swatchwright.desktop.pages.compare_page import ComparePage
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.compare_pair import ComparePair
from swatchwright.desktop.words import compare as words
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from window.known import known_findings

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

Floats = NDArray[np.floating[Any]]

LEFT = Qt.MouseButton.LeftButton
CLAY = "46, 34, 24"


@pytest.fixture
def page(window: Window, settle: Settle) -> ComparePage:
    """Give the page with two-paint mixes for a typed clay red."""
    with known_findings():
        window.session.set_most_paints(2)
        window.session.type_colour(CLAY)
        settle()
    return shown(window, settle)


def shown(window: Window, settle: Settle) -> ComparePage:
    """Bring the page into view."""
    window.show_page("compare")
    settle()
    made = window.page("compare")
    assert isinstance(made, ComparePage)
    return made


def compared_on(page: ComparePage) -> Compared:
    """Give what the page shows, which must be there."""
    assert page.found is not None
    return page.found


def painted(page: ComparePage) -> list[str]:
    """Give the colours painted in the fields of the picture, each in a corner clear of words."""
    image = page.picture.grab().toImage()
    ratio = image.devicePixelRatio()
    corners = [field.area.topRight() + QPoint(-3, 3) for field in page.picture.fields()]
    return [image.pixelColor(corner * ratio).name() for corner in corners]


def begin_job(window: Window, settle: Settle) -> None:
    """Lay a new job on the bench."""
    window.desk.begin(lambda store: new_job(store, title="Blanket box"))
    settle()


class TestPicture:
    """The mixes beside the wanted colour."""

    def test_waits_for_mixes(self, window: Window, settle: Settle) -> None:
        """Without mixes the page says what it waits for, and shows them once they are there."""
        made = shown(window, settle)
        assert made.waiting.text() == words.WAIT
        window.session.type_colour(CLAY)
        settle()
        assert made.waiting.isHidden()
        assert made.picture.isVisible()

    def test_the_first_three_touch_the_wanted_colour(self, page: ComparePage) -> None:
        """Three mixes lie below the wanted colour, edge to edge, each in its own dry colour."""
        wanted, *mixes = page.picture.fields()
        told = compared_on(page)
        assert len(mixes) == len(told.candidates) == 3
        assert wanted.area.width() == page.picture.width()
        edge = 0
        for field in mixes:
            assert field.area.top() == wanted.area.bottom() + 1
            assert field.area.left() == edge
            edge = field.area.right() + 1
        assert edge == page.picture.width()
        expected = [told.wanted.lab, *(c.recipe.recipe.dry for c in told.candidates)]
        assert painted(page) == [screen_colour(lab).name() for lab in expected]

    def test_she_ticks_which(self, page: ComparePage, settle: Settle, qtbot: QtBot) -> None:
        """A pressed number adds a mix, pressed again it goes, and the last one stays."""
        qtbot.mouseClick(page.bar.mixes[4], LEFT)
        settle()
        assert [field.word for field in page.picture.fields()][1:] == [
            words.mix_word(n) for n in (1, 2, 3, 5)
        ]
        for place in (4, 2, 1, 0):
            qtbot.mouseClick(page.bar.mixes[place], LEFT)
            settle()
        assert page.view.mixes == (1,)
        assert page.bar.mixes[0].isChecked()
        assert len(page.picture.fields()) == 2

    def test_states_are_rows(self, page: ComparePage, qtbot: QtBot) -> None:
        """Wet beside dry is a second row, with the wanted colour above it again."""
        qtbot.mouseClick(page.bar.states[State.WET], LEFT)
        fields = page.picture.fields()
        assert len(fields) == 8
        assert [field.word for field in fields].count(words.WANTED) == 2
        wet = compared_on(page).candidates[0].recipe.recipe.wet
        assert painted(page)[5] == screen_colour(wet).name()
        assert len(page.told.texts()) == 6
        qtbot.mouseClick(page.bar.states[State.DRY], LEFT)
        qtbot.mouseClick(page.bar.states[State.WET], LEFT)
        assert page.view.states == (State.WET,)
        assert page.bar.states[State.WET].isChecked()

    def test_another_light(self, page: ComparePage, qtbot: QtBot) -> None:
        """Under a lamp both are shown as they look there, and what was assumed is said."""
        assert page.notes.isHidden()
        qtbot.mouseClick(page.bar.lights[Light.LAMP], LEFT)
        told = compared_on(page)
        sights = [one.sight(State.DRY, Light.LAMP) for one in told.candidates]
        expected = [told.wanted_under(Light.LAMP).shown, *(s.shown for s in sights)]
        assert painted(page) == [screen_colour(lab).name() for lab in expected]
        assert "grey stays grey" in page.notes.text()
        for text, sight in zip(page.told.texts(), sights, strict=True):
            assert near_words(sight) in text

    def test_figures_on_asking(self, page: ComparePage, qtbot: QtBot) -> None:
        """No figure is shown until it is asked for."""
        assert not any("ff by" in text for text in page.told.texts())
        qtbot.mouseClick(page.bar.figures, LEFT)
        assert all(" off: " in text for text in page.told.texts())

    def test_a_finish_of_the_job(
        self, window: Window, page: ComparePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Waxed is what the job keeps over its mixes, with its cautions; else a clear wax."""
        qtbot.mouseClick(page.bar.states[State.WAXED], LEFT)
        assert "Under a clear wax: the usual wax" in page.told.texts()[1]
        wash = Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),))
        window.desk.keep_part("finish", Stack((wash, Layer(LayerKind.OIL))))
        settle()
        assert "a wash of Stone grey, warm" in page.told.texts()[1]
        assert "oil, as on the Finish page" in page.told.texts()[1]
        assert "Rags" in page.notes.text()

    def test_the_kept_mix_is_named(
        self, window: Window, page: ComparePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """The mix that the job keeps is told from the others wherever its name stands."""
        assert window.session.recipes is not None
        window.keeping.keep(2)
        settle()
        name = words.mix_word(2, [WHOLE_PIECE])
        assert name == "mix 2, kept for the whole piece"
        assert [field.word for field in page.picture.fields()] == [
            words.WANTED,
            words.mix_word(1),
            name,
            words.mix_word(3),
        ]
        assert page.told.texts()[1].startswith(name.capitalize())
        assert page.bar.mixes[1].accessibleName().startswith(name)
        qtbot.mouseClick(page.bar.every_light, LEFT)
        assert name in page.lights.pairs()[1].accessibleName().lower()

    def test_a_finish_that_cannot_be(
        self, window: Window, page: ComparePage, settle: Settle
    ) -> None:
        """A layer of a paint that is gone is told in place, and the bare mixes stay in view."""
        gone = Layer(LayerKind.WASH, (("no-such-paint", 1.0),))
        window.desk.keep_part("finish", Stack((gone,)))
        settle()
        assert page.trouble.isVisible()
        assert "no-such-paint" in page.trouble.text()
        assert not page.bar.states[State.WASHED].isEnabled()
        assert len(page.picture.fields()) == 4


class TestEveryLight:
    """All lights at once."""

    def test_a_row_a_light(self, page: ComparePage, qtbot: QtBot) -> None:
        """Each light has a touching pair for each mix, and says what changes in it."""
        qtbot.mouseClick(page.bar.every_light, LEFT)
        told = compared_on(page)
        pairs, texts = page.lights.pairs(), page.lights.texts()
        assert len(pairs) == len(texts) == len(ROOM) * len(told.candidates)
        assert not page.picture.isVisible()
        qtbot.waitUntil(
            lambda: pairs[0].geometry().right() + 1 == pairs[1].geometry().left(), timeout=5000
        )
        image = pairs[-1].grab().toImage()
        for x, lab in zip((1, image.width() - 2), pairs[-1].labs, strict=True):
            assert image.pixelColor(x, 1).name() == screen_colour(lab).name()
        assert all(texts)
        lamp = told.candidates[0].sight(State.DRY, Light.LAMP)
        assert texts[len(told.candidates)] == words.change_line(lamp, figures=False)
        for light, pair in zip(ROOM, pairs[:: len(told.candidates)], strict=True):
            assert LIGHT_WORDS[light] in pair.accessibleName()

    def test_figures_there_too(self, page: ComparePage, qtbot: QtBot) -> None:
        """The figures are shown in every light on asking, and back in one light."""
        qtbot.mouseClick(page.bar.every_light, LEFT)
        qtbot.mouseClick(page.bar.figures, LEFT)
        assert all(" off: " in text for text in page.lights.texts())
        qtbot.mouseClick(page.bar.every_light, LEFT)
        assert page.picture.isVisible()
        assert not page.lights.isVisible()


class TestFullScreen:
    """Two colours and nothing else."""

    @pytest.fixture
    def pair(self, page: ComparePage, qtbot: QtBot) -> Iterator[ComparePair]:
        """Give the full screen, its warning read."""
        assert page.bar.full.shortcut() == QKeySequence(Qt.Key.Key_F11)
        qtbot.mouseClick(page.bar.full, LEFT)
        assert page.pair is not None
        qtbot.waitExposed(page.pair)
        assert page.pair.warning.isVisible()
        qtbot.keyClick(page.pair, Qt.Key.Key_Space)
        yield page.pair
        if page.pair is not None:
            page.pair.close()

    def test_the_warning_comes_first(self, page: ComparePage, qtbot: QtBot) -> None:
        """What a screen does is said before, once; keys wait for it, and I asks again."""
        qtbot.mouseClick(page.bar.full, LEFT)
        pair = page.pair
        assert pair is not None
        assert pair.isFullScreen()
        assert "not calibrated" in pair.warning.text()
        qtbot.keyClick(pair, Qt.Key.Key_Right)
        assert pair.place == 0
        qtbot.mouseClick(pair, LEFT)
        assert pair.warning.isHidden()
        qtbot.keyClick(pair, Qt.Key.Key_I)
        assert pair.warning.isVisible()
        qtbot.keyClick(pair, Qt.Key.Key_Return)
        qtbot.keyClick(pair, Qt.Key.Key_Escape)
        qtbot.waitUntil(lambda: page.pair is None)
        qtbot.mouseClick(page.bar.full, LEFT)
        again = page.pair
        assert again is not None
        assert again.warning.isHidden()
        again.close()

    def test_half_and_half(self, page: ComparePage, pair: ComparePair, qtbot: QtBot) -> None:
        """The wanted colour fills the left half and the mix the right; M leaves the mix alone."""
        told = compared_on(page)
        mix = screen_colour(told.candidates[0].recipe.recipe.dry).name()
        image = pair.grab().toImage()
        assert image.pixelColor(4, 4).name() == screen_colour(told.wanted.lab).name()
        assert image.pixelColor(image.width() - 4, 4).name() == mix
        qtbot.keyClick(pair, Qt.Key.Key_M)
        assert pair.grab().toImage().pixelColor(4, 4).name() == mix
        assert "alone" in pair.line

    def test_keys_step_and_the_line_tells(self, pair: ComparePair, qtbot: QtBot) -> None:
        """Arrows step through the ticked mixes, W, D, S and X the states, L the lights."""
        assert words.mix_word(1) in pair.line
        assert "dry" in pair.line
        assert "daylight" in pair.line
        qtbot.keyClick(pair, Qt.Key.Key_Right)
        assert words.mix_word(2) in pair.line
        qtbot.keyClick(pair, Qt.Key.Key_Left)
        qtbot.keyClick(pair, Qt.Key.Key_Left)
        assert words.mix_word(3) in pair.line
        for key, state in (("W", "wet"), ("S", "washed"), ("X", "waxed"), ("D", "dry")):
            qtbot.keyClick(pair, key)
            assert f", {state}," in pair.line
        for light in (*ROOM[1:], ROOM[0]):
            qtbot.keyClick(pair, Qt.Key.Key_L)
            assert LIGHT_WORDS[light] in pair.line
        assert near_words(pair.sight) in pair.line
        assert pair.accessibleName() == pair.line

    def test_the_line_fades(self, pair: ComparePair, qtbot: QtBot) -> None:
        """Left alone the line goes, until the mouse is moved or a key pressed."""
        pair._rest.setInterval(1)
        pair._fade.setDuration(20)
        qtbot.keyClick(pair, Qt.Key.Key_L)
        qtbot.waitUntil(lambda: pair.strength == 0)
        colours = {pair.halves()[0][1].name(), pair.halves()[1][1].name()}
        image = pair.grab().toImage()
        middle, foot = image.width() // 2, image.height() - 30
        assert {image.pixelColor(x, foot).name() for x in range(middle - 200, middle + 200)} <= (
            colours
        )
        pair._rest.setInterval(60_000)
        qtbot.mouseMove(pair, QPoint(40, 40))
        qtbot.keyClick(pair, Qt.Key.Key_L)
        assert pair.strength == 1

    def test_out_of_srgb_is_said(
        self, window: Window, page: ComparePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A colour that the screen cannot show is said to be about so, here and on the page."""
        window.session.type_colour("60, -80, 20")
        settle()
        assert not in_srgb(compared_on(page).wanted.lab)
        assert "than a screen can show" in page.notes.text()
        qtbot.mouseClick(page.bar.full, LEFT)
        assert page.pair is not None
        qtbot.keyClick(page.pair, Qt.Key.Key_Space)
        assert "than a screen shows" in page.pair.line
        page.pair.close()


class TestKeeping:
    """What is shown is kept with the job."""

    def test_kept_and_shown_again(
        self, window: Window, page: ComparePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Light, states and mixes come back with the job, and another job has its own."""
        begin_job(window, settle)
        first = window.desk.job
        assert first is not None
        qtbot.mouseClick(page.bar.lights[Light.TUBE], LEFT)
        qtbot.mouseClick(page.bar.states[State.WET], LEFT)
        qtbot.mouseClick(page.bar.mixes[0], LEFT)
        window.show_page("colour")
        settle()
        begin_job(window, settle)
        shown(window, settle)
        assert page.view == CompareView()
        window.desk.open_job(first.id)
        settle()
        assert page.view == CompareView((2, 3), (State.DRY, State.WET), Light.TUBE)
        assert page.bar.lights[Light.TUBE].isChecked()

    def test_nothing_is_kept_without_a_job(
        self, window: Window, page: ComparePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Looking about begins no job."""
        qtbot.mouseClick(page.bar.lights[Light.TUBE], LEFT)
        window.show_page("colour")
        settle()
        assert window.desk.job is None
        assert page.view.light is Light.TUBE

    def test_undo(self, window: Window, page: ComparePage, settle: Settle, qtbot: QtBot) -> None:
        """What was kept can be taken back like any other edit."""
        begin_job(window, settle)
        qtbot.mouseClick(page.bar.lights[Light.LAMP], LEFT)
        page.keep()
        settle()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert page.light is Light.D65
        assert page.bar.lights[Light.D65].isChecked()


# Machado, Oliveira, Fernandes 2009, as colour-science tabulates it: the whole deficiency.
MATRICES = {
    kind: colour.CVD_MATRICES_MACHADO2010[name][1.0]
    for kind, name in (("protanopia", "Protanomaly"), ("deuteranopia", "Deuteranomaly"))
}


def seen_by(labs: Floats, kind: str) -> Floats:
    """Give the CIELAB that stands for what is left of colours, by the matrices for linear sRGB."""
    screen = srgb_decode(srgb_encode(lab_to_linear_srgb(labs)))
    return linear_srgb_to_lab(np.clip(screen @ MATRICES[kind].T, 0.0, 1.0))


@pytest.mark.parametrize("kind", MATRICES)
def test_told_without_colour_sight(kind: str, window: Window, settle: Settle) -> None:
    """What somebody without red or green cones cannot see is told by words, for each mix.

    From a shelf without reds the mixes for a reddish brown are too green. Of one of those
    differences little is left to such an eye, and the words say it as to everybody.
    """
    few = ("white-clean", "straw-yellow-muted", "leaf-green-mid", "soft-black")
    paints = tuple(p for p in demo_shelf().paints if p.id in few)
    window.session.use_shelf(Shelf("few", paints))
    window.session.type_colour("55, 15, 30")
    settle()
    page = shown(window, settle)
    told, texts = compared_on(page), page.told.texts()
    wanted = np.array(told.wanted.lab.triple)
    lost = []
    for number, (one, text) in enumerate(zip(told.candidates, texts, strict=True), start=1):
        sight = one.sight(State.DRY, Light.D65)
        whole = float(delta_e_2000(wanted, sight.shown.triple))
        left = delta_e_2000(seen_by(wanted, kind), seen_by(np.array(sight.shown.triple), kind))
        lost.append(float(left) / whole)
        assert words.mix_word(number) in text.lower()
        assert closeness(whole) in text
        for word in difference_words(told.wanted.lab, sight.shown):
            assert word in text.lower()
        assert text.splitlines()[0] in page.picture.accessibleName()
    assert min(lost) < 0.4
    assert common.PAGE_COMPARE in {button.text() for button in window.rail.buttons.values()}


def test_pressed_is_told_without_colour(page: ComparePage) -> None:
    """What is chosen is told by the state of its button, not by its shade alone."""
    buttons = [*page.bar.states.values(), *page.bar.lights.values(), *page.bar.mixes]
    assert all(button.isCheckable() for button in buttons)
    assert sum(button.isChecked() for button in page.bar.lights.values()) == 1
    assert all(b.accessibleName() for b in page.bar.mixes if b.isVisible())
