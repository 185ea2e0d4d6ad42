"""The batches of a job on its page: noted, drawn from the stock, and taken back."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import new_job
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.stock import (
    kept_shelf,
    put_paints,
    remove_paints,
    set_stock,
    take_demo_shelf,
)
from swatchwright.desktop.pages.brief_page import BriefPage
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.acts.jobs import Store
    from swatchwright.acts.recipes import Recipes
    from swatchwright.desktop.window import Window
    from swatchwright.shelf.store.history import Changes

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give recipes of two paints for a clay red."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2)


@pytest.fixture
def chest(window: Window, settle: Settle, found: Recipes) -> BriefPage:
    """Give the page with a chest on the bench that has mixes in clay red."""
    window.show_page("brief")

    def begin(store: Store) -> Changes:
        changes = new_job(store, title="Chest of drawers")
        keep_recipes(store, changes.jobs[0], found, zone="drawers")
        return changes

    window.desk.begin(begin)
    settle()
    page = window.page("brief")
    assert isinstance(page, BriefPage)
    return page


class TestBatches:
    """A batch is noted by the kept mix, drawn from the stock, and taken back."""

    @pytest.fixture
    def stocked(self, chest: BriefPage, found: Recipes) -> BriefPage:
        """Give the page with the chest on the bench and 400 ml of its first paint left."""
        first = found.recipes[0].recipe.paints[0].id
        chest.desk.edit(take_demo_shelf)
        chest.desk.edit(lambda store: set_stock(store, first, 400))
        return chest

    def left(self, page: BriefPage, settle: Settle, id_: str) -> float | None:
        """Give how much of a paint is left."""
        found: list[float | None] = []
        page.desk.ask(
            kept_shelf,
            lambda kept: found.extend(s.ml_left for s in kept.stocked if s.paint.id == id_),
        )
        settle()
        return found[0]

    def test_made_undone_and_taken_back(
        self, window: Window, stocked: BriefPage, settle: Settle, qtbot: QtBot, found: Recipes
    ) -> None:
        """A batch draws on the stock; undo gives that back, and so does taking it back."""
        first = found.recipes[0].recipe.paints[0].id
        stocked.batches.volume.setValue(100)
        qtbot.mouseClick(stocked.batches.make, LEFT)
        settle()
        job = stocked.desk.job
        assert job is not None
        poured = next(p for p in job.batches[0].poured if p.paint == first)
        assert self.left(stocked, settle, first) == pytest.approx(400 - poured.ml)
        assert not stocked.batches.warned.isVisible()
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert self.left(stocked, settle, first) == 400
        qtbot.mouseClick(window.redo, LEFT)
        settle()
        qtbot.mouseClick(stocked.batches.backs[1], LEFT)
        settle()
        assert self.left(stocked, settle, first) == 400
        assert stocked.batches.none.isVisibleTo(stocked.batches)

    def test_too_little_is_said(self, stocked: BriefPage, settle: Settle, qtbot: QtBot) -> None:
        """Where the stock falls short the batch is noted all the same, and that is said."""
        stocked.batches.volume.setValue(5000)
        qtbot.mouseClick(stocked.batches.make, LEFT)
        settle()
        assert stocked.batches.warned.isVisible()
        assert "400 ml were left" in stocked.batches.warned.text()
        labels = [label.text() for label in stocked.batches.findChildren(QLabel)]
        assert any("Batch 1" in text and "5000 ml" in text for text in labels)

    def test_a_changed_paint_is_said(self, chest: BriefPage, settle: Settle) -> None:
        """A paint that is no longer on the shelf is told of before anything is mixed."""
        row, whole = chest.colours.zones["drawers"], chest.session.shelf
        assert not row.changed.isVisibleTo(row)
        chest.desk.edit(take_demo_shelf)
        gone = tuple(paint.id for paint in whole.paints[1:])
        chest.desk.edit(lambda store: remove_paints(store, gone))
        settle()
        assert row.changed.isVisibleTo(row)
        assert "not on the shelf" in row.changed.text()
        chest.desk.edit(lambda store: put_paints(store, whole.paints))
        settle()
        assert not row.changed.isVisibleTo(row)

    def test_parts_that_cannot_be_counted_are_told_in_ml(self, chest: BriefPage) -> None:
        """Few parts are told as they are; of many the ml of the job's amount, by exact shares."""
        job = chest.desk.job
        assert job is not None
        recipe = job.chosen("drawers")
        assert recipe is not None
        first, second = recipe.paints[:2]
        few = replace(
            recipe,
            paints=(replace(first, share=0.667, parts=2), replace(second, share=0.333, parts=1)),
        )
        assert words.recipe_rows(few, 500) == [("2 parts", first.name), ("1 part", second.name)]
        assert not words.measured_for(few, 500)
        many = replace(
            few, paints=(replace(few.paints[0], parts=133), replace(second, share=0.333, parts=67))
        )
        assert words.recipe_rows(many, 500) == [("334 ml", first.name), ("166 ml", second.name)]
        assert words.measured_for(many, 500) == "for 500 ml of the mix"
