"""The bench used as a painter uses it: open, mark, pick, read a mix."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QGuiApplication
from PySide6.QtWidgets import QLabel

from hands import drag
from swatchwright.acts.recipes import proof_text
from swatchwright.colour.difference import UNSEEN, delta_e_2000
from swatchwright.desktop import words
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.widgets.recipe_column import RecipeColumn
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.samples import SamplePhoto
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000


def told(column: RecipeColumn) -> str:
    """Give all the text of a column."""
    return "\n".join(label.text() for label in column.findChildren(QLabel))


class TestOneAct:
    """From nothing to a recipe."""

    def test_one_press_gives_a_recipe(self, window: Window, settle: Settle, qtbot: QtBot) -> None:
        """Pressing the sample button shows colours and mixes, nothing else being needed."""
        qtbot.mouseClick(window.photo_side.start.try_sample, LEFT)
        settle()
        assert len(window.photo_side.strip.blocks()) >= 3
        columns = window.mix_side.columns()
        assert len(columns) == 6
        assert all("ml" in told(column) and " g" in told(column) for column in columns)

    def test_true_colours_are_found(self, with_cushion: Window, cushion: SamplePhoto) -> None:
        """The colours shown for the sample are near the truth it was rendered from."""
        rows = json.loads((cushion.path.parent / "truth.json").read_text(encoding="utf-8"))
        truth = next(r for r in rows["images"] if r["file"] == cushion.path.name)["colours"]
        assert with_cushion.session.found is not None
        shown = [c.colour.lab.triple for c in with_cushion.session.found.colours]
        for row in truth:
            nearest = min(float(delta_e_2000(row["lab_d65_2deg"], lab)) for lab in shown)
            assert nearest < 6, row["name"]

    def test_waiting_is_said(self, window: Window) -> None:
        """Before a photo is open each side says what it waits for."""
        shown = [label.text() for label in window.findChildren(QLabel) if label.isVisible()]
        assert words.WAIT_COLOURS in shown
        assert words.WAIT_MIXES in shown
        assert not window.mix_side.keep_bar.isVisible()


class TestMarks:
    """The boxes of the grey card and the cloth."""

    def test_drag_marks_card_then_cloth(
        self, window: Window, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """On a new photo the first drag marks the card, the next the cloth."""
        window.open(cushion.path)
        settle()
        view, grey, cloth = window.photo_side.view, cushion.grey, cushion.cloth
        drag(view, (grey.x, grey.y), (grey.right, grey.bottom))
        settle()
        drag(view, (cloth.x, cloth.y), (cloth.right, cloth.bottom))
        settle()
        marks = window.session.marks
        assert marks.grey is not None
        assert marks.cloth is not None
        # A pixel of the widget is about three of the photo.
        assert abs(marks.grey.x - grey.x) < 6
        assert abs(marks.cloth.right - cloth.right) < 6
        assert window.session.found is not None
        assert window.session.found.balance.reflectance == pytest.approx(0.18)

    def test_without_grey_the_cost_is_said(
        self, window: Window, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """A photo with no card marked still gives mixes, and more doubt with them."""
        window.open(cushion.path)
        settle()
        window.session.choose(0)
        settle()
        assert window.session.recipes is not None
        unmarked = window.session.recipes.recipes[0].confidence.photo
        window.session.set_grey(cushion.grey)
        settle()
        assert window.session.recipes.recipes[0].confidence.photo < unmarked / 2

    def test_no_mixes_for_the_table(
        self, window: Window, settle: Settle, cushion: SamplePhoto
    ) -> None:
        """Before the cloth is marked no colour is wanted; then the largest of the cloth is."""
        window.open(cushion.path)
        settle()
        assert window.session.found is not None
        assert (window.session.pick, window.session.recipes) == (None, None)
        window.session.set_cloth(cushion.cloth)
        settle()
        assert window.session.pick == 0
        assert window.session.recipes is not None

    def test_box_is_moved_and_sized(self, with_cushion: Window, settle: Settle) -> None:
        """A drag inside a box moves it, a drag on its corner sizes it."""
        view, before = with_cushion.photo_side.view, with_cushion.session.marks.cloth
        assert before is not None
        middle = (before.x + before.width / 2, before.y + before.height / 2)
        drag(view, middle, (middle[0] + 60, middle[1] + 30))
        settle()
        moved = with_cushion.session.marks.cloth
        assert moved is not None
        assert (moved.width, moved.height) == (before.width, before.height)
        assert abs(moved.x - before.x - 60) < 6
        drag(view, (moved.right, moved.bottom), (moved.right - 80, moved.bottom - 40))
        settle()
        sized = with_cushion.session.marks.cloth
        assert sized is not None
        assert abs(moved.width - sized.width - 80) < 8
        assert (sized.x, sized.y) == (moved.x, moved.y)

    def test_undo_and_redo(self, with_cushion: Window, settle: Settle, qtbot: QtBot) -> None:
        """A mark that was taken away comes back by the button, and goes again."""
        before = with_cushion.session.marks
        with_cushion.photo_side.view.setFocus()
        qtbot.keyClick(with_cushion.photo_side.view, Qt.Key.Key_Delete)
        settle()
        assert with_cushion.session.marks.cloth is None
        qtbot.mouseClick(with_cushion.undo, LEFT)
        settle()
        assert with_cushion.session.marks == before
        qtbot.mouseClick(with_cushion.redo, LEFT)
        settle()
        assert with_cushion.session.marks.cloth is None

    def test_keyboard_alone(
        self, window: Window, settle: Settle, cushion: SamplePhoto, qtbot: QtBot
    ) -> None:
        """Return puts a box in the middle, arrows move it, Shift with arrows sizes it."""
        window.open(cushion.path)
        settle()
        view = window.photo_side.view
        window.photo_side.tools.set_mode(Mark.CLOTH)
        qtbot.keyClick(view, Qt.Key.Key_Return)
        settle()
        first = window.session.marks.cloth
        assert first is not None
        qtbot.keyClick(view, Qt.Key.Key_Right)
        qtbot.keyClick(view, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
        settle()
        after = window.session.marks.cloth
        assert after is not None
        assert after.x > first.x
        assert after.height > first.height

    def test_shift_draws_anew_inside(self, with_cushion: Window, settle: Settle) -> None:
        """With Shift held a drag inside the old box draws a new one there."""
        view, old = with_cushion.photo_side.view, with_cushion.session.marks.cloth
        assert old is not None
        begin, end = (old.x + 100, old.y + 60), (old.x + 200, old.y + 160)
        drag(view, begin, end, Qt.KeyboardModifier.ShiftModifier)
        settle()
        new = with_cushion.session.marks.cloth
        assert new is not None
        assert abs(new.x - begin[0]) < 6
        assert abs(new.width - 100) < 8

    def test_zoom_keeps_the_place(self, with_cushion: Window) -> None:
        """Enlarging keeps what is under the pointer there, and a mark drawn then is finer."""
        view = with_cushion.photo_side.view
        at = view.to_widget(440, 600)
        view.zoom_at(at, 4.0)
        again = view.to_widget(440, 600)
        assert abs(again.x() - at.x()) + abs(again.y() - at.y()) < 2
        drag(view, (430, 590), (440, 604))
        marks = with_cushion.session.marks
        assert marks.cloth is not None
        assert abs(marks.cloth.width - 10) <= 2

    def test_a_wrong_reference_is_warned_of(self, with_cushion: Window, settle: Settle) -> None:
        """A grey card said to be white paper makes a cloth whiter than white, and that is said."""
        with_cushion.session.set_reflectance(0.9)
        settle()
        shown = [
            label.text()
            for label in with_cushion.photo_side.findChildren(QLabel, "warn")
            if label.isVisible()
        ]
        assert any("whiter than white paper" in text for text in shown)

    def test_a_tiny_cloth_is_warned_of(self, with_cushion: Window, settle: Settle) -> None:
        """A cloth of a few pixels is used, with a warning."""
        with_cushion.session.set_cloth(Rect(700, 600, 12, 12))
        settle()
        found = with_cushion.session.found
        assert found is not None
        assert any("12 × 12" in warning for warning in found.warnings)

    def test_a_click_changes_nothing(self, with_cushion: Window, qtbot: QtBot) -> None:
        """A mere click on the photo neither marks nor unmarks."""
        before = with_cushion.session.marks
        qtbot.mouseClick(with_cushion.photo_side.view, LEFT)
        assert with_cushion.session.marks == before

    def test_card_of_another_reflectance(self, with_cushion: Window, settle: Settle) -> None:
        """White paper in place of a grey card makes the same photo darker by its factor."""
        found = with_cushion.session.found
        assert found is not None
        with_cushion.session.set_reflectance(0.09)
        settle()
        again = with_cushion.session.found
        assert again is not None
        assert again.balance.gains[1] == pytest.approx(found.balance.gains[1] / 2, rel=1e-6)


class TestMixes:
    """Picking a colour and reading its mixes."""

    def test_pick_another_colour(self, with_cushion: Window, settle: Settle, qtbot: QtBot) -> None:
        """Pressing the second colour gives mixes for that one, and ticks it."""
        first = with_cushion.session.recipes
        block = with_cushion.photo_side.strip.blocks()[1]
        qtbot.mouseClick(block, LEFT)
        settle()
        assert with_cushion.session.pick == 1
        assert block.isChecked()
        assert with_cushion.session.recipes is not None
        assert with_cushion.session.recipes.wanted != (first and first.wanted)

    def test_pick_outlasts_a_new_grey(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Moving the grey card does not change which colour is wanted."""
        qtbot.mouseClick(with_cushion.photo_side.strip.blocks()[1], LEFT)
        settle()
        grey = with_cushion.session.marks.grey
        assert grey is not None
        with_cushion.session.set_grey(Rect(grey.x + 8, grey.y + 8, 100, 100))
        settle()
        assert with_cushion.session.pick == 1

    def test_amount(self, with_cushion: Window) -> None:
        """Another amount changes what to pour, in proportion, and adds up to it."""
        with_cushion.mix_side.volume.setValue(1200)
        recipes = with_cushion.session.recipes
        assert recipes is not None
        for measured in recipes.recipes:
            assert sum(a.ml for a in measured.amounts) == pytest.approx(1200)
        shown = told(with_cushion.mix_side.columns()[0])
        assert words.millilitres(recipes.recipes[0].amounts[0].ml) in shown

    def test_it_is_proven_that_none_is_closer(
        self, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """After the mixes are shown it is proven, and said, that no other would be closer."""
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        qtbot.waitUntil(window.session.workshop.idle, timeout=PATIENCE)
        closer = window.session.could_be_closer
        assert closer is not None
        assert closer <= UNSEEN
        assert proof_text(closer, 2) in window.mix_side.why.text()

    def test_two_paints_only(self, with_cushion: Window, settle: Settle, qtbot: QtBot) -> None:
        """Asking for two paints shows no mix of three."""
        qtbot.mouseClick(with_cushion.mix_side.counts[2], LEFT)
        settle()
        recipes = with_cushion.session.recipes
        assert recipes is not None
        assert {len(r.recipe.paints) for r in recipes.recipes} <= {1, 2}

    def test_typed_colour(self, window: Window, settle: Settle, qtbot: QtBot) -> None:
        """A typed colour needs no photo, and is not said to be one that a photo shows."""
        window.mix_side.typed.setText("46, 34, 24")
        qtbot.keyClick(window.mix_side.typed, Qt.Key.Key_Return)
        settle()
        assert window.session.recipes is not None
        assert window.session.recipes.recipes[0].recipe.delta_e < 0.5
        assert "photo" not in window.mix_side.heading.text()

    def test_typed_colour_is_dropped_by_a_pick(
        self, with_cushion: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """While a typed colour is wanted no block is ticked; a pick takes its place."""
        strip, typed = with_cushion.photo_side.strip, with_cushion.mix_side.typed
        typed.setText("#5a7d6a")
        qtbot.keyClick(typed, Qt.Key.Key_Return)
        settle()
        assert not any(block.isChecked() for block in strip.blocks())
        qtbot.mouseClick(strip.blocks()[2], LEFT)
        settle()
        assert strip.blocks()[2].isChecked()
        assert not typed.text()

    def test_two_paints_short_is_not_the_shelf_short(self, window: Window, settle: Settle) -> None:
        """With two paints asked for, it is not said that nothing on the shelf reaches a colour."""
        window.session.set_most_paints(2)
        window.session.type_colour("27, 2, -24")
        settle()
        assert "No two paints" in window.mix_side.short.text()
        window.session.set_most_paints(3)
        settle()
        assert not window.mix_side.short.isVisible()

    def test_a_mix_can_be_copied(self, with_cushion: Window, qtbot: QtBot) -> None:
        """The button of a mix puts all that is to be poured on the clipboard."""
        column = with_cushion.mix_side.columns()[0]
        qtbot.mouseClick(column.copy, LEFT)
        text = QGuiApplication.clipboard().text()
        recipes = with_cushion.session.recipes
        assert recipes is not None
        for paint in recipes.recipes[0].recipe.paints:
            assert paint.name in text

    def test_out_of_reach_is_said(self, window: Window, settle: Settle) -> None:
        """A colour no paint here makes is said to be out of reach, by how much and which way."""
        window.session.type_colour("#ff00ff")
        settle()
        assert window.mix_side.short.isVisible()
        assert "more vivid" in window.mix_side.short.text()

    def test_wanted_and_mix_share_an_edge(self, with_cushion: Window) -> None:
        """In the picture of a mix the wanted colour touches dry and wet with nothing between."""
        field = with_cushion.mix_side.columns()[0].field
        picture = field.grab().toImage()
        half = picture.height() // 2
        left, right = picture.width() // 4 * 1, picture.width() // 4 * 3
        colours = {
            picture.pixelColor(x, y).name() for x in (left, right) for y in (half - 2, half + 2)
        }
        recipes = with_cushion.session.recipes
        assert recipes is not None
        assert len(colours) <= 3


class TestTrouble:
    """What goes wrong is said in place, and nothing is lost."""

    def test_not_a_photo(
        self, with_cushion: Window, settle: Settle, tmp_path: Path, qtbot: QtBot
    ) -> None:
        """Opening something else says so, and the open photo stays."""
        wrong = tmp_path / "notes.jpg"
        wrong.write_text("two coats, then wax", encoding="utf-8")
        before = with_cushion.session.photo
        with_cushion.open(wrong)
        settle()
        qtbot.waitUntil(with_cushion.trouble.isVisible)
        assert "notes.jpg" in with_cushion.trouble.text()
        assert with_cushion.session.photo is before

    def test_grey_mark_on_the_cloth(self, with_cushion: Window, settle: Settle) -> None:
        """A card marked across the cushion's stripes is refused with what to do."""
        cloth = with_cushion.session.marks.cloth
        with_cushion.session.set_grey(cloth)
        settle()
        assert with_cushion.trouble.isVisible()
        assert "card" in with_cushion.trouble.text()

    def test_bad_typed_colour(self, window: Window) -> None:
        """Nonsense typed as a colour is answered with what can be typed."""
        window.session.type_colour("clay red please")
        assert window.trouble.isVisible()
        assert "#a4503c" in window.trouble.text()

    def test_our_fault_gives_a_report(self, window: Window, settle: Settle, qtbot: QtBot) -> None:
        """An error of our own is owned up to, with a report to copy."""

        def broken(_: object) -> None:
            raise RuntimeError("a loose screw")

        window.session.workshop.start("test", "", broken, lambda _: None)
        settle()
        qtbot.waitUntil(window.trouble.isVisible)
        assert words.OUR_FAULT in window.trouble.text()
        window.trouble._copy_report()
        assert "a loose screw" in QGuiApplication.clipboard().text()

    def test_bad_shelf_keeps_the_old(
        self, window: Window, settle: Settle, tmp_path: Path, qtbot: QtBot
    ) -> None:
        """A shelf file that cannot be read leaves the shelf as it was."""
        bad = tmp_path / "shelf.csv"
        bad.write_text("id,name,family\nwhite,White,satin\n", encoding="utf-8")
        before = window.session.shelf
        window.session.open_shelf(bad)
        settle()
        qtbot.waitUntil(window.trouble.isVisible)
        assert window.session.shelf is before


class TestBench:
    """The bench itself."""

    def test_drop_a_photo(self, window: Window, settle: Settle, tmp_path: Path) -> None:
        """A photo dropped on the window is opened."""
        path = tmp_path / "swatch.png"
        pixels = np.full((60, 80, 3), (150, 80, 60), dtype=np.uint8)
        Image.fromarray(pixels).save(path)
        data = QMimeData()
        data.setUrls([QUrl.fromLocalFile(str(path))])
        event = QDropEvent(
            QPointF(50, 50),
            Qt.DropAction.CopyAction,
            data,
            LEFT,
            Qt.KeyboardModifier.NoModifier,
        )
        window.dropEvent(event)
        settle()
        assert window.session.photo is not None
        assert window.session.photo.facts.name == "swatch.png"

    def test_fits_a_small_laptop(self, with_cushion: Window) -> None:
        """With everything shown the window still fits 1280 by 720."""
        assert with_cushion.needs().width() <= 1280
        # With a title bar of 36 pixels, which are the most we know of.
        assert with_cushion.needs().height() <= 720 - 36

    def test_dark_bench(self, with_cushion: Window) -> None:
        """The dark bench is a neutral grey, darker than the light one."""
        light = with_cushion.grab().toImage().pixelColor(4, 4)
        with_cushion.dark.trigger()
        dark = with_cushion.grab().toImage().pixelColor(4, 4)
        assert dark.lightness() < light.lightness() - 80
        for shade in (light, dark):
            assert shade.red() == shade.green() == shade.blue()

    def test_everything_has_a_name(self, with_cushion: Window) -> None:
        """Whatever can be focused tells a screen reader its name."""
        from PySide6.QtGui import QAccessible
        from PySide6.QtWidgets import QWidget

        for widget in with_cushion.findChildren(QWidget):
            takes_focus = widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisible()
            if not takes_focus or isinstance(widget, QLabel):
                continue
            if widget.focusProxy() is not None or widget.objectName().startswith("qt_"):
                continue
            seen = QAccessible.queryAccessibleInterface(widget)
            assert seen.text(QAccessible.Text.Name), widget

    def test_stop(self, window: Window, settle: Settle, cushion: SamplePhoto) -> None:
        """Work that is stopped brings no result, and the window goes on."""
        window.open_sample(cushion)
        window.session.workshop.stop_all()
        assert window.session.workshop.idle()
        window.open_sample(cushion)
        settle()
        assert window.session.recipes is not None
