"""The finish used as a painter does: lay on, look, thin, ask what the client wants, keep."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from swatchwright.acts.finish import preview
from swatchwright.acts.jobs import job_of, list_jobs, open_jobs
from swatchwright.colour.difference import delta_e_2000
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.finish_mixes import mixes_to_finish
from swatchwright.desktop.words import finish as words
from swatchwright.paint.layers import Layer, LayerKind, Sheen, Stack
from swatchwright.shelf.csv_file import demo_shelf
from window.finish_hands import LEFT, PATIENCE, choose, chroma, finish_of, lay

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.finish_page import FinishPage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

SATIN = Layer(LayerKind.WAX, sheen=Sheen.SATIN)


class TestWaiting:
    """What the page needs of another."""

    def test_it_says_what_it_waits_for(self, window: Window, settle: Settle) -> None:
        """Before there is a mix that is said; once there is one, the bare mix is shown."""
        window.show_page("finish")
        page = finish_of(window)
        assert page.waiting.isVisible()
        assert page.waiting.text() == words.WAIT
        window.session.type_colour("46, 34, 24")
        settle()
        assert not page.waiting.isVisible()
        assert page.strip.isVisible()


class TestLayers:
    """Laying on, setting, moving and removing."""

    def test_a_pale_wash_quiets_the_mix(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """A wash of white makes a vivid red less vivid, and a second pass less again.

        Common practice, no source.
        """
        lay(page, LayerKind.WASH, qtbot)
        shown()
        bare, once = page.layered.steps.colours()
        page.layered.layers.rows[0].passes.setValue(2)
        shown()
        twice = page.layered.steps.colours()[1]
        assert chroma(twice) < chroma(once) < chroma(bare)
        assert twice.L > once.L > bare.L

    def test_the_picture_shows_what_is_reckoned(
        self, page: FinishPage, mixed: Window, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Flat, whole and grain of each step are painted edge to edge below the wanted colour."""
        for kind in (LayerKind.WASH, LayerKind.OIL):
            lay(page, kind, qtbot)
        shown()
        assert page.mix is not None
        look = preview(mixed.session.shelf, page.mix.parts, page.stack)
        steps = page.layered.steps
        picture = steps.grab().toImage()
        for step, area in zip(look.steps, steps.areas(), strict=True):
            for share, lab in ((0.02, step.flat), (0.5, step.dry), (0.98, step.grain)):
                at = picture.pixelColor(area.right() - 1, area.top() + round(share * area.height()))
                assert at == screen_colour(lab)
        top = steps.areas()[0].top()
        assert picture.pixelColor(3, top - 1) == screen_colour(page.mix.wanted)
        assert picture.pixelColor(3, top) == screen_colour(look.steps[0].flat)
        assert steps.areas()[0].right() + 1 == steps.areas()[1].left()

    def test_by_keyboard_alone(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """A glaze is laid on, its paint chosen and its passes typed, without a mouse."""
        button = page.layered.layers.add[LayerKind.GLAZE]
        button.setFocus()
        qtbot.keyClick(button, Qt.Key.Key_Space)
        combo = page.layered.layers.rows[0].paints[0]
        assert QApplication.focusWidget() is combo
        qtbot.keyClick(combo, Qt.Key.Key_Down)
        times = page.layered.layers.rows[0].passes
        times.setFocus()
        times.selectAll()
        qtbot.keyClicks(times, "3")
        qtbot.keyClick(times, Qt.Key.Key_Return)
        shown()
        layer = page.stack.layers[0]
        assert (layer.kind, layer.passes) == (LayerKind.GLAZE, 3)
        assert layer.paints[0][0] == page.session.shelf.paints[1].id
        assert len(page.layered.steps.colours()) == 2

    def test_layers_are_moved_and_removed(self, page: FinishPage, qtbot: QtBot) -> None:
        """A layer goes earlier or later, and away; the focus stays near."""
        for kind in (LayerKind.WAX, LayerKind.WASH, LayerKind.VARNISH):
            lay(page, kind, qtbot)
        rows = page.layered.layers
        assert not rows.rows[0].earlier.isEnabled()
        assert not rows.rows[2].later.isEnabled()
        qtbot.mouseClick(rows.rows[0].later, LEFT)
        kinds = [layer.kind for layer in page.stack.layers]
        assert kinds == [LayerKind.WASH, LayerKind.WAX, LayerKind.VARNISH]
        assert QApplication.focusWidget() is rows.rows[1].later
        qtbot.mouseClick(rows.rows[1].remove, LEFT)
        kinds = [layer.kind for layer in page.stack.layers]
        assert kinds == [LayerKind.WASH, LayerKind.VARNISH]
        assert QApplication.focusWidget() is rows.rows[1].remove

    def test_two_paints_in_a_wash(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """Another paint is added by its parts and left out again."""
        lay(page, LayerKind.WASH, qtbot)
        shown()
        rows = page.layered.layers
        qtbot.mouseClick(rows.rows[0].more, LEFT)
        shown()
        choose(rows.rows[0].paints[1], "Soft black")
        rows.rows[0].parts[0].setValue(5)
        shown()
        assert dict(page.stack.layers[0].paints) == {"white-clean": 5.0, "soft-black": 1.0}
        grey = page.layered.steps.colours()[1]
        qtbot.mouseClick(rows.rows[0].less[0], LEFT)
        shown()
        assert dict(page.stack.layers[0].paints) == {"white-clean": 1.0}
        assert page.layered.steps.colours()[1].L > grey.L

    def test_a_wax_may_be_tinted(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """A paint chosen for a wax brings its thinning with it, and takes it away again."""
        lay(page, LayerKind.WAX, qtbot)
        rows = page.layered.layers
        assert rows.rows[0].paints[0].currentText() == words.NO_COLOUR
        assert not rows.rows[0].water.isVisible()
        choose(rows.rows[0].paints[0], "Soft black")
        shown()
        assert rows.rows[0].water.isVisible()
        rows.rows[0].water.setValue(20)
        assert page.stack.layers[0].water == 20
        choose(rows.rows[0].paints[0], words.NO_COLOUR)
        shown()
        assert page.stack.layers == (Layer(LayerKind.WAX),)
        assert not rows.rows[0].water.isVisible()

    def test_sheen_and_amber_are_told_in_words(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """A deep amber varnish takes more blue than a colourless one: it is yellower."""
        lay(page, LayerKind.VARNISH, qtbot)
        row = page.layered.layers.rows[0]
        choose(row.sheen, "gloss")
        choose(row.amber, "colourless")
        shown()
        clear = page.layered.steps.colours()[1]
        choose(row.amber, "deep amber")
        shown()
        amber = page.layered.steps.colours()[1]
        assert page.stack.layers[0] == Layer(LayerKind.VARNISH, amber=2.0, sheen=Sheen.GLOSS)
        assert amber.b > clear.b
        assert amber.L < clear.L

    def test_a_field_of_the_build_up_lays_it_so_often(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """The picture begins at the bare mix, nears the wash's own colour, and can be pressed."""
        lay(page, LayerKind.WASH, qtbot)
        shown()
        fields = page.layered.build_up.fields()
        assert len(fields) == 7
        assert fields[1].isChecked()
        qtbot.mouseClick(fields[4], LEFT)
        shown()
        assert page.stack.layers[0].passes == 4
        assert page.layered.build_up.fields()[4].isChecked()
        assert page.layered.layers.rows[0].passes.value() == 4

    def test_no_more_than_can_be_reckoned(self, page: FinishPage) -> None:
        """After twelve layers no more can be laid on, and why is said."""
        page.layered.layers.lay_first(Layer(LayerKind.WASH, (("white-clean", 1.0),)))
        for _ in range(11):
            page.layered.layers.add[LayerKind.WAX].click()
        button = page.layered.layers.add[LayerKind.WAX]
        assert not button.isEnabled()
        assert button.toolTip() == words.FULL


class TestMixes:
    """The mix below."""

    def test_another_mix_is_pressed(
        self, page: FinishPage, mixed: Window, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """The strip has all mixes that were found; the one that is pressed lies below."""
        recipes = mixed.session.recipes
        assert recipes is not None
        assert len(page.strip.fields()) == len(recipes.recipes)
        qtbot.mouseClick(page.strip.fields()[1], LEFT)
        shown()
        assert page.strip.fields()[1].isChecked()
        second = recipes.recipes[1].recipe
        bare = page.layered.steps.colours()[0]
        assert float(delta_e_2000(bare.triple, second.dry.triple)) < 0.3

    def test_the_mix_chosen_for_the_job_comes_first(
        self, page: FinishPage, mixed: Window, settle: Settle
    ) -> None:
        """The mix that was kept as the chosen one lies below the layers, and is there once."""
        recipes = mixed.session.recipes
        assert recipes is not None
        mixed.keeping.keep(2)
        settle()
        second = recipes.recipes[1].recipe
        assert page.mix is not None
        assert [id_ for id_, _ in page.mix.parts] == [p.id for p in second.paints]
        assert page.mix.word.startswith(words.chosen_word(""))
        assert page.strip.fields()[0].isChecked()
        assert len(page.strip.fields()) == len(recipes.recipes)

    def test_a_paint_that_is_gone_is_said(
        self, page: FinishPage, mixed: Window, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """With another shelf, a layer of a paint that is not on it stays, and that is said."""
        lay(page, LayerKind.WASH, qtbot)
        shown()
        few = tuple(p for p in demo_shelf().paints if p.id != "white-clean")
        mixed.session.use_shelf(replace(demo_shelf(), paints=few))
        shown()
        qtbot.waitUntil(page.trouble.isVisible, timeout=PATIENCE)
        assert "white-clean" in page.trouble.text()
        combo = page.layered.layers.rows[0].paints[0]
        assert combo.currentIndex() == -1
        choose(combo, "Stone grey, warm")
        shown()
        assert not page.trouble.isVisible()
        assert len(page.layered.steps.colours()) == 2


class TestKeeping:
    """What is set is kept with the job."""

    def test_kept_undone_and_redone(
        self,
        page: FinishPage,
        mixed: Window,
        shown: Callable[[], None],
        settle: Settle,
        qtbot: QtBot,
    ) -> None:
        """A moment after the hand rests the layers are kept; undo takes them off, redo lays on."""
        lay(page, LayerKind.WASH, qtbot)
        qtbot.waitUntil(lambda: not page._keep_soon.isActive(), timeout=PATIENCE)
        settle()
        assert mixed.desk.part("finish", Stack) == page.stack
        laid = page.stack
        qtbot.mouseClick(mixed.undo, LEFT)
        settle()
        shown()
        assert page.stack == Stack()
        assert page.layered.layers.rows == []
        qtbot.mouseClick(mixed.redo, LEFT)
        settle()
        assert page.stack == laid
        assert len(page.layered.layers.rows) == 1

    def test_leaving_the_page_keeps_at_once(
        self, page: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """What was set just before another page is shown is kept."""
        lay(page, LayerKind.WAX, qtbot)
        mixed.show_page("colour")
        settle()
        assert mixed.desk.part("finish", Stack) == Stack((Layer(LayerKind.WAX),))

    def test_closing_the_window_keeps_too(
        self, page: FinishPage, mixed: Window, qtbot: QtBot
    ) -> None:
        """What was set just before the window is closed is in the store afterwards."""
        lay(page, LayerKind.WAX, qtbot)
        mixed.close()
        assert mixed.desk._store is None
        store = open_jobs()
        job = job_of(store, list_jobs(store)[0].id)
        store.close()
        document = job.document("finish")
        assert document is not None
        assert document.read(Stack) == Stack((Layer(LayerKind.WAX),))

    def test_another_job_brings_its_own(
        self, page: FinishPage, mixed: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A job put away leaves the bench bare; opened again, it brings its layers."""
        lay(page, LayerKind.WAX, qtbot)
        choose(page.layered.layers.rows[0].sheen, "satin")
        page.keep()
        settle()
        job = mixed.desk.job
        assert job is not None
        mixed.desk.put_away()
        settle()
        assert page.stack == Stack()
        mixed.desk.open_job(job.id)
        settle()
        assert page.stack == Stack((SATIN,))
        assert page.layered.layers.rows[0].sheen.value() is Sheen.SATIN

    def test_nothing_is_kept_of_nothing(
        self, page: FinishPage, mixed: Window, settle: Settle
    ) -> None:
        """Looking at the page begins no job."""
        page.keep()
        mixed.show_page("colour")
        settle()
        assert mixed.desk.job is None


class TestRoom:
    """The page in a small window, and for all."""

    def test_fits_a_small_laptop(
        self, page: FinishPage, mixed: Window, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """With a wash of four paints and all kinds of layers it still fits 1280 by 720."""
        four = tuple((p.id, 1.0) for p in mixed.session.shelf.paints[:4])
        page.layered.layers.lay_first(Layer(LayerKind.WASH, four))
        for kind in LayerKind:
            lay(page, kind, qtbot)
        shown()
        assert mixed.needs().width() <= 1280
        assert mixed.needs().height() <= 720
        for row in page.layered.layers.rows:
            assert row.width() >= row.minimumSizeHint().width()
            right = row.mapTo(page.layered.layers.area, row.rect().topRight()).x()
            assert right <= page.layered.layers.area.width()
        assert not page.layered.layers.rows[-1].visibleRegion().isEmpty()

    def test_a_mix_of_two_words_may_be_broken(self, page: FinishPage, mixed: Window) -> None:
        """A strip of many mixes takes two lines for a name before it widens the window."""
        mix = replace(mixes_to_finish(mixed.session, None)[0], word="chosen, drawers")
        page.strip.show_mixes([mix], 0)
        field = page.strip.fields()[0]
        inside = field.minimumSizeHint().width() - 20
        broken = field.fontMetrics().boundingRect(
            0, 0, inside, 1000, int(Qt.TextFlag.TextWordWrap), "✓ chosen, drawers"
        )
        assert field.minimumSizeHint().width() < field.sizeHint().width()
        assert broken.width() <= inside
        assert broken.height() <= field.height()

    def test_pictures_tell_themselves(
        self, page: FinishPage, shown: Callable[[], None], qtbot: QtBot
    ) -> None:
        """A screen reader gets every step of the picture, and every control has a name."""
        lay(page, LayerKind.WASH, qtbot)
        shown()
        told = page.layered.steps.accessibleName()
        assert "White, clean" in told
        assert words.first_up(words.BARE) in told
        row = page.layered.layers.rows[0]
        for control in (*row.paints, row.water, row.left, row.passes, row.earlier, row.remove):
            assert "1. wash" in control.accessibleName()
