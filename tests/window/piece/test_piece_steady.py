"""On the page of the piece, what is worked in stays under the hand while the page changes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QPoint, Qt

from swatchwright.desktop.widgets.areas import bring_into_view
from swatchwright.piece.order import ProductKind
from window.piece_hands import typed

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.piece_page import PiecePage

    Settle = Callable[[], None]


def place(widget: QWidget) -> int:
    """Give how far below the top of its window a widget stands, in pixels."""
    return widget.mapTo(widget.window(), QPoint(0, 0)).y()


def stays(widget: QWidget, before: int, qtbot: QtBot) -> None:
    """Wait until all is laid and a widget stands where it stood; it stays there."""
    qtbot.wait(30)
    qtbot.waitUntil(lambda: place(widget) == before, timeout=2000)
    qtbot.wait(100)
    assert place(widget) == before


def worked_in(table: PiecePage, qtbot: QtBot, settle: Settle) -> QWidget:
    """Bring what to buy into view, with the keyboard in it."""
    grid = table.panel.table
    bring_into_view(table.panel)
    grid.setFocus(Qt.FocusReason.MouseFocusReason)
    qtbot.waitUntil(grid.hasFocus)
    settle()
    # The page may be laid a few times more after its work is done.
    qtbot.wait(300)
    return grid


def test_a_message_about_tins(table: PiecePage, settle: Settle, qtbot: QtBot) -> None:
    """What to buy stays where it is while a message comes below it and goes again."""
    grid = worked_in(table, qtbot, settle)
    before = place(grid)
    for text in ("large", "400: 15", "9", "500: 19.50"):
        typed(table.panel.table, 0, 3, text, qtbot)
        settle()
        stays(grid, before, qtbot)


def test_more_to_mix_above(table: PiecePage, settle: Settle, qtbot: QtBot) -> None:
    """What to buy stays where it is while what to mix and a message above it come and go."""
    grid = worked_in(table, qtbot, settle)
    before = place(grid)
    for coats in (0, 2):
        table.coats.coats[ProductKind.PAINT].setValue(coats)
        settle()
        stays(grid, before, qtbot)
    table.parts.trouble.setText("\n".join("abc"))
    for shown in (True, False):
        table.parts.trouble.setVisible(shown)
        stays(grid, before, qtbot)
