"""Mixes come into view whole: by the arrows, by the arrow keys, and by the Tab key."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from swatchwright.desktop.window import Window

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.widgets.recipe_column import RecipeColumn


def whole(window: Window) -> list[RecipeColumn]:
    """Give the mixes that are in view from edge to edge."""
    area = window.mix_side.area
    left = area.horizontalScrollBar().value()
    right = left + area.viewport().width()
    columns = window.mix_side.columns()
    return [c for c in columns if left <= c.x() and c.x() + c.width() <= right]


def is_whole(window: Window, column: RecipeColumn) -> bool:
    """Tell whether a mix is in view from edge to edge."""
    return column in whole(window)


def test_arrow_keys_move_by_a_mix(mixed: Window, qtbot: QtBot) -> None:
    """With the mixes gone to, Right and Left bring the next and the last one to the edge."""
    area, columns = mixed.mix_side.area, mixed.mix_side.columns()
    qtbot.waitUntil(mixed.mix_side.pager.later.isEnabled)
    area.setFocus(Qt.FocusReason.TabFocusReason)
    bar = area.horizontalScrollBar()
    for column in (columns[1], columns[2]):
        QTest.keyClick(area, Qt.Key.Key_Right)
        assert bar.value() == column.x()
        assert whole(mixed)[0] is column
    QTest.keyClick(area, Qt.Key.Key_Left)
    assert whole(mixed)[0] is columns[1]


def test_tab_brings_a_whole_mix(mixed: Window, qtbot: QtBot) -> None:
    """Whichever button of a mix is gone to, all of its mix is in view; so also on the way back."""
    columns = mixed.mix_side.columns()
    qtbot.waitUntil(mixed.mix_side.pager.later.isEnabled)
    mixed.activateWindow()
    columns[0].keep.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(columns[0].keep.hasFocus)
    for key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
        for _ in range(4 * len(columns) - 1):
            QTest.keyClick(mixed.focusWidget(), key)
            gone_to = next(c for c in columns if c.isAncestorOf(mixed.focusWidget()))
            qtbot.waitUntil(partial(is_whole, mixed, gone_to))
        assert gone_to is columns[-1 if key == Qt.Key.Key_Tab else 0]


def test_a_mix_that_is_gone_is_not_brought(mixed: Window, qtbot: QtBot) -> None:
    """Mixes that are dropped in the same moment leave nothing to bring into view."""
    mixed.mix_side.columns()[1].copy.setFocus(Qt.FocusReason.TabFocusReason)
    mixed.session.recipes = None
    mixed.session.recipes_changed.emit()
    qtbot.wait(20)
    assert not mixed.mix_side.columns()


def test_each_mix_is_in_view_from_top_to_bottom(with_cushion: Window, qtbot: QtBot) -> None:
    """On a screen of 1280 by 720 no bar is needed beside the mixes."""
    side = with_cushion.mix_side
    qtbot.waitUntil(lambda: side.area.verticalScrollBar().maximum() == 0)
    high = side.area.viewport().height()
    assert all(0 < column.height() <= high for column in side.columns())


def test_the_colours_give_way_to_what_is_said_above(mixed: Window, qtbot: QtBot) -> None:
    """A line that comes above the mixes takes from their colours, and cuts nothing off below."""
    mixed.resize(1280, 900)
    side = mixed.mix_side
    first = side.columns()[0]
    qtbot.waitUntil(lambda: first.height() <= side.area.viewport().height())
    field = first.field.height()
    side.short.setText("Nothing on this shelf reaches it.")
    side.short.show()
    qtbot.waitUntil(lambda: first.field.height() < field)
    assert first.height() <= side.area.viewport().height()
