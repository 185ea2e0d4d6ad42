"""The paints of the shelf in their own window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from swatchwright.desktop.shelf_window import ShelfModel
from swatchwright.shelf.csv_file import demo_shelf, read_shelf

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.modeltest import ModelTester

    from swatchwright.desktop.window import Window


def test_model_keeps_the_rules(window: Window, qtmodeltester: ModelTester) -> None:
    """The model of the shelf keeps every rule Qt has for models."""
    qtmodeltester.check(ShelfModel(window.session))


def test_an_unticked_paint_is_not_used(window: Window, settle: Callable[[], None]) -> None:
    """A paint whose tick is taken away is in no mix, until it is ticked again."""
    window.session.type_colour("46, 34, 24")
    settle()
    assert window.session.recipes is not None
    left_out = window.session.recipes.recipes[0].recipe.paints[0].id
    row = [p.id for p in window.session.shelf.paints].index(left_out)
    window.show_shelf()
    assert window.shelf_window is not None
    model = window.shelf_window.table.model()
    unticked, tick = Qt.CheckState.Unchecked.value, Qt.ItemDataRole.CheckStateRole
    assert model.setData(model.index(row, 0), unticked, tick)
    settle()
    used = {p.id for r in window.session.recipes.recipes for p in r.recipe.paints}
    assert left_out not in used
    assert "23 of 24" in window.shelf_told.text()
    assert model.setData(model.index(row, 0), Qt.CheckState.Checked.value, tick)
    settle()
    assert window.session.recipes.recipes[0].recipe.paints[0].id == left_out


def test_every_paint_is_shown(window: Window) -> None:
    """Each paint has a row with its name and how it is known, and a colour that is told too."""
    window.show_shelf()
    assert window.shelf_window is not None
    model = window.shelf_window.table.model()
    assert model.rowCount() == len(window.session.shelf.paints)
    for row, paint in enumerate(window.session.shelf.paints):
        cells = [model.index(row, column).data() for column in range(2, model.columnCount())]
        assert paint.name in cells
        assert paint.how_known.value in cells
        told = model.index(row, 1).data(Qt.ItemDataRole.AccessibleTextRole)
        assert told.startswith(paint.name)
    window.shelf_window.close()


def test_example_can_be_saved_and_read(
    window: Window, settle: Callable[[], None], tmp_path: Path
) -> None:
    """The file to fill in is a shelf that opens again."""
    path = tmp_path / "my-paints.csv"
    window.session.save_example(path)
    settle()
    assert len(read_shelf(path).paints) == len(demo_shelf().paints)


def test_save_where_one_cannot(window: Window, settle: Callable[[], None], tmp_path: Path) -> None:
    """Saving into a folder that is not there says so."""
    window.session.save_example(tmp_path / "nowhere" / "my-paints.csv")
    settle()
    assert window.trouble.isVisible()
    assert "could not be written" in window.trouble.text()
