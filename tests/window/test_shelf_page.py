"""The page of the shelf: its table and its wishes."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, cast

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget

from swatchwright.acts.jobs import Changes, Store, new_job, note_job
from swatchwright.acts.known import Hiding, Known
from swatchwright.acts.paint import look_of_paint
from swatchwright.acts.shelf_view import PaintLine, WholeLook
from swatchwright.colour.convert import lab_to_hex
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.desktop.widgets.shelf_menu import ShelfMenu
from swatchwright.desktop.widgets.shelf_table import ShelfModel
from swatchwright.desktop.words import keeping as keeping_words
from swatchwright.desktop.words import shelf as words
from swatchwright.desktop.words import wishes as wish_words
from swatchwright.mixing.wishes import Wishes
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import read_shelf
from swatchwright.values import Lab
from window.shelf_hands import DEMO, WHITE

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window
    from swatchwright.mixing.recipe import Recipe

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
TICK = Qt.ItemDataRole.CheckStateRole


@pytest.fixture
def page(window: Window, settle: Settle) -> ShelfPage:
    """Give the page, in view, with its paints shown."""
    window.show_page("shelf")
    settle()
    return cast(ShelfPage, window.page("shelf"))


class TestTable:
    """The paints as rows."""

    def test_model_keeps_the_rules(self, page: ShelfPage, qtmodeltester: ModelTester) -> None:
        """The model of the shelf keeps every rule Qt has for models."""
        qtmodeltester.check(page.table.paints)

    def test_every_paint_is_shown(self, page: ShelfPage) -> None:
        """Each paint has a row with its name and how it is known, and a colour that is told too."""
        model = page.table.paints
        assert model.rowCount() == len(DEMO.paints)
        for row, paint in enumerate(DEMO.paints):
            cells = [model.index(row, column).data() for column in range(2, model.columnCount())]
            assert paint.name in cells
            assert paint.how_known.value in cells
            told = model.index(row, 1).data(Qt.ItemDataRole.AccessibleTextRole)
            assert told.startswith(paint.name)

    def test_an_unticked_paint_is_not_used(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A paint whose tick is taken away is in no mix, until that is undone."""
        window.session.type_colour("46, 34, 24")
        settle()
        assert window.session.recipes is not None
        left_out = window.session.recipes.recipes[0].recipe.paints[0].id
        model = page.table.paints
        box = model.index(model.row_of(left_out), 0)
        assert model.setData(box, Qt.CheckState.Unchecked.value, TICK)
        settle()
        used = {p.id for r in window.session.recipes.recipes for p in r.recipe.paints}
        assert left_out not in used
        assert "23 of 24" in window.shelf_told.whole()
        assert wish_words.count_line(1) in window.shelf_told.whole()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert window.session.recipes.recipes[0].recipe.paints[0].id == left_out
        assert box.data(TICK) == Qt.CheckState.Checked

    def test_the_space_key_ticks_the_chosen_paint(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Space takes the tick of the chosen row away and sets it again, whatever cell is it."""
        page.table.choose(WHITE)
        box = page.table.currentIndex().siblingAtColumn(0)
        qtbot.keyClick(page.table, Qt.Key.Key_Space)
        settle()
        assert WHITE in window.session.unused
        assert box.data(TICK) == Qt.CheckState.Unchecked
        qtbot.keyClick(page.table, Qt.Key.Key_Space)
        settle()
        assert WHITE not in window.session.unused
        assert box.data(TICK) == Qt.CheckState.Checked

    def test_a_paint_is_shown_large(self, page: ShelfPage, settle: Settle, qtbot: QtBot) -> None:
        """The arrow keys choose a paint; its fields touch and are what the optics give."""
        page.table.choose("ink-blue-dark")
        qtbot.keyClick(page.table, Qt.Key.Key_Up)
        settle()
        paint = DEMO.paints[[p.id for p in DEMO.paints].index("ink-blue-dark") - 1]
        look = look_of_paint(DEMO, paint.id)
        assert page.panel.name.text() == paint.name
        picture = page.panel.picture.grab().toImage()
        width = picture.width()
        edge = width * 3 // 5
        around = [picture.pixelColor(x, 4).name() for x in (edge - 2, edge + 2)]
        assert around == [lab_to_hex(look.dry), lab_to_hex(look.wet)]
        assert words.HOW[HowKnown.INVENTED] in page.panel.known.text()

    def test_stock_is_taken_down(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Once the paints are kept, what is left of one is taken down, shown, and undone."""
        page.table.choose(WHITE)
        settle()
        assert page.panel.keep_first.isVisible()
        qtbot.mouseClick(page.keep, LEFT)
        settle()
        assert words.KEPT in page.said.text()
        assert page.panel.left.isVisible()
        page.panel.left.setValue(340)
        qtbot.mouseClick(page.panel.take_down, LEFT)
        settle()
        settle()
        model = page.table.paints
        left = model.index(model.row_of(WHITE), 5)
        assert left.data() == words.millilitres(340)
        qtbot.mouseClick(page.panel.bought, LEFT)
        settle()
        smallest = min(tin.ml for tin in DEMO.paint(WHITE).tins)
        qtbot.waitUntil(lambda: left.data() == words.millilitres(340 + smallest))
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        qtbot.waitUntil(lambda: left.data() == words.millilitres(340))
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        qtbot.waitUntil(lambda: left.data() == words.NOT_SAID)

    def test_example_can_be_saved_and_read(
        self, window: Window, settle: Settle, tmp_path: Path
    ) -> None:
        """The file to fill in is a shelf that opens again."""
        path = tmp_path / "my-paints.csv"
        window.session.save_example(path)
        settle()
        assert len(read_shelf(path).paints) == len(DEMO.paints)

    def test_save_where_one_cannot(self, window: Window, settle: Settle, tmp_path: Path) -> None:
        """Saving into a folder that is not there says so."""
        window.session.save_example(tmp_path / "nowhere" / "my-paints.csv")
        settle()
        assert window.trouble.isVisible()
        assert "could not be written" in window.trouble.text()

    def test_kept_paints_where_none_are_kept(self, window: Window, settle: Settle) -> None:
        """Asked for kept paints where there are none, the window says how to come by some."""
        menu = window.findChild(ShelfMenu)
        assert isinstance(menu, ShelfMenu)
        one = next(a for a in menu.actions() if a.text() == keeping_words.YOUR_PAINTS)
        one.trigger()
        settle()
        assert window.trouble.isVisible()
        assert words.NONE_KEPT[0] in window.trouble.text()

    def test_a_guess_is_not_called_well_known(self) -> None:
        """A guessed paint whose mixes come near is told as near, in the table and the panel."""
        guessed = replace(DEMO.paint(WHITE), how_known=HowKnown.GUESSED)
        near = Known(3.2, Hiding.GUESSED)
        line = PaintLine(guessed, Lab(95, 0, 2), near, None, None)
        assert "well known" not in words.known_cell(line)
        assert words.known_cell(line).startswith(words.NEAR_GUESS)
        look = look_of_paint(DEMO, WHITE)
        whole = WholeLook(replace(look, paint=guessed, known=near), (), ())
        assert "well known" not in words.known_line(whole)
        far = replace(line, known=Known(9.0, Hiding.GUESSED))
        assert "hardly known" in words.known_cell(far)


class TestWishes:
    """What is asked of the mixes."""

    def test_mixes_follow(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A paint that must be in is in every mix, within its share, and the mixes hide."""
        window.session.type_colour("46, 34, 24")
        page.table.choose("strong-yellow-orange")
        settle()
        qtbot.mouseClick(page.panel.must, LEFT, pos=QPoint(10, 10))
        page.panel.most.setValue(30)
        page.strip.coats.setFocus()
        qtbot.keyClicks(page.strip.coats, "3")
        qtbot.keyClick(page.strip.coats, Qt.Key.Key_Return)
        settle()
        found = window.session.recipes
        assert found is not None
        for measured in found.recipes:
            by_id = _shares(measured.recipe)
            assert 0.05 - 1e-6 <= by_id["strong-yellow-orange"] <= 0.3 + 1e-6
        told = page.strip.told.text()
        assert "30%" in told
        assert DEMO.paint("strong-yellow-orange").name in told
        qtbot.mouseClick(page.strip.none, LEFT)
        settle()
        assert window.session.wishes == Wishes()

    def test_contradiction_is_said_in_place(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A paint that must be in and is left out is named, with no colour wanted; undo mends."""
        page.table.choose("soft-black")
        settle()
        for box in (page.panel.must, page.panel.leave_out):
            qtbot.mouseClick(box, LEFT, pos=QPoint(10, 10))
            settle()
        assert page.strip.trouble.isVisible()
        assert DEMO.paint("soft-black").name in page.strip.trouble.text()
        assert not window.trouble.isVisible()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert not page.strip.trouble.isVisible()
        assert window.session.wishes == Wishes(must=frozenset({"soft-black"}))

    def test_price_and_what_is_to_buy(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """A price that no paint has is refused in place; “I have it” can be taken away."""
        page.table.choose("soft-black")
        settle()
        page.strip.price.setValue(0.5)
        settle()
        assert "0.5" in page.strip.trouble.text()
        page.strip.price.setValue(0)
        settle()
        assert not page.strip.trouble.isVisible()
        qtbot.mouseClick(page.panel.owned, LEFT, pos=QPoint(10, 10))
        page.strip.buy.setFocus()
        qtbot.keyClicks(page.strip.buy, "0")
        qtbot.keyClick(page.strip.buy, Qt.Key.Key_Return)
        settle()
        owned = window.session.wishes.owned
        assert owned is not None
        assert {p.id for p in DEMO.paints} - owned == {"soft-black"}
        assert window.session.wishes.most_to_buy == 0

    def test_kept_with_the_job(
        self, window: Window, page: ShelfPage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Wishes belong to the job: another has its own, and undo takes back the last."""
        window.desk.edit_job(_note)
        settle()
        page.table.choose("soft-black")
        settle()
        qtbot.mouseClick(page.panel.leave_out, LEFT, pos=QPoint(10, 10))
        settle()
        qtbot.mouseClick(page.panel.opened, LEFT, pos=QPoint(10, 10))
        settle()
        asked = window.session.wishes
        assert asked.opened == asked.without == frozenset({"soft-black"})
        job = window.desk.job
        assert job is not None
        window.desk.begin(_another)
        settle()
        assert window.session.wishes == Wishes()
        window.desk.open_job(job.id)
        settle()
        assert window.session.wishes == asked


class TestPage:
    """The page itself."""

    def test_fits_a_small_laptop(self, window: Window, page: ShelfPage) -> None:
        """Each view of the page fits a window of 1280 by 720."""
        for show in (page.show_shelf, page.show_sitting, page.show_drying):
            show()
            for step in page.sitting.steps:
                step.click()
                assert window.needs().width() <= 1280
                assert window.needs().height() <= 720

    def test_everything_has_a_name(self, page: ShelfPage) -> None:
        """Whatever can be focused on the page tells a screen reader its name."""
        from PySide6.QtGui import QAccessible

        for show in (page.show_shelf, page.show_sitting, page.show_drying):
            show()
            for step in page.sitting.steps:
                step.click()
                for widget in page.findChildren(QWidget):
                    named = widget.objectName().startswith("qt_")
                    takes = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
                    if not takes or not widget.isVisible() or named or widget.focusProxy():
                        continue
                    seen = QAccessible.queryAccessibleInterface(widget)
                    assert seen.text(QAccessible.Text.Name), widget


def _shares(recipe: Recipe) -> dict[str, float]:
    return {p.id: share for p, share in zip(recipe.paints, recipe.shares, strict=True)}


def _note(store: Store, id_: str) -> Changes:
    return note_job(store, id_, "a blanket box")


def _another(store: Store) -> Changes:
    return new_job(store, title="Another piece")


def test_model_without_paints(window: Window, qtmodeltester: ModelTester) -> None:
    """A model with no paints yet keeps the rules too."""
    qtmodeltester.check(ShelfModel(window.session))
